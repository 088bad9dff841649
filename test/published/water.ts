import { drinkingTable, sweatOnFoot, tableRate, type Effort } from '../../src-domain/laws/drinking-rate.ts'
import { mostEvaporation, neededEvaporation, vapourTorr } from '../../src-domain/laws/evaporation-balance.ts'
import { boilingPoint } from '../../src-domain/laws/boiling-point.ts'
import { fuelMass } from '../../src-domain/laws/fuel-mass.ts'
import { heatToBoil, potHeat_kJ_kgK } from '../../src-domain/laws/heat-to-boil.ts'
import { heatToHold } from '../../src-domain/laws/heat-to-hold.ts'
import { skinArea } from '../../src-domain/laws/skin-area.ts'
import { correctedSweat, piecewiseSweat, shapiroSweat } from '../../src-domain/laws/sweat-rate.ts'
import { waterForStretch, waterMassKg } from '../../src-domain/laws/water-carried.ts'
import { bleachDrops, boilMinutes, iodineDrops } from '../../src-domain/laws/water-made-safe.ts'
import type { Published } from './published.ts'

const apart = { source: 'provisions.md 2.2, worked apart', known: 'recomputed' } as const

/** Ereq, Emax, then OSE, OSEC, PW: printed to a tenth. */
const direct: readonly (readonly [number, number, number, number, number])[] = [
  [200, 250, 452.5, 253.0, 234.9],
  [300, 200, 751.2, 362.1, 431.1],
  [350, 120, 1105.7, 554.1, 577.05],
  [100, 350, 194.1, 185.6, -4.8],
  [251.03, 179.52, 660.3, 324.6, 374.14],
  [191.03, 179.52, 502.4, 268.6, 282.52],
]
const sweat: readonly Published[] = direct.flatMap(([needed, most, ose, osec, pw]): Published[] => [
  {
    ...apart,
    law: 'Sweat rate',
    about: `Ereq ${needed}, Emax ${most}: OSE`,
    expected: ose,
    tolerance: 0.1,
    unit: 'g/(m² h)',
    got: () => shapiroSweat(needed, most),
  },
  {
    ...apart,
    law: 'Sweat rate',
    about: `Ereq ${needed}, Emax ${most}: OSEC`,
    expected: osec,
    tolerance: 0.1,
    unit: 'g/(m² h)',
    got: () => correctedSweat(needed, most),
  },
  {
    ...apart,
    law: 'Sweat rate',
    about: `Ereq ${needed}, Emax ${most}: PW`,
    expected: pw,
    tolerance: 0.1,
    unit: 'g/(m² h)',
    got: () => piecewiseSweat(needed, most),
  },
])

const warm = { workW: 425, skin_m2: 1.85, airC: 30, humidity: 0.5, speedMs: 1, sun_W_m2: 60 }
const shade = { ...warm, sun_W_m2: 0 }
const pw = (at: typeof warm): number => (piecewiseSweat(neededEvaporation(at), mostEvaporation(at)) * 1.85) / 1000
const balance: readonly Published[] = [
  {
    ...apart,
    law: 'Vapour pressure of air',
    about: '30 °C, 50 %',
    expected: 15.926,
    tolerance: 0.001,
    unit: 'Torr',
    got: () => vapourTorr(30, 0.5),
  },
  {
    ...apart,
    law: 'Evaporation',
    about: 'needed, 425 W, 30 °C, sun',
    expected: 251.03,
    tolerance: 0.01,
    unit: 'W/m²',
    got: () => neededEvaporation(warm),
  },
  {
    ...apart,
    law: 'Evaporation',
    about: 'needed, the same in shade',
    expected: 191.03,
    tolerance: 0.01,
    unit: 'W/m²',
    got: () => neededEvaporation(shade),
  },
  {
    ...apart,
    law: 'Evaporation',
    about: 'most, 30 °C, 50 %',
    expected: 179.52,
    tolerance: 0.01,
    unit: 'W/m²',
    got: () => mostEvaporation(warm),
  },
  { ...apart, law: 'Sweat rate', about: 'PW, 425 W, 30 °C, sun', expected: 0.692, tolerance: 0.001, unit: 'l/h', got: () => pw(warm) },
  { ...apart, law: 'Sweat rate', about: 'PW, the same in shade', expected: 0.523, tolerance: 0.001, unit: 'l/h', got: () => pw(shade) },
  {
    ...apart,
    law: 'Skin area',
    source: 'Du Bois and Du Bois 1916',
    about: '70 kg, 175 cm',
    expected: 1.8481,
    tolerance: 0.00006,
    unit: 'm²',
    got: () => skinArea.compute({ bodyKg: 70, heightCm: 175 }),
  },
]

const temps: readonly (readonly [number, number])[] = [
  [10, 0.6],
  [15, 0.6],
  [20, 0.5],
  [25, 0.5],
  [30, 0.5],
  [35, 0.4],
  [40, 0.2],
]
const unrounded: Readonly<Record<Effort, readonly number[]>> = {
  easy: [0.2931, 0.3216, 0.3533, 0.3932, 0.4456, 0.5259, 0.5572],
  moderate: [0.3797, 0.4193, 0.4625, 0.5595, 0.6922, 0.7932, 0.8245],
  hard: [0.4918, 0.6012, 0.7036, 0.8267, 0.9594, 1.0604, 1.0917],
}
const rounded: Readonly<Record<Effort, readonly number[]>> = {
  easy: [0.3, 0.35, 0.4, 0.4, 0.45, 0.55, 0.6],
  moderate: [0.4, 0.45, 0.5, 0.6, 0.7, 0.8, 0.85],
  hard: [0.5, 0.65, 0.75, 0.85, 1.0, 1.1, 1.1],
}
const drink = { law: 'Drinking rate', source: 'provisions.md 2.3, worked apart', known: 'recomputed', unit: 'l/h' } as const
const table: readonly Published[] = (['easy', 'moderate', 'hard'] as const).flatMap((effort) =>
  temps.flatMap(([airC, humidity], i): Published[] => [
    {
      ...drink,
      about: `${effort}, ${airC} °C, before rounding`,
      expected: unrounded[effort][i]!,
      tolerance: 0.0005,
      got: () => sweatOnFoot(effort, airC, humidity),
    },
    { ...drink, about: `${effort}, ${airC} °C`, expected: rounded[effort][i]!, tolerance: 1e-9, got: () => drinkingTable[effort][i]! },
  ]),
)

