import fc from 'fast-check'
import { jStat } from 'jstat'
import { describe, expect, test } from 'vitest'
import { fuel } from '../../../src-domain/checks/fuel.ts'
import { foodEnergy } from '../../../src-domain/checks/food-energy.ts'
import { sleepWarmth } from '../../../src-domain/checks/sleep-warmth.ts'
import { waterCarry } from '../../../src-domain/checks/water-carry.ts'
import { breakBand, breakShareFrom } from '../../../src-domain/laws/break-share.ts'
import { learnedOf, withLearned, type Learned } from '../../../src-domain/learning/learned.ts'
import { learnedKinds, type LearnedKind, type LearningLog } from '../../../src-domain/learning/logs.ts'
import { emptyWalker, type Walker } from '../../../src-domain/trips/walker.ts'
import { find, foundBy, leg } from '../checks/asking.ts'
import { bag, mat } from '../checks/warm-kit.ts'
import type { TestItem } from '../loadout/kit.ts'

const log = (kind: LearnedKind, met: number, law: number, more: Partial<LearningLog> = {}): LearningLog => ({
  ...{ kind, met, law, of: 'leg', id: 1, tripId: 1, tripName: 'Hills', walkerId: null, onDay: '2026-06-01', about: 'a leg', cold: false },
  ...{ stove: kind === 'fuel' ? 'burner' : '', passedOver: null },
  ...more,
})
const one = (kind: LearnedKind, logs: readonly LearningLog[], walker: Walker = emptyWalker): Learned =>
  learnedOf(logs, walker).find((each) => each.kind === kind)!

/** Mean and standard deviation of a posterior on a fine grid: prior times the likelihood of each log, integrated by the trapezoid rule. */
function posterior(lnPrior: (x: number) => number, lnLikelihood: (x: number) => number, from: number, to: number) {
  const steps = 20_000
  const xs = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
  const lns = xs.map((x) => lnPrior(x) + lnLikelihood(x))
  const most = Math.max(...lns)
  const weights = lns.map((ln, i) => Math.exp(ln - most) * (i === 0 || i === steps ? 0.5 : 1))
  const all = weights.reduce((sum, w) => sum + w, 0)
  const mean = xs.reduce((sum, x, i) => sum + weights[i]! * x, 0) / all
  return { mean, sd: Math.sqrt(xs.reduce((sum, x, i) => sum + weights[i]! * (x - mean) ** 2, 0) / all) }
}
const lnNormal = (x: number, mean: number, sd: number): number => -((x - mean) ** 2) / (2 * sd * sd)

describe('against an integration of their own', () => {
  // Spreads of provisions.md 1.4 (0.25, 0.15) and 2.3 (0.30, 0.25); of food a choice named in learned.ts.
  const cases = [
    ['fuel', 0.25, 0.15],
    ['water', 0.3, 0.25],
    ['food', 0.117, 0.15],
  ] as const
  test.each(cases)('%s: factor and doubt', (kind, prior, scatter) => {
    const ratios = [1.2, 0.94, 1.31, 1.08]
    const { mean, sd } = posterior(
      (x) => lnNormal(x, 0, prior),
      (x) => ratios.reduce((sum, ratio) => sum + lnNormal(Math.log(ratio), x, scatter), 0),
      -2,
      2,
    )
    const learned = one(
      kind,
      ratios.map((ratio) => log(kind, 50 * ratio, 50)),
    )
    expect(learned.value).toBeCloseTo(Math.exp(mean), 6)
    expect(learned.sd).toBeCloseTo(sd, 6)
    // The next log lies about the factor by both spreads; its quantile from a statistics package.
    expect(learned.band[1]).toBeCloseTo(jStat.lognormal.inv(0.9, mean, Math.hypot(sd, scatter)), 5)
    expect(learned.band[0]).toBeCloseTo(jStat.lognormal.inv(0.1, mean, Math.hypot(sd, scatter)), 5)
  })
  test('the note’s three burns, η0 0.50 → 0.44579 (provisions.md 1.4)', () => {
    const learned = one(
      'fuel',
      [0.44, 0.46, 0.42].map((eta) => log('fuel', 0.5 / eta, 1)),
    )
    expect(0.5 / learned.value).toBeCloseTo(0.44579, 5)
    expect(learned.sd).toBeCloseTo(0.08183, 5)
  })
  test('cold: the note’s nights (warmth.md 1.7), and an integration without the grid', () => {
    const nights = [[4, true], [6, false], [3, true]] as const // prettier-ignore
    const learned = one(
      'cold',
      nights.map(([met, cold]) => log('cold', met, 0, { cold })),
    )
    expect([learned.value, learned.sd!].map((value) => value.toFixed(2))).toEqual(['3.92', '1.66'])
    const { mean } = posterior(
      (x) => lnNormal(x, 0, 3),
      (x) => nights.reduce((sum, [m, cold]) => sum + Math.log(jStat.normal.cdf((cold ? 1 : -1) * (x - m), 0, 2.5)), 0),
      -12,
      12,
    )
    expect(learned.value).toBeCloseTo(mean, 2)
  })
  test('breaks: the band is a negative binomial’s (beta of a statistics package)', () => {
    const logs = [{ movingHours: 6, breakHours: 1.2 }, { movingHours: 4, breakHours: 0.5 }] // prettier-ignore
    const shape = (1.5 + 1.7) / 0.15
    const p = 20 / (20 + 6)
    const [low, high] = breakBand(logs)
    expect(jStat.beta.cdf(p, shape, (low * 6) / 0.15 + 0.5)).toBeCloseTo(0.1, 5)
    expect(jStat.beta.cdf(p, shape, (high * 6) / 0.15 + 0.5)).toBeCloseTo(0.9, 5)
  })
})

