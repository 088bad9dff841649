/**
 * The lightest choice, its next best, what it would be without a thing or without a demand: each one exact solve.
 *   next best: Σ taken over the things chosen (where it matters, `focus`) ≤ their number − 1: the answer and all that holds it are excluded
 *   price of a demand: the lightest with its rows, less the lightest without        ≥ 0
 * Prices come from solving again and never from duals (choosing.md 4, 8.3); they do not add.
 */
import { formulate, countedDg, takenOf, type Formulated, type Taken } from './formulate.ts'
import type { AlsoRow, Candidate, Wanted } from './candidate.ts'
import { softened, type Solve } from './model.ts'

export type Answer =
  | { readonly kind: 'found'; readonly taken: readonly Taken[]; readonly massDg: number; readonly proven: boolean; readonly gapDg: number }
  | { readonly kind: 'none' }
  | { readonly kind: 'unsettled'; readonly why: string }

export function lightest(candidates: readonly Candidate[], wanted: Wanted, solve: Solve): Answer {
  const model = formulate(candidates, wanted)
  const solved = solve(model)
  if (solved.kind === 'infeasible') return { kind: 'none' }
  if (solved.kind === 'unsettled') return solved
  const taken = takenOf(model, solved.values)
  const proven = solved.kind === 'optimal'
  return { kind: 'found', taken, massDg: countedDg(taken, candidates, wanted), proven, gapDg: proven ? 0 : solved.gap }
}

/** The answers in order, the first the lightest; at most `count`, each differing from all before within `focus` (absent: anywhere). */
export function nextBest(
  candidates: readonly Candidate[],
  wanted: Wanted,
  solve: Solve,
  count: number,
  focus: (id: string) => boolean = () => true,
): readonly Answer[] {
  const answers: Answer[] = []
  let now = wanted
  while (answers.length < count) {
    const answer = lightest(candidates, now, solve)
    if (answer.kind !== 'found') break
    answers.push(answer)
    const held = answer.taken.filter(({ id }) => focus(id))
    if (held.length === 0) break
    now = { ...now, also: [...(now.also ?? []), notAgain(held.map(({ id }) => id))] }
  }
  return answers
}

/** Not all of these again. */
export const notAgain = (ids: readonly string[]): AlsoRow => ({
  demand: 'another answer',
  terms: ids.map((id) => ({ id, of: 'taken', coefficient: -1 })),
  low: 1 - ids.length,
})

export const withoutDemands = (wanted: Wanted, ...demands: readonly string[]): Wanted => ({
  ...wanted,
  without: [...(wanted.without ?? []), ...demands],
})

/** Demands that could be given up, each once, in the order of the rows. */
export function demandsOf(candidates: readonly Candidate[], wanted: Wanted): readonly string[] {
  const rows = formulate(candidates, wanted).rows.map(({ demand }) => demand)
  const people = [...(wanted.bans ?? []).map((ban) => `ban:${ban}`), ...(wanted.pinOut ?? []).map((id) => `out:${id}`)]
  return [...new Set([...rows.filter((demand) => demand !== 'owned' && demand !== 'another answer'), ...people])]
}

export interface Broken {
  /** What has to give way, fewest and least dear first. */
  readonly demands: readonly string[]
  readonly taken: readonly Taken[]
}

/**
 * Where nothing meets everything: the fewest demands to give up (by weight: what a person said breaks last), and the lightest choice then.
 * null: the solver could not say.
 */
export function leastGivenUp(
  candidates: readonly Candidate[],
  wanted: Wanted,
  solve: Solve,
  weightOf: (demand: string) => number,
): Broken | null {
  const model: Formulated = formulate(candidates, wanted)
  const demands = [...new Set(model.rows.map(({ demand }) => demand))].filter((demand) => demand !== 'owned')
  const soft = softened(model, new Map(demands.map((demand) => [demand, weightOf(demand)])))
  const solved = solve(soft)
  if (solved.kind !== 'optimal' && solved.kind !== 'best') return null
  const given = demands.filter((_, i) => solved.values[soft.firstSoft + i] === 1)
  const rest = lightest(candidates, withoutDemands(wanted, ...given), solve)
  return rest.kind === 'found' ? { demands: given, taken: rest.taken } : null
}
