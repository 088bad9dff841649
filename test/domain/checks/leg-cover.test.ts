import { describe, expect, test } from 'vitest'
import { legCover } from '../../../src-domain/checks/leg-cover.ts'
import { find, foundBy } from './asking.ts'
import { cover } from './warm-kit.ts'

const trousers = [cover('rain-legs', 'trousers')]

describe('dry legs', () => {
  // warmth.md 5.3: none 0/0, showers 0/0 (under 10 °C 0/1), wet 0/1, wet with wind under 10 °C 1/1.
  test.each([
    ['none', 2, 40, false, 'enough'],
    ['showers', 12, 40, false, 'enough'],
    ['showers', 9, 10, false, 'tight'],
    ['wet', 12, 40, false, 'tight'],
    ['wet', 9, 10, false, 'tight'],
    ['wet', 9, 20, false, 'short'],
    ['wet', 9, 20, true, 'enough'],
    ['showers', 9, 10, true, 'enough'],
  ] as const)('rain %s, low %s °C, wind %s km/h, covered %s: %s', (rain, lowC, windKmh, covered, state) => {
    expect(foundBy(legCover, { items: covered ? trousers : [], brief: { rain, lowC, windKmh } }).state).toBe(state)
  })
  test('a long poncho covers legs too, trousers do not cover the rest', () => {
    expect(foundBy(legCover, { items: [cover('rain-shell', 'long-poncho')], brief: { rain: 'wet', lowC: 2, windKmh: 40 } }).state).toBe(
      'enough',
    )
    expect(foundBy(legCover, { items: [cover('rain-shell', 'jacket')], brief: { rain: 'wet', lowC: 2, windKmh: 40 } }).state).toBe('short')
  })
  test('low and wind are asked for only where they would change the answer', () => {
    const wet = { rain: 'wet', lowC: 2, windKmh: null } as const
    expect(find(legCover, { brief: wet })).toMatchObject({ state: 'unknown', missing: { code: 'wind' } })
    expect(find(legCover, { items: trousers, brief: wet }).state).toBe('enough')
    expect(find(legCover, { brief: { rain: 'showers', lowC: null, windKmh: 10 } })).toMatchObject({ missing: { code: 'low' } })
    expect(find(legCover, { brief: { rain: 'none', lowC: null, windKmh: null } }).state).toBe('enough')
    expect(find(legCover, { brief: { rain: 'wet', lowC: 12, windKmh: null } }).state).toBe('tight')
  })
  test('a missing rain class is unknown', () => {
    expect(find(legCover, { items: trousers, brief: { rain: null } })).toMatchObject({ state: 'unknown', missing: { code: 'rain' } })
  })
})
