import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { ScaleRow } from '../answers.ts'
import type { CheckedOf } from '../contract.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { gone, isEmpty, newUid, patchOf } from './rows.ts'

/** Every scale with the readings of its check masses, newest first. */
export async function allScales(db: ReadDb): Promise<readonly ScaleRow[]> {
  const scales = await db.selectFrom('scale').selectAll().orderBy('id').execute()
  const checks = await db.selectFrom('check_reading').selectAll().orderBy('read_on', 'desc').orderBy('id', 'desc').execute()
  const byScale = Map.groupBy(checks, ({ scale_id }) => scale_id)
  return scales.map(({ id, uid, name, step_mg, capacity_mg, kind, device, note, archived }) => ({
    id,
    uid,
    name,
    stepMg: step_mg,
    capacityMg: capacity_mg,
    kind,
    device,
    note,
    archived: archived === 1,
    checks: (byScale.get(id) ?? []).map((one) => ({
      id: one.id,
      readOn: one.read_on,
      nominalMg: one.nominal_mg,
      mpeMg: one.mpe_mg,
      massClass: one.mass_class,
      readingsMg: JSON.parse(one.readings) as number[],
    })),
  }))
}

export async function scaleName(db: ReadDb, id: number): Promise<Outcome<string>> {
  const row = await db.selectFrom('scale').select('name').where('id', '=', id).executeTakeFirst()
  return row ? ok(row.name) : gone('scale', id)
}

export async function addScale(
  db: WriteDb,
  { name, stepMg, capacityMg, kind, device = '', note = '' }: CheckedOf<'scale.add'>,
): Promise<number> {
  const row = { uid: newUid(), name, step_mg: stepMg, capacity_mg: capacityMg, kind, device, note }
  return (await db.insertInto('scale').values(row).returning('id').executeTakeFirstOrThrow()).id
}

export async function editScale(db: WriteDb, id: number, fields: Readonly<Record<string, unknown>>): Promise<void> {
  const patch = patchOf<'scale'>(fields)
  if (!isEmpty(patch)) await db.updateTable('scale').set(patch).where('id', '=', id).execute()
}

export async function addCheck(
  db: WriteDb,
  { scaleId, readOn, nominalMg, mpeMg, massClass, readingsMg }: CheckedOf<'scale.check'>,
): Promise<number> {
  const row = {
    uid: newUid(),
    scale_id: scaleId,
    read_on: readOn,
    nominal_mg: nominalMg,
    mpe_mg: mpeMg,
    mass_class: massClass,
    readings: JSON.stringify(readingsMg),
  }
  return (await db.insertInto('check_reading').values(row).returning('id').executeTakeFirstOrThrow()).id
}

/** The name of the scale that a check reading belongs to. */
export async function checkScale(db: ReadDb, id: number): Promise<Outcome<string>> {
  const row = await db
    .selectFrom('check_reading')
    .innerJoin('scale', 'scale.id', 'check_reading.scale_id')
    .select('scale.name')
    .where('check_reading.id', '=', id)
    .executeTakeFirst()
  return row ? ok(row.name) : gone('check_reading', id)
}

export async function removeCheck(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('check_reading').where('id', '=', id).execute()
}
