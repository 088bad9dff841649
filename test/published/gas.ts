import { drainedMix } from '../../src-domain/laws/gas-drain.ts'
import { gasFeed, lowestLiquidC } from '../../src-domain/laws/gas-feed.ts'
import {
  gasBoilsC,
  gasPressure,
  mixPressureKPa,
  moleShares,
  vapourPressureKPa,
  type Gas,
  type GasMix,
} from '../../src-domain/laws/gas-pressure.ts'
import type { Published } from './published.ts'

const mix = (isobutane: number, butane: number, propane: number): GasMix => ({ propane, isobutane, butane })

// kPa absolute at −30 … 20 °C: worked apart from the published constants, half a unit of the last digit.
const pure: Readonly<Record<Gas, readonly number[]>> = {
  propane: [167.46, 243.82, 343.92, 471.8, 631.5, 827.0],
  isobutane: [47.15, 72.89, 108.63, 156.8, 220.0, 301.0],
  butane: [28.23, 45.25, 69.59, 103.24, 148.37, 207.34],
}
const pressures: readonly Published[] = (Object.entries(pure) as [Gas, readonly number[]][]).flatMap(([gas, values]) =>
  values.map((expected, i): Published => ({
    law: 'Vapour pressure',
    about: `${gas}, ${-30 + 10 * i} °C`,
    source: 'Antoine, Poling 5th ed., provisions.md 1.6',
    known: 'recomputed',
    expected,
    tolerance: 0.02,
    unit: 'kPa',
    got: () => vapourPressureKPa(gas, -30 + 10 * i),
  })),
)

// A second published equation: at 0 °C Antoine runs low by up to 0.4 % of it, so half a percent. Boiling points: handbooks print −42.1, −11.7 and −0.5 °C.
const second = { law: 'Vapour pressure, second equation', source: 'Wagner equation, Poling 5th ed.', known: 'read', unit: 'kPa' } as const
const boils = {
  law: 'Normal boiling point',
  source: 'from the constants, provisions.md 1.6',
  known: 'recomputed',
  tolerance: 0.01,
  unit: '°C',
} as const
const outside: readonly Published[] = [
  { ...second, about: 'propane, 0 °C', expected: 473.58, tolerance: 0.005 * 473.58, got: () => vapourPressureKPa('propane', 0) },
  { ...second, about: 'isobutane, 0 °C', expected: 156.67, tolerance: 0.005 * 156.67, got: () => vapourPressureKPa('isobutane', 0) },
  { ...second, about: 'butane, 0 °C', expected: 103.33, tolerance: 0.005 * 103.33, got: () => vapourPressureKPa('butane', 0) },
  { ...boils, about: 'propane', expected: -42.07, got: () => gasBoilsC('propane', 101.325) },
  { ...boils, about: 'isobutane', expected: -11.81, got: () => gasBoilsC('isobutane', 101.325) },
  { ...boils, about: 'butane', expected: -0.49, got: () => gasBoilsC('butane', 101.325) },
]

/** Name, mix, kPa at −10, 0, 20 °C, then the lowest liquid °C for 30 kPa and for 60 kPa, each at 0, 3000, 5000 m. */
const mixes: readonly (readonly [string, GasMix, readonly number[], readonly number[], readonly number[]])[] = [
  ['butane', mix(0, 1, 0), [69.6, 103.2, 207.3], [6.5, -0.8, -5.3], [12.4, 6.3, 2.7]],
  ['isobutane', mix(1, 0, 0), [108.6, 156.8, 301.0], [-4.9, -12.1, -16.5], [0.8, -5.2, -8.7]],
  ['isobutane 80 propane 20', mix(0.8, 0, 0.2), [166.9, 234.9, 431.4], [-16.6, -23.6, -27.9], [-11.0, -16.8, -20.3]],
  ['butane 70 propane 30', mix(0, 0.7, 0.3), [168.6, 236.3, 431.0], [-16.9, -24.0, -28.4], [-11.3, -17.2, -20.7]],
  ['butane 25 isobutane 50 propane 25', mix(0.5, 0.25, 0.25), [171.4, 240.5, 439.9], [-17.3, -24.4, -28.7], [-11.7, -17.6, -21.0]],
  ['propane', mix(0, 0, 1), [343.9, 471.8, 827.0], [-36.0, -42.3, -46.2], [-30.9, -36.2, -39.4]],
]
const noted = { source: 'provisions.md 1.6, worked apart', known: 'recomputed' } as const
const mixed: readonly Published[] = mixes.flatMap(([name, mass, kPa, weak, good]): Published[] => [
  ...[-10, 0, 20].map((liquidC, i): Published => ({
    ...noted,
    law: 'Pressure of a mix',
    about: `${name}, ${liquidC} °C`,
    expected: kPa[i]!,
    tolerance: 0.2,
    unit: 'kPa',
    got: () => gasPressure.compute({ liquidC, ...mass }),
  })),
  ...[0, 3000, 5000].flatMap((heightM, i): Published[] => [
    {
      ...noted,
      law: 'Lowest useful liquid',
      about: `${name}, weak flame, ${heightM} m`,
      expected: weak[i]!,
      tolerance: 0.1,
      unit: '°C',
      got: () => lowestLiquidC(mass, 30, heightM),
    },
    {
      ...noted,
      law: 'Lowest useful liquid',
      about: `${name}, good flame, ${heightM} m`,
      expected: good[i]!,
      tolerance: 0.1,
      unit: '°C',
      got: () => lowestLiquidC(mass, 60, heightM),
    },
  ]),
])
const shares: readonly Published[] = [
  {
    ...noted,
    law: 'Mole shares',
    about: 'isobutane of 80/20',
    expected: 0.7521,
    tolerance: 0.00006,
    unit: '1',
    got: () => moleShares(mix(0.8, 0, 0.2)).isobutane,
  },
  {
    ...noted,
    law: 'Mole shares',
    about: 'propane of butane 70/30',
    expected: 0.361,
    tolerance: 0.00006,
    unit: '1',
    got: () => moleShares(mix(0, 0.7, 0.3)).propane,
  },
]

