import type { Law } from '../figures/figure.ts'
import type { Walking, WalkingState } from './lcda-2022.ts'

/**
 * Power of walking with a load after Pandolf, Givoni and Goldman, downhill corrected after Santee: the older law shown beside ours.
 *   M = 1.5·W + 2.0·(W + L)(L/W)² + η(W + L)(1.5·V² + 0.35·V·G)                                    W; G percent
 *   downhill, moving:  M − η·(G(W + L)V/3.5 − (W + L)(G + 6)²/W + (25 − V²))
 * Range: about 0.2 to 2.4 m/s, 0 to 70 kg, 0 to 25 % (memory); below −12 % Santee is extrapolation. Low for heavy loads. Never below rest.
 * Source: Pandolf et al. 1977, J Appl Physiol 43(4) 577-581; Santee et al. 2001, as in USARIEM T04-09 (read in public sources).
 * Doubt: (25 − V²) is taken over 25·V² in one file; η over all three terms of the correction (memory).
 */
export const pandolf = {
  name: 'Walking power (Pandolf with Santee)',
  formula: 'M = 1.5·W + 2·(W+L)(L/W)² + η(W+L)(1.5·V² + 0.35·V·G), downhill less Santee’s correction',
  source: { cite: 'Pandolf et al. 1977; Santee et al. 2001', known: 'read' },
  takes: { bodyKg: 'kg', loadKg: 'kg', speedMs: 'm/s', gradePercent: '%', terrain: '1', restWPerKg: 'W/kg' },
  unit: 'W',
  cautions: ({ gradePercent }) => (gradePercent < -12 ? ['Below −12 % the downhill correction is extrapolated.'] : []),
  compute: (at) => Math.max(at.restWPerKg * at.bodyKg, pandolfAlone(at) - santeeCorrection(at)),
} as const satisfies Law<WalkingState, 'W'>

/** Pandolf's equation without the correction; negative on steep descents, which is why there is one. */
export function pandolfAlone({ bodyKg: W, loadKg: L, speedMs: V, gradePercent: G, terrain }: Walking): number {
  return 1.5 * W + 2 * (W + L) * (L / W) ** 2 + terrain * (W + L) * (1.5 * V ** 2 + 0.35 * V * G)
}

/** What Santee takes off downhill; nothing on the flat, uphill, or standing still (meaningless there). */
export function santeeCorrection({ bodyKg: W, loadKg: L, speedMs: V, gradePercent: G, terrain }: Walking): number {
  if (G >= 0 || V === 0) return 0
  return terrain * ((G * (W + L) * V) / 3.5 - ((W + L) * (G + 6) ** 2) / W + (25 - V ** 2))
}
