import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { unpack } from '../../src-domain/loadout/packed.ts'
import { asksOf, lowestC, standing } from '../../src-domain/trips/asked.ts'
import { nightsOf, readBrief } from '../../src-domain/trips/brief.ts'
import type { PackedRow, RecordColumns, TripRecord } from '../answers.ts'
import { byColumn } from './closet.ts'
import { debriefHead, debriefLines } from './debrief.ts'
import type { Raw, ReadDb } from './handles.ts'
import { burnLogs, dayLogs, legLogs, nightLogs } from './logs.ts'
import { packedOf } from './packed.ts'
import { prepared } from './prepared.ts'
import { questionsOfTrip } from './trials.ts'
import { photosOfTrip } from './trip-photos.ts'
import { tripHead } from './trips.ts'

/** A trip that is out or back as it was, with all that was said of it. */
export async function openRecord(db: ReadDb, tripId: number): Promise<Outcome<TripRecord>> {
  const head = await tripHead(db, tripId)
  if (!head.ok) return head
  const row = await db.selectFrom('record').selectAll().where('trip_id', '=', tripId).executeTakeFirst()
  if (!row) return fault('trip.planned', { name: head.value.name })
  const { brief, walker, season, zone, month } = row
  return ok({
    ...{ tripId, brief, walker, season, zone, month },
    past: row.past === 1,
    closedAt: row.closed_at,
    loadoutName: row.loadout_name,
    startsOn: row.starts_on,
    endsOn: row.ends_on,
    packed: await packedOf(db, tripId),
    debrief: await debriefHead(db, tripId),
    lines: await debriefLines(db, tripId),
    legs: await legLogs(db, tripId),
    nights: await nightLogs(db, tripId),
    days: await dayLogs(db, tripId),
    burns: await burnLogs(db, tripId),
    photos: await photosOfTrip(db, tripId),
    questions: await questionsOfTrip(db, tripId),
  })
}

/** A trip that has a record: else why not. */
export async function frozenTrip(db: ReadDb, tripId: number): Promise<Outcome<string>> {
  const head = await tripHead(db, tripId)
  if (!head.ok) return head
  const row = await db.selectFrom('record').select('id').where('trip_id', '=', tripId).executeTakeFirst()
  return row ? ok(head.value.name) : fault('trip.planned', { name: head.value.name })
}

export const onDay = `coalesce(record.starts_on, record.month || '-15', substr(record.closed_at, 1, 10))`
const lowestNight = `(SELECT min(low_c) FROM night_log WHERE night_log.trip_id = trip.id)`

/** Field and its SQL, by part; a field whose name stands in `flags` is a boolean. */
const tripFields: readonly (readonly [string, string])[] = [
  ['id', 'trip.id'],
  ['uid', 'trip.uid'],
  ['name', 'trip.name'],
  ['state', 'trip.state'],
  ['past', 'record.past'],
  ['onDay', onDay],
  ['startsOn', 'record.starts_on'],
  ['endsOn', 'record.ends_on'],
  ['month', 'record.month'],
  ['season', 'record.season'],
  ['walkerId', 'trip.walker_id'],
  ['brief', 'record.brief'],
  ['walker', 'record.walker'],
  ['nights', 'debrief.nights'],
  ['lengthM', 'debrief.length_m'],
  ['lowC', `coalesce(debrief.low_c, ${lowestNight})`],
  ['highC', 'debrief.high_c'],
  ['windKmh', 'debrief.wind_kmh'],
  ['rain', `ifnull(debrief.rain, '')`],
  ['rainHours', 'debrief.rain_hours'],
  ['foodBeforeMg', 'debrief.food_before_mg'],
  ['foodAfterMg', 'debrief.food_after_mg'],
  ['foodLeftOut', 'ifnull(debrief.food_left_out, 0)'],
  ['kept', 'debrief.kept_at IS NOT NULL'],
  ['newestItemId', 'record.newest_item_id'],
]
const tripsSql = `SELECT ${tripFields.map(([name, text]) => `${text} AS "${name}"`).join(', ')} FROM record
  JOIN trip ON trip.id = record.trip_id LEFT JOIN debrief ON debrief.trip_id = trip.id ORDER BY ${onDay}, trip.id`

const takenFields: readonly (readonly [string, string])[] = [
  ['tripId', 'p.trip_id'],
  ['packedId', 'p.id'],
  ['itemId', 'p.item_id'],
  ['supplyId', 'p.supply_id'],
  ['name', 'p.name'],
  ['lane', 'p.lane'],
  ['pieces', 'p.pieces'],
  ['amountMilli', 'p.amount_milli'],
  ['massMg', 'p.mass_mg'],
  ['carriedBy', 'p.carried_by'],
  ['use', `ifnull(d.use, 'unknown')`],
  ['said', `ifnull(d.said, '')`],
  ['verdict', `ifnull(d.verdict, '')`],
  ['change', `ifnull(d.change, '')`],
  ['onlyWhen', `ifnull(d.only_when, '')`],
  ['what', `ifnull(d.what, '')`],
  ['toItemId', 'd.to_item_id'],
]
const takenSql = `SELECT ${takenFields.map(([name, text]) => `${text} AS "${name}"`).join(', ')} FROM packed p
  LEFT JOIN debrief_line d ON d.packed_id = p.id ORDER BY p.trip_id, p.sort, p.id`

