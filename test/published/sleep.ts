import { p_sat } from 'jsthermalcomfort'
import { given, uncertainty, work, type Figure } from '../../src-domain/figures/figure.ts'
import {
  clothesInside,
  dampFactor,
  HEAD_BARE_RSI,
  HEAD_SHARE,
  HEAD_WITH_HAT_RSI,
  linerRsi,
  NO_BASE_LAYER_RSI,
  openSky,
} from '../../src-domain/laws/bed-modifiers.ts'
import { neededMats, neededRating } from '../../src-domain/laws/bed-needed.ts'
import { breathingLoss } from '../../src-domain/laws/breathing-loss.ts'
import { groundFlow, matsForFlow } from '../../src-domain/laws/ground-flow.ts'
import { TEST_MAT_RSI } from '../../src-domain/laws/mats-in-series.ts'
import type { Ranged } from '../../src-domain/laws/ranged.ts'
import { saturationVapour } from '../../src-domain/laws/saturation-vapour.ts'
import { skinDrive } from '../../src-domain/laws/skin-drive.ts'
import { bedBalance, plainBed, sleepLimit, type Bed, type BedBalance } from '../../src-domain/laws/sleep-limit.ts'
import { sleepScales, UNDER_QUILT_RSI, type ScaleName } from '../../src-domain/laws/sleep-scales.ts'
import { sleeperOffset, type NightSlept } from '../../src-domain/laws/sleeper-offset.ts'
import type { Published } from './published.ts'

/** R (ft²·°F·h/Btu) in m²K/W, from the unit definitions. */
const RSI = 0.1761101838
const must = <T>(found: Ranged<T>): T => {
  if (!found.ok) throw new Error(found.why)
  return found.value
}
const balance = (bed: Bed): BedBalance => must(bedBalance(bed))
const limit = (bed: Bed): number => balance(bed).limitC
const apart = { source: 'the balance worked apart (warmth.md 1.4)', known: 'recomputed' } as const

// Printed to 1e-5 kPa; the library and the steam table use other formulas: 0.5 %.
const vapour: readonly Published[] = [
  ...(
    [
      [-20, 0.12349],
      [0, 0.6088],
      [10, 1.22596],
      [20, 2.33686],
      [33, 5.03015],
    ] as const
  ).map(([tempC, expected]): Published => ({
    law: 'Vapour pressure',
    about: `${tempC} °C`,
    source: 'ISO 11079 formula, worked apart (warmth.md)',
    known: 'recomputed',
    expected,
    tolerance: 2e-5,
    unit: 'kPa',
    got: () => saturationVapour.compute({ tempC }),
  })),
  ...([0, 20, 33] as const).map((tempC): Published => {
    const expected = p_sat(tempC) / 1000
    return {
      law: 'Vapour pressure',
      about: `${tempC} °C beside another formula`,
      source: 'jsthermalcomfort 0.0.2, run beside ours',
      known: 'reference library',
      expected,
      tolerance: 0.005 * expected,
      unit: 'kPa',
      got: () => saturationVapour.compute({ tempC }),
    }
  }),
]

/** Comfort rating °C: R0, breath, drive, top resistance, limit on the label's other scale. Tolerances as the note states them. */
const scale: readonly (readonly [number, number, number, number, number, number])[] = [
  [15, 0.4494, 3.835, 19.172, 0.3666, 11.83],
  [10, 0.5748, 4.192, 24.317, 0.4916, 5.92],
  [5, 0.7003, 4.481, 29.426, 0.6294, 0.01],
  [0, 0.8258, 4.718, 34.505, 0.782, -5.9],
  [-5, 0.9515, 4.919, 39.563, 0.9521, -11.81],
  [-10, 1.0772, 5.093, 44.604, 1.1428, -17.7],
  [-15, 1.2032, 5.251, 49.633, 1.3584, -23.58],
  [-20, 1.3297, 5.398, 54.653, 1.6045, -29.44],
  [-25, 1.4566, 5.539, 59.666, 1.8882, -35.29],
]
const ratings = scale.flatMap(([ratedC, whole, breath, drive, top, limitC]): readonly Published[] => {
  const bed = plainBed(ratedC, 'comfort', TEST_MAT_RSI)
  const at = { airC: ratedC, rhPct: 80 }
  const { skinC, heat_W_m2: heat } = sleepScales.comfort
  const row = (law: string, expected: number, tolerance: number, unit: string, got: () => number): Published => ({
    ...apart,
    law,
    about: `comfort ${ratedC} °C`,
    expected,
    tolerance,
    unit,
    got,
  })
  return [
    row('Whole insulation', whole, 0.0003, 'm²K/W', () => balance(bed).wholeRsi),
    row('Breathing loss', breath, 0.001, 'W/m²', () => breathingLoss.compute({ ...at, heat })),
    row('Skin drive', drive, 0.001, 'K', () => skinDrive.compute({ ...at, skinC })),
    row('Top insulation', top, 0.0003, 'm²K/W', () => balance(bed).topRsi),
    row('Label limit', limitC, 0.02, '°C', () => limit(plainBed(ratedC, 'comfort', TEST_MAT_RSI, 'limit'))),
  ]
})

