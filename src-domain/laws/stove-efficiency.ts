/**
 * The share of a fuel's heat that ends in the water and the pot.
 *   η = heat into water and pot/(fuel mass·heat value)      1
 * Few figures are published for small stoves: the table is mostly common practice and gives way to what the walker's own weighed burns say.
 * Sources beside each row. Wind (common practice, no published curve found): ×1.0 sheltered · ×1.15 light air, 2 m/s · ×1.4 at 4 m/s behind a partial
 * screen · ×2 at 4 m/s without one · above 6 m/s without one it may never boil.
 * Caution: never enclose a gas canister wholly in a screen: an overheated canister can burst.
 */
export interface StoveKind {
  readonly efficiency: number
  readonly low: number
  readonly high: number
  readonly cite: string
  readonly known: 'read' | 'memory' | 'choice' | 'common practice, no source'
}

export const stoveKinds = {
  'gas-plain': {
    efficiency: 0.5,
    low: 0.4,
    high: 0.6,
    cite: '89 laboratory tests of household gas burners, mean 51 ± 6 %: Shen et al. 2018, Environ. Sci. Technol. 52, 904–915',
    known: 'memory',
  },
  'gas-finned': { efficiency: 0.7, low: 0.6, high: 0.8, cite: 'finned pot and shroud', known: 'common practice, no source' },
  'liquid-pressure': { efficiency: 0.5, low: 0.4, high: 0.6, cite: 'pressurised liquid fuel', known: 'common practice, no source' },
  'alcohol-open': { efficiency: 0.4, low: 0.3, high: 0.5, cite: 'open burner, loose screen', known: 'common practice, no source' },
  'alcohol-cone': {
    efficiency: 0.6,
    low: 0.5,
    high: 0.7,
    cite: 'close-fitting cone; one bench test of 22 to 23 g of ethanol a litre gives 0.55',
    known: 'read',
  },
  tablet: { efficiency: 0.4, low: 0.25, high: 0.5, cite: 'hexamine tablet', known: 'common practice, no source' },
  'twigs-open': {
    efficiency: 0.12,
    low: 0.05,
    high: 0.2,
    cite: 'ISO/TR 19867-3:2018 tiers; 12.6 % measured by Rasoulkhani et al. 2018, Sustain. Environ. Res. 28, 438–443',
    known: 'read',
  },
  'twigs-can': {
    efficiency: 0.25,
    low: 0.15,
    high: 0.35,
    cite: 'top-lit double-wall can: 35 % in a laboratory, less outdoors',
    known: 'choice',
  },
} as const satisfies Record<string, StoveKind>
export type StoveKindCode = keyof typeof stoveKinds

/** The kind taken when only the fuel is known (trait `fuels`). */
export const usualStove = {
  gas: 'gas-plain',
  alcohol: 'alcohol-open',
  petrol: 'liquid-pressure',
  paraffin: 'liquid-pressure',
  solid: 'tablet',
  wood: 'twigs-open',
} as const satisfies Record<string, StoveKindCode>

/** Grams burned to warm a pressurised liquid-fuel burner, each lighting (common practice). */
export const PRIMING_g = 3

/** Standard uncertainty of ln η before any weighed burn, and the scatter of one burn (choices). */
export const PRIOR_SD_LN_EFFICIENCY = 0.25

/** More fuel for wind at the pot, m/s; null: it may never boil. Between the published speeds the line between them (choice). */
export function windFactor(windMs: number, screen: 'none' | 'partial' | 'full'): number | null {
  if (screen === 'full') return 1
  if (screen === 'partial')
    return along(windMs, [
      [0, 1],
      [2, 1.15],
      [4, 1.4],
    ])
  return windMs > 6
    ? null
    : along(windMs, [
        [0, 1],
        [2, 1.15],
        [4, 2],
      ])
}

/** Linear between points, level before the first, on at the last slope after the last. */
function along(x: number, points: readonly (readonly [number, number])[]): number {
  let i = 1
  while (i < points.length - 1 && x > points[i]![0]) i++
  const [x0, y0] = points[i - 1]!
  const [x1, y1] = points[i]!
  return y0 + ((y1 - y0) * (Math.max(x, points[0]![0]) - x0)) / (x1 - x0)
}
