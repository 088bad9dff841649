import { constant, given, uncertainty, work, type Figure, type Law } from '../figures/figure.ts'

/**
 * What several checks share about need and enough.
 *   enough = need·(1 + margin)        the margins are choices (provisions.md, default margins)
 */
export function enoughOf<U extends string>(need: Figure<U>, margin: number): Figure<U> {
  const law: Law<{ need: U; margin: '1' }, U> = {
    name: 'Enough',
    formula: 'need·(1 + margin)',
    source: { cite: `margin ${margin}`, known: 'choice' },
    takes: { need: need.unit, margin: '1' },
    unit: need.unit,
    compute: (at) => at.need * (1 + at.margin),
  }
  return work(law, { need, margin: constant(margin, '1', 'margin') })
}

/** A share of the figure as one more standard uncertainty, on a leaf of its own: for doubts stated relative to the result. */
export function doubted<U extends string>(figure: Figure<U>, leaf: string, u: number): Figure<U> {
  return { ...figure, shares: { ...figure.shares, [leaf]: (figure.shares[leaf] ?? 0) + u } }
}

/** Nothing of it is carried. */
export const nothing = <U extends string>(unit: U, from: string): Figure<U> => given(0, unit, 'worked', {}, from)

/**
 * The least amount at which a check reads enough: need and the larger of reserve and u, u being that of need and of the amount itself.
 * `ownShare`: relative standard uncertainty that the amount brings along, 0 to under 1.
 */
export function leastEnough(need: Figure, enough: number, ownShare: number): number {
  const reserve = Math.max(0, enough - need.value)
  const u = uncertainty(need)
  let low: number = need.value
  let high: number = low + reserve + u + 1e-9
  const isEnough = (amount: number): boolean => amount - need.value >= Math.max(reserve, Math.hypot(u, ownShare * amount))
  while (!isEnough(high)) high *= 1.5
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (isEnough(middle)) high = middle
    else low = middle
  }
  return high
}
