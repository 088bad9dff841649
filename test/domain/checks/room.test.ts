import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { room } from '../../../src-domain/checks/room.ts'
import { uncertainty } from '../../../src-domain/figures/figure.ts'
import type { TestItem } from '../loadout/kit.ts'
import { find, foundBy } from './asking.ts'

const pack = (litres: number): TestItem => ({ name: 'Pack', area: 'carry', g: 800, duties: 'pack', traits: { 'pack-volume': litres } })
const quilt: TestItem = { name: 'Quilt', area: 'sleep', g: 600, duties: 'top-insulation', traits: { fill: 'down' } }
const stuffed: TestItem = { name: 'Shelter', area: 'shelter', g: 500, duties: 'shelter', traits: { 'packed-volume': 3.5 } }
const food = (amount: number) => [{ name: 'Food', area: 'food', amount }] as const

describe('room in the pack', () => {
  test('600 g of down take 6 l, a stuffed shelter its own 3.5, 0.45 kg of food a litre', () => {
    // provisions.md 5 and 3: 0.10 kg/l, 0.45 kg/l, soft gear fills 0.95
    const finding = foundBy(room, { items: [pack(40), quilt, stuffed], supplies: food(450) })
    expect(finding.need.value).toBeCloseTo((6 + 3.5 + 1) / 0.95, 9)
    expect(finding.enough.value / finding.need.value).toBeCloseTo(1.05, 9)
    expect(finding.have.value).toBe(40)
    expect(finding.state).toBe('enough')
  })
  test('u: a claimed pack 10 % and a class 30 % as rectangles, a stuffed volume 5 %', () => {
    const finding = foundBy(room, { items: [pack(40), quilt, stuffed] })
    expect(uncertainty(finding.have)).toBeCloseTo(4 / Math.sqrt(3), 9)
    expect(uncertainty(finding.need)).toBeCloseTo(Math.hypot((6 * 0.3) / Math.sqrt(3), 3.5 * 0.05) / 0.95, 9)
  })
  test('outside, nested, worn and the pack itself count nothing', () => {
    const plain = foundBy(room, { items: [pack(40), quilt] }).need.value
    const items = [
      pack(40),
      quilt,
      { ...stuffed, name: 'Outside', traits: { 'packed-volume': 9, stowed: 'outside' } },
      { ...stuffed, name: 'Nested', traits: { 'packed-volume': 9, stowed: 'nested' } },
    ]
    expect(foundBy(room, { items }).need.value).toBeCloseTo(plain, 9)
  })
  test('a gas canister counts by its outside, its gas nothing', () => {
    const can: TestItem = { name: 'Can', area: 'kitchen', g: 100, duties: 'fuel-holder', traits: { 'net-full': 110 } }
    const gas = [{ name: 'Gas', area: 'kitchen', amount: 110, heldBy: 'Can' }] as const
    expect(foundBy(room, { items: [pack(40), can], supplies: gas }).need.value).toBeCloseTo(0.33 / 0.95, 9)
  })
  test('with a hard box things fill less, and the food in it adds nothing', () => {
    const box: TestItem = { name: 'Box', area: 'food', g: 900, traits: { 'hard-canister': 7 } }
    const inBox = [{ name: 'Food', area: 'food', amount: 2000, heldBy: 'Box' }] as const
    expect(foundBy(room, { items: [pack(60), box], supplies: inBox }).need.value).toBeCloseTo((7 * 1.1) / 0.85, 9)
  })
  test('the fullest moment may be after a resupply', () => {
    const supplies = [{ name: 'Food', area: 'food', amountFrom: 'typed', amount: 900 }] as const
    const resupplies = [{ atM: 10_000, day: 1, name: 'shop', what: ['food' as const] }]
    expect(foundBy(room, { items: [pack(40), quilt], supplies, brief: { resupplies } }).saying[0]).toMatchObject({
      facts: { day: 0, what: 'trailhead' },
    })
  })
  test('what is missing is named', () => {
    expect(find(room, { items: [quilt] })).toMatchObject({ missing: { code: 'pack' } })
    expect(find(room, { items: [{ ...pack(1), traits: {} }, quilt] })).toMatchObject({
      missing: { code: 'pack-volume', facts: { name: 'Pack' } },
    })
    expect(find(room, { items: [pack(40), { ...quilt, g: null }] })).toMatchObject({
      missing: { code: 'packed-volume', facts: { name: 'Quilt' } },
    })
  })
  test('one more thing never leaves more room, a bigger pack never less', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 80 }),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 50, max: 3000 }),
        (litres, more, g) => {
          const base = foundBy(room, { items: [pack(litres), quilt] })
          const heavier = foundBy(room, { items: [pack(litres), quilt, { ...stuffed, g, traits: {} }] })
          return heavier.need.value > base.need.value && foundBy(room, { items: [pack(litres + more), quilt] }).have.value > base.have.value
        },
      ),
      { numRuns: 40 },
    )
  })
})