const ratio = fc.double({ min: 0.4, max: 2.5, noNaN: true })
const walkedH = fc.double({ min: 0.6, max: 9, noNaN: true })
const factorKinds = ['pace', 'fuel', 'water', 'food'] as const

describe('properties', () => {
  test('without a log the value is the law’s own', () => {
    const all = learnedOf([], { ...emptyWalker, coldOffsetK: 3 })
    expect(all.map(({ kind, records, value }) => [kind, records, value])).toEqual([['pace', 0, 1], ['breaks', 0, 0.15], ['cold', 0, 3], ['fuel', 0, 1], ['water', 0, 1], ['food', 0, 1]]) // prettier-ignore
    expect(withLearned(emptyWalker, all)).toEqual(emptyWalker)
  })
  test('logs of one ratio: the value lies between the law’s and that ratio, and another of it draws nearer', () => {
    fc.assert(
      fc.property(fc.constantFrom(...factorKinds), ratio, fc.array(walkedH, { minLength: 1, maxLength: 8 }), (kind, k, laws) => {
        const logs = laws.map((law) => log(kind, k * law, law))
        const value = one(kind, logs).value
        const further = one(kind, [...logs, log(kind, k * 3, 3)]).value
        expect(value).toBeGreaterThanOrEqual(Math.min(1, k) - 1e-9)
        expect(value).toBeLessThanOrEqual(Math.max(1, k) + 1e-9)
        if (kind !== 'pace') expect(Math.abs(Math.log(further / k))).toBeLessThanOrEqual(Math.abs(Math.log(value / k)) + 1e-12)
      }),
    )
  })
  test('the order of logs changes nothing, and the value lies in its band', () => {
    const logs = fc.array(fc.tuple(fc.constantFrom(...learnedKinds), ratio, walkedH, fc.boolean()), { maxLength: 12 })
    fc.assert(
      fc.property(logs, (told) => {
        const all = told.map(([kind, k, law, cold]) => log(kind, k * law, law, { cold }))
        const forward = learnedOf(all, emptyWalker)
        const back = learnedOf([...all].reverse(), emptyWalker)
        for (const [i, learned] of forward.entries()) {
          expect(back[i]!.value).toBeCloseTo(learned.value, 9)
          expect(learned.value).toBeGreaterThanOrEqual(learned.band[0] - 0.02)
          expect(learned.value).toBeLessThanOrEqual(learned.band[1] + 0.02)
        }
      }),
    )
  })
  test('a log that is left out is as if it were not there, and still shown', () => {
    fc.assert(
      fc.property(fc.constantFrom(...learnedKinds), ratio, ratio, (kind, a, b) => {
        const first = log(kind, 3 * a, 3)
        const second = log(kind, 3 * b, 3, { id: 2 })
        const learned = one(kind, [first, { ...second, passedOver: 'left-out' }])
        expect([learned.value, learned.records, learned.logs.length]).toEqual([one(kind, [first]).value, 1, 2])
      }),
    )
  })
  test('a cold night never makes a warmer sleeper', () => {
    const nights = fc.array(fc.tuple(fc.double({ min: -8, max: 8, noNaN: true }), fc.boolean()), { maxLength: 8 })
    fc.assert(
      fc.property(nights, fc.double({ min: -8, max: 8, noNaN: true }), (told, m) => {
        const logs = told.map(([met, cold]) => log('cold', met, 0, { cold }))
        expect(one('cold', [...logs, log('cold', m, 0, { cold: true })]).value).toBeGreaterThanOrEqual(one('cold', logs).value - 1e-9)
      }),
    )
  })
  test('more standing never lowers the share of breaks, and the band widens with fewer hours behind it', () => {
    const some = [{ movingHours: 5, breakHours: 1 }]
    expect(breakShareFrom([{ movingHours: 5, breakHours: 1.5 }])).toBeGreaterThan(breakShareFrom(some))
    const width = ([low, high]: readonly [number, number]) => high - low
    const many = Array.from({ length: 20 }, () => ({ movingHours: 5, breakHours: 0.75 }))
    expect(width(breakBand(many))).toBeLessThan(width(breakBand([])))
  })
  test('a typed value stands where the person wants it to', () => {
    const learned = learnedOf([log('pace', 4.4, 4), log('water', 2, 1)], emptyWalker)
    const walker = withLearned({ ...emptyWalker, paceFactor: 1.3, asTyped: ['pace'] }, learned)
    expect(walker.paceFactor).toBe(1.3)
    expect(walker.paceSpread).toBeUndefined()
    expect(walker.waterFactor).toBeGreaterThan(1)
  })
})

