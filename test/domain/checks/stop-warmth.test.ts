import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stopWarmth } from '../../../src-domain/checks/stop-warmth.ts'
import { find, foundBy, leg } from './asking.ts'
import { jacket, onFoot, shell } from './clothes-warmth.ts'

const items = [...onFoot, shell, jacket]
const order = { short: 0, tight: 1, enough: 2 } as const
/** Forecast wind that is 3 m/s at the body. */
const THREE_MS = (3 * 3.6) / 0.667

describe('warm at a stop', () => {
  // warmth.md 5.3, second row: M 65, 0 °C, 3 m/s, 20 minutes.
  test('twenty minutes at 0 °C in 3 m/s ask for 1.046 and 1.206 clo', () => {
    const found = foundBy(stopWarmth, { items, brief: { lowC: -4, highC: 4, windKmh: THREE_MS } })
    expect(Math.abs(found.need.value - 1.046)).toBeLessThan(0.002)
    expect(Math.abs(found.enough.value - 1.206)).toBeLessThan(0.002)
  })
  test('the air is the middle of the day, carried up to the highest point', () => {
    const legs = [leg(1, { endHeightM: 1500 }), leg(2, { endHeightM: 2000 }), leg(3, { endHeightM: 900 })]
    const found = foundBy(stopWarmth, {
      items,
      brief: { lowC: 4, highC: 14, windKmh: THREE_MS, forecastHeightM: 1000, legs, nightsOut: 2 },
    })
    const air = found.need.working?.given.find(({ name }) => name === 'airC')?.figure
    expect(air?.value).toBeCloseTo(9 - 6.5, 9)
    // Low and high share the forecast's 2 K; the climb adds 1.5 K for its kilometre (warmth.md 4).
    expect(Math.hypot(...Object.values(air!.shares))).toBeCloseTo(Math.hypot(2, 1.5), 6)
  })
  test('is never in the lee', () => {
    const brief = { lowC: -4, highC: 4, windKmh: 40 }
    expect(foundBy(stopWarmth, { items, brief: { ...brief, inLee: true } }).need.value).toBe(
      foundBy(stopWarmth, { items, brief }).need.value,
    )
  })
  test('the coldest day counts', () => {
    const days = [{ day: 2, startMinute: null, lowC: -12, highC: -2 }]
    const brief = { lowC: 2, highC: 10, windKmh: 20 }
    expect(foundBy(stopWarmth, { items, brief: { ...brief, days } }).need.value).toBeGreaterThan(
      foundBy(stopWarmth, { items, brief }).need.value,
    )
  })
  test('without high, low or wind it is unknown; in mild air or without a stop not asked', () => {
    expect(find(stopWarmth, { items, brief: { windKmh: 20, highC: null } })).toMatchObject({ missing: { code: 'high' } })
    expect(find(stopWarmth, { items, brief: { windKmh: 20, lowC: null } })).toMatchObject({ missing: { code: 'low' } })
    expect(find(stopWarmth, { items, brief: { windKmh: null } })).toMatchObject({ missing: { code: 'wind' } })
    expect(find(stopWarmth, { items, brief: { windKmh: 20, lowC: 6, highC: 16 } }).state).toBe('not-asked')
    expect(find(stopWarmth, { items, brief: { windKmh: 20, stopMinutes: 0 } }).state).toBe('not-asked')
    const dateless = { startsOn: null, endsOn: null }
    expect(find(stopWarmth, { items, brief: { windKmh: 20, nightsOut: null }, trip: dateless })).toMatchObject({
      missing: { code: 'nights' },
    })
  })
  test('colder, windier, higher or longer never improves it', () => {
    const some = fc.double({ min: 0, max: 10, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: -20, max: 5, noNaN: true }), some, some, (lowC, windKmh, worse) => {
        const at = (low: number, wind: number, heightM: number, stopMinutes: number) =>
          foundBy(stopWarmth, {
            items,
            brief: {
              lowC: low,
              highC: low + 8,
              windKmh: wind,
              forecastHeightM: 1000,
              legs: [leg(1, { endHeightM: heightM })],
              stopMinutes,
            },
          })
        const then = at(lowC - worse, windKmh + worse, 1200 + 50 * worse, 20 + worse)
        return order[then.state] <= order[at(lowC, windKmh, 1200, 20).state]
      }),
      { numRuns: 60 },
    )
  })
})
