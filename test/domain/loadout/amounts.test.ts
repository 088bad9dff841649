import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { amountByBrief, capacityOf, portions, withAmounts, type BriefEntries } from '../../../src-domain/loadout/amounts.ts'
import { supplyLines, type SupplyLine } from '../../../src-domain/loadout/loadout.ts'
import { lineMass } from '../../../src-domain/loadout/mass.ts'
import { emptyBrief, type Brief, type Leg } from '../../../src-domain/trips/brief.ts'
import { itemRow, kitIndex, loadoutOf, supplyRow, type TestItem, type TestSupply } from './kit.ts'

const vessels: readonly TestItem[] = [
  { name: 'Bottle', area: 'water', g: 38, pieces: 2, traits: { 'water-capacity': 1 } },
  { name: 'Can', area: 'kitchen', g: 98, traits: { 'net-full': 100 } },
  { name: 'Box', area: 'food', g: 900, traits: { 'hard-canister': 7 } },
]

const leg = (day: number, lengthM: number | null): Leg => ({
  day,
  name: '',
  lengthM,
  climbM: null,
  descentM: null,
  terrain: 'path',
  endHeightM: null,
  camp: true,
})

/** The demo trip of LOOK.md: 9 to 12 October, a food box at km 34, the end of the second day. */
const october: BriefEntries['trip'] = { startsOn: '2025-10-09', endsOn: '2025-10-12' }
const ridge: Brief = {
  ...emptyBrief,
  legs: [leg(1, 16_000), leg(2, 18_000), leg(3, 15_000), leg(4, 13_000)],
  resupplies: [{ atM: 34_000, day: 2, name: 'Askel hut', what: ['food'] }],
}

function lineOf(supply: TestSupply, more: Parameters<typeof supplyRow>[2] = {}): SupplyLine {
  return supplyLines(loadoutOf(kitIndex(vessels, [supply]), [supplyRow(1, 1, { amountFrom: 'brief', ...more })]))[0]!
}
const said = (supply: TestSupply, entries: Partial<BriefEntries> = {}) =>
  amountByBrief(lineOf(supply), { brief: ridge, trip: october, ...entries })
const per = (per: NonNullable<TestSupply['rule']>['per'], amountMilli: number, more: Partial<TestSupply> = {}): TestSupply => ({
  name: 'supply',
  area: 'care',
  unit: 'piece',
  rule: { per, amountMilli },
  ...more,
})

describe('a rule times how often the brief poses it', () => {
  test('tablets per day over four days', () => expect(said(per('day', 2000)).amount).toBe(8))
  test('per night over three nights', () => expect(said(per('night', 1000)).amount).toBe(3))
  test('nights out as typed', () => expect(said(per('night', 1000), { brief: { ...ridge, nightsOut: 2 } }).amount).toBe(2))
  test('once a trip', () => expect(said(per('trip', 1000)).amount).toBe(1))
  test('per litre drawn', () => expect(said(per('litre', 1000), { litres: 9.2 }).amount).toBe(10))
  test('per boil, cold days left out', () => {
    const meals = { ...emptyBrief.meals, boilsPerDay: 2, coldDays: [4] }
    const boils = said(per('boil', 15_000, { unit: 'g', area: 'kitchen' }), { brief: { ...ridge, meals } })
    expect([boils.times, boils.amount]).toEqual([6, 90])
  })
  test('one driest stretch, however many', () => {
    const sources = [7, 16, 23, 34].map((km) => ({ atM: km * 1000, name: '', sure: 'sure' as const, safe: false }))
    expect(said(per('stretch', 1500_000, { unit: 'ml', area: 'water' }), { brief: { ...ridge, sources } }).amount).toBe(1500)
    expect(said(per('stretch', 1500_000, { unit: 'ml' }), { brief: { ...ridge, dryHours: 0 } }).amount).toBe(0)
  })
})

describe('food is carried to the next food box', () => {
  const food = per('day', 1000, { area: 'food', gPerUnit: 642, from: 'measured' })
  test('two bags of 642 g to km 34, as the demo trip has it', () => {
    const full = withAmounts(loadoutOf(kitIndex(vessels, [food]), [supplyRow(1, 1, { amountFrom: 'brief' })]), {
      brief: ridge,
      trip: october,
    })
    expect(lineMass(full.lines[0]!)!.value).toBe(1284)
  })
  test('and two from there on', () => {
    expect(portions(lineOf(food), { brief: ridge, trip: october }).map(({ fromDay, toDay, amount }) => [fromDay, toDay, amount])).toEqual([
      [0, 2, 2],
      [2, 4, 2],
    ])
  })
  test('a box in the middle of a day splits that day, rounded up to the bag', () => {
    const brief = { ...ridge, resupplies: [{ atM: 25_000, day: 2, name: '', what: ['food' as const] }] }
    expect(portions(lineOf(food), { brief, trip: october }).map(({ amount }) => amount)).toEqual([2, 3])
    const grams = per('day', 600_000, { area: 'food', unit: 'g' })
    expect(portions(lineOf(grams), { brief, trip: october }).map(({ amount }) => amount)).toEqual([900, 1500])
  })
  test('a box on a leg without a length is taken at the end of its day', () => {
    const brief = { ...ridge, legs: [leg(1, 16_000), leg(2, null)] }
    expect(said(food, { brief }).amount).toBe(2)
  })
  test('what no resupply renews is carried whole', () => expect(said(per('day', 2000)).times).toBe(4))
})

