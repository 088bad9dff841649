import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { withAmounts } from '../../../src-domain/loadout/amounts.ts'
import { amountAt, heaviestPack, momentsOf, packAt } from '../../../src-domain/loadout/moments.ts'
import { supplyLines, type Loadout } from '../../../src-domain/loadout/loadout.ts'
import { totalsOf } from '../../../src-domain/loadout/totals.ts'
import { emptyBrief, type Brief, type Leg } from '../../../src-domain/trips/brief.ts'
import { itemRow, kitIndex, loadoutOf, supplyRow, type TestItem, type TestSupply } from './kit.ts'

const leg = (day: number, lengthM: number): Leg => ({
  day,
  name: '',
  lengthM,
  climbM: 0,
  descentM: 0,
  terrain: 'path',
  endHeightM: null,
  camp: true,
})
const trip = { startsOn: '2025-10-09', endsOn: '2025-10-12' }
const plain: Brief = { ...emptyBrief, legs: [leg(1, 16_000), leg(2, 18_000), leg(3, 15_000), leg(4, 13_000)] }
/** A food box at the end of the second day. */
const boxed: Brief = { ...plain, resupplies: [{ atM: 34_000, day: 2, name: 'hut', what: ['food'] }] }

const items: readonly TestItem[] = [
  { name: 'Pack', area: 'carry', g: 800, duties: 'pack' },
  { name: 'Bottle', area: 'water', g: 40, traits: { 'water-capacity': 1 } },
]
const supplies: readonly TestSupply[] = [
  { name: 'Food', area: 'food', rule: { per: 'day', amountMilli: 700_000 } },
  { name: 'Gas', area: 'kitchen' },
  { name: 'Water', area: 'water', unit: 'ml' },
]
const unfilled: Loadout = loadoutOf(kitIndex(items, supplies), [
  itemRow(1, 1),
  itemRow(2, 2),
  supplyRow(3, 1, { amountMilli: 1_400_000, amountFrom: 'brief' }),
  supplyRow(4, 2, { amountMilli: 100_000 }),
  supplyRow(5, 3, { amountMilli: 1_000_000, containerId: 2 }),
])
const loadout = withAmounts(unfilled, { brief: boxed, trip })
const [food, gas, water] = supplyLines(loadout)

describe('moments of a trip', () => {
  test('the trailhead, and each resupply of something carried', () => {
    expect(momentsOf(loadout, { brief: plain, trip })).toEqual([{ day: 0, what: 'trailhead' }])
    expect(momentsOf(loadout, { brief: boxed, trip })).toEqual([
      { day: 0, what: 'trailhead' },
      { day: 2, what: 'resupply' },
    ])
  })
  test('food falls to the box, fuel to the end, water is always full', () => {
    const at = (day: number) => [food!, gas!, water!].map((line) => amountAt(line, day, { brief: boxed, trip }))
    expect(at(0)).toEqual([1400, 100, 1000])
    expect(at(1)).toEqual([700, 75, 1000])
    expect(at(2)).toEqual([1400, 50, 1000])
    expect(at(3)).toEqual([700, 25, 1000])
  })
  test('at the trailhead it is the pack weight of the totals', () => {
    expect(packAt(loadout, { day: 0, what: 'trailhead' }, { brief: boxed, trip }).massMg).toBe(totalsOf(loadout).pack.massMg)
  })
  test('nothing of a typed amount grows on the way', () => {
    const day = fc.double({ min: 0, max: 3.99, noNaN: true })
    fc.assert(
      fc.property(
        day,
        day,
        (a, b) => amountAt(gas!, Math.max(a, b), { brief: plain, trip })! <= amountAt(gas!, Math.min(a, b), { brief: plain, trip })!,
      ),
    )
  })
  test('without days there is the trailhead alone, with everything as it is', () => {
    const entries = { brief: emptyBrief, trip: { startsOn: null, endsOn: null } }
    expect(heaviestPack(loadout, entries)).toMatchObject({ moment: { day: 0 }, sum: { massMg: totalsOf(loadout).pack.massMg } })
  })
  test('a box with more food than was started with makes the heaviest moment', () => {
    const later = { ...boxed, resupplies: [{ ...boxed.resupplies[0]!, day: 1, atM: 16_000 }] }
    const short: Loadout = { ...loadout, lines: loadout.lines.map((line) => (line === food ? { ...food, amount: 700 } : line)) }
    expect(heaviestPack(short, { brief: later, trip }).moment).toEqual({ day: 1, what: 'resupply' })
    // 800 + 40 + 1000 of kit and water, 75 g of gas left, three days of food
    expect(heaviestPack(short, { brief: later, trip }).sum.massMg).toBe((800 + 40 + 1000 + 75 + 2100) * 1000)
  })
})
