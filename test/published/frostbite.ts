import { frostbiteMinutes, frostbiteTime } from '../../src-domain/laws/frostbite.ts'
import type { Published } from './published.ts'

const law = 'Frostbite time'
const minutes = (airC: number, windKmh: number): number => {
  const found = frostbiteMinutes(airC, windKmh)
  return found.ok ? found.value : Number.NaN
}

// Worked from the formula to two decimals.
const worked: readonly Published[] = (
  [
    [-20, 40, 14.31],
    [-25, 30, 9.99],
    [-30, 40, 6.16],
    [-15, 60, 21.05],
    [-40, 30, 3.96],
    [-23.33, 48.28, 9.24],
  ] as const
).map(([airC, windKmh, expected]) => ({
  law,
  about: `${airC} °C, ${windKmh} km/h`,
  source: 'the formula of the Canadian service, worked apart (warmth.md 3.2)',
  known: 'recomputed',
  expected,
  tolerance: 0.01,
  unit: 'min',
  got: () => minutes(airC, windKmh),
}))

export const rows: readonly Published[] = [
  ...worked,
  {
    law,
    about: '−10 °F, 30 mph: "10 minutes"',
    source: 'US National Weather Service announcement of the chart, 2001',
    known: 'read',
    expected: 10,
    tolerance: 1, // printed as one round figure out of 30, 10 and 5
    unit: 'min',
    got: () => frostbiteTime.compute({ airC: -23.333, windKmh: 48.28 }),
  },
]
