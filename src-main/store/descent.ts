import type { BaseLine } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { writeLine, type LineStored } from './lines.ts'
import { baseOf, type LoadoutStored } from './loadouts.ts'
import { ruleOf, without } from './rows.ts'

/**
 * Descent: a loadout made from another keeps the link and the other's lines as they were then (`base`), so that comparing parent, child and base
 * says which side moved. Nothing flows by itself; `take` applies the lines chosen and renews the base for them.
 */

/** A parent's line under its key, with what the child's line is made of. */
interface Keyed {
  readonly base: BaseLine
  readonly stored: LineStored
}

const keyOf = (uid: string, lane: string, containerUid: string | null): string =>
  `${uid}:${lane}${containerUid === null ? '' : `:${containerUid}`}`

async function keyedLines(db: ReadDb, loadoutId: number): Promise<readonly Keyed[]> {
  const rows = await db
    .selectFrom('line')
    .leftJoin('item', 'item.id', 'line.item_id')
    .leftJoin('supply', 'supply.id', 'line.supply_id')
    .leftJoin('item as container', 'container.id', 'line.container_id')
    .selectAll('line')
    .select(['item.uid as itemUid', 'supply.uid as supplyUid', 'container.uid as containerUid'])
    .where('line.loadout_id', '=', loadoutId)
    .orderBy('line.sort')
    .orderBy('line.id')
    .execute()
  return rows.map(({ itemUid, supplyUid, containerUid, ...row }) =>
    keyed(without(row, 'id', 'uid', 'loadout_id', 'sort'), itemUid, supplyUid, containerUid),
  )
}

function keyed(stored: LineStored, itemUid: string | null, supplyUid: string | null, containerUid: string | null): Keyed {
  return {
    stored,
    base: {
      key: keyOf((itemUid ?? supplyUid)!, stored.lane, containerUid),
      itemUid,
      supplyUid,
      lane: stored.lane,
      pieces: stored.pieces,
      amountMilli: stored.amount_milli,
      amountFrom: stored.amount_from,
      rule: ruleOf(stored.rule),
      containerUid,
      carriedBy: stored.carried_by,
    },
  }
}

/** The lines of a loadout as a base keeps them. */
async function baseFrom(db: ReadDb, loadoutId: number): Promise<string> {
  return JSON.stringify((await keyedLines(db, loadoutId)).map(({ base }) => base))
}

/** Copies every line of one loadout into another that has none yet. */
export async function copyAll(db: WriteDb, fromId: number, toId: number): Promise<void> {
  for (const { stored } of await keyedLines(db, fromId)) await writeLine(db, toId, stored)
}

/** Links a loadout to a parent, with the parent's lines as they are now; null clears the link. */
export async function setParent(db: WriteDb, id: number, parentId: number | null): Promise<void> {
  const base = parentId === null ? null : await baseFrom(db, parentId)
  await db.updateTable('loadout').set({ parent_id: parentId, base }).where('id', '=', id).execute()
}

/**
 * Makes the child's lines under these keys what the parent's are now: written, or taken out where the parent has none. Renews the base for them.
 * Keys that neither parent nor base know are passed over. Answers how many were applied.
 */
export async function takeFromParent(
  db: WriteDb,
  child: LoadoutStored & { readonly parent_id: number },
  keys: readonly string[],
): Promise<number> {
  const parent = new Map((await keyedLines(db, child.parent_id)).map((line) => [line.base.key, line]))
  const mine = new Map((await ownKeys(db, child.id)).map(({ key, id }) => [key, id]))
  const base = new Map((baseOf(child.base) ?? []).map((line) => [line.key, line]))
  const known = [...new Set(keys)].filter((key) => parent.has(key) || base.has(key))
  // Lines that the parent no longer has go first, so that one moved between lanes does not meet itself.
  for (const key of known.filter((one) => !parent.has(one))) {
    const id = mine.get(key)
    if (id !== undefined) await db.deleteFrom('line').where('id', '=', id).execute()
    base.delete(key)
  }
  for (const key of known.filter((one) => parent.has(one))) {
    // A base knows no notes: the child keeps its own.
    await writeLine(db, child.id, without(parent.get(key)!.stored, 'note'))
    base.set(key, parent.get(key)!.base)
  }
  await db
    .updateTable('loadout')
    .set({ base: JSON.stringify([...base.values()]) })
    .where('id', '=', child.id)
    .execute()
  return known.length
}

async function ownKeys(db: ReadDb, loadoutId: number): Promise<readonly { readonly key: string; readonly id: number }[]> {
  const rows = await db
    .selectFrom('line')
    .leftJoin('item', 'item.id', 'line.item_id')
    .leftJoin('supply', 'supply.id', 'line.supply_id')
    .leftJoin('item as container', 'container.id', 'line.container_id')
    .select(['line.id', 'line.lane', 'container.uid as containerUid'])
    .select((eb) => eb.fn.coalesce('item.uid', 'supply.uid').as('uid'))
    .where('line.loadout_id', '=', loadoutId)
    .execute()
  return rows.map(({ id, uid, lane, containerUid }) => ({ id, key: keyOf(uid!, lane, containerUid) }))
}
