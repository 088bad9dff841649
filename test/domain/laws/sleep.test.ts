import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty } from '../../../src-domain/figures/figure.ts'
import { clothesInside, dampFactor, HEAD_BARE_RSI, HEAD_SHARE, isFrostLikely, openSky } from '../../../src-domain/laws/bed-modifiers.ts'
import { neededMats, neededRating } from '../../../src-domain/laws/bed-needed.ts'
import { breathingLoss } from '../../../src-domain/laws/breathing-loss.ts'
import { groundFlow } from '../../../src-domain/laws/ground-flow.ts'
import { closedCellFoam, matsInSeries, mustAskMatUnit, TEST_MAT_RSI } from '../../../src-domain/laws/mats-in-series.ts'
import { calibrate, ratedTop } from '../../../src-domain/laws/rated-top.ts'
import { saturationVapour, vapour_kPa } from '../../../src-domain/laws/saturation-vapour.ts'
import { bedBalance, GROUND_OF_SNOW_C, plainBed, sleepLimit, type Bed } from '../../../src-domain/laws/sleep-limit.ts'
import { bareRatingUnit, isRatingKind, ratingKinds } from '../../../src-domain/laws/sleep-scales.ts'
import { sleeperOffset } from '../../../src-domain/laws/sleeper-offset.ts'
import { saturationPressureMPa } from '../../../src-domain/laws/water-saturation.ts'
import { meets } from '../../published/published.ts'
import { rows } from '../../published/sleep.ts'

const rating = fc.double({ min: -35, max: 15, noNaN: true })
const mats = fc.double({ min: 0, max: 2, noNaN: true })
const some = fc.double({ min: 0.001, max: 1, noNaN: true })
const scales = fc.constantFrom('comfort', 'limit' as const)
const limit = (bed: Bed): number => {
  const found = bedBalance(bed)
  if (!found.ok) throw new Error(found.why)
  return found.value.limitC
}

describe('published values', () => meets(rows))

describe('vapour pressure', () => {
  test('stays within 0.5 % of the steam table from 1 to 45 °C', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 45, noNaN: true }), (tempC) => {
        const table = saturationPressureMPa(tempC + 273.15) * 1000
        return Math.abs(vapour_kPa(tempC) / table - 1) < 0.005
      }),
    )
  })
  test('outside its range the nearer end answers and says so', () => {
    expect(vapour_kPa(-300)).toBe(vapour_kPa(-90))
    expect(saturationVapour.cautions({ tempC: -300 })).toHaveLength(1)
    expect(saturationVapour.cautions({ tempC: 20 })).toEqual([])
    expect(breathingLoss.cautions({ airC: 45 } as Parameters<typeof breathingLoss.cautions>[0])).toHaveLength(1)
  })
})

