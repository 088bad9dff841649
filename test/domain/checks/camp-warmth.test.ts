import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { uncertainty, difference } from '../../../src-domain/figures/figure.ts'
import type { Found } from '../../../src-domain/checks/check.ts'
import { campWarmth } from '../../../src-domain/checks/camp-warmth.ts'
import type { Brief } from '../../../src-domain/trips/brief.ts'
import { itemRow, kitIndex, loadoutOf } from '../loadout/kit.ts'
import { find, foundBy } from './asking.ts'
import { jacket, onFoot, shell } from './clothes-warmth.ts'
import { garment } from './warm-kit.ts'

const order = { short: 0, tight: 1, enough: 2 } as const
/** Forecast wind that is 1 m/s at the body. */
const ONE_MS = 3.6 / 0.667
/** Garments that sum to this many clo worn, with a shell. */
const worn = (icl: number) => [garment('all of it', 'base-layer', (icl - 0.161) / 0.835 - 0.25), shell]
const inCamp = (icl: number, brief: Partial<Brief> = {}): Found =>
  foundBy(campWarmth, { items: worn(icl), brief: { lowC: 0, windKmh: ONE_MS, ...brief } })

describe('warm in camp', () => {
  // warmth.md 5.3, first and third row of its table.
  test('an hour at 0 °C in 1 m/s asks for 1.917 and 2.161 clo', () => {
    const found = inCamp(1.7)
    expect(Math.abs(found.need.value - 1.917)).toBeLessThan(0.002)
    expect(Math.abs(found.enough.value - 2.161)).toBeLessThan(0.002)
    expect(found.state).toBe('short')
  })
  test('an hour at −5 °C in the lee asks for 2.162 and 2.394 clo, whatever the wind outside', () => {
    const found = inCamp(2.2, { lowC: -5, inLee: true, windKmh: 60 })
    expect(Math.abs(found.need.value - 2.162)).toBeLessThan(0.002)
    expect(Math.abs(found.enough.value - 2.394)).toBeLessThan(0.002)
    expect(found.state).toBe('tight')
  })
  test('u with 1.7 clo worn is 0.252 clo', () => {
    const found = inCamp(1.7)
    const u = uncertainty(difference('', { name: 'have', figure: found.have }, { name: 'need', figure: found.need }))
    expect(Math.abs(u - 0.252)).toBeLessThan(0.002) // warmth.md 5.3
  })
  test.each([
    [1.9, 'short'],
    [2.1, 'tight'],
    [2.17, 'tight'], // past 2.161, but 0.253 past need where u is √(0.188² + 0.131² + 0.156²) = 0.277
    [2.4, 'enough'],
  ] as const)('%s clo is %s', (icl, state) => expect(inCamp(icl).state).toBe(state))
  test('sitting half as long asks for less', () => {
    expect(inCamp(1.7, { sitMinutes: 30 }).need.value).toBeLessThan(inCamp(1.7).need.value)
    expect(inCamp(1.7, { sitMinutes: 60 }).need.value).toBe(inCamp(1.7).need.value)
  })
  test('the rest jacket and the sleep layer count here', () => {
    const brief = { lowC: 0, windKmh: ONE_MS }
    const plain = foundBy(campWarmth, { items: [...onFoot, shell], brief })
    const all = foundBy(campWarmth, { items: [...onFoot, shell, jacket, garment('sleep shirt', 'dry-base', 0.12)], brief })
    expect(all.have.value - plain.have.value).toBeCloseTo(0.835 * 0.67, 9)
  })
  test('wet days ask the dry layers alone, and say what becomes of it', () => {
    const items = [garment('wet all of it', 'base-layer', 1), garment('dry jacket', 'big-jacket', 1.8)]
    const loadout = loadoutOf(
      kitIndex(items),
      items.map((_, i) => itemRow(i + 1, i + 1, { lane: i === 0 ? 'on_me' : 'in_pack' })),
    )
    const found = foundBy(campWarmth, { loadout, brief: { lowC: 0, windKmh: ONE_MS, rain: 'wet' } })
    expect(found.state).toBe('enough')
    expect(found.cautions.at(-1)).toBe('If things get damp, the dry layers alone are short.')
    expect(foundBy(campWarmth, { loadout, brief: { lowC: 0, windKmh: ONE_MS, rain: 'none' } }).cautions.join()).not.toContain('damp')
  })
  test('no wind, no low, no clothing: unknown, each named; no night, no sitting or mild air: not asked', () => {
    const items = worn(2)
    expect(find(campWarmth, { items, brief: { windKmh: null } })).toMatchObject({ missing: { code: 'wind' } })
    expect(find(campWarmth, { items, brief: { windKmh: 10, lowC: null } })).toMatchObject({ missing: { code: 'low' } })
    expect(find(campWarmth, { brief: { windKmh: 10 } })).toMatchObject({ missing: { code: 'clothing' } })
    expect(find(campWarmth, { items, brief: { windKmh: 10, nightsOut: 0 } }).state).toBe('not-asked')
    expect(find(campWarmth, { items, brief: { windKmh: 10, sitMinutes: 0 } }).state).toBe('not-asked')
    expect(find(campWarmth, { items, brief: { windKmh: 10, lowC: 11 } }).state).toBe('not-asked')
  })
  test('colder air, more wind or longer sitting never improves it', () => {
    const some = fc.double({ min: 0, max: 10, noNaN: true })
    fc.assert(
      fc.property(
        fc.double({ min: -25, max: 9.9, noNaN: true }),
        some,
        some,
        fc.double({ min: 0.8, max: 4, noNaN: true }),
        (lowC, windKmh, worse, icl) => {
          const now = inCamp(icl, { lowC, windKmh, sitMinutes: 60 })
          const then = inCamp(icl, { lowC: lowC - worse, windKmh: windKmh + worse, sitMinutes: 60 + 10 * worse })
          return order[then.state] <= order[now.state]
        },
      ),
      { numRuns: 60 },
    )
  })
})
