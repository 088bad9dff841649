import { campLow, carriedUp } from '../../src-domain/laws/lapse-rate.ts'
import { standardPressure } from '../../src-domain/laws/standard-pressure.ts'
import { columnMm, KNEELING, pressed_kPa, SITTING } from '../../src-domain/laws/water-column.ts'
import type { Published } from './published.ts'

// Standard atmosphere, printed to 1 Pa and 0.1 °C.
const air = (
  [
    [1000, 8.5, 89875],
    [2000, 2.0, 79495],
    [3000, -4.5, 70109],
    [4000, -11.0, 61640],
  ] as const
).flatMap(([toM, airC, pressurePa]): readonly Published[] => {
  const row = { source: 'ISO 2533, ICAO standard atmosphere', known: 'read', about: `${toM} m` } as const
  return [
    {
      ...row,
      law: 'Standard lapse',
      expected: airC,
      tolerance: 1e-9,
      unit: '°C',
      got: () => carriedUp.compute({ airC: 15, fromM: 0, toM }),
    },
    { ...row, law: 'Air pressure', expected: pressurePa, tolerance: 1, unit: 'Pa', got: () => standardPressure.compute({ heightM: toM }) },
  ]
})

const worked = { law: 'Low at the camp', source: 'worked apart (warmth.md 4)', known: 'recomputed', tolerance: 0.005, unit: '°C' } as const
const high = campLow(8, 800, 2100)
const low = campLow(8, 800, 500)
const camps: readonly Published[] = [
  { ...worked, about: '8 °C at 800 m, camp 2100 m: planning', expected: -0.45, got: () => high.planningC },
  { ...worked, about: 'likely', expected: 2.15, got: () => high.likelyC },
  { ...worked, about: 'mild edge', expected: 4.75, got: () => high.mildC },
  { ...worked, about: 'cold edge', expected: -4.74, got: () => high.coldC },
  { ...worked, about: 'doubt', expected: 2.79, unit: 'K', got: () => high.sigmaK },
  { ...worked, about: 'camp 500 m: planning', expected: 8, got: () => low.planningC },
  { ...worked, about: 'camp 500 m: likely', expected: 8.9, got: () => low.likelyC },
]

const column = (
  [
    ['1 kPa', 1, 101.97, 0.005],
    ['class 1 of EN 343, 8 kPa', 8, 816, 0.5],
    ['class 3, 13 kPa', 13, 1326, 0.5],
    ['class 4, 20 kPa', 20, 2039, 0.5],
    ['a sitter', pressed_kPa(SITTING.massKg, SITTING.areaM2), 625, 1],
    ['a knee', pressed_kPa(KNEELING.massKg, KNEELING.areaM2), 3750, 1],
  ] as const
).map(([about, kPa, expected, tolerance]): Published => ({
  law: 'Water column',
  about,
  source: 'EN 343 classes and pressure of a column, worked apart (warmth.md 5.1)',
  known: 'recomputed',
  expected,
  tolerance,
  unit: 'mm',
  got: () => columnMm(kPa),
}))

export const rows: readonly Published[] = [...air, ...camps, ...column]
