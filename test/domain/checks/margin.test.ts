import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { found } from '../../../src-domain/checks/check.ts'
import { enoughOf, leastEnough } from '../../../src-domain/checks/margin.ts'
import { given } from '../../../src-domain/figures/figure.ts'

describe('the least that is enough', () => {
  test('without doubt it is need and reserve', () => {
    expect(leastEnough(given(50, 'g', 'worked'), 60, 0)).toBeCloseTo(60, 9)
  })
  test('where doubt is more than the reserve it rules', () => {
    expect(leastEnough(given(50, 'g', 'worked', { eta: 12.5 }), 60, 0)).toBeCloseTo(62.5, 9)
  })
  test('it reads enough, and a hundredth less does not', () => {
    const share = fc.double({ min: 0, max: 0.3, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: 1, max: 500, noNaN: true }), share, share, share, (value, u, margin, own) => {
        const need = given(value, 'g', 'worked', { need: u * value })
        const enough = enoughOf(need, margin)
        const amount = leastEnough(need, enough.value, own)
        const state = (a: number) => found({ have: given(a, 'g', 'brief', { amount: own * a }), need, enough, wants: 'at least' }).state
        return state(amount + 1e-6) === 'enough' && state(amount * 0.99) !== 'enough'
      }),
    )
  })
})
