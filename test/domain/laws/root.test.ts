import fc from 'fast-check'
import { expect, test } from 'vitest'
import { rootOfRising } from '../../../src-domain/laws/bisect.ts'

test('finds the root of a cubic, a logarithm and a step as steep as can be', () => {
  expect(rootOfRising((x) => x ** 3 - 2, 0, 2)).toBeCloseTo(Math.cbrt(2), 13)
  expect(rootOfRising((x) => Math.log(x), 0.01, 100)).toBeCloseTo(1, 13)
  expect(rootOfRising((x) => (x < 0.3 ? -1 : 1), 0, 1)).toBeCloseTo(0.3, 12)
})
test('finds what plain halving finds', () => {
  const some = fc.double({ min: -5, max: 5, noNaN: true })
  fc.assert(
    fc.property(some, fc.double({ min: 0.01, max: 3, noNaN: true }), fc.double({ min: 0, max: 3, noNaN: true }), (root, slope, bend) => {
      const f = (x: number): number => slope * (x - root) + bend * (Math.exp(x) - Math.exp(root))
      let [low, high] = [-6, 6]
      for (let i = 0; i < 100; i++)
        if (f((low + high) / 2) < 0) low = (low + high) / 2
        else high = (low + high) / 2
      return Math.abs(rootOfRising(f, -6, 6) - low) < 1e-10
    }),
  )
})
test('without a root inside the nearer bound is returned', () => {
  expect(rootOfRising((x) => x + 10, 0, 1)).toBe(0)
  expect(rootOfRising((x) => x - 10, 0, 1)).toBe(1)
})
