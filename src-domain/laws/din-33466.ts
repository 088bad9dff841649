import type { Law } from '../figures/figure.ts'

/**
 * Walking time of the German standard for signposts: distance and height reckoned apart, the larger whole and the smaller half.
 *   Th = km/4;  Tv = climb/300 + descent/500;  T = max(Th, Tv) + min(Th, Tv)/2      T h; climb, descent m
 * For one leg at a time. The standard itself was not seen.
 * Source: DIN 33466 as quoted in three public pages (read); one published example, 8 km and 1200 m up: 5 h.
 */
export const din33466 = {
  name: 'Walking time (DIN 33466)',
  formula: 'T = max(Th, Tv) + min(Th, Tv)/2; Th = km/4, Tv = climb/300 + descent/500',
  source: { cite: 'DIN 33466, as quoted', known: 'read' },
  takes: { distanceKm: 'km', climbM: 'm', descentM: 'm' },
  unit: 'h',
  compute({ distanceKm, climbM, descentM }) {
    const across = distanceKm / 4
    const height = climbM / 300 + descentM / 500
    return Math.max(across, height) + Math.min(across, height) / 2
  },
} as const satisfies Law<{ distanceKm: 'km'; climbM: 'm'; descentM: 'm' }, 'h'>
