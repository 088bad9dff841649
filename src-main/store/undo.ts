import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { StepName } from '../answers.ts'
import type { Raw } from './handles.ts'
import { prepared } from './prepared.ts'
import { columnsOf, rowJson } from './undoable.ts'

/** Undo is data: what each change did stands in `step_row`, and undoing runs it backwards. */

export type StepFacts = Readonly<Record<string, string | number>>

interface StepRow {
  readonly tbl: string
  readonly uid: string
  readonly before: string | null
  readonly after: string | null
}
interface StoredStep {
  readonly id: number
  readonly code: string
  readonly facts: string
  readonly at: string
}

const keptSteps = 500
const keptBytes = 64 * 1024 * 1024

/** Opens a step inside the running transaction; the triggers write into it until it is closed. */
export function openStep(raw: Raw, code: string, at: string): number {
  const { lastInsertRowid } = prepared(raw, `INSERT INTO step (code, facts, at) VALUES (?, '{}', ?)`).run(code, at)
  prepared(raw, 'UPDATE step_now SET step_id = ?').run(lastInsertRowid)
  return Number(lastInsertRowid)
}

/** Closes the step and names it. One that touched nothing is not kept; one that did drops what could be redone and what is too old. */
export function closeStep(raw: Raw, id: number, facts: StepFacts): boolean {
  prepared(raw, 'UPDATE step_now SET step_id = NULL').run()
  const sums = `SELECT count(*) AS rows, ifnull(sum(octet_length(before)), 0) + ifnull(sum(octet_length(after)), 0) AS bytes FROM step_row WHERE step_id = ?`
  const { rows, bytes } = prepared<{ rows: number; bytes: number }>(raw, sums).get(id)!
  if (rows === 0) {
    prepared(raw, 'DELETE FROM step WHERE id = ?').run(id)
    return false
  }
  prepared(raw, 'UPDATE step SET facts = ?, bytes = ? WHERE id = ?').run(JSON.stringify(facts), bytes, id)
  prepared(raw, 'DELETE FROM step WHERE undone_at IS NOT NULL').run()
  dropOld(raw)
  return true
}

/** Keeps the newest 500 steps and no more than 64 MiB of them; the newest itself always stays. */
function dropOld(raw: Raw, steps = keptSteps, bytes = keptBytes): void {
  const tooOld = `SELECT max(id) AS id FROM (SELECT id, row_number() OVER newest AS n, sum(bytes) OVER newest AS total FROM step WINDOW newest AS (ORDER BY id DESC))
    WHERE n > 1 AND (n > ? OR total > ?)`
  const last = prepared<{ id: number | null }>(raw, tooOld).get(steps, bytes)!.id
  if (last !== null) prepared(raw, 'DELETE FROM step WHERE id <= ?').run(last)
}

const toUndo = 'SELECT id, code, facts, at FROM step WHERE undone_at IS NULL ORDER BY id DESC LIMIT 1'
const toRedo = 'SELECT id, code, facts, at FROM step WHERE undone_at IS NOT NULL ORDER BY id LIMIT 1'

/** What would be undone, and what would be redone. */
export const undoName = (raw: Raw): StepName | null => named(prepared<StoredStep>(raw, toUndo).get())
export const redoName = (raw: Raw): StepName | null => named(prepared<StoredStep>(raw, toRedo).get())

export function nameOf(step: StoredStep): StepName {
  return { id: step.id, code: step.code, facts: JSON.parse(step.facts) as StepFacts, at: step.at }
}
const named = (step: StoredStep | undefined): StepName | null => (step ? nameOf(step) : null)

/** Takes the last step back, inside the running transaction; refused if something has changed since. */
export function undoLast(raw: Raw, at: string): Outcome<StepName> {
  const step = undoName(raw)
  if (!step) return fault('undo.nothing')
  const rows = prepared<StepRow>(raw, 'SELECT tbl, uid, before, after FROM step_row WHERE step_id = ? ORDER BY id DESC').all(step.id)
  const ran = replay(
    raw,
    rows.map(({ tbl, uid, before, after }) => ({ tbl, uid, from: after, to: before })),
  )
  if (!ran.ok) return ran
  prepared(raw, 'UPDATE step SET undone_at = ? WHERE id = ?').run(at, step.id)
  return ok(step)
}

