import { kcalOf, wattsOfDay } from '../../src-domain/laws/kcal.ts'
import { lcda2019, lcda2019WithBase } from '../../src-domain/laws/lcda-2019.ts'
import type { Walking } from '../../src-domain/laws/lcda-2022.ts'
import { lcda2022 } from '../../src-domain/laws/lcda-2022.ts'
import { ludlowWeyand, oxygenMlMin } from '../../src-domain/laws/ludlow-weyand.ts'
import { minetti } from '../../src-domain/laws/minetti.ts'
import { pandolf, pandolfAlone, santeeCorrection } from '../../src-domain/laws/pandolf.ts'
import { sinkageCm, snowFactor, snowTerrain } from '../../src-domain/laws/snow-terrain.ts'
import { speedRatio } from '../../src-domain/laws/speed-at-power.ts'
import type { Published } from './published.ts'

// No worked example from the original papers was found. Rows marked recomputed were worked by a separate script from the equations (walking.md 2.7 and 3),
// half a unit of the last printed digit; three values of the 2019 equation are published on a page that prints base 1.11.
const recomputed = { known: 'recomputed', source: 'walking.md 2 and 3, computed apart from this code' } as const

const state = (bodyKg: number, loadKg: number, speedMs: number, gradePercent: number, terrain: number): Walking => ({
  bodyKg,
  loadKg,
  speedMs,
  gradePercent,
  terrain,
  restWPerKg: 1.05,
})
const named = ({ bodyKg, loadKg, speedMs, gradePercent, terrain }: Walking) =>
  `${bodyKg} + ${loadKg} kg, ${speedMs} m/s, ${gradePercent} %, η ${terrain}`

