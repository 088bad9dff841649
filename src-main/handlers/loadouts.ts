import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { copyAll, setParent, takeFromParent } from '../store/descent.ts'
import type { ReadDb } from '../store/handles.ts'
import * as lines from '../store/lines.ts'
import * as loadouts from '../store/loadouts.ts'
import { changed } from '../store/transactions.ts'
import { nameIn } from '../store/trips.ts'
import type { HandlersOf } from './kinds.ts'

interface Place {
  readonly seasonId?: number | null | undefined
  readonly tripId?: number | null | undefined
}

export async function placeThere(db: ReadDb, { seasonId, tripId }: Place): Promise<Outcome<null>> {
  const season = typeof seasonId === 'number' ? await nameIn(db, 'season', seasonId) : ok('')
  if (!season.ok) return season
  const trip = typeof tripId === 'number' ? await nameIn(db, 'trip', tripId) : ok('')
  return trip.ok ? ok(null) : trip
}

/** What a step of several lines is called by: the thing if it is one, else how many, and the loadout. */
function factsOf(heads: readonly lines.LineHead[]): Readonly<Record<string, string | number>> {
  const loadout = heads[0]?.loadoutName ?? ''
  return heads.length === 1 ? { name: heads[0]!.name, count: 1, loadout } : { count: heads.length, loadout }
}

export const loadoutHandlers: HandlersOf<'loadout' | 'lines' | 'line'> = {
  'loadout.all': async (db) => ok(await loadouts.allLoadouts(db)),
  'loadout.open': (db, { ids }) => loadouts.openLoadouts(db, ids),
  'loadout.planned': async (db) => ok(await loadouts.plannedLines(db)),

  'loadout.add': async (db, { name, seasonId = null, tripId = null, fromId, descend = false }) => {
    const place = await placeThere(db, { seasonId, tripId })
    if (!place.ok) return place
    const from = fromId === undefined ? null : await loadouts.loadoutRow(db, fromId)
    if (from?.ok === false) return from
    const id = await loadouts.addLoadout(db, { name, seasonId, tripId })
    if (fromId !== undefined) await copyAll(db, fromId, id)
    if (fromId !== undefined && descend) await setParent(db, id, fromId)
    return changed({ id }, from ? { name, from: from.value.name } : { name })
  },

  'loadout.edit': async (db, { id, parentId, ...fields }) => {
    const before = await loadouts.loadoutRow(db, id)
    if (!before.ok) return before
    const place = await placeThere(db, fields)
    if (!place.ok) return place
    if (typeof parentId === 'number') {
      const straight = await loadouts.noCycle(db, id, parentId)
      if (!straight.ok) return straight
    }
    if (parentId !== undefined && parentId !== before.value.parent_id) await setParent(db, id, parentId)
    await loadouts.editLoadout(db, before.value, fields)
    return changed(null, { name: fields.name ?? before.value.name })
  },

  'loadout.remove': async (db, { id }) => {
    const before = await loadouts.loadoutRow(db, id)
    if (!before.ok) return before
    await loadouts.removeLoadouts(db, [id])
    return changed(null, { name: before.value.name })
  },

  'loadout.take': async (db, { id, keys }) => {
    const child = await loadouts.loadoutRow(db, id)
    if (!child.ok) return child
    const { parent_id: parentId, name } = child.value
    if (parentId === null) return fault('input.missing', { field: 'parentId' })
    const count = await takeFromParent(db, { ...child.value, parent_id: parentId }, keys)
    return changed({ count }, { name, count })
  },

  'lines.put': async (db, { loadoutId, lines: given }) => {
    const loadout = await loadouts.loadoutRow(db, loadoutId)
    if (!loadout.ok) return loadout
    const ids: number[] = []
    for (const [at, line] of given.entries()) {
      const put = await lines.putLine(db, loadoutId, line, at)
      if (!put.ok) return put
      ids.push(put.value)
    }
    const heads = await lines.lineHeads(db, ids)
    return heads.ok ? changed({ ids }, factsOf(heads.value)) : heads
  },

  'lines.move': async (db, { ids, lane }) => {
    const heads = await lines.lineHeads(db, ids)
    if (!heads.ok) return heads
    for (const { id } of heads.value) await lines.moveLine(db, id, lane)
    return changed(null, { ...factsOf(heads.value), lane })
  },

  'lines.remove': async (db, { ids }) => {
    const heads = await lines.lineHeads(db, ids)
    if (!heads.ok) return heads
    await lines.removeLines(db, ids)
    return changed(null, factsOf(heads.value))
  },

  'lines.copy': async (db, { ids, toLoadoutId }) => {
    const heads = await lines.lineHeads(db, ids)
    if (!heads.ok) return heads
    const to = await loadouts.loadoutRow(db, toLoadoutId)
    if (!to.ok) return to
    return changed({ count: await lines.copyLines(db, ids, toLoadoutId) }, { ...factsOf(heads.value), loadout: to.value.name })
  },

  'line.edit': async (db, { id, ...fields }) => {
    const heads = await lines.lineHeads(db, [id])
    if (!heads.ok) return heads
    await lines.editLine(db, id, fields as Partial<lines.LineGiven>)
    return changed(null, factsOf(heads.value))
  },
}
