import { Temporal } from 'temporal-polyfill'
import { given, type Figure } from '../figures/figure.ts'
import type { Passing, SunDay } from '../laws/sun.ts'
import { sunOnDate } from '../laws/sun.ts'
import type { Brief, Trip } from './brief.ts'

/**
 * Light on each day of a trip, in minutes of that local day (past midnight over 1440).
 * Where the sun does not rise, civil dusk stands for sunset and dawn for sunrise. Local time comes from the trip's zone, converted last.
 */
export interface DayLight {
  readonly date: string
  readonly dawnMin: number | null
  readonly riseMin: number | null
  readonly setMin: number | null
  readonly duskMin: number | null
  readonly sun: Passing
  readonly twilight: Passing
}

export type LightFound =
  { readonly ok: true; readonly light: DayLight } | { readonly ok: false; readonly missing: 'place' | 'dates' | 'zone' | 'sun' }

/** The light of day n, 1 for the first. `sun`: too near to a pole. */
export function lightOfDay(brief: Pick<Brief, 'place'>, trip: Pick<Trip, 'startsOn' | 'zone'>, day: number): LightFound {
  if (brief.place === null) return { ok: false, missing: 'place' }
  if (trip.startsOn === null) return { ok: false, missing: 'dates' }
  if (trip.zone === '') return { ok: false, missing: 'zone' }
  const key = `${brief.place.latDeg} ${brief.place.lonDeg} ${trip.zone} ${trip.startsOn} ${day}`
  const known = kept.get(key)
  if (known !== undefined) return known
  const found = findLight(brief.place, trip.startsOn, trip.zone, day)
  if (kept.size >= KEPT_DAYS) kept.clear()
  kept.set(key, found)
  return found
}

// Reading a time by a zone's wall clock is slow (0.1 ms), and a brief asks the same days at every keystroke.
const kept = new Map<string, LightFound>()
const KEPT_DAYS = 1000

function findLight(place: NonNullable<Brief['place']>, startsOn: string, zone: string, day: number): LightFound {
  const date = Temporal.PlainDate.from(startsOn).add({ days: day - 1 })
  const sun = sunOnDate(place, date.toString(), zone)
  return sun === null ? { ok: false, missing: 'sun' } : { ok: true, light: localLight(sun, date, zone) }
}

function localLight(sun: SunDay, date: Temporal.PlainDate, zone: string): DayLight {
  const minute = (ms: number | null) => (ms === null ? null : minuteOfDay(ms, date, zone))
  const isDark = sun.sun === 'stays-down'
  return {
    date: date.toString(),
    dawnMin: minute(sun.dawnMs),
    riseMin: minute(isDark ? sun.dawnMs : sun.riseMs),
    setMin: minute(isDark ? sun.duskMs : sun.setMs),
    duskMin: minute(sun.duskMs),
    sun: sun.sun,
    twilight: sun.twilight,
  }
}

/** By the wall clock there, seconds as a fraction; the day after counts on from 1440. */
function minuteOfDay(ms: number, date: Temporal.PlainDate, zone: string): number {
  const there = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone)
  const daysOn = date.until(there.toPlainDate()).days
  return daysOn * 1440 + there.hour * 60 + there.minute + (there.second + there.millisecond / 1000) / 60
}

/** A minute of the day that the sun gives, as a figure that opens to how it is defined. */
export function sunFigure(name: string, minute: number, { latDeg, lonDeg }: NonNullable<Brief['place']>): Figure<'clock'> {
  return {
    ...given(minute, 'clock', 'worked'),
    working: {
      name,
      formula: 'the centre of the sun 50′ (sunset) or 6° (civil dusk) below a flat horizon',
      source: { cite: 'definitions of NOAA and USNO; events by the package astronomy-engine', known: 'read' },
      cautions: ['Valley walls hide the sun early; forest darkens earlier.'],
      given: [
        { name: 'latitude', figure: given(latDeg, 'deg', 'given') },
        { name: 'longitude', figure: given(lonDeg, 'deg', 'given') },
      ],
    },
  }
}