// L, S, G, η at W 70: W/kg, W, kcal/h
const backpacking = [
  [0, 0, 0, 1, 1.24, 86.8, 74.68],
  [20, 0, 0, 1, 1.30778, 91.54, 78.77],
  [0, 1.34, 0, 1, 4.21984, 295.39, 254.16],
  [7, 1.34, 0, 1, 4.49104, 314.37, 270.49],
  [10, 1.34, 0, 1, 4.66035, 326.22, 280.69],
  [14, 1.34, 0, 1, 4.91598, 344.12, 296.09],
  [21, 1.34, 0, 1, 5.42815, 379.97, 326.93],
  [35, 1.34, 0, 1, 6.64027, 464.82, 399.94],
  [10, 1.34, 0, 1.2, 5.33914, 373.74, 321.57],
  [10, 1, 10, 1, 7.19275, 503.49, 433.22],
  [10, 1, 10, 1.2, 8.37802, 586.46, 504.6],
  [20, 1, 15, 1.2, 12.83049, 898.13, 772.77],
  [10, 1.2, -5, 1.1, 3.30643, 231.45, 199.14],
  [10, 1.2, -10, 1.1, 2.94301, 206.01, 177.26],
  [20, 1, -20, 1.2, 3.54845, 248.39, 213.72],
] as const
// S, G: W/kg by base 1.1 and by 1.11 (the level part is one)
const unloaded = [
  [0, 0, 1.44, 1.44],
  [0.5, 0, 2.89499, 2.89499],
  [1, 0, 3.62, 3.62],
  [1.34, 0, 4.41398, 4.41398],
  [1.6, 0, 5.38737, 5.38737],
  [1.96, 0, 7.57292, 7.57292],
  [1, 10, 6.77325, 6.94828],
  [1, 20, 10.41302, 10.41989],
  [1.34, -5, 3.39766, 3.19295],
  [1.34, -10, 3.07376, 2.80435],
  [1, -20, 2.94628, 2.83961],
  [1, -40, 3.97864, 4.00085],
] as const
// S, G: published with base 1.11 (ten digits), and recomputed with 1.1
const worked = [
  [0.4768426667, 13.24968434, 5.002098962, 4.95236],
  [0.89408, 15.15151515, 8.04202677, 7.9866],
  [0.54395076, -11.83712121, 2.305600338, 2.41192],
] as const
// W, L, V, G, η: Pandolf W, correction (null: none), result W, kcal/h
const older = [
  [70, 0, 0, 0, 1, 105, null, 105, 90.34],
  [70, 0, 1.34, 0, 1, 293.538, null, 293.538, 252.57],
  [70, 10, 1.34, 0, 1, 323.737, null, 323.737, 278.55],
  [70, 20, 1.34, 0, 1.1, 386.34, null, 386.34, 332.42],
  [80, 40, 1, 0, 1, 360, null, 360, 309.75],
  [70, 20, 1, 10, 1.1, 614.694, null, 614.694, 528.9],
  [70, 20, 1, 15, 1.2, 848.694, null, 848.694, 730.23],
  [70, 10, 1.34, 0, 2.1, 560.757, null, 560.757, 482.49],
  [70, 10, 1.2, -5, 1.1, 113.545, -126.198, 239.744, 206.28],
  [70, 10, 1.2, -10, 1.1, -71.255, -295.913, 224.658, 193.3],
  [80, 20, 1.3, -10, 1, -69, -368.119, 299.119, 257.37],
  [70, 20, 1, -20, 1.2, -474.306, -890.743, 416.437, 358.31],
] as const
// W, L, V, G: ml/min, W, kcal/h
const mechanics = [
  [70, 0, 0, 0, 213.5, 71.52, 61.54],
  [70, 0, 1.34, 0, 777.441, 260.44, 224.09],
  [70, 10, 1.34, 0, 858.004, 287.43, 247.31],
  [70, 10, 1, 10, 1349.02, 451.92, 388.84],
  [70, 20, 1, 15, 1862.39, 623.9, 536.82],
  [70, 10, 1.2, -10, 628.747, 210.63, 181.23],
] as const
// state: backpacking, Pandolf, mechanics
const threeModels = [
  [state(60, 6, 1.1, 0, 1.1), 238.477, 223.089, 204.989],
  [state(60, 12, 1.1, 5, 1.1), 380.592, 391.968, 330.394],
  [state(60, 18, 0.9, 10, 1.2), 545.101, 512.604, 393.897],
] as const
const minettiTable = [
  [-0.4, 3.5042],
  [-0.2, 1.0867],
  [-0.1, 1.1271],
  [0, 2.5],
  [0.1, 4.8991],
  [0.2, 7.8774],
  [0.4, 15.0984],
] as const
// depth cm, density g/cm³: sinkage, η
const snow = [
  [0, 0.3, 0, 1.2604],
  [5, 0.3, 3.7352, 1.6883],
  [10, 0.3, 7.4705, 2.2753],
  [20, 0.2, 16.6273, 5.369],
] as const
const shares = [0.1, 0.15, 0.2, 0.25, 0.3, 0.4] as const
// grade, start speed, model: relative speed at those shares of body mass
const slowed = [
  [0, 1.3, 'lcda', [0.9412, 0.8994, 0.8537, 0.8053, 0.7549, 0.6519]],
  [0, 1.3, 'pandolf', [0.9497, 0.9238, 0.897, 0.869, 0.8395, 0.7743]],
  [10, 0.8, 'lcda', [0.9102, 0.8518, 0.7927, 0.7352, 0.6804, 0.5816]],
  [10, 0.8, 'pandolf', [0.9225, 0.8847, 0.8471, 0.8092, 0.7708, 0.6914]],
  [20, 0.5, 'lcda', [0.9095, 0.8517, 0.7937, 0.7377, 0.6848, 0.5898]],
  [20, 0.5, 'pandolf', [0.9122, 0.87, 0.8283, 0.7869, 0.7454, 0.6609]],
] as const
const powerOf = { lcda: (at: Walking) => lcda2022.compute(at), pandolf: (at: Walking) => pandolf.compute(at) } as const

const law = (name: string, about: string, unit: string, expected: number, tolerance: number, got: () => number): Published => ({
  law: name,
  about,
  ...recomputed,
  unit,
  expected,
  tolerance,
  got,
})
const BACKPACKING = 'Walking power (LCDA 2022)'
const UNLOADED = 'Walking power (LCDA 2019)'
const PANDOLF = 'Walking power (Pandolf, Santee)'
const MECHANICS = 'Walking power (Ludlow and Weyand)'

