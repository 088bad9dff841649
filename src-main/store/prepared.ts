import type { Statement } from 'better-sqlite3'
import type { Raw } from './handles.ts'

const kept = new WeakMap<Raw, Map<string, Statement>>()

/** A statement prepared once for a connection: for loops that run thousands of times and for the steps around every change. */
export function prepared<Row = unknown>(raw: Raw, sql: string): Statement<unknown[], Row> {
  const mine = kept.get(raw) ?? new Map<string, Statement>()
  kept.set(raw, mine)
  const statement = mine.get(sql) ?? raw.prepare(sql)
  mine.set(sql, statement)
  return statement as Statement<unknown[], Row>
}
