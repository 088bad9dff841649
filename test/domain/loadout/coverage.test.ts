import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { askedDemand, meet, needsOf, type Demand } from '../../../src-domain/loadout/coverage.ts'
import { itemRow, kitIndex, loadoutOf, loadoutOfAll, supplyRow, type TestItem, type TestSupply } from './kit.ts'

const on = '2026-07-03'
const covered = (items: readonly TestItem[], ...duties: readonly string[]) =>
  meet(loadoutOfAll(items), duties.map(askedDemand), on).map(({ met, lacking }) => (met ? 'met' : lacking.join(' ')))
const thing = (name: string, duties: string, more: Partial<TestItem> = {}): TestItem => ({ name, area: 'extras', g: 100, duties, ...more })

describe('a piece serves one duty at a moment', () => {
  test('a poncho pitched as the shelter is no rain shell in camp', () => {
    expect(covered([thing('Poncho tarp', 'shelter rain-shell')], 'shelter', 'rain-shell')).toEqual(['met', 'camp'])
  })
  test('marked shared it is both', () =>
    expect(covered([thing('Poncho tarp', 'shelter rain-shell*')], 'shelter', 'rain-shell')).toEqual(['met', 'met']))
  test('two of them are both', () =>
    expect(covered([thing('Poncho', 'shelter rain-shell', { pieces: 2 })], 'shelter', 'rain-shell')).toEqual(['met', 'met']))
  test('at different moments one piece serves several', () => {
    // dry-store: walking; seat: camp.
    expect(covered([thing('Liner', 'dry-store seat')], 'dry-store', 'seat')).toEqual(['met', 'met'])
  })
  test('a piece steps aside for what only it can serve', () => {
    expect(covered([thing('Shirt', 'base-layer dry-base'), thing('Second shirt', 'base-layer')], 'base-layer', 'dry-base')).toEqual([
      'met',
      'met',
    ])
    expect(covered([thing('Second shirt', 'base-layer'), thing('Shirt', 'base-layer dry-base')], 'base-layer', 'dry-base')).toEqual([
      'met',
      'met',
    ])
  })
  test('a duty of one’s own is counted and takes nothing from another', () => {
    expect(covered([thing('Kite', 'own:kite seat')], 'seat', 'own:kite')).toEqual(['met', 'met'])
  })
})

describe('what cannot go covers nothing', () => {
  test.each(['sold', 'retired', 'lost', 'lent'] as const)('%s', (status) =>
    expect(covered([thing('Lamp', 'seat', { status })], 'seat')).toEqual(['camp']),
  )
  test('what is lent to the one who carries it does', () => {
    const loadout = loadoutOf(kitIndex([thing('Tent', 'seat', { status: 'lent' })]), [itemRow(1, 1, { carriedBy: 'Mira' })])
    expect(meet(loadout, [askedDemand('seat')], on)[0]!.met).toBe(true)
  })
  test('what another carries does', () => {
    const loadout = loadoutOf(kitIndex([thing('Bag', 'emergency-shelter')]), [itemRow(1, 1, { carriedBy: 'Mira' })])
    expect(meet(loadout, [askedDemand('emergency-shelter')], on)[0]!.met).toBe(true)
  })
  test('what is wished for does', () => expect(covered([thing('Seat', 'seat', { status: 'wished' })], 'seat')).toEqual(['met']))
  test('what has expired does not, on its last day it does', () => {
    expect(covered([thing('Tablets', 'seat', { traits: { expires: '2026-07-02' } })], 'seat')).toEqual(['camp'])
    expect(covered([thing('Tablets', 'seat', { traits: { expires: '2026-07-03' } })], 'seat')).toEqual(['met'])
  })
  test('pieces beyond those owned', () => {
    const index = kitIndex([thing('Stakes', 'stake', { pieces: 4 })])
    const twice = loadoutOf(index, [itemRow(1, 1, { pieces: 4 }), itemRow(2, 1, { pieces: 4, lane: 'on_me' })])
    const six: Demand = { duty: 'stake', pieces: 6, kind: 'reserved', holder: null, settled: false }
    expect(meet(twice, [six], on)[0]).toMatchObject({ met: false, present: 4 })
  })
})

