import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { CheckedOf } from '../contract.ts'
import type { Raw } from './handles.ts'
import { prepared } from './prepared.ts'
import { flag, newUid } from './rows.ts'
import { keepTypedMass, weighTyped, type TypedMass } from './weighings.ts'

export type NewItem = CheckedOf<'item.add'>

const columns = [
  'uid', 'name', 'maker', 'kit_area', 'pieces', 'status', 'status_since', 'lent_to', 'claimed_mg', 'claimed_by', 'estimated_mg', 'usual_lane',
  'is_container', 'set_id', 'serial', 'came', 'came_on', 'came_from', 'price_minor', 'currency', 'sold_minor', 'note', 'life_note', 'last_out_on', 'archived',
] as const // prettier-ignore
const insertItem = `INSERT INTO item (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`
const insertDuty =
  'INSERT INTO item_duty (uid, item_id, duty, shared) VALUES (?, ?, ?, ?) ON CONFLICT (item_id, duty) DO UPDATE SET shared = excluded.shared'
const insertLabel = 'INSERT INTO item_label (uid, item_id, kind, text) VALUES (?, ?, ?, ?) ON CONFLICT (item_id, kind, text) DO NOTHING'

/**
 * Writes one new item with its duties, labels and typed mass. Prepared statements, because a brought-in sheet has thousands of rows;
 * the single `item.add` takes the same way, so that both make the same item.
 */
export function insertNewItem(raw: Raw, item: NewItem, today: string, entered: 'typed' | 'brought'): Outcome<number> {
  const typed = typedMass(item, today)
  const weighed = typed && weighTyped(typed)
  if (weighed?.ok === false) return weighed
  const id = Number(prepared(raw, insertItem).run(...valuesOf(item, today)).lastInsertRowid)
  for (const { duty, shared } of item.duties ?? []) prepared(raw, insertDuty).run(newUid(), id, duty, flag(shared))
  for (const text of item.tags ?? []) prepared(raw, insertLabel).run(newUid(), id, 'tag', text)
  for (const text of item.materials ?? []) prepared(raw, insertLabel).run(newUid(), id, 'material', text)
  if (typed && weighed) keepTypedMass(raw, id, typed, weighed.value, entered)
  return ok(id)
}

function typedMass({ weighedMg, weighedOn }: NewItem, today: string): TypedMass | null {
  return weighedMg === undefined || weighedMg === null ? null : { massMg: weighedMg, weighedOn: weighedOn ?? today }
}

/** In the order of `columns`. An item that is not simply owned has been so since today unless a day is given. */
function valuesOf(item: NewItem, today: string): readonly (string | number | null)[] {
  const since = item.statusSince ?? (item.status === undefined || item.status === 'owned' ? null : today)
  return [
    newUid(), item.name, item.maker ?? '', item.kitArea, item.pieces ?? 1, item.status ?? 'owned', since, item.lentTo ?? '',
    item.claimedMg ?? null, item.claimedBy ?? '', item.estimatedMg ?? null, item.usualLane ?? 'in_pack', flag(item.isContainer ?? false), item.setId ?? null,
    item.serial ?? '', item.came ?? 'bought', item.cameOn ?? null, item.cameFrom ?? '', item.priceMinor ?? null, item.currency ?? '', item.soldMinor ?? null,
    item.note ?? '', item.lifeNote ?? '', item.lastOutOn ?? null, flag(item.archived ?? false),
  ] // prettier-ignore
}
