import { filledByBrief } from '../../src-domain/checks/by-brief.ts'
import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { gather, indexKit } from '../../src-domain/loadout/gather.ts'
import type { Line, Loadout } from '../../src-domain/loadout/loadout.ts'
import { isThere, packLine } from '../../src-domain/loadout/packed.ts'
import { readBrief } from '../../src-domain/trips/brief.ts'
import { readWalker } from '../../src-domain/trips/walker.ts'
import { closetRows, traitColumns } from './closet.ts'
import type { Raw, ReadDb, WriteDb } from './handles.ts'
import { linesOf } from './loadouts.ts'
import { flag, gone, inIds, newUid, patchOf } from './rows.ts'
import { allSupplies } from './supplies.ts'

/** What freezing needs besides its handle. */
export interface Moment {
  readonly raw: Raw
  readonly now: Date
  readonly today: string
}

export interface Frozen {
  readonly packed: number
  /** Lines that were not there to be packed: wished for, sold, or missing at the door. */
  readonly leftOut: number
}

interface AroundTrip {
  readonly name: string
  readonly state: 'planned' | 'out' | 'back'
  readonly brief: string
  readonly walker: string
  readonly season: 'spring' | 'summer' | 'autumn' | 'winter' | 'any'
  readonly startsOn: string | null
  readonly endsOn: string | null
  readonly zone: string
}

/** The trip with its season and who walks: the walker it names, else the first. */
async function aroundTrip(db: ReadDb, tripId: number): Promise<Outcome<AroundTrip>> {
  const row = await db
    .selectFrom('trip')
    .leftJoin('season', 'season.id', 'trip.season_id')
    .leftJoin('walker', 'walker.id', 'trip.walker_id')
    .select(['trip.name', 'trip.state', 'trip.brief', 'trip.starts_on as startsOn', 'trip.ends_on as endsOn', 'trip.zone'])
    .select(['season.kind', 'walker.profile'])
    .where('trip.id', '=', tripId)
    .executeTakeFirst()
  if (!row) return gone('trip', tripId)
  const first = row.profile ?? (await db.selectFrom('walker').select('profile').orderBy('id').executeTakeFirst())?.profile
  const { kind, profile: _, ...trip } = row
  return ok({ ...trip, walker: first ?? '{}', season: kind ?? 'any' })
}

/** Writes the record of a trip and its packed lines as they are now. `loadoutId` null: nothing is known of what was packed. */
export async function freezeTrip(db: WriteDb, moment: Moment, tripId: number, loadoutId: number | null): Promise<Outcome<Frozen>> {
  const around = await aroundTrip(db, tripId)
  if (!around.ok) return around
  const there = await db.selectFrom('record').select('id').where('trip_id', '=', tripId).executeTakeFirst()
  if (there) return fault('trip.frozen', { name: around.value.name })
  const head = loadoutId === null ? null : await db.selectFrom('loadout').select('name').where('id', '=', loadoutId).executeTakeFirst()
  if (head === undefined) return gone('loadout', loadoutId!)
  await insertRecord(db, moment, tripId, { ...around.value, loadoutName: head?.name ?? '' })
  await insertAway(db, tripId)
  if (loadoutId === null) return ok({ packed: 0, leftOut: 0 })
  const loadout = await loadoutNow(db, moment, loadoutId, around.value)
  return ok(await packAll(db, tripId, loadoutId, loadout))
}

interface RecordGiven extends Omit<AroundTrip, 'name' | 'state'> {
  readonly loadoutName: string
  readonly past?: boolean
  readonly month?: string
}

export async function insertRecord(db: WriteDb, { now }: Moment, tripId: number, given: RecordGiven): Promise<void> {
  const newest = await db
    .selectFrom('item')
    .select((eb) => eb.fn.max('id').as('id'))
    .executeTakeFirst()
  const { brief, walker, season, zone } = given
  const row = {
    uid: newUid(),
    trip_id: tripId,
    past: flag(given.past ?? false),
    month: given.month ?? null,
    closed_at: now.toISOString(),
    loadout_name: given.loadoutName,
    ...{ brief, walker, season, zone },
    starts_on: given.startsOn,
    ends_on: given.endsOn,
    newest_item_id: given.past === true ? null : (newest?.id ?? null),
  }
  await db.insertInto('record').values(row).execute()
}

/** Items that are not simply owned now: letting go asks later what could have gone along. */
async function insertAway(db: WriteDb, tripId: number): Promise<void> {
  const rows = await db.selectFrom('item').select(['id', 'status']).where('status', '<>', 'owned').orderBy('id').execute()
  const away = rows.flatMap(({ id, status }) => (status === 'owned' ? [] : [{ uid: newUid(), trip_id: tripId, item_id: id, status }]))
  for (let at = 0; at < away.length; at += 500)
    await db
      .insertInto('away')
      .values(away.slice(at, at + 500))
      .execute()
}

