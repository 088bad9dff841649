import type { KitArea, Lane, MassOrigin, Status } from '../../src-domain/closet/vocabulary.ts'
import type { ClosetColumns, TraitColumns } from '../answers.ts'
import type { Raw } from './handles.ts'
import { prepared } from './prepared.ts'

/**
 * The closet as columns. One statement gives every field of every row as a plain array, which is then turned by columns:
 * twenty thousand objects would cost twice the time and the memory of the columns that the window wants anyway.
 *
 * The mass of an item: its latest weighing (by day, then by the order typed) that was neither damp, dirty nor incomplete; else the claim; else the estimate.
 */
const latestWeighing = `SELECT id FROM weighing WHERE item_id = item.id AND damp = 0 AND dirty = 0 AND incomplete = 0 ORDER BY weighed_on DESC, id DESC LIMIT 1`
const duties = `SELECT group_concat(duty || CASE shared WHEN 1 THEN '*' ELSE '' END, ' ' ORDER BY id) FROM item_duty WHERE item_id = item.id`
const labels = (kind: string) =>
  `SELECT group_concat(text, char(10) ORDER BY id) FROM item_label WHERE item_id = item.id AND kind = '${kind}'`
const trips = `SELECT count(DISTINCT packed.trip_id) FROM packed WHERE packed.item_id = item.id`
const photos = `SELECT count(*) FROM photo WHERE item_id = item.id`

/** Field, its SQL, and whether it is a flag. */
const fields: readonly (readonly [keyof ClosetColumns, string, 'flag'?])[] = [
  ['id', 'item.id'],
  ['uid', 'item.uid'],
  ['name', 'item.name'],
  ['maker', 'item.maker'],
  ['kitArea', 'item.kit_area'],
  ['pieces', 'item.pieces'],
  ['status', 'item.status'],
  ['statusSince', 'item.status_since'],
  ['lentTo', 'item.lent_to'],
  ['massMg', 'coalesce(w.mass_mg, item.claimed_mg, item.estimated_mg)'],
  [
    'massFrom',
    `CASE WHEN w.id IS NOT NULL THEN 'measured' WHEN item.claimed_mg IS NOT NULL THEN 'claimed' WHEN item.estimated_mg IS NOT NULL THEN 'estimated' ELSE 'none' END`,
  ],
  ['uOwnMg', 'ifnull(w.u_own_mg, 0.0)'],
  ['uGainMg', 'ifnull(w.u_gain_mg, 0.0)'],
  ['weighingUid', 'w.uid'],
  ['scaleUid', 'scale.uid'],
  ['weighedOn', 'w.weighed_on'],
  ['claimedMg', 'item.claimed_mg'],
  ['claimedBy', 'item.claimed_by'],
  ['estimatedMg', 'item.estimated_mg'],
  ['usualLane', 'item.usual_lane'],
  ['isContainer', 'item.is_container', 'flag'],
  ['setId', 'item.set_id'],
  ['duties', `ifnull((${duties}), '')`],
  ['tags', `ifnull((${labels('tag')}), '')`],
  ['seasons', `ifnull((${labels('season')}), '')`],
  ['note', 'item.note'],
  ['priceMinor', 'item.price_minor'],
  ['currency', 'item.currency'],
  ['cameOn', 'item.came_on'],
  ['lastOutOn', 'item.last_out_on'],
  ['trips', `(${trips})`],
  ['photos', `(${photos})`],
  ['archived', 'item.archived', 'flag'],
]

const from = `FROM item LEFT JOIN weighing w ON w.id = (${latestWeighing}) LEFT JOIN scale ON scale.id = w.scale_id`

/** The statement behind `closet.all`, for the bench that measures it against the same SQL alone. */
export const closetSql = `SELECT ${fields.map(([name, text]) => `${text} AS ${name}`).join(', ')} ${from} ORDER BY item.id`
const someSql = closetSql.replace(/ ORDER BY item\.id$/, ' WHERE item.id IN (SELECT value FROM json_each(?)) ORDER BY item.id')

export const closetAll = (raw: Raw): ClosetColumns => turned(prepared<unknown[]>(raw, closetSql).raw().all())

/** The rows of some items; those that are gone are left out. */
export const closetRows = (raw: Raw, ids: readonly number[]): ClosetColumns =>
  turned(prepared<unknown[]>(raw, someSql).raw().all(JSON.stringify(ids)))

/** Rows turned into columns, row by row: a third faster than one pass a column over rows that have left the processor's cache. */
function turned(rows: readonly unknown[][]): ClosetColumns {
  const columns = fields.map(() => new Array<unknown>(rows.length))
  for (let at = 0; at < rows.length; at += 1) {
    const row = rows[at]!
    for (let column = 0; column < columns.length; column += 1) columns[column]![at] = row[column]
  }
  const named = fields.map(([name, , isFlag], at) => [name, isFlag ? columns[at]!.map((value) => value === 1) : columns[at]] as const)
  return Object.fromEntries(named) as unknown as ClosetColumns
}

/** The row of one item out of columns: for functions that need the mass that rules. */
export interface ClosetRow {
  readonly id: number
  readonly kitArea: KitArea
  readonly status: Status
  readonly usualLane: Lane
  readonly massMg: number | null
  readonly massFrom: MassOrigin
}

export function closetRow(raw: Raw, id: number): ClosetRow | null {
  const one = closetRows(raw, [id])
  if (one.id.length === 0) return null
  return {
    id,
    kitArea: one.kitArea[0]!,
    status: one.status[0]!,
    usualLane: one.usualLane[0]!,
    massMg: one.massMg[0]!,
    massFrom: one.massFrom[0]!,
  }
}

const traitSql = 'SELECT item_id AS itemId, supply_id AS supplyId, code, number, text, origin FROM trait_value ORDER BY id'
const needSql = 'SELECT item_id AS itemId, supply_id AS supplyId, duty, pieces, kind FROM need ORDER BY id'

/** Every trait and need, of items and supplies. */
export function traitColumns(raw: Raw): TraitColumns {
  return {
    traits: byColumn(raw, traitSql, ['itemId', 'supplyId', 'code', 'number', 'text', 'origin']) as unknown as TraitColumns['traits'],
    needs: byColumn(raw, needSql, ['itemId', 'supplyId', 'duty', 'pieces', 'kind']) as unknown as TraitColumns['needs'],
  }
}

/** Rows of a statement turned into one array a column. */
export function byColumn(raw: Raw, sql: string, names: readonly string[]): Readonly<Record<string, readonly unknown[]>> {
  const rows = prepared<unknown[]>(raw, sql).raw().all()
  return Object.fromEntries(names.map((name, at) => [name, rows.map((row) => row[at])]))
}