// A rating on the test mat must give itself back: 1e-6.
const identity: readonly Published[] = (['comfort', 'limit', 'extreme'] as const).flatMap((name: ScaleName) =>
  [12, 0, -12].map((ratedC): Published => ({
    law: 'Sleep limit',
    about: `${name} ${ratedC} °C on the test mat gives itself`,
    source: 'meaning of a rating, EN ISO 23537-1',
    known: 'read',
    expected: ratedC,
    tolerance: 1e-6,
    unit: '°C',
    got: () => limit(plainBed(ratedC, name, TEST_MAT_RSI, name)),
  })),
)

// Labels seen on tested bags, whole degrees (or °F): ±0.5.
const labels: readonly Published[] = (
  [
    [13.33, 9.44, 'limit'],
    [0, -6, 'limit'],
    [-8, -15, 'limit'],
    [0, -23, 'extreme'],
    [-8, -36, 'extreme'],
  ] as const
).map(([comfortC, expected, name]) => ({
  law: 'Sleep limit',
  about: `label with comfort ${comfortC} °C: its ${name}`,
  source: 'label triples of tested bags, trade pages (the heat of limit and extreme was fitted to them)',
  known: 'read',
  expected,
  tolerance: 0.5,
  unit: '°C',
  got: () => limit(plainBed(comfortC, 'comfort', TEST_MAT_RSI, name)),
}))

const F40 = (40 - 32) / 1.8
const F20 = (20 - 32) / 1.8
const A = plainBed(0, 'comfort', TEST_MAT_RSI)
const G = plainBed(-6, 'limit', 3.2 * RSI)
const cases: readonly (readonly [string, Bed, number, number, number, number, number, number])[] = [
  ['A comfort 0, mat 0.85', A, 0.8951, 0.3158, 1.2109, 0, 26.1, 36.3],
  ['B comfort 0, R 2', plainBed(0, 'comfort', 2 * RSI), 0.8951, 0.6634, 1.5585, 7.34, 42.6, 59.8],
  ['C comfort 0, R 1', plainBed(0, 'comfort', RSI), 0.8951, 1.0865, 1.9816, 12.8, 54.8, 77.7],
  ['D comfort 0, no mat', plainBed(0, 'comfort', 0), 0.8951, 3, 3.8951, 22.71, 77.0, 111.4],
  ['E comfort −7, R 3 + R 2', plainBed(-7, 'comfort', 5 * RSI), 0.6825, 0.306, 0.9884, -7.4, 31.0, 42.8],
  ['F limit −6, mat 0.85', plainBed(-6, 'limit', TEST_MAT_RSI), 0.8921, 0.3158, 1.2079, -0.08, 26.1, 36.4],
  ['G limit −6, R 3.2', G, 0.8921, 0.4521, 1.3442, 3.26, 33.6, 47.0],
  ['G′ the same, answered as limit', plainBed(-6, 'limit', 3.2 * RSI, 'limit'), 0.8921, 0.4521, 1.3442, -2.05, 33.6, 55.3],
  ['H maker 40 °F, mat 0.85', plainBed(F40, 'limit', TEST_MAT_RSI), 1.3342, 0.3158, 1.65, 8.75, 19.1, 26.9],
  ['I maker 40 °F, R 2', plainBed(F40, 'limit', 2 * RSI), 1.3342, 0.6634, 1.9976, 12.96, 33.2, 47.1],
  ['J maker 20 °F, R 4', plainBed(F20, 'limit', 4 * RSI), 0.8717, 0.3729, 1.2447, 0.89, 30.0, 41.8],
  ['K as A, jacket 0.55 clo', { ...A, addedRsi: clothesInside.compute({ clo: 0.55 }) }, 0.8316, 0.3158, 1.1474, -1.82, 27.5, 38.3],
  ['L as A, thin liner', { ...A, addedRsi: linerRsi['silk']! }, 0.8728, 0.3158, 1.1886, -0.62, 26.6, 37.0],
  ['M as A, fleece liner', { ...A, addedRsi: linerRsi['fleece']! }, 0.8313, 0.3158, 1.1471, -1.83, 27.5, 38.3],
  ['N as A, damp down', { ...A, damp: dampFactor('down', 'damp') }, 1.0531, 0.3158, 1.3689, 3.79, 23.1, 32.3],
  ['O as A, φ 0.50', { ...A, damp: 0.5 }, 1.7902, 0.3158, 2.106, 13.98, 15.0, 21.3],
  ['P as A, no hood, hat', { ...A, bareShare: HEAD_SHARE, headRsi: HEAD_WITH_HAT_RSI }, 0.9978, 0.3158, 1.3136, 2.57, 24.0, 33.6],
  ['Q as A, no hood, bare', { ...A, bareShare: HEAD_SHARE, headRsi: HEAD_BARE_RSI }, 1.2478, 0.3158, 1.5636, 7.42, 20.2, 28.4],
  [
    'R quilt of a maker, 40 °F, hat, R 2',
    { ...plainBed(F40, 'limit', 2 * RSI), underRsi: UNDER_QUILT_RSI, bareShare: HEAD_SHARE, headRsi: HEAD_WITH_HAT_RSI },
    1.3892,
    0.7459,
    2.1351,
    14.24,
    34.9,
    49.6,
  ],
  ['S as A, no base layer', { ...A, addedRsi: NO_BASE_LAYER_RSI }, 0.9523, 0.3158, 1.2681, 1.48, 24.9, 34.7],
]
const systems = cases.flatMap(([about, bed, top, ground, all, limitC, sharePct, flow]): readonly Published[] => [
  { ...apart, law: 'Sleep limit', about, expected: limitC, tolerance: 0.02, unit: '°C', got: () => limit(bed) },
  {
    ...apart,
    law: 'Bed conductance',
    about: `${about}: above`,
    expected: top,
    tolerance: 0.0003,
    unit: 'W/m²K',
    got: () => balance(bed).top,
  },
  {
    ...apart,
    law: 'Bed conductance',
    about: `${about}: below`,
    expected: ground,
    tolerance: 0.0003,
    unit: 'W/m²K',
    got: () => balance(bed).ground,
  },
  {
    ...apart,
    law: 'Bed conductance',
    about: `${about}: whole`,
    expected: all,
    tolerance: 0.0003,
    unit: 'W/m²K',
    got: () => balance(bed).all,
  },
  {
    ...apart,
    law: 'Share lost below',
    about,
    expected: sharePct,
    tolerance: 0.1,
    unit: '%',
    got: () => 100 * balance(bed).groundShareOfLoss,
  },
  { ...apart, law: 'Flow under the body', about, expected: flow, tolerance: 0.1, unit: 'W/m²', got: () => balance(bed).underFlow },
])

