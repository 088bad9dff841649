/**
 * A forecast low carried from the height it holds at to the camp, with its doubt.
 *   higher camp: planning T − 6.5·Δz; likely T − 4.5·Δz; mild edge T − 2.5·Δz; cold edge T − 9.8·Δz (dry adiabat)
 *   lower camp:  planning T (no credit for going down); likely T + 3.0·|Δz|; mild edge T + 5.0·|Δz|; cold edge T, or T − 3 in a hollow
 *   σ = √(2² + (1.5·|Δz|)²) K      Δz km of camp over forecast; T °C
 * Checks use the planning low. Above 1.5 km of difference: ask for a nearer forecast.
 * At night near the ground the fall is usually smaller than 6.5 K/km (Cascades 3.9 … 5.2; Idaho and Arizona minima below 6), and calm clear
 * nights put the cold air in hollows. Forecast minima are for open ground at 2 m.
 * Sources: ISO 2533 lapse (read, secondary); Minder, Mote and Lundquist 2010, Blandford and others 2008, south-eastern Arizona 2004
 * (abstracts, read). The rates of the lower camp, 3 K of a hollow and σ are choices.
 */
import type { Law } from '../figures/figure.ts'

export const STANDARD_K_PER_KM = 6.5
export const FORECAST_SIGMA_K = 2
export const FAR_FORECAST_M = 1500

const risen = (at: { readonly fromM: number; readonly toM: number }): number => (at.toM - at.fromM) / 1000

const takes = { lowC: 'degC', fromM: 'm', toM: 'm' } as const

/** Its own doubt is the lapse's part; the forecast's 2 K come with the low. */
export const planningLow = {
  name: 'Planning low at the camp',
  formula: 'T − 6.5·max(0, Δz)',
  source: { cite: 'ISO 2533 standard lapse upwards, no credit downwards', known: 'read' },
  takes,
  unit: 'degC',
  cautions: (at) => (Math.abs(risen(at)) * 1000 > FAR_FORECAST_M ? ['More than 1500 m from the forecast: find a nearer one.'] : []),
  leavesOut: 'cold air gathering in hollows on calm clear nights',
  compute: ({ lowC, ...at }) => lowC - STANDARD_K_PER_KM * Math.max(0, risen(at)),
  spread: (at) => 1.5 * Math.abs(risen(at)),
} as const satisfies Law<typeof takes, 'degC'>

export interface CampLow {
  readonly planningC: number
  readonly likelyC: number
  readonly mildC: number
  readonly coldC: number
  readonly sigmaK: number
}

/** All five figures; `hollow`: the camp is in a hollow, on a valley floor or a lake shore. */
export function campLow(lowC: number, fromM: number, toM: number, hollow = false): CampLow {
  const up = risen({ fromM, toM })
  const down = Math.max(0, -up)
  const planningC = planningLow.compute({ lowC, fromM, toM })
  const sigmaK = Math.hypot(FORECAST_SIGMA_K, 1.5 * up)
  if (up >= 0) return { planningC, likelyC: lowC - 4.5 * up, mildC: lowC - 2.5 * up, coldC: lowC - 9.8 * up - (hollow ? 3 : 0), sigmaK }
  return { planningC, likelyC: lowC + 3 * down, mildC: lowC + 5 * down, coldC: lowC - (hollow ? 3 : 0), sigmaK }
}

/** Any air temperature carried up by the standard lapse, never down: the air at the highest point of a day. */
export const carriedUp = {
  name: 'Air carried up by the standard lapse',
  formula: 'T − 6.5·max(0, Δz)',
  source: { cite: 'ISO 2533 standard atmosphere, 6.5 K per km', known: 'read' },
  takes: { airC: 'degC', fromM: 'm', toM: 'm' },
  unit: 'degC',
  cautions: (at) => (Math.abs(risen(at)) * 1000 > FAR_FORECAST_M ? ['More than 1500 m from the forecast: find a nearer one.'] : []),
  compute: ({ airC, ...at }) => airC - STANDARD_K_PER_KM * Math.max(0, risen(at)),
  spread: (at) => 1.5 * Math.abs(risen(at)),
} as const satisfies Law<{ airC: 'degC'; fromM: 'm'; toM: 'm' }, 'degC'>
