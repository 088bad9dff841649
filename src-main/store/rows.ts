import { randomUUID } from 'node:crypto'
import { sql, type RawBuilder, type Updateable } from 'kysely'
import { fault, type Fault } from '../../src-domain/figures/fault.ts'
import type { Rule } from '../answers.ts'
import type { Tables } from './tables.ts'

/** Small parts that every noun's queries share. */

export const newUid = (): string => randomUUID()
export const flag = (yes: boolean): number => (yes ? 1 : 0)

type Refusal = { readonly ok: false; readonly fault: Fault }
export const gone = (table: keyof Tables, id: number | string): Refusal => fault('row.gone', { table, id })
export const invalid = (field: string, message: string): Refusal => fault('input.invalid', { field, message })

/** A list of ids as one bound value: a statement may hold fewer variables than a closet has rows. */
export const inIds = (ids: readonly number[]): RawBuilder<number> => sql<number>`(SELECT value FROM json_each(${JSON.stringify(ids)}))`

const snake = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)

/** Given fields by their column names, as SQLite keeps them: flags as 0 and 1, documents as JSON. Fields left out are left alone. */
export function patchOf<T extends keyof Tables>(fields: Readonly<Record<string, unknown>>): Updateable<Tables[T]> {
  const given = Object.entries(fields).filter(([, value]) => value !== undefined)
  return Object.fromEntries(given.map(([name, value]) => [snake(name), stored(value)])) as Updateable<Tables[T]>
}

function stored(value: unknown): unknown {
  if (typeof value === 'boolean') return flag(value)
  return typeof value === 'object' && value !== null ? JSON.stringify(value) : value
}

/** A row less the columns named. */
export function without<Row extends object, Name extends keyof Row>(row: Row, ...names: readonly Name[]): Omit<Row, Name> {
  const left: ReadonlySet<PropertyKey> = new Set(names)
  return Object.fromEntries(Object.entries(row).filter(([name]) => !left.has(name))) as Omit<Row, Name>
}

export const isEmpty = (fields: object): boolean => Object.keys(fields).length === 0
export const ruleOf = (text: string | null): Rule | null => (text === null ? null : (JSON.parse(text) as Rule))

/** Whether a text that is kept as a document reads as JSON. */
export function isJson(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}
