import type { Migration } from 'kysely/migration'
import * as closet from './0010-closet.ts'
import * as record from './0020-record.ts'

/** Every migration by name, in order. Released ones are never edited. */
export const migrations: Readonly<Record<string, Migration>> = {
  '0010-closet': closet,
  '0020-record': record,
}
