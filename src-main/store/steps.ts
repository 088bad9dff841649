import type { StepName } from '../answers.ts'
import type { ReadDb } from './handles.ts'
import { nameOf } from './undo.ts'

/** The steps that can be taken back, newest first. */
export async function listSteps(db: ReadDb, limit: number): Promise<readonly StepName[]> {
  const rows = await db
    .selectFrom('step')
    .select(['id', 'code', 'facts', 'at'])
    .where('undone_at', 'is', null)
    .orderBy('id', 'desc')
    .limit(limit)
    .execute()
  return rows.map(nameOf)
}

/** What was done to an item, newest first, as far as the steps reach. */
export async function stepsOfItem(db: ReadDb, itemId: number): Promise<readonly StepName[]> {
  const rows = await db
    .selectFrom('step')
    .select(['id', 'code', 'facts', 'at'])
    .where('undone_at', 'is', null)
    .where('id', 'in', (eb) => eb.selectFrom('step_row').select('step_id').where('item_id', '=', itemId))
    .orderBy('id', 'desc')
    .execute()
  return rows.map(nameOf)
}
