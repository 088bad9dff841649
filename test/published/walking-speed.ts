import { campbell2022, trackerSpeedMs } from '../../src-domain/laws/campbell.ts'
import { ratioOfDegrees } from '../../src-domain/laws/slope.ts'
import { swissSignpost } from '../../src-domain/laws/swiss-signpost.ts'
import { tobler } from '../../src-domain/laws/tobler.ts'
import type { Published } from './published.ts'

// No worked tables were printed with the papers; rows marked recomputed come from a separate script in the science note (walking.md 1.1).
// Tolerance: half a unit of the last printed digit.
const note = 'walking.md 1.1, computed apart from this code'
const speedOf = (gradeRatio: number) => tobler.compute({ gradeRatio })
const signpost = (gradeRatio: number) => swissSignpost.compute({ gradeRatio })
const campbell = (slopeDeg: number) => campbell2022.compute({ slopeDeg })

// rise/run, Tobler km/h, min/km, Swiss min/km, km/h
const bySlope = [
  [-0.5, 1.24205, 48.3074, 45, 1.3333],
  [-0.3, 2.50117, 23.9888, 27.5212, 2.1801],
  [-0.2, 3.54933, 16.9046, 19.8354, 3.0249],
  [-0.1, 5.03674, 11.9125, 14.2086, 4.2228],
  [-0.05, 6, 10, 13.2441, 4.5303],
  [0, 5.03674, 11.9125, 14.271, 4.2043],
  [0.05, 4.22813, 14.1907, 16.6314, 3.6076],
  [0.1, 3.54933, 16.9046, 19.9987, 3.0002],
  [0.15, 2.97951, 20.1375, 25.1966, 2.3813],
  [0.2, 2.50117, 23.9888, 32.3257, 1.8561],
  [0.3, 1.76255, 34.0417, 48.794, 1.2297],
  [0.5, 0.87525, 68.5515, 85, 0.7059],
] as const
// Read: a published table of Tobler's function by angle, two decimals.
const toblerByAngle = [
  [-5, 5.26],
  [-10, 3.86],
  [-15, 2.8],
  [-20, 2],
  [-25, 1.4],
  [-30, 0.95],
] as const
// degrees, Campbell 2022 m/s, km/h, min/km
const byAngle = [
  [-30, 0.47406, 1.7066, 35.1575],
  [-20, 0.70419, 2.5351, 23.6678],
  [-10, 1.01284, 3.6462, 16.4554],
  [-5, 1.1269, 4.0568, 14.7898],
  [0, 1.14813, 4.1333, 14.5163],
  [5, 1.06459, 3.8325, 15.6555],
  [10, 0.91623, 3.2984, 18.1904],
  [20, 0.61199, 2.2032, 27.2334],
  [30, 0.40606, 1.4618, 41.0446],
] as const
const flatByPercentile = [
  [1, 2.926],
  [5, 4.121],
  [10, 4.753],
  [15, 5.361],
  [20, 6.055],
  [50, 9.187],
] as const

const recomputed = { known: 'recomputed', source: note } as const
const kmh = { unit: 'km/h', tolerance: 5e-6 } as const

export const rows: readonly Published[] = [
  ...bySlope.flatMap(([grade, speed, pace, swiss, swissKmh]): Published[] => [
    { law: 'Tobler', about: `${grade} rise/run`, ...recomputed, ...kmh, expected: speed, got: () => speedOf(grade) },
    {
      law: 'Tobler',
      about: `${grade} rise/run, pace`,
      ...recomputed,
      unit: 'min/km',
      tolerance: 5e-5,
      expected: pace,
      got: () => 60 / speedOf(grade),
    },
    {
      law: 'Swiss signposts',
      about: `${grade} rise/run`,
      ...recomputed,
      unit: 'min/km',
      tolerance: 5e-5,
      expected: swiss,
      got: () => signpost(grade),
    },
    {
      law: 'Swiss signposts',
      about: `${grade} rise/run, speed`,
      ...recomputed,
      unit: 'km/h',
      tolerance: 5e-5,
      expected: swissKmh,
      got: () => 60 / signpost(grade),
    },
  ]),
  ...toblerByAngle.map(([angle, speed]): Published => ({
    law: 'Tobler',
    about: `${angle}°, published table`,
    known: 'read',
    source: 'table of Tobler’s hiking function by angle, a public encyclopaedia copy',
    unit: 'km/h',
    tolerance: 0.005,
    expected: speed,
    got: () => speedOf(ratioOfDegrees(angle)),
  })),
  {
    law: 'Swiss signposts',
    about: 'fastest, at −0.0514',
    ...recomputed,
    unit: 'km/h',
    tolerance: 5e-5,
    expected: 4.5306,
    got: () => 60 / signpost(-0.0514),
  },
  // What the polynomial itself says where the outer lines begin: the check on the sign of its last coefficient.
  {
    law: 'Swiss signposts',
    about: 'inside the upper end',
    ...recomputed,
    unit: 'min/km',
    tolerance: 5e-3,
    expected: 66.94,
    got: () => signpost(0.4 - 1e-12),
  },
  {
    law: 'Swiss signposts',
    about: 'inside the lower end',
    ...recomputed,
    unit: 'min/km',
    tolerance: 5e-3,
    expected: 36.54,
    got: () => signpost(-0.4 + 1e-12),
  },
  {
    law: 'Swiss signposts',
    about: 'line at the upper end',
    ...recomputed,
    unit: 'min/km',
    tolerance: 1e-9,
    expected: 68,
    got: () => signpost(0.4),
  },
  {
    law: 'Swiss signposts',
    about: 'line at the lower end',
    ...recomputed,
    unit: 'min/km',
    tolerance: 1e-9,
    expected: 36,
    got: () => signpost(-0.4),
  },
  ...byAngle.flatMap(([angle, speed, kmhThere, pace]): Published[] => [
    { law: 'Campbell 2022', about: `${angle}°`, ...recomputed, unit: 'm/s', tolerance: 5e-6, expected: speed, got: () => campbell(angle) },
    {
      law: 'Campbell 2022',
      about: `${angle}°, km/h`,
      ...recomputed,
      unit: 'km/h',
      tolerance: 5e-5,
      expected: kmhThere,
      got: () => campbell(angle) * 3.6,
    },
    {
      law: 'Campbell 2022',
      about: `${angle}°, pace`,
      ...recomputed,
      unit: 'min/km',
      tolerance: 5e-5,
      expected: pace,
      got: () => 1000 / 60 / campbell(angle),
    },
  ]),
  {
    law: 'Campbell 2022',
    about: 'fastest, at −1.529°',
    ...recomputed,
    unit: 'm/s',
    tolerance: 5e-6,
    expected: 1.15339,
    got: () => campbell(-1.529),
  },
  { law: 'Campbell 2022', about: '42° up', ...recomputed, unit: 'm/s', tolerance: 5e-3, expected: 0.26, got: () => campbell(42) },
  ...flatByPercentile.map(([percentile, speed]): Published => ({
    law: 'Campbell 2019',
    about: `percentile ${percentile}, flat`,
    ...recomputed,
    unit: 'km/h',
    tolerance: 5e-4,
    expected: speed,
    got: () => trackerSpeedMs(percentile, 0) * 3.6,
  })),
]
