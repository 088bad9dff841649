import type { Law } from '../figures/figure.ts'

/**
 * Walking time on totals, after Naismith: so much for the distance and so much more for the climb. No term for descent.
 *   metric:    T = km/5 + climb/600            T h; climb m
 *   imperial:  T = miles/3 + climb/2000        T h; climb ft
 * The metric form is about 3 % quicker; it is not a conversion, so one or the other is named, never both silently.
 * Off good paths Aitken walks at 4 km/h instead of 5.
 * Source: W. W. Naismith 1892 (read in secondary pages).
 */
export const naismith = {
  name: 'Walking time (Naismith, metric)',
  formula: 'T = km/5 + climb/600',
  source: { cite: 'Naismith 1892, metric form', known: 'read' },
  takes: { distanceKm: 'km', climbM: 'm' },
  unit: 'h',
  compute: ({ distanceKm, climbM }) => distanceKm / 5 + climbM / 600,
} as const satisfies Law<{ distanceKm: 'km'; climbM: 'm' }, 'h'>

export const naismithImperial = {
  name: 'Walking time (Naismith, imperial)',
  formula: 'T = miles/3 + climb/2000',
  source: { cite: 'Naismith 1892', known: 'read' },
  takes: { distanceMi: 'mi', climbFt: 'ft' },
  unit: 'h',
  compute: ({ distanceMi, climbFt }) => distanceMi / 3 + climbFt / 2000,
} as const satisfies Law<{ distanceMi: 'mi'; climbFt: 'ft' }, 'h'>