/** The loadout as the window shows it: amounts that follow the brief are those of this moment. */
async function loadoutNow(db: WriteDb, { raw, today }: Moment, loadoutId: number, around: AroundTrip): Promise<Loadout> {
  const lines = await linesOf(db, [loadoutId])
  const itemIds = [...new Set(lines.flatMap(({ itemId, containerId }) => [itemId, containerId]).filter((id) => id !== null))]
  const index = indexKit(closetRows(raw, itemIds), traitColumns(raw), await allSupplies(db))
  const { loadout } = gather(index, '', lines)
  const { startsOn, endsOn, zone, season } = around
  const trip = { startsOn, endsOn, zone, season }
  return filledByBrief({ loadout, trip, brief: readBrief(around.brief), walker: readWalker(around.walker), today }).loadout
}

async function packAll(db: WriteDb, tripId: number, loadoutId: number, { lines }: Loadout): Promise<Frozen> {
  const ticks = await db.selectFrom('door_line').selectAll().where('loadout_id', '=', loadoutId).where('line_id', 'is not', null).execute()
  const tickOf = new Map(ticks.map((tick) => [tick.line_id, tick]))
  const goes = lines.filter((line) => isThere(line) && tickOf.get(line.id)?.state !== 'missing')
  for (const [sort, line] of goes.entries()) {
    const tick = tickOf.get(line.id)
    await insertPacked(db, tripId, line, {
      sort,
      door: tick?.state === 'packed' ? 'packed' : 'open',
      was_missing: tick?.was_missing ?? 0,
    })
  }
  return { packed: goes.length, leftOut: lines.length - goes.length }
}

interface Standing {
  readonly sort: number
  readonly door: 'open' | 'packed'
  readonly was_missing: number
}

async function insertPacked(db: WriteDb, tripId: number, line: Line, standing: Standing): Promise<void> {
  const row = { uid: newUid(), trip_id: tripId, ...patchOf<'packed'>({ ...packLine(line) }), ...standing }
  await db
    .insertInto('packed')
    .values(row as never)
    .execute()
}

/** Lines of a loadout for a trip of long ago: what went, as the things are known now, without amounts of supplies. */
export async function packPast(db: WriteDb, moment: Moment, tripId: number, lines: readonly PastLine[]): Promise<void> {
  const itemIds = [...new Set(lines.map(({ itemId }) => itemId))]
  const index = indexKit(closetRows(moment.raw, itemIds), traitColumns(moment.raw), [])
  for (const [sort, { itemId, lane, pieces }] of lines.entries()) {
    const item = index.item(itemId)
    if (item === null) continue
    const owned = { ...item, status: 'owned' as const }
    const line: Line = { kind: 'item', id: sort, lane, carriedBy: '', note: '', item: owned, pieces }
    await insertPacked(db, tripId, line, { sort, door: 'open', was_missing: 0 })
  }
}

export interface PastLine {
  readonly itemId: number
  readonly lane: 'on_me' | 'in_pack' | 'used_up'
  readonly pieces: number
}

/** Takes the record away again; refused once anything was said of the trip. */
export async function thawTrip(db: WriteDb, tripId: number): Promise<Outcome<null>> {
  const record = await db.selectFrom('record').select('past').where('trip_id', '=', tripId).executeTakeFirst()
  if (!record) return ok(null)
  if (record.past === 1 || (await isTold(db, tripId))) return fault('trip.frozen')
  for (const table of ['packed', 'away', 'record'] as const) await db.deleteFrom(table).where('trip_id', '=', tripId).execute()
  return ok(null)
}

const tellings = ['debrief', 'debrief_line', 'leg_log', 'night_log', 'day_log', 'burn_log', 'trip_photo', 'trial_answer'] as const

async function isTold(db: ReadDb, tripId: number): Promise<boolean> {
  for (const table of tellings)
    if (await db.selectFrom(table).select('id').where('trip_id', '=', tripId).limit(1).executeTakeFirst()) return true
  return (
    (await db.selectFrom('packed').select('id').where('trip_id', '=', tripId).where('corrected', '=', 1).executeTakeFirst()) !== undefined
  )
}

export async function chosenLoadout(db: ReadDb, tripId: number): Promise<number | null> {
  const row = await db.selectFrom('loadout').select('id').where('trip_id', '=', tripId).where('chosen', '=', 1).executeTakeFirst()
  return row?.id ?? null
}

/** Lines of items of a loadout in their order; what is only wished for has never been anywhere. */
export async function itemLinesOf(db: ReadDb, loadoutId: number): Promise<readonly PastLine[]> {
  const rows = await db
    .selectFrom('line')
    .innerJoin('item', 'item.id', 'line.item_id')
    .select(['item.id as itemId', 'line.lane', 'line.pieces'])
    .where('line.loadout_id', '=', loadoutId)
    .where('item.status', '<>', 'wished')
    .orderBy('line.sort')
    .orderBy('line.id')
    .execute()
  return rows
}

export async function usualLanes(db: ReadDb, ids: readonly number[]): Promise<readonly PastLine[]> {
  const rows = await db.selectFrom('item').select(['id as itemId', 'usual_lane as lane', 'pieces']).where('id', 'in', inIds(ids)).execute()
  const found = new Map(rows.map((row) => [row.itemId, row]))
  return ids.flatMap((id) => found.get(id) ?? [])
}
