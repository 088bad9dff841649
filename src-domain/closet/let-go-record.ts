/**
 * The record as letting go reads it: for each thing the trips it was fit for, those it went on, those of which something was said, and those it was used on.
 *   fit: it was owned then, one of its duties was asked (or it went along), and its season tags, if any, name the trip's season
 *   owned: what the record of that day says; a past trip, added afterwards, goes by the closet's dates, without one by its first trip or weighing
 *   used: used or failed; a line of which nobody said anything was taken, never used or unused
 * Tags narrow further: *winter only* and its like, *wet only*, *frost only* (choice of words).
 */
import { addBits, clearBit, hasBit, keepBits, noBits, setBit, type Bits } from './trip-bits.ts'
import type { TaggedSeason } from './letting-go.ts'
import type { Status } from './vocabulary.ts'

export interface RecordFacts {
  readonly trips: {
    readonly id: readonly number[]
    readonly past: readonly boolean[]
    readonly onDay: readonly string[]
    readonly season: readonly (TaggedSeason | 'any')[]
    readonly asked: readonly string[]
    readonly rain: readonly string[]
    readonly lowC: readonly (number | null)[]
    readonly expectedLowC: readonly (number | null)[]
    readonly newestItemId: readonly (number | null)[]
  }
  readonly taken: { readonly tripId: readonly number[]; readonly itemId: readonly (number | null)[]; readonly use: readonly string[] }
  readonly away: { readonly tripId: readonly number[]; readonly itemId: readonly number[] }
}

export interface ThingFacts {
  readonly id: readonly number[]
  readonly status: readonly Status[]
  readonly statusSince: readonly (string | null)[]
  readonly duties: readonly string[]
  readonly seasons: readonly string[]
  readonly tags: readonly string[]
  readonly cameOn: readonly (string | null)[]
}

export interface Gone {
  readonly taken: Bits
  readonly said: Bits
  readonly used: Bits
}

export interface TripRecordIndex {
  readonly count: number
  readonly onDay: readonly string[]
  /** The trips a thing went on. */
  readonly gone: (itemId: number) => Gone
  /** The trips it was fit for; `row` of the closet. Written into the bits that are given, which a whole closet shares. */
  readonly fit: (row: number, into?: Bits) => Bits
  /** The first day it is known to have been there; null: nothing says. */
  readonly ownedSince: (row: number) => string | null
}

/** Answers for every row of the closet; `firstWeighedOn` by item id. */
export function indexRecord(record: RecordFacts, things: ThingFacts, firstWeighedOn: ReadonlyMap<number, string>): TripRecordIndex {
  const { trips } = record
  const count = trips.id.length
  const at = new Map(trips.id.map((id, i) => [id, i]))
  const nothing: Gone = { taken: noBits(count), said: noBits(count), used: noBits(count) }
  const goneBy = goneOf(record, at, count)
  const gone = (itemId: number): Gone => goneBy.get(itemId) ?? nothing
  const ownedSince = (row: number): string | null => sinceOf(things, row, trips.onDay, gone(things.id[row]!), firstWeighedOn)
  const fitFor = fitByKind(record, count)
  const owned = ownedBits(record, things, at, ownedSince)
  const fit = (row: number, into = noBits(count)): Bits => {
    const own = keepBits(owned(row, into), fitFor(things.duties[row]!, things.seasons[row]!, things.tags[row]!))
    return addBits(own, gone(things.id[row]!).taken)
  }
  return { count, onDay: trips.onDay, gone, fit, ownedSince }
}

function goneOf({ taken }: RecordFacts, at: ReadonlyMap<number, number>, count: number): ReadonlyMap<number, Gone> {
  const gone = new Map<number, Gone>()
  for (const [i, itemId] of taken.itemId.entries()) {
    const trip = at.get(taken.tripId[i]!)
    if (itemId === null || trip === undefined) continue
    let one = gone.get(itemId)
    if (one === undefined) gone.set(itemId, (one = { taken: noBits(count), said: noBits(count), used: noBits(count) }))
    const use = taken.use[i]!
    setBit(one.taken, trip)
    if (use === 'used' || use === 'failed') setBit(one.used, trip)
    if (use === 'used' || use === 'failed' || use === 'unused') setBit(one.said, trip)
  }
  return gone
}

function sinceOf(
  things: ThingFacts,
  row: number,
  onDay: readonly string[],
  { taken }: Gone,
  firstWeighedOn: ReadonlyMap<number, string>,
): string | null {
  if (things.cameOn[row] != null) return things.cameOn[row]
  const first = onDay.findIndex((_, i) => hasBit(taken, i))
  const trip = first < 0 ? null : onDay[first]!
  const weighed = firstWeighedOn.get(things.id[row]!) ?? null
  return trip === null || (weighed !== null && weighed < trip) ? weighed : trip
}

type Fits = (duties: string, seasons: string, tags: string) => Bits