const burner: TestItem = { name: 'Burner', area: 'kitchen', g: 80, duties: 'stove', traits: { fuels: 'gas' } }
const bottle: TestItem = { name: 'Bottle', area: 'water', g: 40, duties: 'water-vessel', traits: { 'water-capacity': 3 } }

describe('the checks read what was learned', () => {
  const walker = (logs: readonly LearningLog[], from: Partial<Walker> = {}): Walker => {
    const base = { ...emptyWalker, ...from }
    return withLearned(base, learnedOf(logs, base))
  }
  test('cold nights move the coldest night held by the offset, and its doubt narrows', () => {
    const logs = [log('cold', 2, -2, { cold: true }), log('cold', 3, -2, { cold: true })]
    const colder = walker(logs)
    const [before, after] = [emptyWalker, colder].map((of) =>
      foundBy(sleepWarmth, { items: [bag(0), mat(3)], brief: { lowC: 0 }, walker: of }),
    )
    expect(after!.have.value - before!.have.value).toBeCloseTo(colder.coldOffsetK, 9)
    expect(Math.abs(after!.have.shares['walker:cold-offset']!)).toBeCloseTo(colder.coldSdK!, 9)
  })
  test('water drunk moves the need, in proportion to the hours’ part of it', () => {
    const own = walker([log('water', 2, 1), log('water', 1.8, 1)])
    const at = (of: Walker) =>
      foundBy(waterCarry, { items: [bottle], brief: { dryHours: 4, sources: [], highC: 20 }, walker: of }).need.value
    const hours = at(emptyWalker) - 0.5 // 0.5 l to spare is no matter of the walker (provisions.md 2.4)
    expect(at(own) - 0.5).toBeCloseTo(hours * own.waterFactor, 9)
  })
  test('weighed burns move the fuel of that stove alone', () => {
    const brief = { meals: { boilsPerDay: 2, litresPerBoil: 0.5, coldDays: [], hotBreakfast: false, eatenOutKcal: 0 } }
    const uid = 'i1'
    const need = (of: Walker) => foundBy(fuel, { items: [burner], brief, walker: of }).need
    const own = walker([log('fuel', 60, 50, { stove: uid }), log('fuel', 65, 50, { stove: uid })])
    const other = walker([log('fuel', 60, 50, { stove: 'another' })])
    expect(need(own).value / need(emptyWalker).value).toBeCloseTo(own.stoves![uid]!.factor, 9)
    expect(need(other).value).toBe(need(emptyWalker).value)
  })
  test('food eaten moves the energy need', () => {
    const body = { bodyMassG: 70_000, heightMm: 1750, bornYear: 1990, sex: 'male' as const }
    const own = walker([log('food', 9000, 10_000), log('food', 8500, 10_000)], body)
    const need = (of: Walker) => foundBy(foodEnergy, { brief: { legs: [leg(1), leg(2)], nightsOut: 1 }, trip: { endsOn: '2025-10-10' }, walker: of }).need.value // prettier-ignore
    expect(need(own) / need({ ...emptyWalker, ...body })).toBeCloseTo(own.foodFactor!, 6)
    expect(find(foodEnergy, { walker: own }).state).not.toBe('unknown')
  })
})
