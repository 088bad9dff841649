import type { CareColumns } from '../answers.ts'
import { byColumn } from './closet.ts'
import type { Raw } from './handles.ts'

const counterFields = ['itemId', 'code', 'amount', 'notedOn']
const countersSql = `SELECT item_id AS "itemId", code, amount, noted_on AS "notedOn" FROM item_counter ORDER BY item_id, id`

const itemFields = ['id', 'came', 'soldMinor', 'firstWeighedOn', 'lastMark']
const itemsSql = `SELECT item.id AS id, came, sold_minor AS "soldMinor",
    (SELECT min(weighed_on) FROM weighing w WHERE w.item_id = item.id) AS "firstWeighedOn",
    ifnull((SELECT CASE WHEN w.damp = 1 THEN 'damp' WHEN w.dirty = 1 THEN 'dirty' ELSE '' END FROM weighing w
      WHERE w.item_id = item.id ORDER BY w.weighed_on DESC, w.id DESC LIMIT 1), '') AS "lastMark"
  FROM item ORDER BY item.id`

/** Counters and facts of all items, as columns. */
export function careColumns(raw: Raw): CareColumns {
  return { counters: byColumn(raw, countersSql, counterFields), items: byColumn(raw, itemsSql, itemFields) } as unknown as CareColumns
}
