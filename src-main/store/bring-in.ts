import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { CheckedOf } from '../contract.ts'
import type { Raw } from './handles.ts'
import { insertNewItem } from './new-items.ts'
import { prepared } from './prepared.ts'
import { gone, invalid, newUid } from './rows.ts'

/** Bringing in: rows are staged in parts, outside the steps; one short transaction then makes items and lines of them all. */
export type BroughtRow = CheckedOf<'bringIn.stage'>['rows'][number]

const stageRow = 'INSERT INTO stage (batch, n, row) VALUES (?, ?, ?) ON CONFLICT (batch, n) DO UPDATE SET row = excluded.row'

export function stageRows(raw: Raw, batch: string, from: number, rows: readonly BroughtRow[]): number {
  for (const [at, row] of rows.entries()) prepared(raw, stageRow).run(batch, from + at, JSON.stringify(row))
  return countStaged(raw, batch)
}

const countStaged = (raw: Raw, batch: string): number =>
  prepared<{ n: number }>(raw, 'SELECT count(*) AS n FROM stage WHERE batch = ?').get(batch)!.n

export function dropStaged(raw: Raw, batch: string): void {
  prepared(raw, 'DELETE FROM stage WHERE batch = ?').run(batch)
}

export function stagedRows(raw: Raw, batch: string): readonly BroughtRow[] {
  const rows = prepared<{ row: string }>(raw, 'SELECT row FROM stage WHERE batch = ? ORDER BY n').all(batch)
  return rows.map(({ row }) => JSON.parse(row) as BroughtRow)
}

/** Every duty that the rows name, once. */
export const dutiesOf = (rows: readonly BroughtRow[]): readonly string[] => [
  ...new Set(rows.flatMap(({ item }) => (item?.duties ?? []).map(({ duty }) => duty))),
]

export interface Brought {
  readonly items: number
  readonly lines: number
}

// Two rows of the sheet may be the same thing in the same lane: their pieces add up.
const putLine = `INSERT INTO line (uid, loadout_id, item_id, lane, pieces, sort) VALUES (?, ?, ?, ?, ?, ?)
  ON CONFLICT (loadout_id, item_id, lane) WHERE item_id IS NOT NULL DO UPDATE SET pieces = pieces + excluded.pieces`

/** Makes items, and lines of one loadout, of the rows in their order. */
export function makeOf(raw: Raw, rows: readonly BroughtRow[], loadoutId: number | null, today: string): Outcome<Brought> {
  let items = 0
  let lines = 0
  const made: number[] = []
  for (const [at, row] of rows.entries()) {
    const itemId = itemOf(raw, row, at, today, made)
    if (!itemId.ok) return fault(itemId.fault.code, { ...itemId.fault.facts, row: at })
    made.push(itemId.value)
    if (row.itemId === null && row.item !== null) items += 1
    if (row.line === null || loadoutId === null) continue
    prepared(raw, putLine).run(newUid(), loadoutId, itemId.value, row.line.lane, row.line.pieces, at)
    lines += 1
  }
  return ok({ items, lines })
}

/** The item that a row is: one of the closet, an earlier row's, or a new one. */
function itemOf(raw: Raw, row: BroughtRow, at: number, today: string, made: readonly number[]): Outcome<number> {
  const { itemId, item, asRow } = row
  const earlier = itemId === null && item === null ? made[asRow ?? -1] : undefined
  if (earlier !== undefined) return ok(earlier)
  if (itemId !== null) return isThere(raw, itemId) ? ok(itemId) : gone('item', itemId)
  return row.item ? newItemOf(raw, row, row.item, today) : invalid(`rows.${at}.item`, 'a row is a new item or one of the closet')
}

function newItemOf(raw: Raw, { set = '', links = [] }: BroughtRow, item: NonNullable<BroughtRow['item']>, today: string): Outcome<number> {
  const made = insertNewItem(raw, set === '' ? item : { ...item, setId: setNamed(raw, set) }, today, 'brought')
  if (made.ok) for (const { url, label } of links) prepared(raw, insertLink).run(newUid(), made.value, url, label)
  return made
}

const insertLink = 'INSERT INTO item_link (uid, item_id, url, label) VALUES (?, ?, ?, ?)'

/** Its rows stand apart in the sheet: the first of them makes the set, the others find it. */
function setNamed(raw: Raw, name: string): number {
  const there = prepared<{ id: number }>(raw, 'SELECT id FROM kit_set WHERE name = ? ORDER BY id').get(name)
  return there?.id ?? Number(prepared(raw, 'INSERT INTO kit_set (uid, name) VALUES (?, ?)').run(newUid(), name).lastInsertRowid)
}

const isThere = (raw: Raw, id: number): boolean => prepared(raw, 'SELECT 1 FROM item WHERE id = ?').get(id) !== undefined

/** The rows staged must be as many as the window sent: one part lost on the way is not a smaller sheet. */
export function allStaged(raw: Raw, batch: string, rows: number): Outcome<null> {
  const staged = countStaged(raw, batch)
  return staged === rows ? ok(null) : fault('input.missing', { field: 'rows', staged, sent: rows })
}