describe('a bed', () => {
  test('with a colder rating never holds less', () => {
    fc.assert(fc.property(rating, some, mats, scales, (c, colder, m, s) => limit(plainBed(c - colder, s, m)) < limit(plainBed(c, s, m))))
  })
  test('with another mat never is colder', () => {
    fc.assert(
      fc.property(rating, mats, some, fc.double({ min: 0.3, max: 1, noNaN: true }), (c, m, more, matShare) => {
        const bed = { ...plainBed(c, 'comfort', m), matShare }
        return limit({ ...bed, matsRsi: m + more }) <= limit(bed) + 1e-9 && limit({ ...bed, legsRsi: m + more }) <= limit(bed) + 1e-9
      }),
    )
  })
  test('a rating on the test mat gives itself, on either scale', () => {
    fc.assert(fc.property(rating, scales, (c, s) => Math.abs(limit(plainBed(c, s, TEST_MAT_RSI, s)) - c) < 1e-6))
  })
  test('clothes and liners never cool, damp and a bare head never warm', () => {
    fc.assert(
      fc.property(rating, mats, some, fc.double({ min: 0.3, max: 1, noNaN: true }), (c, m, added, damp) => {
        const bed = plainBed(c, 'comfort', m)
        const dry = limit(bed)
        const bare = { ...bed, bareShare: HEAD_SHARE, headRsi: HEAD_BARE_RSI }
        return limit({ ...bed, addedRsi: added }) < dry && limit({ ...bed, damp }) >= dry - 1e-9 && limit(bare) >= dry - 1e-9
      }),
    )
  })
  test('on snow is never warmer than on ground as cold as the air, and the same below freezing', () => {
    fc.assert(
      fc.property(rating, fc.double({ min: 0.3, max: 2, noNaN: true }), (c, m) => {
        const bed = plainBed(c, 'comfort', m)
        const plain = limit(bed)
        const snow = limit({ ...bed, groundAtMostC: GROUND_OF_SNOW_C })
        return plain <= 0 ? Math.abs(snow - plain) < 1e-9 : snow >= plain - 1e-9
      }),
    )
  })
  test('in balance loses exactly what it makes', () => {
    fc.assert(
      fc.property(rating, mats, (c, m) => {
        const bed = plainBed(c, 'comfort', m)
        const found = bedBalance(bed)
        if (!found.ok) return false
        const airC = found.value.limitC
        const drive = 32.8 - airC + 0.38 * (vapour_kPa(32.8) - 0.8 * vapour_kPa(airC))
        return Math.abs(found.value.all * drive + breathingLoss.compute({ heat: 46.5, airC, rhPct: 80 }) - 46.5) < 1e-9
      }),
    )
  })
  test('out of its range says why', () => {
    expect(bedBalance(plainBed(-61, 'comfort', 1))).toMatchObject({ ok: false, why: 'sleep.rating-range' })
    expect(bedBalance(plainBed(30, 'comfort', 1))).toMatchObject({ ok: false, why: 'sleep.rating-range' })
    expect(bedBalance(plainBed(Number.NaN, 'comfort', 1)).ok).toBe(false)
    const bareSnow = { ...plainBed(0, 'comfort', 0), groundAtMostC: GROUND_OF_SNOW_C }
    expect(bedBalance(bareSnow)).toMatchObject({ ok: false, why: 'sleep.never-warm' })
    expect(sleepLimit.compute(bareSnow)).toBeCloseTo(32.8, 6)
    expect(bedBalance({ ...plainBed(-55, 'comfort', 9), addedRsi: 60 })).toMatchObject({ ok: false, why: 'sleep.below-bracket' })
    expect(bedBalance(plainBed(0, 'comfort', -1))).toMatchObject({ ok: false, why: 'sleep.mat-range' })
    expect(calibrate({ ...plainBed(-50, 'comfort', 1), groundShare: 0.99 })).toMatchObject({ ok: false, why: 'sleep.rating-range' })
    expect(sleepLimit.cautions(plainBed(-45, 'comfort', 1))).toHaveLength(2)
    expect(ratedTop.cautions(plainBed(-45, 'comfort', 1))).toHaveLength(1)
  })
})

describe('the bed turned round', () => {
  test('comfort 5 at −5 °C: no mat does it', () => {
    expect(neededMats(plainBed(5, 'comfort', 0), -5)).toMatchObject({ ok: false, why: 'sleep.no-mat-does' })
    expect(neededRating(plainBed(5, 'comfort', 0), -60)).toMatchObject({ ok: false, why: 'sleep.no-rating-does' })
  })
  test('what is needed holds the night exactly', () => {
    fc.assert(
      fc.property(fc.double({ min: -15, max: 5, noNaN: true }), (lowC) => {
        const found = neededRating(plainBed(0, 'comfort', 0.6), lowC)
        return found.ok && Math.abs(limit(plainBed(found.value, 'comfort', 0.6)) - lowC) < 1e-6
      }),
    )
  })
})