/** Lowest balanced temperature by comfort rating (down) and mat R 0 … 7 (across), printed to 0.1. */
const table: Readonly<Record<string, readonly number[]>> = {
  '10': [23.9, 17.0, 13.8, 11.9, 10.7, 9.9, 9.2, 8.7],
  '5': [23.3, 14.8, 10.5, 7.8, 6.1, 4.8, 3.9, 3.1],
  '0': [22.7, 12.8, 7.3, 3.9, 1.5, -0.3, -1.6, -2.7],
  '-5': [22.3, 11.0, 4.4, 0.0, -3.0, -5.4, -7.1, -8.6],
  '-10': [21.9, 9.5, 1.7, -3.6, -7.5, -10.5, -12.8, -14.6],
  '-15': [21.6, 8.0, -0.9, -7.2, -11.9, -15.6, -18.5, -20.8],
}
const byMat = Object.entries(table).flatMap(([ratedC, cells]) =>
  cells.map((expected, r): Published => ({
    ...apart,
    law: 'Sleep limit',
    about: `comfort ${ratedC} °C on R ${r}`,
    expected,
    tolerance: 0.0501,
    unit: '°C',
    got: () => limit(plainBed(Number(ratedC), 'comfort', r * RSI)),
  })),
)

/** Comfort 0 with one judged constant moved, at R 1, 2, 3, 6. */
const moved: readonly (readonly [string, Partial<Bed>, readonly number[]])[] = [
  ['f 0.22', { groundShare: 0.22 }, [10.5, 5.7, 2.9, -1.2]],
  ['f 0.38', { groundShare: 0.38 }, [14.7, 8.8, 4.8, -2.1]],
  ['rb 0.05', { underRsi: 0.05 }, [14.8, 8.4, 4.4, -1.8]],
  ['rb 0.15', { underRsi: 0.15 }, [11.1, 6.5, 3.5, -1.5]],
  // The note prints −1.9 for the last; a second program in another language gives −1.8488 too: it rounds to −1.8.
  ['M 40.7', { ratedHeat: 40.7, heat: 40.7 }, [13.9, 8.1, 4.4, -1.8]],
  ['M 52', { ratedHeat: 52, heat: 52 }, [11.9, 6.7, 3.5, -1.4]],
  ['Tsk 31.5', { ratedSkinC: 31.5, skinC: 31.5 }, [12.0, 6.8, 3.6, -1.5]],
  ['Tsk 34', { ratedSkinC: 34, skinC: 34 }, [13.6, 7.8, 4.2, -1.7]],
]
const sensitivity = moved.flatMap(([about, change, cells]) =>
  cells.map((expected, i): Published => ({
    ...apart,
    law: 'Sleep limit',
    about: `comfort 0 °C on R ${[1, 2, 3, 6][i]!}, ${about}`,
    expected,
    tolerance: 0.0501,
    unit: '°C',
    got: () => limit({ ...plainBed(0, 'comfort', [1, 2, 3, 6][i]! * RSI), ...change }),
  })),
)

