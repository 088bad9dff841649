import { describe, expect, test } from 'vitest'
import { dryStore } from '../../../src-domain/checks/dry-store.ts'
import { find, foundBy } from './asking.ts'
import { cover } from './warm-kit.ts'

const items = { full: [cover('dry-store', 'pack-liner')], weak: [cover('dry-store', 'pack-cover')], none: [] } as const

describe('dry spare', () => {
  // warmth.md 5.3: none 0/0, showers 0/2, wet days 1/2; a pack cover alone is weak.
  test.each([
    ['none', 'none', 'enough'],
    ['showers', 'none', 'tight'],
    ['showers', 'weak', 'tight'],
    ['showers', 'full', 'enough'],
    ['wet', 'none', 'short'],
    ['wet', 'weak', 'tight'],
    ['wet', 'full', 'enough'],
  ] as const)('rain %s, store %s: %s', (rain, which, state) => {
    expect(foundBy(dryStore, { items: items[which], brief: { rain } }).state).toBe(state)
  })
  test('a waterproof pack keeps dry without being called a dry store', () => {
    expect(foundBy(dryStore, { items: [cover('pack', 'waterproof-pack')], brief: { rain: 'wet' } }).state).toBe('enough')
  })
  test('unknown without a rain class or a kind', () => {
    expect(find(dryStore, { items: items.full, brief: { rain: null } })).toMatchObject({ missing: { code: 'rain' } })
    expect(find(dryStore, { items: [cover('dry-store', '')], brief: { rain: 'wet' } })).toMatchObject({ missing: { code: 'cover-kind' } })
  })
})
