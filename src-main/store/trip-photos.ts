import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { TripPhoto } from '../answers.ts'
import type { CheckedOf } from '../contract.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { filesThere } from './photos.ts'
import { gone, newUid } from './rows.ts'

/** Photographs of a trip, of the whole of it or of one thing that went. */
export async function photosOfTrip(db: ReadDb, tripId: number): Promise<readonly TripPhoto[]> {
  return db
    .selectFrom('trip_photo')
    .select(['id', 'packed_id as packedId', 'sha256', 'thumb_sha256 as thumbSha256', 'mime', 'name'])
    .where('trip_id', '=', tripId)
    .orderBy('sort')
    .orderBy('id')
    .execute()
}

/** Behind the others of its trip. Its two files must have been stored before. */
export async function addTripPhoto(db: WriteDb, photo: CheckedOf<'debrief.photo'>): Promise<Outcome<number>> {
  const { tripId, packedId = null, sha256, thumbSha256, mime, name } = photo
  const files = await filesThere(db, [sha256, thumbSha256])
  if (!files.ok) return files
  const last = await db
    .selectFrom('trip_photo')
    .select((eb) => eb.fn.max('sort').as('sort'))
    .where('trip_id', '=', tripId)
    .executeTakeFirst()
  const row = {
    uid: newUid(),
    trip_id: tripId,
    packed_id: packedId,
    sha256,
    thumb_sha256: thumbSha256,
    mime,
    name,
    sort: (last?.sort ?? -1) + 1,
  }
  return ok((await db.insertInto('trip_photo').values(row).returning('id').executeTakeFirstOrThrow()).id)
}

export async function tripOfPhoto(db: ReadDb, id: number): Promise<Outcome<number>> {
  const row = await db.selectFrom('trip_photo').select('trip_id').where('id', '=', id).executeTakeFirst()
  return row ? ok(row.trip_id) : gone('trip_photo', id)
}

export async function removeTripPhoto(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('trip_photo').where('id', '=', id).execute()
}
