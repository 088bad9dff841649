import { parentPort, workerData } from 'node:worker_threads'
import { nextAfter, pricedDemands, priceOf, whyIn, withoutIt, type Found } from '../../src-domain/choosing/explain.ts'
import { choosingFrom } from '../../src-domain/choosing/from-facts.ts'
import { giveUp } from '../../src-domain/choosing/give-up.ts'
import type { Solve } from '../../src-domain/choosing/model.ts'
import { prepare, settle, type Change, type Pool, type Prepared } from '../../src-domain/choosing/settle.ts'
import { loadSolver, solverWith } from './highs.ts'
import type { ChosenSet, Job, LineReason, Proposal, Said } from './messages.ts'

/** The solver's thread: one choice, told part by part, the proposal first. Ending the thread is how it is cancelled. */
const say = (said: Said): void => parentPort?.postMessage(said)
const NEXT_BEST = 4

try {
  choose(workerData as Job, solverWith(await loadSolver()))
} catch (error) {
  // What the solver's package throws can hold its whole source.
  say({ kind: 'failed', why: error instanceof Error ? `${error.name}: ${error.message}`.slice(0, 300) : 'the solver failed' })
}

function choose({ facts, options }: Job, solve: Solve): void {
  const prepared = prepare(choosingFrom(facts, options))
  const pool: Pool = new Map()
  const settled = settle(prepared, {}, solve, pool)
  const given = settled.kind === 'none' ? giveUp(prepared, {}, solve, pool) : null
  const found = settled.kind === 'found' ? settled : (given?.settled ?? null)
  const givenUp = given?.demands ?? []
  say({ kind: 'proposal', proposal: proposalOf(prepared, settled.kind, 'why' in settled ? settled.why : '', found, givenUp) })
  if (found !== null) explain(prepared, found, { without: givenUp }, solve, pool)
  say({ kind: 'done' })
}

function explain(prepared: Prepared, found: Found, change: Change, solve: Solve, pool: Pool): void {
  const chosen = [...found.pieces.keys()].filter((id) => !prepared.field.stays.has(id))
  for (const id of chosen) say({ kind: 'reason', reason: reasonOf(prepared, found, id) })
  const best: Found[] = [found]
  for (let n = 0; n < NEXT_BEST; n++) {
    const next = nextAfter(best, prepared, change, solve, pool)
    if (next === null) break
    best.push(next)
    say({ kind: 'next', chosen: chosenOf(prepared, next) })
  }
  for (const priced of pricedDemands(prepared))
    say({ kind: 'price', name: priced.name, dg: priceOf(priced, prepared, found, change, solve, pool) })
  for (const id of chosen) {
    const without = withoutIt(prepared, found, change, id, solve, pool)
    const instead = without.kind === 'costs' ? without.comes.map((one) => itemOf(prepared, one).item.id) : []
    say({ kind: 'reason', reason: { ...reasonOf(prepared, found, id), without, instead } })
  }
}

function itemOf({ field }: Prepared, id: string) {
  return field.choices.find(({ candidate }) => candidate.id === id)!
}

function reasonOf(prepared: Prepared, found: Found, id: string): LineReason {
  const { item, lane } = itemOf(prepared, id)
  return { itemId: item.id, lane, why: whyIn(prepared, found.pieces, id), without: null, instead: [] }
}

function chosenOf(prepared: Prepared, { pieces, countedDg, proven, gapDg, rounds }: Found): ChosenSet {
  const lines = [...pieces].map(([id, count]) => {
    const { item, lane } = itemOf(prepared, id)
    return { itemId: item.id, lane, pieces: count, stays: prepared.field.stays.get(id) ?? null }
  })
  return { lines, countedDg, proven, gapDg, rounds }
}

function proposalOf(prepared: Prepared, kind: Proposal['kind'], why: string, found: Found | null, givenUp: readonly string[]): Proposal {
  const { choosing, field, unasked, demanded } = prepared
  const idOf = new Map(choosing.closet.map(({ item }) => [item.uid, item.id]))
  return {
    kind,
    why,
    chosen: found === null ? null : chosenOf(prepared, found),
    givenUp,
    unasked: unasked.map(({ check, missing }) => ({ checkId: check.id, code: missing.code, facts: missing.facts ?? {} })),
    leftOut: field.leftOut.map(({ uid, reason, why: word }) => ({ itemId: idOf.get(uid)!, reason, why: word })),
    silent: demanded.flatMap(({ check, silent }) =>
      [...silent.keys()].map((id) => ({ itemId: itemOf(prepared, id).item.id, checkId: check.id })),
    ),
  }
}
