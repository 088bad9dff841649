import fc from 'fast-check'
import { jStat } from 'jstat'
import { describe, expect, test } from 'vitest'
import { letGoLists, replacedBy, type LetGoThings } from '../../../src-domain/closet/let-go-lists.ts'
import { marksOf, type RecordFacts } from '../../../src-domain/closet/let-go-record.ts'
import { duties, type Status } from '../../../src-domain/closet/vocabulary.ts'

const today = '2026-06-15'
interface Thing {
  readonly duties?: string
  readonly seasons?: string
  readonly tags?: string
  readonly status?: Status
  readonly statusSince?: string | null
  readonly cameOn?: string | null
  readonly name?: string
}
interface Trip {
  readonly onDay: string
  readonly asked?: string
  readonly season?: 'spring' | 'summer' | 'autumn' | 'winter' | 'any'
  readonly past?: boolean
  readonly newest?: number | null
  /** Row and use. */
  readonly taken?: readonly (readonly [number, string])[]
  readonly away?: readonly number[]
}

const thingsOf = (all: readonly Thing[]): LetGoThings => ({
  id: all.map((_, i) => i + 1),
  status: all.map((one) => one.status ?? 'owned'),
  statusSince: all.map((one) => one.statusSince ?? null),
  duties: all.map((one) => one.duties ?? 'pot'),
  seasons: all.map((one) => one.seasons ?? ''),
  tags: all.map((one) => one.tags ?? ''),
  cameOn: all.map((one) => (one.cameOn === undefined ? '2020-01-01' : one.cameOn)),
  name: all.map((one) => one.name ?? 'Thing'),
  massMg: all.map((_, i) => 1000 * (i + 1)),
  pieces: all.map(() => 1),
  archived: all.map(() => false),
})
const recordOf = (all: readonly Trip[]): RecordFacts => ({
  trips: {
    id: all.map((_, i) => 100 + i),
    past: all.map((one) => one.past ?? false),
    onDay: all.map((one) => one.onDay),
    season: all.map((one) => one.season ?? 'any'),
    asked: all.map((one) => one.asked ?? 'pot'),
    rain: all.map(() => ''),
    lowC: all.map(() => null),
    expectedLowC: all.map(() => null),
    newestItemId: all.map((one) => one.newest ?? 1000),
  },
  taken: {
    tripId: all.flatMap(({ taken = [] }, i) => taken.map(() => 100 + i)),
    itemId: all.flatMap(({ taken = [] }) => taken.map(([row]) => row + 1)),
    use: all.flatMap(({ taken = [] }) => taken.map(([, use]) => use)),
  },
  away: {
    tripId: all.flatMap(({ away = [] }, i) => away.map(() => 100 + i)),
    itemId: all.flatMap(({ away = [] }) => away.map((row) => row + 1)),
  },
})
const lists = (things: readonly Thing[], trips: readonly Trip[]) => letGoLists(thingsOf(things), recordOf(trips), new Map(), today)
const days = (count: number): readonly Trip[] => Array.from({ length: count }, (_, i) => ({ onDay: `20${20 + Math.floor(i / 12)}-${String(1 + (i % 12)).padStart(2, '0')}-05` })) // prettier-ignore

describe('the lists', () => {
  test('0 of 8 stayed home; 0 of 7 is seldom; what nobody could do without is not offered', () => {
    const eight = lists([{}, {}], days(8))
    expect(eight.stayedHome.map(({ row, fit, taken }) => [row, fit, taken])).toEqual([
      [1, 8, 0],
      [0, 8, 0],
    ]) // heavier first
    expect(eight.stayedHome[0]!.use.evidence).toBeCloseTo(0.8128, 4) // provisions.md 8.1
    expect(lists([{}, {}], days(7)).seldom.map(({ withheld }) => withheld)).toEqual([[], []])
    expect(lists([{}], days(8)).seldom.map(({ withheld }) => withheld)).toEqual([['nothing-else-serves']])
    expect(lists([{ tags: 'old\nkeep' }, {}], days(8)).seldom.map(({ withheld }) => withheld)).toEqual([['marked-keep']])
  })
  test('carried for nothing: unknown and past trips say nothing of use', () => {
    const trips = days(16).map((trip, i): Trip => ({ ...trip, taken: [[0, i < 8 ? 'unused' : 'unknown'], [1, 'used']] })) // prettier-ignore
    const { carriedForNothing, stayedHome, seldom } = lists([{}, {}], trips)
    expect(carriedForNothing.map(({ row, used, said, taken }) => [row, used, said, taken])).toEqual([[0, 0, 8, 16]])
    expect([...stayedHome, ...seldom]).toEqual([])
  })
  test('fit: the duty was asked, it was owned, its season came', () => {
    const trips: readonly Trip[] = [
      { onDay: '2023-01-05', season: 'winter', newest: 1 },
      { onDay: '2023-07-05', season: 'summer', asked: 'stove' },
      { onDay: '2024-01-05', season: 'winter', away: [0] },
      { onDay: '2024-07-15', season: 'summer', past: true },
      { onDay: '2025-01-05', season: 'winter', newest: 1 },
    ]
    const things = [{ cameOn: null }, { cameOn: '2024-02-01' }, { seasons: 'winter' }, { tags: 'summer only' }]
    const { index } = lists(things, trips)
    const marks = (row: number) => marksOf(index, thingsOf(things), row).map((mark) => (mark === 'stayed' ? 1 : 0))
    expect(marks(0)).toEqual([1, 0, 0, 0, 1]) // nothing says that it was there on the past trip
    expect(marks(1)).toEqual([0, 0, 1, 1, 1]) // newer than the first; by its date there on the last
    expect(marks(2)).toEqual([1, 0, 1, 0, 1])
    expect(marks(3)).toEqual([0, 0, 0, 1, 0])
  })
  test('lent out is not forgotten, and what took over is named', () => {
    const trips = days(9).map((trip): Trip => ({ ...trip, taken: [[1, 'used']] }))
    const things = [{}, {}, { status: 'lent' as const }]
    const all = lists(things, trips)
    expect(all.lent).toEqual([2])
    expect(replacedBy(all, thingsOf(things), 0)).toEqual([1])
  })
  test('a thing without duties is kept if its name is one of safety', () => {
    const trips = days(9).map((trip): Trip => ({ ...trip, taken: [[0, 'unused'], [1, 'unused']] })) // prettier-ignore
    const { kept, carriedForNothing } = lists(
      [
        { duties: '', name: 'First aid kit' },
        { duties: '', name: 'Paperback' },
      ],
      trips,
    )
    expect([kept.map(({ row }) => row), carriedForNothing.map(({ row }) => row)]).toEqual([[0], [1]])
  })
})

