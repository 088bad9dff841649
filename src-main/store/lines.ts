import type { Selectable } from 'kysely'
import type { Lane } from '../../src-domain/closet/vocabulary.ts'
import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { CheckedOf } from '../contract.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { gone, inIds, invalid, isEmpty, newUid, patchOf, without } from './rows.ts'
import type { Tables } from './tables.ts'

/**
 * Lines of a loadout. An item has one line in each lane (key: loadout, item, lane); a supply one for each container (key: loadout, supply, container).
 * Putting a thing where its line already stands changes that line: the pieces given are then its pieces, and none given means one more.
 * Moving a line onto another of the same item adds its pieces there: nothing that was packed is lost by a drag.
 */
export type LineGiven = CheckedOf<'lines.put'>['lines'][number]

interface LineFound {
  readonly id: number
  readonly pieces: number
}

/** Puts one line; `at` names its place in the input for a fault. */
export async function putLine(db: WriteDb, loadoutId: number, given: LineGiven, at: number): Promise<Outcome<number>> {
  const { itemId, supplyId } = given
  if ((itemId === undefined) === (supplyId === undefined)) return invalid(`lines.${at}.itemId`, 'a line holds an item or a supply')
  const owner = await ownerThere(db, given)
  if (!owner.ok) return owner
  const found =
    itemId === undefined
      ? await supplyLine(db, loadoutId, supplyId!, given.containerId ?? null)
      : await itemLine(db, loadoutId, itemId, given.lane)
  if (!found) return ok(await insertLine(db, loadoutId, given))
  const pieces = given.pieces ?? (itemId === undefined ? undefined : found.pieces + 1)
  await editLine(db, found.id, { ...given, itemId: undefined, supplyId: undefined, pieces })
  return ok(found.id)
}

async function ownerThere(db: ReadDb, { itemId, supplyId, containerId }: LineGiven): Promise<Outcome<null>> {
  for (const id of [itemId, containerId]) {
    if (typeof id === 'number' && !(await db.selectFrom('item').select('id').where('id', '=', id).executeTakeFirst()))
      return gone('item', id)
  }
  if (supplyId !== undefined && !(await db.selectFrom('supply').select('id').where('id', '=', supplyId).executeTakeFirst()))
    return gone('supply', supplyId)
  return ok(null)
}

async function itemLine(db: ReadDb, loadoutId: number, itemId: number, lane: Lane): Promise<LineFound | undefined> {
  return db
    .selectFrom('line')
    .select(['id', 'pieces'])
    .where('loadout_id', '=', loadoutId)
    .where('item_id', '=', itemId)
    .where('lane', '=', lane)
    .executeTakeFirst()
}

export async function supplyLine(
  db: ReadDb,
  loadoutId: number,
  supplyId: number,
  containerId: number | null,
): Promise<LineFound | undefined> {
  return db
    .selectFrom('line')
    .select(['id', 'pieces'])
    .where('loadout_id', '=', loadoutId)
    .where('supply_id', '=', supplyId)
    .where('container_id', containerId === null ? 'is' : '=', containerId)
    .executeTakeFirst()
}

async function insertLine(db: WriteDb, loadoutId: number, given: LineGiven): Promise<number> {
  const last = await db
    .selectFrom('line')
    .select((eb) => eb.fn.max('sort').as('sort'))
    .where('loadout_id', '=', loadoutId)
    .executeTakeFirst()
  const row = { uid: newUid(), loadout_id: loadoutId, ...patchOf<'line'>(withAmountFrom(given)), sort: (last?.sort ?? -1) + 1 }
  return (
    await db
      .insertInto('line')
      .values(row as never)
      .returning('id')
      .executeTakeFirstOrThrow()
  ).id
}

type LineFields = Partial<LineGiven>

/** A typed amount rules until it is cleared; then the brief does. */
function withAmountFrom(fields: LineFields): LineFields {
  const { amountMilli, amountFrom, supplyId } = fields
  if (amountFrom !== undefined) return fields
  if (typeof amountMilli === 'number') return { ...fields, amountFrom: 'typed' }
  return amountMilli === null || supplyId !== undefined ? { ...fields, amountFrom: 'brief' } : fields
}

