import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { duties } from '../../../src-domain/closet/vocabulary.ts'
import { asksOf, lowestC, standing } from '../../../src-domain/trips/asked.ts'
import { emptyBrief, type Brief, type Trip } from '../../../src-domain/trips/brief.ts'
import { loadoutOfAll, type TestItem } from '../loadout/kit.ts'

const night: Trip = { startsOn: '2026-07-03', endsOn: '2026-07-04', zone: 'Europe/London', season: 'summer' }
const dayTrip: Trip = { ...night, endsOn: '2026-07-03' }
const brief = (more: Partial<Brief> = {}): Brief => ({ ...emptyBrief, ...more })
const codes = (...asked: Parameters<typeof asksOf>) => asksOf(...asked).map(({ duty }) => duty)

// DESIGN.md, Starter codes, by hand: the codes that carry a +, and those that carry a *.
const everyNight =
  'shelter top-insulation ground-insulation pack dry-store rain-shell base-layer legwear mid-layer dry-base shoes socks fire-starter ' +
  'water-vessel water-treatment light spare-light navigation navigation-backup distress-signal first-aid repair hygiene emergency-shelter'
const whenCold = ['big-jacket', 'hat', 'gloves']

describe('what a trip asks', () => {
  test('a summer night asks the list of every night out', () => expect(codes(brief({ lowC: 8 }), night)).toEqual(everyNight.split(' ')))
  test('a day without a night asks nothing of it', () => expect(codes(brief({ lowC: 8 }), dayTrip)).toEqual([]))
  test.each([
    ['a low under zero', brief({ lowC: -0.1 }), night],
    ['one cold day', brief({ lowC: 3, days: [{ day: 2, startMinute: null, lowC: -2, highC: null }] }), night],
    ['winter', brief(), { ...night, season: 'winter' as const }],
  ])('%s asks rest insulation, hat and gloves too', (_, cold, trip) => expect(codes(cold, trip)).toEqual(expect.arrayContaining(whenCold)))
  test('zero is not under zero', () => expect(codes(brief({ lowC: 0 }), night)).not.toEqual(expect.arrayContaining(['hat'])))
  test('a boil asks stove, pot, fire starter and utensil', () => {
    const meals = { ...emptyBrief.meals, boilsPerDay: 1 }
    expect(codes(brief({ meals }), dayTrip)).toEqual(['stove', 'pot', 'utensil', 'fire-starter'])
    expect(codes(brief({ meals: { ...meals, coldDays: [1] } }), dayTrip)).toEqual([])
  })
  test('water to be treated asks treatment, a hard canister zone food storage', () => {
    const source = { atM: 0, name: '', sure: 'sure' as const, safe: false }
    expect(codes(brief({ sources: [source] }), dayTrip)).toEqual(['water-vessel', 'water-treatment'])
    expect(codes(brief({ sources: [{ ...source, safe: true }] }), dayTrip)).toEqual([])
    expect(codes(brief({ rules: ['hard-canister'] }), dayTrip)).toEqual(['food-storage'])
  })
})

describe('devices ask power when they outlast their own cells', () => {
  const phone = (charge: number | null): TestItem => ({
    name: 'Phone',
    area: 'wayfinding',
    g: 194,
    duties: 'navigation',
    traits: { draw: 1.5, 'hours-a-day': 4, ...(charge === null ? {} : { charge }) },
  })
  const asks = (item: TestItem) => codes(brief(), dayTrip, loadoutOfAll([item])).includes('power')
  // 1.5 W for 4 h is 6 Wh on the one day.
  test.each([
    [15, false],
    [6, false],
    [5, true],
    [null, true],
  ])('with %s Wh of its own: %s', (charge, asked) => expect(asks(phone(charge))).toBe(asked))
  test('a lamp is asked for by light alone', () => expect(asks({ ...phone(null), duties: 'light' })).toBe(false))
})

describe('the person’s own wishes and strikes', () => {
  test('a must and a want', () => {
    const asked = [
      { duty: 'sun-cover', as: 'must' as const },
      { duty: 'seat', as: 'want' as const },
    ]
    expect(asksOf(brief({ asked }), dayTrip)).toMatchObject([
      { duty: 'sun-cover', as: 'must', by: 'person' },
      { duty: 'seat', as: 'want', by: 'person' },
    ])
  })
  test('a seat is only ever a want', () =>
    expect(asksOf(brief({ asked: [{ duty: 'seat', as: 'must' }] }), dayTrip)).toMatchObject([{ as: 'want' }]))
  test('a want for what is asked anyway stays a must', () => {
    const shelter = asksOf(brief({ asked: [{ duty: 'shelter', as: 'want' }] }), night).filter(({ duty }) => duty === 'shelter')
    expect(shelter).toMatchObject([{ as: 'must', by: 'night' }])
  })
  test('an own duty is asked after the known ones', () => {
    const asked = [
      { duty: 'own:kite', as: 'want' as const },
      { duty: 'reading', as: 'want' as const },
    ]
    expect(codes(brief({ asked }), dayTrip)).toEqual(['reading', 'own:kite'])
  })
  test('a struck safety duty stays in sight with its reason', () => {
    const asks = asksOf(brief({ struck: [{ duty: 'spare-light', reason: 'phone lamp' }] }), night)
    expect(asks.find(({ duty }) => duty === 'spare-light')).toMatchObject({ safety: true, struck: 'phone lamp' })
    expect(standing(asks).some(({ duty }) => duty === 'spare-light')).toBe(false)
  })
  test('without a reason a safety duty is not struck, another is', () => {
    const struck = [
      { duty: 'spare-light', reason: '  ' },
      { duty: 'hygiene', reason: '' },
    ]
    const left = standing(asksOf(brief({ struck }), night)).map(({ duty }) => duty)
    expect(left).toContain('spare-light')
    expect(left).not.toContain('hygiene')
  })
})

test('the lowest of all lows counts', () => {
  expect(lowestC(brief())).toBeNull()
  expect(lowestC(brief({ lowC: 2, days: [{ day: 1, startMinute: null, lowC: -1, highC: null }] }))).toBe(-1)
})

test('a colder night never asks for less, and nothing is asked twice', () => {
  fc.assert(
    fc.property(fc.double({ min: -40, max: 30, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }), (lowC, colderBy) => {
      const [mild, cold] = [codes(brief({ lowC }), night), codes(brief({ lowC: lowC - colderBy }), night)]
      expect(cold).toEqual(expect.arrayContaining([...mild]))
      expect(new Set(cold).size).toBe(cold.length)
      const order = duties.map(({ code }) => code)
      expect([...cold].sort((a, b) => order.indexOf(a) - order.indexOf(b))).toEqual(cold)
    }),
  )
})