/** Does the step again that was taken back last. */
export function redoNext(raw: Raw): Outcome<StepName> {
  const step = redoName(raw)
  if (!step) return fault('undo.nothing')
  const rows = prepared<StepRow>(raw, 'SELECT tbl, uid, before, after FROM step_row WHERE step_id = ? ORDER BY id').all(step.id)
  const ran = replay(
    raw,
    rows.map(({ tbl, uid, before, after }) => ({ tbl, uid, from: before, to: after })),
  )
  if (!ran.ok) return ran
  prepared(raw, 'UPDATE step SET undone_at = NULL WHERE id = ?').run(step.id)
  return ok(step)
}

interface Move {
  readonly tbl: string
  readonly uid: string
  readonly from: string | null
  readonly to: string | null
}

/** Applies row changes in order, each only on a row that is exactly as it was left. Foreign keys are looked at when the transaction ends. */
function replay(raw: Raw, moves: readonly Move[]): Outcome<null> {
  raw.pragma('defer_foreign_keys = ON')
  return quietly(raw, () => {
    const tables = new Map<string, TableSql>()
    for (const move of moves) {
      const sql = tables.get(move.tbl) ?? tableSql(raw, move.tbl)
      tables.set(move.tbl, sql)
      if (!applied(raw, sql, move)) return fault('undo.changed-since', { table: move.tbl, field: changedField(raw, sql, move) })
    }
    return ok(null)
  })
}

/** Runs changes that leave no trace in the steps. */
export function quietly<T>(raw: Raw, work: () => T): T {
  prepared(raw, 'UPDATE step_now SET quiet = 1').run()
  const result = work()
  prepared(raw, 'UPDATE step_now SET quiet = 0').run()
  return result
}

interface TableSql {
  readonly columns: readonly string[]
  /** The columns that a change may set: all but the keys. */
  readonly fields: readonly string[]
  readonly insert: string
  readonly update: string
  readonly remove: string
  readonly asJson: string
}

function tableSql(raw: Raw, table: string): TableSql {
  const columns = columnsOf(raw, table)
  const asLeft = `uid = ? AND ${rowJson(columns, '')} = ?`
  // Setting a key, even to what it is, makes SQLite look for rows that refer to it.
  const fields = columns.filter((name) => name !== 'id' && name !== 'uid')
  return {
    columns,
    fields,
    insert: `INSERT INTO ${table} (${columns.join(', ')}) SELECT ${columns.map(() => '?').join(', ')} WHERE NOT EXISTS (SELECT 1 FROM ${table} WHERE uid = ? OR id = ?)`,
    update: `UPDATE ${table} SET ${fields.map((name) => `${name} = ?`).join(', ')} WHERE ${asLeft}`,
    remove: `DELETE FROM ${table} WHERE ${asLeft}`,
    asJson: `SELECT ${rowJson(columns, '')} AS row FROM ${table} WHERE uid = ?`,
  }
}

type Stored = Readonly<Record<string, string | number | null>>
const parsed = (json: string): Stored => JSON.parse(json) as Stored

function applied(raw: Raw, sql: TableSql, { uid, from, to }: Move): boolean {
  if (to === null) return prepared(raw, sql.remove).run(uid, from).changes === 1
  const row = parsed(to)
  const values = (names: readonly string[]) => names.map((name) => row[name] ?? null)
  if (from === null) return prepared(raw, sql.insert).run(...values(sql.columns), uid, row['id']).changes === 1
  return prepared(raw, sql.update).run(...values(sql.fields), uid, from).changes === 1
}

/** The first field that is no longer as the step left it; empty when the whole row is gone or is there again. */
function changedField(raw: Raw, sql: TableSql, { uid, from }: Move): string {
  const now = prepared<{ row: string }>(raw, sql.asJson).get(uid)
  if (!now || from === null) return ''
  const [left, found] = [parsed(from), parsed(now.row)]
  return sql.columns.find((name) => left[name] !== found[name]) ?? ''
}

/** Drops every step: after a migration or when everything was replaced, their rows no longer fit. */
export function forgetSteps(raw: Raw): void {
  raw.exec('DELETE FROM step_row; DELETE FROM step; UPDATE step_now SET step_id = NULL, quiet = 0')
}
