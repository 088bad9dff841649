import { holdingCost, hiringCost, worth, type Sellable } from '../../src-domain/laws/resale.ts'
import { pastLife } from '../../src-domain/laws/life-used.ts'
import { meanShare, noneOfNext, shareQuantile, shareUnder, useShare } from '../../src-domain/laws/use-share.ts'
import {
  meanWaitingYears,
  tripRate,
  unitsPerTrip,
  waitingYears,
  wornWithin,
  wornYears,
  type TripRate,
} from '../../src-domain/laws/waiting-time.ts'
import type { Published } from './published.ts'

const note = { source: 'provisions.md 7.2, worked apart', known: 'recomputed', unit: 'years' } as const

/** Trips n in T years with the prior's years, trips left r, then the years at 10, 50, 90 % and the tolerance of the note. */
const waits: readonly (readonly [string, TripRate, number, readonly [number, number, number], number])[] = [
  ['nights: 39 trips left, 6 seen in 2 years', { shape: 7, years: 2.25 }, 39, [7.871, 13.044, 23.115], 0.005],
  ['km: 4.4444 trips left, 10 seen in 1.5 years', { shape: 11, years: 1.75 }, 200 / 45, [0.3075, 0.6752, 1.369], 0.001],
  ['sparse: 10 trips left, none seen in 1 year', { shape: 1, years: 1.25 }, 10, [4.828, 17.416, 118.02], 0.01],
  ['one trip left, 3 seen in 1 year', { shape: 4, years: 1.25 }, 1, [0.0334, 0.2365, 0.9729], 0.0005],
]
const quantiles = [0.1, 0.5, 0.9] as const
const waiting: readonly Published[] = waits.flatMap(([about, rate, trips, years, tolerance]) =>
  quantiles.map((q, i): Published => ({
    ...note,
    law: 'Time to a trip',
    about: `${about}, ${q}`,
    expected: years[i]!,
    tolerance,
    got: () => waitingYears(q, trips, rate),
  })),
)
// The wait for one trip has a closed form, Lomax: b·((1 − q)^(−1/a) − 1).
const closed: readonly Published[] = quantiles.map((q): Published => ({
  ...note,
  law: 'Time to a trip',
  about: `one trip left, closed form, ${q}`,
  source: 'Lomax quantile, exact',
  expected: 1.25 * ((1 - q) ** (-1 / 4) - 1),
  tolerance: 1e-9,
  got: () => waitingYears(q, 1, { shape: 4, years: 1.25 }),
}))

const km = { medianLife: 800, sigma: 0.3, used: 520, unitsPerTrip: 45, rate: { shape: 11, years: 1.75 } }
const nights = { medianLife: 200, sigma: 0.3, used: 24, unitsPerTrip: 4, rate: { shape: 7, years: 2.25 } }
const spread: readonly Published[] = [
  ...quantiles.map((q, i): Published => ({
    ...note,
    law: 'Time to worn',
    about: `km, lives spread by 0.30, ${q}`,
    expected: [0, 0.658, 2.249][i]!,
    tolerance: 0.005,
    got: () => wornYears(q, km),
  })),
  ...quantiles.map((q, i): Published => ({
    ...note,
    law: 'Time to worn',
    about: `nights, lives spread by 0.30, ${q}`,
    expected: [6.569, 13.157, 26.581][i]!,
    tolerance: 0.01,
    got: () => wornYears(q, nights),
  })),
  {
    ...note,
    law: 'Time to worn',
    about: 'km: worn now, 3 of 21 lives',
    expected: 3 / 21,
    tolerance: 1e-12,
    unit: '1',
    got: () => wornWithin(0, km),
  },
]

const rest: readonly Published[] = [
  {
    ...note,
    law: 'Units a trip',
    about: 'usual 3, trips of 2, 5, 4, 3, 6, 4',
    expected: 3.85714,
    tolerance: 1e-5,
    unit: 'nights',
    got: () => unitsPerTrip(3, [2, 5, 4, 3, 6, 4]),
  },
  {
    ...note,
    law: 'Trip rate',
    about: 'no history: prior worth a quarter of a year',
    expected: 2.25,
    tolerance: 1e-12,
    got: () => tripRate(6, 2).years,
  },
  {
    ...note,
    law: 'Time to a trip',
    about: 'nights, mean',
    expected: 14.625,
    tolerance: 0.005,
    got: () => meanWaitingYears(39, { shape: 7, years: 2.25 })!,
  },
  {
    ...note,
    law: 'Time to a trip',
    about: 'km, mean',
    expected: 0.7778,
    tolerance: 0.001,
    got: () => meanWaitingYears(200 / 45, { shape: 11, years: 1.75 })!,
  },
  {
    ...note,
    law: 'Past its life',
    about: '520 of 800, 0.3: past 90 %',
    expected: 0.13902,
    tolerance: 1e-4,
    unit: '1',
    got: () => pastLife(520, 800, 0.3, 0.9),
  },
  {
    ...note,
    law: 'Past its life',
    about: '520 of 800, 0.3',
    expected: 0.07551,
    tolerance: 1e-4,
    unit: '1',
    got: () => pastLife(520, 800, 0.3),
  },
]

