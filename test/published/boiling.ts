import { boilingPoint } from '../../src-domain/laws/boiling-point.ts'
import { heatFromSnow, heatToMelt } from '../../src-domain/laws/heat-from-snow.ts'
import { heatToBoil, potHeat_kJ_kgK } from '../../src-domain/laws/heat-to-boil.ts'
import { heatToHold } from '../../src-domain/laws/heat-to-hold.ts'
import { standardPressure } from '../../src-domain/laws/standard-pressure.ts'
import { saturationPressureMPa, saturationTempK } from '../../src-domain/laws/water-saturation.ts'
import type { Published } from './published.ts'

const { aluminium, titanium } = potHeat_kJ_kgK

// The release prints nine digits; half a unit of the last, or of the digits recalled.
const if97 = { law: 'Saturated water', source: 'IAPWS R7-97, table 35 and 36 of test values' } as const
const release: readonly Published[] = [
  { ...if97, about: 'Ts at 10 MPa', known: 'read', expected: 584.149488, tolerance: 1e-6, unit: 'K', got: () => saturationTempK(10) },
  { ...if97, about: 'Ts at 0.1 MPa', known: 'memory', expected: 372.755919, tolerance: 1e-6, unit: 'K', got: () => saturationTempK(0.1) },
  { ...if97, about: 'Ts at 1 MPa', known: 'memory', expected: 453.035632, tolerance: 1e-6, unit: 'K', got: () => saturationTempK(1) },
  {
    ...if97,
    about: 'Ps at 500 K',
    known: 'read',
    expected: 2.63889776,
    tolerance: 1e-8,
    unit: 'MPa',
    got: () => saturationPressureMPa(500),
  },
  {
    ...if97,
    about: 'Ps at 300 K',
    known: 'memory',
    expected: 0.00353658941,
    tolerance: 1e-10,
    unit: 'MPa',
    got: () => saturationPressureMPa(300),
  },
  {
    ...if97,
    about: 'Ps at 600 K',
    known: 'memory',
    expected: 12.3443146,
    tolerance: 1e-6,
    unit: 'MPa',
    got: () => saturationPressureMPa(600),
  },
]

/** Height m, pressure Pa (the standard's table, which everyone prints), boiling point °C (computed apart from both formulas). */
const heights: readonly (readonly [number, number, number])[] = [
  [-400, 106223.4, 101.302],
  [0, 101325.0, 99.974],
  [500, 95460.8, 98.312],
  [1000, 89874.6, 96.649],
  [1500, 84556.0, 94.983],
  [2000, 79495.2, 93.315],
  [2500, 74682.5, 91.645],
  [3000, 70108.5, 89.972],
  [3500, 65764.1, 88.297],
  [4000, 61640.2, 86.619],
  [4500, 57728.3, 84.939],
  [5000, 54019.9, 83.255],
  [5500, 50506.8, 81.568],
  [6000, 47181.0, 79.878],
  [7000, 41060.7, 76.487],
  [8848.86, 31440.0, 70.177],
]
const atHeights: readonly Published[] = heights.flatMap(([heightM, pressurePa, boilC]): Published[] => [
  {
    law: 'Air pressure',
    about: `${heightM} m`,
    source: 'ISO 2533 by geopotential height, provisions.md 1.1',
    known: 'recomputed',
    expected: pressurePa,
    tolerance: 0.2, // printed to 0.1 Pa
    unit: 'Pa',
    got: () => standardPressure.compute({ heightM }),
  },
  {
    law: 'Boiling point',
    about: `${heightM} m`,
    source: 'IF97 on ISO 2533, provisions.md 1.1',
    known: 'recomputed',
    expected: boilC,
    tolerance: 0.002, // 0.2 Pa moves it by 0.0001 °C; printed to 0.001
    unit: '°C',
    got: () => boilingPoint.compute({ heightM }),
  },
])

// Worked from the formula with the printed constants; half a unit of the boiling point (0.0005 K × 4.3 kJ/K) and of the last digit.
const boil = { law: 'Heat to boil', source: 'provisions.md 1.2, worked apart', known: 'recomputed', tolerance: 0.02, unit: 'kJ' } as const
const at = (heightM: number): number => boilingPoint.compute({ heightM })
const heats: readonly Published[] = [
  {
    ...boil,
    about: '1 kg, 20 °C, 0 m, no pot',
    expected: 335.09,
    got: () => heatToBoil.compute({ waterKg: 1, startC: 20, targetC: at(0), potKg: 0, potHeat: 0 }),
  },
  {
    ...boil,
    about: '1 kg, 20 °C, 0 m: the enthalpy difference of IF97 region 1',
    known: 'reference library',
    expected: 334.96,
    tolerance: 0.2, // one mean heat capacity for all temperatures: 0.05 %
    got: () => heatToBoil.compute({ waterKg: 1, startC: 20, targetC: at(0), potKg: 0, potHeat: 0 }),
  },
  {
    ...boil,
    about: '1 kg, 10 °C, 0 m, 0.12 kg aluminium',
    expected: 386.68,
    got: () => heatToBoil.compute({ waterKg: 1, startC: 10, targetC: at(0), potKg: 0.12, potHeat: aluminium }),
  },
  {
    ...boil,
    about: '1 kg, 5 °C, 3000 m, 0.10 kg titanium',
    expected: 360.48,
    got: () => heatToBoil.compute({ waterKg: 1, startC: 5, targetC: at(3000), potKg: 0.1, potHeat: titanium }),
  },
  {
    ...boil,
    about: '0.5 kg, 15 °C, 1000 m, 0.09 kg titanium',
    expected: 174.9,
    got: () => heatToBoil.compute({ waterKg: 0.5, startC: 15, targetC: at(1000), potKg: 0.09, potHeat: titanium }),
  },
  {
    ...boil,
    law: 'Heat from snow',
    about: 'melt 1 kg at −10 °C, no pot',
    expected: 354.45,
    tolerance: 0.01,
    got: () => heatToMelt.compute({ snowKg: 1, snowC: -10, potKg: 0, potHeat: 0 }),
  },
  {
    ...boil,
    law: 'Heat from snow',
    about: '1 kg at −10 °C to boiling, 0 m, no pot',
    expected: 773.34,
    got: () => heatFromSnow.compute({ snowKg: 1, snowC: -10, targetC: at(0), potKg: 0, potHeat: 0 }),
  },
  {
    ...boil,
    law: 'Heat from snow',
    about: '1 kg at −10 °C to boiling, 3000 m, 0.15 kg aluminium',
    expected: 744.89,
    got: () => heatFromSnow.compute({ snowKg: 1, snowC: -10, targetC: at(3000), potKg: 0.15, potHeat: aluminium }),
  },
  {
    ...boil,
    law: 'Heat to hold',
    about: '1 l, 99.97 °C, air 10 °C, 600 s',
    expected: 48.58,
    tolerance: 0.01,
    got: () => heatToHold.compute({ litres: 1, boilC: 99.97, airC: 10, seconds: 600, lossWK: 0.9 }),
  },
]

export const rows: readonly Published[] = [...release, ...atHeights, ...heats]
