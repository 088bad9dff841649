import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { BaseLine, LineRow, LoadoutHead, LoadoutOpen, PlannedLine } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { flag, gone, inIds, isEmpty, newUid, patchOf, ruleOf } from './rows.ts'

function heads(db: ReadDb) {
  return db
    .selectFrom('loadout')
    .selectAll('loadout')
    .select((eb) =>
      eb
        .selectFrom('line')
        .select((line) => line.fn.countAll<number>().as('n'))
        .whereRef('line.loadout_id', '=', 'loadout.id')
        .as('lines'),
    )
    .orderBy('loadout.sort')
    .orderBy('loadout.id')
}
type FoundHead = Awaited<ReturnType<ReturnType<typeof heads>['execute']>>[number]

function head({ id, uid, name, season_id, trip_id, parent_id, chosen, note, lines }: FoundHead): LoadoutHead {
  return { id, uid, name, seasonId: season_id, tripId: trip_id, parentId: parent_id, chosen: chosen === 1, note, lines: lines ?? 0 }
}

export async function allLoadouts(db: ReadDb): Promise<readonly LoadoutHead[]> {
  return (await heads(db).execute()).map(head)
}

/** Loadouts with their lines, in the order asked; one that is gone is an error of the asker. */
export async function openLoadouts(db: ReadDb, ids: readonly number[]): Promise<Outcome<readonly LoadoutOpen[]>> {
  const found = new Map((await heads(db).where('loadout.id', 'in', inIds(ids)).execute()).map((row) => [row.id, row]))
  const missing = ids.find((id) => !found.has(id))
  if (missing !== undefined) return gone('loadout', missing)
  const lines = Map.groupBy(await linesOf(db, ids), ({ loadoutId }) => loadoutId)
  return ok(ids.map((id) => ({ ...head(found.get(id)!), line: lines.get(id) ?? [], base: baseOf(found.get(id)!.base) })))
}

export const baseOf = (text: string | null): readonly BaseLine[] | null => (text === null ? null : (JSON.parse(text) as BaseLine[]))

export async function linesOf(db: ReadDb, loadoutIds: readonly number[]): Promise<readonly LineRow[]> {
  const rows = await db.selectFrom('line').selectAll().where('loadout_id', 'in', inIds(loadoutIds)).orderBy('sort').orderBy('id').execute()
  return rows.map((row) => ({
    id: row.id,
    uid: row.uid,
    loadoutId: row.loadout_id,
    itemId: row.item_id,
    supplyId: row.supply_id,
    lane: row.lane,
    pieces: row.pieces,
    amountMilli: row.amount_milli,
    amountFrom: row.amount_from,
    rule: ruleOf(row.rule),
    containerId: row.container_id,
    carriedBy: row.carried_by,
    note: row.note,
    sort: row.sort,
  }))
}

/** Item lines of the loadouts of trips that are planned or out: for the queue at the bench, and for things promised twice. */
export async function plannedLines(db: ReadDb): Promise<readonly PlannedLine[]> {
  const rows = await db
    .selectFrom('line')
    .innerJoin('loadout', 'loadout.id', 'line.loadout_id')
    .innerJoin('trip', 'trip.id', 'loadout.trip_id')
    .select([
      'loadout.id as loadoutId',
      'loadout.name as loadoutName',
      'trip.id as tripId',
      'trip.starts_on as startsOn',
      'trip.ends_on as endsOn',
    ])
    .select(['line.item_id as itemId', 'line.pieces', 'line.carried_by as carriedBy'])
    .where('trip.state', 'in', ['planned', 'out'])
    .where('line.item_id', 'is not', null)
    .orderBy('trip.starts_on')
    .orderBy('line.id')
    .execute()
  return rows.map((row) => ({ ...row, itemId: row.itemId! }))
}

export interface LoadoutStored {
  readonly id: number
  readonly name: string
  readonly trip_id: number | null
  readonly parent_id: number | null
  readonly base: string | null
}

export async function loadoutRow(db: ReadDb, id: number): Promise<Outcome<LoadoutStored>> {
  const row = await db.selectFrom('loadout').select(['id', 'name', 'trip_id', 'parent_id', 'base']).where('id', '=', id).executeTakeFirst()
  return row ? ok(row) : gone('loadout', id)
}

export interface NewLoadout {
  readonly name: string
  readonly seasonId: number | null
  readonly tripId: number | null
}

/** A new loadout; the first of a trip is its chosen one. */
export async function addLoadout(db: WriteDb, { name, seasonId, tripId }: NewLoadout): Promise<number> {
  const chosen = tripId !== null && !(await hasChosen(db, tripId))
  const row = { uid: newUid(), name, season_id: seasonId, trip_id: tripId, chosen: flag(chosen) }
  return (await db.insertInto('loadout').values(row).returning('id').executeTakeFirstOrThrow()).id
}

async function hasChosen(db: ReadDb, tripId: number): Promise<boolean> {
  return (
    (await db.selectFrom('loadout').select('id').where('trip_id', '=', tripId).where('chosen', '=', 1).executeTakeFirst()) !== undefined
  )
}

export interface LoadoutFields {
  readonly name?: string | undefined
  readonly seasonId?: number | null | undefined
  readonly tripId?: number | null | undefined
  readonly chosen?: boolean | undefined
  readonly note?: string | undefined
}

/** Writes the fields given, and keeps a trip at one chosen loadout. */
export async function editLoadout(db: WriteDb, before: LoadoutStored, fields: LoadoutFields): Promise<void> {
  const tripId = fields.tripId === undefined ? before.trip_id : fields.tripId
  const moves = tripId !== before.trip_id
  if (fields.chosen === true && tripId !== null) {
    await db.updateTable('loadout').set({ chosen: 0 }).where('trip_id', '=', tripId).where('id', '<>', before.id).execute()
  }
  const chosen = fields.chosen ?? (moves ? tripId !== null && !(await hasChosen(db, tripId)) : undefined)
  const patch = patchOf<'loadout'>({ ...fields, chosen })
  if (!isEmpty(patch)) await db.updateTable('loadout').set(patch).where('id', '=', before.id).execute()
}

/** Deletes loadouts; those that descend from them lose the link and its base, and keep their lines. */
export async function removeLoadouts(db: WriteDb, ids: readonly number[]): Promise<void> {
  await db.updateTable('loadout').set({ parent_id: null, base: null }).where('parent_id', 'in', inIds(ids)).execute()
  await db.deleteFrom('loadout').where('id', 'in', inIds(ids)).execute()
}

export async function loadoutsOfTrip(db: ReadDb, tripId: number): Promise<readonly number[]> {
  return (await db.selectFrom('loadout').select('id').where('trip_id', '=', tripId).execute()).map(({ id }) => id)
}

/** A loadout may not descend from itself or from one that descends from it. */
export async function noCycle(db: ReadDb, id: number, parentId: number): Promise<Outcome<null>> {
  const seen = new Set<number>([id])
  let at: number | null = parentId
  while (at !== null) {
    if (seen.has(at)) return fault('loadout.cycle', { id, parentId })
    seen.add(at)
    const row: Outcome<LoadoutStored> = await loadoutRow(db, at)
    if (!row.ok) return row
    at = row.value.parent_id
  }
  return ok(null)
}
