/**
 * The insulation above the sleeper that gives a bag its rating on the test mat.
 *   R0 = D(Tsk, Tr)/(M − H(M, Tr));  Rt = (1 − f)/(1/R0 − f/(rb + Rtest))      m²K/W
 * Tr rating °C; Tsk, M of its scale; f share of the body facing the ground; rb skin to mat; Rtest 0.85.
 * Range: −60 … 25 °C, and while 1/R0 exceeds the loss to the test mat; else `sleep.rating-range`.
 * Two paths in parallel over the body plus breathing, per m²: our model, fitted to labels, not the standard's own.
 */
import type { Law } from '../figures/figure.ts'
import { breathingLoss } from './breathing-loss.ts'
import { TEST_MAT_RSI } from './mats-in-series.ts'
import { outside, within, type Ranged } from './ranged.ts'
import { skinDrive } from './skin-drive.ts'

export interface Rated {
  readonly ratedC: number
  readonly ratedSkinC: number
  /** Heat production of the scale, W/m². */
  readonly ratedHeat: number
  readonly groundShare: number
  readonly underRsi: number
  readonly rhPct: number
}

/** Whole resistance of bag and test mat, closed form. */
export function ratedWhole({ ratedC, ratedSkinC, ratedHeat, rhPct }: Rated): number {
  const loss = ratedHeat - breathingLoss.compute({ heat: ratedHeat, airC: ratedC, rhPct })
  return skinDrive.compute({ skinC: ratedSkinC, airC: ratedC, rhPct }) / loss
}

/** What is left for the top, W/m²K per unit of whole body. */
const topConductance = (at: Rated): number => 1 / ratedWhole(at) - at.groundShare / (at.underRsi + TEST_MAT_RSI)

/** Top resistance with its whole, or why there is none. */
export function calibrate(at: Rated): Ranged<{ readonly wholeRsi: number; readonly topRsi: number }> {
  const left = at.ratedC >= -60 && at.ratedC <= 25 ? topConductance(at) : 0
  if (!(left > 0)) return outside('sleep.rating-range', { ratedC: at.ratedC, fromC: -60, toC: 25 })
  return within({ wholeRsi: ratedWhole(at), topRsi: (1 - at.groundShare) / left })
}

/** The top resistance as the balance uses it; past the range it stays at 50 m²K/W, so that a slope taken there is a number. */
export const topRsiOf = (at: Rated): number => (1 - at.groundShare) / Math.max(topConductance(at), (1 - at.groundShare) / 50)

export const ratedTop = {
  name: 'Insulation above, from the rating',
  formula: 'Rt = (1 − f)/((M − H)/D − f/(rb + 0.85))',
  source: { cite: 'Heat balance with ISO 11079 terms, calibrated so that a rated bag on the test mat gives its rating', known: 'choice' },
  takes: { ratedC: 'degC', ratedSkinC: 'degC', ratedHeat: 'W/m2', groundShare: '1', underRsi: 'm2K/W', rhPct: '%' },
  unit: 'm2K/W',
  cautions: ({ ratedC }) =>
    ratedC > 20 || ratedC < -40 ? ['Warmer than 20 or colder than −40 °C is outside what the model was fitted to.'] : [],
  compute: topRsiOf,
} as const satisfies Law<
  { ratedC: 'degC'; ratedSkinC: 'degC'; ratedHeat: 'W/m2'; groundShare: '1'; underRsi: 'm2K/W'; rhPct: '%' },
  'm2K/W'
>
