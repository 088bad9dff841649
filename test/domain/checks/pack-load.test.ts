import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { packLoad } from '../../../src-domain/checks/pack-load.ts'
import { totalsOf } from '../../../src-domain/loadout/totals.ts'
import { uncertainty } from '../../../src-domain/figures/figure.ts'
import type { TestItem } from '../loadout/kit.ts'
import { find, foundBy, kitOf } from './asking.ts'

const pack: TestItem = { name: 'Pack', area: 'carry', g: 800, duties: 'pack', traits: { 'comfortable-load': 10 } }
const kit = (g: number): readonly TestItem[] => [pack, { name: 'Kit', area: 'extras', g }]

describe('load on the pack', () => {
  // provisions.md 5: ≤ 0.9 of the comfortable load enough, ≤ 1.0 tight, above short. A pack of 800 g and the rest.
  test.each([
    [8100, 'enough'],
    [8250, 'tight'],
    [9150, 'tight'],
    [9210, 'short'],
  ] as const)('800 g of pack and %d g of kit are %s', (g, state) => {
    expect(foundBy(packLoad, { items: kit(g) }).state).toBe(state)
  })
  test('the reserve is a tenth of the comfortable load', () => {
    expect(foundBy(packLoad, { items: kit(8000) })).toMatchObject({ need: { value: 10 }, enough: { value: 9 }, wants: 'at most' })
  })
  test('have is the pack weight of the totals, its u half its band', () => {
    const { have } = foundBy(packLoad, { items: kit(5000) })
    const { pack: sum } = totalsOf(kitOf(kit(5000)))
    expect(have.value).toBeCloseTo(sum.massMg / 1e6, 9)
    expect(uncertainty(have)).toBeCloseTo(uncertainty(sum.figure) / 1000, 12)
  })
  test('a resupply of food heavier than the start makes the heaviest moment', () => {
    const supplies = [{ name: 'Food', area: 'food', rule: { per: 'day', amountMilli: 700_000 }, amountFrom: 'brief', amount: 700 }] as const
    const resupplies = [{ atM: 10_000, day: 1, name: 'shop', what: ['food' as const] }]
    const finding = foundBy(packLoad, { items: kit(5000), supplies, brief: { resupplies } })
    expect(finding.saying[0]).toMatchObject({ facts: { day: 1, what: 'resupply' } })
    expect(finding.have.value).toBeCloseTo(5.8 + 2.1, 9)
  })
  test('a pack without a figure is unknown, whatever its kind; a line without a mass too', () => {
    expect(find(packLoad, { items: [{ ...pack, traits: { 'pack-kind': 'framed' } }] })).toMatchObject({
      missing: { code: 'comfortable-load', facts: { name: 'Pack' } },
    })
    expect(find(packLoad, { items: [] })).toMatchObject({ missing: { code: 'pack' } })
    expect(find(packLoad, { items: [pack, { name: 'Unweighed', area: 'extras', g: null }] })).toMatchObject({
      missing: { code: 'mass', facts: { name: 'Unweighed' } },
    })
  })
  test('one gram more never improves it', () => {
    const rank = { short: 0, tight: 1, enough: 2 }
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 15_000 }),
        fc.integer({ min: 1, max: 2000 }),
        (g, more) => rank[foundBy(packLoad, { items: kit(g + more) }).state] <= rank[foundBy(packLoad, { items: kit(g) }).state],
      ),
    )
  })
})