/** Name, mix, liquid °C, share left, mass share of propane, kPa, lowest liquid °C for 30 kPa at 0 m. */
const drained: readonly (readonly [string, GasMix, number, number, number, number, number])[] = [
  ['isobutane 80 propane 20', mix(0.8, 0, 0.2), -10, 1, 0.2, 166.95, -16.6],
  ['isobutane 80 propane 20', mix(0.8, 0, 0.2), -10, 0.5, 0.0714, 130.3, -9.8],
  ['isobutane 80 propane 20', mix(0.8, 0, 0.2), -10, 0.25, 0.0189, 114.47, -6.3],
  ['isobutane 80 propane 20', mix(0.8, 0, 0.2), -10, 0.1, 0.0027, 109.48, -5.1],
  ['butane 70 propane 30', mix(0, 0.7, 0.3), 0, 1, 0.3, 236.28, -16.9],
  ['butane 70 propane 30', mix(0, 0.7, 0.3), 0, 0.5, 0.0856, 143.73, -2.5],
  ['butane 70 propane 30', mix(0, 0.7, 0.3), 0, 0.25, 0.0104, 108.25, 5.3],
  ['butane 70 propane 30', mix(0, 0.7, 0.3), 0, 0.1, 0.0004, 103.44, 6.5],
]
const drains: readonly Published[] = drained.flatMap(([name, mass, liquidC, left, propane, kPa, lowC]): Published[] => {
  const about = `${name}, ${liquidC} °C, ${left} left`
  return [
    {
      ...noted,
      law: 'Drained mix',
      about: `${about}: propane`,
      expected: propane,
      tolerance: 0.0003,
      unit: '1',
      got: () => drainedMix(mass, left, liquidC).propane,
    },
    {
      ...noted,
      law: 'Drained mix',
      about: `${about}: pressure`,
      expected: kPa,
      tolerance: 0.1,
      unit: 'kPa',
      got: () => mixPressureKPa(moleShares(drainedMix(mass, left, liquidC)), liquidC),
    },
    {
      ...noted,
      law: 'Drained mix',
      about: `${about}: lowest liquid`,
      expected: lowC,
      tolerance: 0.1,
      unit: '°C',
      got: () => lowestLiquidC(drainedMix(mass, left, liquidC), 30, 0),
    },
  ]
})

const iso = (heightM: number): number => gasFeed.compute({ liquidC: 0, left: 1, heightM, ...mix(1, 0, 0) })
const eighty = (airC: number, left: number, heightM: number): number =>
  gasFeed.compute({ liquidC: airC - 5, left, heightM, ...mix(0.8, 0, 0.2) })
const feed = { ...noted, law: 'Gas over the air', tolerance: 0.05, unit: 'kPa' } as const
const feeds: readonly Published[] = [
  { ...feed, about: 'isobutane, 0 °C, 0 m', expected: 55.5, got: () => iso(0) },
  { ...feed, about: 'isobutane, 0 °C, 2000 m', expected: 77.3, got: () => iso(2000) },
  { ...feed, about: 'isobutane, 0 °C, 4000 m', expected: 95.2, got: () => iso(4000) },
  {
    ...feed,
    source: 'provisions.md 12',
    about: '80/20, air 0 °C, 1100 m, a quarter left',
    expected: 49.63,
    got: () => eighty(0, 0.25, 1100),
  },
  { ...feed, source: 'provisions.md 12', about: '80/20, air 0 °C, 1100 m, a tenth left', expected: 43.38, got: () => eighty(0, 0.1, 1100) },
  { ...feed, source: 'provisions.md 12', about: '80/20, air −2 °C, 0 m, a quarter left', expected: 27.09, got: () => eighty(-2, 0.25, 0) },
]
// "Above 50 °C the mixes reach 920–940 kPa". Here the equation is 30 to 75 K beyond its fit and runs low: propane 1713 and butane 496 kPa (memory of
// printed tables) make 935 for butane 70/30, ours is 2 % less. A caution does not need more: half the spread and 2 %.
const hot: readonly Published[] = mixes.slice(2, 5).map(([name, mass]): Published => ({
  ...noted,
  law: 'Pressure of a mix',
  about: `${name}, 50 °C`,
  expected: 930,
  tolerance: 29,
  unit: 'kPa',
  got: () => gasPressure.compute({ liquidC: 50, ...mass }),
}))

export const rows: readonly Published[] = [...pressures, ...outside, ...mixed, ...shares, ...drains, ...feeds, ...hot]
