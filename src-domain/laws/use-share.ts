/**
 * How likely a thing goes along on the next trip it is fit for.
 *   θ ~ Beta(0.5 + k, 0.5 + n − k)        k taken of n fit trips; Jeffreys' prior
 *   mean = (0.5 + k)/(1 + n)        evidence E = P(θ < 0.10) = I(0.10; 0.5 + k, 0.5 + n − k)
 *   P(on none of the next m) = Π (β + i)/(α + β + i), i = 0 … m − 1
 * Source: the conjugate update of a share, standard statistics (memory). The prior matters: with a flat one 0 of 8 gives a mean of 0.100, not 0.056.
 * Counts need not be whole: older trips may weigh 0.5^(age/3 years) (choice, off by default).
 */
import type { Law } from '../figures/figure.ts'
import { betaQuantile, betaShareBelow } from './beta.ts'

export interface UseShare {
  readonly alpha: number
  readonly beta: number
}

export const RARE_SHARE = 0.1

/** `prior` 0.5: Jeffreys; 1: flat. */
export function useShare(taken: number, fit: number, prior = 0.5): UseShare {
  if (taken < 0 || taken > fit) throw new Error(`taken ${taken} of ${fit}`)
  return { alpha: prior + taken, beta: prior + fit - taken }
}

export const meanShare = ({ alpha, beta }: UseShare): number => alpha / (alpha + beta)
export const shareUnder = ({ alpha, beta }: UseShare, under: number): number => betaShareBelow(under, alpha, beta)
export const shareQuantile = ({ alpha, beta }: UseShare, q: number): number => betaQuantile(q, alpha, beta)

/** The chance that it stays home on all of the next trips. */
export function noneOfNext({ alpha, beta }: UseShare, trips: number): number {
  let chance = 1
  for (let i = 0; i < trips; i++) chance *= (beta + i) / (alpha + beta + i)
  return chance
}

/** Weight of a trip of that age. */
export const ageWeight = (ageYears: number): number => 0.5 ** (Math.max(0, ageYears) / 3)

/** How sure it is that the share lies under one in ten, as a figure that opens. */
export const sureRare = {
  name: 'Sure of under 1 trip in 10',
  formula: 'E = P(θ < 0.10) = I(0.10; ½ + k, ½ + n − k)',
  source: { cite: 'share of trips, Jeffreys’ prior ½ and ½, conjugate update, standard statistics', known: 'memory' },
  takes: { took: '1', trips: '1' },
  unit: '%',
  compute: ({ took, trips }) => 100 * shareUnder(useShare(took, trips), RARE_SHARE),
  leavesOut: 'Why it stayed: the record knows only that it did.',
} as const satisfies Law<{ took: '1'; trips: '1' }, '%'>
