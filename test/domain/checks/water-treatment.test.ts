import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { waterTreatment } from '../../../src-domain/checks/water-treatment.ts'
import type { Brief, WaterSource } from '../../../src-domain/trips/brief.ts'
import { find, foundBy } from './asking.ts'

const source = (km: number, safe: boolean): WaterSource => ({ atM: km * 1000, name: `km ${km}`, sure: 'sure', safe })
const filter = (litres: number | null) =>
  [
    {
      name: 'Filter',
      area: 'water',
      g: 60,
      duties: 'water-treatment',
      traits: litres === null ? { 'treatment-kind': 'filter' } : { 'treatment-kind': 'filter', treats: litres },
    },
  ] as const
const tablets = (pieces: number) =>
  [
    { name: 'Tablets', area: 'water', unit: 'piece', gPerUnit: 0.4, traits: { treats: 1, 'treatment-kind': 'chlorine' }, amount: pieces },
  ] as const
/** From km 10 on all is drawn untreated: three legs of 10 km, three camps at sources. */
const wild: Partial<Brief> = { sources: [source(10, false), source(20, false), source(30, false)] }

describe('safe water', () => {
  test('what is drawn: the hours after the first source, and the camps', () => {
    const { need, enough } = foundBy(waterTreatment, { items: filter(1000), brief: wild })
    // 30 km at 4.13 km/h and 0.42 l/h (12 °C, moderate), three camps of 1.5 l
    expect(need.value).toBeCloseTo((30 / 4.13) * 0.42 + 3 * 1.5, 2)
    expect(enough.value / need.value).toBeCloseTo(1.15, 9)
  })
  test('a safe source takes its stretch and its camp out', () => {
    const tap = foundBy(waterTreatment, {
      items: filter(1000),
      brief: { sources: [source(10, false), source(20, true), source(30, false)] },
    })
    expect(tap.need.value).toBeCloseTo((20 / 4.13) * 0.42 + 2 * 1.5, 2)
  })
  test('all safe is not asked; no sources said means all of it', () => {
    expect(find(waterTreatment, { brief: { sources: [source(10, true)] } })).toMatchObject({ state: 'not-asked' })
    expect(foundBy(waterTreatment, { items: filter(1000), brief: { sources: [] } }).need.value).toBeCloseTo((40 / 4.13) * 0.42 + 3 * 1.5, 2)
  })
  test('tablets treat a litre each as the label says', () => {
    expect(foundBy(waterTreatment, { supplies: tablets(7), brief: wild }).state).toBe('short')
    expect(foundBy(waterTreatment, { supplies: tablets(10), brief: wild })).toMatchObject({ state: 'enough', have: { value: 10 } })
  })
  test('boiling counts the brief’s boils', () => {
    const items = [{ name: 'Pot', area: 'kitchen', g: 120, traits: { 'treatment-kind': 'boil' } }] as const
    const meals = { boilsPerDay: 3, litresPerBoil: 1, coldDays: [2], hotBreakfast: false, eatenOutKcal: 0 }
    expect(foundBy(waterTreatment, { items, brief: { ...wild, meals } }).have.value).toBe(9)
  })
  test('no means at all is short; a means that does not say how much is unknown', () => {
    expect(foundBy(waterTreatment, { brief: wild })).toMatchObject({ state: 'short', saying: [{ code: 'nothing-treats-water' }] })
    expect(find(waterTreatment, { items: filter(null), brief: wild })).toMatchObject({
      state: 'unknown',
      missing: { facts: { name: 'Filter' } },
    })
  })
  test('cautions name what the means does not stop', () => {
    expect(foundBy(waterTreatment, { supplies: tablets(9), brief: wild }).cautions.join(' ')).toContain('Cryptosporidium')
    expect(foundBy(waterTreatment, { items: filter(500), brief: wild }).cautions.join(' ')).toContain('frozen wet')
  })
  test('more tablets never make it worse', () => {
    const rank = { short: 0, tight: 1, enough: 2 }
    fc.assert(
      fc.property(fc.nat({ max: 30 }), fc.nat({ max: 10 }), (a, more) => {
        const state = (n: number) => rank[foundBy(waterTreatment, { supplies: tablets(n), brief: wild }).state]
        return state(a + more) >= state(a)
      }),
    )
  })
})
