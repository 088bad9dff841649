import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  byEvidence,
  carriedForNothing,
  evidenceOf,
  sawSeason,
  sellingOf,
  stayedHome,
  type LettingGoFacts,
} from '../../../src-domain/closet/letting-go.ts'
import { duties, statuses } from '../../../src-domain/closet/vocabulary.ts'

const today = '2025-06-15'
const jacket: LettingGoFacts = {
  status: 'owned',
  duties: ['mid-layer'],
  markedKeep: false,
  ownedSince: '2023-01-01',
  seasons: [],
  southern: false,
  fit: 8,
  taken: 0,
  used: 0,
  metByOthers: true,
}

describe('stayed home', () => {
  test('0 of 8 is offered, 0 of 7 is not, nor is one use in 20', () => {
    // provisions.md 8.1: P(θ < 0.10) is 0.8128, 0.7838 and 0.7554
    expect(stayedHome(jacket, today).kind).toBe('offered')
    expect(stayedHome({ ...jacket, fit: 7 }, today).kind).toBe('seldom')
    expect(stayedHome({ ...jacket, fit: 20, taken: 1 }, today).kind).toBe('seldom')
    expect(stayedHome({ ...jacket, fit: 8, taken: 6 }, today).kind).toBe('in-use')
  })
  test('under five trips nothing is said, but how many are missing', () => {
    expect(stayedHome({ ...jacket, fit: 3 }, today)).toEqual({ kind: 'too-little-record', missing: 2 })
  })
  test('a safety item is never offered, nor called seldom used, for lack of use', () => {
    const kept = duties.filter((duty) => duty.kept).map((duty) => duty.code)
    expect(kept).toEqual(
      expect.arrayContaining([
        'first-aid',
        'distress-signal',
        'navigation-backup',
        'emergency-shelter',
        'repair',
        'traction',
        'avalanche',
        'helmet',
        'rope',
        'medicine',
        'treatment-backup',
        'fire-starter',
        'spare-light',
      ]),
    )
    const record = fc.record({
      status: fc.constantFrom(...statuses),
      fit: fc.nat({ max: 60 }),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      also: fc.constantFrom(...duties.map((one) => one.code)),
      code: fc.constantFrom(...kept),
    })
    fc.assert(
      fc.property(record, ({ status, fit, share, also, code }) => {
        const taken = Math.floor(fit * share)
        const facts = { ...jacket, status, fit, taken, used: 0, duties: [also, code] }
        return stayedHome(facts, today).kind === 'kept-for-safety' && carriedForNothing(facts, today).kind === 'kept-for-safety'
      }),
    )
  })
  test.each([
    ['not owned', { status: 'lent' }, 'not-owned'],
    ['marked keep', { markedKeep: true }, 'marked-keep'],
    ['owned under a year', { ownedSince: '2024-08-01' }, 'owned-too-short'],
    ['its winter not yet seen', { ownedSince: '2024-01-10', seasons: ['winter'] as const, today: '2025-02-01' }, 'season-not-seen'],
    ['nothing else serves', { metByOthers: false }, 'nothing-else-serves'],
    ['since when is unknown', { ownedSince: null }, 'owned-too-short'],
  ] as const)('no offer when %s, and it says so', (_, change, reason) => {
    const { today: day, ...facts } = { today, ...change }
    const result = stayedHome({ ...jacket, ...facts }, day)
    expect(result).toMatchObject({ kind: 'seldom' })
    expect('withheld' in result && result.withheld).toContain(reason)
  })
  test('one more trip taken never turns into an offer', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 40 }), fc.nat({ max: 4 }), (fit, taken) => {
        const offered = (k: number): boolean => stayedHome({ ...jacket, fit, taken: k }, today).kind === 'offered'
        return !offered(Math.min(fit, taken + 1)) || offered(Math.min(fit, taken))
      }),
    )
  })
})

describe('carried for nothing', () => {
  test('it asks five trips carried, and counts uses of them', () => {
    expect(carriedForNothing({ ...jacket, fit: 30, taken: 4 }, today)).toEqual({ kind: 'too-little-record', missing: 1 })
    expect(carriedForNothing({ ...jacket, fit: 12, taken: 12, used: 0 }, today)).toMatchObject({
      kind: 'offered',
      use: { count: 0, of: 12 },
    })
    expect(carriedForNothing({ ...jacket, fit: 12, taken: 12, used: 11 }, today).kind).toBe('in-use')
  })
})

describe('seasons', () => {
  test('a whole one must lie between', () => {
    expect(sawSeason('2024-05-31', '2024-08-31', 'summer', false)).toBe(true)
    expect(sawSeason('2024-06-02', '2025-05-31', 'summer', false)).toBe(false)
    expect(sawSeason('2024-11-30', '2025-02-28', 'winter', false)).toBe(true)
    expect(sawSeason('2024-05-31', '2024-08-31', 'winter', true)).toBe(true)
  })
})

describe('selling', () => {
  test('keeping 42.10 against hiring 7.69 suggests selling, and shows both', () => {
    // provisions.md 8.2
    const thing = { price: 300, years: 2, lifeUsed: 0, course: { first: 0.7, yearly: 0.15 } }
    const selling = sellingOf({ thing, years: 2, fitTripsAhead: 8, meanTaken: evidenceOf(0, 12).mean, hire: 25 })
    expect(selling.holding).toBeCloseTo(42.1, 1)
    expect(selling.hiring).toBeCloseTo(7.69, 2)
    expect(selling.sellingPays).toBe(true)
  })
  test('without a price its worth is unknown, not nothing', () => {
    expect(sellingOf({ thing: null, years: 2, fitTripsAhead: 8, meanTaken: 0.1, hire: 25 })).toEqual({
      worthNow: null,
      holding: null,
      hiring: 20,
      sellingPays: null,
    })
  })
  test('the strongest evidence comes first', () => {
    const list = [evidenceOf(1, 12), evidenceOf(0, 12), evidenceOf(0, 8)].map((use) => ({ use }))
    expect(byEvidence(list).map(({ use }) => [use.count, use.of])).toEqual([
      [0, 12],
      [0, 8],
      [1, 12],
    ])
  })
})