describe('the ground', () => {
  test('takes more on a colder night and less through more mat', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 19, noNaN: true }), some, mats, some, (airC, colder, matsRsi, more) => {
        const at = { airC, matsRsi, underRsi: 0.1 }
        const flow = groundFlow.compute(at)
        return groundFlow.compute({ ...at, airC: airC - colder }) > flow && groundFlow.compute({ ...at, matsRsi: matsRsi + more }) < flow
      }),
    )
  })
  test('stacked mats add, and a common doubt adds before it is squared', () => {
    const mat = (rsi: number) => ({ name: 'mat', figure: given(rsi, 'm2K/W', 'claimed', { 'method:mats': 0.1 * rsi }) })
    const stack = matsInSeries([mat(0.3), mat(0.5)])
    expect(stack.value).toBeCloseTo(0.8, 12)
    expect(uncertainty(stack)).toBeCloseTo(0.08, 12)
  })
  test('a bare 0.85 is asked about, R 4.83 is not; 9 mm of foam is R 1.28', () => {
    expect([mustAskMatUnit(0.85), mustAskMatUnit(4.83)]).toEqual([true, false])
    expect(closedCellFoam.compute({ thicknessM: 0.009 }) / 0.1761101838).toBeCloseTo(1.278, 3) // 0.009/0.04 = 0.225 m²K/W
    expect(closedCellFoam.cautions({ thicknessM: 0.05 })).toHaveLength(2)
    expect(closedCellFoam.spread({ thicknessM: 0.01 })).toBeCloseTo((0.25 * 0.25) / Math.sqrt(3), 6)
  })
})

describe('modifiers and words', () => {
  test('clothes inside are capped, and say so', () => {
    expect(clothesInside.compute({ clo: 5 })).toBe(0.2)
    expect(clothesInside.cautions({ clo: 5 })).toHaveLength(1)
    expect(clothesInside.compute({ clo: -1 })).toBe(0)
    expect(openSky.cautions()).toHaveLength(1)
  })
  test('wet down keeps less than wet synthetic; dry keeps all', () => {
    expect([dampFactor('down', 'dry'), dampFactor('down', 'wet'), dampFactor('synthetic', 'wet')]).toEqual([1, 0.4, 0.7])
  })
  test('frost is spoken of after two nights below −5 °C', () => {
    expect([isFrostLikely(-6, 3), isFrostLikely(-6, 2), isFrostLikely(-5, 9)]).toEqual([true, false, false])
  })
  test('a bare 40 was °F, a bare 20 or −5 is asked', () => {
    expect([bareRatingUnit(40), bareRatingUnit(20), bareRatingUnit(-5)]).toEqual(['degF', 'ask', 'ask'])
    expect([isRatingKind('maker'), isRatingKind('toString')]).toEqual([true, false])
    expect(ratingKinds.extreme.best).toBe('tight')
  })
})

describe("the sleeper's own offset", () => {
  test('a cold night never makes a warmer sleeper, a good one never a colder', () => {
    const margins = fc.array(fc.record({ marginK: fc.double({ min: -10, max: 10, noNaN: true }), cold: fc.boolean() }), { maxLength: 8 })
    fc.assert(
      fc.property(margins, fc.double({ min: -8, max: 8, noNaN: true }), (nights, marginK) => {
        const before = sleeperOffset(nights, 0).meanK
        const cold = sleeperOffset([...nights, { marginK, cold: true }], 0).meanK
        const good = sleeperOffset([...nights, { marginK, cold: false }], 0).meanK
        return cold >= before - 1e-9 && good <= before + 1e-9
      }),
    )
  })
  test('five hundred contradictory nights still give a number', () => {
    const nights = Array.from({ length: 500 }, (_, i) => ({ marginK: i % 2 === 0 ? 12 : -12, cold: i % 2 === 0 }))
    expect(Number.isFinite(sleeperOffset(nights, 0).meanK)).toBe(true)
  })
})
