import type { Law } from '../figures/figure.ts'
import { naismith } from './naismith.ts'
import { degreesOf } from './slope.ts'

/**
 * Naismith's time corrected for descent, after Langmuir: gentle slopes give time back, steep ones take it.
 *   T = km/5 + climb/600 − gentle/1800 + steep/1800      T h; metres of descent: gentle on 5° to 12°, steep beyond 12°
 * (10 min per 300 m = 1 h per 1800 m.) Descent gentler than 5° counts as flat; 12.0° counts as gentle (choice).
 * Needs the descent split by slope, from legs or a track.
 * Source: E. Langmuir, Mountaincraft and Leadership, 1984 (read in secondary pages).
 */
export const langmuir = {
  name: 'Walking time (Langmuir)',
  formula: 'T = km/5 + climb/600 − gentle/1800 + steep/1800',
  source: { cite: 'Langmuir, Mountaincraft and Leadership, 1984', known: 'read' },
  takes: { distanceKm: 'km', climbM: 'm', gentleDescentM: 'm', steepDescentM: 'm' },
  unit: 'h',
  compute: ({ distanceKm, climbM, gentleDescentM, steepDescentM }) =>
    naismith.compute({ distanceKm, climbM }) + (steepDescentM - gentleDescentM) / 1800,
} as const satisfies Law<{ distanceKm: 'km'; climbM: 'm'; gentleDescentM: 'm'; steepDescentM: 'm' }, 'h'>

/** Which of Langmuir's classes a piece of this slope descends in. */
export function descentClass(gradeRatio: number): 'flat' | 'gentle' | 'steep' {
  const downDeg = -degreesOf(gradeRatio)
  // A hair's breadth for the angle's own rounding, so that 12.0° typed as a ratio still counts as gentle.
  if (downDeg < 5 - 1e-9) return 'flat'
  return downDeg <= 12 + 1e-9 ? 'gentle' : 'steep'
}