describe('needs', () => {
  // DESIGN.md, Duties: "6 of 8 stakes hold the shelter; pot rest needs 3".
  const stakes = thing('Stakes', 'stake', { pieces: 8 })
  const shelter = thing('Shelter', 'shelter', { needs: [{ duty: 'stake', pieces: 6, kind: 'reserved' }] })
  const rest = (pieces: number) => thing('Pot rest', 'seat', { needs: [{ duty: 'stake', pieces, kind: 'reserved' }] })
  const needs = (items: readonly TestItem[]) => meet(loadoutOfAll(items), needsOf(loadoutOfAll(items)), on)
  test('six of eight stakes hold the shelter, and the pot rest needs three', () => {
    const [, second] = needs([stakes, shelter, rest(3)])
    expect(second).toMatchObject({ met: false, lacking: ['camp'], present: 8, heldBy: [{ name: 'Shelter', pieces: 6 }] })
  })
  test('two it could have', () => expect(needs([stakes, shelter, rest(2)]).every(({ met }) => met)).toBe(true))
  test('shared needs stand on the same pieces', () => {
    const two = (name: string) => thing(name, 'shelter', { needs: [{ duty: 'pole', pieces: 2, kind: 'shared' }] })
    expect(needs([thing('Poles', 'pole', { pieces: 2 }), two('Tarp'), two('Bug net')]).every(({ met }) => met)).toBe(true)
  })
  test('a need holds only while its holder is in use', () => {
    // A pot rest serves in camp alone: at night the stakes hold the shelter whatever it wants.
    expect(needs([thing('Stakes', 'stake', { pieces: 8 }), rest(9)])[0]!.lacking).toEqual(['camp'])
  })

  const can = thing('Fuel bottle', 'fuel-holder')
  const gas: TestSupply = { name: 'Gas', area: 'kitchen', traits: { 'heat-value': 45.6 } }
  const water: TestSupply = { name: 'Water', area: 'water', unit: 'ml' }
  const food: TestSupply = { name: 'Stew', area: 'food', needs: [{ duty: 'utensil', pieces: 1, kind: 'shared' }] }
  const supplied = (items: readonly TestItem[], ...rows: readonly ReturnType<typeof supplyRow>[]) => {
    const all = [...items.map((_, i) => itemRow(i + 1, i + 1)), ...rows]
    const loadout = loadoutOf(kitIndex([...items, can], [gas, water, food]), all)
    return meet(loadout, needsOf(loadout), on).map(({ demand, met }) => [demand.holder!.name, demand.duty, met])
  }
  test('fuel without a bottle, food without a utensil and water without a vessel are named', () => {
    expect(supplied([], supplyRow(7, 1), supplyRow(8, 2), supplyRow(9, 3))).toEqual([
      ['Gas', 'fuel-holder', false],
      ['Water', 'water-vessel', false],
      ['Stew', 'utensil', false],
    ])
  })
  test('a bottle that goes covers it', () => expect(supplied([can], supplyRow(7, 1))).toEqual([['Gas', 'fuel-holder', true]]))
  test('so does the container it is in, whatever its duties, if it goes', () => {
    const flask = thing('Flask', '')
    expect(supplied([flask], supplyRow(7, 1, { containerId: 1 }))).toEqual([['Gas', 'fuel-holder', true]])
    expect(supplied([flask], supplyRow(7, 1, { containerId: 2 }))).toEqual([['Gas', 'fuel-holder', false]])
  })
})

// Oracle: demands are taken in their order if every piece can still be dealt, tried over all deals.
const campDuties = ['stove', 'pot', 'utensil', 'windscreen'] as const
interface Piece {
  readonly duties: readonly string[]
}
function feasible(pieces: readonly Piece[], wanted: ReadonlyMap<string, number>): boolean {
  const open = [...wanted].find(([, count]) => count > 0)
  if (open === undefined) return true
  const [first, ...rest] = pieces
  if (first === undefined) return false
  if (feasible(rest, wanted)) return true
  return first.duties.some((duty) => (wanted.get(duty) ?? 0) > 0 && feasible(rest, new Map(wanted).set(duty, wanted.get(duty)! - 1)))
}
function wantedOf(demands: readonly Demand[]): Map<string, number> {
  const wanted = new Map<string, number>()
  for (const duty of campDuties) {
    const of = demands.filter((demand) => demand.duty === duty)
    const common = Math.max(0, ...of.filter(({ kind }) => kind === 'shared').map(({ pieces }) => pieces))
    wanted.set(duty, common + of.filter(({ kind }) => kind === 'reserved').reduce((sum, { pieces }) => sum + pieces, 0))
  }
  return wanted
}

test('as much is met as an exhaustive search can meet', () => {
  const anyItems = fc.array(
    fc.record({
      duties: fc.uniqueArray(fc.constantFrom(...campDuties), { minLength: 1, maxLength: 3 }),
      pieces: fc.integer({ min: 1, max: 2 }),
    }),
    { maxLength: 4 },
  )
  const anyDemands = fc.array(
    fc.record({
      duty: fc.constantFrom(...campDuties),
      pieces: fc.integer({ min: 1, max: 3 }),
      kind: fc.constantFrom('shared' as const, 'reserved' as const),
    }),
    { maxLength: 5 },
  )
  fc.assert(
    fc.property(anyItems, anyDemands, (items, wishes) => {
      const demands: Demand[] = wishes.map((wish) => ({ ...wish, holder: null, settled: false }))
      const loadout = loadoutOfAll(items.map(({ duties, pieces }, i) => thing(`item ${i}`, duties.join(' '), { pieces })))
      const pieces = items.flatMap((item) => Array.from({ length: item.pieces }, () => ({ duties: item.duties })))
      const taken: Demand[] = []
      const expected = demands.map((demand) => {
        const can = feasible(pieces, wantedOf([...taken, demand]))
        if (can) taken.push(demand)
        return can
      })
      expect(meet(loadout, demands, on).map(({ met }) => met)).toEqual(expected)
    }),
    { numRuns: 500 },
  )
})

test('one more piece never unmeets the first demand', () => {
  const anyKit = fc.array(fc.uniqueArray(fc.constantFrom(...campDuties), { minLength: 1 }), { maxLength: 5 })
  fc.assert(
    fc.property(anyKit, fc.uniqueArray(fc.constantFrom(...campDuties), { minLength: 1 }), (kit, more) => {
      const kept = kit.map((duties, i) => thing(`item ${i}`, duties.join(' ')))
      const count = (items: readonly TestItem[]) => covered(items, ...campDuties).filter((state) => state === 'met').length
      expect(count([...kept, thing('more', more.join(' '))])).toBeGreaterThanOrEqual(count(kept))
    }),
  )
})