/** k, n, mean, P(θ < 0.10), P(θ < 0.20), 90 % upper, none of the next 3. */
const shares: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [0, 4, 0.1, 0.6566, 0.8321, 0.2719, 0.7661],
  [0, 5, 0.0833, 0.7075, 0.8745, 0.2267, 0.798],
  [0, 7, 0.0625, 0.7838, 0.9281, 0.17, 0.8411],
  [0, 8, 0.0556, 0.8128, 0.9451, 0.1511, 0.8564],
  [0, 12, 0.0385, 0.8919, 0.9807, 0.1045, 0.8963],
  [1, 12, 0.1154, 0.5201, 0.8449, 0.2337, 0.7109],
  [1, 20, 0.0714, 0.7554, 0.9681, 0.1464, 0.8088],
  [2, 25, 0.0962, 0.597, 0.9448, 0.1735, 0.7469],
  [6, 8, 0.7222, 0, 0.0003, 0.8944, 0.0398],
]
const use = { law: 'Share taken', source: 'provisions.md 8.1, worked apart', known: 'recomputed', tolerance: 0.0002, unit: '1' } as const
const taken: readonly Published[] = shares.flatMap(([k, n, mean, tenth, fifth, upper, none]): Published[] => [
  { ...use, about: `${k} of ${n}: mean`, expected: mean, got: () => meanShare(useShare(k, n)) },
  { ...use, about: `${k} of ${n}: under 0.10`, expected: tenth, got: () => shareUnder(useShare(k, n), 0.1) },
  { ...use, about: `${k} of ${n}: under 0.20`, expected: fifth, got: () => shareUnder(useShare(k, n), 0.2) },
  { ...use, about: `${k} of ${n}: 90 % upper`, expected: upper, got: () => shareQuantile(useShare(k, n), 0.9) },
  { ...use, about: `${k} of ${n}: none of the next three`, expected: none, got: () => noneOfNext(useShare(k, n), 3) },
])
const flat: readonly Published[] = [
  { ...use, about: '0 of 8 with a flat prior: mean', expected: 0.1, got: () => meanShare(useShare(0, 8, 1)) },
  // Closed form: 1 − 0.9⁹.
  { ...use, about: '0 of 8 with a flat prior: under 0.10', expected: 0.6126, got: () => shareUnder(useShare(0, 8, 1), 0.1) },
]

const bag: Sellable = { price: 300, years: 0, lifeUsed: 0, course: { first: 0.7, yearly: 0.15 } }
const money = { law: 'Resale', source: 'provisions.md 8.2, worked apart', known: 'recomputed', unit: 'money' } as const
const selling: readonly Published[] = [
  { ...money, about: '300, new', expected: 210, tolerance: 0.01, got: () => worth(bag) },
  { ...money, about: '300, 2 years', expected: 151.73, tolerance: 0.01, got: () => worth({ ...bag, years: 2 }) },
  { ...money, about: '300, 5 years', expected: 93.18, tolerance: 0.01, got: () => worth({ ...bag, years: 5 }) },
  {
    ...money,
    about: '120 of clothing, 3 years',
    expected: 36.86,
    tolerance: 0.01,
    got: () => worth({ price: 120, years: 3, lifeUsed: 0, course: { first: 0.6, yearly: 0.2 } }),
  },
  { ...money, about: 'keeping it two years more', expected: 42.1, tolerance: 0.02, got: () => holdingCost({ ...bag, years: 2 }, 2) },
  {
    ...money,
    about: 'hiring it instead, 0 of 12, 8 trips at 25',
    expected: 7.69,
    tolerance: 0.02,
    got: () => hiringCost(8, meanShare(useShare(0, 12)), 25),
  },
]

export const rows: readonly Published[] = [...waiting, ...closed, ...spread, ...rest, ...taken, ...flat, ...selling]
