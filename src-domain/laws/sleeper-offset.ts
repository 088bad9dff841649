/**
 * How much colder than the standard this sleeper sleeps, learned from their own nights.
 *   weight(δ) = exp(−(δ − μ0)²/(2·3²))·Π [cold: Φ((δ − m)/2.5) · not cold: 1 − Φ((δ − m)/2.5)]      δ on −12.0, −11.9 … 12.0 K
 *   mean = Σ wδ/Σ w;  sd = √(Σ wδ²/Σ w − mean²)
 * m = low of the night − coldest night the bed held by the sum, K. δ positive: a colder sleeper. Own word: cold +3, typical 0, warm −4.
 * Prior sd 3 and width 2.5 are choices; the 6 K between the two label scales and a trade remark of 10 K between people bound them.
 * Never set by sex or age.
 */
import { normalShareBelow } from './normal.ts'

export interface NightSlept {
  readonly marginK: number
  readonly cold: boolean
}

export const ownWordK = { cold: 3, typical: 0, warm: -4 } as const
export const PRIOR_SD_K = 3
const WIDTH_K = 2.5

const grid = Array.from({ length: 241 }, (_, i) => -12 + i / 10)

export function sleeperOffset(nights: readonly NightSlept[], priorK: number): { readonly meanK: number; readonly sdK: number } {
  const logs = grid.map((offsetK) => logWeight(offsetK, nights, priorK))
  const most = Math.max(...logs)
  const weights = logs.map((ln) => Math.exp(ln - most))
  const all = weights.reduce((sum, w) => sum + w, 0)
  const moment = (power: number): number => grid.reduce((sum, offsetK, i) => sum + weights[i]! * offsetK ** power, 0) / all
  const meanK = moment(1)
  return { meanK, sdK: Math.sqrt(Math.max(0, moment(2) - meanK * meanK)) }
}

/** In logarithms, so that a hundred nights do not vanish. */
function logWeight(offsetK: number, nights: readonly NightSlept[], priorK: number): number {
  let ln = -((offsetK - priorK) ** 2) / (2 * PRIOR_SD_K ** 2)
  for (const { marginK, cold } of nights) {
    const z = (offsetK - marginK) / WIDTH_K
    ln += Math.log(Math.max(1e-300, normalShareBelow(cold ? z : -z)))
  }
  return ln
}
