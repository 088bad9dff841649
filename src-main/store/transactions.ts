import { fault, ok, type Fault, type Outcome } from '../../src-domain/figures/fault.ts'
import type { Raw, WriteDb } from './handles.ts'
import type { Store } from './open.ts'
import { storeFault } from './faults.ts'
import { closeStep, openStep, type StepFacts } from './undo.ts'

/** What a change answers: its value, and the facts that the name of its step needs. */
export type Changed<T> = { readonly ok: true; readonly value: T; readonly facts: StepFacts } | { readonly ok: false; readonly fault: Fault }

export const changed = <T>(value: T, facts: StepFacts = {}): Changed<T> => ({ ok: true, value, facts })

/** One thing at a time: every writer waits for the one before it, whatever became of that. */
export function makeQueue(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve()
  return (work) => {
    const mine = last.then(work, work)
    last = mine.catch(() => undefined)
    return mine
  }
}

/**
 * Runs work in one transaction on the writing connection. A fault or an error takes everything back.
 * BEGIN and COMMIT are given here, not by Kysely: after a full disk SQLite may have rolled back by itself, and a second ROLLBACK would hide why.
 */
export async function inTransaction<T extends { readonly ok: boolean }>(
  raw: Raw,
  work: () => T | Promise<T>,
): Promise<T | { readonly ok: false; readonly fault: Fault }> {
  try {
    raw.exec('BEGIN IMMEDIATE')
    const outcome = await work()
    raw.exec(outcome.ok ? 'COMMIT' : 'ROLLBACK')
    return outcome
  } catch (error) {
    if (raw.inTransaction) raw.exec('ROLLBACK')
    const expected = storeFault(error)
    if (expected) return fault(expected.code, expected.facts)
    throw error
  }
}

export interface Kept<T> {
  readonly value: T
  /** The step that was kept, or null where nothing was touched. */
  readonly stepId: number | null
}

/** One transaction with one undo step. `after` runs before the commit, so that what the reply tells is what was kept. */
export function inStep<T, R>(
  store: Store,
  step: { readonly code: string; readonly at: string },
  work: (db: WriteDb) => Promise<Changed<T>>,
  after: (kept: Kept<T>) => Promise<R>,
): Promise<Outcome<R>> {
  return inTransaction<Outcome<R>>(store.raw, async () => {
    const id = openStep(store.raw, step.code, step.at)
    const done = await work(store.write)
    if (!done.ok) return done
    const kept = closeStep(store.raw, id, done.facts)
    return ok(await after({ value: done.value, stepId: kept ? id : null }))
  })
}

/** Runs reads on one state of the store, whatever is committed meanwhile. */
export async function inSnapshot<T>(raw: Raw, work: () => Promise<T>): Promise<T> {
  raw.exec('BEGIN')
  try {
    return await work()
  } finally {
    if (raw.inTransaction) raw.exec('COMMIT')
  }
}
