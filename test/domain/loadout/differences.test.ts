import fc from 'fast-check'
import { describe, expect, expectTypeOf, test } from 'vitest'
import type { BaseLine } from '../../../src-main/answers.ts'
import { lanes } from '../../../src-domain/closet/vocabulary.ts'
import { differencesOf, statesOf, take, takeable, type LineState } from '../../../src-domain/loadout/differences.ts'
import type { LineFacts } from '../../../src-domain/loadout/gather.ts'
import type { Loadout } from '../../../src-domain/loadout/loadout.ts'
import { itemRow, kitIndex, loadoutOf, supplyRow } from './kit.ts'

const index = kitIndex(
  [
    { name: 'Tent', area: 'shelter', g: 1164 },
    { name: 'Stakes', area: 'shelter', g: 10.5, pieces: 8 },
    { name: 'Poles', area: 'carry', g: 161, pieces: 2 },
    { name: 'Lamp', area: 'light_power', g: null },
    { name: 'Bottle', area: 'water', g: 38 },
  ],
  [{ name: 'Water', area: 'water', unit: 'ml', rule: { per: 'stretch', amountMilli: 1_500_000 } }],
)
const loadout = (...rows: readonly LineFacts[]): Loadout => loadoutOf(index, rows)
const tent = itemRow(1, 1)
const stakes = (pieces: number) => itemRow(2, 2, { pieces })
const brief = (differences: ReturnType<typeof differencesOf>) =>
  differences.map(({ name, fields, moved, mass }) => [name, fields.join(' '), moved, mass.figure.value])

test('the store’s base lines are the states compared', () => {
  expectTypeOf<BaseLine>().toExtend<LineState>()
  expectTypeOf<LineState>().toExtend<BaseLine>()
})

describe('parent now against child now', () => {
  const was = loadout(tent, stakes(8))
  const base = statesOf(was)
  test('nothing moved, nothing differs', () => expect(differencesOf(was, was, base)).toEqual([]))
  test('the child took fewer stakes', () => {
    expect(brief(differencesOf(was, loadout(tent, stakes(6)), base))).toEqual([['Stakes', 'pieces', 'child', -21]])
  })
  test('the parent took fewer stakes', () => {
    expect(brief(differencesOf(loadout(tent, stakes(6)), was, base))).toEqual([['Stakes', 'pieces', 'parent', 21]])
  })
  test('both did, each in its own way', () => {
    expect(brief(differencesOf(loadout(tent, stakes(6)), loadout(tent, stakes(7)), base))).toEqual([['Stakes', 'pieces', 'both', 10.5]])
  })
  test('both did the same: no difference is left', () => {
    expect(differencesOf(loadout(tent, stakes(6)), loadout(tent, stakes(6)), base)).toEqual([])
  })
  test('without a base nobody knows who moved', () => {
    expect(brief(differencesOf(was, loadout(tent), null))).toEqual([['Stakes', 'there', 'unknown', -84]])
  })
  test('one went from the child, one came to the parent', () => {
    const found = differencesOf(loadout(tent, stakes(8), itemRow(3, 3)), loadout(stakes(8)), base)
    expect(brief(found)).toEqual([
      ['Tent', 'there', 'child', -1164],
      ['Poles', 'there', 'parent', -161],
    ])
    expect(takeable(found)).toEqual(['i3:in_pack'])
  })
  test('a thing that changed lanes knows its other lane', () => {
    const [worn, packed] = [loadout(itemRow(3, 3, { lane: 'on_me', pieces: 2 })), loadout(itemRow(3, 3, { lane: 'in_pack', pieces: 2 }))]
    expect(differencesOf(worn, packed, statesOf(worn)).map(({ lane, otherLane }) => [lane, otherLane])).toEqual([
      ['in_pack', 'on_me'],
      ['on_me', 'in_pack'],
    ])
  })
  test('what another carries now weighs nothing here', () => {
    const found = differencesOf(was, loadout({ ...tent, carriedBy: 'Mira' }, stakes(8)), base)
    expect(brief(found)).toEqual([['Tent', 'carried-by', 'child', -1164]])
  })
  test('a mass not known is not a difference of nothing', () => {
    const [found] = differencesOf(was, loadout(tent, stakes(8), itemRow(4, 4)), base)
    expect(found!.mass).toMatchObject({ same: false, withoutMass: ['Lamp'] })
  })
  test('an amount that follows the brief differs by its rule, not by what the brief makes of it', () => {
    const water = (more: Partial<LineFacts>) => loadout(supplyRow(5, 1, { amountFrom: 'brief', containerId: 5, ...more }))
    expect(differencesOf(water({}), water({ amountMilli: 99 }), null)).toEqual([])
    const rule = { per: 'day' as const, amountMilli: 2_000_000 }
    expect(differencesOf(water({}), water({ rule }), null).map(({ key, fields }) => [key, fields])).toEqual([['s1:used_up:i5', ['rule']]])
    const typed = water({ amountFrom: 'typed', amountMilli: 1_000_000 })
    expect(differencesOf(water({}), typed, null).map(({ fields }) => fields)).toEqual([['amount']])
  })
})

