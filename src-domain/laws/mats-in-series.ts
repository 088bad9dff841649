/**
 * Stacked mats: thermal resistances in series add, whatever their order.
 *   R = Σ Ri      m²K/W
 * Measured flat between a warm and a cold plate: edge losses, bare surface and shifting about are left out.
 * Source: physics of one-dimensional conduction; ASTM F3340 for each mat (read: its scope).
 */
import { total, type Figure, type Given, type Law } from '../figures/figure.ts'

/** Insulation of a stack from that of each mat, all doubts carried. */
export const matsInSeries = (mats: readonly Given[]): Figure<'m2K/W'> => total('mats in series', 'm2K/W', mats)

/** The mat that the sleeping bag test lies on, m²K/W (R 4.83). Memory; two secondary pages say R 4.8 and R 5. */
export const TEST_MAT_RSI = 0.85

/** A bare figure below this is probably already in m²K/W (0.85 is R 4.83): ask, never guess. */
export const ASK_BELOW_R = 1.3
export const mustAskMatUnit = (bare: number): boolean => bare < ASK_BELOW_R

/**
 * Resistance of closed-cell foam from its thickness, where no test value is known.
 *   R = d/0.040      d m; band ±25 % (choice)
 * Conductivity 0.04 W/(m·K) from memory.
 */
export const closedCellFoam = {
  name: 'Insulation of closed-cell foam',
  formula: 'R = d/0.040',
  source: { cite: 'Conductivity of closed-cell foam about 0.04 W/(m·K), handbooks', known: 'memory' },
  takes: { thicknessM: 'm' },
  unit: 'm2K/W',
  cautions: ({ thicknessM }) => [
    'An estimate: pressed foam insulates less than new foam.',
    ...(thicknessM > 0.03 ? ['Thicker than 3 cm is rarely one layer of closed-cell foam: an air mat has no such formula.'] : []),
  ],
  compute: ({ thicknessM }) => Math.max(0, thicknessM) / 0.04,
  spread: ({ thicknessM }) => (0.25 * Math.max(0, thicknessM)) / 0.04 / Math.sqrt(3), // ±25 % as a half-width
} as const satisfies Law<{ thicknessM: 'm' }, 'm2K/W'>

/** Share of the body's length on a torso-length mat, and the pack under the legs, m²K/W (choices). */
export const TORSO_SHARE = 0.65
export const PACK_UNDER_LEGS_RSI = 0.2
