import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { TrialQuestion } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { gone, inIds, isEmpty, newUid, patchOf } from './rows.ts'

/** Questions about items on trial, and what each trip said to them. */
async function withAnswers(db: ReadDb, rows: readonly QuestionRow[]): Promise<readonly TrialQuestion[]> {
  const ids = rows.map(({ id }) => id)
  const answers = await db.selectFrom('trial_answer').selectAll().where('question_id', 'in', inIds(ids)).orderBy('id').execute()
  return rows.map(({ id, item_id, text, settled }) => ({
    ...{ id, itemId: item_id, text, settled: settled === 1 },
    answers: answers.filter((one) => one.question_id === id).map((one) => ({ tripId: one.trip_id, text: one.text })),
  }))
}

interface QuestionRow {
  readonly id: number
  readonly item_id: number
  readonly text: string
  readonly settled: number
}

export async function questionsOf(db: ReadDb, itemId: number): Promise<readonly TrialQuestion[]> {
  return withAnswers(db, await db.selectFrom('trial_question').selectAll().where('item_id', '=', itemId).orderBy('id').execute())
}

/** Of what was packed: questions still open, and those that this trip answered. */
export async function questionsOfTrip(db: ReadDb, tripId: number): Promise<readonly TrialQuestion[]> {
  const packed = db.selectFrom('packed').select('item_id').where('trip_id', '=', tripId).where('item_id', 'is not', null)
  const answered = db.selectFrom('trial_answer').select('question_id').where('trip_id', '=', tripId)
  const rows = await db
    .selectFrom('trial_question')
    .selectAll()
    .where('item_id', 'in', packed as never)
    .where((or) => or.or([or('settled', '=', 0), or('id', 'in', answered)]))
    .orderBy('id')
    .execute()
  return withAnswers(db, rows)
}

export async function addQuestion(db: WriteDb, itemId: number, text: string): Promise<number> {
  const row = { uid: newUid(), item_id: itemId, text }
  return (await db.insertInto('trial_question').values(row).returning('id').executeTakeFirstOrThrow()).id
}

/** The question's item by name, for the step. */
export async function questionHead(db: ReadDb, id: number): Promise<Outcome<{ readonly itemName: string }>> {
  const row = await db
    .selectFrom('trial_question')
    .innerJoin('item', 'item.id', 'trial_question.item_id')
    .select('item.name as itemName')
    .where('trial_question.id', '=', id)
    .executeTakeFirst()
  return row ? ok(row) : gone('trial_question', id)
}

export async function editQuestion(db: WriteDb, id: number, fields: Readonly<Record<string, unknown>>): Promise<void> {
  const patch = patchOf<'trial_question'>(fields)
  if (!isEmpty(patch)) await db.updateTable('trial_question').set(patch).where('id', '=', id).execute()
}

export async function removeQuestion(db: WriteDb, id: number): Promise<void> {
  await db.deleteFrom('trial_question').where('id', '=', id).execute()
}

export async function answerQuestion(db: WriteDb, id: number, tripId: number, text: string): Promise<void> {
  if (text.trim() === '') {
    await db.deleteFrom('trial_answer').where('question_id', '=', id).where('trip_id', '=', tripId).execute()
    return
  }
  await db
    .insertInto('trial_answer')
    .values({ uid: newUid(), question_id: id, trip_id: tripId, text })
    .onConflict((on) => on.columns(['question_id', 'trip_id']).doUpdateSet({ text }))
    .execute()
}
