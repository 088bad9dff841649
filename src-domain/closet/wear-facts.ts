/**
 * What wore a thing: the trips it went on, by the counter of its class, and what the person said of before, of renewals and of its own life.
 *   nights, km, days of the trip · litres drunk on it · cycles as on a usual trip (estimated) · washes and years: the person's figures, the calendar
 *   unused on a trip: nothing; of which nobody said: counted, marked estimated · a trip whose nights or length nobody said: nothing
 * Rate: the trips of the last two years on which it was worn.
 */
import { lifeClassByCode, usualLifeClass, usualPerTrip, type Counter, type Worn } from './lives.ts'
import type { WearEntry, WearFacts } from './wear.ts'

export interface WornTrips {
  readonly trips: {
    readonly id: readonly number[]
    readonly onDay: readonly string[]
    readonly nights: readonly (number | null)[]
    readonly lengthM: readonly (number | null)[]
  }
  readonly taken: { readonly tripId: readonly number[]; readonly itemId: readonly (number | null)[]; readonly use: readonly string[] }
  readonly legs: { readonly tripId: readonly number[]; readonly drunkMl: readonly (number | null)[] }
}
export interface CounterColumns {
  readonly itemId: readonly number[]
  readonly code: readonly string[]
  readonly amount: readonly number[]
  readonly notedOn: readonly (string | null)[]
}

/** Codes of the person's figures beside the counters of use: an own life, and the last day of each care. */
export const OWN_LIFE = 'life'
export const careCodes = ['washed', 'reproofed', 'resealed', 'recharged', 'aired', 'mended', 'renewed'] as const
export type CareCode = (typeof careCodes)[number]

export interface WearThing extends Worn {
  readonly id: number
  readonly cameOn: string | null
  readonly expiresOn: string | null
}

interface Outing {
  readonly on: string
  readonly use: string
  readonly units: Readonly<Record<Counter, number>>
}

export interface WearIndex {
  readonly factsOf: (thing: WearThing, today: string) => WearFacts
  readonly outings: (itemId: number) => readonly Outing[]
  readonly counter: (itemId: number, code: string) => { readonly amount: number; readonly notedOn: string | null } | null
}

export function indexWear(record: WornTrips, counters: CounterColumns): WearIndex {
  const outingsBy = outingsOf(record)
  const said = new Map(
    counters.itemId.map((id, i) => [`${id} ${counters.code[i]!}`, { amount: counters.amount[i]!, notedOn: counters.notedOn[i]! }]),
  )
  const outings = (itemId: number): readonly Outing[] => outingsBy.get(itemId) ?? []
  const counter: WearIndex['counter'] = (itemId, code) => said.get(`${itemId} ${code}`) ?? null
  const factsOf = (thing: WearThing, today: string): WearFacts => {
    const lifeClass = usualLifeClass(thing)
    const count = lifeClassByCode.get(lifeClass ?? '')
    const went = count === undefined ? [] : outings(thing.id).filter(({ use }) => use !== 'unused')
    const recent = went.filter(({ on, units }) => on > twoYearsBefore(today) && units[count!.counter] > 0)
    const firstOn = record.trips.onDay[0] ?? null
    const since = [firstOn, thing.cameOn].reduce((late, on) => (on !== null && (late === null || on > late) ? on : late), null)
    return {
      lifeClass,
      ownLife: counter(thing.id, OWN_LIFE)?.amount ?? null,
      entries:
        count === undefined ? [] : [...beforeThis(counter(thing.id, count.counter)), ...went.map((one) => entryOf(one, count.counter))],
      renewedOn: count?.renewable ? renewals(thing.id, lifeClass === 'water-repellency' ? ['reproofed'] : ['renewed'], counter) : [],
      sinceOn: thing.cameOn,
      endsOn: thing.expiresOn,
      endedOn: null,
      fitTrips: recent.length,
      seenYears: since === null ? 0 : Math.min(2, Math.max(0, yearsBetween(since, today))),
      usualTripsPerYear: perYear(record.trips.onDay, today),
      byMonth: null,
    }
  }
  return { factsOf, outings, counter }
}

function outingsOf({ trips, taken, legs }: WornTrips): ReadonlyMap<number, readonly Outing[]> {
  const at = new Map(trips.id.map((id, i) => [id, i]))
  const litres = new Map<number, number>()
  for (const [i, tripId] of legs.tripId.entries()) litres.set(tripId, (litres.get(tripId) ?? 0) + (legs.drunkMl[i] ?? 0) / 1000)
  const units = trips.id.map((id, i) => unitsOf(trips.nights[i] ?? null, trips.lengthM[i] ?? null, litres.get(id) ?? 0))
  const byItem = new Map<number, Map<number, string>>()
  for (const [i, itemId] of taken.itemId.entries()) {
    const trip = at.get(taken.tripId[i]!)
    if (itemId === null || trip === undefined) continue
    if (!byItem.has(itemId)) byItem.set(itemId, new Map())
    const uses = byItem.get(itemId)!
    // In two lanes at once: it was used if either was.
    if (uses.get(trip) === undefined || uses.get(trip) === 'unused') uses.set(trip, taken.use[i]!)
  }
  const outing = ([trip, use]: readonly [number, string]): Outing => ({ on: trips.onDay[trip]!, use, units: units[trip]! })
  return new Map([...byItem].map(([itemId, uses]) => [itemId, [...uses].sort(([a], [b]) => a - b).map(outing)]))
}

const unitsOf = (nights: number | null, lengthM: number | null, litres: number): Readonly<Record<Counter, number>> => ({
  nights: nights ?? 0,
  days: nights === null ? 0 : nights + 1,
  km: (lengthM ?? 0) / 1000,
  litres,
  cycles: usualPerTrip.cycles,
  washes: 0,
  years: 0,
})

const entryOf = ({ on, use, units }: Outing, counter: Counter): WearEntry => ({
  on,
  units: units[counter],
  estimated: use === 'unknown' || counter === 'cycles',
})

const beforeThis = (one: { readonly amount: number; readonly notedOn: string | null } | null): readonly WearEntry[] =>
  one === null ? [] : [{ on: null, units: one.amount, estimated: true }]

function renewals(itemId: number, codes: readonly CareCode[], counter: WearIndex['counter']): readonly string[] {
  return codes.flatMap((code) => counter(itemId, code)?.notedOn ?? [])
}

const twoYearsBefore = (today: string): string => `${Number(today.slice(0, 4)) - 2}${today.slice(4)}`
const yearsBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / (365.2425 * 86_400_000)

/** The walker's own trips a year over the whole record; null: under a quarter of a year of it. */
function perYear(onDay: readonly string[], today: string): number | null {
  if (onDay.length === 0) return null
  const years = yearsBetween(onDay[0]!, today)
  return years < 0.25 ? null : onDay.length / years
}
