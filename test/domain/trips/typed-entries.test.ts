import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseClock, parseCount, parseMinutes, parsePlace, parseWind } from '../../../src-domain/trips/typed-entries.ts'

describe('a place', () => {
  // 55°24′ is 55 + 24/60 degrees by definition; the letters by ISO 6709's rule: north and east positive (memory).
  const same: readonly (readonly [string, number, number])[] = [
    ['55.4, -2.2', 55.4, -2.2],
    ['55.4 -2.2', 55.4, -2.2],
    ['55.4 −2.2', 55.4, -2.2],
    ['55.4N 2.2W', 55.4, -2.2],
    ['55°24′N 2°12′W', 55.4, -2.2],
    ['2°12′W, 55°24′N', 55.4, -2.2],
    ['N 55 24 0, W 2 12 0', 55.4, -2.2],
    ['55°24\'00"N, 2°12\'00"W', 55.4, -2.2],
    ['S 33.5, E 151', -33.5, 151],
    ['0, 180', 0, -180],
  ]
  test.each(same)('%s', (text, latDeg, lonDeg) => {
    const read = parsePlace(text)
    expect(read).toMatchObject({ ok: true })
    if (!read.ok) return
    expect(read.value.latDeg).toBeCloseTo(latDeg, 9)
    expect(read.value.lonDeg).toBeCloseTo(lonDeg, 9)
  })
  test.each(['', '55.4', 'here', '55.4N 2.2N', '-55 S, 2 W', '55 60 N, 2 W', 'N 55 S, 2 W', '1, 2, 3'])('refuses %j', (text) => {
    expect(parsePlace(text)).toMatchObject({ ok: false, fault: { code: 'quantity.unreadable' } })
  })
  test.each(['91, 0', '0, 181'])('%s is off the earth', (text) => {
    expect(parsePlace(text)).toMatchObject({ ok: false, fault: { code: 'quantity.too-large' } })
  })
  test('any pair written out is read again', () => {
    const lat = fc.integer({ min: -90_000_000, max: 90_000_000 })
    const lon = fc.integer({ min: -179_999_999, max: 179_999_999 })
    fc.assert(
      fc.property(lat, lon, fc.constantFrom(', ', ' ', '; '), (a, b, between) => {
        const [latDeg, lonDeg] = [a / 1e6, b / 1e6]
        const read = parsePlace(`${latDeg.toFixed(6)}${between}${lonDeg.toFixed(6)}`)
        expect(read.ok && read.value.latDeg).toBeCloseTo(latDeg, 9)
        expect(read.ok && read.value.lonDeg).toBeCloseTo(lonDeg, 9)
      }),
    )
  })
})

describe('a clock', () => {
  test.each([
    ['08:30', 510],
    ['8.30', 510],
    ['830', 510],
    ['0830', 510],
    ['8', 480],
    ['8:30 pm', 1230],
    ['12 am', 0],
    ['12:05 pm', 725],
    ['23:59', 1439],
  ])('%s', (text, minute) => expect(parseClock(text)).toEqual({ ok: true, value: minute }))
  test.each(['', '24:00', '8:60', '13 pm', '0 am', 'noon'])('refuses %j', (text) => expect(parseClock(text).ok).toBe(false))
})

describe('minutes', () => {
  test.each([
    ['45', 45],
    ['45 min', 45],
    ['1 h 30', 90],
    ['1:30', 90],
    ['1.5 h', 90],
    ['0', 0],
  ])('%s', (text, minutes) => expect(parseMinutes(text)).toEqual({ ok: true, value: minutes }))
  test.each(['', '-5', '25 h', 'long'])('refuses %j', (text) => expect(parseMinutes(text).ok).toBe(false))
})

describe('a wind', () => {
  // 1 mile is 1.609344 km (NIST Handbook 44, appendix C); the international knot is 1.852 km/h by definition; 1 m/s is 3.6 km/h.
  test.each([
    ['30', 30],
    ['30 km/h', 30],
    ['10 mph', 16.09344],
    ['10 m/s', 36],
    ['10 kn', 18.52],
  ])('%s', (text, kmh) => {
    const read = parseWind(text)
    expect(read.ok && read.value).toBeCloseTo(kmh, 9)
  })
  test('a bare number is in the unit asked', () => expect(parseWind('10', 'mph')).toMatchObject({ ok: true }))
  test.each(['', '-3', '500', 'gale'])('refuses %j', (text) => expect(parseWind(text).ok).toBe(false))
})

test('counts', () => {
  expect(parseCount('2', 100)).toEqual({ ok: true, value: 2 })
  expect(parseCount('2,5', 100, 1)).toEqual({ ok: true, value: 2.5 })
  expect(parseCount('2.5', 100).ok).toBe(false)
  expect(parseCount('101', 100)).toMatchObject({ ok: false, fault: { code: 'quantity.too-large' } })
})

test('any text gives a value within limits or a fault', () => {
  const text = fc.oneof(fc.string(), fc.stringMatching(/^[NSEWnsew0-9 .,;:°'"hkm/-]{0,30}$/))
  fc.assert(
    fc.property(text, (typed) => {
      const place = parsePlace(typed)
      if (place.ok) expect(Math.abs(place.value.latDeg) <= 90 && place.value.lonDeg >= -180 && place.value.lonDeg < 180.000001).toBe(true)
      const clock = parseClock(typed)
      if (clock.ok) expect(Number.isInteger(clock.value) && clock.value >= 0 && clock.value < 1440).toBe(true)
      const minutes = parseMinutes(typed)
      if (minutes.ok) expect(minutes.value >= 0 && minutes.value <= 1440).toBe(true)
      const wind = parseWind(typed)
      if (wind.ok) expect(wind.value >= 0 && wind.value <= 400).toBe(true)
    }),
    { numRuns: 500 },
  )
})
