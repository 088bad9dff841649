import type { Law } from '../figures/figure.ts'

/**
 * The ground factor of walking in snow, from how deep one sinks.
 *   z = h·(1 − ρ/1.186);   η = 0.0005·z³ + 0.0001·z² + 0.1072·z + 1.2604, at most 4 (choice)
 * h snow depth cm; ρ snow density g/cm³ (units inferred); z sinkage cm.
 * Source: ERDC, Terrain Coefficients for Predicting Energy Costs of Walking over Snow (abstract read).
 */
export const snowTerrain = {
  name: 'Ground factor of snow',
  formula: 'η = 0.0005·z³ + 0.0001·z² + 0.1072·z + 1.2604, at most 4; z = h·(1 − ρ/1.186)',
  source: { cite: 'ERDC review of terrain coefficients over snow', known: 'read' },
  takes: { depthCm: 'cm', densityGCm3: 'g/cm3' },
  unit: '1',
  cautions: (at) => (snowFactor(at) > DEEPEST_FACTOR ? ['Deeper than the equation is believed: held at 4.'] : []),
  compute: (at) => Math.min(DEEPEST_FACTOR, snowFactor(at)),
} as const satisfies Law<{ depthCm: 'cm'; densityGCm3: 'g/cm3' }, '1'>

const DEEPEST_FACTOR = 4

export const sinkageCm = (depthCm: number, densityGCm3: number): number => Math.max(0, depthCm * (1 - densityGCm3 / 1.186))

/** η before it is held at 4. */
export function snowFactor({ depthCm, densityGCm3 }: { readonly depthCm: number; readonly densityGCm3: number }): number {
  const z = sinkageCm(depthCm, densityGCm3)
  return ((0.0005 * z + 0.0001) * z + 0.1072) * z + 1.2604
}
