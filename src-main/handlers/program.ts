import { ok } from '../../src-domain/figures/fault.ts'
import { listSteps } from '../store/steps.ts'
import { touchedBy } from '../store/touched.ts'
import { inTransaction } from '../store/transactions.ts'
import { redoNext, undoLast } from '../store/undo.ts'
import { closetRows } from '../store/closet.ts'
import type { Raw } from '../store/handles.ts'
import type { Outcome } from '../../src-domain/figures/fault.ts'
import type { StepName } from '../answers.ts'
import type { Running } from '../running.ts'
import type { Answered, HandlersOf } from './kinds.ts'

export const programHandlers: HandlersOf<'program' | 'step'> = {
  'program.state': async (running) => ok(await running.state()),
  'step.list': async (db, { limit }) => ok(await listSteps(db, limit)),
  'step.undo': (running) => replayed(running, (raw) => undoLast(raw, running.options.now().toISOString())),
  'step.redo': (running) => replayed(running, redoNext),
}

/** Runs a step backwards or again in a transaction of its own, and tells what that touched. */
function replayed(running: Running, replay: (raw: Raw) => Outcome<StepName>): Promise<Answered<StepName>> {
  return running.alone(async () => {
    const store = running.store()
    if (!store.ok) return store
    const { raw } = store.value
    const done = await inTransaction(raw, () => {
      const step = replay(raw)
      if (!step.ok) return step
      const { touched, itemIds } = touchedBy(raw, step.value.id)
      return ok({ step: step.value, touched, closet: itemIds.length > 0 ? closetRows(raw, itemIds) : undefined })
    })
    if (!done.ok) return done
    const { step, touched, closet } = done.value
    return { ok: true, value: step, told: running.tell(touched, closet) }
  })
}
