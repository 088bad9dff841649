/**
 * The sleep balance turned round: the mat, or the rating, with which this bed holds a given low.
 *   find Rm (0 … 15 in R) or Tr (−60 … 25 °C) with T(bed) = low
 * Both rise or fall steadily, so bisection finds the one root; none in the range answers why.
 */
import { rootOfRising } from './bisect.ts'
import { outside, within, type Ranged } from './ranged.ts'
import { bedBalance, type Bed } from './sleep-limit.ts'

/** R 15: thicker than anything one would lie on. */
const THICKEST_RSI = 15 * 0.1761101838

const limitC = (bed: Bed): number => {
  const found = bedBalance(bed)
  return found.ok ? found.value.limitC : Number.POSITIVE_INFINITY
}

/** Insulation below, m²K/W. With a short mat the legs stay as they are. */
export function neededMats(bed: Bed, lowC: number): Ranged {
  const on = (matsRsi: number): Bed => ({ ...bed, matsRsi, legsRsi: bed.matShare < 1 ? bed.legsRsi : matsRsi })
  if (limitC(on(0)) <= lowC) return within(0)
  if (!(limitC(on(THICKEST_RSI)) <= lowC)) return outside('sleep.no-mat-does', { lowC })
  return within(rootOfRising((rsi) => lowC - limitC(on(rsi)), 0, THICKEST_RSI))
}

/** Rating on the bed's own scale, °C. */
export function neededRating(bed: Bed, lowC: number): Ranged {
  const rated = (ratedC: number): Bed => ({ ...bed, ratedC })
  if (limitC(rated(25)) <= lowC) return within(25)
  if (!(limitC(rated(-60)) <= lowC)) return outside('sleep.no-rating-does', { lowC })
  return within(rootOfRising((ratedC) => limitC(rated(ratedC)) - lowC, -60, 25))
}
