import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { light } from '../../../src-domain/checks/light.ts'
import { difference, uncertainty } from '../../../src-domain/figures/figure.ts'
import { darkHours, darkWithin } from '../../../src-domain/trips/dark-hours.ts'
import type { Brief } from '../../../src-domain/trips/brief.ts'
import type { TestItem } from '../loadout/kit.ts'
import { askedOf, find, foundBy, leg } from './asking.ts'

const lamp: TestItem = { name: 'Lamp', area: 'light_power', g: 80, duties: 'light', traits: { cell: 'alkaline', charge: 3.9 } }
/** 45 N 0 E in UTC. On 25 November 2026 civil dusk is at 16:55:37 (walking.md 7, the case of 1.4). */
const place = { latDeg: 45, lonDeg: 0 }
const november = { startsOn: '2026-11-25', endsOn: '2026-11-28', zone: 'UTC' }
/** Flat legs of 4.13 km are an hour; no breaks counted by the walker below. */
const hourM = 4130
const dark: Partial<Brief> = {
  place,
  lowC: 0,
  nightsOut: 3,
  legs: [leg(1, { lengthM: hourM }), leg(2, { lengthM: hourM }), leg(3, { lengthM: hourM }), leg(4, { lengthM: hourM })],
}
const walker = { breakShare: 0 }
const at = (day: number, hour: number) => ({ day, startMinute: hour * 60, lowC: null, highC: null })
const oneHour: Partial<Brief> = { ...dark, days: [at(1, 19), at(2, 12), at(3, 12), at(4, 12)] }

describe('light', () => {
  test('three AAA alkaline at 0 °C give 4.42 h; an hour walked and three evenings need 2.5, enough 3.125', () => {
    // provisions.md 12
    const finding = foundBy(light, { items: [lamp], brief: oneHour, trip: november, walker })
    expect(finding.have.value).toBeCloseTo(4.42, 2)
    expect(Math.abs(finding.need.value - 2.5)).toBeLessThan(0.005) // the law's flat pace is 4.13 km/h to two decimals
    expect(finding.enough.value).toBeCloseTo(finding.need.value * 1.25, 9)
    expect(finding.state).toBe('enough')
  })
  test('u: 0.10/√3 of the hours at 20 °C and 0.173 of the need', () => {
    const { have, need } = foundBy(light, { items: [lamp], brief: oneHour, trip: november, walker })
    const u = uncertainty(difference('d', { name: 'have', figure: have }, { name: 'need', figure: need }))
    expect(u).toBeCloseTo(Math.hypot(((3.9 / 0.53) * 0.1) / Math.sqrt(3), 0.1732 * need.value), 3)
  })
  test('a burn time is cut by the cold too, and kept warm it is cut less', () => {
    const burning = (more: TestItem['traits']) =>
      foundBy(light, {
        items: [{ ...lamp, traits: { cell: 'lithium-ion', 'burn-time': 10, ...more } }],
        brief: oneHour,
        trip: november,
        walker,
      }).have.value
    expect(burning({})).toBeCloseTo(8.8, 9) // 0.88 at 0 °C
    expect(burning({ 'kept-warm': 1 })).toBeCloseTo(9.4, 9) // half way to 1.00 at 20 °C
  })
  test('spare cells of its kind burn in it, others do not', () => {
    const cells = (cell: string) =>
      [{ name: 'Cells', area: 'light_power', unit: 'piece', gPerUnit: 11, amount: 3, traits: { cell, charge: 1.3 } }] as const
    expect(foundBy(light, { items: [lamp], supplies: cells('alkaline'), brief: oneHour, trip: november, walker }).have.value).toBeCloseTo(
      8.83,
      2,
    )
    expect(foundBy(light, { items: [lamp], supplies: cells('nimh'), brief: oneHour, trip: november, walker }).have.value).toBeCloseTo(
      4.42,
      2,
    )
  })
  test('no lamp is short; a lamp that says nothing is unknown', () => {
    expect(foundBy(light, { brief: oneHour, trip: november, walker }).state).toBe('short')
    expect(find(light, { items: [{ ...lamp, traits: {} }], brief: oneHour, trip: november, walker })).toMatchObject({
      missing: { code: 'charge', facts: { name: 'Lamp' } },
    })
    expect(find(light, { items: [{ ...lamp, traits: { charge: 4 } }], brief: oneHour, trip: november, walker })).toMatchObject({
      missing: { code: 'cell' },
    })
  })
  test('what the brief lacks is named', () => {
    const code = (brief: Partial<Brief>, trip = {}) => {
      const finding = find(light, { items: [lamp], brief: { ...oneHour, ...brief }, trip: { ...november, ...trip }, walker })
      return finding.state === 'unknown' ? finding.missing.code : finding.state
    }
    expect([code({ place: null }), code({}, { startsOn: null }), code({ legs: [] }), code({ lowC: null })]).toEqual([
      'place',
      'dates',
      'legs',
      'low',
    ])
  })
  test('where it never grows dark nothing is asked', () => {
    const north: Partial<Brief> = { ...dark, place: { latDeg: 70, lonDeg: 20 } }
    expect(find(light, { items: [lamp], brief: north, trip: { startsOn: '2026-06-20', endsOn: '2026-06-23', zone: 'UTC' } }).state).toBe(
      'not-asked',
    )
    // In the polar night every hour walked is dark (70 N has no civil twilight only further north; 80 N in December has none).
    expect(darkWithin({ latDeg: 80, lonDeg: 20 }, '2026-12-21', 'UTC', 600, 5)).toBe(5)
  })
  test('dusk of the printed case: walking past 16:55:37 is dark', () => {
    expect(darkWithin(place, '2026-11-25', 'UTC', 16 * 60, 2)).toBeCloseTo(2 - (55 + 37 / 60) / 60, 2)
    expect(darkWithin(place, '2026-11-25', 'UTC', 10 * 60, 4)).toBe(0)
  })
  test('colder never gives more light, and a slower walker never needs less', () => {
    const have = (lowC: number) => foundBy(light, { items: [lamp], brief: { ...oneHour, lowC }, trip: november, walker }).have.value
    fc.assert(
      fc.property(fc.integer({ min: -39, max: 18 }), fc.integer({ min: 1, max: 20 }), (lowC, more) => have(lowC - more) <= have(lowC)),
      { numRuns: 30 },
    )
    const need = (paceFactor: number) => {
      const hours = darkHours(askedOf({ brief: { ...oneHour, days: [at(1, 15)] } }).brief, november, { paceFactor, breakShare: 0.1 })
      return hours.ok ? hours.walkingH : Number.NaN
    }
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 3, noNaN: true }), (factor) => need(factor + 0.2) >= need(factor)),
      { numRuns: 30 },
    )
  })
})
