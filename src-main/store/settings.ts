import type { SavedView } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { newUid } from './rows.ts'

export async function allSettings(db: ReadDb): Promise<Readonly<Record<string, string>>> {
  const rows = await db.selectFrom('setting').select(['key', 'value']).orderBy('key').execute()
  return Object.fromEntries(rows.map(({ key, value }) => [key, value]))
}

export async function setSetting(db: WriteDb, key: string, value: string): Promise<void> {
  await db
    .insertInto('setting')
    .values({ key, value })
    .onConflict((on) => on.column('key').doUpdateSet({ value }))
    .execute()
}

export async function allViews(db: ReadDb): Promise<readonly SavedView[]> {
  return db.selectFrom('saved_view').select(['id', 'room', 'name', 'state']).orderBy('id').execute()
}

/** Keeps a view under its name in its room; the same name again replaces it. */
export async function saveView(db: WriteDb, view: { room: string; name: string; state: string }): Promise<number> {
  const { id } = await db
    .insertInto('saved_view')
    .values({ uid: newUid(), ...view })
    .onConflict((on) => on.columns(['room', 'name']).doUpdateSet({ state: view.state }))
    .returning('id')
    .executeTakeFirstOrThrow()
  return id
}

export async function viewName(db: ReadDb, id: number): Promise<string | undefined> {
  return (await db.selectFrom('saved_view').select('name').where('id', '=', id).executeTakeFirst())?.name
}

export async function removeView(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('saved_view').where('id', '=', id).execute()
}
