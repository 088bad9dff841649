/**
 * Why a choice is as it is, each by solving again (choosing.md 4) or by asking the rail.
 *   why a thing is in: what is no longer met when it alone is taken out
 *   without it: the lightest choice that leaves it at home, less this one        g; none: nothing else owned does
 *   what a demand costs: this choice less the lightest with that demand given up        g, never below 0; prices do not add
 *   next best: the lightest that differs where it matters, and so on
 */
import type { Saying } from '../checks/check.ts'
import { countedOf, sayingOf } from '../checks/counted.ts'
import type { KitArea } from '../closet/vocabulary.ts'
import type { AlsoRow } from './candidate.ts'
import { demandOf } from './cuts.ts'
import { notAgain } from './lightest.ts'
import type { Solve } from './model.ts'
import { settle, type Change, type Pool, type Prepared, type Settled } from './settle.ts'
import { Trial, type Pieces } from './trial.ts'

export type Found = Extract<Settled, { readonly kind: 'found' }>

/** A check that is worse than asked without it, or a duty or need that nothing serves then. */
export type Why =
  | { readonly kind: 'check'; readonly id: string }
  | { readonly kind: 'duty'; readonly duty: string; readonly label: string; readonly holder: string }

export function whyIn(prepared: Prepared, pieces: Pieces, id: string): readonly Why[] {
  const trial = new Trial(prepared.choosing, prepared.field)
  const without = new Map(pieces)
  without.delete(id)
  const worse = prepared.demanded.filter(({ check }) => rank(trial.find(check, without).state) > rank(trial.find(check, pieces).state))
  const checks = worse.filter(({ check }) => !counted.has(check.id)).map(({ check }): Why => ({ kind: 'check', id: check.id }))
  return [...checks, ...missedMore(missedOf(trial, pieces), missedOf(trial, without))]
}

/** What these two count is told duty by duty, and also where the check itself cannot be asked yet. */
const counted: ReadonlySet<string> = new Set(['duties', 'safety'])

function missedOf(trial: Trial, pieces: Pieces): readonly Saying[] {
  const { asked, needs } = countedOf(trial.filled(pieces))
  return [...asked.map(({ met }) => met), ...needs].filter(({ met }) => !met).map(sayingOf)
}

function missedMore(now: readonly Saying[], then: readonly Saying[]): readonly Why[] {
  const key = ({ facts }: Saying) => `${facts?.['duty']} ${facts?.['holder'] ?? ''}`
  const known = new Set(now.map(key))
  return then
    .filter((saying) => !known.has(key(saying)))
    .map(({ facts }) => ({
      kind: 'duty',
      duty: String(facts?.['duty']),
      label: String(facts?.['label']),
      holder: String(facts?.['holder'] ?? ''),
    }))
}

const order = ['not-asked', 'enough', 'tight', 'short', 'unknown']
const rank = (state: string): number => order.indexOf(state)

export type Without =
  | { readonly kind: 'costs'; readonly dg: number; readonly comes: readonly string[] }
  | { readonly kind: 'nothing-else' }
  | { readonly kind: 'unsettled' }

/** What would go instead of one thing, and how much more that weighs. */
export function withoutIt(prepared: Prepared, found: Found, change: Change, id: string, solve: Solve, pool: Pool): Without {
  const other = settle(prepared, { ...change, out: [...(change.out ?? []), id] }, solve, pool)
  if (other.kind === 'none') return { kind: 'nothing-else' }
  if (other.kind === 'unsettled') return { kind: 'unsettled' }
  return { kind: 'costs', dg: other.countedDg - found.countedDg, comes: [...other.pieces.keys()].filter((one) => !found.pieces.has(one)) }
}

/** What can be given up by the person, with the demands that fall with it; groups hold what two rows of one thing would each price at 0. */
export interface Priced {
  readonly name: string
  readonly demands: readonly string[]
}

const groups: readonly Priced[] = [
  { name: 'group:hot-meals', demands: ['duty:stove', 'duty:pot', 'duty:utensil', ...whole('fuel'), ...whole('gas-cold')] },
  {
    name: 'group:sleep',
    demands: ['duty:top-insulation', 'duty:ground-insulation', ...whole('sleep-warmth'), ...whole('ground-warmth')],
  },
  { name: 'group:carry', demands: [...whole('room'), ...whole('pack-load')] },
]

function whole(id: string): readonly string[] {
  return (['enough', 'not-short', 'as-now'] as const).map((level) => demandOf({ id }, level))
}

/** Safety duties are not among them: no saving removes one. */
export function pricedDemands({ asks, demanded }: Prepared): readonly Priced[] {
  const duties = asks.filter(({ safety }) => !safety).map(({ duty }): Priced => ({ name: `duty:${duty}`, demands: [`duty:${duty}`] }))
  const counted = new Set(['duties', 'safety', 'rules'])
  const checked = demanded
    .filter(({ check }) => !counted.has(check.id))
    .map(({ check }): Priced => ({ name: `check:${check.id}`, demands: whole(check.id) }))
  const there = new Set([...duties, ...checked].flatMap(({ demands }) => demands))
  const grouped = groups.filter(({ demands }) => demands.filter((demand) => there.has(demand)).length > 3)
  return [...grouped, ...checked, ...duties]
}

/** Tenths of a gram; null: it could not be settled. */
export function priceOf({ demands }: Priced, prepared: Prepared, found: Found, change: Change, solve: Solve, pool: Pool): number | null {
  const other = settle(prepared, { ...change, without: [...(change.without ?? []), ...demands] }, solve, pool)
  return other.kind === 'found' ? Math.max(0, found.countedDg - other.countedDg) : null
}

/** Where an alternative has to differ to be one. */
export const focusAreas: readonly KitArea[] = ['shelter', 'sleep', 'carry', 'clothing']

/** The next best after those before, `null` when there is none. */
export function nextAfter(before: readonly Found[], prepared: Prepared, change: Change, solve: Solve, pool: Pool): Found | null {
  const { choices, stays } = prepared.field
  const matters = new Set(choices.filter(({ item }) => focusAreas.includes(item.kitArea)).map(({ candidate }) => candidate.id))
  const also = before.map(({ pieces }): AlsoRow => notAgain([...pieces.keys()].filter((id) => matters.has(id) && !stays.has(id))))
  if (also.some(({ terms }) => terms.length === 0)) return null
  const next = settle(prepared, { ...change, also: [...(change.also ?? []), ...also] }, solve, pool)
  return next.kind === 'found' ? next : null
}