const anyLoadout = fc
  .uniqueArray(
    fc.record({
      item: fc.integer({ min: 1, max: 5 }),
      lane: fc.constantFrom(...lanes),
      pieces: fc.integer({ min: 1, max: 3 }),
      by: fc.constantFrom('', 'Mira'),
    }),
    {
      selector: ({ item, lane }) => `${item}${lane}`,
      maxLength: 10,
    },
  )
  .map((rows) => loadout(...rows.map(({ item, lane, pieces, by }, i) => itemRow(i + 1, item, { lane, pieces, carriedBy: by }))))

test('differences turned round are the same lines with the other sign', () => {
  fc.assert(
    fc.property(anyLoadout, anyLoadout, anyLoadout, (a, b, was) => {
      const base = statesOf(was)
      const [there, back] = [differencesOf(a, b, base), differencesOf(b, a, base)]
      expect(back.map(({ key }) => key)).toEqual(there.map(({ key }) => key))
      expect(back.map(({ mass }) => 0 - mass.massMg)).toEqual(there.map(({ mass }) => 0 + mass.massMg))
      const turned = { parent: 'child', child: 'parent', both: 'both', unknown: 'unknown' }
      expect(back.map(({ moved }) => turned[moved])).toEqual(there.map(({ moved }) => moved))
    }),
  )
})

const sorted = (states: readonly LineState[]) => [...states].sort((a, b) => (a.key < b.key ? -1 : 1))

test('taking every difference makes the child the parent, and base with it', () => {
  fc.assert(
    fc.property(anyLoadout, anyLoadout, (parent, child) => {
      const found = differencesOf(parent, child, null)
      const taken = take(
        statesOf(parent),
        statesOf(child),
        null,
        found.map(({ key }) => key),
      )
      expect(sorted(taken.child)).toEqual(sorted(statesOf(parent)))
      expect(taken.put).toHaveLength(found.filter(({ parent: state }) => state !== null).length)
      expect(taken.removed).toHaveLength(found.filter(({ parent: state }) => state === null).length)
    }),
  )
})

test('taking some leaves the others as they were, and nothing taken is asked again', () => {
  fc.assert(
    fc.property(anyLoadout, anyLoadout, anyLoadout, (parent, child, was) => {
      const base = statesOf(was)
      const keys = takeable(differencesOf(parent, child, base))
      const taken = take(statesOf(parent), statesOf(child), base, keys)
      const others = (states: readonly LineState[]) => sorted(states.filter(({ key }) => !keys.includes(key)))
      expect(others(taken.child)).toEqual(others(statesOf(child)))
      expect(others(taken.base)).toEqual(others(base))
      const of = (states: readonly LineState[]) => sorted(states.filter(({ key }) => keys.includes(key)))
      expect(of(taken.child)).toEqual(of(statesOf(parent)))
      expect(of(taken.base)).toEqual(of(statesOf(parent)))
    }),
  )
})
