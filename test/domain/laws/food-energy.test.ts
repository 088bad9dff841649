import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty, work } from '../../../src-domain/figures/figure.ts'
import { atwater, labelAgrees } from '../../../src-domain/laws/atwater.ts'
import { altitudeCautions, dayEnergy } from '../../../src-domain/laws/day-energy.ts'
import { expectedLossKg, foodMarks } from '../../../src-domain/laws/food-deficit.ts'
import { henry } from '../../../src-domain/laws/henry.ts'
import { loadMark, usualShares } from '../../../src-domain/laws/load-marks.ts'
import { mifflin } from '../../../src-domain/laws/mifflin.ts'
import { rows } from '../../published/food-energy.ts'
import { meets } from '../../published/published.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const person = fc.record({ bodyKg: number(40, 130), heightCm: number(140, 205), ageYears: number(19, 78) })

describe('published values', () => meets(rows))

describe('resting rate', () => {
  test('a heavier or taller body never rests on less, an older one never on more', () => {
    fc.assert(
      fc.property(person, number(0, 20), fc.constantFrom('female', 'male', null), (at, more, sex) => {
        const { compute } = mifflin(sex)
        return (
          compute({ ...at, bodyKg: at.bodyKg + more }) >= compute(at) &&
          compute({ ...at, heightCm: at.heightCm + more }) >= compute(at) &&
          compute({ ...at, ageYears: at.ageYears + more }) <= compute(at)
        )
      }),
    )
  })
  test('sex not said: halfway, with half the gap in doubt', () => {
    const at = { bodyKg: given(70, 'kg', 'given'), heightCm: given(175, 'cm', 'given'), ageYears: given(35, 'years', 'given') }
    const unsaid = work(mifflin(null), at)
    expect(unsaid.value).toBe((work(mifflin('male'), at).value + work(mifflin('female'), at).value) / 2)
    expect(uncertainty(unsaid)).toBe(83)
    expect(uncertainty(work(mifflin('male'), at))).toBe(0)
  })
  // Independent route: the two equations come from different people. Each is held to be within 10 % of measurement for most, so they may lie 20 % apart.
  test('Henry and Mifflin-St Jeor agree within 20 % for ordinary adults', () => {
    fc.assert(
      fc.property(
        number(19, 75),
        number(19, 27),
        number(155, 190),
        fc.constantFrom('female', 'male', null),
        (ageYears, index, heightCm, sex) => {
          const bodyKg = index * (heightCm / 100) ** 2
          const ratio =
            henry(sex).compute({ bodyKg, heightM: heightCm / 100, ageYears }) / mifflin(sex).compute({ bodyKg, heightCm, ageYears })
          return Math.abs(ratio - 1) < 0.2
        },
      ),
    )
  })
  test('age classes are from, not past; under ten is said', () => {
    const at = (ageYears: number) => henry('male').compute({ bodyKg: 70, heightM: 1.75, ageYears })
    expect(at(29.999)).toBeCloseTo(14.4 * 70 + 313 * 1.75 + 113, 9)
    expect(at(30)).toBeCloseTo(11.4 * 70 + 541 * 1.75 - 137, 9)
    expect(at(9)).toBe(at(17))
    expect(henry('male').cautions?.({ bodyKg: 30, heightM: 1.3, ageYears: 9 })).toHaveLength(1)
    expect(mifflin('male').cautions?.({ bodyKg: 70, heightCm: 175, ageYears: 79 })).toHaveLength(1)
  })
})

describe('energy of a day', () => {
  test('its 80 % band is 15 %', () => {
    const day = work(dayEnergy, {
      walkingKcal: given(2000, 'kcal', 'worked'),
      restKcalDay: given(1600, 'kcal/day', 'worked'),
      upH: given(9, 'h', 'given'),
      sleepH: given(8, 'h', 'given'),
    })
    expect((1.2816 * uncertainty(day)) / day.value).toBeCloseTo(0.15, 12)
  })
  test('heights are spoken of from 2500 m', () => {
    expect([2500, 2501, 4001].map((heightM) => altitudeCautions(heightM).length)).toEqual([0, 1, 2])
  })
})

describe('food', () => {
  test('marks stand in order: need, enough, the full need', () => {
    fc.assert(
      fc.property(number(0, 80_000), number(40, 130), number(10, 80), (energyKcal, bodyKg, ageYears) => {
        const { needKcal, enoughKcal } = foodMarks(energyKcal, bodyKg, ageYears)
        return 0 <= needKcal && needKcal <= enoughKcal && enoughKcal <= energyKcal
      }),
    )
  })
  test('at enough the loss is under 2 % of the body and a fifth of the need; at need under 4 %', () => {
    fc.assert(
      fc.property(number(1000, 80_000), number(40, 130), (energyKcal, bodyKg) => {
        const { needKcal, enoughKcal } = foodMarks(energyKcal, bodyKg, 40)
        return (
          expectedLossKg(energyKcal - enoughKcal) <= 0.02 * bodyKg + 1e-9 &&
          energyKcal - enoughKcal <= 0.2 * energyKcal + 1e-9 &&
          expectedLossKg(energyKcal - needKcal) <= 0.04 * bodyKg + 1e-9
        )
      }),
    )
  })
  test('the young get the full need', () => {
    expect(foodMarks(9000, 50, 17.9)).toEqual({ needKcal: 9000, enoughKcal: 9000 })
    expect(expectedLossKg(-5)).toBe(0)
  })
  test('a label within a fifth of its nutrients is taken', () => {
    const sum = atwater.compute({ proteinG: 10, fatG: 20, carbohydrateG: 60, alcoholG: 1, fibreG: 5 })
    expect(sum).toBe(477)
    expect([labelAgrees(0.8 * sum, sum), labelAgrees(1.21 * sum, sum)]).toEqual([true, false])
  })
})

describe('load on the body', () => {
  test('the usual marks by age', () => {
    expect(usualShares(null)).toEqual({ easy: 0.2, upper: 0.3 })
    expect(usualShares(18)).toEqual({ easy: 0.2, upper: 0.3 })
    expect(usualShares(17.9)).toEqual({ easy: 0.15, upper: 0.2 })
    fc.assert(fc.property(number(30, 130), (bodyKg) => loadMark.compute({ bodyKg, share: 0.2 }) < loadMark.compute({ bodyKg, share: 0.3 })))
  })
})