const someDuties = duties.map(({ code }) => code).filter((_, i) => i % 4 === 0)
const closet = fc.array(fc.record({ duties: fc.constantFrom(...someDuties, ''), cameOn: fc.constantFrom(null, '2019-02-03', '2023-05-01'), status: fc.constantFrom<Status>('owned', 'owned', 'lent', 'sold') }), { minLength: 1, maxLength: 12 }) // prettier-ignore
const trips = (count: number) =>
  fc.array(
    fc.record({
      asked: fc.constantFrom(someDuties.join(' '), someDuties[0]!, ''),
      past: fc.boolean(),
      newest: fc.nat({ max: 13 }),
      taken: fc.uniqueArray(fc.tuple(fc.nat({ max: count - 1 }), fc.constantFrom('used', 'unused', 'unknown', 'failed')), { maxLength: 4, selector: ([row]) => row }), // prettier-ignore
    }),
    { maxLength: 70 },
  )
const dated = (all: readonly Omit<Trip, 'onDay'>[]): readonly Trip[] => all.map((trip, i) => ({ ...trip, ...days(i + 1)[i]! }))

describe('properties', () => {
  test('counts are those of looking through trip by trip; evidence is a beta’s (statistics package)', () => {
    fc.assert(
      fc.property(
        closet.chain((things) => fc.tuple(fc.constant(things), trips(things.length))),
        ([things, told]) => {
          // prettier-ignore
          const all = dated(told)
          const { stayedHome, carriedForNothing, seldom } = lists(things, all)
          for (const one of [...stayedHome, ...carriedForNothing, ...seldom]) {
            const thing = things[one.row]!
            const went = (trip: Trip) => trip.taken!.find(([row]) => row === one.row)
            const since = thing.cameOn ?? all.find(went)?.onDay ?? '9'
            const there = (trip: Trip) =>
              trip.past ? trip.onDay >= since : one.row + 1 <= trip.newest! || (thing.cameOn !== null && trip.onDay >= since)
            const fit = all.filter(
              (trip) => went(trip) ?? (there(trip) && thing.duties !== '' && trip.asked!.split(' ').includes(thing.duties)),
            )
            expect([one.fit, one.taken]).toEqual([fit.length, all.filter(went).length])
            const [k, n] = one.why === 'carried' ? [one.used, one.said] : [one.taken, one.fit]
            expect(one.use.evidence).toBeCloseTo(jStat.beta.cdf(0.1, 0.5 + k, 0.5 + n - k), 5)
          }
        },
      ),
      { numRuns: 60 },
    )
  })
  test('a safety item is never offered, nor what was used on every trip it was fit for; its rank is never above one never used', () => {
    fc.assert(
      fc.property(
        closet.chain((things) => fc.tuple(fc.constant(things), trips(things.length))),
        ([things, told]) => {
          // prettier-ignore
          const { stayedHome, carriedForNothing, seldom } = lists(things, dated(told))
          const kept = new Set(duties.filter((duty) => duty.kept).map(({ code }) => code))
          for (const list of [stayedHome, carriedForNothing, seldom]) {
            for (const { row, fit, used } of list) {
              expect(kept.has(things[row]!.duties)).toBe(false)
              expect(used === fit && fit > 0).toBe(false)
            }
            const evidences = list.map(({ use }) => use.evidence)
            expect(evidences).toEqual([...evidences].sort((a, b) => b - a))
          }
        },
      ),
      { numRuns: 60 },
    )
  })
})
