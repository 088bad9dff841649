/**
 * Heat that keeps a pot simmering.
 *   Q = k·V^⅔·(t − ta)·s/1000      Q kJ, V l, t boiling and ta air °C, s seconds, k W/K at one litre
 * k = 0.9 with a lid in still air; twice that without a lid, twice that in wind. An engineering estimate (0.06 m² × 15 W/(m² K)), no source.
 */
import type { Law } from '../figures/figure.ts'

export const HOLD_W_K = 0.9

type Takes = { litres: 'l'; boilC: 'degC'; airC: 'degC'; seconds: 's'; lossWK: 'W/K' }

export const heatToHold = {
  name: 'Heat to keep it simmering',
  formula: 'Q = k·V^(2/3)·(t − ta)·s/1000',
  source: { cite: 'engineering estimate, 0.06 m² at 15 W/(m² K)', known: 'common practice, no source' },
  takes: { litres: 'l', boilC: 'degC', airC: 'degC', seconds: 's', lossWK: 'W/K' },
  unit: 'kJ',
  compute: ({ litres, boilC, airC, seconds, lossWK }) => (lossWK * Math.cbrt(litres) ** 2 * Math.max(0, boilC - airC) * seconds) / 1000,
} as const satisfies Law<Takes, 'kJ'>

/** k for this pot: ×2 without a lid, ×2 in wind. */
export const holdLossWK = (lid: boolean, wind: boolean): number => HOLD_W_K * (lid ? 1 : 2) * (wind ? 2 : 1)
