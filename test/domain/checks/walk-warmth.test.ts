import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { walkWarmth } from '../../../src-domain/checks/walk-warmth.ts'
import { find, foundBy } from './asking.ts'
import { jacket, onFoot, shell } from './clothes-warmth.ts'
import { garment } from './warm-kit.ts'

const order = { short: 0, tight: 1, enough: 2 } as const
/** Forecast wind that is 2 m/s at a walker's body: 0.667·V/3.6 + 0.55 = 2. */
const WIND_KMH = (1.45 * 3.6) / 0.667

describe('warm walking', () => {
  // warmth.md 2.3: loaded walk, M 200, w 1.1, v 2, p 8 at 0 °C: 0.84 clo minimal.
  test('asks a loaded walker at 0 °C in a light wind for 0.84 clo', () => {
    const found = foundBy(walkWarmth, { items: [...onFoot, shell, jacket], brief: { lowC: 0, windKmh: WIND_KMH } })
    expect(Math.abs(found.enough.value - 0.84)).toBeLessThan(0.01)
    expect(found.need.value).toBeCloseTo(found.enough.value - 0.835 * 0.55, 9)
    expect(found.have.value).toBeCloseTo(0.161 + 0.835 * 0.77, 9) // ISO 9920 summation of 0.12, 0.15, 0.20, 0.05, 0.25
    expect(found.state).toBe('tight')
  })
  test('without a shell the cloth is airy and asks for more', () => {
    const bare = foundBy(walkWarmth, { items: onFoot, brief: { lowC: 0, windKmh: 30 } })
    const shelled = foundBy(walkWarmth, { items: [...onFoot, shell], brief: { lowC: 0, windKmh: 30 } })
    expect(bare.enough.value).toBeGreaterThan(shelled.enough.value)
  })
  test('an umbrella is neither a shell nor a garment', () => {
    const umbrella = garment('umbrella', 'rain-shell', null, { 'cover-kind': 'umbrella' })
    const [without, under] = [onFoot, [...onFoot, umbrella]].map((items) => foundBy(walkWarmth, { items, brief: { windKmh: 20 } }))
    expect(under!.have.value).toBe(without!.have.value)
    expect(under!.enough.value).toBe(without!.enough.value)
  })
  test('u is that of the sum, of the heat and of the low', () => {
    const found = foundBy(walkWarmth, { items: [...onFoot, shell], brief: { lowC: 0, windKmh: WIND_KMH } })
    expect(Math.hypot(...Object.values(found.have.shares))).toBeCloseTo((0.15 * found.have.value) / Math.sqrt(3), 9)
    // warmth.md 2.3: 1.10 at −5 and 0.57 at 5 °C, so 2 K are worth 0.106 clo.
    expect(Math.abs(Math.abs(found.need.shares['brief:low']!) - 0.106)).toBeLessThan(0.003)
  })
  test('a hard effort asks for less than an easy one', () => {
    const by = (effort: 'easy' | 'hard') => foundBy(walkWarmth, { items: onFoot, brief: { windKmh: 20, effort } }).enough.value
    expect(by('hard')).toBeLessThan(by('easy'))
  })
  test('says the wind chill and its band', () => {
    const found = foundBy(walkWarmth, { items: [...onFoot, shell, jacket], brief: { lowC: -15, windKmh: 45 } })
    const line = (name: string) => found.have.working?.given.find((one) => one.name === name)?.figure.value
    expect(line('wind chill on bare skin')).toBeCloseTo(-28.044, 3) // warmth.md 3.1
    expect(found.cautions.some((caution) => caution.includes('10 to 30 minutes'))).toBe(true)
    expect(found.saying).toEqual([])
    expect(found.cautions.some((caution) => caution.includes('numb'))).toBe(true)
  })
  test('takes the table for what has no figure of its own, and asks for an insulating layer', () => {
    const plain = [garment('top', 'base-layer', null), garment('trousers', 'legwear', null), garment('cap', 'hat', null)]
    const found = foundBy(walkWarmth, { items: plain, brief: { windKmh: 20 } })
    expect(found.have.value).toBeCloseTo(0.161 + 0.835 * (0.1 + 0.15 + 0.05), 9) // the smaller values of warmth.md 2.1
    expect(find(walkWarmth, { items: [...plain, garment('fleece', 'mid-layer', null)], brief: { windKmh: 20 } })).toMatchObject({
      state: 'unknown',
      missing: { code: 'garment-clo', facts: { name: 'fleece' } },
    })
    const down = foundBy(walkWarmth, {
      items: [...plain, garment('jacket', 'big-jacket', null, { fill: 'down' })],
      brief: { windKmh: 20, lowC: -15 },
    })
    expect(down.enough.value - down.need.value).toBeCloseTo(0.835 * 0.55, 9)
  })
  test.each([
    ['no wind', { windKmh: null }, 'wind'],
    ['no low', { lowC: null, windKmh: 20 }, 'low'],
  ] as const)('%s: unknown, and names it', (_, brief, code) => {
    expect(find(walkWarmth, { items: onFoot, brief })).toMatchObject({ state: 'unknown', missing: { code } })
  })
  test('nothing to wear is unknown; above 10 °C it is not asked', () => {
    expect(find(walkWarmth, { brief: { windKmh: 20 } })).toMatchObject({ state: 'unknown', missing: { code: 'clothing' } })
    expect(find(walkWarmth, { items: onFoot, brief: { lowC: 10.1, windKmh: 20 } }).state).toBe('not-asked')
    expect(find(walkWarmth, { items: onFoot, brief: { lowC: 4, nightsOut: 0, windKmh: 20 } }).state).not.toBe('unknown')
  })
  test('colder air or more wind never improves it, another layer never worsens what is worn', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -25, max: 9.9, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        (lowC, windKmh, worse, clo) => {
          const items = [...onFoot, shell, jacket]
          const now = foundBy(walkWarmth, { items, brief: { lowC, windKmh } })
          const then = foundBy(walkWarmth, { items, brief: { lowC: lowC - worse, windKmh: windKmh + worse } })
          const more = foundBy(walkWarmth, { items: [...items, garment('vest', 'mid-layer', clo)], brief: { lowC, windKmh } })
          return order[then.state] <= order[now.state] && more.have.value > now.have.value
        },
      ),
      { numRuns: 60 },
    )
  })
})
