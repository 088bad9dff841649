import type { Migration } from 'kysely/migration'
import * as closet from './0010-closet.ts'

/** Every migration by name, in order. Released ones are never edited. */
export const migrations: Readonly<Record<string, Migration>> = {
  '0010-closet': closet,
}
