import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { kitAreas, lanes, type MassOrigin } from '../../../src-domain/closet/vocabulary.ts'
import { band, uncertainty } from '../../../src-domain/figures/figure.ts'
import type { Loadout } from '../../../src-domain/loadout/loadout.ts'
import { stripOf } from '../../../src-domain/loadout/strip.ts'
import { totalsOf, type Sum } from '../../../src-domain/loadout/totals.ts'
import { withLine } from '../../../src-domain/loadout/whatif.ts'
import { meets } from '../../published/published.ts'
import { rows } from '../../published/kit-sum.ts'
import { itemRow, kitIndex, loadoutOf, loadoutOfAll, type TestItem } from './kit.ts'
import { polePitched, skarnItem, tarp, twoSkin } from './skarn.ts'

meets(rows)

const kg = (sum: Sum) => (sum.figure.value / 1000).toFixed(2)
const bandKg = (sum: Sum) => (band(sum.figure) / 1000).toFixed(2)

// Figures of LOOK.md, "Demo trip", and of compare.html; they were recomputed there from the item masses.
describe('the demo trip', () => {
  const totals = totalsOf(polePitched)
  test.each([
    ['worn weight', totals.worn, '1.42', '0.00'],
    ['base weight', totals.base, '4.31', '0.05'],
    ['consumables', totals.consumables, '2.94', '0.11'],
    ['pack weight', totals.pack, '7.25', '0.12'],
    ['skin-out weight', totals.skinOut, '8.67', '0.12'],
    ['Shelter + Sleep + Carry', totals.named[0]!, '2.41', '0.03'],
  ] as const)('%s', (_, sum, value, bandOf) => expect([kg(sum), bandKg(sum)]).toEqual([value, bandOf]))

  test.each([
    ['on_me', 'clothing', 442, 2],
    ['on_me', 'footwear', 610, 2],
    ['in_pack', 'shelter', 644, 4],
    ['in_pack', 'sleep', 970, 25],
    ['in_pack', 'clothing', 743, 22],
    ['in_pack', 'kitchen', 298, 2],
    ['in_pack', 'water', 144, 2],
    ['in_pack', 'light_power', 234, 2],
    ['in_pack', 'wayfinding', 262, 2],
    ['in_pack', 'care', 221, 21],
    ['used_up', 'food', 1284, 3],
  ] as const)('%s, %s: %i g ±%i', (lane, area, massG, bandG) => {
    const sum = totals.areas.find((one) => one.lane === lane && one.area === area)!
    expect([sum.figure.value, Math.round(band(sum.figure))]).toEqual([massG, bandG])
  })

  test('one is wished for, and what Mira carries weighs nothing', () => {
    expect(totals.pack.wished).toBe(1)
    expect(totals.areas.find((one) => one.area === 'extras')!.figure.value).toBe(0)
    expect(totals.pack.withoutMass).toEqual([])
  })

  test('what the sheet rests on: 73, 8, 17 and 2 of 100', () => {
    const { measured, claimed, brief, estimated } = totals.rests
    expect([measured, claimed, brief, estimated].map((share) => Math.round(100 * share))).toEqual([73, 8, 17, 2])
  })

  test.each([
    ['Two-skin tent', twoSkin, '5.29', '8.23'],
    ['Tarp and bivouac bag', tarp, '3.32', '6.16'],
  ] as const)('%s', (_, loadout, base, pack) => {
    const other = totalsOf(loadout)
    expect([kg(other.base), kg(other.pack)]).toEqual([base, pack])
  })

  test('with the rain kilt: 4.37, 7.31 and 8.73 kg, and nothing is kept', () => {
    const would = totalsOf(withLine(polePitched, skarnItem('Rain kilt'), 'in_pack'))
    expect([would.base, would.pack, would.skinOut].map(kg)).toEqual(['4.37', '7.31', '8.73'])
    expect(kg(totalsOf(polePitched).pack)).toBe('7.25')
  })

  test('a total opens to its parts, and a line of eight to one piece and its weighing', () => {
    const parts = totals.base.figure.working!.given
    const stakes = parts.find(({ name }) => name === 'Stakes')!.figure
    expect([parts.length, stakes.value, stakes.working!.formula]).toEqual([22, 84, '8 × one piece'])
    expect(stakes.working!.given[0]!.figure.from).toBe('weighed 2025-10-08')
    expect(totals.skinOut.figure.working!.given.map(({ name }) => name)).toEqual(['pack weight', 'worn weight'])
  })

  test('gas in its can is known as well as the one reading of both', () => {
    const canister = Object.keys(skarnItem('Fuel canister').mass!.shares).find((leaf) => leaf.startsWith('weighing:'))!
    const share = (sum: Sum) => sum.figure.shares[canister]
    expect([share(totals.base), share(totals.consumables), share(totals.pack)]).toEqual([0.65, -0.65, 0])
  })
})

describe('a mass that is not known', () => {
  const items: readonly TestItem[] = [
    { name: 'Jacket', area: 'clothing', g: null },
    { name: 'Shirt', area: 'clothing', g: 168 },
  ]
  const totals = totalsOf(loadoutOfAll(items))
  test('is counted and named, in the total, its area and the working', () => {
    expect(totals.base.withoutMass).toEqual(['Jacket'])
    expect(totals.skinOut.withoutMass).toEqual(['Jacket'])
    expect(totals.areas[0]!.withoutMass).toEqual(['Jacket'])
    expect(totals.skinOut.figure.working!.cautions).toEqual(['1 without a mass: Jacket'])
    expect(totals.base.figure.value).toBe(168)
  })
  test('an empty loadout rests on nothing', () => {
    expect(totalsOf({ name: '', lines: [] }).rests).toEqual({ measured: 0, claimed: 0, brief: 0, estimated: 0 })
  })
})

