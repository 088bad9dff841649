import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { waterCarry } from '../../../src-domain/checks/water-carry.ts'
import { difference, uncertainty } from '../../../src-domain/figures/figure.ts'
import type { Brief, WaterSource } from '../../../src-domain/trips/brief.ts'
import { find, foundBy, leg } from './asking.ts'

const bottles = (litres: number, pieces = 1) =>
  [{ name: 'Bottle', area: 'water', g: 35, pieces, duties: 'water-vessel', traits: { 'water-capacity': litres } }] as const
/** 5 h at 0.70 l/h, moderate in full sun at 30 °C: 4.00 l, enough 4.60 (provisions.md 2.4). */
const dry: Partial<Brief> = { dryHours: 5, highC: 30 }
const source = (km: number, more: Partial<WaterSource> = {}): WaterSource => ({
  atM: km * 1000,
  name: `km ${km}`,
  sure: 'sure',
  safe: false,
  ...more,
})

describe('watered', () => {
  test('5 h at 0.70 l/h need 4.00 l, enough is 4.60', () => {
    const finding = foundBy(waterCarry, { items: bottles(5), brief: dry })
    expect(finding.need.value).toBeCloseTo(4, 9)
    expect(finding.enough.value).toBeCloseTo(4.6, 9)
  })
  test('u is 0.15 of what is drunk on foot, not of the spare', () => {
    const { have, need } = foundBy(waterCarry, { items: bottles(5), brief: dry })
    expect(uncertainty(difference('d', { name: 'have', figure: have }, { name: 'need', figure: need }))).toBeCloseTo(0.15 * 3.5, 6)
  })
  test.each([
    [3.9, 'short'],
    [4.0, 'tight'],
    [4.55, 'tight'],
    [4.6, 'enough'],
  ] as const)('%d l of room are %s', (litres, state) => {
    expect(foundBy(waterCarry, { items: bottles(litres), brief: dry }).state).toBe(state)
  })
  test('typed water counts where it is less than the vessels hold', () => {
    const supplies = [{ name: 'Water', area: 'water', unit: 'ml', amount: 3500, heldBy: 'Bottle' }] as const
    expect(foundBy(waterCarry, { items: bottles(5), supplies, brief: dry }).have.value).toBeCloseTo(3.5, 9)
    expect(foundBy(waterCarry, { items: bottles(3), supplies, brief: dry }).have.value).toBe(3)
  })
  test('without a vessel nothing is carried: short, not unknown', () => {
    expect(foundBy(waterCarry, { items: [], brief: dry }).state).toBe('short')
  })
  test('what is missing is named', () => {
    expect(find(waterCarry, { items: bottles(5), brief: { dryHours: null } })).toMatchObject({
      state: 'unknown',
      missing: { code: 'dry-hours' },
    })
    expect(find(waterCarry, { items: bottles(5), brief: { dryHours: 5, highC: null } })).toMatchObject({
      state: 'unknown',
      missing: { code: 'high' },
    })
    expect(find(waterCarry, { items: [{ name: 'Sack', area: 'water', g: 30, duties: 'water-vessel' }], brief: dry })).toMatchObject({
      state: 'unknown',
      missing: { facts: { name: 'Sack' } },
    })
    expect(find(waterCarry, { items: bottles(5), brief: { dryHours: 0 } })).toMatchObject({ state: 'not-asked' })
  })
  test('with sources the greatest stretch rules, and an unsure one is skipped', () => {
    // Four flat legs of 10 km at 4.13 km/h (walking.md 1.1), 12 °C moderate: between 0.40 at 10 and 0.45 at 15 °C, 0.42 l/h.
    const sources = [source(4), source(10), source(18), source(20), source(30)]
    const sure = foundBy(waterCarry, { items: bottles(3), brief: { sources } })
    expect(sure.need.value).toBeCloseTo((10 / 4.13) * 0.42 + 0.5, 2) // km 20 to 30, or 30 to 40
    const skipped = foundBy(waterCarry, {
      items: bottles(3),
      brief: { sources: [source(4), source(10, { sure: 'unsure' }), source(18), source(20), source(30)] },
    })
    // km 4 to 18 with a dry camp at 10: 14 km and 1.5 l
    expect(skipped.need.value).toBeCloseTo((14 / 4.13) * 0.42 + 1.5 + 0.5, 2)
    expect(skipped.saying[0]).toMatchObject({ code: 'dry-stretch', facts: { fromM: 4000, toM: 18_000, dryCamps: 1 } })
  })
  test('cooking belongs to a dry camp', () => {
    const meals = { boilsPerDay: 2, litresPerBoil: 0.5, coldDays: [], hotBreakfast: false, eatenOutKcal: 0 }
    const plain = foundBy(waterCarry, { items: bottles(3), brief: { dryHours: 2, dryCamps: 1 } })
    expect(
      foundBy(waterCarry, { items: bottles(3), brief: { dryHours: 2, dryCamps: 1, meals } }).need.value - plain.need.value,
    ).toBeCloseTo(1, 9)
  })
  test('a likely source no longer counts where water is protected', () => {
    const sources = [source(10), source(20, { sure: 'likely' }), source(30)]
    const need = (rules: Brief['rules']) => foundBy(waterCarry, { items: bottles(3), brief: { sources, rules } }).need.value
    expect(need(['protected-water'])).toBeGreaterThan(need([]))
  })
  test('more room for water never leaves one drier', () => {
    const rank = { short: 0, tight: 1, enough: 2 }
    const litres = fc.double({ min: 0.2, max: 9, noNaN: true })
    fc.assert(
      fc.property(litres, litres, fc.double({ min: 0.5, max: 10, noNaN: true }), (a, b, dryHours) => {
        const state = (l: number) => rank[foundBy(waterCarry, { items: bottles(l), brief: { ...dry, dryHours } }).state]
        return state(Math.max(a, b)) >= state(Math.min(a, b))
      }),
    )
  })
  test('a leg that lacks its climb is named', () => {
    expect(
      find(waterCarry, { items: bottles(3), brief: { sources: [source(3)], legs: [leg(1), leg(2, { climbM: null })] } }),
    ).toMatchObject({ state: 'unknown', missing: { code: 'leg-climb', facts: { leg: 2 } } })
  })
})
