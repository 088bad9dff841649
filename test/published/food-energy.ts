import { atwater, atwaterKj } from '../../src-domain/laws/atwater.ts'
import { dayEnergy } from '../../src-domain/laws/day-energy.ts'
import { expectedLossKg, foodMarks } from '../../src-domain/laws/food-deficit.ts'
import { foodMass } from '../../src-domain/laws/food-mass.ts'
import { henry } from '../../src-domain/laws/henry.ts'
import { kcalOf, wattsOfDay } from '../../src-domain/laws/kcal.ts'
import { lcda2022 } from '../../src-domain/laws/lcda-2022.ts'
import { loadMark } from '../../src-domain/laws/load-marks.ts'
import { mifflin, mifflinFull } from '../../src-domain/laws/mifflin.ts'
import { pandolf } from '../../src-domain/laws/pandolf.ts'
import type { Published } from './published.ts'

// Rows marked recomputed were worked by a separate script (walking.md 3 and 4). Tolerance: half a unit of the last printed digit; the day's parts 0.02 kcal as stated there.
const recomputed = { known: 'recomputed', source: 'walking.md 3 and 4, computed apart from this code' } as const
const practice = { known: 'common practice, no source', source: 'common practice, no source' } as const
const law = (name: string, about: string, unit: string, expected: number, tolerance: number, got: () => number): Published => ({
  law: name,
  about,
  ...recomputed,
  unit,
  expected,
  tolerance,
  got,
})

// sex, kg, cm, years: Mifflin, full form, Henry, W/kg
const people = [
  ['male', 70, 175, 35, 1623.75, 1625.85, 1607.75, 1.12331],
  ['female', 60, 165, 35, 1295.25, 1297.45, 1307.5, 1.04539],
  ['male', 80, 180, 25, 1805, 1806.2, 1828.4, 1.09261],
  ['male', 80, 180, 30, 1780, 1781.6, 1748.8, 1.07748],
  ['male', 75, 172, 65, 1505, 1509.45, 1529.52, 0.97175],
  ['female', 65, 160, 65, 1164, 1168.55, 1238.1, 0.8672],
] as const

const REST_KCAL = 1623.75
const restWPerKg = 1.1233098
// hours, m/s, %: backpacking W, kcal, Pandolf W
const walks = [
  [4, 1.2, 0, 316.4, 1088.95, 298.35],
  [1.5, 0.8, 12, 515.04, 664.72, 488.43],
  [1.5, 1, -12, 186.33, 240.48, 191.24],
] as const
const onTheWay = (speedMs: number, gradePercent: number) => ({ bodyKg: 70, loadKg: 10, speedMs, gradePercent, terrain: 1.1, restWPerKg })
const walkingKcal = () => walks.reduce((sum, [hours, speed, grade]) => sum + kcalOf(lcda2022.compute(onTheWay(speed, grade)), hours), 0)
const day = () => dayEnergy.compute({ walkingKcal: walkingKcal(), restKcalDay: REST_KCAL, upH: 9, sleepH: 8 })
const restPart = (upH: number, sleepH: number) => dayEnergy.compute({ walkingKcal: 0, restKcalDay: REST_KCAL, upH, sleepH })

// share: g a day at 3.5, 4.0, 4.4, 5.0 kcal/g
const masses = [
  [1, [985.36, 862.19, 783.81, 689.75]],
  [0.8, [788.29, 689.75, 627.05, 551.8]],
] as const
const densities = [3.5, 4, 4.4, 5] as const
// days: need, enough for E_day 3448.77 and 70 kg
const marks = [
  [1, 2069.26, 2759.02, 5e-3],
  [5, 10346.31, 13795.08, 5e-3],
  [20, 47415.4, 58195.4, 5e-2],
] as const
const LB_KG = 0.45359237
// lb, share: lb, kg (null: not printed)
const loads = [
  [120, 0.2, 24, 10.886],
  [120, 0.3, 36, 16.329],
  [160, 0.3, 48, 21.772],
  [160, 0.45, 72, 32.659],
  [160, 0.7, 112, 50.802],
] as const
const eaten = { proteinG: 10, fatG: 20, carbohydrateG: 60, alcoholG: 0, fibreG: 0 }

