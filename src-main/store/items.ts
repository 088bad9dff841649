import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { NeedRow } from '../answers.ts'
import { closetRow } from './closet.ts'
import type { Raw, ReadDb, WriteDb } from './handles.ts'
import { dropEmptySets } from './sets.ts'
import { flag, gone, inIds, isEmpty, newUid, patchOf, without } from './rows.ts'
import type { Status } from '../../src-domain/closet/vocabulary.ts'

/** Changes of items and of what hangs on them. Each refuses an item that is gone. */

export interface ItemHead {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly status: string
}

export async function itemHead(db: ReadDb, id: number): Promise<Outcome<ItemHead>> {
  const row = await db.selectFrom('item').select(['id', 'uid', 'name', 'status']).where('id', '=', id).executeTakeFirst()
  return row ? ok(row) : gone('item', id)
}

/** Every id names an item that is there; else the first that does not. */
export async function allThere(db: ReadDb, ids: readonly number[]): Promise<Outcome<null>> {
  const rows = await db.selectFrom('item').select('id').where('id', 'in', inIds(ids)).execute()
  const found = new Set(rows.map(({ id }) => id))
  const missing = ids.find((id) => !found.has(id))
  return missing === undefined ? ok(null) : gone('item', missing)
}

/** Writes the fields given. A new status without a day holds since today. */
export async function editItem(db: WriteDb, head: ItemHead, fields: Readonly<Record<string, unknown>>, today: string): Promise<void> {
  const changesStatus = fields['status'] !== undefined && fields['status'] !== head.status && fields['statusSince'] === undefined
  const patch = patchOf<'item'>(changesStatus ? { ...fields, statusSince: today } : fields)
  if (!isEmpty(patch)) await db.updateTable('item').set(patch).where('id', '=', head.id).execute()
  if (fields['setId'] !== undefined) await dropEmptySets(db)
}

/** The same fields for many items; those whose status really changes get the day. */
export async function editItems(
  db: WriteDb,
  ids: readonly number[],
  fields: Readonly<Record<string, unknown>>,
  today: string,
): Promise<void> {
  const { status, statusSince } = fields
  if (typeof status === 'string' && statusSince === undefined) {
    await db
      .updateTable('item')
      .set({ status_since: today })
      .where('id', 'in', inIds(ids))
      .where('status', '<>', status as Status)
      .execute()
  }
  const patch = patchOf<'item'>(fields)
  if (!isEmpty(patch)) await db.updateTable('item').set(patch).where('id', 'in', inIds(ids)).execute()
}

export interface DutyGiven {
  readonly duty: string
  readonly shared: boolean
}

/** Makes an item's duties exactly these; rows that already say so are left alone, so that the step holds only what changed. */
export async function setDuties(db: WriteDb, itemId: number, duties: readonly DutyGiven[]): Promise<void> {
  const codes = duties.map(({ duty }) => duty)
  await db
    .deleteFrom('item_duty')
    .where('item_id', '=', itemId)
    .where('duty', 'not in', codes.length > 0 ? codes : [''])
    .execute()
  for (const { duty, shared } of duties) {
    await db
      .insertInto('item_duty')
      .values({ uid: newUid(), item_id: itemId, duty, shared: flag(shared) })
      .onConflict((on) => on.columns(['item_id', 'duty']).doUpdateSet({ shared: flag(shared) }))
      .execute()
  }
}

export type Owner = { readonly item_id: number; readonly supply_id: null } | { readonly item_id: null; readonly supply_id: number }
export const ofItem = (id: number): Owner => ({ item_id: id, supply_id: null })
export const ofSupply = (id: number): Owner => ({ item_id: null, supply_id: id })

/** Makes the needs of an item or a supply exactly these. */
export async function setNeeds(db: WriteDb, owner: Owner, needs: readonly NeedRow[]): Promise<void> {
  const kept = needs.map(({ duty }) => duty)
  const mine = owner.item_id === null ? (['supply_id', owner.supply_id] as const) : (['item_id', owner.item_id] as const)
  await db
    .deleteFrom('need')
    .where(mine[0], '=', mine[1])
    .where('duty', 'not in', kept.length > 0 ? kept : [''])
    .execute()
  for (const need of needs) {
    const found = await db
      .updateTable('need')
      .set({ pieces: need.pieces, kind: need.kind })
      .where(mine[0], '=', mine[1])
      .where('duty', '=', need.duty)
      .executeTakeFirst()
    if (found.numUpdatedRows === 0n)
      await db
        .insertInto('need')
        .values({ uid: newUid(), ...owner, ...need })
        .execute()
  }
}

