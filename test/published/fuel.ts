import { boilingPoint } from '../../src-domain/laws/boiling-point.ts'
import {
  blendHeatMJkg,
  compounds,
  fuelDefaults,
  higherHeatMJkg,
  lowerHeatMJkg,
  woodHeatMJkg,
  type CompoundName,
} from '../../src-domain/laws/fuel-heat.ts'
import { fuelMass } from '../../src-domain/laws/fuel-mass.ts'
import { heatFromSnow } from '../../src-domain/laws/heat-from-snow.ts'
import { heatToBoil, potHeat_kJ_kgK } from '../../src-domain/laws/heat-to-boil.ts'
import { heatToHold } from '../../src-domain/laws/heat-to-hold.ts'
import { learnedFactor } from '../../src-domain/laws/learned-factor.ts'
import type { Published } from './published.ts'

/** Name, lower and higher heating value MJ/kg: derived apart from the same heats of formation; half a unit of the last digit. */
const derived: readonly (readonly [CompoundName, number, number])[] = [
  ['propane', 46.34, 50.33],
  ['isobutane', 45.55, 49.34],
  ['butane', 45.72, 49.5],
  ['ethanol', 26.82, 29.68],
  ['methanol', 19.93, 22.68],
  ['propanol', 30.44, 33.37],
  ['hexane', 44.73, 48.31],
  ['heptane', 44.56, 48.07],
  ['octane', 44.42, 47.89],
  ['hexamine', 28.1, 29.97],
]
const heat = { law: 'Heat value', unit: 'MJ/kg' } as const
const heatValues: readonly Published[] = derived.flatMap(([name, lower, higher]): Published[] => [
  {
    ...heat,
    about: `${name}, lower`,
    source: 'provisions.md 1.3, from heats of formation',
    known: 'recomputed',
    expected: lower,
    tolerance: name === 'hexamine' ? 0.05 : 0.006,
    got: () => lowerHeatMJkg(compounds[name]),
  },
  {
    ...heat,
    about: `${name}, higher`,
    source: 'provisions.md 1.3, from heats of formation',
    known: 'recomputed',
    expected: higher,
    tolerance: 0.006,
    got: () => higherHeatMJkg(compounds[name]),
  },
])

// Printed tables: they differ among themselves by half a percent (reference temperature, purity), hence 0.6 %.
const printed: readonly Published[] = [
  {
    ...heat,
    about: 'propane, higher: 2219.2 ± 0.46 kJ/mol',
    source: 'NIST WebBook, heat of combustion',
    known: 'read',
    expected: 2219.2 / 44.097,
    tolerance: 0.46 / 44.097,
    got: () => higherHeatMJkg(compounds.propane),
  },
  {
    ...heat,
    about: 'butane, higher',
    source: 'printed table',
    known: 'read',
    expected: 49.51,
    tolerance: 0.02,
    got: () => higherHeatMJkg(compounds.butane),
  },
  {
    ...heat,
    about: 'ethanol, lower',
    source: 'Argonne GREET list',
    known: 'read',
    expected: 26.945,
    tolerance: 0.16,
    got: () => lowerHeatMJkg(compounds.ethanol),
  },
  {
    ...heat,
    about: 'methanol, lower',
    source: 'Argonne GREET list',
    known: 'read',
    expected: 20.089,
    tolerance: 0.17,
    got: () => lowerHeatMJkg(compounds.methanol),
  }, // 0.8 %
  {
    ...heat,
    about: 'hexamine, higher: 4200 kJ/mol',
    source: 'heat of combustion',
    known: 'memory',
    expected: 4200 / 140.19,
    tolerance: 0.02,
    got: () => higherHeatMJkg(compounds.hexamine),
  },
  {
    ...heat,
    about: 'light naphtha stays inside the table and the alkanes',
    source: 'Argonne GREET list 44.927 and n-hexane to n-octane',
    known: 'read',
    expected: 44.4,
    tolerance: 0.55,
    got: () => fuelDefaults.petrol.heatMJkg,
  },
]

// The note blends parts printed to 0.01 MJ/kg (0.9384·26.82 − 2.443·0.0616 = 25.017), we the unrounded ones: half a unit of a part and of the result.
const blend = { ...heat, law: 'Heat value of a blend', source: 'provisions.md 1.3', known: 'recomputed', tolerance: 0.01 } as const
const blends: readonly Published[] = [
  { ...blend, about: 'ethanol 96 % by volume', expected: 25.02, got: () => blendHeatMJkg({ ethanol: 0.9384 }) },
  { ...blend, about: 'ethanol 95 % by volume', expected: 24.6, got: () => blendHeatMJkg({ ethanol: 0.9241 }) },
  { ...blend, about: 'ethanol 90 % by volume', expected: 22.62, got: () => blendHeatMJkg({ ethanol: 0.8566 }) },
  { ...blend, about: 'ethanol 50 methanol 50 by mass', expected: 23.38, got: () => blendHeatMJkg({ ethanol: 0.5, methanol: 0.5 }) },
  {
    ...blend,
    about: 'isobutane 80 propane 20 by mass',
    expected: 45.708,
    tolerance: 0.005,
    got: () => blendHeatMJkg({ isobutane: 0.8, propane: 0.2 }),
  },
  { ...blend, about: 'wood at 20 % moisture', expected: 14.151, tolerance: 0.001, got: () => woodHeatMJkg(0.2) },
]