export const rows: readonly Published[] = [
  law('Energy units', 'one watt for one hour', 'kcal', 0.860421, 5e-7, () => kcalOf(1, 1)),
  law('Energy units', '1 kcal/(kg h)', 'W/kg', 1.162222, 5e-7, () => wattsOfDay(24)),
  ...backpacking.flatMap(([load, speed, grade, terrain, perKg, watts, kcalH]): Published[] => {
    const at = state(70, load, speed, grade, terrain)
    return [
      law(BACKPACKING, `${named(at)}, per kg`, 'W/kg', perKg, 5e-6, () => lcda2022.compute(at) / 70),
      law(BACKPACKING, named(at), 'W', watts, 5e-3, () => lcda2022.compute(at)),
      law(BACKPACKING, `${named(at)}, an hour`, 'kcal', kcalH, 5e-3, () => kcalOf(lcda2022.compute(at), 1)),
    ]
  }),
  law(BACKPACKING, 'per km, 70 + 10 kg at 1.34 m/s on dirt', 'kcal/km', 62.42, 5e-3, () => perKm((at) => lcda2022.compute(at))),
  law(PANDOLF, 'per km, 70 + 10 kg at 1.34 m/s on dirt', 'kcal/km', 61.59, 5e-3, () => perKm((at) => pandolf.compute(at))),
  ...unloaded.flatMap(([speed, grade, ours, other]): Published[] => [
    law(UNLOADED, `${speed} m/s, ${grade} %`, 'W/kg', ours, 5e-6, () => lcda2019.compute({ speedMs: speed, gradePercent: grade })),
    law(UNLOADED, `${speed} m/s, ${grade} %, base 1.11`, 'W/kg', other, 5e-6, () => lcda2019WithBase(speed, grade, 1.11)),
  ]),
  ...worked.flatMap(([speed, grade, published, ours]): Published[] => [
    {
      ...law(UNLOADED, `${speed} m/s, ${grade} %, published with base 1.11`, 'W/kg', published, 5e-6, () =>
        lcda2019WithBase(speed, grade, 1.11),
      ),
      known: 'read',
      source: 'worked values on a walker’s page, Dec 2021',
    },
    law(UNLOADED, `${speed} m/s, ${grade} %, base 1.1`, 'W/kg', ours, 5e-6, () => lcda2019WithBase(speed, grade, 1.1)),
  ]),
  ...older.flatMap(([body, load, speed, grade, terrain, alone, correction, watts, kcalH]): Published[] => {
    const at = state(body, load, speed, grade, terrain)
    return [
      law(PANDOLF, `${named(at)}, uncorrected`, 'W', alone, 5e-4, () => pandolfAlone(at)),
      law(PANDOLF, `${named(at)}, correction`, 'W', correction ?? 0, 5e-4, () => santeeCorrection(at)),
      law(PANDOLF, named(at), 'W', watts, 5e-4, () => pandolf.compute(at)),
      law(PANDOLF, `${named(at)}, an hour`, 'kcal', kcalH, 5e-3, () => kcalOf(pandolf.compute(at), 1)),
    ]
  }),
  ...mechanics.flatMap(([body, load, speed, grade, oxygen, watts, kcalH]): Published[] => {
    const at = state(body, load, speed, grade, 1)
    return [
      // Printed to six significant digits: half a unit of the sixth.
      law(MECHANICS, `${named(at)}, oxygen`, 'ml/min', oxygen, oxygen >= 1000 ? 5e-3 : 5e-4, () => oxygenMlMin(at)),
      law(MECHANICS, named(at), 'W', watts, 5e-3, () => ludlowWeyand.compute(at)),
      law(MECHANICS, `${named(at)}, an hour`, 'kcal', kcalH, 5e-3, () => kcalOf(ludlowWeyand.compute(at), 1)),
    ]
  }),
  ...threeModels.flatMap(([at, first, second, third]): Published[] => [
    law(BACKPACKING, `three models: ${named(at)}`, 'W', first, 5e-4, () => lcda2022.compute(at)),
    law(PANDOLF, `three models: ${named(at)}`, 'W', second, 5e-4, () => pandolf.compute(at)),
    law(MECHANICS, `three models: ${named(at)}`, 'W', third, 5e-4, () => ludlowWeyand.compute(at)),
  ]),
  ...minettiTable.map(([gradeRatio, expected]) =>
    law('Minetti', `${gradeRatio} rise/run`, 'J/(kg·m)', expected, 5e-5, () => minetti.compute({ gradeRatio })),
  ),
  ...snow.flatMap(([depthCm, densityGCm3, sinkage, factor]): Published[] => [
    law('Ground factor of snow', `${depthCm} cm of ${densityGCm3} g/cm³, sinkage`, 'cm', sinkage, 5e-5, () =>
      sinkageCm(depthCm, densityGCm3),
    ),
    law('Ground factor of snow', `${depthCm} cm of ${densityGCm3} g/cm³`, '1', factor, 5e-5, () => snowFactor({ depthCm, densityGCm3 })),
  ]),
  law('Ground factor of snow', '20 cm of 0.2 g/cm³, held', '1', 4, 0, () => snowTerrain.compute({ depthCm: 20, densityGCm3: 0.2 })),
  ...slowed.flatMap(([grade, start, model, ratios]) =>
    ratios.map((expected, i) =>
      law(
        'Speed under load, equal effort',
        `${grade} %, from ${start} m/s, ${model}, load ${shares[i]!} of body`,
        '1',
        expected,
        5e-5,
        () => speedRatio(state(70, 0, start, grade, 1.1), { loadKg: 70 * shares[i]! }, powerOf[model]),
      ),
    ),
  ),
]

function perKm(compute: (at: Walking) => number): number {
  return kcalOf(compute(state(70, 10, 1.34, 0, 1.1)), 1) / (1.34 * 3.6)
}
