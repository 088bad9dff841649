import fc from 'fast-check'
import { expect, test } from 'vitest'
import { emptyBrief, terrains, type Leg } from '../../../src-domain/trips/brief.ts'
import { heatedOn, heatedOver, onFootOf, onFootOfAll } from '../../../src-domain/trips/leg-figures.ts'
import { newLeg } from '../../../src-domain/trips/legs.ts'
import { routeOf } from '../../../src-domain/trips/route.ts'

const leg: fc.Arbitrary<Leg> = fc
  .record({
    lengthM: fc.integer({ min: 1, max: 60_000 }),
    climbM: fc.integer({ min: 0, max: 3000 }),
    descentM: fc.integer({ min: 0, max: 3000 }),
    terrain: fc.constantFrom(...terrains),
  })
  .map((said) => ({ ...newLeg(1, false), ...said }))

test('the hours shown are the hours the checks read', () => {
  fc.assert(
    fc.property(fc.array(leg, { minLength: 1, maxLength: 5 }), fc.double({ min: 0.5, max: 2, noNaN: true }), (legs, paceFactor) => {
      const route = routeOf({ legs }, { paceFactor })
      if (!route.ok) throw new Error('a whole leg has hours')
      legs.forEach((one, i) => expect(onFootOf(one, { paceFactor })!.value).toBeCloseTo(route.legs[i]!.hours, 9))
      const sum = route.legs.reduce((all, one) => all + one.hours, 0)
      expect(onFootOfAll(legs, { paceFactor })!.value).toBeCloseTo(sum, 9)
    }),
  )
})

test('a leg that lacks a figure has no hours, and so has the whole', () => {
  const whole: Leg = { ...newLeg(1, false), lengthM: 1000, climbM: 0, descentM: 0 }
  expect(onFootOf({ ...whole, climbM: null }, { paceFactor: 1 })).toBeNull()
  expect(onFootOfAll([whole, { ...whole, lengthM: null }], { paceFactor: 1 })).toBeNull()
  expect(onFootOfAll([], { paceFactor: 1 })).toBeNull()
})

test('litres heated: 2 boils of 0.6 L are 1.2 L a day, none on a cold day', () => {
  const meals = { ...emptyBrief.meals, boilsPerDay: 2, litresPerBoil: 0.6, coldDays: [2] }
  expect(heatedOn(meals, 1)!.value).toBeCloseTo(1.2, 12)
  expect(heatedOn(meals, 2)!.value).toBe(0)
  expect(heatedOver(meals, 3)!.value).toBeCloseTo(2.4, 12)
  expect(heatedOver({ ...meals, litresPerBoil: null }, 3)).toBeNull()
})
