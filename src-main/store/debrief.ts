import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { fitsVerdict, type Use, type Verdict } from '../../src-domain/trips/record.ts'
import type { DebriefHead, DebriefLine } from '../answers.ts'
import type { CheckedOf } from '../contract.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { gone, invalid, isEmpty, newUid, patchOf } from './rows.ts'

/** What was said of a trip and of the things that went. What nobody said has no row, or says so. */
export async function debriefHead(db: ReadDb, tripId: number): Promise<DebriefHead | null> {
  const row = await db.selectFrom('debrief').selectAll().where('trip_id', '=', tripId).executeTakeFirst()
  if (!row) return null
  const { rain, nights, note } = row
  return {
    ...{ rain, nights, note },
    lowC: row.low_c,
    highC: row.high_c,
    windKmh: row.wind_kmh,
    rainHours: row.rain_hours,
    lengthM: row.length_m,
    foodBeforeMg: row.food_before_mg,
    foodAfterMg: row.food_after_mg,
    foodLeftOut: row.food_left_out === 1,
    keptAt: row.kept_at,
  }
}

export async function debriefLines(db: ReadDb, tripId: number): Promise<readonly DebriefLine[]> {
  const rows = await db.selectFrom('debrief_line').selectAll().where('trip_id', '=', tripId).orderBy('id').execute()
  return rows.map(({ id, name, use, said, verdict, change, what, nights, note, ...row }) => ({
    ...{ id, name, use, said, verdict, change, what, nights, note },
    packedId: row.packed_id,
    itemId: row.item_id,
    onlyWhen: row.only_when,
    toItemId: row.to_item_id,
    amountMilli: row.amount_milli,
    lowC: row.low_c,
    windKmh: row.wind_kmh,
    rainHours: row.rain_hours,
    lengthM: row.length_m,
  }))
}

type Told = Readonly<Record<string, unknown>>

export async function tellTrip(db: WriteDb, tripId: number, fields: Told): Promise<void> {
  const patch = patchOf<'debrief'>(fields)
  if (isEmpty(patch)) return
  await db
    .insertInto('debrief')
    .values({ uid: newUid(), trip_id: tripId, ...patch } as never)
    .onConflict((on) => on.column('trip_id').doUpdateSet(patch))
    .execute()
}

type LineSaid = Omit<CheckedOf<'debrief.line'>, 'packedId'>

/** Of a packed line: the first word makes the row. */
export async function sayOfPacked(db: WriteDb, tripId: number, packedId: number, said: LineSaid): Promise<Outcome<number | null>> {
  const found = await db.selectFrom('debrief_line').select('id').where('packed_id', '=', packedId).executeTakeFirst()
  if (found) return sayOf(db, found.id, said)
  const row = await db
    .insertInto('debrief_line')
    .values({ uid: newUid(), trip_id: tripId, packed_id: packedId })
    .returning('id')
    .executeTakeFirstOrThrow()
  return sayOf(db, row.id, said)
}

/** Writes what was said; a verdict that goes takes along what it asked to change. Gives the thing that is added or swapped for. */
export async function sayOf(db: WriteDb, id: number, { wish, ...said }: LineSaid): Promise<Outcome<number | null>> {
  const before = await db.selectFrom('debrief_line').selectAll().where('id', '=', id).executeTakeFirst()
  if (!before) return gone('debrief_line', id)
  const verdict = said.verdict ?? before.verdict
  const change = said.change ?? (fitsVerdict(verdict, before.change) ? before.change : '')
  if (!fitsVerdict(verdict, change)) return invalid('change', `${change} is no way to ${verdict === '' ? 'say nothing' : verdict}`)
  const toItem = await itemTo(db, said.toItemId, wish)
  if (!toItem.ok) return toItem
  const keeps = verdict === before.verdict && change === before.change
  const left = keeps ? {} : { toItemId: null, amountMilli: null }
  const made = toItem.value === undefined ? {} : { toItemId: toItem.value }
  const patch = patchOf<'debrief_line'>({ ...left, ...said, verdict, change, ...made, said: 'one' })
  await db.updateTable('debrief_line').set(patch).where('id', '=', id).execute()
  return ok(toItem.value ?? null)
}

/** The thing of the closet that is meant, or a new one that is wished for; undefined: as it was. */
async function itemTo(db: WriteDb, itemId: number | null | undefined, wish: LineSaid['wish']): Promise<Outcome<number | null | undefined>> {
  if (wish !== undefined) {
    const row = { uid: newUid(), name: wish.name, kit_area: wish.kitArea, status: 'wished' as const }
    return ok((await db.insertInto('item').values(row).returning('id').executeTakeFirstOrThrow()).id)
  }
  if (typeof itemId !== 'number') return ok(itemId)
  const there = await db.selectFrom('item').select('id').where('id', '=', itemId).executeTakeFirst()
  return there ? ok(itemId) : gone('item', itemId)
}

/** The same of all packed lines of which nothing was said; gives how many. */
export async function sayOfRest(db: WriteDb, tripId: number, use: Use, verdict: Verdict): Promise<number> {
  const told = db.selectFrom('debrief_line').select('packed_id').where('packed_id', 'is not', null)
  const rows = await db.selectFrom('packed').select('id').where('trip_id', '=', tripId).where('id', 'not in', told).execute()
  for (const { id } of rows)
    await db.insertInto('debrief_line').values({ uid: newUid(), trip_id: tripId, packed_id: id, use, verdict, said: 'rest' }).execute()
  return rows.length
}

export async function addMissed(db: WriteDb, tripId: number, itemId: number | null, name: string): Promise<number> {
  const row = { uid: newUid(), trip_id: tripId, item_id: itemId, name, use: 'missed' as const }
  return (await db.insertInto('debrief_line').values(row).returning('id').executeTakeFirstOrThrow()).id
}

export interface SaidHead {
  readonly id: number
  readonly tripId: number
  readonly packedId: number | null
  readonly name: string
}

export async function saidHead(db: ReadDb, id: number): Promise<Outcome<SaidHead>> {
  const row = await db
    .selectFrom('debrief_line')
    .leftJoin('packed', 'packed.id', 'debrief_line.packed_id')
    .select(['debrief_line.id', 'debrief_line.trip_id as tripId', 'debrief_line.packed_id as packedId'])
    .select((eb) => eb.fn.coalesce('packed.name', 'debrief_line.name').as('name'))
    .where('debrief_line.id', '=', id)
    .executeTakeFirst()
  return row ? ok({ ...row, name: row.name }) : gone('debrief_line', id)
}

export async function unsay(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('debrief_line').where('id', '=', id).execute()
}
