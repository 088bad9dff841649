import type { Heard } from '../contract.ts'
import type { Raw } from './handles.ts'
import { prepared } from './prepared.ts'

/** What a step touched, by table, read off its rows; `item` holds every item whose closet row may have changed by it. */
export interface StepTouched {
  readonly touched: Heard['touched']
  readonly itemIds: readonly number[]
}

/** An item's closet row changes with the item, its duties, labels, weighings and photographs, and with the trips that had it packed. */
const itemIdsSql = 'SELECT DISTINCT item_id AS id FROM step_row WHERE step_id = ? AND item_id IS NOT NULL ORDER BY 1'

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
