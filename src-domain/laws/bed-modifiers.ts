/**
 * What changes a bed beside bag and mat, as terms of the sleep balance (sleep-limit.ts).
 *   clothes worn inside   ΔR = 0.155·0.7·Σ clo, at most 0.20 m²K/W, base layer and socks not counted: the rating has them already
 *   no base layer at all  ΔR = −0.047 (0.3 clo)
 *   liner                 ΔR = 0.02 thin sheet, 0.06 fleece; makers claim 3 to 8 K, which never enters the sum
 *   open sky, wind v      ΔR = Ia(v) − Ia(0.4); wind through the shell is left out
 *   damp fill             φ = 0.85 down, 0.93 synthetic; wet 0.40 and 0.70, and then never better than tight
 *   quilt or hoodless     5 % of the body (head without face) bare under R 0.30 with a warm hat or hood, 0.12 without
 * Sources: base layer and air layer read (test clothing of EN 13537; ISO 11079); all other values are choices, to be corrected by
 * debriefs through the sleeper's own offset, not here. Frost: 92 to 800 g of water in 5 to 6 nights at −7 and −20 °C (2004, abstract, read).
 */
import type { Law } from '../figures/figure.ts'
import { airLayer } from './air-layer.ts'

const CLO_RSI = 0.155
const KEPT = 0.7
const CLOTHES_CAP_RSI = 0.2

export const clothesInside = {
  name: 'Clothes worn inside the bag',
  formula: 'ΔR = min(0.20, 0.155·0.7·Σ clo)',
  source: { cite: 'Squeezing and limited cover keep about 0.7 of a garment', known: 'choice' },
  takes: { clo: 'clo' },
  unit: 'm2K/W',
  cautions: ({ clo }) => (clo * CLO_RSI * KEPT > CLOTHES_CAP_RSI ? ['More clothing than this only squeezes itself flat.'] : []),
  compute: ({ clo }) => Math.min(CLOTHES_CAP_RSI, Math.max(0, clo) * CLO_RSI * KEPT),
} as const satisfies Law<{ clo: 'clo' }, 'm2K/W'>

export const NO_BASE_LAYER_RSI = -0.047

export const linerRsi: Readonly<Record<string, number>> = { silk: 0.02, cotton: 0.02, fleece: 0.06 }

export const openSky = {
  name: 'Wind on a bag under the open sky',
  formula: 'ΔR = Ia(v) − Ia(0.4)',
  source: { cite: 'ISO 11079:2007, air layer', known: 'read' },
  takes: { windMs: 'm/s' },
  unit: 'm2K/W',
  cautions: () => ['Wind through the shell is not in this figure: it can cost far more.'],
  compute: ({ windMs }) => airLayer.compute({ windMs, walkMs: 0 }) - airLayer.compute({ windMs: 0.4, walkMs: 0 }),
} as const satisfies Law<{ windMs: 'm/s' }, 'm2K/W'>

export type Wetness = 'dry' | 'damp' | 'wet'

/** φ by fill and wetness; a fill that is not said counts as down. */
export function dampFactor(fill: 'down' | 'synthetic', wetness: Wetness): number {
  if (wetness === 'dry') return 1
  if (wetness === 'damp') return fill === 'synthetic' ? 0.93 : 0.85
  return fill === 'synthetic' ? 0.7 : 0.4
}

export const HEAD_SHARE = 0.05
export const HEAD_WITH_HAT_RSI = 0.3
export const HEAD_BARE_RSI = 0.12

/** Nights below −5 °C without drying from which frost in the fill is worth a note. */
export const isFrostLikely = (lowC: number, nights: number): boolean => lowC < -5 && nights > 2
