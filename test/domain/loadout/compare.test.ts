import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findAll } from '../../../src-domain/checks/index.ts'
import { kitAreas, lanes, type MassOrigin } from '../../../src-domain/closet/vocabulary.ts'
import { band, uncertainty } from '../../../src-domain/figures/figure.ts'
import { checkRows, compareLoadouts } from '../../../src-domain/loadout/compare.ts'
import type { Loadout } from '../../../src-domain/loadout/loadout.ts'
import { netOf } from '../../../src-domain/loadout/net.ts'
import { totalsOf, weighed } from '../../../src-domain/loadout/totals.ts'
import { withMove, withoutLines } from '../../../src-domain/loadout/whatif.ts'
import { itemRow, kitIndex, loadoutOf, supplyRow } from './kit.ts'
import { polePitched, skarnBrief, skarnTrip, skarnWalker, tarp, twoSkin } from './skarn.ts'

// Figures of compare.html: A pole-pitched, B two-skin tent, C tarp and bivouac bag; grams, bands 2u of what differs alone.
describe('the three loadouts of the mock', () => {
  const compared = compareLoadouts([polePitched, twoSkin, tarp])
  const area = (code: string) => compared.areas.find((row) => row.area === code)!
  test.each([
    ['shelter', [644, 1227, 563], 583, 4, -81, 4],
    ['sleep', [970, 1198, 801], 228, 2, -169, 25],
    ['carry', [792, 792, 436], 0, 0, -356, 2],
    ['clothing', [743, 914, 659], 171, 1, -84, 2],
    ['kitchen', [298, 298, null], 0, 0, -298, 2],
    ['water', [144, 144, 144], 0, 0, 0, 0],
    ['care', [221, 221, 221], 0, 0, 0, 0],
  ] as const)('%s', (code, sums, b, bandB, c, bandC) => {
    const row = area(code)
    expect(row.sums.map((sum) => sum?.figure.value ?? null)).toEqual(sums)
    const [none, toB, toC] = row.differences
    expect(none).toBeNull()
    expect([toB, toC].map((net) => [net!.figure.value, Math.round(band(net!.figure))])).toEqual([
      [b, bandB],
      [c, bandC],
    ])
  })
  test.each([
    ['base', 982, 5, -988, 27],
    ['worn', 0, 0, 0, 0],
    ['skinOut', 982, 5, -1088, 27],
  ] as const)('%s', (name, b, bandB, c, bandC) => {
    const [, toB, toC] = compared[name].differences
    expect([toB, toC].map((net) => [net!.figure.value, Math.round(band(net!.figure))])).toEqual([
      [b, bandB],
      [c, bandC],
    ])
  })
  test('consumables: the gas alone, known as well as a reading and an empty can', () => {
    const [, toB, toC] = compared.consumables.differences
    expect([toB!.same, toC!.figure.value]).toEqual([true, -100])
    // The mock has ±1, one reading's band; DESIGN.md has contents = reading − empty with both shares: 2 √(0.65² + 0.65²) = 1.84.
    expect(band(toC!.figure)).toBeCloseTo(2 * Math.hypot(0.65, 0.65), 9)
  })
  test('water by the brief is in all, so its doubt is in no difference', () => {
    expect(Object.keys(compared.skinOut.differences[2]!.figure.shares).some((leaf) => leaf.startsWith('amount:s2'))).toBe(false)
  })

  const lists = compared.held.map(({ inWhich, things }) => [
    inWhich.map((has, at) => (has ? 'ABC'[at] : '')).join(''),
    things.map(({ name }) => name),
  ])
  test('what one alone has, then what some have', () => {
    expect(lists).toEqual([
      ['A', ['Single-skin shelter, pole-pitched', 'Groundsheet, thin film']],
      ['B', ['Two-skin tent, one person', 'Down quilt, −6 °C comfort', 'Rain trousers']],
      ['C', ['Flat tarp, 2.4 × 1.5 m', 'Bivouac bag, breathable', 'Foam mat, torso length', 'Frameless pack, 30 L', 'Rain kilt']],
      [
        'AB',
        [
          'Inflatable mat, three-quarter',
          'Light-framed pack, 40 L',
          'Sleep leggings, wool',
          'Canister stove',
          'Pot, 750 ml, lid and spoon',
          'Fuel canister',
          'Gas',
        ],
      ],
      ['AC', ['Down quilt, 0 °C comfort']],
    ])
  })
  test('stakes differ by number: 8, 6, 6', () => {
    expect(compared.quantities.map(({ thing, pieceG, quantities }) => [thing.name, pieceG, quantities])).toEqual([
      ['Stakes', 10.5, [8, 6, 6]],
    ])
  })
  test('measured from another, all turns round', () => {
    const other = compareLoadouts([polePitched, twoSkin, tarp], 1)
    expect(other.base.differences.map((net) => net?.figure.value ?? null)).toEqual([-982, null, -1970])
  })
  test('checks stand row by row', () => {
    const asked = (loadout: Loadout) => findAll({ loadout, brief: skarnBrief, trip: skarnTrip, walker: skarnWalker, today: '2025-10-08' })
    const rows = checkRows([polePitched, twoSkin, tarp].map(asked))
    const safety = rows.find(({ check }) => check.id === 'safety')!
    expect(safety.findings.map(({ state }) => state)).toEqual(['enough', 'enough', 'short'])
    expect(safety.same).toBe(false)
    const alike = checkRows([polePitched, polePitched].map(asked))
    expect(alike.every(({ same }) => same)).toBe(true)
  })
})

