import fc from 'fast-check'
import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { kitAreas } from '../../../src-domain/closet/vocabulary.ts'
import { leftToWorn, lifeUsed, pastLife } from '../../../src-domain/laws/life-used.ts'
import { holdingCost, learnedFirst, resaleCourse, worth } from '../../../src-domain/laws/resale.ts'
import { ageWeight, meanShare, noneOfNext, shareUnder, useShare } from '../../../src-domain/laws/use-share.ts'
import { meanWaitingYears, tripRate, unitsPerTrip, waitingYears, wornWithin, wornYears } from '../../../src-domain/laws/waiting-time.ts'
import { meets } from '../../published/published.ts'
import { rows } from '../../published/wear.ts'

const { jStat } = jstat

describe('published values', () => meets(rows))

describe('life', () => {
  const amount = fc.double({ min: 0, max: 3000, noNaN: true })
  test('more use never lengthens life, nor makes its end less likely', () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        (u, more) =>
          leftToWorn(u + more, 800) <= leftToWorn(u, 800) &&
          pastLife(u + more, 800, 0.35) >= pastLife(u, 800, 0.35) &&
          lifeUsed(u + more, 800) >= lifeUsed(u, 800),
      ),
    )
  })
  test('at its median life half of them are past it, whatever the spread', () => {
    expect(pastLife(800, 800, 0.2)).toBeCloseTo(0.5, 12)
    expect(pastLife(0, 800, 0.2)).toBe(0)
  })
  test('the lognormal share agrees with the statistics package', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3000, noNaN: true }),
        (u) => Math.abs(pastLife(u, 800, 0.35) - jStat.lognormal.cdf(u, Math.log(800), 0.35)) < 1e-6,
      ),
    )
  })
})

describe('waiting', () => {
  const trips = fc.double({ min: 0.1, max: 40, noNaN: true })
  const seen = fc.integer({ min: 0, max: 30 })
  const q = fc.double({ min: 0.05, max: 0.95, noNaN: true })
  test('the date agrees with the statistics package’s beta', () => {
    fc.assert(
      fc.property(trips, seen, q, (r, n, share) => {
        const rate = tripRate(n, 2)
        const tau = waitingYears(share, r, rate)
        // The package's beta is good to 1e-6 (see numerics.test.ts).
        return Math.abs(jStat.beta.cdf(tau / (tau + rate.years), r, rate.shape) - share) < 1e-5
      }),
    )
  })
  test('more left or a later share never comes sooner; more trips seen never later', () => {
    fc.assert(
      fc.property(trips, trips, seen, q, (r, more, n, share) => {
        const at = (left: number, count: number): number => waitingYears(share, left, tripRate(count, 2))
        return (
          at(r + more, n) >= at(r, n) - 1e-9 &&
          at(r, n + 1) <= at(r, n) + 1e-9 &&
          waitingYears(Math.min(0.99, share + 0.04), r, tripRate(n, 2)) >= at(r, n)
        )
      }),
    )
  })
  test('more use never puts the date off, with a spread of lives too', () => {
    const used = fc.double({ min: 0, max: 700, noNaN: true })
    fc.assert(
      fc.property(used, used, q, (a, b, share) => {
        const at = (u: number): number =>
          wornYears(share, { medianLife: 800, sigma: 0.35, used: u, unitsPerTrip: 45, rate: tripRate(6, 2) })
        return at(Math.max(a, b)) <= at(Math.min(a, b)) + 1e-6
      }),
      { numRuns: 40 },
    )
  })
  test('without a spread it is the plain waiting time, and the share comes back through the date', () => {
    const life = { medianLife: 800, sigma: 0, used: 520, unitsPerTrip: 45, rate: { shape: 11, years: 1.75 } }
    expect(wornYears(0.5, life)).toBeCloseTo(0.6752, 3)
    const spread = { ...life, sigma: 0.4 }
    expect(wornWithin(wornYears(0.7, spread), spread)).toBeCloseTo(0.7, 9)
  })
  test('next to nothing left is now, and no trip seen has no mean', () => {
    expect(waitingYears(0.9, 0.04, tripRate(3, 1))).toBe(0)
    expect(meanWaitingYears(5, tripRate(0, 1))).toBeNull()
    expect(unitsPerTrip(3, [])).toBe(3)
  })
})

describe('share taken', () => {
  const count = fc.integer({ min: 0, max: 30 })
  test('one more trip at home never weakens the evidence, one more taken never strengthens it', () => {
    fc.assert(
      fc.property(count, count, (k, home) => {
        const e = (taken: number, fit: number): number => shareUnder(useShare(taken, fit), 0.1)
        return e(k, k + home + 1) >= e(k, k + home) - 1e-12 && e(k + 1, k + home + 1) <= e(k, k + home) + 1e-12
      }),
    )
  })
  test('the next trip alone is one less the mean', () => {
    fc.assert(
      fc.property(
        count,
        count,
        (k, home) => Math.abs(noneOfNext(useShare(k, k + home), 1) - (1 - meanShare(useShare(k, k + home)))) < 1e-12,
      ),
    )
    expect(noneOfNext(useShare(1, 3), 0)).toBe(1)
  })
  test('taken more often than fit is a bug, not a share', () => {
    expect(() => useShare(3, 2)).toThrow('taken 3 of 2')
  })
  test('a trip three years old weighs half when age is counted', () => {
    expect([ageWeight(0), ageWeight(3), ageWeight(6), ageWeight(-1)]).toEqual([1, 0.5, 0.25, 1])
  })
})

describe('worth', () => {
  const years = fc.double({ min: 0, max: 20, noNaN: true })
  test('older or more worn is never worth more, and keeping never pays', () => {
    fc.assert(
      fc.property(years, years, fc.double({ min: 0, max: 2, noNaN: true }), fc.constantFrom(...kitAreas), (t, more, used, area) => {
        const thing = { price: 200, years: t, lifeUsed: used, course: resaleCourse(area) }
        return (
          worth({ ...thing, years: t + more }) <= worth(thing) + 1e-9 &&
          worth({ ...thing, lifeUsed: used + 0.1 }) <= worth(thing) &&
          holdingCost(thing, more) >= -1e-9
        )
      }),
    )
  })
  test('own sales teach the first drop', () => {
    const thing = { price: 200, years: 2, lifeUsed: 0, course: resaleCourse('sleep') }
    expect(learnedFirst([{ sold: worth(thing), thing }])).toBeCloseTo(0.7, 12)
    expect(learnedFirst([{ sold: worth(thing) * 1.2, thing }])).toBeCloseTo(0.84, 12)
    expect(learnedFirst([])).toBeNull()
  })
})
