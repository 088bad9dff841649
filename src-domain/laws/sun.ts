import { Body, Equator, Horizon, Observer, SearchAltitude, SearchHourAngle, SearchRiseSet } from 'astronomy-engine'
import { Temporal } from 'temporal-polyfill'

/**
 * When the sun rises, stands highest and sets at a place on a local date, and when civil twilight begins and ends.
 *   rise, set: the centre 50′ below a flat horizon (34′ refraction, 16′ half-disc); twilight: the centre 6° below
 * A day is taken from one lowest point of the sun to the next about the local noon, so that the evening belongs to its own date wherever the place lies.
 * Times are milliseconds since 1970, UTC; null when the sun does not pass that line on that day.
 * Range: |latitude| ≤ 89°; nearer to a pole a day has no morning and evening.
 * Source: definitions by NOAA and USNO (read); events by the package astronomy-engine.
 * Agreement: published USNO minutes of nine places within a minute; the NOAA equations within a minute over random places and dates.
 * Caution: valley walls hide the sun early, forest darkens earlier, refraction varies; no dip of the horizon is added for height.
 */
export interface SunDay {
  readonly dawnMs: number | null
  readonly riseMs: number | null
  readonly noonMs: number
  readonly setMs: number | null
  readonly duskMs: number | null
  /** Without a rise or set: does the sun stay up or down all day? */
  readonly sun: Passing
  /** The same of the line 6° below. */
  readonly twilight: Passing
}
export type Passing = 'passes' | 'stays-up' | 'stays-down'

export interface Place {
  readonly latDeg: number
  readonly lonDeg: number
}

/** The sun's day at a place on a local civil date (ISO) of an IANA zone; null too near to a pole. */
export function sunOnDate(place: Place, isoDate: string, zone: string): SunDay | null {
  const key = `${isoDate} ${zone}`
  const noonMs =
    noons.get(key) ?? Temporal.PlainDate.from(isoDate).toZonedDateTime({ timeZone: zone, plainTime: '12:00' }).epochMilliseconds
  if (noons.size >= KEPT_DAYS) noons.clear()
  noons.set(key, noonMs)
  return sunAround(place, noonMs)
}

/** The sun's day whose noon lies nearest to a moment. Days asked before are kept: a brief asks the same ones at every keystroke. */
export function sunAround({ latDeg, lonDeg }: Place, nearNoonMs: number): SunDay | null {
  if (!(Math.abs(latDeg) <= 89 && Math.abs(lonDeg) <= 180)) return null
  const key = `${latDeg} ${lonDeg} ${nearNoonMs}`
  const known = kept.get(key)
  if (known) return known
  const day = findDay(new Observer(latDeg, lonDeg, 0), nearNoonMs)
  if (kept.size >= KEPT_DAYS) kept.clear()
  kept.set(key, day)
  return day
}

const DAY_MS = 86_400_000
const KEPT_DAYS = 1000
const kept = new Map<string, SunDay>()
const noons = new Map<string, number>()
const RISE_ALTITUDE_DEG = -50 / 60
const TWILIGHT_DEG = -6

function findDay(observer: Observer, nearNoonMs: number): SunDay {
  // The first noon after twelve hours before the moment is the nearest one.
  const noon = SearchHourAngle(Body.Sun, observer, 0, new Date(nearNoonMs - DAY_MS / 2), 1)
  const noonMs = noon.time.date.getTime()
  const morning = { fromMs: lowestPoint(observer, noonMs, -1), toMs: noonMs }
  const evening = { fromMs: noonMs, toMs: lowestPoint(observer, noonMs, 1) }
  const riseMs = event(morning, (from, days) => SearchRiseSet(Body.Sun, observer, 1, from, days))
  const setMs = event(evening, (from, days) => SearchRiseSet(Body.Sun, observer, -1, from, days))
  const dawnMs = event(morning, (from, days) => SearchAltitude(Body.Sun, observer, 1, from, days, TWILIGHT_DEG))
  const duskMs = event(evening, (from, days) => SearchAltitude(Body.Sun, observer, -1, from, days, TWILIGHT_DEG))
  const highestDeg = geometricAltitude(observer, noon.time.date)
  return {
    dawnMs,
    riseMs,
    noonMs,
    setMs,
    duskMs,
    sun: passing(riseMs, setMs, highestDeg > RISE_ALTITUDE_DEG),
    twilight: passing(dawnMs, duskMs, highestDeg > TWILIGHT_DEG),
  }
}

/** The lines are geometric: refraction must not lift a noon that stays just below. */
function geometricAltitude(observer: Observer, at: Date): number {
  const { ra, dec } = Equator(Body.Sun, at, observer, true, true)
  return Horizon(at, observer, ra, dec).altitude
}

interface Span {
  readonly fromMs: number
  readonly toMs: number
}

/** The sun's lower culmination before (−1) or after (+1) a noon. */
function lowestPoint(observer: Observer, noonMs: number, direction: -1 | 1): number {
  return SearchHourAngle(Body.Sun, observer, 12, new Date(noonMs), direction).time.date.getTime()
}

function event({ fromMs, toMs }: Span, search: (from: Date, days: number) => { readonly date: Date } | null): number | null {
  const found = search(new Date(fromMs), (toMs - fromMs) / DAY_MS)
  return found === null ? null : found.date.getTime()
}

function passing(upMs: number | null, downMs: number | null, isUpAtNoon: boolean): Passing {
  if (upMs !== null || downMs !== null) return 'passes'
  return isUpAtNoon ? 'stays-up' : 'stays-down'
}
