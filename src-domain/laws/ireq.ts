/**
 * How much clothing cold weather asks for (IREQ): the insulation that holds the balance without end.
 *   IREQ = root of B(I, 0);  0 where B(0.0001, 0) > 0
 *   ICL  = (IREQ + Ia/fcl)/K − 0.085/fcl, fcl = 1 + 1.197·IREQ: what to wear as tables and labels count it
 * m²K/W; one clo is 0.155. Balance: clothed-balance.ts. Range: air ≤ 10 °C (else `ireq.too-warm`: no cold stress is computed),
 * M 58 … 400 W/m², wind to 18 m/s.
 * Solved by bisection on 1e-4 … 3. The published step-halving loop moves once more after it has succeeded; its durations can be wrong.
 * Source: ISO 11079:2007, three public ports of its authors' program (read). The program takes fcl of the worn clothing for ICL: under 0.03 clo.
 * Caution: for the body as a whole. Hands, feet and face are outside it.
 */
import type { Law } from '../figures/figure.ts'
import { rootOfRising } from './bisect.ts'
import { areaFactor, CLO_RSI, COLD_BELOW_C, flows, termsOf, type Climate, type Criterion, type Terms } from './clothed-balance.ts'
import { outside, within, type Ranged } from './ranged.ts'

export const THINNEST_RSI = 1e-4
export const THICKEST_RSI = 3

/** The clothing resistance in use that balances at this storage. */
export function resistanceFor(terms: Terms, storage: number): number {
  const left = (rsi: number): number => flows(terms, rsi, storage).left
  return left(THINNEST_RSI) > 0 ? 0 : rootOfRising(left, THINNEST_RSI, THICKEST_RSI)
}

/** The clothing to put on, in clo as tables count it, that is worth this resistance in use. */
export function wornCloFor(terms: Terms, rsi: number): number {
  if (rsi === 0) return 0
  const area = areaFactor(rsi)
  return Math.max(0, ((rsi + terms.air / area) / terms.kept - 0.085 / area) / CLO_RSI)
}

/** Why the method does not answer here, or nothing. */
export function ireqOutside({ airC, heat }: Climate): Ranged<never> | null {
  if (airC > COLD_BELOW_C) return outside('ireq.too-warm', { airC, toC: COLD_BELOW_C })
  if (!(heat >= 58 && heat <= 400)) return outside('ireq.heat', { heat, from: 58, to: 400 })
  return Number.isFinite(airC) ? null : outside('ireq.air', {})
}

export interface Required {
  readonly ireqClo: number
  /** What to wear, static. */
  readonly iclClo: number
}

export function required(climate: Climate, criterion: Criterion): Ranged<Required> {
  const no = ireqOutside(climate)
  if (no) return no
  const terms = termsOf(climate, criterion)
  const rsi = resistanceFor(terms, 0)
  return within({ ireqClo: rsi / CLO_RSI, iclClo: wornCloFor(terms, rsi) })
}

/** A climate as figures carry it: radiant temperature that of the air. */
export const climateTakes = {
  heat: 'W/m2',
  work: 'W/m2',
  airC: 'degC',
  permeability: 'l/m2s',
  walkMs: 'm/s',
  windMs: 'm/s',
  rhPct: '%',
} as const
export type ClimateAt = { readonly [K in keyof typeof climateTakes]: number }
export const climateOf = (at: ClimateAt): Climate => ({ ...at, radiantC: at.airC })

export const ireqSource = { cite: 'ISO 11079:2007, program of its authors, solved by bisection', known: 'read' } as const
export const ireqCautions = ({ heat, windMs }: ClimateAt): readonly string[] => [
  'For the body as a whole. Hands, feet and face can be injured much sooner.',
  ...(heat < 58 || heat > 400 ? ['Heat production outside 58 to 400 W/m² is taken at the nearer end.'] : []),
  ...(windMs > 18 ? ['Wind above 18 m/s at the body is taken as 18 m/s.'] : []),
]

const icl = (at: ClimateAt, criterion: Criterion): number => {
  const terms = termsOf(climateOf(at), criterion)
  return wornCloFor(terms, resistanceFor(terms, 0))
}

/**
 * Half-width ±20 % of the heat production, never below 58 W/m², as one standard uncertainty of the clothing asked for (choice):
 * the law's own doubt, taken over the whole width because the clothing bends with the heat.
 */
export const heatDoubtClo = (clo: (heat: number) => number, heat: number): number =>
  Math.abs(clo(Math.max(58, 0.8 * heat)) - clo(Math.max(58, 1.2 * heat))) / (2 * Math.sqrt(3))

export const clothingMinimal = {
  name: 'Clothing asked for without end, minimal',
  formula: 'ICL = ((IREQ + Ia/fcl)/K − 0.085/fcl)/0.155, IREQ where the balance closes at S = 0',
  source: ireqSource,
  takes: climateTakes,
  unit: 'clo',
  cautions: ireqCautions,
  compute: (at) => icl(at, 'minimal'),
  spread: (at) => heatDoubtClo((heat) => icl({ ...at, heat }, 'minimal'), at.heat),
} as const satisfies Law<typeof climateTakes, 'clo'>
