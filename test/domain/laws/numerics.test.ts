import fc from 'fast-check'
import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { betaQuantile, betaShareBelow, lnGamma } from '../../../src-domain/laws/beta.ts'
import { erfc, normalQuantile, normalShareBelow } from '../../../src-domain/laws/normal.ts'
import { rows } from '../../published/numerics.ts'
import { meets } from '../../published/published.ts'

const { jStat } = jstat
const shape = fc.double({ min: 0.5, max: 60, noNaN: true })
const share = fc.double({ min: 0.001, max: 0.999, noNaN: true })

describe('published values', () => meets(rows))

describe('incomplete beta', () => {
  // The package ends its continued fraction at a relative step of 3e-7, so it cannot vouch for more than 1e-6; the binomial sum below does.
  test('agrees with the statistics package', () => {
    fc.assert(fc.property(share, shape, shape, (x, a, b) => Math.abs(betaShareBelow(x, a, b) - jStat.beta.cdf(x, a, b)) < 1e-6))
  })
  test('for whole shapes it is the binomial tail, summed', () => {
    const whole = fc.integer({ min: 1, max: 25 })
    fc.assert(fc.property(share, whole, whole, (x, a, b) => Math.abs(betaShareBelow(x, a, b) - binomialTail(x, a, a + b - 1)) < 1e-12))
  })
  test('its two sides add to one', () => {
    fc.assert(fc.property(share, shape, shape, (x, a, b) => Math.abs(betaShareBelow(x, a, b) + betaShareBelow(1 - x, b, a) - 1) < 1e-12))
  })
  test('never falls as x grows', () => {
    fc.assert(
      fc.property(
        share,
        share,
        shape,
        shape,
        (x, y, a, b) => betaShareBelow(Math.min(x, y), a, b) <= betaShareBelow(Math.max(x, y), a, b) + 1e-13,
      ),
    )
  })
  test('the quantile comes back through the share', () => {
    fc.assert(fc.property(share, shape, shape, (q, a, b) => Math.abs(betaShareBelow(betaQuantile(q, a, b), a, b) - q) < 1e-9))
  })
  test('with a = 1 it is 1 − (1 − x)^b, closed form', () => {
    fc.assert(fc.property(share, shape, (x, b) => Math.abs(betaShareBelow(x, 1, b) - (1 - (1 - x) ** b)) < 1e-12))
  })
  test('its ends are 0 and 1, and a shape of nothing is refused', () => {
    expect([betaShareBelow(0, 2, 3), betaShareBelow(1, 2, 3), betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([0, 1, 0, 1])
    expect(() => betaShareBelow(0.5, 0, 1)).toThrow('positive shapes')
  })
  test('lgamma of whole numbers is the factorial’s logarithm', () => {
    let factorial = 1
    for (let n = 1; n <= 20; n++) {
      expect(lnGamma(n)).toBeCloseTo(Math.log(factorial), 11)
      factorial *= n
    }
    expect(lnGamma(0.25)).toBeCloseTo(Math.log(3.625609908221908), 12) // Γ(1/4), memory
  })
})

describe('normal distribution', () => {
  const z = fc.double({ min: -7, max: 7, noNaN: true })
  // The package's erf is good to about 1e-10 (its coefficients are a fixed Chebyshev set).
  test('agrees with the statistics package', () => {
    fc.assert(fc.property(z, (at) => Math.abs(normalShareBelow(at) - jStat.normal.cdf(at, 0, 1)) < 1e-9))
  })
  test('both tails are one picture', () => {
    fc.assert(fc.property(z, (at) => Math.abs(normalShareBelow(at) + normalShareBelow(-at) - 1) < 1e-14))
  })
  test('series and fraction meet where they change over', () => {
    expect(Math.abs(erfc(2.5 - 1e-12) - erfc(2.5))).toBeLessThan(1e-14)
    expect(erfc(2.5)).toBeCloseTo(4.069520174449589e-4, 15) // printed tables, memory
  })
  test('the quantile comes back through the share', () => {
    fc.assert(fc.property(share, (q) => Math.abs(normalShareBelow(normalQuantile(q)) - q) < 1e-12))
  })
})

/** The chance of at least k successes in n draws of chance x: I(x; k, n − k + 1) (Abramowitz and Stegun 26.5.24, memory). */
function binomialTail(x: number, k: number, n: number): number {
  let ways = 1
  let sum = 0
  for (let j = 0; j <= n; j++) {
    if (j >= k) sum += ways * x ** j * (1 - x) ** (n - j)
    ways = (ways * (n - j)) / (j + 1)
  }
  return sum
}
