/**
 * The mass of an item by where it comes from, each with the doubt of that source as leaves.
 *   measured: weighing:<uid> (own), scale:<uid>:gain (common to the scale)
 *   claimed: 3 % own (about ±5 % rectangular, /√3), 2 % common to all claims: claims tend to be light (common practice, no source)
 *   estimated: 10 % own, 5 % common to all estimates (choice)
 * Source: provisions.md 9.3. Grams.
 */
import type { Figure } from '../figures/figure.ts'
import { given } from '../figures/figure.ts'
import { roundHalfAway } from '../figures/digits.ts'
import { formatDate } from '../figures/format-quantities.ts'
import type { MassOrigin } from './vocabulary.ts'

export const claimOwnShare = 0.03
export const claimCommonShare = 0.02
export const estimateOwnShare = 0.1
export const estimateCommonShare = 0.05

/** What the store knows of one item's mass. */
export interface ItemMassRow {
  readonly uid: string
  readonly massMg: number | null
  readonly massFrom: MassOrigin
  readonly uOwnMg: number
  readonly uGainMg: number
  readonly weighingUid: string | null
  readonly scaleUid: string | null
  readonly weighedOn?: string | null
  readonly claimedBy?: string
}

/**
 * The mass of one piece; null: nothing is known. `bias`: what own weighings taught of claims. A claim stays as it was said, so a bias that is
 * known and not corrected belongs to its common doubt: √(sd² + b²) (JCGM 100:2008, F.2.4.5, memory); only the corrected estimate has sd alone.
 */
export function itemMass(row: ItemMassRow, bias?: ClaimBias): Figure<'g'> | null {
  if (row.massMg === null || row.massFrom === 'none') return null
  if (row.massFrom === 'claimed') return claimedMass(row.massMg, row.uid, row.claimedBy, bias)
  if (row.massFrom === 'estimated') return estimatedMass(row.massMg, row.uid)
  const shares = {
    [`weighing:${row.weighingUid ?? row.uid}`]: row.uOwnMg / 1000,
    [`scale:${row.scaleUid ?? 'unknown'}:gain`]: row.uGainMg / 1000,
  }
  return given(row.massMg / 1000, 'g', 'measured', shares, row.weighedOn ? `weighed ${formatDate(row.weighedOn)}` : 'weighed')
}

export function claimedMass(massMg: number, itemUid: string, by = '', bias?: ClaimBias): Figure<'g'> {
  const massG = massMg / 1000
  const common = bias ? Math.hypot(bias.sd, bias.b) : claimCommonShare
  return given(
    massG,
    'g',
    'claimed',
    { [`claim:${itemUid}`]: claimOwnShare * massG, 'claims:bias': common * massG },
    `claimed by ${by === '' ? 'the maker' : by}`,
  )
}

export function estimatedMass(massMg: number, itemUid: string): Figure<'g'> {
  const massG = massMg / 1000
  return given(
    massG,
    'g',
    'estimated',
    { [`estimate:${itemUid}`]: estimateOwnShare * massG, 'estimates:bias': estimateCommonShare * massG },
    'estimated',
  )
}

export interface ClaimBias {
  /** Items with both a claim and a weighing. */
  readonly n: number
  /** Mean of ln(measured/claimed) and its sample sd, as they came. */
  readonly meanLog: number
  readonly sdLog: number
  /** Posterior mean of the log and its sd, the new common share. */
  readonly b: number
  readonly sd: number
  /** exp(b): what a claim is multiplied by to expect the scale's word. */
  readonly factor: number
}

/**
 * How heavy this person's things are against their claims. x = ln(measured/claimed), n ≥ 3:
 *   b = (n/s²·x̄) ÷ (n/s² + 1/0.02²)      sd = (n/s² + 1/0.02²)^−½      s² the sample variance, at least 0.01²
 * A prior of 0 ± 0.02 that own weighings move. Undefined below three pairs. Source: provisions.md 9.3.
 */
export function learnClaimBias(pairs: readonly { readonly measuredMg: number; readonly claimedMg: number }[]): ClaimBias | undefined {
  const logs = pairs.filter((pair) => pair.measuredMg > 0 && pair.claimedMg > 0).map((pair) => Math.log(pair.measuredMg / pair.claimedMg))
  const n = logs.length
  if (n < 3) return undefined
  const meanLog = logs.reduce((sum, x) => sum + x, 0) / n
  const sdLog = Math.sqrt(logs.reduce((sum, x) => sum + (x - meanLog) ** 2, 0) / (n - 1))
  const seen = n / Math.max(sdLog, 0.01) ** 2
  const all = seen + 1 / claimCommonShare ** 2
  const b = (seen * meanLog) / all
  return { n, meanLog, sdLog, b, sd: all ** -0.5, factor: Math.exp(b) }
}

/** What the scale will likely say of a claim: an estimate beside it, never in its place. */
export function estimateFromClaim(claimedMg: number, itemUid: string, bias: ClaimBias): Figure<'g'> {
  const massG = roundHalfAway(claimedMg * bias.factor) / 1000
  return given(
    massG,
    'g',
    'estimated',
    { [`claim:${itemUid}`]: claimOwnShare * massG, 'claims:bias': bias.sd * massG },
    `the claim, moved by ${bias.n} own weighings`,
  )
}
