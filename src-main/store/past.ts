import { emptyBrief } from '../../src-domain/trips/brief.ts'
import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { CheckedOf } from '../contract.ts'
import { tellTrip } from './debrief.ts'
import { insertRecord, itemLinesOf, packPast, usualLanes, type Moment, type PastLine } from './freeze.ts'
import type { WriteDb } from './handles.ts'
import { allThere } from './items.ts'
import { gone, newUid } from './rows.ts'
import { addNamed } from './trips.ts'

/**
 * Trips of before this program. What went counts as taken, never as used or as a verdict; the brief is not known,
 * so that only what every night out asks, and the cold it had, is taken as asked.
 */
export type PastGiven = CheckedOf<'past.add'>['trips'][number]

export async function addPast(db: WriteDb, moment: Moment, given: PastGiven): Promise<Outcome<number>> {
  const lines = await linesWent(db, given)
  if (!lines.ok) return lines
  const season = await kindOf(db, given.seasonId ?? null)
  if (!season.ok) return season
  const fields = { name: given.name, seasonId: given.seasonId ?? null, walkerId: given.walkerId ?? null, state: 'back' }
  const id = await addNamed(db, 'trip', fields)
  await insertRecord(db, moment, id, { ...recordOf(given), season: season.value })
  await packPast(db, moment, id, lines.value)
  await packNames(db, id, given.names ?? [], lines.value.length)
  const { nights = null, lengthM = null, lowC = null } = given
  if (nights !== null || lengthM !== null || lowC !== null) await tellTrip(db, id, { nights, lengthM, lowC })
  return ok(id)
}

const recordOf = ({ month }: PastGiven) => ({
  past: true,
  month,
  loadoutName: '',
  brief: JSON.stringify(emptyBrief),
  walker: '{}',
  startsOn: null,
  endsOn: null,
  zone: '',
})

/** The lines of the loadout less what stayed, and the items named; each once. */
async function linesWent(db: WriteDb, given: PastGiven): Promise<Outcome<readonly PastLine[]>> {
  const { loadoutId = null, stayedIds = [], itemIds = [] } = given
  const there = await allThere(db, [...stayedIds, ...itemIds])
  if (!there.ok) return there
  if (loadoutId !== null && !(await db.selectFrom('loadout').select('id').where('id', '=', loadoutId).executeTakeFirst()))
    return gone('loadout', loadoutId)
  const stayed = new Set(stayedIds)
  const from = (loadoutId === null ? [] : await itemLinesOf(db, loadoutId)).filter(({ itemId }) => !stayed.has(itemId))
  const known = new Set(from.map(({ itemId }) => itemId))
  const more = [...new Set(itemIds)].filter((id) => !known.has(id))
  return ok([...from, ...(await usualLanes(db, more))])
}

async function kindOf(db: WriteDb, seasonId: number | null) {
  if (seasonId === null) return ok('any' as const)
  const season = await db.selectFrom('season').select('kind').where('id', '=', seasonId).executeTakeFirst()
  return season ? ok(season.kind) : gone('season', seasonId)
}

/** Things that are no longer in the closet: by name alone. */
async function packNames(db: WriteDb, tripId: number, names: readonly string[], from: number): Promise<void> {
  const rows = names.map((name, at) => ({
    uid: newUid(),
    trip_id: tripId,
    name,
    kit_area: 'extras',
    lane: 'in_pack' as const,
    sort: from + at,
  }))
  if (rows.length > 0) await db.insertInto('packed').values(rows).execute()
}
