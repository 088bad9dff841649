import fc from 'fast-check'
import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { breakShareFrom } from '../../../src-domain/laws/break-share.ts'
import type { WalkLog } from '../../../src-domain/laws/pace-factor.ts'
import { chanceOfLate, isUsableLog, paceBand, paceFrom } from '../../../src-domain/laws/pace-factor.ts'
import { studentQuantile, studentShareBelow } from '../../../src-domain/laws/student-t.ts'
import { rows } from '../../published/pace.ts'
import { meets } from '../../published/published.ts'

const { jStat } = jstat
const dof = fc.double({ min: 0.6, max: 80, noNaN: true })
const log: fc.Arbitrary<WalkLog> = fc
  .record({ modelHours: fc.double({ min: 0.5, max: 12, noNaN: true }), ratio: fc.double({ min: 0.31, max: 2.99, noNaN: true }) })
  .map(({ modelHours, ratio }) => ({ modelHours, observedHours: modelHours * ratio }))

describe('published values', () => meets(rows))

describe('Student t', () => {
  // The package's own incomplete beta stops at a relative step of 3e-7.
  test('agrees with the statistics package', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: 12, noNaN: true }),
        dof,
        (t, nu) => Math.abs(studentShareBelow(t, nu) - jStat.studentt.cdf(t, nu)) < 2e-6,
      ),
    )
  })
  test('with one degree it is Cauchy’s, with two it has a closed form', () => {
    for (const t of [-30, -1.2, 0, 0.4, 1, 7]) {
      expect(studentShareBelow(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 12)
      expect(studentShareBelow(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 12)
    }
  })
  test('the quantile comes back through the share, on both sides', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        dof,
        (q, nu) => Math.abs(studentShareBelow(studentQuantile(q, nu), nu) - q) < 1e-9,
      ),
    )
    expect(() => studentQuantile(1, 4)).toThrow(RangeError)
  })
})

describe('own pace', () => {
  test('with every log at one ratio the mean lies between none and that ratio', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.35, max: 2.8, noNaN: true }),
        fc.array(fc.double({ min: 0.5, max: 9, noNaN: true }), { minLength: 1, maxLength: 30 }),
        (k, hours) => {
          const { mu } = paceFrom(hours.map((modelHours) => ({ modelHours, observedHours: k * modelHours })))
          return k >= 1 ? mu >= -1e-12 && mu <= Math.log(k) + 1e-12 : mu <= 1e-12 && mu >= Math.log(k) - 1e-12
        },
      ),
    )
  })
  // 500 rounds end within 1e-12 of the fixed point unless the logs pull two ways; 1e-7 covers the slowest seen.
  test('the order of logs changes nothing', () => {
    fc.assert(
      fc.property(fc.array(log, { maxLength: 12 }), (logs) => {
        const [a, b] = [paceFrom(logs), paceFrom([...logs].reverse())]
        return Math.abs(a.mu - b.mu) < 1e-7 && Math.abs(a.spread - b.spread) < 1e-7
      }),
    )
  })
  test('a log that agrees with the walker narrows the band', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 25 }), fc.double({ min: 0.8, max: 1.3, noNaN: true }), (count, k) => {
        const logs = Array.from({ length: count }, () => ({ modelHours: 4, observedHours: 4 * k }))
        const before = paceFrom(logs)
        const after = paceFrom([...logs, { modelHours: 4, observedHours: 4 * before.factor }])
        const width = (pace: typeof before) => Math.log(paceBand(pace)[1] / paceBand(pace)[0])
        return width(after) < width(before)
      }),
    )
  })
  test('no logs: factor exactly one; unusable logs count for nothing', () => {
    expect(paceFrom([]).factor).toBe(1)
    const bad: readonly WalkLog[] = [
      { observedHours: 1, modelHours: 0.49 },
      { observedHours: 0.2, modelHours: 1 },
      { observedHours: 3.1, modelHours: 1 },
      { observedHours: Number.NaN, modelHours: 2 },
      { observedHours: -1, modelHours: 2 },
    ]
    expect(bad.map(isUsableLog)).toEqual([false, false, false, false, false])
    expect(paceFrom(bad)).toEqual({ ...paceFrom([]), weights: [0, 0, 0, 0, 0] })
  })
  test('an old log weighs half as much after two years', () => {
    const fresh = paceFrom([{ observedHours: 4, modelHours: 4 }])
    const old = paceFrom([{ observedHours: 4, modelHours: 4, ageYears: 2 }])
    expect(fresh.weights).toEqual([1])
    expect(old.weights).toEqual([0.5])
    expect(old.variance).toBeGreaterThan(fresh.variance)
  })
  // Simulated walkers as the prior draws them (τ 0.20, σ 0.12). The note's own simulation says 87.5, 88, 83.5 and 79 %;
  // 4000 walkers leave 0.6 % of chance (1σ), so 2 % either side.
  test.each([
    [0, 0.875],
    [1, 0.88],
    [3, 0.835],
    [10, 0.79],
  ])('after %i logs the 80 % band holds the next walk %f of the time', (count, expected) => {
    const normal = normals(20_260_814 + count)
    let held = 0
    const walkers = 4000
    for (let i = 0; i < walkers; i++) {
      const mu = 0.2 * normal()
      const next = () => Math.exp(mu + 0.12 * normal())
      const [low, high] = paceBand(paceFrom(Array.from({ length: count }, () => ({ modelHours: 4, observedHours: 4 * next() }))))
      const ratio = next()
      if (ratio >= low && ratio <= high) held++
    }
    expect(Math.abs(held / walkers - expected)).toBeLessThan(0.02)
  })
})

describe('chance of being late', () => {
  test('more time never raises it, a longer way never lowers it', () => {
    const hours = fc.double({ min: 0.1, max: 24, noNaN: true })
    fc.assert(
      fc.property(hours, hours, hours, fc.array(log, { maxLength: 4 }), (a, b, way, logs) => {
        const pace = paceFrom(logs)
        const [low, high] = [Math.min(a, b), Math.max(a, b)]
        return (
          chanceOfLate(high, way, 0.15, pace) <= chanceOfLate(low, way, 0.15, pace) + 1e-12 &&
          chanceOfLate(way, high, 0.15, pace) >= chanceOfLate(way, low, 0.15, pace) - 1e-12
        )
      }),
    )
  })
  test('at the median it is one half; with no time it is certain; with no way it is none', () => {
    expect(chanceOfLate(5 * 1.15, 5, 0.15, paceFrom([]))).toBeCloseTo(0.5, 12)
    expect(chanceOfLate(0, 5, 0.15, paceFrom([]))).toBe(1)
    expect(chanceOfLate(3, 0, 0.15, paceFrom([]))).toBe(0)
    expect(chanceOfLate(-1, 0, 0.15, paceFrom([]))).toBe(1)
  })
})

describe('breaks', () => {
  test('the share lies between the prior and what the logs show; nonsense is left out', () => {
    const one = { movingHours: 100, breakHours: 30 }
    expect(breakShareFrom([one])).toBeCloseTo(31.5 / 110, 12)
    expect(
      breakShareFrom([
        one,
        { movingHours: 0, breakHours: 3 },
        { movingHours: Number.NaN, breakHours: 1 },
        { movingHours: 2, breakHours: -1 },
      ]),
    ).toBe(breakShareFrom([one]))
  })
})

/** Standard normal draws from a seeded generator (mulberry32 and Box-Muller), so that the simulation says the same each time. */
function normals(seed: number): () => number {
  let state = seed
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4_294_967_296
  }
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
}
