import { din33466 } from '../../src-domain/laws/din-33466.ts'
import { langmuir } from '../../src-domain/laws/langmuir.ts'
import { munter } from '../../src-domain/laws/munter.ts'
import { naismith, naismithImperial } from '../../src-domain/laws/naismith.ts'
import type { Method, Piece } from '../../src-domain/laws/walking-time.ts'
import { walkingHours } from '../../src-domain/laws/walking-time.ts'
import type { Published } from './published.ts'

// Arithmetic of the rules, done apart (walking.md 1.2); one example is published. Tolerance: half a unit of the last printed digit.
const recomputed = { known: 'recomputed', source: 'walking.md 1.2, computed apart from this code' } as const
const legs: readonly Piece[] = [
  { lengthM: 5000, riseM: 0 },
  { lengthM: 2000, riseM: 300 },
  { lengthM: 2000, riseM: -300 },
  { lengthM: 1000, riseM: 100 },
]
const minutes = (method: Method, pieces: readonly Piece[] = legs) => 60 * walkingHours(method, pieces)
const legMinutes: Readonly<Record<'tobler' | 'swiss' | 'campbell' | 'munter', readonly number[]>> = {
  tobler: [59.5623, 40.2751, 28.3814, 16.9046],
  swiss: [71.355, 50.3933, 33.3293, 19.9987],
  campbell: [72.5815, 34.6061, 31.6488, 15.9315],
  munter: [50, 75, 50, 30],
}
const totals: readonly (readonly [Method, number])[] = [
  ['tobler', 145.1233],
  ['swiss', 175.0762],
  ['campbell', 154.7679],
  ['naismith', 160],
  ['langmuir', 150],
  ['din', 208],
  ['munter', 205],
]

export const rows: readonly Published[] = [
  {
    law: 'Naismith',
    about: '20 km, 1000 m up',
    ...recomputed,
    unit: 'h',
    expected: 5.66667,
    tolerance: 5e-6,
    got: () => naismith.compute({ distanceKm: 20, climbM: 1000 }),
  },
  {
    law: 'Naismith',
    about: '15 mi, 2400 ft up',
    ...recomputed,
    unit: 'min',
    expected: 372,
    tolerance: 1e-9,
    got: () => 60 * naismithImperial.compute({ distanceMi: 15, climbFt: 2400 }),
  },
  {
    law: 'Naismith',
    about: '24.14016 km, 731.52 m up',
    ...recomputed,
    unit: 'min',
    expected: 362.834,
    tolerance: 5e-4,
    got: () => 60 * naismith.compute({ distanceKm: 24.14016, climbM: 731.52 }),
  },
  {
    law: 'Langmuir',
    about: '10 km, 600 up, 300 down at 8°, 300 at 15°',
    ...recomputed,
    unit: 'min',
    expected: 180,
    tolerance: 1e-9,
    got: () => 60 * langmuir.compute({ distanceKm: 10, climbM: 600, gentleDescentM: 300, steepDescentM: 300 }),
  },
  {
    law: 'DIN 33466',
    about: '8 km, 1200 m up',
    known: 'read',
    source: 'worked example on a public page on signpost times, 1 Nov 2018',
    unit: 'h',
    expected: 5,
    tolerance: 1e-9,
    got: () => din33466.compute({ distanceKm: 8, climbM: 1200, descentM: 0 }),
  },
  {
    law: 'DIN 33466',
    about: '8 km, 600 up, 600 down',
    ...recomputed,
    unit: 'h',
    expected: 4.2,
    tolerance: 1e-9,
    got: () => din33466.compute({ distanceKm: 8, climbM: 600, descentM: 600 }),
  },
  {
    law: 'DIN 33466',
    about: '12 km, 500 up, 500 down',
    ...recomputed,
    unit: 'h',
    expected: 4.33333,
    tolerance: 5e-6,
    got: () => din33466.compute({ distanceKm: 12, climbM: 500, descentM: 500 }),
  },
  {
    law: 'Munter',
    about: '2 km, 300 m up',
    ...recomputed,
    unit: 'h',
    expected: 1.25,
    tolerance: 1e-9,
    got: () => munter.compute({ distanceKm: 2, changeM: 300, rate: 4 }),
  },
  ...Object.entries(legMinutes).flatMap(([method, each]) =>
    each.map((expected, i): Published => ({
      law: 'Walking time by every method',
      about: `${method}, leg ${i + 1}`,
      ...recomputed,
      unit: 'min',
      expected,
      tolerance: 5e-5,
      got: () => minutes(method as Method, [legs[i]!]),
    })),
  ),
  ...totals.map(([method, expected]): Published => ({
    law: 'Walking time by every method',
    about: `${method}, whole route`,
    ...recomputed,
    unit: 'min',
    expected,
    tolerance: 5e-5 + 1e-9,
    got: () => minutes(method),
  })),
]
