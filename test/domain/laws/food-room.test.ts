import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mustFitL, nightsCovered } from '../../../src-domain/laws/food-canister.ts'
import { foodDensities_kg_l, foodRoomL } from '../../../src-domain/laws/food-room.ts'
import { foodDays } from '../../../src-domain/laws/meals-counted.ts'
import { rows } from '../../published/food-room.ts'
import { meets } from '../../published/published.ts'

describe('published values', () => meets(rows))

const minute = fc.integer({ min: 0, max: 1439 })
const sum = (days: readonly number[]): number => days.reduce((all, one) => all + one, 0)

describe('food days', () => {
  test('a later start or an earlier end never needs more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), minute, minute, minute, minute, (days, s1, s2, e1, e2) => {
        const most = sum(foodDays(days, Math.min(s1, s2), Math.max(e1, e2)))
        return sum(foodDays(days, Math.max(s1, s2), Math.min(e1, e2))) <= most + 1e-12 && most <= days + 1e-12
      }),
    )
  })
  test('the changes stand at the minutes the rule names', () => {
    expect([foodDays(2, 419, 1439)[0], foodDays(2, 420, 1439)[0], foodDays(2, 840, 1439)[0], foodDays(2, 841, 1439)[0]].map(round)).toEqual(
      [1, 0.75, 0.75, 0.3],
    )
    expect([foodDays(2, 0, 659)[1], foodDays(2, 0, 660)[1], foodDays(2, 0, 1080)[1], foodDays(2, 0, 1081)[1]].map(round)).toEqual([
      0.25, 0.625, 0.625, 1,
    ])
  })
  test('a single day counts what both its start and its end allow', () => {
    // 09:00 to 17:00: lunch and half the snacks
    expect(round(foodDays(1, 540, 1020)[0])).toBe(0.375)
  })
})

describe('food room', () => {
  test('more food never takes less room', () => {
    const part = fc.record({ massKg: fc.double({ min: 0, max: 5, noNaN: true }), density_kg_l: fc.constantFrom(null, 0.2, 0.45, 1) })
    fc.assert(fc.property(fc.array(part), part, (parts, more) => foodRoomL([...parts, more]) >= foodRoomL(parts)))
  })
  test('a density of nothing counts as the mix, not as endless room', () => {
    expect(foodRoomL([{ massKg: 0.45, density_kg_l: 0 }])).toBeCloseTo(1, 12)
    expect(Math.min(...Object.values(foodDensities_kg_l))).toBeGreaterThan(0)
  })
})

describe('food canister', () => {
  const trip = { daysOfFood: 4.375, firstDay: 0.75, nights: 4, litresADay: 1.7, toiletriesL: 0.5, resupplies: [] }
  test('the first night is the fullest without a resupply', () => {
    const fits = mustFitL(trip)
    expect(fits).toHaveLength(4)
    expect(Math.max(...fits)).toBe(fits[0])
  })
  test('food bought on the way must fit on the night after it', () => {
    const fits = mustFitL({ ...trip, nights: 6, daysOfFood: 2.5, resupplies: [{ beforeNight: 3, days: 4 }] })
    expect(fits[2]).toBeCloseTo(4 * 1.7 + 0.5, 12)
  })
  test('more room never covers fewer nights, and no night asks for nothing', () => {
    const room = fc.double({ min: 0, max: 15, noNaN: true })
    fc.assert(
      fc.property(room, room, (a, b) => nightsCovered(Math.max(a, b), mustFitL(trip)) >= nightsCovered(Math.min(a, b), mustFitL(trip))),
    )
    expect(mustFitL({ ...trip, nights: 0 })).toEqual([])
    expect(nightsCovered(0, [])).toBe(0)
  })
})

const round = (value: number | undefined): number => Math.round((value ?? Number.NaN) * 1e9) / 1e9
