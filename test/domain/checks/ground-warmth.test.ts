import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { uncertainty } from '../../../src-domain/figures/figure.ts'
import type { Found } from '../../../src-domain/checks/check.ts'
import { groundWarmth } from '../../../src-domain/checks/ground-warmth.ts'
import type { TestItem } from '../loadout/kit.ts'
import { find, foundBy } from './asking.ts'
import { bag, mat } from './warm-kit.ts'

const below = (items: readonly TestItem[], lowC: number): Found => foundBy(groundWarmth, { items, brief: { lowC } })
const order = { short: 0, tight: 1, enough: 2 } as const

describe('warm from below', () => {
  // warmth.md 1.5: chart rows, flow at the chart's temperature.
  test.each([
    [1, 10, 88.1, 'short'],
    [2, 40 / 9, 66.3, 'tight'],
    [4, -35 / 9, 47.8, 'enough'],
    [6, -160 / 9, 45.3, 'enough'],
  ] as const)('R %s at %s °C: %s W/m², %s', (r, lowC, flow, state) => {
    const found = below([mat(r)], lowC)
    expect(Math.abs(found.have.value - flow)).toBeLessThan(0.1)
    expect([found.need.value, found.enough.value]).toEqual([85, 65])
    expect(found.state).toBe(state)
  })
  test('u is that of the mats, of what lies between and of the low together', () => {
    // At 4.44 °C on R 2: slopes −q/(0.1 + R)·(0.10 R), ·0.04, and 2 K·dq/dT, worked by hand from q = D/0.4522.
    const found = below([mat(2)], 40 / 9)
    const whole = 0.1 + 2 * 0.1761101838
    const parts = [(66.3 / whole) * 0.1 * (whole - 0.1), (66.3 / whole) * 0.04, (2 * 1.018) / whole]
    // dD/dT = −1 − 0.38·0.8·dps/dT, dps/dT 0.0585 kPa/K at 4.4 °C (steam table): 1.018.
    expect(Math.abs(uncertainty(found.have) - Math.hypot(...parts))).toBeLessThan(0.15)
  })
  test('under a quilt there is less between skin and mat', () => {
    const quilt = bag(0, { 'rating-kind': 'comfort', form: 'quilt' })
    expect(below([mat(2), quilt], 0).have.value).toBeGreaterThan(below([mat(2), bag(0)], 0).have.value)
  })
  test('a thick bag does not help a thin mat', () => {
    expect(below([mat(1), bag(-25)], 0).state).toBe('short')
  })
  test('two pieces of one mat are a stack', () => {
    expect(below([{ ...mat(1), pieces: 2 }], 0).have.value).toBeCloseTo(below([mat(2)], 0).have.value, 9)
  })
  test('says which mats would do', () => {
    const facts = below([mat(1)], -35 / 9).saying[0]?.facts
    expect((facts?.haveRsi as number) / 0.1761101838).toBeCloseTo(1, 9)
    expect((facts?.enoughRsi as number) / 0.1761101838).toBeGreaterThan(2)
    expect(below([mat(((facts?.enoughRsi as number) / 0.1761101838) * 1.0001)], -35 / 9).have.value).toBeLessThanOrEqual(65)
  })
  test('is not asked in a hammock, on a mild night or without a night', () => {
    const hammock: TestItem = { name: 'hammock', area: 'shelter', g: 500, traits: { form: 'hammock' } }
    expect(find(groundWarmth, { items: [mat(2), hammock] })).toMatchObject({ state: 'not-asked', why: { code: 'hammock' } })
    expect(find(groundWarmth, { items: [mat(2)], brief: { lowC: 20.5 } }).state).toBe('not-asked')
    expect(find(groundWarmth, { items: [mat(2)], brief: { nightsOut: 0 } }).state).toBe('not-asked')
  })
  test('without a mat it is unknown until the mat is struck; then it is short', () => {
    expect(find(groundWarmth, { items: [bag(0)] })).toMatchObject({ state: 'unknown', missing: { code: 'ground-insulation' } })
    expect(find(groundWarmth, { items: [bag(0)], brief: { struck: [{ duty: 'ground-insulation', reason: '' }] } }).state).toBe('short')
    expect(find(groundWarmth, { items: [{ ...mat(2), traits: {} }] })).toMatchObject({ missing: { code: 'thermal-resistance' } })
    expect(find(groundWarmth, { items: [mat(2)], brief: { lowC: null } })).toMatchObject({ missing: { code: 'low' } })
  })
  test('a colder night never improves it, another mat never worsens it', () => {
    const r = fc.double({ min: 0.3, max: 6, noNaN: true })
    fc.assert(
      fc.property(
        r,
        r,
        fc.double({ min: -30, max: 19, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (a, b, lowC, colder) => {
          const now = below([mat(a)], lowC)
          const second = { ...mat(b), name: 'second mat' }
          return (
            order[below([mat(a)], lowC - colder).state] <= order[now.state] && below([mat(a), second], lowC).have.value <= now.have.value
          )
        },
      ),
      { numRuns: 60 },
    )
  })
})