const snake = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)

/** A part whose fields are the columns of one table. */
function plain(raw: Raw, table: string, fields: readonly string[], order: string): Columns {
  return byColumn(raw, `SELECT ${fields.map(snake).join(', ')} FROM ${table} ORDER BY ${order}`, fields)
}

type Columns = Readonly<Record<string, readonly unknown[]>>

const flags: ReadonlySet<string> = new Set(['past', 'foodLeftOut', 'kept', 'leftOut'])
const withFlags = (columns: Columns): Columns =>
  Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, flags.has(name) ? values.map((one) => one === 1) : values]))

const namesOf = (fields: readonly (readonly [string, string])[]): readonly string[] => fields.map(([name]) => name)

/** Everything that learning, wear and letting go read. */
export async function recordColumns(db: ReadDb, raw: Raw): Promise<RecordColumns> {
  const trips = withFlags(byColumn(raw, tripsSql, namesOf(tripFields))) as unknown as MetTrips
  const logs = (table: string, fields: readonly string[]) =>
    withFlags(plain(raw, table, ['id', 'tripId', ...fields, 'leftOut'], 'trip_id, id'))
  const columns = {
    trips: await asBriefed(db, trips),
    taken: byColumn(raw, takenSql, namesOf(takenFields)),
    missed: missedColumns(raw),
    away: plain(raw, 'away', ['tripId', 'itemId', 'status'], 'trip_id, id'),
    legs: logs('leg_log', ['leg', 'day', 'movingMin', 'breakMin', 'lengthM', 'climbM', 'descentM', 'drunkMl', 'leftMl', 'origin']),
    nights: logs('night_log', ['night', 'lowC', 'slept']),
    days: logs('day_log', ['day', 'shoulders', 'feet', 'hungry']),
    burns: logs('burn_log', ['packedId', 'beforeMg', 'afterMg', 'heatedMl', 'boils', 'fromC']),
  }
  return columns as unknown as RecordColumns
}

function missedColumns(raw: Raw): Columns {
  const fields = ['tripId', 'itemId', 'name', 'verdict', 'change', 'toItemId']
  const sql = `SELECT ${fields.map(snake).join(', ')} FROM debrief_line WHERE packed_id IS NULL ORDER BY trip_id, id`
  return byColumn(raw, sql, fields)
}

type MetTrips = Omit<RecordColumns['trips'], 'asked' | 'expectedLowC'>

/** What the brief of that day asked; where nobody said how long it was or how many nights, what the brief had. */
async function asBriefed(db: ReadDb, trips: MetTrips): Promise<RecordColumns['trips']> {
  const asked: string[] = []
  const expectedLowC: (number | null)[] = []
  const nights: (number | null)[] = []
  const lengthM: (number | null)[] = []
  for (const [at, id] of trips.id.entries()) {
    const trip = { startsOn: trips.startsOn[at]!, endsOn: trips.endsOn[at]!, season: trips.season[at]! }
    const brief = readBrief(trips.brief[at]!)
    const met = trips.past[at]! ? { ...brief, nightsOut: trips.nights[at]!, lowC: trips.lowC[at]! } : brief
    const loadout = unpack('', trips.past[at]! ? [] : await devicesOf(db, id))
    asked.push(
      standing(asksOf(met, trip, loadout))
        .map(({ duty }) => duty)
        .join(' '),
    )
    expectedLowC.push(lowestC(brief))
    nights.push(trips.nights[at] ?? nightsOf(trip, brief))
    lengthM.push(trips.lengthM[at] ?? (brief.legs.length === 0 ? null : summed(brief.legs.map((leg) => leg.lengthM))))
  }
  return { ...trips, asked, expectedLowC, nights, lengthM }
}

const summed = (parts: readonly (number | null)[]): number | null =>
  parts.includes(null) ? null : parts.reduce<number>((sum, part) => sum + part!, 0)

/** Only things that draw current say more about what was asked. */
async function devicesOf(db: ReadDb, tripId: number): Promise<readonly PackedRow[]> {
  return (await packedOf(db, tripId)).filter(({ unit, traits }) => unit === '' && traits.some(({ code }) => code === 'draw'))
}

/** Whether a packed line is of this trip. */
export function packedIsOf(raw: Raw, tripId: number, packedId: number): boolean {
  return prepared(raw, 'SELECT 1 FROM packed WHERE id = ? AND trip_id = ?').get(packedId, tripId) !== undefined
}
