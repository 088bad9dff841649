import { packWh } from '../../src-domain/laws/cell-energy.ts'
import { coldShare } from '../../src-domain/laws/cold-cell.ts'
import { bankAtPort, bankIntoCell } from '../../src-domain/laws/power-bank.ts'
import { draws_W, lampDrawW, USUAL_LAMP_W } from '../../src-domain/laws/power-draw.ts'
import type { Published } from './published.ts'

const note = { known: 'recomputed', source: 'provisions.md 4' } as const
const phoneDay = 15.5 * draws_W['phone idle'] + 8 * draws_W['phone recording'] + 0.5 * draws_W['phone video']
const have = 15 * 0.9 + bankIntoCell.compute({ labelWh: 37, port: 0.85, charging: 0.85 })

export const rows: readonly Published[] = [
  {
    ...note,
    law: 'Cell in the cold',
    about: 'lithium-ion, −5 °C: half way from 0.88 to 0.75',
    expected: 0.815,
    tolerance: 1e-9,
    unit: '1',
    got: () => coldShare('lithium-ion', -5),
  },
  {
    ...note,
    law: 'Cell in the cold',
    about: 'alkaline, 0 °C',
    expected: 0.6,
    tolerance: 1e-9,
    unit: '1',
    got: () => coldShare('alkaline', 0),
  },
  // "about half between −20 and 0 °C", a maker's page: the middle of our line there, read loosely.
  {
    law: 'Cell in the cold',
    about: 'alkaline, −5 °C, a maker’s "about half"',
    source: 'a battery maker’s page',
    known: 'read',
    expected: 0.5,
    tolerance: 0.1,
    unit: '1',
    got: () => coldShare('alkaline', -5),
  },
  {
    law: 'Power bank',
    about: '10 Ah, ηc 0.80, at the port',
    source: 'a maker’s example',
    known: 'read',
    expected: 29.6,
    tolerance: 0.01,
    unit: 'Wh',
    got: () => bankAtPort.compute({ labelWh: packWh(10), port: 0.8 }),
  },
  {
    law: 'Power bank',
    about: 'the same in mAh at 5 V',
    source: 'a maker’s example',
    known: 'read',
    expected: 5920,
    tolerance: 1,
    unit: 'mAh',
    got: () => (bankAtPort.compute({ labelWh: packWh(10), port: 0.8 }) / 5) * 1000,
  },
  {
    ...note,
    law: 'Power bank',
    about: '10 Ah into a phone',
    expected: 26.73,
    tolerance: 0.01,
    unit: 'Wh',
    got: () => bankIntoCell.compute({ labelWh: packWh(10), port: 0.85, charging: 0.85 }),
  },
  { ...note, law: 'Cell energy', about: '20 Ah', expected: 74.0, tolerance: 0.05, unit: 'Wh', got: () => packWh(20) },
  { ...note, law: 'Cell energy', about: '27 Ah', expected: 99.9, tolerance: 0.05, unit: 'Wh', got: () => packWh(27) },
  // Printed to two digits.
  ...(
    [
      [10, 0.11],
      [50, 0.53],
      [100, 1.07],
      [300, 3.2],
    ] as const
  ).map(([lumens, expected]): Published => ({
    law: 'Lamp',
    about: `${lumens} lm`,
    source: 'provisions.md 4.4',
    known: 'common practice, no source',
    expected,
    tolerance: lumens === 300 ? 0.05 : 0.005,
    unit: 'W',
    got: () => lampDrawW(lumens),
  })),
  { ...note, law: 'Power of a trip', about: 'phone, one day', expected: 6.0, tolerance: 0.01, unit: 'Wh', got: () => phoneDay },
  {
    ...note,
    law: 'Power of a trip',
    about: 'four days with messenger 1.20 and watch 0.72',
    expected: 31.68,
    tolerance: 0.01,
    unit: 'Wh',
    got: () => 4 * (phoneDay + 24 * draws_W['satellite messenger'] + 24 * draws_W.watch),
  },
  {
    ...note,
    law: 'Power of a trip',
    about: 'have: 15 Wh at 0.9 and 37 Wh of bank',
    expected: 40.23,
    tolerance: 0.01,
    unit: 'Wh',
    got: () => have,
  },
  { ...note, law: 'Power of a trip', about: 'their ratio', expected: 1.27, tolerance: 0.01, unit: '1', got: () => have / 31.68 },
  {
    ...note,
    law: 'Light',
    source: 'provisions.md 12',
    about: 'three AAA alkaline at 0 °C',
    expected: 4.42,
    tolerance: 0.005,
    unit: 'h',
    got: () => (3.9 * coldShare('alkaline', 0)) / USUAL_LAMP_W,
  },
]
