import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { BurnLog, DayLog, LegLog, NightLog } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { flag, gone, isEmpty, newUid, patchOf } from './rows.ts'

/** Logs of a trip: of each leg, night and day, and of fuel weighed before and after. Each can be passed over by learning. */
export const logTables = { leg: 'leg_log', night: 'night_log', day: 'day_log', burn: 'burn_log' } as const
export type LogKind = keyof typeof logTables

export async function legLogs(db: ReadDb, tripId: number): Promise<readonly LegLog[]> {
  const rows = await db.selectFrom('leg_log').selectAll().where('trip_id', '=', tripId).orderBy('leg').execute()
  return rows.map(({ id, leg, day, name, origin, note, ...row }) => ({
    ...{ id, leg, day, name, origin, note },
    startedMinute: row.started_minute,
    movingMin: row.moving_min,
    breakMin: row.break_min,
    lengthM: row.length_m,
    climbM: row.climb_m,
    descentM: row.descent_m,
    drunkMl: row.drunk_ml,
    leftMl: row.left_ml,
    leftOut: row.left_out === 1,
  }))
}

export async function nightLogs(db: ReadDb, tripId: number): Promise<readonly NightLog[]> {
  const rows = await db.selectFrom('night_log').selectAll().where('trip_id', '=', tripId).orderBy('night').execute()
  return rows.map(({ id, night, slept, note, ...row }) => ({
    ...{ id, night, slept, note },
    lowC: row.low_c,
    wokeMinute: row.woke_minute,
    leftOut: row.left_out === 1,
  }))
}

export async function dayLogs(db: ReadDb, tripId: number): Promise<readonly DayLog[]> {
  const rows = await db.selectFrom('day_log').selectAll().where('trip_id', '=', tripId).orderBy('day').execute()
  return rows.map(({ id, day, shoulders, feet, hungry, note, left_out }) => ({
    ...{ id, day, shoulders, feet, hungry, note },
    leftOut: left_out === 1,
  }))
}

export async function burnLogs(db: ReadDb, tripId: number): Promise<readonly BurnLog[]> {
  const rows = await db.selectFrom('burn_log').selectAll().where('trip_id', '=', tripId).orderBy('id').execute()
  return rows.map(({ id, name, boils, note, ...row }) => ({
    ...{ id, name, boils, note },
    packedId: row.packed_id,
    beforeMg: row.before_mg,
    afterMg: row.after_mg,
    heatedMl: row.heated_ml,
    fromC: row.from_c,
    leftOut: row.left_out === 1,
  }))
}

const keyOf = { leg: 'leg', night: 'night', day: 'day' } as const

/** Writes what is said of a leg, night or day; its number is its key within the trip, and the first word makes the row. */
export async function putLog(
  db: WriteDb,
  kind: keyof typeof keyOf,
  { tripId, ...fields }: Readonly<Record<string, unknown>> & { readonly tripId: number },
): Promise<number> {
  const patch = patchOf<'leg_log'>(fields)
  const row = await db
    .insertInto(logTables[kind] as 'leg_log')
    .values({ uid: newUid(), trip_id: tripId, ...patch } as never)
    .onConflict((on) => on.columns(['trip_id', keyOf[kind] as 'leg']).doUpdateSet(patch))
    .returning('id')
    .executeTakeFirstOrThrow()
  return row.id
}

export async function putBurn(
  db: WriteDb,
  { tripId, id, ...fields }: Readonly<Record<string, unknown>> & { readonly tripId: number; readonly id?: number | undefined },
): Promise<Outcome<number>> {
  const patch = patchOf<'burn_log'>(fields)
  if (id === undefined) {
    const row = { uid: newUid(), trip_id: tripId, ...patch }
    return ok(
      (
        await db
          .insertInto('burn_log')
          .values(row as never)
          .returning('id')
          .executeTakeFirstOrThrow()
      ).id,
    )
  }
  const there = await db.selectFrom('burn_log').select('id').where('id', '=', id).where('trip_id', '=', tripId).executeTakeFirst()
  if (!there) return gone('burn_log', id)
  if (!isEmpty(patch)) await db.updateTable('burn_log').set(patch).where('id', '=', id).execute()
  return ok(id)
}

export async function logTrip(db: ReadDb, kind: LogKind, id: number): Promise<Outcome<number>> {
  const row = await db.selectFrom(logTables[kind]).select('trip_id').where('id', '=', id).executeTakeFirst()
  return row ? ok(row.trip_id) : gone(logTables[kind], id)
}

export async function removeLog(db: WriteDb, kind: LogKind, id: number): Promise<void> {
  await db.deleteFrom(logTables[kind]).where('id', '=', id).execute()
}

export async function leaveLogOut(db: WriteDb, kind: LogKind, id: number, leftOut: boolean): Promise<void> {
  await db
    .updateTable(logTables[kind])
    .set({ left_out: flag(leftOut) })
    .where('id', '=', id)
    .execute()
}