const onR3 = plainBed(0, 'comfort', 3 * RSI)
const inverse: readonly Published[] = [
  {
    ...apart,
    law: 'Mat needed',
    about: 'comfort −5 at 0 °C',
    expected: 3.01,
    tolerance: 0.005,
    unit: 'R',
    got: () => must(neededMats(plainBed(-5, 'comfort', 0), 0)) / RSI,
  },
  {
    ...apart,
    law: 'Mat needed',
    about: 'comfort −5 at −7 °C',
    expected: 5.91,
    tolerance: 0.005,
    unit: 'R',
    got: () => must(neededMats(plainBed(-5, 'comfort', 0), -7)) / RSI,
  },
  {
    ...apart,
    law: 'Rating needed',
    about: 'comfort for −5 °C on R 3',
    expected: -11.87,
    tolerance: 0.02,
    unit: '°C',
    got: () => must(neededRating(onR3, -5)),
  },
  {
    ...apart,
    law: 'Rating needed',
    about: 'limit for −5 °C on R 3',
    expected: -19.91,
    tolerance: 0.02,
    unit: '°C',
    got: () => must(neededRating(plainBed(0, 'limit', 3 * RSI), -5)),
  },
  {
    ...apart,
    law: 'Rating needed',
    about: 'comfort for 0 °C on R 2',
    expected: -13.22,
    tolerance: 0.02,
    unit: '°C',
    got: () => must(neededRating(plainBed(0, 'comfort', 2 * RSI), 0)),
  },
]

/** Mat R: night of a consumer chart, flow below at it, balance of a bag rated for that night, nights with 46.5 and 65 W/m² below. */
const chart: readonly (readonly [number, number, number, number, number, number | null])[] = [
  [1, 10, 88.1, 17.0, 21.1, 16.2],
  [2, 40 / 9, 66.3, 10.1, 13.2, 5.0], // 40 °F, printed 4.4
  [3, -10 / 9, 56.7, 3.0, 5.2, -6.3],
  [4, -35 / 9, 47.8, -2.0, -2.9, -17.6],
  [5, -60 / 9, 42.1, -7.1, -11.0, -29.1],
  [6, -160 / 9, 45.3, -21.7, -19.1, null],
  [7, -260 / 9, 47.7, -38.8, -27.3, null],
]
const ground = chart.flatMap(([r, nightC, flow, balancedC, evenC, tightC]): readonly Published[] => [
  {
    ...apart,
    law: 'Ground flow',
    about: `R ${r} at the chart's ${nightC.toFixed(1)} °C`,
    expected: flow,
    tolerance: 0.1,
    unit: 'W/m²',
    got: () => groundFlow.compute({ airC: nightC, matsRsi: r * RSI, underRsi: 0.1 }),
  },
  {
    ...apart,
    law: 'Sleep limit',
    about: `a bag rated for the chart's night on R ${r}`,
    expected: balancedC,
    tolerance: 0.0501,
    unit: '°C',
    got: () => limit(plainBed(nightC, 'comfort', r * RSI)),
  },
  // The temperature is printed to 0.1: the mat it asks for moves by about 0.01 R.
  {
    ...apart,
    law: 'Mat for a flow',
    about: `46.5 W/m² at ${evenC} °C`,
    expected: r,
    tolerance: 0.015,
    unit: 'R',
    got: () => matsForFlow(evenC, 46.5, 0.1) / RSI,
  },
  ...(tightC === null
    ? []
    : [
        {
          ...apart,
          law: 'Mat for a flow',
          about: `65 W/m² at ${tightC} °C`,
          expected: r,
          tolerance: 0.015,
          unit: 'R',
          got: () => matsForFlow(tightC, 65, 0.1) / RSI,
        },
      ]),
])