/** By duties, seasons and narrowing tags: things that share them share the answer. */
function fitByKind({ trips }: RecordFacts, count: number): Fits {
  const byDuty = new Map<string, Bits>()
  for (const [i, asked] of trips.asked.entries())
    for (const duty of asked.split(' ')) {
      if (!byDuty.has(duty)) byDuty.set(duty, noBits(count))
      setBit(byDuty.get(duty)!, i)
    }
  const where = (holds: (trip: number) => boolean): Bits => {
    const bits = noBits(count)
    for (let i = 0; i < count; i++) if (holds(i)) setBit(bits, i)
    return bits
  }
  const lowOf = (i: number): number | null => trips.lowC[i] ?? trips.expectedLowC[i] ?? null
  const narrowed: Readonly<Record<string, Bits>> = {
    'wet only': where((i) => trips.rain[i] === 'wet' || trips.rain[i] === 'showers'),
    'frost only': where((i) => (lowOf(i) ?? 1) < 0),
  }
  const inSeason = (season: string): Bits => where((i) => trips.season[i] === 'any' || trips.season[i] === season)
  const known = new Map<string, Bits>()
  return (duties, seasons, tags) => {
    const key = `${duties}|${seasons}|${tags}`
    let bits = known.get(key)
    if (bits === undefined) {
      const narrow = tags.split('\n').filter((tag) => tag.endsWith(' only'))
      bits = noBits(count)
      for (const duty of duties.split(' ')) if (duty !== '') addBits(bits, byDuty.get(duty.replace('*', '')) ?? noBits(count))
      const named = [...seasons.split('\n'), ...narrow.map((tag) => tag.slice(0, -' only'.length))].filter((one) => seasonNames.has(one))
      if (named.length > 0) keepBits(bits, named.map(inSeason).reduce(addBits))
      for (const tag of narrow) if (narrowed[tag] !== undefined) keepBits(bits, narrowed[tag])
      known.set(key, bits)
    }
    return bits
  }
}

const seasonNames: ReadonlySet<string> = new Set(['spring', 'summer', 'autumn', 'winter'])

/** Fresh bits of the trips at which a thing was owned. Rows are asked in any order; the run over ids is made once. */
function ownedBits(
  { trips, away }: RecordFacts,
  things: ThingFacts,
  at: ReadonlyMap<number, number>,
  ownedSince: (row: number) => string | null,
): (row: number, into: Bits) => Bits {
  const count = trips.id.length
  const frozen = noBits(count)
  for (const [i, past] of trips.past.entries()) if (!past) setBit(frozen, i)
  const byNewest = newestFirst(trips, frozen)
  const fromTrip = suffixes(trips.past)
  const awayFrom = Map.groupBy(away.itemId.keys(), (i) => away.itemId[i]!)
  return (row, bits) => {
    const id = things.id[row]!
    bits.set(byNewest(id))
    const since = ownedSince(row)
    const until = ['owned', 'lent', 'wished'].includes(things.status[row]!) ? null : things.statusSince[row]!
    const from = firstFrom(trips.onDay, since)
    if (until === null) addBits(bits, fromTrip.past[from]!)
    else for (let i = from; i < count; i++) if (trips.past[i] && trips.onDay[i]! < until) setBit(bits, i)
    if (things.cameOn[row] !== null) addBits(bits, fromTrip.frozen[from]!)
    for (const i of awayFrom.get(id) ?? []) {
      const trip = at.get(away.tripId[i]!)
      if (trip !== undefined) clearBit(bits, trip)
    }
    return bits
  }
}

/** For each trip, and past the last, the past and the frozen trips from it on. */
function suffixes(past: readonly boolean[]): { readonly past: readonly Bits[]; readonly frozen: readonly Bits[] } {
  const [pastFrom, frozenFrom] = [[noBits(past.length)], [noBits(past.length)]]
  for (let i = past.length - 1; i >= 0; i--) {
    pastFrom.push(new Uint32Array(pastFrom.at(-1)!))
    frozenFrom.push(new Uint32Array(frozenFrom.at(-1)!))
    setBit((past[i] ? pastFrom : frozenFrom).at(-1)!, i)
  }
  return { past: pastFrom.reverse(), frozen: frozenFrom.reverse() }
}

/** Trips whose newest item is this one or a later: things up to it were there. */
function newestFirst(trips: RecordFacts['trips'], frozen: Bits): (id: number) => Bits {
  const steps = trips.newestItemId
    .map((newest, trip) => ({ newest: newest ?? 0, trip }))
    .filter(({ trip }) => hasBit(frozen, trip))
    .sort((a, b) => a.newest - b.newest)
  const from: Bits[] = [new Uint32Array(frozen)]
  for (const { trip } of steps) {
    const next = new Uint32Array(from.at(-1)!)
    clearBit(next, trip)
    from.push(next)
  }
  return (id) => {
    let [low, high] = [0, steps.length]
    while (low < high) {
      const middle = (low + high) >>> 1
      if (steps[middle]!.newest < id) low = middle + 1
      else high = middle
    }
    return from[low]!
  }
}

/** The first trip on or after a day; past all where nothing says when. */
function firstFrom(onDay: readonly string[], since: string | null): number {
  if (since === null) return onDay.length
  let [low, high] = [0, onDay.length]
  while (low < high) {
    const middle = (low + high) >>> 1
    if (onDay[middle]! < since) low = middle + 1
    else high = middle
  }
  return low
}

export type TripMark = 'used' | 'carried' | 'stayed' | 'blank'

/** One mark a trip, oldest first. A trip of which nobody said how a thing did counts as carried. */
export function marksOf(index: TripRecordIndex, things: ThingFacts, row: number): readonly TripMark[] {
  const { taken, used } = index.gone(things.id[row]!)
  const fit = index.fit(row)
  return index.onDay.map((_, i) => (hasBit(used, i) ? 'used' : hasBit(taken, i) ? 'carried' : hasBit(fit, i) ? 'stayed' : 'blank'))
}
