import { windChill, windChillF } from '../../src-domain/laws/wind-chill.ts'
import { canadaAirC, canadaChart, usChart, usMph } from '../fixtures/wind-chill-charts.ts'
import type { Published } from './published.ts'

// The charts are printed in whole degrees: half a degree.
const us: readonly Published[] = Object.entries(usChart).flatMap(([airF, cells]) =>
  cells.map((expected, i): Published => ({
    law: 'Wind chill, °F and mph',
    about: `${airF} °F, ${usMph[i]!} mph`,
    source: 'US National Weather Service chart, 2001',
    known: 'read',
    expected,
    tolerance: 0.5,
    unit: '°F',
    got: () => windChillF(Number(airF), usMph[i]!),
  })),
)

const canada: readonly Published[] = Object.entries(canadaChart).flatMap(([kmh, cells]) =>
  cells.map((expected, i): Published => ({
    law: 'Wind chill',
    about: `${canadaAirC[i]!} °C, ${kmh} km/h`,
    source: 'Meteorological Service of Canada chart',
    known: 'read',
    expected,
    tolerance: 0.5,
    unit: '°C',
    got: () => windChill.compute({ airC: canadaAirC[i]!, windKmh: Number(kmh) }),
  })),
)

// Worked from the printed formula to three decimals: half a unit of the last digit, doubled.
const worked = { source: 'the 2001 formula, worked apart (warmth.md 3.1)', known: 'recomputed', tolerance: 0.001 } as const
const metric: readonly Published[] = (
  [
    [0, 20, -5.242],
    [-5, 30, -12.997],
    [-10, 30, -19.521],
    [-15, 45, -28.044],
    [-20, 40, -34.135],
    [-30, 60, -50.318],
  ] as const
).map(([airC, windKmh, expected]) => ({
  ...worked,
  law: 'Wind chill',
  about: `${airC} °C, ${windKmh} km/h, unrounded`,
  expected,
  unit: '°C',
  got: () => windChill.compute({ airC, windKmh }),
}))
const imperial: readonly Published[] = (
  [
    [40, 5, 36.472],
    [30, 10, 21.248],
    [15, 10, 2.657],
    [0, 15, -19.398],
    [-45, 60, -98.096],
  ] as const
).map(([airF, windMph, expected]) => ({
  ...worked,
  law: 'Wind chill, °F and mph',
  about: `${airF} °F, ${windMph} mph, unrounded`,
  expected,
  unit: '°F',
  got: () => windChillF(airF, windMph),
}))

// A comfort library prints one decimal.
const library: readonly Published[] = (
  [
    [-10, 30, -19.5],
    [-5, 5.5, -7.5],
  ] as const
).map(([airC, windKmh, expected]) => ({
  law: 'Wind chill',
  about: `${airC} °C, ${windKmh} km/h, as a library prints it`,
  source: 'jsthermalcomfort 1.4.0, run from its source',
  known: 'reference library',
  expected,
  tolerance: 0.05,
  unit: '°C',
  got: () => windChill.compute({ airC, windKmh }),
}))

export const rows: readonly Published[] = [...us, ...canada, ...metric, ...imperial, ...library]
