/**
 * Frostbite of bare skin: a band by wind chill, and inside its range about how many minutes the more susceptible 5 % have.
 *   t = (−24.5·(0.667·V + 4.8) + 2111)·(−4.8 − T)^−1.668      t min, V km/h at 10 m, T °C
 * Range of the minutes: V 25 … 80 km/h, T −50 … −15 °C, t ≤ 30 (range from memory). Outside: the band alone.
 * Above 0 °C of air there is none, whatever the wind chill: skin cannot cool below the air (physics).
 * Sources: formula in a public program library (read; first published by the Canadian service, memory); bands in Environment Canada's
 * wording through news pages (read, secondary).
 */
import type { Law } from '../figures/figure.ts'
import { outside, within, type Ranged } from './ranged.ts'

export type FrostbiteBand = 'none' | 'low' | 'low-cooling' | '10-30-min' | '5-10-min' | '2-5-min' | 'under-2-min'

/** Highest wind chill of each band, coldest first. */
const bands: readonly (readonly [number, FrostbiteBand])[] = [
  [-55, 'under-2-min'],
  [-48, '2-5-min'],
  [-40, '5-10-min'],
  [-28, '10-30-min'],
  [-10, 'low-cooling'],
]

/** The band of a wind chill, read to the whole degree as the table is printed. */
export function frostbiteBand(windChillC: number, airC: number): FrostbiteBand {
  if (airC > 0) return 'none'
  const printed = Math.round(windChillC)
  return bands.find(([at]) => printed <= at)?.[1] ?? 'low'
}

const minutes = (airC: number, windKmh: number): number => (-24.5 * (0.667 * windKmh + 4.8) + 2111) * (-4.8 - airC) ** -1.668

/** Minutes, or why the formula does not answer here. */
export function frostbiteMinutes(airC: number, windKmh: number): Ranged {
  if (!(airC >= -50 && airC <= -15)) return outside('frostbite.air', { airC, fromC: -50, toC: -15 })
  if (!(windKmh >= 25 && windKmh <= 80)) return outside('frostbite.wind', { windKmh, fromKmh: 25, toKmh: 80 })
  const t = minutes(airC, windKmh)
  return t <= 30 ? within(t) : outside('frostbite.slow', { minutes: 30 })
}

/** For a figure that opens; only after `frostbiteMinutes` has said that the law answers. */
export const frostbiteTime = {
  name: 'Bare skin may freeze after',
  formula: 't = (−24.5·(0.667·V + 4.8) + 2111)·(−4.8 − T)^−1.668',
  source: { cite: 'Frostbite time of the more susceptible 5 %, Canadian weather service', known: 'read' },
  takes: { airC: 'degC', windKmh: 'km/h' },
  unit: 'min',
  cautions: () => [
    'About, never a promise: wet, touched or already cold skin freezes sooner. Do not rub; do not thaw a part that may freeze again.',
  ],
  // Past the ends the nearest end answers, so that a slope taken at the edge stays a number.
  compute: ({ airC, windKmh }) => minutes(Math.min(-15, Math.max(-50, airC)), Math.min(80, Math.max(25, windKmh))),
} as const satisfies Law<{ airC: 'degC'; windKmh: 'km/h' }, 'min'>