export const rows: readonly Published[] = [
  ...people.flatMap(([sex, bodyKg, heightCm, ageYears, ours, full, other, perKg]): Published[] => {
    const about = `${sex} ${bodyKg} kg ${heightCm} cm ${ageYears} y`
    return [
      law('Resting rate (Mifflin-St Jeor)', about, 'kcal/day', ours, 5e-3, () => mifflin(sex).compute({ bodyKg, heightCm, ageYears })),
      law('Resting rate (Mifflin-St Jeor)', `${about}, full form`, 'kcal/day', full, 5e-3, () =>
        mifflinFull(sex, bodyKg, heightCm, ageYears),
      ),
      law('Resting rate (Henry)', about, 'kcal/day', other, 5e-3, () => henry(sex).compute({ bodyKg, heightM: heightCm / 100, ageYears })),
      law(
        'Resting rate (Mifflin-St Jeor)',
        `${about}, per kg`,
        'W/kg',
        perKg,
        5e-6,
        () => wattsOfDay(mifflin(sex).compute({ bodyKg, heightCm, ageYears })) / bodyKg,
      ),
    ]
  }),
  ...walks.flatMap(([hours, speed, grade, watts, kcal, older]): Published[] => [
    law('Energy of a day', `${speed} m/s at ${grade} %`, 'W', watts, 5e-3, () => lcda2022.compute(onTheWay(speed, grade))),
    law('Energy of a day', `${hours} h of ${speed} m/s at ${grade} %`, 'kcal', kcal, 0.02, () =>
      kcalOf(lcda2022.compute(onTheWay(speed, grade)), hours),
    ),
    law('Energy of a day', `${speed} m/s at ${grade} %, older law`, 'W', older, 5e-3, () => pandolf.compute(onTheWay(speed, grade))),
  ]),
  law('Energy of a day', 'an hour of breaks', 'kcal', 101.48, 0.02, () => restPart(1, 0)),
  law('Energy of a day', 'eight hours in camp', 'kcal', 811.88, 0.02, () => restPart(8, 0)),
  law('Energy of a day', 'eight hours of sleep', 'kcal', 541.25, 0.02, () => restPart(0, 8)),
  law('Energy of a day', 'the day', 'kcal', 3448.77, 0.02, day),
  law('Energy of a day', 'over rest', '1', 2.12395, 2e-5, () => day() / REST_KCAL),
  ...masses.flatMap(([share, each]) =>
    each.map((expected, i) =>
      law('Food mass of a day', `${share} of 3448.77 kcal at ${densities[i]!} kcal/g`, 'g', expected, 5e-3, () =>
        foodMass.compute({ energyKcal: 3448.77, densityKcalG: densities[i]!, share }),
      ),
    ),
  ),
  // Common practice: two pounds at 125 kcal an ounce make 4000 kcal exactly.
  {
    ...law('Food mass of a day', '4000 kcal at 125 kcal/oz', 'g', 907.185, 5e-4, () =>
      foodMass.compute({ energyKcal: 4000, densityKcalG: 125 / 28.349523125, share: 1 }),
    ),
    ...practice,
  },
  ...(
    [
      [100, 3.527],
      [125, 4.409],
      [120, 4.233],
      [150, 5.291],
    ] as const
  ).map(([perOz, expected]) =>
    law(
      'Food mass of a day',
      `${perOz} kcal/oz as kcal/g`,
      'kcal/g',
      expected,
      5e-4,
      () => perOz / foodMass.compute({ energyKcal: perOz, densityKcalG: perOz / 28.349523125, share: 1 }),
    ),
  ),
  law('Energy of food (Atwater)', '10 g protein, 20 g fat, 60 g carbohydrate', 'kcal', 460, 1e-9, () => atwater.compute(eaten)),
  law('Energy of food (Atwater)', 'the same in kJ', 'kJ', 1930, 1e-9, () => atwaterKj(eaten)),
  ...marks.flatMap(([days, need, enough, tolerance]): Published[] => [
    law('Food short of the need', `${days} days: need`, 'kcal', need, tolerance, () => foodMarks(days * 3448.77, 70, 35).needKcal),
    law('Food short of the need', `${days} days: enough`, 'kcal', enough, tolerance, () => foodMarks(days * 3448.77, 70, 35).enoughKcal),
  ]),
  law('Food short of the need', 'five days a fifth short', 'kg', 0.4479, 5e-5, () => expectedLossKg(0.2 * 5 * 3448.77)),
  law('Food short of the need', 'the same of 70 kg', '%', 0.64, 5e-4, () => (100 * expectedLossKg(0.2 * 5 * 3448.77)) / 70),
  ...loads.flatMap(([lb, share, markLb, kg]): Published[] => [
    law(
      'Mark for the load on the body',
      `${share} of ${lb} lb`,
      'lb',
      markLb,
      1e-9,
      () => loadMark.compute({ bodyKg: lb * LB_KG, share }) / LB_KG,
    ),
    law('Mark for the load on the body', `${share} of ${lb} lb in kg`, 'kg', kg, 5e-4, () =>
      loadMark.compute({ bodyKg: lb * LB_KG, share }),
    ),
  ]),
  law('Mark for the load on the body', '0.2 of 70 kg', 'kg', 14, 1e-9, () => loadMark.compute({ bodyKg: 70, share: 0.2 })),
  law('Mark for the load on the body', '0.3 of 70 kg', 'kg', 21, 1e-9, () => loadMark.compute({ bodyKg: 70, share: 0.3 })),
  {
    ...law(
      'Mark for the load on the body',
      '30 % of 105 lb',
      'lb',
      31.5,
      1e-9,
      () => loadMark.compute({ bodyKg: 105 * LB_KG, share: 0.3 }) / LB_KG,
    ),
    ...practice,
  },
]
