import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fromDecimal, isBelow, over, plus, ratio, roundHalfAway, times, toNumber } from '../../../src-domain/figures/exact.ts'

const whole = fc.bigInt({ min: -(10n ** 24n), max: 10n ** 24n })
const below = fc.bigInt({ min: 1n, max: 10n ** 24n })
const fraction = fc.tuple(whole, below).map(([n, d]) => ratio(n, d))

describe('exact fractions', () => {
  test('decimal text is read without loss: the language reads the same double', () => {
    fc.assert(
      fc.property(fc.nat(999_999_999), fc.integer({ min: 0, max: 9 }), fc.integer({ min: -12, max: 12 }), (digits, places, power) => {
        const padded = String(digits).padStart(places + 1, '0')
        const text = `${padded.slice(0, padded.length - places)}.${places === 0 ? '0' : padded.slice(-places)}e${power}`
        return toNumber(fromDecimal(text)) === Number(text)
      }),
    )
  })
  test('add, multiply and divide by the laws of fractions', () => {
    fc.assert(
      fc.property(fraction, fraction, fraction, (a, b, c) => {
        expect(plus(a, b)).toEqual(plus(b, a))
        expect(times(a, plus(b, c))).toEqual(plus(times(a, b), times(a, c)))
        if (b.n !== 0n) expect(times(over(a, b), b)).toEqual(a)
      }),
    )
  })
  test('round to the nearest whole, half away from zero', () => {
    expect([ratio(1, 2), ratio(-1, 2), ratio(3, 2), ratio(49, 100), ratio(-49, 100)].map(roundHalfAway)).toEqual([1n, -1n, 2n, 0n, 0n])
    fc.assert(
      fc.property(fraction, (a) => {
        const off = plus(a, ratio(-roundHalfAway(a)))
        return !isBelow(ratio(1, 2), off) && !isBelow(off, ratio(-1, 2))
      }),
    )
  })
  test('become the nearest double', () => {
    expect(toNumber(ratio(1, 3))).toBe(1 / 3)
    expect(toNumber(ratio(10n ** 30n, 3))).toBe(1e30 / 3)
    expect(toNumber(ratio(0))).toBe(0)
    expect(() => ratio(1, 0)).toThrow('over nothing')
  })
})
