import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { uncertainty } from '../../../src-domain/figures/figure.ts'
import { emptyBrief, type Brief, type Leg } from '../../../src-domain/trips/brief.ts'
import { campNights, coldestLow } from '../../../src-domain/trips/nights.ts'
import { hoursBetween, hoursOfDay, routeOf } from '../../../src-domain/trips/route.ts'

const leg = (more: Partial<Leg> = {}): Leg => ({
  day: 1,
  name: '',
  lengthM: 10_000,
  climbM: 0,
  descentM: 0,
  terrain: 'path',
  endHeightM: null,
  camp: false,
  ...more,
})
const walker = { paceFactor: 1 }
const legsOf = (legs: readonly Leg[]) => {
  const route = routeOf({ legs }, walker)
  if (!route.ok) throw new Error(route.missing)
  return route
}

describe('the way in hours', () => {
  test('ten flat kilometres take 2.42 h', () => {
    // walking.md 1.1: the default law's flat pace is 4.13 km/h
    expect(legsOf([leg()]).legs[0]!.hours).toBeCloseTo(10 / 4.13, 2)
  })
  test('the walker’s own pace stretches every leg', () => {
    const slow = routeOf({ legs: [leg()] }, { paceFactor: 1.2 })
    expect(slow.ok && slow.legs[0]!.hours / legsOf([leg()]).legs[0]!.hours).toBeCloseTo(1.2, 12)
  })
  test('what is missing is named with its leg', () => {
    expect(routeOf({ legs: [] }, walker)).toEqual({ ok: false, missing: 'legs', leg: 0 })
    expect(routeOf({ legs: [leg(), leg({ climbM: null })] }, walker)).toEqual({ ok: false, missing: 'climb', leg: 2 })
    expect(routeOf({ legs: [leg({ lengthM: null })] }, walker)).toEqual({ ok: false, missing: 'length', leg: 1 })
  })
  test('hours between places add up, wherever the way is cut', () => {
    const { legs, lengthM } = legsOf([leg({ climbM: 800 }), leg({ day: 2, descentM: 500, lengthM: 7000 }), leg({ day: 2, lengthM: 4000 })])
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const cut = share * lengthM
        return Math.abs(hoursBetween(legs, 0, cut) + hoursBetween(legs, cut, lengthM) - hoursBetween(legs, 0, lengthM)) < 1e-9
      }),
    )
    expect(hoursOfDay(legs, 1) + hoursOfDay(legs, 2)).toBeCloseTo(hoursBetween(legs, 0, lengthM), 12)
  })
  test('sand and snow have no factor of time, and it is said', () => {
    expect(legsOf([leg({ terrain: 'snow' })]).slowGround).toBe(true)
    expect(legsOf([leg({ terrain: 'rock' })]).legs[0]!.hours).toBeCloseTo(legsOf([leg()]).legs[0]!.hours * 2, 12) // N 2.50 over a trail's 1.25
  })
})

describe('nights', () => {
  const brief: Brief = {
    ...emptyBrief,
    lowC: 0,
    highC: 12,
    forecastHeightM: 1000,
    legs: [leg({ camp: true, endHeightM: 2000 }), leg({ day: 2, camp: true, endHeightM: 500, lengthM: 8000 }), leg({ day: 3 })],
  }
  const trip = { startsOn: '2025-10-09', endsOn: '2025-10-11' }
  test('a higher camp is colder by 6.5 K/km, a lower one no warmer', () => {
    // warmth.md: planning low of a higher camp T − 6.5·Δz, of a lower one T
    expect(campNights(brief, trip)!.map((night) => [night.night, night.atM, night.heightM, night.low!.value])).toEqual([
      [1, 10_000, 2000, -6.5],
      [2, 18_000, 500, 0],
    ])
    expect(coldestLow(campNights(brief, trip)!)?.value).toBe(-6.5)
  })
  test('its doubt is the forecast’s 2 K and the lapse’s', () => {
    expect(uncertainty(campNights(brief, trip)![0]!.low!)).toBeCloseTo(Math.hypot(2, 1.5), 9)
  })
  test('a day’s own low rules; without any there is none', () => {
    const days = [{ day: 2, startMinute: null, lowC: -9, highC: null }]
    expect(campNights({ ...brief, days }, trip)![1]!.low!.value).toBe(-9)
    expect(coldestLow(campNights({ ...brief, lowC: null, days }, trip)!)).toBeNull()
    expect(coldestLow([])).toBeNull()
  })
  test('nights that are not known are not made up; without legs they still count', () => {
    expect(campNights(brief, { startsOn: null, endsOn: null })).toBeNull()
    expect(campNights({ ...emptyBrief, nightsOut: 2, lowC: 3 }, { startsOn: null, endsOn: null })).toMatchObject([
      { night: 1, atM: null, heightM: null },
      { night: 2, atM: null, heightM: null },
    ])
  })
})
