import { unpack } from '../../src-domain/loadout/packed.ts'
import type { LearningLog } from '../../src-domain/learning/logs.ts'
import { logsOfTrip, type MetTrip } from '../../src-domain/learning/read-trip.ts'
import { readBrief } from '../../src-domain/trips/brief.ts'
import { readWalker } from '../../src-domain/trips/walker.ts'
import type { TripRecord } from '../answers.ts'
import type { Raw, ReadDb } from './handles.ts'
import { prepared } from './prepared.ts'
import { onDay, openRecord } from './record.ts'

/** Trips of which a leg, a night, a burn or weighed food was told; the others say nothing to learning and are not opened. */
const toldSql = `SELECT trip.id AS id, trip.name AS name, trip.walker_id AS walkerId, ${onDay} AS onDay FROM record JOIN trip ON trip.id = record.trip_id
  WHERE trip.id IN (SELECT trip_id FROM leg_log WHERE moving_min IS NOT NULL UNION SELECT trip_id FROM night_log WHERE low_c IS NOT NULL
    UNION SELECT trip_id FROM burn_log WHERE after_mg IS NOT NULL UNION SELECT trip_id FROM debrief WHERE food_after_mg IS NOT NULL)
  ORDER BY ${onDay}, trip.id`

interface Told {
  readonly id: number
  readonly name: string
  readonly walkerId: number | null
  readonly onDay: string
}

/** Every log of every trip, oldest first. */
export async function learningLogs(db: ReadDb, raw: Raw): Promise<readonly LearningLog[]> {
  const logs: LearningLog[] = []
  for (const told of prepared(raw, toldSql).all() as Told[]) {
    const record = await openRecord(db, told.id)
    if (record.ok) logs.push(...logsOfTrip(metTrip(told, record.value)))
  }
  return logs
}

function metTrip({ id, name, walkerId, onDay: day }: Told, record: TripRecord): MetTrip {
  const { startsOn, endsOn, zone, season, debrief, legs, nights, burns } = record
  return {
    ...{ tripId: id, tripName: name, walkerId, onDay: day, debrief, legs, nights, burns },
    brief: readBrief(record.brief),
    trip: { startsOn, endsOn, zone, season },
    walker: readWalker(record.walker),
    loadout: unpack('', record.packed),
  }
}
