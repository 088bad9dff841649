import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { WeighingRow } from '../answers.ts'
import type { CheckedOf } from '../contract.ts'
import type { Raw, ReadDb, WriteDb } from './handles.ts'
import { prepared } from './prepared.ts'
import { flag, gone, newUid } from './rows.ts'
import { worked } from './weighing-figures.ts'

export type WeighingGiven = CheckedOf<'item.weigh'>
export interface WeighingKept {
  readonly weighingId: number
  readonly massMg: number
}

/** Where no scale is named, a mass is taken to be read off one that shows whole grams. */
const unknownScale = { stepMg: 1000, capacityMg: null }

/** Keeps one weighing with the mass and the doubts that its readings give. */
export async function keepWeighing(db: WriteDb, given: WeighingGiven): Promise<Outcome<WeighingKept>> {
  const scale = await scaleOf(db, given.scaleId)
  if (!scale.ok) return scale
  const figures = worked({ ...given, ...scale.value })
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

async function scaleOf(db: ReadDb, id: number | null): Promise<Outcome<{ readonly stepMg: number; readonly capacityMg: number | null }>> {
  if (id === null) return ok(unknownScale)
  const row = await db
    .selectFrom('scale')
    .select(['step_mg as stepMg', 'capacity_mg as capacityMg'])
    .where('id', '=', id)
    .executeTakeFirst()
  return row ? ok(row) : gone('scale', id)
}

const insertTyped = `INSERT INTO weighing (uid, item_id, weighed_on, readings, mass_mg, u_own_mg, u_gain_mg, entered) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`

/** Keeps the mass of one piece that was typed with an item: one reading on an unknown scale. */
export function keepTypedMass(
  raw: Raw,
  { itemId, massMg, weighedOn, entered }: { itemId: number; massMg: number; weighedOn: string; entered: 'typed' | 'brought' },
): void {
  const figures = worked({ readingsMg: [massMg], tareMg: 0, tareKind: 'none', pieces: 1, ...unknownScale })
  if (!figures.ok) throw new Error(`a typed mass of ${massMg} mg gives ${figures.fault.code}`)
  const { uOwnMg, uGainMg } = figures.value
  prepared(raw, insertTyped).run(newUid(), itemId, weighedOn, JSON.stringify([massMg]), massMg, uOwnMg, uGainMg, entered)
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
