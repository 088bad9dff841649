import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { SupplyRow } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { gone, isEmpty, newUid, patchOf, ruleOf } from './rows.ts'
import type { Tables } from './tables.ts'

export async function allSupplies(db: ReadDb): Promise<readonly SupplyRow[]> {
  const rows = await db.selectFrom('supply').selectAll().orderBy('id').execute()
  return rows.map(({ id, uid, name, kit_area, unit, mg_per_unit, mass_from, rule, note, archived }) => ({
    id,
    uid,
    name,
    kitArea: kit_area as SupplyRow['kitArea'],
    unit,
    mgPerUnit: mg_per_unit,
    massFrom: mass_from,
    rule: ruleOf(rule),
    note,
    archived: archived === 1,
  }))
}

export async function supplyName(db: ReadDb, id: number): Promise<Outcome<string>> {
  const row = await db.selectFrom('supply').select('name').where('id', '=', id).executeTakeFirst()
  return row ? ok(row.name) : gone('supply', id)
}

/** How much a unit of a supply weighs unless told: a gram a gram, a millilitre as water until its density is said. A piece has no mass of its own yet. */
const usualMg: Readonly<Record<Tables['supply']['unit'], number>> = { g: 1000, ml: 1000, piece: 0 }

type SupplyFields = Readonly<Record<string, unknown>>

export async function addSupply(
  db: WriteDb,
  name: string,
  kitArea: string,
  unit: Tables['supply']['unit'],
  fields: SupplyFields,
): Promise<number> {
  const row = { uid: newUid(), name, kit_area: kitArea, unit, mg_per_unit: usualMg[unit], rule: null, ...patchOf<'supply'>(fields) }
  return (
    await db
      .insertInto('supply')
      .values(row as never)
      .returning('id')
      .executeTakeFirstOrThrow()
  ).id
}

export async function editSupply(db: WriteDb, id: number, fields: SupplyFields): Promise<void> {
  const patch = patchOf<'supply'>(fields)
  if (!isEmpty(patch)) await db.updateTable('supply').set(patch).where('id', '=', id).execute()
}
