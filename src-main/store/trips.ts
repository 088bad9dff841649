import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { SeasonRow, TripRow, WalkerRow } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { gone, isEmpty, newUid, patchOf } from './rows.ts'

/** Seasons, walkers and trips: named rows with a document each. */

export async function allSeasons(db: ReadDb): Promise<readonly SeasonRow[]> {
  return db.selectFrom('season').select(['id', 'uid', 'name', 'kind', 'brief']).orderBy('sort').orderBy('id').execute()
}

export async function allWalkers(db: ReadDb): Promise<readonly WalkerRow[]> {
  return db.selectFrom('walker').select(['id', 'uid', 'name', 'profile']).orderBy('id').execute()
}

/** Newest start first, a past trip by its month; trips without a day stand at the top, being still to plan. */
export async function allTrips(db: ReadDb): Promise<readonly TripRow[]> {
  const rows = await db
    .selectFrom('trip')
    .leftJoin('record', 'record.trip_id', 'trip.id')
    .leftJoin('debrief', 'debrief.trip_id', 'trip.id')
    .selectAll('trip')
    .select(['record.past', 'record.month', 'debrief.kept_at'])
    .orderBy(
      (eb) => eb.fn.coalesce('trip.starts_on', 'record.month'),
      (by) => by.desc().nullsFirst(),
    )
    .orderBy('trip.id', 'desc')
    .execute()
  return rows.map(({ id, uid, name, season_id, walker_id, starts_on, ends_on, zone, state, brief, note, past, month, kept_at }) => ({
    id,
    uid,
    name,
    seasonId: season_id,
    walkerId: walker_id,
    startsOn: starts_on,
    endsOn: ends_on,
    zone,
    state,
    brief,
    note,
    past: past === 1,
    month,
    keptAt: kept_at,
  }))
}

export type TripState = TripRow['state']

export async function tripHead(db: ReadDb, id: number): Promise<Outcome<{ readonly name: string; readonly state: TripState }>> {
  const row = await db.selectFrom('trip').select(['name', 'state']).where('id', '=', id).executeTakeFirst()
  return row ? ok(row) : gone('trip', id)
}

type Named = 'season' | 'walker' | 'trip'

export async function nameIn(db: ReadDb, table: Named, id: number): Promise<Outcome<string>> {
  const row = await db.selectFrom(table).select('name').where('id', '=', id).executeTakeFirst()
  return row ? ok(row.name) : gone(table, id)
}

export async function addNamed(db: WriteDb, table: Named, fields: Readonly<Record<string, unknown>>): Promise<number> {
  const row = { uid: newUid(), ...patchOf<Named>(fields) }
  return (
    await db
      .insertInto(table)
      .values(row as never)
      .returning('id')
      .executeTakeFirstOrThrow()
  ).id
}

export async function editNamed(db: WriteDb, table: Named, id: number, fields: Readonly<Record<string, unknown>>): Promise<void> {
  const patch = patchOf<Named>(fields)
  if (!isEmpty(patch))
    await db
      .updateTable(table)
      .set(patch as never)
      .where('id', '=', id)
      .execute()
}

export async function removeNamed(db: WriteDb, table: Named, id: number): Promise<void> {
  await db.deleteFrom(table).where('id', '=', id).execute()
}
