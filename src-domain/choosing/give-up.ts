/**
 * Where nothing meets every demand: which have to give way, the fewest first, safety and what the person pinned last; and the lightest choice then.
 * Solved as a model in which each demand may be given up at a price; a set that the rail still refuses comes back as new rows, and so on.
 */
import { dutyByCode } from '../closet/vocabulary.ts'
import { formulate } from './formulate.ts'
import { softened, type Solve } from './model.ts'
import { givenUp, rowsIn, settle, type Change, type Pool, type Prepared, type Settled } from './settle.ts'

export interface GivenUp {
  readonly demands: readonly string[]
  readonly settled: Extract<Settled, { readonly kind: 'found' }>
}

const MOST_TRIES = 60

/** null: the solver could not say, or giving up every demand is not enough (pins against each other). */
export function giveUp(prepared: Prepared, change: Change, solve: Solve, pool: Pool): GivenUp | null {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const demands = fewest(prepared, change, solve, pool)
    if (demands === null) return null
    const before = pool.size
    const settled = settle(prepared, { ...change, without: [...(change.without ?? []), ...demands] }, solve, pool)
    if (settled.kind === 'found') return { demands, settled }
    // Nothing new was learned, so the same demands would come again.
    if (settled.kind === 'unsettled' || pool.size === before) return null
  }
  return null
}

function fewest(prepared: Prepared, change: Change, solve: Solve, pool: Pool): readonly string[] | null {
  const { candidates, wanted } = prepared
  const { out = [], in: inside = [], also = [] } = change
  const without = givenUp(prepared, change)
  const asked = new Set(prepared.asks.map(({ duty }) => duty))
  const pinIn = { ...wanted.pinIn, ...Object.fromEntries(inside.map((id) => [id, 1])) }
  const model = formulate(candidates, {
    ...wanted,
    without,
    pinOut: out,
    pinIn,
    also: [...(wanted.also ?? []), ...rowsIn(pool, []), ...also],
  })
  const demands = [...new Set(model.rows.map(({ demand }) => demand))].filter(
    (demand) => weightOf(demand) !== null && (!demand.startsWith('duty:') || asked.has(demand.slice(5))),
  )
  const soft = softened(model, new Map(demands.map((demand) => [demand, weightOf(demand)!])))
  const solved = solve(soft)
  if (solved.kind !== 'optimal' && solved.kind !== 'best') return null
  return demands.filter((_, i) => solved.values[soft.firstSoft + i] === 1)
}

/** What a demand weighs when something has to give way; null: it never does (what a thing needs, what is owned). */
export function weightOf(demand: string): number | null {
  const [kind, code] = demand.split(':')
  if (kind === 'duty') return dutyByCode.get(code!)?.safety ? 20 : 1
  if (kind === 'check') return 1
  if (kind === 'tight' || kind === 'worse') return 2
  return kind === 'in' && code !== 'supply' ? 100 : null
}