const fieldStudy: Published = {
  law: 'Share lost below',
  about: 'no mat: "as high as 80 % of the total"',
  source: 'Anttonen and others 1988, abstract, from a poor scan',
  known: 'read',
  expected: 80,
  tolerance: 10, // one round figure for the worst case seen
  unit: '%',
  got: () => 100 * balance(plainBed(0, 'comfort', 0)).groundShareOfLoss,
}

const wind: readonly Published[] = (
  [
    [1, -0.0075, 5e-5],
    [3, -0.028, 5e-4],
  ] as const
).map(([windMs, expected, tolerance]) => ({
  law: 'Wind on a bag',
  about: `${windMs} m/s`,
  source: 'ISO 11079 air layer, worked apart (warmth.md 1.6)',
  known: 'recomputed',
  expected,
  tolerance,
  unit: 'm²K/W',
  got: () => openSky.compute({ windMs }),
}))

/** Figures of a bed with the four doubts of warmth.md 1.7, worked by the figure itself. */
function limitFigure(bed: Bed, sigmaRatingK: number): Figure {
  const units = sleepLimit.takes
  const shares: Readonly<Record<string, Readonly<Record<string, number>>>> = {
    ratedC: { rating: sigmaRatingK },
    matsRsi: { mats: 0.1 * bed.matsRsi },
    legsRsi: { mats: 0.1 * bed.legsRsi },
    groundShare: { share: 0.06 },
    underRsi: { under: 0.04 },
  }
  const inputs = Object.fromEntries(
    Object.keys(units).map((name) => [name, given(bed[name as keyof Bed], units[name as keyof Bed], 'given', shares[name] ?? {})]),
  )
  return work(sleepLimit, inputs as unknown as Parameters<typeof work<typeof units, 'degC'>>[1])
}

// The note's parts hold to ±0.02; our shares take their slope over half the step, which bends by less than that.
const spreads = (
  [
    ['comfort 0 on R 2', plainBed(0, 'comfort', 2 * RSI), 2, 1.21, 0.85, 1.14, 0.75, 2.01],
    ['comfort 0 on the test mat', A, 2, 2.0, 0.77, 0, 0, 2.14],
    ['maker 40 °F on R 2', plainBed(F40, 'limit', 2 * RSI), 4, 2.31, 0.52, 0.7, 0.46, 2.51],
  ] as const
).flatMap(([about, bed, sigma, rating, mats, share, under, all]): readonly Published[] => {
  const law = 'Spread of the sleep limit'
  const part = (leaf: string, expected: number): Published => ({
    ...apart,
    law,
    about: `${about}: ${leaf}`,
    expected,
    tolerance: 0.02,
    unit: 'K',
    got: () => Math.abs(limitFigure(bed, sigma).shares[leaf] ?? 0),
  })
  return [
    part('rating', rating),
    part('mats', mats),
    part('share', share),
    part('under', under),
    { ...apart, law, about, expected: all, tolerance: 0.02, unit: 'K', got: () => uncertainty(limitFigure(bed, sigma)) },
  ]
})

const night = (marginK: number, cold: boolean): NightSlept => ({ marginK, cold })
const offsets = (
  [
    ['no nights', [], 0, 2.998],
    ['one cold night at +4', [night(4, true)], 3.558, 2.172],
    ['one good night at −2', [night(-2, false)], -2.649, 2.257],
    ['+4 cold, +6 good, +3 cold', [night(4, true), night(6, false), night(3, true)], 3.917, 1.663],
    ['+1, −1, 0, +2 good, −3 cold', [night(1, false), night(-1, false), night(0, false), night(2, false), night(-3, true)], -2.28, 1.552],
  ] as const
).flatMap(([about, nights, mean, sd]): readonly Published[] => {
  const row = {
    law: "Sleeper's offset",
    source: 'the grid worked apart (warmth.md 1.7)',
    known: 'recomputed',
    tolerance: 0.005,
    unit: 'K',
  } as const
  return [
    { ...row, about: `${about}: mean`, expected: mean, got: () => sleeperOffset(nights, 0).meanK },
    { ...row, about: `${about}: sd`, expected: sd, got: () => sleeperOffset(nights, 0).sdK },
  ]
})

export const rows: readonly Published[] = [
  ...[...vapour, ...ratings, ...identity, ...labels, ...systems, ...byMat, ...sensitivity],
  ...[...inverse, ...ground, fieldStudy, ...wind, ...spreads, ...offsets],
]
