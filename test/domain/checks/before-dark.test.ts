import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { arrivalOf, beforeDark } from '../../../src-domain/checks/before-dark.ts'
import { campbell2022 } from '../../../src-domain/laws/campbell.ts'
import { paceFrom } from '../../../src-domain/laws/pace-factor.ts'
import type { Brief, Day } from '../../../src-domain/trips/brief.ts'
import { emptyWalker } from '../../../src-domain/trips/walker.ts'
import { routeOf } from '../../../src-domain/trips/route.ts'
import { rows } from '../../published/before-dark.ts'
import { meets } from '../../published/published.ts'
import { find, foundBy, leg, type Change } from './asking.ts'

const start = (startMinute: number, day = 1): Day => ({ day, startMinute, lowC: null, highC: null })
const november: Change = {
  brief: { place: { latDeg: 45, lonDeg: 0 }, legs: [leg(1)], days: [start(570)] },
  trip: { startsOn: '2026-11-25', endsOn: '2026-11-25', zone: 'UTC' },
}
const at = (change: { brief?: Partial<Brief> } & Omit<Change, 'brief'>): Change => ({
  ...november,
  ...change,
  brief: { ...november.brief, ...change.brief },
  trip: { ...november.trip, ...change.trip },
})
const flatM = (hours: number) => hours * 3600 * campbell2022.compute({ slopeDeg: 0 })

describe('published values', () => meets(rows))

describe('in camp before dark', () => {
  test('the note’s November day is short: after dusk at the median', () => {
    const pace = paceFrom([
      { observedHours: 4.4, modelHours: 4 },
      { observedHours: 5.5, modelHours: 5 },
      { observedHours: 3.3, modelHours: 3 },
    ])
    const walker = { paceFactor: pace.factor, paceSpread: pace.spread, paceDof: pace.dof }
    const finding = foundBy(beforeDark, at({ brief: { legs: [leg(1, { lengthM: flatM(6) })] }, walker }))
    expect(finding.state).toBe('short')
    // Chance of arriving after sunset, walking.md 1.4: 0.77516 for a sunset at 16:22:58; the sun's own 2 s move it by 0.011 %.
    expect(finding.saying[1]!.facts!['percent']).toBeCloseTo(77.516, 1)
  })
  test('median after dusk is short, late end after sunset is tight, late end before sunset is enough', () => {
    const state = (hours: number) => foundBy(beforeDark, at({ brief: { legs: [leg(1, { lengthM: flatM(hours) })] } })).state
    // From 09:30 sunset is in 6.88 h and dusk in 7.43 h; breaks 0.15; without logs the late end is at 1.4299 times the median.
    expect([7.43 / 1.15 + 0.02, 7.43 / 1.15 - 0.02, 6.88 / 1.15 / 1.4299 + 0.02, 6.88 / 1.15 / 1.4299 - 0.02].map(state)).toEqual([
      'short',
      'tight',
      'tight',
      'enough',
    ])
  })
  test('the worst day is shown', () => {
    const legs = [leg(1), leg(2, { lengthM: 24_000 }), leg(3, { lengthM: 5000 })]
    const finding = foundBy(beforeDark, at({ brief: { legs }, trip: { endsOn: '2026-11-27' } }))
    expect(finding.saying[0]!.facts!['day']).toBe(2)
  })
  test('in polar night dusk stands for sunset; where there is no dusk it is not asked', () => {
    const north = (latDeg: number, lonDeg: number, startsOn: string) =>
      at({ brief: { place: { latDeg, lonDeg }, days: [start(480)] }, trip: { startsOn, endsOn: startsOn, zone: 'UTC' } })
    const night = foundBy(beforeDark, north(69.6489, 18.95508, '2026-12-21'))
    expect(night.need.value).toBeCloseTo(12 * 60 + 53, 0) // published USNO minute
    expect(night.saying[0]!.facts!['sunsetMin']).toBe(night.need.value)
    for (const change of [north(69.6489, 18.95508, '2026-06-21'), north(78.22334, 15.64689, '2026-12-21'), north(61.5, 24, '2026-06-21')])
      expect(find(beforeDark, change)).toEqual({ state: 'not-asked', why: { code: 'no-civil-dusk' } })
  })
  test('an evening west of Greenwich belongs to its own date', () => {
    const west = at({ brief: { place: { latDeg: 40, lonDeg: -105 } }, trip: { zone: 'America/Denver' } })
    expect(foundBy(beforeDark, west).need.value).toBeCloseTo(24 * 60 + 6 + 58 / 60 - 420, 1) // 00:06:58 UTC next day, UTC−7
  })
  test.each([
    ['place', { place: null }, {}],
    ['dates', {}, { startsOn: null }],
    ['zone', {}, { zone: '' }],
    ['legs', { legs: [] }, {}],
    ['leg-length', { legs: [leg(1, { lengthM: null })] }, {}],
    ['leg-climb', { legs: [leg(1, { climbM: null })] }, {}],
    ['sun', { place: { latDeg: 89.9, lonDeg: 0 } }, {}],
  ])('without %s it is unknown and says so', (missing, brief, trip) => {
    expect(find(beforeDark, at({ brief, trip }))).toMatchObject({ state: 'unknown', missing: { code: missing } })
  })
  test('an earlier start, a shorter way and a quicker walker never worsen it', () => {
    const margin = (startMinute: number, lengthM: number, paceFactor: number) =>
      foundBy(beforeDark, at({ brief: { legs: [leg(1, { lengthM })], days: [start(startMinute)] }, walker: { paceFactor } }))
    const spare = (...given: Parameters<typeof margin>) => {
      const { need, have } = margin(...given)
      return need.value - have.value
    }
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 900 }),
        number(1000, 40_000),
        number(0.6, 1.6),
        number(0, 1),
        (minute, length, pace, less) => {
          const before = spare(minute, length, pace)
          const order = { short: 0, tight: 1, enough: 2 }
          const rank = (...given: Parameters<typeof margin>) => order[margin(...given).state]
          return (
            spare(Math.round(minute * less), length, pace) >= before - 1e-9 &&
            spare(minute, length * less, pace) >= before - 1e-9 &&
            spare(minute, length, pace * (0.5 + less / 2)) >= before - 1e-9 &&
            rank(minute, length * less, pace) >= rank(minute, length, pace)
          )
        },
      ),
      { numRuns: 60 },
    )
  })
  test('the load changes nothing here, and the order of a day’s legs neither', () => {
    const legs = [leg(1, { climbM: 500, lengthM: 6000 }), leg(1, { descentM: 400, lengthM: 9000 })]
    const one = foundBy(beforeDark, at({ brief: { legs } }))
    const other = foundBy(beforeDark, at({ brief: { legs: legs.toReversed() }, items: [{ name: 'anvil', area: 'extras', g: 30_000 }] }))
    expect(other.have.value).toBeCloseTo(one.have.value, 9)
  })
  test('a start that is not said is eight, as an estimate', () => {
    const brief = { legs: [leg(1)], days: [] as Day[] }
    const route = routeOf(brief, emptyWalker)
    if (!route.ok) throw new Error('no route')
    expect(arrivalOf({ brief: { ...november.brief, ...brief } as Brief, walker: emptyWalker }, route.legs, 1).startMin).toBe(480)
    expect(foundBy(beforeDark, at({ brief })).have.working!.given[0]!.figure.origin).toBe('estimated')
  })
})
