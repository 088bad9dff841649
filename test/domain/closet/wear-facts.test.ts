import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { beforeTrip, careOf } from '../../../src-domain/closet/care.ts'
import { indexWear, type CounterColumns, type WearThing, type WornTrips } from '../../../src-domain/closet/wear-facts.ts'
import { lifeShare, wearOf } from '../../../src-domain/closet/wear.ts'

const today = '2026-06-15'
const none: CounterColumns = { itemId: [], code: [], amount: [], notedOn: [] }
const counters = (...all: readonly (readonly [number, string, number, string | null])[]): CounterColumns => ({
  itemId: all.map(([id]) => id),
  code: all.map(([, code]) => code),
  amount: all.map(([, , amount]) => amount),
  notedOn: all.map(([, , , on]) => on),
})
interface Trip {
  readonly on: string
  readonly nights?: number | null
  readonly km?: number | null
  readonly drunkMl?: number
  readonly taken: readonly (readonly [number, string])[]
}
const recordOf = (trips: readonly Trip[]): WornTrips => ({
  trips: {
    id: trips.map((_, i) => i + 1),
    onDay: trips.map(({ on }) => on),
    nights: trips.map(({ nights = 2 }) => nights),
    lengthM: trips.map(({ km = 40 }) => (km === null ? null : km * 1000)),
  },
  taken: {
    tripId: trips.flatMap(({ taken }, i) => taken.map(() => i + 1)),
    itemId: trips.flatMap(({ taken }) => taken.map(([id]) => id)),
    use: trips.flatMap(({ taken }) => taken.map(([, use]) => use)),
  },
  legs: { tripId: trips.map((_, i) => i + 1), drunkMl: trips.map(({ drunkMl }) => drunkMl ?? null) },
})
const thing = (id: number, duty: string, traits: WearThing['traits'] = []): WearThing => ({
  ...{ id, kitArea: 'extras', duties: duty === '' ? [] : [duty], traits, cameOn: '2020-01-01', expiresOn: null },
})
const shoes = thing(1, 'shoes')

describe('counters fed by debriefs', () => {
  const trips: readonly Trip[] = [
    { on: '2024-05-01', km: 60, taken: [[1, 'used'], [2, 'used']] }, // prettier-ignore
    { on: '2025-05-01', km: 50, taken: [[1, 'unused'], [2, 'failed']] }, // prettier-ignore
    { on: '2026-05-01', km: 30, taken: [[1, 'unknown']] },
    { on: '2026-06-01', km: null, nights: null, taken: [[1, 'used']] },
  ]
  test('used and failed wear; unused does not; unsaid does, marked estimated; an unknown length adds nothing', () => {
    const facts = indexWear(recordOf(trips), none).factsOf(shoes, today)
    expect(facts.entries).toEqual([{ on: '2024-05-01', units: 60, estimated: false }, { on: '2026-05-01', units: 30, estimated: true }, { on: '2026-06-01', units: 0, estimated: false }]) // prettier-ignore
    // One of the last two years wore it, seen over the two whole years.
    expect([facts.fitTrips, facts.seenYears]).toEqual([1, 2])
    expect(lifeShare(facts, today)).toBeCloseTo(90 / 800, 9) // light shoes 800 km, provisions.md 7.1
  })
  test('what was used before this program counts, and an own life replaces the class’s', () => {
    const facts = indexWear(recordOf(trips), counters([1, 'km', 300, null], [1, 'life', 600, null])).factsOf(shoes, today)
    expect(lifeShare(facts, today)).toBeCloseTo(390 / 600, 9)
  })
  test('litres of the trip wear its filter; a renewal starts the count again', () => {
    const filter = thing(2, '', [{ code: 'treatment-kind', text: 'filter' }])
    const drunk = trips.map((trip) => ({ ...trip, drunkMl: 8000 }))
    const used = (columns: CounterColumns) => {
      const wear = wearOf(indexWear(recordOf(drunk), columns).factsOf(filter, today), today)
      return wear.kind === 'counted' ? wear.used : null
    }
    expect(used(none)).toBe(16)
    expect(used(counters([2, 'renewed', 1, '2025-01-01']))).toBe(8)
  })
  test('more use never lengthens life, nor brings back a date', () => {
    const km = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(km, fc.double({ min: 1, max: 300, noNaN: true }), (told, more) => {
        const at = (lengths: readonly number[]) =>
          indexWear(recordOf(lengths.map((one, i) => ({ on: `2025-0${i + 1}-01`, km: one, taken: [[1, 'used']] }))), none).factsOf(
            shoes,
            today,
          )
        const [less, longer] = [at(told), at([told[0]! + more, ...told.slice(1)])]
        expect(lifeShare(longer, today)!).toBeGreaterThanOrEqual(lifeShare(less, today)!)
        const [a, b] = [wearOf(less, today), wearOf(longer, today)]
        if (a.kind !== 'counted' || b.kind !== 'counted') throw new Error('shoes are counted')
        expect(b.left).toBeLessThanOrEqual(a.left)
        expect(b.past).toBeGreaterThanOrEqual(a.past)
      }),
      { numRuns: 40 },
    )
  })
})

describe('care and the next trip', () => {
  const shell = thing(3, 'rain-shell')
  const worn = (count: number): readonly Trip[] => Array.from({ length: count }, (_, i) => ({ on: `2025-${String(i + 1).padStart(2, '0')}-01`, nights: 4, taken: [[3, 'used']] })) // prettier-ignore
  test('a shell is due after 25 days worn (provisions.md 7.1), soon when the next trip brings it there, and not after it was done', () => {
    const state = (trips: readonly Trip[], columns = none, days = 0) =>
      careOf(shell, indexWear(recordOf(trips), columns), { days }).find(({ code }) => code === 'reproofed')!.state
    expect(state(worn(5))).toBe('due')
    expect(state(worn(3))).toBe('not due')
    expect(state(worn(3), none, 10)).toBe('due soon')
    expect(state(worn(5), counters([3, 'reproofed', 1, '2025-06-01']))).toBe('not due')
  })
  test('before the trip: worn by its end, dated before its end, damp, asked to be mended and not mended since', () => {
    const canister = { ...thing(4, 'medicine'), expiresOn: '2026-07-01' }
    const trips = [{ on: '2025-05-01', km: 700, taken: [[1, 'used']] }] as const // prettier-ignore
    const index = indexWear(recordOf(trips), none)
    const see = (row: number, of: WearThing, mark: '' | 'damp' = '', mendOn: string | null = null) => ({ row, thing: of, mark, mendOn })
    const about = { endsOn: '2026-07-03', nights: 2, km: 60 }
    expect(beforeTrip([see(0, shoes), see(1, canister), see(2, shell, 'damp', '2025-05-01')], index, about, today).map(({ kind, row }) => [kind, row])).toEqual([['worn', 0], ['dated', 1], ['marked', 2], ['mend', 2]]) // prettier-ignore
    const mended = indexWear(recordOf(trips), counters([3, 'mended', 1, '2025-05-02']))
    expect(beforeTrip([see(2, shell, '', '2025-05-01')], mended, about, today)).toEqual([])
    expect(beforeTrip([see(0, shoes)], index, { ...about, km: 5 }, today)).toEqual([])
  })
})
