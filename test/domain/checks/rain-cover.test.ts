import { describe, expect, test } from 'vitest'
import { rainCover } from '../../../src-domain/checks/rain-cover.ts'
import { find, foundBy } from './asking.ts'
import { cover } from './warm-kit.ts'

const items = { full: [cover('rain-shell', 'jacket')], weak: [cover('rain-shell', 'umbrella')], none: [] } as const

describe('dry above', () => {
  // warmth.md 5.3: none 0/0, in mountains 0/1, showers 1/2, wet days 1/2; full cover 2, weak 1.
  test.each([
    ['none', false, 'none', 'enough'],
    ['none', true, 'none', 'tight'],
    ['none', true, 'weak', 'enough'],
    ['showers', false, 'none', 'short'],
    ['showers', false, 'weak', 'tight'],
    ['showers', false, 'full', 'enough'],
    ['wet', false, 'none', 'short'],
    ['wet', false, 'weak', 'tight'],
    ['wet', true, 'full', 'enough'],
  ] as const)('rain %s, mountains %s, cover %s: %s', (rain, mountains, which, state) => {
    expect(foundBy(rainCover, { items: items[which], brief: { rain, mountains } }).state).toBe(state)
  })
  test('two weak covers are no full one', () => {
    const both = [cover('rain-shell', 'umbrella'), cover('wind-shell', 'wind-shirt')]
    expect(foundBy(rainCover, { items: both, brief: { rain: 'wet' } }).state).toBe('tight')
  })
  test('a cover without a kind leaves it unknown, unless another is enough', () => {
    const untold = cover('rain-shell', '')
    expect(find(rainCover, { items: [untold], brief: { rain: 'wet' } })).toMatchObject({
      state: 'unknown',
      missing: { code: 'cover-kind' },
    })
    expect(foundBy(rainCover, { items: [untold, ...items.full], brief: { rain: 'wet' } }).state).toBe('enough')
  })
  test('what is lent out, sold or lost covers nothing', () => {
    for (const status of ['lent', 'sold', 'retired', 'lost'] as const)
      expect(foundBy(rainCover, { items: [{ ...items.full[0], status }], brief: { rain: 'wet' } }).state).toBe('short')
  })
  test('a missing rain class is unknown; no cover at all is said', () => {
    expect(find(rainCover, { items: items.full, brief: { rain: null } })).toMatchObject({ state: 'unknown', missing: { code: 'rain' } })
    expect(foundBy(rainCover, { brief: { rain: 'none' } }).saying).toEqual([{ code: 'no-cover', facts: { duty: 'rain-shell' } }])
    expect(foundBy(rainCover, { items: items.weak, brief: { rain: 'wet' } }).saying[0]?.code).toBe('weak-cover')
  })
})