test('the same poles, carried instead of worn, differ by lane and weigh the same', () => {
  const poles = polePitched.lines.find((line) => line.kind === 'item' && line.item.name === 'Walking poles')!
  const compared = compareLoadouts([polePitched, withMove(polePitched, [poles.id], 'in_pack')])
  expect(compared.lanes.map(({ thing, lanes: where }) => [thing.name, where])).toEqual([['Walking poles', [['on_me'], ['in_pack']]]])
  expect(compared.skinOut.same).toBe(true)
  expect([compared.worn, compared.base].map(({ differences }) => differences[1]!.figure.value)).toEqual([-322, 322])
  expect(compared.held).toEqual([])
})

describe('a mass that is not known', () => {
  const index = kitIndex([
    { name: 'Jacket', area: 'clothing', g: null, pieces: 2 },
    { name: 'Shirt', area: 'clothing', g: 168 },
  ])
  const both = loadoutOf(index, [itemRow(1, 1), itemRow(2, 2)])
  test('in one alone makes the difference say so', () => {
    const [, net] = compareLoadouts([both, withoutLines(both, [1])]).base.differences
    expect(net).toMatchObject({ withoutMass: ['Jacket'], same: false, massMg: 0 })
  })
  test('in both makes none', () => expect(compareLoadouts([both, both]).base.differences[1]).toMatchObject({ withoutMass: [], same: true }))
  test('an amount that waits for the brief in both makes none', () => {
    const water = kitIndex([], [{ name: 'Water', area: 'water', unit: 'ml', rule: { per: 'stretch', amountMilli: 1_500_000 } }])
    const waiting = (rule = 1_500_000) =>
      loadoutOf(water, [supplyRow(1, 1, { amountFrom: 'brief', rule: { per: 'stretch', amountMilli: rule } })])
    expect(compareLoadouts([waiting(), waiting()]).consumables.same).toBe(true)
    expect(compareLoadouts([waiting(), waiting(2_000_000)]).consumables.differences[1]!.withoutMass).toEqual(['Water'])
    expect(compareLoadouts([waiting(), { name: '', lines: [] }]).consumables.differences[1]!.withoutMass).toEqual(['Water'])
  })
})

// Loadouts drawn from one closet, so that they share things.
const anyItem = fc.record({
  name: fc.string({ maxLength: 3 }),
  area: fc.constantFrom(...kitAreas),
  g: fc.option(fc.integer({ min: 0, max: 3_000_000 }).map((mg) => mg / 1000)),
  from: fc.constantFrom<MassOrigin>('measured', 'claimed', 'estimated'),
})
const anyLine = fc.record({
  lane: fc.constantFrom(...lanes),
  pieces: fc.integer({ min: 1, max: 9 }),
  carriedBy: fc.constantFrom('', '', 'Mira'),
})
const anyPair = fc
  .array(fc.record({ item: anyItem, a: fc.option(anyLine), b: fc.option(anyLine), same: fc.boolean() }), { maxLength: 25 })
  .map((things): readonly [Loadout, Loadout] => {
    const index = kitIndex(things.map(({ item }) => item))
    const rows = (side: 'a' | 'b') =>
      things.flatMap(({ a, same, ...thing }, i) => {
        const line = side === 'a' || same ? a : thing.b
        return line === null ? [] : [itemRow(i + 1, i + 1, line)]
      })
    return [loadoutOf(index, rows('a')), loadoutOf(index, rows('b'))]
  })