export interface TraitGiven {
  readonly code: string
  readonly number: number | null
  readonly text?: string | undefined
  readonly typed?: string | undefined
  readonly typedUnit?: string | undefined
  readonly origin: 'measured' | 'claimed' | 'estimated'
  readonly source?: string | undefined
  readonly notedOn?: string | null | undefined
}

/** Writes one trait of an item or a supply. */
export async function setTrait(db: WriteDb, owner: Owner, trait: TraitGiven): Promise<void> {
  const { code, number, origin, text = '', typed = '', typedUnit = '', source = '', notedOn = null } = trait
  const fields = { number, text, typed, typed_unit: typedUnit, origin, source, noted_on: notedOn }
  const mine = owner.item_id === null ? (['supply_id', owner.supply_id] as const) : (['item_id', owner.item_id] as const)
  const found = await db.updateTable('trait_value').set(fields).where(mine[0], '=', mine[1]).where('code', '=', code).executeTakeFirst()
  if (found.numUpdatedRows === 0n)
    await db
      .insertInto('trait_value')
      .values({ uid: newUid(), ...owner, code, ...fields })
      .execute()
}

export async function removeTrait(db: WriteDb, itemId: number, code: string): Promise<Outcome<null>> {
  const { numDeletedRows } = await db.deleteFrom('trait_value').where('item_id', '=', itemId).where('code', '=', code).executeTakeFirst()
  return numDeletedRows > 0n ? ok(null) : gone('trait_value', code)
}

export type LabelKind = 'tag' | 'material' | 'season'

/** Makes an item's labels of one kind exactly these. */
export async function setLabels(db: WriteDb, itemId: number, kind: LabelKind, texts: readonly string[]): Promise<void> {
  await db
    .deleteFrom('item_label')
    .where('item_id', '=', itemId)
    .where('kind', '=', kind)
    .where('text', 'not in', texts.length > 0 ? texts : [''])
    .execute()
  await addLabels(db, [itemId], kind, texts)
}

export async function addLabels(db: WriteDb, ids: readonly number[], kind: LabelKind, texts: readonly string[]): Promise<void> {
  for (const text of new Set(texts)) {
    const has = db.selectFrom('item_label').select('item_id').where('kind', '=', kind).where('text', '=', text)
    const rows = await db.selectFrom('item').select('id').where('id', 'in', inIds(ids)).where('id', 'not in', has).execute()
    await inParts(rows, (some) =>
      db
        .insertInto('item_label')
        .values(some.map(({ id }) => ({ uid: newUid(), item_id: id, kind, text })))
        .execute(),
    )
  }
}

export async function removeLabels(db: WriteDb, ids: readonly number[], kind: LabelKind, texts: readonly string[]): Promise<void> {
  if (texts.length === 0) return
  await db.deleteFrom('item_label').where('item_id', 'in', inIds(ids)).where('kind', '=', kind).where('text', 'in', texts).execute()
}

export async function addDuties(db: WriteDb, ids: readonly number[], codes: readonly string[]): Promise<void> {
  for (const duty of new Set(codes)) {
    const has = db.selectFrom('item_duty').select('item_id').where('duty', '=', duty)
    const rows = await db.selectFrom('item').select('id').where('id', 'in', inIds(ids)).where('id', 'not in', has).execute()
    await inParts(rows, (some) =>
      db
        .insertInto('item_duty')
        .values(some.map(({ id }) => ({ uid: newUid(), item_id: id, duty })))
        .execute(),
    )
  }
}

export async function removeDuties(db: WriteDb, ids: readonly number[], codes: readonly string[]): Promise<void> {
  if (codes.length > 0) await db.deleteFrom('item_duty').where('item_id', 'in', inIds(ids)).where('duty', 'in', codes).execute()
}

/** Rows in parts of 500: a statement holds only so many variables. */
async function inParts<T>(rows: readonly T[], work: (some: readonly T[]) => Promise<unknown>): Promise<void> {
  for (let at = 0; at < rows.length; at += 500) await work(rows.slice(at, at + 500))
}

