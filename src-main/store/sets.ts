import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { KitSet } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { gone, inIds, newUid } from './rows.ts'

/** Sets: items that move together. An item is in at most one, so that joining one leaves the other. */

export async function allSets(db: ReadDb): Promise<readonly KitSet[]> {
  const sets = await db.selectFrom('kit_set').select(['id', 'name']).orderBy('id').execute()
  const members = await db.selectFrom('item').select(['id', 'set_id']).where('set_id', 'is not', null).orderBy('id').execute()
  const bySet = Map.groupBy(members, ({ set_id }) => set_id)
  return sets.map(({ id, name }) => ({ id, name, itemIds: (bySet.get(id) ?? []).map((one) => one.id) }))
}

export async function setName(db: ReadDb, id: number): Promise<Outcome<string>> {
  const row = await db.selectFrom('kit_set').select('name').where('id', '=', id).executeTakeFirst()
  return row ? ok(row.name) : gone('kit_set', id)
}

export async function addSet(db: WriteDb, name: string, itemIds: readonly number[]): Promise<number> {
  const { id } = await db.insertInto('kit_set').values({ uid: newUid(), name }).returning('id').executeTakeFirstOrThrow()
  await putInSet(db, id, itemIds)
  return id
}

export async function renameSet(db: WriteDb, id: number, name: string): Promise<void> {
  await db.updateTable('kit_set').set({ name }).where('id', '=', id).execute()
}

/** Puts the items into a set, or out of any with null. */
export async function putInSet(db: WriteDb, id: number | null, itemIds: readonly number[]): Promise<void> {
  await db.updateTable('item').set({ set_id: id }).where('id', 'in', inIds(itemIds)).execute()
  await dropEmptySets(db)
}

/** A set is its members: without any it is nothing. */
export async function dropEmptySets(db: WriteDb): Promise<void> {
  const full = db.selectFrom('item').select('set_id').where('set_id', 'is not', null)
  await db.deleteFrom('kit_set').where('id', 'not in', full).execute()
}

export async function dissolveSet(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('kit_set').where('id', '=', id).execute()
}