const aluminium = potHeat_kJ_kgK.aluminium
const water = (heightM: number): number =>
  heatToBoil.compute({ waterKg: 1, startC: 10, targetC: boilingPoint.compute({ heightM }), potKg: 0.12, potHeat: aluminium })
const snow = heatFromSnow.compute({ snowKg: 1, snowC: -10, targetC: boilingPoint.compute({ heightM: 0 }), potKg: 0.12, potHeat: aluminium })
const grams = (heatKJ: number, heatValue: number, efficiency: number): number =>
  fuelMass.compute({ heatKJ, heatValue, efficiency, wind: 1, primingG: 0 })

/** Name, heat value MJ/kg, efficiency, then g for one litre from 10 °C at 0 m, at 3000 m, and from snow at −10 °C at 0 m. */
const perLitre: readonly (readonly [string, number, number, number, number, number])[] = [
  ['isobutane 80 propane 20', 45.708, 0.5, 16.92, 15.04, 34.36],
  ['isobutane 80 propane 20', 45.708, 0.7, 12.09, 10.74, 24.54],
  ['ethanol 96 % by volume', 25.017, 0.4, 38.64, 34.35, 78.46],
  ['ethanol 96 % by volume', 25.017, 0.6, 25.76, 22.9, 52.31],
  ['methanol', 19.93, 0.5, 38.8, 34.49, 78.79],
  ['naphtha', 44, 0.5, 17.58, 15.62, 35.69],
  ['kerosene', 43.1, 0.5, 17.94, 15.95, 36.44],
  ['hexamine', 28.1, 0.4, 34.4, 30.58, 69.86],
  ['wood', 14.151, 0.15, 182.2, 161.9, 369.9],
  ['wood', 14.151, 0.25, 109.3, 97.2, 221.9],
]
const litres: readonly Published[] = perLitre.flatMap(([name, value, efficiency, atSea, high, melted]): Published[] =>
  (
    [
      ['0 m', water(0), atSea],
      ['3000 m', water(3000), high],
      ['snow, 0 m', snow, melted],
    ] as const
  ).map(([where, heatKJ, expected]) => ({
    law: 'Fuel for a litre',
    about: `${name}, η ${efficiency}, ${where}`,
    source: 'provisions.md 1.5, worked apart',
    known: 'recomputed',
    expected,
    tolerance: name === 'wood' ? 0.1 : 0.02, // the note's: half a unit of its last digit, and of the heat value's
    unit: 'g',
    got: () => grams(heatKJ, value, efficiency),
  })),
)

const tripBoil = heatToBoil.compute({
  waterKg: 0.5,
  startC: 8,
  targetC: boilingPoint.compute({ heightM: 1500 }),
  potKg: 0.1,
  potHeat: potHeat_kJ_kgK.titanium,
})
const tripHold = heatToHold.compute({ litres: 0.5, boilC: boilingPoint.compute({ heightM: 1500 }), airC: 8, seconds: 300, lossWK: 0.9 })
const tripHeat = 6 * tripBoil + 3 * tripHold
const worked = { law: 'Fuel of a trip', source: 'provisions.md 1.5, worked example', known: 'recomputed' } as const
// The note prints 1165.16 kJ, but its own parts give 6·186.779 + 3·(0.9·0.62996·86.983·0.3 = 14.795) = 1165.06: worked by hand from its constants, taken here.
// Its grams are not moved by it (50.978 against 50.983).
const trip: readonly Published[] = [
  { ...worked, about: 'one boil of half a litre, 8 °C, 1500 m', expected: 186.78, tolerance: 0.02, unit: 'kJ', got: () => tripBoil },
  { ...worked, about: '6 boils and 3 holds', expected: 1165.06, tolerance: 0.02, unit: 'kJ', got: () => tripHeat },
  { ...worked, about: 'need', expected: 50.98, tolerance: 0.05, unit: 'g', got: () => grams(tripHeat, 45.708, 0.5) },
  { ...worked, about: 'with a fifth to spare', expected: 61.17, tolerance: 0.05, unit: 'g', got: () => grams(tripHeat, 45.708, 0.5) * 1.2 },
]

const burns = learnedFactor({ factor: 0.5, sdLn: 0.25 }, 0.15, [0.44, 0.46, 0.42])
const learned = {
  law: 'Learned factor',
  source: 'provisions.md 1.4, worked apart',
  known: 'recomputed',
  tolerance: 1e-5,
  unit: '1',
} as const
const learning: readonly Published[] = [
  { ...learned, about: 'efficiency 0.50, burns 0.44, 0.46, 0.42', expected: 0.44579, got: () => burns.factor },
  { ...learned, about: 'its standard deviation, ln', expected: 0.08183, got: () => burns.sdLn },
]

export const rows: readonly Published[] = [...heatValues, ...printed, ...blends, ...litres, ...trip, ...learning]
