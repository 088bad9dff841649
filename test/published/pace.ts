import { convert } from '../../src-domain/figures/units.ts'
import { breakShareFrom, elapsedTime } from '../../src-domain/laws/break-share.ts'
import { normalShareBelow } from '../../src-domain/laws/normal.ts'
import type { WalkLog } from '../../src-domain/laws/pace-factor.ts'
import { chanceOfLate, paceBand, paceFrom } from '../../src-domain/laws/pace-factor.ts'
import { studentQuantile } from '../../src-domain/laws/student-t.ts'
import { piecesOfLeg, walkingHours } from '../../src-domain/laws/walking-time.ts'
import type { Published } from './published.ts'

// The estimator's table was computed by a separate script (walking.md 1.4), tolerance 2e-5 as stated there; t quantiles as printed, half a unit of the last digit.
const recomputed = { known: 'recomputed', source: 'walking.md 1.3 and 1.4, computed apart from this code' } as const
const practice = { known: 'common practice, no source', source: 'common practice, no source' } as const

const log = (observedHours: number, modelHours: number): WalkLog => ({ observedHours, modelHours })
const three = [log(4.4, 4), log(5.5, 5), log(3.3, 3)]
// logs, μ, factor, σ, v, ν, s, band
const table: readonly (readonly [string, readonly WalkLog[], readonly number[]])[] = [
  ['no logs', [], [0, 1, 0.12, 0.04, 4, 0.23324, 0.69935, 1.4299]],
  ['one short walk', [log(1.1, 1)], [0.04548, 1.04653, 0.12086, 0.02091, 4, 0.18846, 0.7839, 1.39715]],
  ['three at 1.1', three, [0.08823, 1.09224, 0.09811, 0.00297, 6, 0.11223, 0.92928, 1.28379]],
  ['five at 1.1', [...three, log(6.6, 6), log(4.95, 4.5)], [0.092, 1.09636, 0.08489, 0.00139, 8, 0.09273, 0.96317, 1.24797]],
  ['three and a wild one', [...three, log(9, 3)], [0.13679, 1.14658, 0.24447, 0.01236, 6.34186, 0.26856, 0.78089, 1.68355]],
  ['twenty alike', Array.from({ length: 20 }, () => log(4.4, 4)), [0.09501, 1.09967, 0.05004, 0.00012, 23, 0.05128, 1.02773, 1.17665]],
]
const columns = ['μ', 'factor', 'σ', 'variance of μ', 'ν', 's', 'band from', 'band to'] as const

function described(logs: readonly WalkLog[]): readonly number[] {
  const pace = paceFrom(logs)
  return [pace.mu, pace.factor, pace.sigma, pace.variance, pace.dof, pace.spread, ...paceBand(pace)]
}

const quantiles = [
  [4, 1.53321],
  [5, 1.47588],
  [6, 1.43976],
  [8, 1.39682],
  [10, 1.37218],
  [20, 1.32534],
  [50, 1.29871],
] as const
const MILE_KM = 1.609344
/** Through metres a second and back, by the units of the trade. */
const milesAnHour = (minutesAMile: number): number => convert(convert(1, 'mi', 'm') / (60 * minutesAMile), 'm/s', 'mph')

export const rows: readonly Published[] = [
  ...quantiles.map(([dof, expected]): Published => ({
    law: 'Student t',
    about: `0.9 quantile, ν ${dof}`,
    known: 'recomputed',
    source: 'walking.md 1.4, as in printed t tables',
    unit: '1',
    tolerance: 5e-6,
    expected,
    got: () => studentQuantile(0.9, dof),
  })),
  ...table.flatMap(([about, logs, expected]) =>
    expected.map((value, i): Published => ({
      law: 'Own pace',
      about: `${about}: ${columns[i]!}`,
      ...recomputed,
      unit: '1',
      expected: value,
      tolerance: 2e-5,
      got: () => described(logs)[i]!,
    })),
  ),
  {
    law: 'Own pace',
    about: 'weight left to the wild log',
    ...recomputed,
    unit: '1',
    expected: 0.3419,
    tolerance: 5e-5,
    got: () => paceFrom(table[4]![1]).weights[3]!,
  },
  // Half a unit of the last digit: what the note's simulation says of no logs has a closed form, 2Φ(t) − 1, since s is then the true spread.
  {
    law: 'Own pace',
    about: 'share held by the 80 % band, no logs',
    ...recomputed,
    unit: '1',
    expected: 0.875,
    tolerance: 5e-4,
    got: () => 2 * normalShareBelow(Math.log(paceBand(paceFrom([]))[1]) / Math.hypot(0.2, 0.12)) - 1,
  },
  {
    law: 'Own pace',
    about: 'hours to sunset 16:22:58 from 09:30',
    ...recomputed,
    unit: 'h',
    expected: 6.88278,
    tolerance: 5e-6,
    got: () => 16 + 22 / 60 + 58 / 3600 - 9.5,
  },
  {
    law: 'Own pace',
    about: 'median hours needed',
    ...recomputed,
    unit: 'h',
    expected: 7.53647,
    tolerance: 5e-6,
    got: () => 6 * 1.15 * paceFrom(three).factor,
  },
  {
    law: 'Own pace',
    about: 'chance of arriving after sunset',
    ...recomputed,
    unit: '1',
    expected: 0.77516,
    tolerance: 2e-5,
    got: () => chanceOfLate(16 + 22 / 60 + 58 / 3600 - 9.5, 6, 0.15, paceFrom(three)),
  },
  { law: 'Breaks', about: 'no logs', ...recomputed, unit: '1', expected: 0.15, tolerance: 1e-12, got: () => breakShareFrom([]) },
  {
    law: 'Breaks',
    about: '24 km at 4 km/h, breaks 10 % of moving',
    known: 'recomputed',
    source: 'walking.md 1.3, identity: 6 h 36',
    unit: 'h',
    expected: 6.6,
    tolerance: 1e-12,
    got: () => elapsedTime.compute({ movingH: 24 / 4, breakShare: 0.1 }),
  },
  {
    law: 'Time with breaks',
    about: '25 min a mile',
    known: 'recomputed',
    source: 'walking.md 1.3, identity',
    unit: 'mph',
    expected: 2.4,
    tolerance: 1e-12,
    got: () => milesAnHour(25),
  },
  // "About 2.3": half of the last digit.
  { law: 'Time with breaks', about: '26 min a mile', ...practice, unit: 'mph', expected: 2.3, tolerance: 0.05, got: () => milesAnHour(26) },
  // Facts of the trade. "About eight and a half hours" is taken to the half hour; the way is taken as out and back (as much down as up).
  {
    law: 'Time with breaks',
    about: '18 miles with 2,191 ft of climb, in all',
    ...practice,
    unit: 'h',
    expected: 8.5,
    tolerance: 0.5,
    got: () =>
      elapsedTime.compute({
        movingH: walkingHours('campbell', piecesOfLeg(18 * MILE_KM * 1000, 2191 * 0.3048, 2191 * 0.3048)),
        breakShare: breakShareFrom([]),
      }),
  },
]
