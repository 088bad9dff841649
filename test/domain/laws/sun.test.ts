import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { sunAround, sunOnDate } from '../../../src-domain/laws/sun.ts'
import { noaaDay } from '../../oracles/noaa-sun.ts'
import { ourDay, rows } from '../../published/sun.ts'
import { meets } from '../../published/published.ts'

describe('published values', () => meets(rows))

const date = fc.integer({ min: 0, max: 20_000 }).map((day) => new Date(Date.UTC(1995, 0, 1) + day * 86_400_000).toISOString().slice(0, 10))
const lonDeg = fc.double({ min: -179.9, max: 179.9, noNaN: true })
const events = ['dawn', 'rise', 'set', 'dusk'] as const

describe('the second route', () => {
  // Up to 60° the sun crosses steeply: 0.59 min was the worst of 730 published events for the NOAA lines, 0.53 for the package, both against rounded minutes.
  test('the NOAA equations agree within a minute up to 60°, where both see an event', () => {
    fc.assert(
      fc.property(date, fc.double({ min: -60, max: 60, noNaN: true }), lonDeg, (day, latDeg, lon) => {
        const [ours, theirs] = [ourDay({ latDeg, lonDeg: lon, date: day }), noaaDay(day, latDeg, lon)]
        const zero = Date.parse(`${day}T00:00:00Z`)
        const apart = (ms: number | null, minute: number | null) =>
          ms === null || minute === null ? 0 : Math.abs((ms - zero) / 60_000 - minute)
        return Math.max(apart(ours.noonMs, theirs.noonMin), ...events.map((name) => apart(ours[`${name}Ms`], theirs[name]))) < 1
      }),
    )
  })
})

describe('the order of a day', () => {
  test('dawn, rise, noon, set, dusk follow each other within one day', () => {
    fc.assert(
      fc.property(date, fc.double({ min: -88, max: 88, noNaN: true }), lonDeg, (day, latDeg, lon) => {
        const { dawnMs, riseMs, noonMs, setMs, duskMs } = ourDay({ latDeg, lonDeg: lon, date: day })
        const times = [dawnMs, riseMs, noonMs, setMs, duskMs].filter((ms) => ms !== null)
        return times.every((ms, i) => i === 0 || ms > times[i - 1]!) && times.at(-1)! - times[0]! < 86_460_000
      }),
    )
  })
  test('half a turn of the earth later it is the same date’s noon there', () => {
    for (const lon of [-179, -90, 0, 90, 179]) {
      const { noonMs } = ourDay({ latDeg: 40, lonDeg: lon, date: '2026-05-04' })
      // The equation of time stays within 17 minutes of mean noon.
      expect(Math.abs(noonMs - (Date.parse('2026-05-04T12:00:00Z') - lon * 240_000))).toBeLessThan(17 * 60_000)
    }
  })
})

describe('places without a sunrise', () => {
  const north = { latDeg: 69.6489, lonDeg: 18.95508 }
  test('polar night with twilight', () => {
    const day = ourDay({ ...north, date: '2026-12-21' })
    expect([day.riseMs, day.setMs, day.sun, day.twilight]).toEqual([null, null, 'stays-down', 'passes'])
  })
  test('midnight sun: neither line is passed, the sun stays up', () => {
    const day = ourDay({ ...north, date: '2026-06-21' })
    expect([day.dawnMs, day.riseMs, day.setMs, day.duskMs]).toEqual([null, null, null, null])
    expect([day.sun, day.twilight]).toEqual(['stays-up', 'stays-up'])
  })
  test('further north in December there is not even twilight', () => {
    const day = ourDay({ latDeg: 78.22334, lonDeg: 15.64689, date: '2026-12-21' })
    expect([day.dawnMs, day.duskMs, day.sun, day.twilight]).toEqual([null, null, 'stays-down', 'stays-down'])
  })
  // At the December solstice (declination −23.44°) the noon stands 0.9° under the horizon here: refraction alone does not make a day.
  test('a noon just under the horizon is still a night', () => {
    expect(ourDay({ latDeg: 67.47, lonDeg: 20, date: '2026-12-21' }).sun).toBe('stays-down')
    expect(ourDay({ latDeg: 67.3, lonDeg: 20, date: '2026-12-21' }).sun).toBe('passes')
  })
  test('a white night: the sun sets, civil twilight does not end', () => {
    const day = ourDay({ latDeg: 61.5, lonDeg: 24, date: '2026-06-21' })
    expect([day.sun, day.twilight]).toEqual(['passes', 'stays-up'])
    expect(day.duskMs).toBeNull()
  })
  test('too near to a pole, or no place at all: nothing is said', () => {
    expect(sunAround({ latDeg: 89.5, lonDeg: 0 }, 0)).toBeNull()
    expect(sunAround({ latDeg: Number.NaN, lonDeg: 0 }, 0)).toBeNull()
    expect(sunAround({ latDeg: 10, lonDeg: 181 }, 0)).toBeNull()
  })
})

describe('local dates', () => {
  const local = (zone: string, ms: number) =>
    new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' }).format(ms)
  // Zones far from their longitude: the calendar of Apia (13.8 S 171.8 W) runs at UTC+13, of Kiritimati (1.9 N 157.4 W) at +14.
  test.each([
    ['Pacific/Apia', -13.83, -171.77],
    ['Pacific/Kiritimati', 1.87, -157.4],
    ['America/Denver', 39.742476, -105.1786],
    ['Asia/Urumqi', 43.8, 87.6],
    ['Pacific/Auckland', -36.85, 174.76],
  ])('rise and set of a date in %s fall on that date there', (zone, latDeg, lon) => {
    for (const day of ['2026-01-15', '2026-03-29', '2026-07-01']) {
      const sun = sunOnDate({ latDeg, lonDeg: lon }, day, zone)!
      expect([local(zone, sun.riseMs!).slice(0, 10), local(zone, sun.setMs!).slice(0, 10)]).toEqual([day, day])
    }
  })
  test('asked twice it is the same day', () => {
    expect(sunOnDate({ latDeg: 45, lonDeg: 7 }, '2026-08-01', 'Europe/Rome')).toBe(
      sunOnDate({ latDeg: 45, lonDeg: 7 }, '2026-08-01', 'Europe/Rome'),
    )
  })
})
