import { learntSpread, unknownScale, weigh, type BenchScale, type Weighed } from '../../src-domain/closet/weighing.ts'
import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { WeighingRow } from '../answers.ts'
import type { CheckedOf } from '../contract.ts'
import type { Raw, ReadDb, WriteDb } from './handles.ts'
import { prepared } from './prepared.ts'
import { flag, gone, newUid } from './rows.ts'

export type WeighingGiven = CheckedOf<'item.weigh'>
export interface WeighingKept {
  readonly weighingId: number
  readonly massMg: number
}

/** Keeps one weighing with the mass and the doubts that its readings give. */
export async function keepWeighing(db: WriteDb, given: WeighingGiven): Promise<Outcome<WeighingKept>> {
  const scale = await scaleOf(db, given.scaleId)
  if (!scale.ok) return scale
  const figures = weigh(given, scale.value)
  if (!figures.ok) return figures
  const { massMg, uOwnMg, uGainMg } = figures.value
  const row = await db
    .insertInto('weighing')
    .values({
      uid: newUid(),
      item_id: given.itemId,
      scale_id: given.scaleId,
      weighed_on: given.weighedOn,
      weighed_minute: given.weighedMinute ?? null,
      readings: JSON.stringify(given.readingsMg),
      tare_mg: given.tareMg,
      tare_kind: given.tareKind,
      pieces: given.pieces,
      mass_mg: massMg,
      u_own_mg: uOwnMg,
      u_gain_mg: uGainMg,
      damp: flag(given.damp),
      dirty: flag(given.dirty),
      incomplete: flag(given.incomplete),
      entered: given.entered,
      note: given.note ?? '',
    })
    .returning('id')
    .executeTakeFirstOrThrow()
  return ok({ weighingId: row.id, massMg })
}

/** The scale as the bench knows it: its step, its check masses, and the spread that its own repeats have shown. */
async function scaleOf(db: ReadDb, id: number | null): Promise<Outcome<BenchScale>> {
  if (id === null) return ok(unknownScale)
  const row = await db.selectFrom('scale').select(['uid', 'name', 'step_mg', 'capacity_mg']).where('id', '=', id).executeTakeFirst()
  if (!row) return gone('scale', id)
  const spreadMg = learntSpread(await repeatsOn(db, id))
  const scale = { uid: row.uid, name: row.name, stepMg: row.step_mg, capacityMg: row.capacity_mg, checks: await checksOf(db, id) }
  return ok(spreadMg === undefined ? scale : { ...scale, spreadMg })
}

async function checksOf(db: ReadDb, scaleId: number): Promise<BenchScale['checks']> {
  const rows = await db
    .selectFrom('check_reading')
    .select(['read_on', 'nominal_mg', 'mpe_mg', 'readings'])
    .where('scale_id', '=', scaleId)
    .orderBy('read_on', 'desc')
    .orderBy('id', 'desc')
    .execute()
  return rows.map((row) => ({
    readOn: row.read_on,
    nominalMg: row.nominal_mg,
    mpeMg: row.mpe_mg,
    readingsMg: JSON.parse(row.readings) as number[],
  }))
}

/** The newest 200 weighings with repeats on a scale: what its spread is learnt from. */
async function repeatsOn(db: ReadDb, scaleId: number): Promise<readonly (readonly number[])[]> {
  const rows = await db
    .selectFrom('weighing')
    .select('readings')
    .where('scale_id', '=', scaleId)
    .where((eb) => eb(eb.fn<number>('json_array_length', ['readings']), '>', 1))
    .orderBy('id', 'desc')
    .limit(200)
    .execute()
  return rows.map(({ readings }) => JSON.parse(readings) as number[])
}

const insertTyped = `INSERT INTO weighing (uid, item_id, weighed_on, readings, mass_mg, u_own_mg, u_gain_mg, entered) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`

export interface TypedMass {
  readonly massMg: number
  readonly weighedOn: string
}

/** The mass of one piece that was typed with an item: one reading on an unknown scale. */
export const weighTyped = ({ massMg, weighedOn }: TypedMass): Outcome<Weighed> =>
  weigh({ readingsMg: [massMg], tareMg: 0, tareKind: 'none', pieces: 1, weighedOn })

/** Keeps a typed mass that `weighTyped` has worked out. */
export function keepTypedMass(raw: Raw, itemId: number, typed: TypedMass, weighed: Weighed, entered: 'typed' | 'brought'): void {
  const { massMg, uOwnMg, uGainMg } = weighed
  prepared(raw, insertTyped).run(newUid(), itemId, typed.weighedOn, JSON.stringify([typed.massMg]), massMg, uOwnMg, uGainMg, entered)
}

function weighingRows(db: ReadDb) {
  return db
    .selectFrom('weighing')
    .innerJoin('item', 'item.id', 'weighing.item_id')
    .leftJoin('scale', 'scale.id', 'weighing.scale_id')
    .selectAll('weighing')
    .select(['item.name as itemName', 'scale.name as scaleName'])
}

type Found = Awaited<ReturnType<ReturnType<typeof weighingRows>['execute']>>[number]

function shown(row: Found): WeighingRow {
  return {
    id: row.id,
    uid: row.uid,
    itemId: row.item_id,
    itemName: row.itemName,
    scaleId: row.scale_id,
    scaleName: row.scaleName,
    weighedOn: row.weighed_on,
    weighedMinute: row.weighed_minute,
    readingsMg: JSON.parse(row.readings) as number[],
    tareMg: row.tare_mg,
    tareKind: row.tare_kind,
    pieces: row.pieces,
    massMg: row.mass_mg,
    uOwnMg: row.u_own_mg,
    uGainMg: row.u_gain_mg,
    damp: row.damp === 1,
    dirty: row.dirty === 1,
    incomplete: row.incomplete === 1,
    entered: row.entered,
    note: row.note,
  }
}

/** An item's weighings, newest first. */
export async function weighingsOf(db: ReadDb, itemId: number): Promise<readonly WeighingRow[]> {
  const rows = await weighingRows(db)
    .where('weighing.item_id', '=', itemId)
    .orderBy('weighing.weighed_on', 'desc')
    .orderBy('weighing.id', 'desc')
    .execute()
  return rows.map(shown)
}

/** A day's weighings in the order they were kept. */
export async function weighingsOn(db: ReadDb, day: string): Promise<readonly WeighingRow[]> {
  return (await weighingRows(db).where('weighing.weighed_on', '=', day).orderBy('weighing.id').execute()).map(shown)
}

export async function weighingHead(db: ReadDb, id: number): Promise<Outcome<{ readonly itemName: string; readonly massMg: number }>> {
  const row = await weighingRows(db).where('weighing.id', '=', id).executeTakeFirst()
  return row ? ok({ itemName: row.itemName, massMg: row.mass_mg }) : gone('weighing', id)
}

export async function removeWeighing(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('weighing').where('id', '=', id).execute()
}

export interface Marks {
  readonly damp: boolean
  readonly dirty: boolean
  readonly incomplete: boolean
  readonly note: string
}

/** Marks a weighing as damp, dirty or incomplete: it is kept but is not the item's mass. */
export async function markWeighing(db: WriteDb, id: number, { damp, dirty, incomplete, note }: Marks): Promise<void> {
  await db
    .updateTable('weighing')
    .set({ damp: flag(damp), dirty: flag(dirty), incomplete: flag(incomplete), note })
    .where('id', '=', id)
    .execute()
}
