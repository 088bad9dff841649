import { heatIndex as libraryHeatIndex } from 'jsthermalcomfort'
import { heatIndex, heatIndexF, polynomial } from '../../src-domain/laws/heat-index.ts'
import { chartHumidities, heatChart } from '../fixtures/heat-index-chart.ts'
import type { Published } from './published.ts'

const law = 'Heat index'

// Whole °F: half a degree; 90 °F at 45 % is a known misprint (93 for 92.49) and is given the 0.51 it needs, nothing else is.
const chart: readonly Published[] = Object.entries(heatChart).flatMap(([airF, cells]) =>
  cells.flatMap((expected, i): readonly Published[] => {
    if (expected === null) return []
    const rhPct = chartHumidities[i]!
    return [
      {
        law,
        about: `${airF} °F, ${rhPct} %, without adjustments`,
        source: 'US National Weather Service heat index chart',
        known: 'read',
        expected,
        tolerance: airF === '90' && rhPct === 45 ? 0.515 : 0.5,
        unit: '°F',
        got: () => heatIndexF(Number(airF), rhPct, false),
      },
    ]
  }),
)

// The procedure worked apart to three decimals.
const worked: readonly Published[] = (
  [
    [70, 50, 69.525],
    [78, 60, 78.16],
    [80, 40, 79.79],
    [84, 90, 98.343],
    [90, 70, 105.922],
    [96, 65, 121.032],
    [100, 10, 94.123],
    [100, 55, 123.638],
    [110, 40, 135.657],
  ] as const
).map(([airF, rhPct, expected]) => ({
  law,
  about: `${airF} °F, ${rhPct} %`,
  source: 'the published procedure, worked apart (warmth.md 3.3)',
  known: 'recomputed',
  expected,
  tolerance: 0.001,
  unit: '°F',
  got: () => heatIndexF(airF, rhPct),
}))

// The library prints one decimal of its own °C regression or of the plain °F polynomial, without gate or adjustments.
const library: readonly Published[] = [
  ...([90, 96, 102] as const).map((airF): Published => ({
    law,
    about: `${airF} °F, 60 %, run beside ours`,
    source: 'jsthermalcomfort 0.0.2',
    known: 'reference library',
    expected: libraryHeatIndex(airF, 60, { units: 'IP' }),
    tolerance: 0.051,
    unit: '°F',
    got: () => polynomial(airF, 60),
  })),
  ...([30, 35] as const).map((airC): Published => ({
    law,
    about: `${airC} °C, 60 %, run beside ours`,
    source: 'jsthermalcomfort 0.0.2, its own coefficients for °C',
    known: 'reference library',
    expected: libraryHeatIndex(airC, 60),
    tolerance: 0.1, // one decimal, and coefficients rounded apart
    unit: '°C',
    got: () => heatIndex.compute({ airC, rhPct: 60 }),
  })),
]

export const rows: readonly Published[] = [...chart, ...worked, ...library]
