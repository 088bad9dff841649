/**
 * Hours on the way without daylight: walking before dawn or after dusk, and evenings in camp.
 *   walking = share of start … start + (1 + b)·T·f that lies outside civil twilight        b break share, T law's hours, f pace factor
 *   evenings = nights that grow dark
 * The start is the day's, else 08:00 (estimate). Where the sun does not pass the line, the whole day is light or dark. Source: choice, on laws/sun.ts.
 */
import { Temporal } from 'temporal-polyfill'
import { sunOnDate } from '../laws/sun.ts'
import { daysOf, nightsOf, type Brief, type Trip } from './brief.ts'
import { hoursOfDay, routeOf } from './route.ts'
import type { Walker } from './walker.ts'

export const USUAL_START_MINUTE = 8 * 60

export type DarkHours =
  | { readonly ok: true; readonly walkingH: number; readonly evenings: number; readonly startEstimated: boolean }
  | {
      readonly ok: false
      readonly missing: 'nights' | 'dates' | 'place' | 'zone' | 'legs' | 'leg-length' | 'leg-climb' | 'leg-descent'
      readonly leg?: number
    }

export function darkHours(
  brief: Brief,
  trip: Pick<Trip, 'startsOn' | 'endsOn' | 'zone'>,
  walker: Pick<Walker, 'paceFactor' | 'breakShare'>,
): DarkHours {
  const nights = nightsOf(trip, brief)
  if (nights === null) return { ok: false, missing: 'nights' }
  if (trip.startsOn === null) return { ok: false, missing: 'dates' }
  if (brief.place === null) return { ok: false, missing: 'place' }
  if (trip.zone === '') return { ok: false, missing: 'zone' }
  const route = routeOf(brief, walker)
  if (!route.ok) return { ok: false, missing: route.missing === 'legs' ? 'legs' : `leg-${route.missing}`, leg: route.leg }
  let walkingH = 0
  let evenings = 0
  let startEstimated = false
  const days = Math.max(daysOf(trip) ?? nights + 1, nights)
  for (let day = 1; day <= days; day++) {
    const date = Temporal.PlainDate.from(trip.startsOn)
      .add({ days: day - 1 })
      .toString()
    const startMinute = brief.days.find((one) => one.day === day)?.startMinute ?? null
    const hours = hoursOfDay(route.legs, day) * (1 + walker.breakShare)
    if (hours > 0 && startMinute === null) startEstimated = true
    walkingH += hours > 0 ? darkWithin(brief.place, date, trip.zone, startMinute ?? USUAL_START_MINUTE, hours) : 0
    if (day <= nights && growsDark(brief.place, date, trip.zone)) evenings++
  }
  return { ok: true, walkingH, evenings, startEstimated }
}

type At = { readonly latDeg: number; readonly lonDeg: number }

/** Hours of a walk outside civil twilight, on the day it starts. */
export function darkWithin(place: At, date: string, zone: string, startMinute: number, hours: number): number {
  const sun = sunOnDate(place, date, zone)
  if (sun === null || sun.twilight === 'stays-down') return sun === null ? 0 : hours
  if (sun.twilight === 'stays-up') return 0
  const startMs = Temporal.PlainDate.from(date)
    .toZonedDateTime({ timeZone: zone, plainTime: Temporal.PlainTime.from({ hour: 0 }) })
    .add({ minutes: startMinute }).epochMilliseconds
  const endMs = startMs + hours * HOUR_MS
  const lightFrom = sun.dawnMs ?? -Infinity
  const lightTo = sun.duskMs ?? Infinity
  const beforeMs = Math.max(0, Math.min(endMs, lightFrom) - startMs)
  const afterMs = Math.max(0, endMs - Math.max(startMs, lightTo))
  return (beforeMs + afterMs) / HOUR_MS
}

const HOUR_MS = 3_600_000

function growsDark(place: At, date: string, zone: string): boolean {
  const sun = sunOnDate(place, date, zone)
  return sun === null || sun.twilight !== 'stays-up'
}
