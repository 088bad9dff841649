import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Leg } from '../../../src-domain/trips/brief.ts'
import { closedUp, dayBegins, moved, newLeg, withDay, withNewDay, withSplit, without } from '../../../src-domain/trips/legs.ts'

const named = (day: number, name: string): Leg => ({ ...newLeg(day, false), name })
const days = (legs: readonly Leg[]) => legs.map((leg) => leg.day)
const names = (legs: readonly Leg[]) => legs.map((leg) => leg.name).join('')

type Act = readonly ['new' | 'split' | 'remove' | 'up' | 'down' | 'begin' | 'join', number]
const act = fc.tuple(fc.constantFrom('new', 'split', 'remove', 'up', 'down', 'begin', 'join'), fc.nat(12)) as fc.Arbitrary<Act>

function done(legs: readonly Leg[], [what, n]: Act): readonly Leg[] {
  const at = legs.length === 0 ? 0 : n % legs.length
  if (what === 'new') return withNewDay(legs)
  if (what === 'split') return withSplit(legs, at)
  if (what === 'remove') return without(legs, at)
  if (what === 'up' || what === 'down') return moved(legs, at, what === 'up' ? -1 : 1)
  return dayBegins(legs, at, what === 'begin')
}

test('whatever is done, days count 1, 2, 3 … in order', () => {
  fc.assert(
    fc.property(fc.array(act, { maxLength: 30 }), (acts) => {
      const legs = acts.reduce<readonly Leg[]>(done, [])
      expect(closedUp(legs)).toEqual(legs)
      days(legs).forEach((day, i) => expect(day - (days(legs)[i - 1] ?? 0)).toBeLessThanOrEqual(1))
      if (legs.length > 0) expect(legs[0]!.day).toBe(1)
    }),
  )
})

test('moving there and back changes nothing', () => {
  const legs = [named(1, 'a'), named(1, 'b'), named(2, 'c')]
  expect(names(moved(legs, 1, 1))).toBe('acb')
  expect(days(moved(legs, 1, 1))).toEqual([1, 1, 2])
  expect(moved(moved(legs, 1, 1), 2, -1)).toEqual(legs)
  expect(moved(legs, 0, -1)).toBe(legs)
})

test('a day begins or is joined', () => {
  const legs = [named(1, 'a'), named(1, 'b'), named(2, 'c')]
  const begun = dayBegins(legs, 1, true)
  expect(days(begun)).toEqual([1, 2, 3])
  expect(begun[0]!.camp).toBe(true)
  expect(days(dayBegins(begun, 1, false))).toEqual([1, 1, 2])
})

test('a day of which nothing is said is not kept', () => {
  const said = withDay([], 2, { startMinute: 510 })
  expect(said).toEqual([{ day: 2, startMinute: 510, lowC: null, highC: null }])
  expect(withDay(said, 2, { startMinute: null })).toEqual([])
  expect(withDay(said, 1, { lowC: 3 }).map((one) => one.day)).toEqual([1, 2])
})