/** Category's middle WBGT °C and US quarts an hour at easy, moderate, hard work. In full sun with 50 % humidity WBGT is near the air temperature. */
const army: readonly (readonly [number, number, number, number])[] = [
  [26.6, 0.5, 0.75, 0.75],
  [28.6, 0.5, 0.75, 1],
  [30.2, 0.75, 0.75, 1],
  [31.6, 0.75, 0.75, 1],
  [33, 1, 1, 1],
]
// The army table allows ± ¼ quart for the person and ± ¼ for the sun; its easy row at 33 °C asks for hours of rest too: half a quart for all.
const reprinted: readonly Published[] = army.flatMap(([airC, ...quarts]) =>
  (['easy', 'moderate', 'hard'] as const).map((effort, i): Published => ({
    law: 'Drinking rate against the army table',
    about: `${effort}, ${airC} °C`,
    source: 'US Army TB MED 507, as reprinted',
    known: 'read',
    expected: quarts[i]! * 0.946353,
    tolerance: 0.5 * 0.946353,
    unit: 'l/h',
    got: () => tableRate(effort, airC),
  })),
)

const stretch = waterForStretch.compute({ hours: 5, rate: 0.7, dryCamps: 0, campL: 1.5, cookingL: 0, spareL: 0.5 })
const carry = { law: 'Water carried', source: 'provisions.md 2.4', known: 'recomputed', tolerance: 0.001 } as const
const carried: readonly Published[] = [
  { ...carry, about: '5 h at 0.70 l/h and half a litre', expected: 4.0, unit: 'l', got: () => stretch },
  { ...carry, about: 'its mass', expected: 3.992, unit: 'kg', got: () => waterMassKg(stretch, 0) },
  { ...carry, about: 'with 70 g of bottles', expected: 4.062, unit: 'kg', got: () => waterMassKg(stretch, 0.07) },
  { ...carry, about: 'enough', expected: 4.6, unit: 'l', got: () => stretch * 1.15 },
]

const boilAndHold =
  heatToBoil.compute({
    waterKg: 1,
    startC: 10,
    targetC: boilingPoint.compute({ heightM: 0 }),
    potKg: 0.12,
    potHeat: potHeat_kJ_kgK.aluminium,
  }) + heatToHold.compute({ litres: 1, boilC: 100, airC: 10, seconds: 60, lossWK: 0.9 })
const safe = { law: 'Water made safe', known: 'read', tolerance: 0, unit: '1' } as const
const made: readonly Published[] = [
  { ...safe, about: 'minutes of boiling at 500 m', source: 'CDC backcountry guide; EPA', expected: 1, got: () => boilMinutes(500) },
  {
    ...safe,
    about: 'minutes of boiling at 1001 m',
    source: 'EPA, in its more cautious reading',
    expected: 3,
    got: () => boilMinutes(1001),
  },
  { ...safe, about: 'minutes of boiling at 2100 m', source: 'CDC backcountry guide', expected: 3, got: () => boilMinutes(2100) },
  { ...safe, about: 'drops of 6 % bleach to a litre', source: 'EPA', expected: 2, got: () => bleachDrops(1, 6, false) },
  { ...safe, about: 'drops of 6 % bleach to a gallon', source: 'EPA', expected: 8, got: () => bleachDrops(3.785411784, 6, false) },
  { ...safe, about: 'drops of 8.25 % bleach to a gallon', source: 'EPA', expected: 6, got: () => bleachDrops(3.785411784, 8.25, false) },
  { ...safe, about: 'drops of 8.25 % bleach to a litre', source: 'EPA', expected: 2, got: () => bleachDrops(1, 8.25, false) },
  { ...safe, about: 'the same, cloudy', source: 'EPA: double', expected: 12, got: () => bleachDrops(3.785411784, 8.25, true) },
  { ...safe, about: 'drops of iodine to a litre, cloudy', source: 'EPA', expected: 10, got: () => iodineDrops(1, true) },
  {
    law: 'Fuel to treat by boiling',
    about: '1 l from 10 °C, 0.12 kg aluminium, held 60 s',
    source: 'provisions.md 2.5',
    known: 'recomputed',
    expected: 391.54,
    tolerance: 0.05,
    unit: 'kJ',
    got: () => boilAndHold,
  },
  {
    law: 'Fuel to treat by boiling',
    about: 'in grams of the 80/20 mix',
    source: 'provisions.md 2.5',
    known: 'recomputed',
    expected: 17.13,
    tolerance: 0.01,
    unit: 'g',
    got: () => fuelMass.compute({ heatKJ: boilAndHold, heatValue: 45.708, efficiency: 0.5, wind: 1, primingG: 0 }),
  },
]

export const rows: readonly Published[] = [...sweat, ...balance, ...table, ...reprinted, ...carried, ...made]
