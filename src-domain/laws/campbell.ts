import type { Law } from '../figures/figure.ts'

/**
 * Walking speed on a slope, after Campbell and others: the program's own default.
 *   v = c/(π·b·(1 + ((x − a)/b)²)) + d + e·x      v m/s; x degrees, signed (up +)
 *   2022 median: a −1.4579, b 22.0787, c 76.3271, d 0.0525, e −3.2002e-4
 * Median of many walkers on many trails; smooth, defined up and down; 4.13 km/h on the flat, beside the 4.20 of the Swiss signposts, found apart.
 * Never slower than 0.1 m/s here (choice); steeper than 40° is outside the data.
 * Source: Campbell et al. 2022, Computers, Environment and Urban Systems (coefficients read in one public file; no second source).
 */
export const campbell2022 = {
  name: 'Walking speed (Campbell 2022, median)',
  formula: 'v = c/(π·b·(1 + ((x − a)/b)²)) + d + e·x',
  source: { cite: 'Campbell et al. 2022, Computers, Environment and Urban Systems, median model', known: 'read' },
  takes: { slopeDeg: 'deg' },
  unit: 'm/s',
  compute: ({ slopeDeg }) => Math.max(0.1, lorentz(median2022, slopeDeg)),
  cautions: ({ slopeDeg }) => [
    'For summer paths, daylight and one fit adult; snow, scree, wading, groups and children take longer.',
    ...(Math.abs(slopeDeg) > STEEPEST_DEG ? [`Steeper than ${STEEPEST_DEG}° is outside the data.`] : []),
  ],
} as const satisfies Law<{ slopeDeg: 'deg' }, 'm/s'>

export const STEEPEST_DEG = 40

interface Lorentz {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
}
const median2022: Lorentz = { a: -1.4579, b: 22.0787, c: 76.3271, d: 0.0525, e: -3.2002e-4 }

/**
 * The same form for users of fitness trackers, by percentile. This population includes runners: 5 and 10 bracket walkers,
 * 50 is a running pace and is never used for walking.
 * Source: Campbell et al. 2019, Applied Geography 106, 93-107 (coefficients read in a public package).
 */
export const trackerPercentiles: Readonly<Record<1 | 5 | 10 | 15 | 20 | 50, Lorentz>> = {
  1: { a: -2.1, b: 12.273, c: 21.816, d: 0.263, e: -0.00193 },
  5: { a: -1.527, b: 14.041, c: 36.813, d: 0.32, e: -0.00273 },
  10: { a: -1.568, b: 13.328, c: 38.892, d: 0.404, e: -0.00323 },
  15: { a: -1.626, b: 11.847, c: 38.231, d: 0.481, e: -0.00356 },
  20: { a: -1.71, b: 10.154, c: 36.905, d: 0.557, e: -0.00389 },
  50: { a: -2.171, b: 10.064, c: 63.66, d: 0.628, e: -0.00463 },
}

/** Speed in m/s of that percentile of tracker users on a slope in degrees. */
export function trackerSpeedMs(percentile: keyof typeof trackerPercentiles, slopeDeg: number): number {
  return Math.max(0.1, lorentz(trackerPercentiles[percentile], slopeDeg))
}

function lorentz({ a, b, c, d, e }: Lorentz, slopeDeg: number): number {
  return c / (Math.PI * b * (1 + ((slopeDeg - a) / b) ** 2)) + d + e * slopeDeg
}
