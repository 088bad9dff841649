import { total, given, type Figure } from '../figures/figure.ts'
import { dutyByCode } from '../closet/vocabulary.ts'
import { askedDemand, meet, needsOf, type Demand, type Met } from '../loadout/coverage.ts'
import { asksOf, standing, type Ask } from '../trips/asked.ts'
import type { Asked, Saying } from './check.ts'

/** What `duties` and `safety` both count, dealt once over all of it, so that a piece does not serve both of them at one moment. */
export interface Counted {
  /** Everything asked, struck duties with their reason among it. */
  readonly asks: readonly Ask[]
  readonly asked: readonly { readonly ask: Ask; readonly met: Met }[]
  readonly needs: readonly Met[]
}

/** One question is dealt once, though two checks read it. */
const dealt = new WeakMap<Asked, Counted>()

export function countedOf(asked: Asked): Counted {
  const known = dealt.get(asked) ?? deal(asked)
  dealt.set(asked, known)
  return known
}

/** In the order of claims on a piece: safety, musts, needs, wants. */
function deal({ loadout, brief, trip, today }: Asked): Counted {
  const asks = asksOf(brief, trip, loadout)
  const pairs = [...standing(asks)].sort((a, b) => rank(a) - rank(b)).map((ask) => ({ ask, demand: askedDemand(ask.duty) }))
  const needs = needsOf(loadout)
  const wants = pairs.findIndex(({ ask }) => ask.as === 'want')
  const first = (wants < 0 ? pairs : pairs.slice(0, wants)).map(({ demand }) => demand)
  const last = (wants < 0 ? [] : pairs.slice(wants)).map(({ demand }) => demand)
  const found = meet(loadout, [...first, ...needs, ...last], trip.endsOn ?? trip.startsOn ?? today)
  const by = new Map<Demand, Met>(found.map((met) => [met.demand, met]))
  return { asks, asked: pairs.map(({ ask, demand }) => ({ ask, met: by.get(demand)! })), needs: needs.map((need) => by.get(need)!) }
}

const rank = (ask: Ask): number => (ask.as === 'want' ? 2 : ask.safety ? 0 : 1)

/** How many of them are met: the figure and its parts. */
export function countOf(name: string, mets: readonly Met[]): Figure<'count'> {
  const parts = mets.map(({ demand, met }) => ({ name: partName(demand), figure: given(met ? 1 : 0, 'count', 'worked') }))
  return total(name, 'count', parts)
}

export const askedCount = (name: string, mets: readonly Met[]): Figure<'count'> => given(mets.length, 'count', 'given', {}, name)

const partName = ({ duty, holder }: Demand): string => (holder === null ? labelOf(duty) : `${holder.name}: ${labelOf(duty)}`)

export const labelOf = (duty: string): string => dutyByCode.get(duty)?.label ?? duty

/**
 * `duty-missing`: nothing covers it, at `moments` (empty: at all of them) · `need-missing`: `present` of the `pieces` that `holder` needs ·
 * `need-held`: `held` of `present` pieces are taken by `heldBy`, and `holder` needs `pieces`.
 */
export function sayingOf({ demand, lacking, present, heldBy }: Met): Saying {
  const { duty, pieces, holder } = demand
  const facts = { duty, label: labelOf(duty) }
  if (holder === null) {
    const all = lacking.length === (dutyByCode.get(duty)?.moments.length ?? 1)
    return { code: 'duty-missing', facts: { ...facts, moments: all ? '' : lacking.join(' ') } }
  }
  const need = { ...facts, holder: holder.name, pieces, present }
  if (heldBy.length === 0) return { code: 'need-missing', facts: need }
  const held = heldBy.reduce((sum, one) => sum + one.pieces, 0)
  return { code: 'need-held', facts: { ...need, held, heldBy: heldBy.map(({ name }) => name).join(', ') } }
}