export async function setLinks(
  db: WriteDb,
  itemId: number,
  links: readonly { readonly url: string; readonly label: string }[],
): Promise<void> {
  await db.deleteFrom('item_link').where('item_id', '=', itemId).execute()
  if (links.length > 0)
    await db
      .insertInto('item_link')
      .values(links.map((link) => ({ uid: newUid(), item_id: itemId, ...link })))
      .execute()
}

export interface CounterGiven {
  readonly code: string
  readonly amount: number | null
  readonly note: string
  readonly notedOn: string | null
}

/** An own figure of use before this program (*used about …*), marked estimated; null takes it away. */
export async function setCounter(db: WriteDb, itemId: number, { code, amount, note, notedOn }: CounterGiven): Promise<void> {
  const origin = 'estimated'
  if (amount === null) {
    await db.deleteFrom('item_counter').where('item_id', '=', itemId).where('code', '=', code).where('origin', '=', origin).execute()
    return
  }
  const fields = { amount, note, noted_on: notedOn }
  await db
    .insertInto('item_counter')
    .values({ uid: newUid(), item_id: itemId, code, origin, ...fields })
    .onConflict((on) => on.columns(['item_id', 'code', 'origin']).doUpdateSet(fields))
    .execute()
}

/**
 * A second item like this one: its fields, duties, labels, needs, traits and links. Not what belongs to the one thing alone:
 * serial, weighings, photographs, counters, set and who has it. A measured mass goes over as an estimate where nothing was claimed.
 */
export async function duplicateItem(db: WriteDb, raw: Raw, id: number): Promise<number> {
  const found = await db.selectFrom('item').selectAll().where('id', '=', id).executeTakeFirstOrThrow()
  const row = without(found, 'id')
  const mass = closetRow(raw, id)
  const estimate = row.estimated_mg ?? (row.claimed_mg === null && mass?.massFrom === 'measured' ? mass.massMg : null)
  const own = {
    uid: newUid(),
    status: 'owned' as const,
    status_since: null,
    lent_to: '',
    serial: '',
    set_id: null,
    estimated_mg: estimate,
    last_out_on: null,
    archived: 0,
  }
  const copy = await db
    .insertInto('item')
    .values({ ...row, ...own, status: row.status === 'wished' ? 'wished' : 'owned' })
    .returning('id')
    .executeTakeFirstOrThrow()
  for (const table of ['item_duty', 'item_label', 'item_link', 'need', 'trait_value'] as const) await copyParts(db, table, id, copy.id)
  return copy.id
}

async function copyParts(
  db: WriteDb,
  table: 'item_duty' | 'item_label' | 'item_link' | 'need' | 'trait_value',
  fromId: number,
  toId: number,
): Promise<void> {
  const rows = await db.selectFrom(table).selectAll().where('item_id', '=', fromId).orderBy('id').execute()
  const copies = rows.map((row) => ({ ...without(row, 'id'), uid: newUid(), item_id: toId }))
  if (copies.length > 0) await db.insertInto(table).values(copies).execute()
}

/** Deletes the items that no weighing, no line and no record of a trip refers to, and archives the others. */
export async function removeItems(db: WriteDb, ids: readonly number[]): Promise<{ readonly deleted: number; readonly archived: number }> {
  const weighed = db.selectFrom('weighing').select('item_id as id')
  const lined = db.selectFrom('line').select('item_id as id').where('item_id', 'is not', null)
  const holding = db.selectFrom('line').select('container_id as id').where('container_id', 'is not', null)
  const packed = db.selectFrom('packed').select('item_id as id').where('item_id', 'is not', null)
  const packedIn = db.selectFrom('packed').select('container_id as id').where('container_id', 'is not', null)
  const told = db.selectFrom('debrief_line').select('item_id as id').where('item_id', 'is not', null)
  const { numDeletedRows } = await db
    .deleteFrom('item')
    .where('id', 'in', inIds(ids))
    .where('id', 'not in', weighed)
    .where('id', 'not in', lined)
    .where('id', 'not in', holding)
    .where('id', 'not in', packed)
    .where('id', 'not in', packedIn)
    .where('id', 'not in', told)
    .executeTakeFirst()
  const { numUpdatedRows } = await db
    .updateTable('item')
    .set({ archived: 1 })
    .where('id', 'in', inIds(ids))
    .where('archived', '=', 0)
    .executeTakeFirst()
  await dropEmptySets(db)
  return { deleted: Number(numDeletedRows), archived: Number(numUpdatedRows) }
}
