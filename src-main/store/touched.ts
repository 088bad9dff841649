import type { Heard } from '../contract.ts'
import type { Raw } from './handles.ts'
import { prepared } from './prepared.ts'

/** What a step touched, by table, read off its rows; `item` holds every item whose closet row may have changed by it. */
export interface StepTouched {
  readonly touched: Heard['touched']
  readonly itemIds: readonly number[]
}

/** An item's closet row changes with the item, its duties, labels, weighings and photographs, and with what loadouts and trips say of its lines. */
const itemIdsSql = `WITH row AS (SELECT tbl, row_id, item_id FROM step_row WHERE step_id = ?)
  SELECT item_id AS id FROM row WHERE item_id IS NOT NULL
  UNION SELECT line.item_id FROM row JOIN line ON line.loadout_id = row.row_id WHERE row.tbl = 'loadout' AND line.item_id IS NOT NULL
  UNION SELECT line.item_id FROM row JOIN loadout ON loadout.trip_id = row.row_id JOIN line ON line.loadout_id = loadout.id
    WHERE row.tbl = 'trip' AND line.item_id IS NOT NULL
  ORDER BY 1`

export function touchedBy(raw: Raw, stepId: number): StepTouched {
  const rows = prepared<{ tbl: string; id: number }>(
    raw,
    'SELECT DISTINCT tbl, row_id AS id FROM step_row WHERE step_id = ? ORDER BY tbl, row_id',
  ).all(stepId)
  const itemIds = prepared<{ id: number }>(raw, itemIdsSql)
    .all(stepId)
    .map(({ id }) => id)
  const byTable = Map.groupBy(
    rows.filter(({ tbl }) => tbl !== 'item'),
    ({ tbl }) => tbl,
  )
  const others = [...byTable].map(([table, some]) => ({ table, ids: some.map(({ id }) => id) }))
  return { touched: itemIds.length > 0 ? [{ table: 'item', ids: itemIds }, ...others] : others, itemIds }
}
