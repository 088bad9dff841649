import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, work } from '../../../src-domain/figures/figure.ts'
import { drinkingRate, drinkingTable, MOST_DRINK_l_h, tableRate } from '../../../src-domain/laws/drinking-rate.ts'
import { mostEvaporation, neededEvaporation } from '../../../src-domain/laws/evaporation-balance.ts'
import { waterForStretch, waterOfDay } from '../../../src-domain/laws/water-carried.ts'
import {
  bleachDrops,
  boilMinutes,
  dosesFor,
  filterLeftL,
  iodineDrops,
  treatmentCautions,
} from '../../../src-domain/laws/water-made-safe.ts'
import { rows } from '../../published/water.ts'
import { meets } from '../../published/published.ts'

describe('published values', () => meets(rows))

const efforts = ['easy', 'moderate', 'hard'] as const
const air = fc.double({ min: -20, max: 50, noNaN: true })

describe('drinking rate', () => {
  test('warmer air or harder work never asks for less', () => {
    fc.assert(
      fc.property(air, air, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)]
        return (
          efforts.every((effort) => tableRate(effort, low) <= tableRate(effort, high) + 1e-12) &&
          tableRate('easy', a) <= tableRate('moderate', a) &&
          tableRate('moderate', a) <= tableRate('hard', a)
        )
      }),
    )
  })
  test('it is the table at the table’s temperatures and level beyond its ends', () => {
    expect(tableRate('moderate', 20)).toBe(drinkingTable.moderate[2])
    expect([tableRate('hard', -10), tableRate('hard', 48)]).toEqual([drinkingTable.hard[0], drinkingTable.hard[6]])
    expect(tableRate('easy', 32.5)).toBeCloseTo(0.5, 12)
  })
  test('shade never asks for more than sun', () => {
    fc.assert(
      fc.property(
        air,
        fc.constantFrom(...efforts),
        (airC, effort) =>
          tableRate(effort, airC, 'shade') <= tableRate(effort, airC, 'half') && tableRate(effort, airC, 'half') <= tableRate(effort, airC),
      ),
    )
    expect(tableRate('moderate', 30, 'shade')).toBe(0.55) // PW 0.523 l/h (provisions.md 2.2), rounded up to 0.05
  })
  test('no body and no factor passes the safe rate an hour', () => {
    const factor = fc.double({ min: 0.3, max: 4, noNaN: true })
    fc.assert(
      fc.property(
        air,
        factor,
        fc.double({ min: 1.2, max: 2.6, noNaN: true }),
        (airC, f, skin_m2) => drinkingRate('hard').compute({ airC, skin_m2, factor: f }) <= MOST_DRINK_l_h,
      ),
    )
  })
  test('a bigger body drinks more, in proportion to its skin', () => {
    const at = (skin_m2: number): number => drinkingRate('easy').compute({ airC: 20, skin_m2, factor: 1 })
    expect(at(2.2) / at(1.85)).toBeCloseTo(2.2 / 1.85, 12)
  })
  test('its working names the caution', () => {
    const rate = work(drinkingRate('moderate'), {
      airC: given(30, 'degC', 'given'),
      skin_m2: given(1.85, 'm2', 'constant'),
      factor: given(1, '1', 'estimated'),
    })
    expect(rate.working?.cautions[0]).toContain('Drink to thirst')
  })
  test('sun and still air ask for more, damp air takes less', () => {
    const at = { workW: 425, skin_m2: 1.85, airC: 25, humidity: 0.5, speedMs: 1, sun_W_m2: 0 }
    expect(neededEvaporation({ ...at, sun_W_m2: 60 })).toBeGreaterThan(neededEvaporation(at))
    expect(mostEvaporation({ ...at, humidity: 0.9 })).toBeLessThan(mostEvaporation(at))
    expect(mostEvaporation({ ...at, speedMs: 9 })).toBe(mostEvaporation({ ...at, speedMs: 2.5 }))
  })
})

describe('water to carry', () => {
  const hours = fc.double({ min: 0, max: 12, noNaN: true })
  test('a longer stretch or a further dry camp never needs less', () => {
    fc.assert(
      fc.property(hours, hours, fc.nat({ max: 3 }), (a, more, camps) => {
        const v = (h: number, dryCamps: number): number =>
          waterForStretch.compute({ hours: h, rate: 0.6, dryCamps, campL: 1.5, cookingL: 0.5, spareL: 0.5 })
        return v(a + more, camps) >= v(a, camps) && v(a, camps + 1) > v(a, camps)
      }),
    )
  })
  test('a dry camp adds its drink and its cooking', () => {
    expect(waterForStretch.compute({ hours: 0, rate: 0.6, dryCamps: 1, campL: 1.5, cookingL: 1, spareL: 0.5 })).toBe(3)
    expect(waterOfDay.compute({ hours: 6, rate: 0.5, campL: 1.5, cookingL: 1 })).toBe(5.5)
  })
})

describe('made safe', () => {
  test('higher never boils shorter, and cloudy never takes fewer drops', () => {
    fc.assert(fc.property(fc.nat({ max: 6000 }), fc.nat({ max: 3000 }), (h, more) => boilMinutes(h + more) >= boilMinutes(h)))
    const litres = fc.double({ min: 0.5, max: 20, noNaN: true })
    fc.assert(
      fc.property(litres, (l) => bleachDrops(l, 6, true) >= bleachDrops(l, 6, false) && iodineDrops(l, true) >= iodineDrops(l, false)),
    )
  })
  test('doses are whole and always enough', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.constantFrom(0.5, 0.75, 1, 2, 4),
        (litres, each) => dosesFor(litres, each) * each >= litres - 1e-6 && Number.isInteger(dosesFor(litres, each)),
      ),
    )
    expect(dosesFor(4, 1)).toBe(4)
    expect(dosesFor(4, 0)).toBeNaN()
  })
  test('a filter frozen wet treats nothing, and silt never lengthens its life', () => {
    expect(filterLeftL(1000, 10, true)).toBe(0)
    expect(filterLeftL(1000, 300, false, 3)).toBe(100)
    expect(filterLeftL(1000, 1300, false)).toBe(0)
  })
  test('every treatment carries its caution', () => {
    for (const lines of Object.values(treatmentCautions)) expect(lines.length).toBeGreaterThan(0)
  })
})