const anyItem = fc.record({
  name: fc.string({ maxLength: 4 }),
  area: fc.constantFrom(...kitAreas),
  g: fc.option(fc.integer({ min: 0, max: 3_000_000 }).map((mg) => mg / 1000)),
  from: fc.constantFrom<MassOrigin>('measured', 'claimed', 'estimated'),
  pieces: fc.integer({ min: 1, max: 12 }),
  lane: fc.constantFrom(...lanes),
  carriedBy: fc.constantFrom('', '', '', 'Mira'),
})
type AnyItem = typeof anyItem extends fc.Arbitrary<infer T> ? T : never
const rowsOf = (items: readonly AnyItem[]) =>
  items.map(({ lane, pieces, carriedBy }, i) => itemRow(i + 1, i + 1, { lane, pieces, carriedBy }))
const anyLoadout = fc.array(anyItem, { maxLength: 40 }).map((items): { items: readonly AnyItem[]; loadout: Loadout } => ({
  items,
  loadout: loadoutOf(kitIndex(items), rowsOf(items)),
}))
const mgOf = ({ g, pieces, carriedBy }: AnyItem) => (g === null || carriedBy !== '' ? 0 : Math.round(g * 1000) * pieces)

test('areas add up to their lane, and lanes to the whole, to the milligram of an independent sum', () => {
  fc.assert(
    fc.property(anyLoadout, ({ items, loadout }) => {
      const totals = totalsOf(loadout)
      const laneMg = (lane: string) => items.filter((item) => item.lane === lane).reduce((sum, item) => sum + mgOf(item), 0)
      const areaMg = (lane: string) => totals.areas.filter((one) => one.lane === lane).reduce((sum, one) => sum + one.massMg, 0)
      expect([totals.worn.massMg, totals.base.massMg, totals.consumables.massMg]).toEqual(lanes.map(laneMg))
      expect(lanes.map(areaMg)).toEqual(lanes.map(laneMg))
      expect(totals.skinOut.massMg).toBe(items.reduce((sum, item) => sum + mgOf(item), 0))
      expect(totals.skinOut.figure.value).toBe(totals.skinOut.massMg / 1000)
    }),
  )
})

test('the order of lines changes nothing', () => {
  const shuffled = anyLoadout.chain(({ loadout }) =>
    fc.shuffledSubarray([...loadout.lines], { minLength: loadout.lines.length }).map((lines) => [loadout, { ...loadout, lines }] as const),
  )
  fc.assert(
    fc.property(shuffled, ([one, other]) => {
      const [a, b] = [totalsOf(one), totalsOf(other)]
      for (const name of ['worn', 'base', 'consumables', 'pack', 'skinOut'] as const) {
        expect(a[name].massMg).toBe(b[name].massMg)
        // Shares are floating sums: equal to a billionth of a gram.
        expect(Math.abs(uncertainty(a[name].figure) - uncertainty(b[name].figure))).toBeLessThan(1e-9)
        expect(a[name].wished).toBe(b[name].wished)
      }
      expect(a.areas.map(({ lane, area, massMg }) => [lane, area, massMg])).toEqual(
        b.areas.map(({ lane, area, massMg }) => [lane, area, massMg]),
      )
    }),
  )
})

test('the doubt is that of the formula of provisions.md 9.3, worked apart', () => {
  fc.assert(
    fc.property(anyLoadout, ({ items, loadout }) => {
      const carried = items.filter((item) => item.g !== null && item.carriedBy === '')
      const sumG = (from: MassOrigin) => carried.filter((item) => item.from === from).reduce((sum, item) => sum + item.g! * item.pieces, 0)
      const own = (item: AnyItem) => (item.from === 'measured' ? 0.65 : (item.from === 'claimed' ? 0.03 : 0.1) * item.g! * item.pieces)
      const squares = carried.reduce((sum, item) => sum + own(item) ** 2, 0)
      const u = Math.sqrt(squares + (0.0008 * sumG('measured')) ** 2 + (0.02 * sumG('claimed')) ** 2 + (0.05 * sumG('estimated')) ** 2)
      expect(Math.abs(uncertainty(totalsOf(loadout).skinOut.figure) - u)).toBeLessThan(1e-6 * (1 + u))
    }),
  )
})

test('a mass not known never makes a total read less without a word', () => {
  fc.assert(
    fc.property(anyLoadout, fc.constantFrom(...lanes), ({ items, loadout }, lane) => {
      const dark = kitIndex([{ name: 'dark', area: 'extras', g: null }]).item(1)!
      const [before, after] = [totalsOf(loadout), totalsOf(withLine(loadout, { ...dark, uid: 'dark' }, lane))]
      expect(after.skinOut.massMg).toBe(before.skinOut.massMg)
      expect(after.skinOut.withoutMass).toHaveLength(before.skinOut.withoutMass.length + 1)
      const unknown = items.filter((item) => item.g === null && item.carriedBy === '').length
      expect(before.skinOut.withoutMass).toHaveLength(unknown)
    }),
  )
})

test('the strip is as long as the skin-out weight and has no gaps', () => {
  fc.assert(
    fc.property(anyLoadout, ({ loadout }) => {
      const totals = totalsOf(loadout)
      const ends = stripOf(totals, [])
        .segments.flatMap(({ fromG, toG }) => [fromG, toG])
        .sort((a, b) => a - b)
      const lengthMg = ends.length === 0 ? 0 : Math.round((ends.at(-1)! - ends[0]!) * 1000)
      expect(lengthMg).toBe(totals.skinOut.massMg)
      for (let i = 1; i + 1 < ends.length; i += 2) expect(ends[i]).toBe(ends[i + 1])
    }),
  )
})
