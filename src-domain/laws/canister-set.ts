/**
 * The canisters that hold a trip's fuel at the least weight carried to the trailhead: an exact search.
 *   least Σ(net + empty) over the set chosen, subject to Σ net ≥ asked      g
 * New ones 0 to 6 of each size, part-used ones the walker has each taken or left. Between equal weights the one with fewer canisters.
 * Sizes and empty masses sold are common practice; an owned canister brings its own. What is left in one is its reading less its empty mass,
 * never a shake. Caution: never plan on refilling a canister; bottles of liquid fuel are filled to 80–85 % at most.
 */
export interface Canister {
  readonly id: string
  readonly netG: number
  readonly emptyG: number
  /** How many there are to choose from; a size that is sold: 6. */
  readonly upTo: number
}

/** Common sizes with the middle of the empty masses seen (common practice). */
export const soldSizes: readonly Canister[] = [
  { id: 'small', netG: 110, emptyG: 98, upTo: 6 },
  { id: 'middle', netG: 230, emptyG: 140, upTo: 6 },
  { id: 'large', netG: 450, emptyG: 212, upTo: 6 },
]

export interface CanisterSet {
  readonly taken: readonly { readonly id: string; readonly count: number }[]
  readonly netG: number
  readonly carriedG: number
}

/** The least set; null when all of them together do not hold it. */
export function canisterSet(askedG: number, choices: readonly Canister[]): CanisterSet | null {
  const left = suffixNet(choices)
  const visit = (i: number, so: Tried, best: Tried | null): Tried | null => {
    if (best !== null && (so.carried > best.carried || (so.carried === best.carried && so.pieces >= best.pieces))) return best
    if (so.net >= askedG) return so
    if (i === choices.length || so.net + left[i]! < askedG) return best
    let least = best
    for (let count = 0; count <= choices[i]!.upTo; count++) least = visit(i + 1, withCount(so, choices[i]!, count), least)
    return least
  }
  const best = visit(0, { counts: [], net: 0, carried: 0, pieces: 0 }, null)
  return best === null ? null : asSet(choices, best)
}

interface Tried {
  readonly counts: readonly number[]
  readonly net: number
  readonly carried: number
  readonly pieces: number
}

const withCount = (so: Tried, { netG, emptyG }: Canister, count: number): Tried => ({
  counts: [...so.counts, count],
  net: so.net + count * netG,
  carried: so.carried + count * (netG + emptyG),
  pieces: so.pieces + count,
})

/** What the choices from i on can still hold: lets the search stop early without losing the least. */
function suffixNet(choices: readonly Canister[]): readonly number[] {
  const left = [0]
  for (let i = choices.length - 1; i >= 0; i--) left.unshift(left[0]! + choices[i]!.upTo * choices[i]!.netG)
  return left
}

function asSet(choices: readonly Canister[], best: { counts: readonly number[]; carried: number }): CanisterSet {
  const taken = best.counts.map((count, i) => ({ id: choices[i]!.id, count })).filter((one) => one.count > 0)
  const netG = best.counts.reduce((sum, count, i) => sum + count * choices[i]!.netG, 0)
  return { taken, netG, carriedG: best.carried }
}
