import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { DoorState } from '../../src-domain/trips/record.ts'
import type { DoorList } from '../answers.ts'
import type { CheckedOf } from '../contract.ts'
import type { Raw, ReadDb, WriteDb } from './handles.ts'
import { prepared } from './prepared.ts'
import { flag, gone, inIds, invalid, isEmpty, newUid, patchOf } from './rows.ts'

/** The door list: what of a loadout was confirmed, and what the packed pack weighed. A half-packed list is kept as it is. */
export async function doorList(db: ReadDb, raw: Raw, loadoutId: number): Promise<DoorList> {
  const door = await db.selectFrom('door').selectAll().where('loadout_id', '=', loadoutId).executeTakeFirst()
  const rows = await db.selectFrom('door_line').selectAll().where('loadout_id', '=', loadoutId).orderBy('id').execute()
  return {
    readingMg: door?.reading_mg ?? null,
    scaleId: door?.scale_id ?? null,
    withLast: door?.with_last === 1,
    lines: rows.map(({ id, line_id, name, state, was_missing, last, note }) => ({
      ...{ id, lineId: line_id, name, state, note },
      wasMissing: was_missing === 1,
      last: last === null ? null : last === 1,
    })),
    missedBefore: prepared<MissedBefore>(raw, missedSql).all(loadoutId),
  }
}

type MissedBefore = DoorList['missedBefore'][number]

/** Missed on the way (packed or not), or missing at the door and then found; of items of this loadout alone. */
const missedSql = `WITH mine AS (SELECT DISTINCT item_id FROM line WHERE loadout_id = ? AND item_id IS NOT NULL),
  said AS (
    SELECT ifnull(p.item_id, d.item_id) AS itemId, d.trip_id, 'missed' AS how, d.note FROM debrief_line d LEFT JOIN packed p ON p.id = d.packed_id WHERE d.use = 'missed'
    UNION ALL SELECT item_id, trip_id, 'found', note FROM packed WHERE was_missing = 1 AND item_id IS NOT NULL)
  SELECT said.itemId, trip.name AS tripName, trip.starts_on AS startsOn, record.month, said.how, said.note
  FROM said JOIN mine ON mine.item_id = said.itemId JOIN trip ON trip.id = said.trip_id LEFT JOIN record ON record.trip_id = trip.id
  ORDER BY ifnull(trip.starts_on, record.month) DESC, trip.id DESC`

/** Each line must be of the loadout. */
export async function linesThere(db: ReadDb, loadoutId: number, lineIds: readonly number[]): Promise<Outcome<null>> {
  const rows = await db.selectFrom('line').select('id').where('id', 'in', inIds(lineIds)).where('loadout_id', '=', loadoutId).execute()
  const found = new Set(rows.map(({ id }) => id))
  const missing = lineIds.find((id) => !found.has(id))
  return missing === undefined ? ok(null) : gone('line', missing)
}

/** A line found again after it was missing keeps the memory of it: next time it is asked first. */
export async function tick(db: WriteDb, loadoutId: number, lineIds: readonly number[], state: DoorState): Promise<void> {
  const missing = state === 'missing' ? { was_missing: 1 } : {}
  for (const line_id of new Set(lineIds)) {
    await db
      .insertInto('door_line')
      .values({ uid: newUid(), loadout_id: loadoutId, line_id, state, ...missing })
      .onConflict((on) => on.column('line_id').doUpdateSet({ state, ...missing }))
      .execute()
  }
}

export async function placeAtDoor(db: WriteDb, loadoutId: number, { lineId, last, note }: CheckedOf<'door.place'>): Promise<void> {
  const patch = { ...(last === undefined ? {} : { last: last === null ? null : flag(last) }), ...(note === undefined ? {} : { note }) }
  if (isEmpty(patch)) return
  await db
    .insertInto('door_line')
    .values({ uid: newUid(), loadout_id: loadoutId, line_id: lineId, ...patch })
    .onConflict((on) => on.column('line_id').doUpdateSet(patch))
    .execute()
}

export async function addOwn(db: WriteDb, loadoutId: number, name: string): Promise<number> {
  const row = { uid: newUid(), loadout_id: loadoutId, line_id: null, name, last: 1 }
  return (await db.insertInto('door_line').values(row).returning('id').executeTakeFirstOrThrow()).id
}

export interface OwnHead {
  readonly id: number
  readonly name: string
}

/** An entry of the person's own words; those of lines are not changed by their own id. */
export async function ownHead(db: ReadDb, id: number): Promise<Outcome<OwnHead>> {
  const row = await db.selectFrom('door_line').select(['id', 'name', 'line_id']).where('id', '=', id).executeTakeFirst()
  if (!row) return gone('door_line', id)
  return row.line_id === null ? ok({ id, name: row.name }) : invalid('id', 'not an entry of its own')
}

export async function editOwn(db: WriteDb, id: number, fields: Omit<CheckedOf<'door.own'>, 'id'>): Promise<void> {
  const patch = patchOf<'door_line'>(fields)
  if (!isEmpty(patch)) await db.updateTable('door_line').set(patch).where('id', '=', id).execute()
}

export async function removeOwn(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('door_line').where('id', '=', id).execute()
}

export async function weighAtDoor(db: WriteDb, { loadoutId, readingMg, scaleId, withLast }: CheckedOf<'door.weigh'>): Promise<void> {
  const fields = { reading_mg: readingMg, scale_id: scaleId, with_last: flag(withLast) }
  await db
    .insertInto('door')
    .values({ uid: newUid(), loadout_id: loadoutId, ...fields })
    .onConflict((on) => on.column('loadout_id').doUpdateSet(fields))
    .execute()
}
