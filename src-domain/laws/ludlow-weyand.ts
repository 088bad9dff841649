import type { Law } from '../figures/figure.ts'
import type { Walking, WalkingState } from './lcda-2022.ts'

/**
 * Power of walking by its minimum mechanics, after Ludlow and Weyand: the second law shown beside ours.
 *   walk = 3.28 + 0.32·G + (1 + 0.19·G)·2.66·V²  for G ≥ 0;   0.73·(3.28 + 2.66·V²)  for G < 0      ml O₂ per kg of all mass and minute; G percent
 *   O₂ = 3.05·W + (W + L)·walk  ml/min;   power = O₂·20.1/60  W
 * Range: 0.4 to 1.6 m/s, −6° to 9°, loads of 18 and 31 %. No ground factor. The jump by 0.73 at G = 0 is in the model.
 * Standing still `walk` is nothing: what is left, 3.05 ml/(kg·min), is the model's rest.
 * Source: Ludlow and Weyand 2017, J Appl Physiol 123, 1288-1302, table 4 (read in two public source files; one carries another product form, not used).
 */
export const ludlowWeyand = {
  name: 'Walking power (Ludlow and Weyand)',
  formula: 'P = (3.05·W + (W+L)·walk)·20.1/60; walk = 3.28 + 0.32·G + (1 + 0.19·G)·2.66·V² uphill, 0.73·(3.28 + 2.66·V²) downhill',
  source: { cite: 'Ludlow and Weyand 2017, table 4', known: 'read' },
  takes: { bodyKg: 'kg', loadKg: 'kg', speedMs: 'm/s', gradePercent: '%', terrain: '1', restWPerKg: 'W/kg' },
  unit: 'W',
  leavesOut: 'The ground underfoot: it has no term for it.',
  compute: (at) => (oxygenMlMin(at) * OXYGEN_J_PER_ML) / 60,
} as const satisfies Law<WalkingState, 'W'>

const OXYGEN_J_PER_ML = 20.1

/** Oxygen taken up, ml a minute. */
export function oxygenMlMin({ bodyKg: W, loadKg: L, speedMs: V, gradePercent: G }: Omit<Walking, 'terrain' | 'restWPerKg'>): number {
  if (V === 0) return 3.05 * W
  const walk = G >= 0 ? 3.28 + 0.32 * G + (1 + 0.19 * G) * 2.66 * V ** 2 : 0.73 * (3.28 + 2.66 * V ** 2)
  return 3.05 * W + (W + L) * walk
}
