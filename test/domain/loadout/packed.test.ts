import fc from 'fast-check'
import { expect, test } from 'vitest'
import { findAll } from '../../../src-domain/checks/index.ts'
import type { Line, Loadout } from '../../../src-domain/loadout/loadout.ts'
import { isThere, packLine, unpack, type PackedFacts } from '../../../src-domain/loadout/packed.ts'
import { totalsOf } from '../../../src-domain/loadout/totals.ts'
import { itemRow, kitIndex, loadoutOf, supplyRow, type TestItem, type TestSupply } from './kit.ts'
import { polePitched, skarnBrief, skarnTrip, skarnWalker, tarp, twoSkin } from './skarn.ts'

/** As the store gives it back: through text, so that nothing but plain data is relied on. */
function kept(loadout: Loadout): readonly PackedFacts[] {
  const rows = loadout.lines.map((line, at) => ({
    ...packLine(line),
    id: at + 1,
    uid: `p${at + 1}`,
    thingUid: line.kind === 'item' ? line.item.uid : line.supply.uid,
  }))
  return JSON.parse(JSON.stringify(rows)) as PackedFacts[]
}

const owned = (loadout: Loadout): Loadout => ({ ...loadout, lines: loadout.lines.filter(isThere) })
const figures = (loadout: Loadout) =>
  findAll({ loadout, brief: skarnBrief, trip: skarnTrip, walker: skarnWalker, today: '2025-10-08' }, true).map(({ check, finding }) => [
    check.id,
    finding.state,
    'have' in finding ? [finding.have.value, finding.need.value, finding.enough.value, finding.marginU] : null,
  ])

test.each([polePitched, twoSkin, tarp])('$name packed and unpacked: every total and every check stays as it was', (loadout) => {
  const before = owned(loadout)
  const after = unpack(loadout.name, kept(before))
  const sums = ({ worn, base, consumables, pack, skinOut }: ReturnType<typeof totalsOf>) =>
    [worn, base, consumables, pack, skinOut].map((sum) => [sum.massMg, sum.withoutMass.length])
  expect(sums(totalsOf(after))).toEqual(sums(totalsOf(before)))
  expect(figures(after)).toEqual(figures(before))
})

test('what is wished for, sold or lost stays at home; what is lent goes only with another', () => {
  const statuses = ['owned', 'wished', 'lent', 'sold', 'retired', 'lost'] as const
  const items: readonly TestItem[] = statuses.map((status) => ({ name: status, area: 'extras', g: 10, status }))
  const lines = [...items.map((_, at) => itemRow(at + 1, at + 1)), itemRow(7, 3, { lane: 'on_me', carriedBy: 'Mira' })]
  expect(loadoutOf(kitIndex(items), lines).lines.filter(isThere).map((line) => [(line as Line & { kind: 'item' }).item.name, line.carriedBy])).toEqual([['owned', ''], ['lent', 'Mira']]) // prettier-ignore
})

test('any lines come back with the same mass, doubt, duties, needs and traits', () => {
  const item = fc.record({
    g: fc.option(fc.integer({ min: 0, max: 9_000_000 }).map((mg) => mg / 1000)),
    from: fc.constantFrom('measured' as const, 'claimed' as const, 'estimated' as const),
    pieces: fc.integer({ min: 1, max: 9 }),
    duties: fc.constantFrom('', 'shelter', 'pot* utensil*', 'light spare-light*'),
    litres: fc.option(fc.double({ min: 0, max: 90, noNaN: true })),
  })
  const supply = fc.record({
    amountMilli: fc.option(fc.integer({ min: 0, max: 9_000_000 })),
    unit: fc.constantFrom('g' as const, 'ml' as const, 'piece' as const),
    from: fc.constantFrom('measured' as const, 'claimed' as const, 'estimated' as const),
    amountFrom: fc.constantFrom('brief' as const, 'typed' as const, 'weighed' as const),
    held: fc.boolean(),
  })
  fc.assert(
    fc.property(fc.array(item, { minLength: 1, maxLength: 6 }), fc.array(supply, { maxLength: 4 }), (some, poured) => {
      const items = some.map(({ litres, ...one }, at): TestItem => ({ name: `i${at}`, area: 'water', ...one, traits: litres === null ? {} : { 'water-capacity': litres } })) // prettier-ignore
      const supplies = poured.map(({ unit, from }, at): TestSupply => ({ name: `s${at}`, area: 'food', unit, from, gPerUnit: 1.5, traits: { energy: 400 } })) // prettier-ignore
      const rows = [
        ...items.map((_, at) => itemRow(at + 1, at + 1, { pieces: at + 1 })),
        ...poured.map(({ amountMilli, amountFrom, held }, at) =>
          supplyRow(100 + at, at + 1, { amountMilli, amountFrom, containerId: held ? 1 : null }),
        ),
      ]
      const before = loadoutOf(kitIndex(items, supplies), rows)
      const after = unpack('test', kept(before))
      const plain = (loadout: Loadout) => loadout.lines.map((line) => ({ ...line, id: 0, ...(line.kind === 'supply' ? { container: line.container?.uid, supply: { ...line.supply, id: 0 } } : { item: { ...line.item, id: 0 } }) })) // prettier-ignore
      expect(plain(after)).toEqual(plain(before))
      expect(totalsOf(after).skinOut.figure).toEqual(totalsOf(before).skinOut.figure)
    }),
    { numRuns: 300 },
  )
})