const lines = (loadout: Loadout) => loadout.lines.map(weighed)

test('a difference is that of the totals, to the milligram', () => {
  fc.assert(
    fc.property(anyPair, ([a, b]) => {
      const compared = compareLoadouts([a, b])
      for (const name of ['worn', 'base', 'consumables', 'pack', 'skinOut'] as const) {
        expect(compared[name].differences[1]!.massMg).toBe(compared.totals[1]![name].massMg - compared.totals[0]![name].massMg)
      }
      const areas = compared.areas.reduce((sum, row) => sum + row.differences[1]!.massMg, 0)
      expect(areas).toBe(compared.base.differences[1]!.massMg)
    }),
  )
})

test('turned round, a difference only changes its sign', () => {
  fc.assert(
    fc.property(anyPair, ([a, b]) => {
      const [there, back] = [netOf('x', lines(a), lines(b)), netOf('x', lines(b), lines(a))]
      expect(there.massMg + back.massMg).toBe(0)
      expect(Math.abs(uncertainty(there.figure) - uncertainty(back.figure))).toBeLessThan(1e-9)
      expect([...there.withoutMass].sort()).toEqual([...back.withoutMass].sort())
      expect(there.same).toBe(back.same)
    }),
  )
})

test('what both share leaves no mass and no doubt, whatever its order', () => {
  const shuffled = anyPair.chain(([a]) =>
    fc.shuffledSubarray([...a.lines], { minLength: a.lines.length }).map((some) => [a, { ...a, lines: some }] as const),
  )
  fc.assert(
    fc.property(shuffled, ([a, b]) => {
      const net = netOf('x', lines(a), lines(b))
      expect([net.same, net.massMg, Object.keys(net.figure.shares), net.withoutMass]).toEqual([true, 0, [], []])
    }),
  )
})

test('the doubt of a difference is that of the things in one alone and of the net pieces, worked apart', () => {
  fc.assert(
    fc.property(anyPair, ([a, b]) => {
      const net = new Map<string, { g: number | null; from: MassOrigin; pieces: number }>()
      const add = (loadout: Loadout, sign: number) => {
        for (const line of loadout.lines) {
          if (line.kind !== 'item' || line.carriedBy !== '') continue
          const one = net.get(line.item.uid) ?? { g: line.item.mass?.value ?? null, from: line.item.massFrom, pieces: 0 }
          net.set(line.item.uid, { ...one, pieces: one.pieces + sign * line.pieces })
        }
      }
      add(b, 1)
      add(a, -1)
      const known = [...net.values()].filter((one) => one.g !== null)
      const own = { measured: 0, claimed: 0.03, estimated: 0.1, none: 0 }
      const sumG = (from: MassOrigin) => known.filter((one) => one.from === from).reduce((sum, one) => sum + one.g! * one.pieces, 0)
      const alone = known.map((one) => one.pieces * (one.from === 'measured' ? 0.65 : own[one.from] * one.g!))
      const u = Math.hypot(...alone, 0.0008 * sumG('measured'), 0.02 * sumG('claimed'), 0.05 * sumG('estimated'))
      expect(Math.abs(uncertainty(netOf('x', lines(a), lines(b)).figure) - u)).toBeLessThan(1e-6 * (1 + u))
    }),
  )
})

test('everything is in one list, or in all', () => {
  fc.assert(
    fc.property(anyPair, ([a, b]) => {
      const compared = compareLoadouts([a, b])
      const listed = compared.held.flatMap(({ things }) => things).length
      const uids = (loadout: Loadout) => new Set(loadout.lines.map((line) => (line.kind === 'item' ? line.item.uid : '')))
      const all = new Set([...uids(a), ...uids(b)])
      const inBoth = [...all].filter((uid) => uids(a).has(uid) && uids(b).has(uid)).length
      expect(listed + inBoth).toBe(all.size)
      expect(totalsOf(a).lines).toHaveLength(a.lines.length)
    }),
  )
})
