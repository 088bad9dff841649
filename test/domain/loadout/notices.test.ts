import { describe, expect, test } from 'vitest'
import { noticesOf, type PlannedFacts } from '../../../src-domain/loadout/notices.ts'
import { itemRow, kitIndex, loadoutOf, loadoutOfAll, supplyRow, type TestItem } from './kit.ts'
import { polePitched } from './skarn.ts'

const stakes: TestItem = { name: 'Stakes', area: 'shelter', g: 10.5, pieces: 8 }
const lamp: TestItem = { name: 'Lamp', area: 'light_power', g: 56 }

test('the demo trip has none', () => expect(noticesOf(polePitched)).toEqual([]))

test('more pieces than owned are added up over the lanes', () => {
  const index = kitIndex([stakes])
  const both = (pieces: number) => loadoutOf(index, [itemRow(1, 1, { pieces }), itemRow(2, 1, { pieces: 3, lane: 'on_me' })])
  expect(noticesOf(both(5))).toEqual([])
  expect(noticesOf(both(6))).toEqual([{ code: 'more-than-owned', facts: { name: 'Stakes', pieces: 9, owned: 8 }, lineIds: [1, 2] }])
})

describe('things that are not here', () => {
  test.each(['sold', 'retired', 'lost'] as const)('%s', (status) => {
    expect(noticesOf(loadoutOfAll([{ ...lamp, status }]))).toEqual([{ code: status, facts: { name: 'Lamp', since: '' }, lineIds: [1] }])
  })
  test('lent out, to whom', () => {
    expect(noticesOf(loadoutOfAll([{ ...lamp, status: 'lent', lentTo: 'Mira' }]))).toMatchObject([
      { code: 'lent', facts: { name: 'Lamp', to: 'Mira' } },
    ])
  })
  test('lent to the one who carries it is where it belongs', () => {
    const lent = kitIndex([{ ...lamp, status: 'lent', lentTo: 'Mira' }])
    expect(noticesOf(loadoutOf(lent, [itemRow(1, 1, { carriedBy: 'Mira' })]))).toEqual([])
  })
  test('wished for is no trouble', () => expect(noticesOf(loadoutOfAll([{ ...lamp, status: 'wished' }]))).toEqual([]))
})

describe('an item in two loadouts whose dates overlap', () => {
  const here = { tripId: 1, startsOn: '2026-07-03', endsOn: '2026-07-05' }
  const there = (more: Partial<PlannedFacts> = {}): PlannedFacts => ({
    loadoutId: 9,
    loadoutName: 'Long weekend',
    tripId: 2,
    startsOn: '2026-07-05',
    endsOn: '2026-07-08',
    itemId: 1,
    pieces: 1,
    ...more,
  })
  const codes = (planned: readonly PlannedFacts[], trip = here, item = lamp) =>
    noticesOf(loadoutOfAll([item]), planned, trip).map(({ code }) => code)
  test('is named, with the other loadout and its days', () => {
    expect(noticesOf(loadoutOfAll([lamp]), [there()], here)).toEqual([
      { code: 'elsewhere', facts: { name: 'Lamp', loadout: 'Long weekend', from: '2026-07-05', to: '2026-07-08' }, lineIds: [1] },
    ])
  })
  test('not when one ends the day before the other starts', () => expect(codes([there({ startsOn: '2026-07-06' })])).toEqual([]))
  test('not for another item', () => expect(codes([there({ itemId: 2 })])).toEqual([]))
  test('not for another choice for the same trip', () => expect(codes([there({ tripId: 1 })])).toEqual([]))
  test('a day trip without an end', () => {
    expect(codes([there({ startsOn: '2026-07-04', endsOn: null })])).toEqual(['elsewhere'])
    expect(codes([there({ startsOn: null, endsOn: null })])).toEqual([])
  })
  test('alternatives of the other trip are not added up, lanes of one of them are', () => {
    const four = { ...stakes, pieces: 16 }
    expect(codes([there({ pieces: 8 }), there({ pieces: 8, loadoutId: 10 })], here, { ...four, pieces: 8 })).toEqual(['elsewhere'])
    const eightOf16 = (planned: readonly PlannedFacts[]) =>
      noticesOf(loadoutOf(kitIndex([four]), [itemRow(1, 1, { pieces: 8 })]), planned, here).map(({ code }) => code)
    expect(eightOf16([there({ pieces: 8 }), there({ pieces: 8, loadoutId: 10 })])).toEqual([])
    expect(eightOf16([there({ pieces: 8 }), there({ pieces: 1 })])).toEqual(['elsewhere'])
  })
})

describe('what a container cannot do', () => {
  const bottle: TestItem = { name: 'Bottle', area: 'water', g: 38, traits: { 'water-capacity': 1 } }
  const index = kitIndex([bottle], [{ name: 'Water', area: 'water', unit: 'ml' }])
  const water = (amountMilli: number) => supplyRow(2, 1, { amountMilli, containerId: 1 })
  test('stay at home while its water goes', () => {
    expect(noticesOf(loadoutOf(index, [water(500_000)]))).toEqual([
      { code: 'container-left', facts: { name: 'Water', container: 'Bottle' }, lineIds: [2] },
    ])
  })
  test('hold more than it holds', () => {
    expect(noticesOf(loadoutOf(index, [itemRow(1, 1), water(1_000_000)]))).toEqual([])
    expect(noticesOf(loadoutOf(index, [itemRow(1, 1), water(1_500_000)]))).toEqual([
      { code: 'over-capacity', facts: { name: 'Water', container: 'Bottle', amount: 1500, capacity: 1000, unit: 'ml' }, lineIds: [2] },
    ])
  })
})
