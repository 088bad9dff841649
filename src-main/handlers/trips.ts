import { fault, ok } from '../../src-domain/figures/fault.ts'
import { chosenLoadout, freezeTrip, thawTrip, type Moment } from '../store/freeze.ts'
import { editLoadout, loadoutRow, loadoutsOfTrip, removeLoadouts } from '../store/loadouts.ts'
import { invalid, isJson } from '../store/rows.ts'
import { changed } from '../store/transactions.ts'
import * as trips from '../store/trips.ts'
import type { ReadDb, WriteDb } from '../store/handles.ts'
import type { Outcome } from '../../src-domain/figures/fault.ts'
import type { HandlersOf } from './kinds.ts'

/** Documents that are kept whole must at least read as JSON. */
function readable(field: string, text: string | null | undefined): Outcome<null> {
  return typeof text !== 'string' || isJson(text) ? ok(null) : invalid(field, 'not JSON')
}

async function linked(
  db: ReadDb,
  { seasonId, walkerId }: { readonly seasonId?: number | null | undefined; readonly walkerId?: number | null | undefined },
): Promise<Outcome<null>> {
  const season = typeof seasonId === 'number' ? await trips.nameIn(db, 'season', seasonId) : ok('')
  if (!season.ok) return season
  const walker = typeof walkerId === 'number' ? await trips.nameIn(db, 'walker', walkerId) : ok('')
  return walker.ok ? ok(null) : walker
}

/** A trip that goes out or comes back freezes; one that is planned again thaws, as long as nothing was said of it. */
async function followState(db: WriteDb, moment: Moment, id: number, from: trips.TripState, to: trips.TripState): Promise<Outcome<null>> {
  if ((from === 'planned') === (to === 'planned')) return ok(null)
  if (to === 'planned') return thawTrip(db, id)
  const frozen = await freezeTrip(db, moment, id, await chosenLoadout(db, id))
  return frozen.ok ? ok(null) : frozen
}

export const tripHandlers: HandlersOf<'season' | 'walker' | 'trip'> = {
  'season.all': async (db) => ok(await trips.allSeasons(db)),
  'season.add': async (db, season) => {
    const brief = readable('brief', season.brief)
    return brief.ok ? changed({ id: await trips.addNamed(db, 'season', season) }, { name: season.name }) : brief
  },
  'season.edit': async (db, { id, ...fields }) => {
    const name = await trips.nameIn(db, 'season', id)
    if (!name.ok) return name
    const brief = readable('brief', fields.brief)
    if (!brief.ok) return brief
    await trips.editNamed(db, 'season', id, fields)
    return changed(null, { name: fields.name ?? name.value })
  },
  'season.remove': async (db, { id }) => {
    const name = await trips.nameIn(db, 'season', id)
    if (!name.ok) return name
    await trips.removeNamed(db, 'season', id)
    return changed(null, { name: name.value })
  },

  'walker.all': async (db) => ok(await trips.allWalkers(db)),
  'walker.add': async (db, walker) => {
    const profile = readable('profile', walker.profile)
    return profile.ok ? changed({ id: await trips.addNamed(db, 'walker', walker) }, { name: walker.name }) : profile
  },
  'walker.edit': async (db, { id, ...fields }) => {
    const name = await trips.nameIn(db, 'walker', id)
    if (!name.ok) return name
    const profile = readable('profile', fields.profile)
    if (!profile.ok) return profile
    await trips.editNamed(db, 'walker', id, fields)
    return changed(null, { name: fields.name ?? name.value })
  },
  'walker.remove': async (db, { id }) => {
    const name = await trips.nameIn(db, 'walker', id)
    if (!name.ok) return name
    await trips.removeNamed(db, 'walker', id)
    return changed(null, { name: name.value })
  },

  'trip.all': async (db) => ok(await trips.allTrips(db)),
  'trip.add': async (db, trip, around) => {
    const brief = readable('brief', trip.brief)
    if (!brief.ok) return brief
    const links = await linked(db, trip)
    if (!links.ok) return links
    const id = await trips.addNamed(db, 'trip', trip)
    const frozen = await followState(db, around, id, 'planned', trip.state ?? 'planned')
    return frozen.ok ? changed({ id }, { name: trip.name }) : frozen
  },
  'trip.edit': async (db, { id, ...fields }, around) => {
    const head = await trips.tripHead(db, id)
    if (!head.ok) return head
    const brief = readable('brief', fields.brief)
    if (!brief.ok) return brief
    const links = await linked(db, fields)
    if (!links.ok) return links
    await trips.editNamed(db, 'trip', id, fields)
    const frozen = await followState(db, around, id, head.value.state, fields.state ?? head.value.state)
    return frozen.ok ? changed(null, { name: fields.name ?? head.value.name }) : frozen
  },
  'trip.close': async (db, { id, loadoutId }, around) => {
    const head = await trips.tripHead(db, id)
    if (!head.ok) return head
    const loadout = await loadoutRow(db, loadoutId)
    if (!loadout.ok) return loadout
    if (loadout.value.trip_id !== id) return fault('row.gone', { table: 'loadout', id: loadoutId })
    const frozen = await freezeTrip(db, around, id, loadoutId)
    if (!frozen.ok) return frozen
    await editLoadout(db, loadout.value, { chosen: true })
    await trips.editNamed(db, 'trip', id, { state: 'out' })
    return changed(frozen.value, { name: head.value.name })
  },
  /** A trip takes its loadouts with it; those that descend from them stay, without the link. */
  'trip.remove': async (db, { id }) => {
    const name = await trips.nameIn(db, 'trip', id)
    if (!name.ok) return name
    await removeLoadouts(db, await loadoutsOfTrip(db, id))
    await trips.removeNamed(db, 'trip', id)
    return changed(null, { name: name.value })
  },
}