export async function editLine(db: WriteDb, id: number, fields: LineFields): Promise<void> {
  const patch = patchOf<'line'>(withAmountFrom(fields))
  if (!isEmpty(patch)) await db.updateTable('line').set(patch).where('id', '=', id).execute()
}

export interface LineHead {
  readonly id: number
  readonly loadoutId: number
  readonly loadoutName: string
  readonly name: string
}

/** Lines with the names that a step is called by; all must be there. */
export async function lineHeads(db: ReadDb, ids: readonly number[]): Promise<Outcome<readonly LineHead[]>> {
  const rows = await db
    .selectFrom('line')
    .innerJoin('loadout', 'loadout.id', 'line.loadout_id')
    .leftJoin('item', 'item.id', 'line.item_id')
    .leftJoin('supply', 'supply.id', 'line.supply_id')
    .select(['line.id', 'line.loadout_id as loadoutId', 'loadout.name as loadoutName'])
    .select((eb) => eb.fn.coalesce('item.name', 'supply.name').as('name'))
    .where('line.id', 'in', inIds(ids))
    .execute()
  const found = new Map(rows.map((row) => [row.id, row]))
  const missing = ids.find((id) => !found.has(id))
  return missing === undefined
    ? ok([...new Set(ids)].map((id) => ({ ...found.get(id)!, name: found.get(id)!.name ?? '' })))
    : gone('line', missing)
}

/** Moves a line to a lane. If the item already has a line there, its pieces are added to that one. */
export async function moveLine(db: WriteDb, id: number, lane: Lane): Promise<void> {
  const row = await db.selectFrom('line').select(['loadout_id', 'item_id', 'lane', 'pieces']).where('id', '=', id).executeTakeFirstOrThrow()
  if (row.lane === lane) return
  const there = row.item_id === null ? undefined : await itemLine(db, row.loadout_id, row.item_id, lane)
  if (!there) {
    await db.updateTable('line').set({ lane }).where('id', '=', id).execute()
    return
  }
  await db
    .updateTable('line')
    .set({ pieces: there.pieces + row.pieces })
    .where('id', '=', there.id)
    .execute()
  await db.deleteFrom('line').where('id', '=', id).execute()
}

export async function removeLines(db: WriteDb, ids: readonly number[]): Promise<void> {
  await db.deleteFrom('line').where('id', 'in', inIds(ids)).execute()
}

/** Copies lines into another loadout; where the key already stands, that line becomes like the one copied. */
export async function copyLines(db: WriteDb, ids: readonly number[], toLoadoutId: number): Promise<number> {
  const rows = await db
    .selectFrom('line')
    .selectAll()
    .where('id', 'in', inIds(ids))
    .where('loadout_id', '<>', toLoadoutId)
    .orderBy('sort')
    .orderBy('id')
    .execute()
  for (const row of rows) await writeLine(db, toLoadoutId, without(row, 'id', 'uid', 'sort', 'loadout_id'))
  return rows.length
}

/** A line's own columns, without where it stands. */
export type LineStored = Omit<Selectable<Tables['line']>, 'id' | 'uid' | 'loadout_id' | 'sort'>

/** Writes a whole line under its key, in place of the one that stands there; a note left out leaves the one that is there. */
export async function writeLine(
  db: WriteDb,
  loadoutId: number,
  fields: Omit<LineStored, 'note'> & { readonly note?: string },
): Promise<void> {
  const { item_id: itemId, supply_id: supplyId, container_id: containerId, lane } = fields
  const found = itemId === null ? await supplyLine(db, loadoutId, supplyId!, containerId) : await itemLine(db, loadoutId, itemId, lane)
  if (found) {
    await db.updateTable('line').set(fields).where('id', '=', found.id).execute()
    return
  }
  const last = await db
    .selectFrom('line')
    .select((eb) => eb.fn.max('sort').as('sort'))
    .where('loadout_id', '=', loadoutId)
    .executeTakeFirst()
  await db
    .insertInto('line')
    .values({ uid: newUid(), loadout_id: loadoutId, sort: (last?.sort ?? -1) + 1, ...fields })
    .execute()
}
