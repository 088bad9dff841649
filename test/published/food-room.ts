import { canisterRoom, daysThatFit, mustFitL } from '../../src-domain/laws/food-canister.ts'
import { foodRoomL } from '../../src-domain/laws/food-room.ts'
import { foodDays } from '../../src-domain/laws/meals-counted.ts'
import type { Published } from './published.ts'

const sum = (days: readonly number[]): number => days.reduce((all, one) => all + one, 0)
// Friday 10:00 to Tuesday 15:00: 0.75 + 3 + 0.625.
const friToTue = foodDays(5, 10 * 60, 15 * 60)
const note = { source: 'provisions.md 3, worked by hand', known: 'recomputed' } as const

export const rows: readonly Published[] = [
  {
    ...note,
    law: 'Food room',
    about: '0.75 kg of unknown food',
    expected: 1.67,
    tolerance: 0.005,
    unit: 'l',
    got: () => foodRoomL([{ massKg: 0.75, density_kg_l: null }]),
  },
  {
    ...note,
    law: 'Food room',
    about: 'five days of it',
    expected: 8.33,
    tolerance: 0.005,
    unit: 'l',
    got: () => foodRoomL([{ massKg: 3.75, density_kg_l: null }]),
  },
  {
    ...note,
    law: 'Food canister',
    about: '11.5 l, 0.90, 1.70 l a day',
    expected: 6.09,
    tolerance: 0.01,
    unit: 'd',
    got: () => daysThatFit(canisterRoom.compute({ ratedL: 11.5, fill: 0.9 }), 1.7),
  },
  {
    ...note,
    law: 'Food canister',
    about: '702 in³ are 11.5 l',
    source: '1 in³ = 16.387064 ml, exact',
    expected: 702 * 0.016387064,
    tolerance: 0.005,
    unit: 'l',
    got: () => canisterRoom.compute({ ratedL: 11.5, fill: 1 }),
  },
  {
    ...note,
    law: 'Food days',
    about: 'four nights, Friday 10:00 to Tuesday 15:00',
    expected: 4.375,
    tolerance: 0.001,
    unit: 'd',
    got: () => sum(friToTue),
  },
  {
    ...note,
    law: 'Food days',
    about: 'packed on the first night',
    expected: 3.625,
    tolerance: 0.001,
    unit: 'd',
    got: () => sum(friToTue.slice(1)),
  },
  {
    ...note,
    law: 'Food canister',
    about: 'what must fit on the first night of that trip, 1.7 l a day',
    // 3.625·1.7 + 0.5 + 0.75·0.2, by hand
    expected: 6.8125,
    tolerance: 1e-9,
    unit: 'l',
    got: () => mustFitL({ daysOfFood: 4.375, firstDay: 0.75, nights: 4, litresADay: 1.7, toiletriesL: 0.5, resupplies: [] })[0]!,
  },
]
