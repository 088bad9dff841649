import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { indexKit } from '../../src-domain/loadout/gather.ts'
import { claimedMass, estimatedMass } from '../../src-domain/loadout/mass.ts'
import { packLine } from '../../src-domain/loadout/packed.ts'
import type { PackedRow } from '../answers.ts'
import type { CheckedOf } from '../contract.ts'
import { closetRows, traitColumns } from './closet.ts'
import type { Raw, ReadDb, WriteDb } from './handles.ts'
import { gone, invalid, isEmpty, newUid, patchOf, ruleOf } from './rows.ts'

/** Packed lines of trips that are out or back. They are read as they were; only Correct the record changes one, and marks it. */
export async function packedOf(db: ReadDb, tripId: number): Promise<readonly PackedRow[]> {
  const rows = await db
    .selectFrom('packed')
    .leftJoin('item', 'item.id', 'packed.item_id')
    .leftJoin('supply', 'supply.id', 'packed.supply_id')
    .selectAll('packed')
    .select((eb) => eb.fn.coalesce('item.uid', 'supply.uid').as('thing_uid'))
    .where('packed.trip_id', '=', tripId)
    .orderBy('packed.sort')
    .orderBy('packed.id')
    .execute()
  return rows.map((row) => ({
    id: row.id,
    uid: row.uid,
    thingUid: row.thing_uid ?? '',
    itemId: row.item_id,
    supplyId: row.supply_id,
    containerId: row.container_id,
    name: row.name,
    kitArea: row.kit_area as PackedRow['kitArea'],
    lane: row.lane,
    pieces: row.pieces,
    ownedPieces: row.owned_pieces,
    amountMilli: row.amount_milli,
    amountFrom: row.amount_from,
    rule: ruleOf(row.rule),
    unit: row.unit,
    massMg: row.mass_mg,
    massFrom: row.mass_from,
    shares: JSON.parse(row.shares) as PackedRow['shares'],
    massAbout: row.mass_about,
    duties: row.duties,
    needs: JSON.parse(row.needs) as PackedRow['needs'],
    traits: JSON.parse(row.traits) as PackedRow['traits'],
    isContainer: row.is_container === 1,
    status: row.status,
    carriedBy: row.carried_by,
    note: row.note,
    door: row.door,
    wasMissing: row.was_missing === 1,
    corrected: row.corrected === 1,
  }))
}

export interface PackedHead {
  readonly id: number
  readonly uid: string
  readonly tripId: number
  readonly itemId: number | null
  readonly name: string
  readonly kitArea: string
}

export async function packedHead(db: ReadDb, id: number): Promise<Outcome<PackedHead>> {
  const row = await db
    .selectFrom('packed')
    .select(['id', 'uid', 'trip_id as tripId', 'item_id as itemId', 'name', 'kit_area as kitArea'])
    .where('id', '=', id)
    .executeTakeFirst()
  return row ? ok(row) : gone('packed', id)
}

type Correction = Omit<CheckedOf<'packed.correct'>, 'id'>

function corrected({ duties, ...fields }: Correction, uid: string): Readonly<Record<string, unknown>> {
  return {
    ...fields,
    ...massFields(fields, `corrected:${uid}`),
    ...(duties === undefined ? {} : { duties: duties.map(({ duty, shared }) => (shared ? `${duty}*` : duty)).join(' ') }),
    ...(fields.amountMilli === undefined ? {} : { amountFrom: 'typed' }),
  }
}

/** A mass typed afterwards has no weighing behind it: it is a claim or an estimate, with the doubt of its kind on a leaf of its own. */
function massFields({ massMg, massFrom = 'estimated' }: Correction, leaf: string): Readonly<Record<string, unknown>> {
  if (massMg === undefined) return {}
  if (massMg === null) return { massFrom: 'none', shares: {}, massAbout: '' }
  const mass = massFrom === 'claimed' ? claimedMass(massMg / 1000, leaf, '') : estimatedMass(massMg / 1000, leaf, '')
  return { massFrom, shares: mass.shares, massAbout: 'corrected' }
}

export async function correctPacked(db: WriteDb, { id, uid }: PackedHead, fields: Correction): Promise<void> {
  const patch = patchOf<'packed'>(corrected(fields, uid))
  if (!isEmpty(patch))
    await db
      .updateTable('packed')
      .set({ ...patch, corrected: 1 })
      .where('id', '=', id)
      .execute()
}

type Added = CheckedOf<'packed.add'>

/** Adds what went along after all: an item as it is now, or a thing by its name. */
export async function addPacked(db: WriteDb, raw: Raw, { tripId, itemId, ...fields }: Added): Promise<Outcome<number>> {
  const base = itemId === undefined ? null : itemNow(raw, itemId, fields.lane)
  if (itemId !== undefined && base === null) return gone('item', itemId)
  if (base === null && fields.name === undefined) return invalid('name', 'a packed line holds an item or has a name')
  const last = await db
    .selectFrom('packed')
    .select((eb) => eb.fn.max('sort').as('sort'))
    .where('trip_id', '=', tripId)
    .executeTakeFirst()
  const uid = newUid()
  const row = {
    uid,
    trip_id: tripId,
    kit_area: 'extras',
    ...(base === null ? {} : patchOf<'packed'>({ ...base })),
    ...patchOf<'packed'>(corrected(fields, uid)),
    corrected: 1,
    sort: (last?.sort ?? -1) + 1,
  }
  const added = await db
    .insertInto('packed')
    .values(row as never)
    .returning('id')
    .executeTakeFirstOrThrow()
  return ok(added.id)
}

function itemNow(raw: Raw, itemId: number, lane: Added['lane']): ReturnType<typeof packLine> | null {
  const item = indexKit(closetRows(raw, [itemId]), traitColumns(raw), []).item(itemId)
  return item === null ? null : packLine({ kind: 'item', id: 0, lane, carriedBy: '', note: '', item, pieces: 1 })
}

export async function removePacked(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('packed').where('id', '=', id).execute()
}
