/**
 * How much of a thing's life is used.
 *   used = u/L50 (shown to 150 %)        P(past its life) = Φ(ln(u/L50)/σ)        P(past 90 %) = Φ(ln(u/(0.9·L50))/σ)
 *   left to 90 % = max(0, 0.9·L50 − u)        u the counter, L50 the median life in the same unit, σ standard deviation of ln(life)
 * Lives spread lognormally (choice): wear multiplies. With a limit in years the larger share rules.
 */
import { normalShareBelow } from './normal.ts'

export const WORN_SHARE = 0.9
export const SHOWN_TO = 1.5

export const lifeUsed = (used: number, medianLife: number): number => used / medianLife

/** The chance that the life is over, of a life of `share` of the median (0.9: time to look for another). */
export function pastLife(used: number, medianLife: number, sigma: number, share = 1): number {
  if (used <= 0) return 0
  return normalShareBelow(Math.log(used / (share * medianLife)) / sigma)
}

export const leftToWorn = (used: number, medianLife: number): number => Math.max(0, WORN_SHARE * medianLife - used)
