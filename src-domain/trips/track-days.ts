/**
 * A track becomes days: its waypoints offered as camps and water, the way cut at the camps, one leg a day.
 * A waypoint further than 500 m off the way is offered as nothing (choice: further than that it belongs to another way).
 */
import type { Leg, WaterSource } from './brief.ts'
import { newLeg } from './legs.ts'
import type { HeightsFrom } from './track-heights.ts'
import { cutTrack, snap } from './track-places.ts'
import type { Track } from './track.ts'

const OFF_THE_WAY_M = 500

export interface Mark {
  readonly latDeg: number
  readonly lonDeg: number
  readonly name: string
}

export interface Offer {
  readonly name: string
  readonly atM: number
  readonly offM: number
  readonly camp: boolean
  readonly water: boolean
}

const campWords = /\b(camps?|campsite|bivouac|bivy|tent|hut|shelter|bothy|refuge|night)\b/iu
const waterWords = /\b(water|springs?|streams?|taps?|wells?|tarn|lakes?|loch|rivers?|creeks?|burn|beck|troughs?|fountain|brook)\b/iu

/** In the order of the way. What a waypoint is taken for at first is guessed by its name; the person decides. */
export function offersOf(track: Track, marks: readonly Mark[]): readonly Offer[] {
  const offers = marks.flatMap((mark) => {
    const at = snap(track, mark)
    if (at === null || at.offM > OFF_THE_WAY_M) return []
    return [{ name: mark.name, ...at, camp: campWords.test(mark.name), water: waterWords.test(mark.name) }]
  })
  return offers.sort((a, b) => a.atM - b.atM)
}

/** Places that cut the way into this many days of equal length. */
export function evenCuts(lengthM: number, days: number): readonly number[] {
  return Array.from({ length: Math.max(0, days - 1) }, (_, i) => (lengthM * (i + 1)) / days)
}

export interface Cut {
  readonly atM: number
  readonly name: string
}

/** One leg a day; all but the last end in a camp. Lengths, climbs and heights are rounded to the metre. */
export function legsAt(track: Track, camps: readonly Cut[], heightsFrom: HeightsFrom): readonly Leg[] {
  const endM = track.points.at(-1)?.atM ?? 0
  const cuts = camps.filter(({ atM }) => atM > 0 && atM < endM).toSorted((a, b) => a.atM - b.atM)
  const apart = cuts.filter(({ atM }, i) => i === 0 || atM - cuts[i - 1]!.atM >= 1)
  const stretches = cutTrack(
    track,
    apart.map(({ atM }) => atM),
    heightsFrom,
  )
  return stretches.map((one, i) => ({
    ...newLeg(i + 1, i < apart.length),
    name: apart[i] === undefined || apart[i].name === '' ? '' : `to ${apart[i].name}`,
    lengthM: Math.round(one.lengthM),
    climbM: whole(one.climbM),
    descentM: whole(one.descentM),
    endHeightM: whole(one.endHeightM),
  }))
}

const whole = (value: number | null): number | null => (value === null ? null : Math.round(value))

/** Waypoints taken as water: not confirmed until the person says how sure they are. */
export const sourcesAt = (offers: readonly Offer[]): readonly WaterSource[] =>
  offers.filter((one) => one.water).map((one) => ({ atM: Math.round(one.atM), name: one.name, sure: 'likely', safe: false }))