describe('a brief never guesses', () => {
  const nothing = { brief: emptyBrief, trip: { startsOn: null, endsOn: null } }
  test.each([
    ['day', 'dates'],
    ['night', 'dates'],
  ] as const)('per %s without dates names them', (rule, missing) => {
    expect(said(per(rule, 1000), nothing)).toMatchObject({ amount: null, missing })
  })
  test('per boil without boils', () => expect(said(per('boil', 1000))).toMatchObject({ amount: null, missing: 'boils' }))
  test('per litre without the litres', () => expect(said(per('litre', 1000))).toMatchObject({ amount: null, missing: 'litres' }))
  test('per stretch without a word of water', () => expect(said(per('stretch', 1000))).toMatchObject({ amount: null, missing: 'stretch' }))
  test('without a rule', () => expect(said({ name: 'x', area: 'care' })).toMatchObject({ amount: null, missing: 'rule' }))
  test('without a rule but asked by a check', () => {
    expect(said({ name: 'x', area: 'kitchen' }, { asked: new Map([[1, 106.8]]) }).amount).toBe(106.8)
  })
  test('a season without dates but with nights counts them', () => {
    const brief = { ...emptyBrief, nightsOut: 3 }
    expect(said(per('night', 1000), { ...nothing, brief }).amount).toBe(3)
    expect(said(per('day', 1000), { ...nothing, brief }).amount).toBe(4)
  })
})

describe('never over what the container holds', () => {
  const water = per('stretch', 2_500_000, { unit: 'ml', gPerUnit: 0.998, area: 'water' })
  const brief = { ...ridge, dryHours: 4 }
  const bottled = (pieces: number) =>
    loadoutOf(kitIndex(vessels, [water]), [itemRow(1, 1, { pieces }), supplyRow(2, 1, { amountFrom: 'brief', containerId: 1 })])
  test.each([
    [1, 1000, true],
    [2, 2000, true],
    [3, 2500, false],
  ])('%i bottles of a litre', (pieces, amount, capped) => {
    const loadout = bottled(pieces)
    const line = supplyLines(loadout)[0]!
    expect(amountByBrief(line, { brief, trip: october }, loadout)).toMatchObject({ capped })
    expect(amountByBrief(line, { brief, trip: october }, loadout).amount).toBeCloseTo(amount, 9)
  })
  test('a can holds its net contents', () => expect(capacityOf(lineOf({ name: 'Gas', area: 'kitchen' }, { containerId: 2 }))).toBe(100))
  test('a box holds its litres at the density of the food', () => {
    const dense = { name: 'Food', area: 'food' as const, traits: { 'bulk-density': 0.45 } }
    expect(capacityOf(lineOf(dense, { containerId: 3 }))).toBeCloseTo(3150, 9)
    expect(capacityOf(lineOf({ name: 'Food', area: 'food' }, { containerId: 3 }))).toBeNull()
  })
})

test('a typed amount stands, and what the brief would say stays beside it', () => {
  const food = per('day', 1000, { area: 'food' })
  const loadout = loadoutOf(kitIndex(vessels, [food]), [supplyRow(1, 1, { amountFrom: 'typed', amountMilli: 5000 })])
  const filled = withAmounts(loadout, { brief: ridge, trip: october })
  expect(filled.lines[0]).toBe(loadout.lines[0])
  expect(amountByBrief(supplyLines(filled)[0]!, { brief: ridge, trip: october }).amount).toBe(2)
})

const anyRule = fc.record({
  per: fc.constantFrom('day', 'night', 'boil', 'litre', 'trip', 'stretch'),
  amountMilli: fc.integer({ min: 0, max: 2_000_000 }),
})
const anyBrief = fc.record({
  days: fc.integer({ min: 1, max: 20 }),
  at: fc.integer({ min: 0, max: 200_000 }),
  boils: fc.integer({ min: 0, max: 5 }),
  litres: fc.double({ min: 0, max: 60, noNaN: true }),
})
const entriesOf = (
  { days, at, boils, litres }: { days: number; at: number; boils: number; litres: number },
  resupplied: boolean,
): BriefEntries => ({
  trip: { startsOn: '2026-07-01', endsOn: `2026-07-${String(days).padStart(2, '0')}` },
  litres,
  brief: {
    ...emptyBrief,
    dryHours: 3,
    legs: Array.from({ length: days }, (_, i) => leg(i + 1, 10_000)),
    meals: { ...emptyBrief.meals, boilsPerDay: boils },
    resupplies: resupplied ? [{ atM: at, day: Math.min(days, 1 + Math.floor(at / 10_000)), name: '', what: ['food'] }] : [],
  },
})

test('the portions between resupplies make up the whole', () => {
  fc.assert(
    fc.property(anyRule, anyBrief, (rule, brief) => {
      const line = lineOf({ name: 'x', area: 'food', unit: 'g', rule })
      const whole = amountByBrief(line, entriesOf(brief, false)).amount!
      const parts = portions(line, entriesOf(brief, true))
      const sum = parts.reduce((total, part) => total + part.amount!, 0)
      // Each part may be rounded up by a thousandth; a stretch is filled anew after each resupply.
      const expected = rule.per === 'stretch' ? whole * parts.length : whole
      expect(Math.abs(sum - expected)).toBeLessThanOrEqual(0.003)
    }),
  )
})

test('pieces are whole and never fewer than the rule asks', () => {
  fc.assert(
    fc.property(anyRule, anyBrief, (rule, brief) => {
      const { amount, times } = amountByBrief(lineOf({ name: 'x', area: 'food', unit: 'piece', rule }), entriesOf(brief, true))
      expect(Number.isInteger(amount)).toBe(true)
      expect(amount! + 1e-6).toBeGreaterThanOrEqual((rule.amountMilli / 1000) * times!)
      expect(amount!).toBeLessThan((rule.amountMilli / 1000) * times! + 1)
    }),
  )
})
