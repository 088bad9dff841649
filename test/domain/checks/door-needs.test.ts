import { expect, test } from 'vitest'
import { doorNeeds } from '../../../src-domain/checks/door-needs.ts'
import { doorSheet, type DoorMark } from '../../../src-domain/loadout/door.ts'
import { nameOf } from '../../../src-domain/loadout/mass.ts'
import { polePitched, skarnBrief, skarnTrip, skarnWalker } from '../loadout/skarn.ts'

const asked = { loadout: polePitched, brief: skarnBrief, trip: skarnTrip, walker: skarnWalker, today: '2025-10-08' }
const missing = (...names: readonly string[]): readonly DoorMark[] =>
  polePitched.lines.filter((line) => names.includes(nameOf(line))).map((line) => ({ id: line.id, lineId: line.id, name: '', state: 'missing', last: null, note: '' })) // prettier-ignore
const needsWith = (...names: readonly string[]) => doorNeeds(asked, doorSheet(polePitched, missing(...names), []).rows)
const without = (...names: readonly string[]) =>
  needsWith(...names).flatMap(({ state, want, duty, holder }) => (state === 'without' && !want ? [[holder, duty]] : []))

test('a duty is called out when the one thing that covers it is missing at the door', () => {
  const before = without()
  expect(without('Headlamp').filter((one) => !before.some((other) => other.join() === one.join()))).toEqual([[null, 'light']])
  // No spoon: pot and utensil are one thing here; boiling asks both, the stove needs a pot and food is eaten with something.
  expect(without('Pot, 750 ml, lid and spoon')).toEqual(expect.arrayContaining([[null, 'pot'], [null, 'utensil'], ['Canister stove', 'pot'], ['Food', 'utensil']])) // prettier-ignore
})

test('no fuel bottle, no poles: the holder of the need is named', () => {
  expect(without('Fuel canister')).toContainEqual(['Gas', 'fuel-holder'])
  expect(without('Walking poles')).toContainEqual(['Single-skin shelter, pole-pitched', 'pole'])
})

test('what is wished for covers nothing at the door', () => {
  expect(needsWith().filter(({ by }) => by.some(({ name }) => name === 'Groundsheet, thin film'))).toEqual([])
})

test('what covers a met one is named, with who carries it and what is worn', () => {
  const bag = needsWith().find(({ duty }) => duty === 'emergency-shelter')!
  expect(bag).toMatchObject({ state: 'met', safety: true, by: [{ name: 'Emergency bag', who: 'Mira', onMe: false }] })
  const poles = needsWith().find(({ duty, holder }) => duty === 'pole' && holder !== null)!
  expect(poles).toMatchObject({ state: 'met', by: [{ name: 'Walking poles', who: '', onMe: true }] })
})

test('a struck duty stays with its reason; unmet ones come first, met ones at the end', () => {
  const all = needsWith('Headlamp')
  expect(all.find(({ duty }) => duty === 'spare-light')).toMatchObject({ state: 'struck', reason: 'phone lamp' })
  const order = all.map(({ state, want }) => ({ without: want ? 2 : 0, struck: 1, met: 3 })[state])
  expect(order).toEqual(order.toSorted((a, b) => a - b))
})
