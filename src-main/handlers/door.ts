import { ok } from '../../src-domain/figures/fault.ts'
import * as door from '../store/door.ts'
import { lineHeads } from '../store/lines.ts'
import { loadoutRow } from '../store/loadouts.ts'
import { gone } from '../store/rows.ts'
import { changed } from '../store/transactions.ts'
import type { HandlersOf } from './kinds.ts'

export const doorHandlers: HandlersOf<'door'> = {
  'door.open': async (db, { loadoutId }, { raw }) => {
    const loadout = await loadoutRow(db, loadoutId)
    return loadout.ok ? ok(await door.doorList(db, raw, loadoutId)) : loadout
  },

  'door.tick': async (db, { loadoutId, lineIds, state }) => {
    const there = await door.linesThere(db, loadoutId, lineIds)
    if (!there.ok) return there
    const heads = await lineHeads(db, lineIds)
    if (!heads.ok) return heads
    await door.tick(db, loadoutId, lineIds, state)
    return changed(null, { ...(heads.value.length === 1 ? { name: heads.value[0]!.name } : {}), count: heads.value.length, state })
  },

  'door.place': async (db, placed) => {
    const heads = await lineHeads(db, [placed.lineId])
    if (!heads.ok) return heads
    await door.placeAtDoor(db, heads.value[0]!.loadoutId, placed)
    return changed(null, { name: heads.value[0]!.name })
  },

  'door.add': async (db, { loadoutId, name }) => {
    const loadout = await loadoutRow(db, loadoutId)
    return loadout.ok ? changed({ id: await door.addOwn(db, loadoutId, name) }, { name }) : loadout
  },

  'door.own': async (db, { id, ...fields }) => {
    const head = await door.ownHead(db, id)
    if (!head.ok) return head
    await door.editOwn(db, id, fields)
    return changed(null, { name: fields.name ?? head.value.name })
  },

  'door.remove': async (db, { id }) => {
    const head = await door.ownHead(db, id)
    if (!head.ok) return head
    await door.removeOwn(db, id)
    return changed(null, { name: head.value.name })
  },

  'door.weigh': async (db, weighed) => {
    const loadout = await loadoutRow(db, weighed.loadoutId)
    if (!loadout.ok) return loadout
    if (weighed.scaleId !== null && !(await db.selectFrom('scale').select('id').where('id', '=', weighed.scaleId).executeTakeFirst()))
      return gone('scale', weighed.scaleId)
    await door.weighAtDoor(db, weighed)
    return changed(null, { name: loadout.value.name })
  },
}
