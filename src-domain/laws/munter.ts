import type { Law } from '../figures/figure.ts'

/**
 * Walking time after Munter: kilometres and hundreds of metres of height count alike, divided by a rate.
 *   T = (km + change/100)/rate      T h; change m of climb or descent, without sign; rate per hour
 * Rates: 4 up, 6 flat or down on foot, 10 downhill on ski (read), about 2 through brush (memory).
 * A piece is up or down by its net change and flat below about 5 % (choice).
 * Source: Munter's rule, as printed in "Backcountry Travel Time Estimation, part 1" (read).
 */
export const munter = {
  name: 'Walking time (Munter)',
  formula: 'T = (km + change/100)/rate',
  source: { cite: 'Munter, as quoted in a public article', known: 'read' },
  takes: { distanceKm: 'km', changeM: 'm', rate: '1/h' },
  unit: 'h',
  compute: ({ distanceKm, changeM, rate }) => (distanceKm + Math.abs(changeM) / 100) / rate,
} as const satisfies Law<{ distanceKm: 'km'; changeM: 'm'; rate: '1/h' }, 'h'>

export const MUNTER_RATES = { up: 4, easy: 6, ski: 10, brush: 2 } as const

/** The rate on foot for a piece of this slope. */
export const munterRate = (gradeRatio: number): number => (gradeRatio >= 0.05 ? MUNTER_RATES.up : MUNTER_RATES.easy)
