import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { gone, newUid } from './rows.ts'

export interface PhotoGiven {
  readonly itemId: number
  readonly sha256: string
  readonly thumbSha256: string
  readonly mime: string
  readonly name: string
}

export async function filesThere(db: ReadDb, names: readonly string[]): Promise<Outcome<null>> {
  for (const sha256 of names) {
    const file = await db.selectFrom('file').select('sha256').where('sha256', '=', sha256).executeTakeFirst()
    if (!file) return gone('file', sha256)
  }
  return ok(null)
}

/** Adds a photograph behind the others of its item. Its two files must have been stored before. */
export async function addPhoto(db: WriteDb, photo: PhotoGiven): Promise<Outcome<number>> {
  const files = await filesThere(db, [photo.sha256, photo.thumbSha256])
  if (!files.ok) return files
  const last = await db
    .selectFrom('photo')
    .select((eb) => eb.fn.max('sort').as('sort'))
    .where('item_id', '=', photo.itemId)
    .executeTakeFirst()
  const { itemId, sha256, thumbSha256, mime, name } = photo
  const row = { uid: newUid(), item_id: itemId, sha256, thumb_sha256: thumbSha256, mime, name, sort: (last?.sort ?? -1) + 1 }
  return ok((await db.insertInto('photo').values(row).returning('id').executeTakeFirstOrThrow()).id)
}

export async function photoOf(db: ReadDb, id: number): Promise<Outcome<{ readonly itemId: number; readonly itemName: string }>> {
  const row = await db
    .selectFrom('photo')
    .innerJoin('item', 'item.id', 'photo.item_id')
    .select(['item.id as itemId', 'item.name as itemName'])
    .where('photo.id', '=', id)
    .executeTakeFirst()
  return row ? ok(row) : gone('photo', id)
}

export async function removePhoto(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('photo').where('id', '=', id).execute()
}

/** Puts an item's photographs in the order given; every one must be its own. */
export async function orderPhotos(db: WriteDb, itemId: number, ids: readonly number[]): Promise<Outcome<null>> {
  for (const [sort, id] of ids.entries()) {
    const { numUpdatedRows } = await db
      .updateTable('photo')
      .set({ sort })
      .where('id', '=', id)
      .where('item_id', '=', itemId)
      .executeTakeFirst()
    if (numUpdatedRows === 0n) return gone('photo', id)
  }
  return ok(null)
}
