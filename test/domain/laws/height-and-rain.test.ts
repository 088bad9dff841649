import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty, work } from '../../../src-domain/figures/figure.ts'
import { campLow, carriedUp, planningLow } from '../../../src-domain/laws/lapse-rate.ts'
import { coverWorth, dryStoreAsked, legCoverAsked, upperCoverAsked, worthOf } from '../../../src-domain/laws/rain-cover.ts'
import { column_kPa, columnMm, waterClass } from '../../../src-domain/laws/water-column.ts'
import { traitByCode } from '../../../src-domain/closet/vocabulary.ts'
import { rains } from '../../../src-domain/trips/brief.ts'
import { rows } from '../../published/height-and-rain.ts'
import { meets } from '../../published/published.ts'

const height = fc.double({ min: 0, max: 4000, noNaN: true })
const low = fc.double({ min: -30, max: 20, noNaN: true })

describe('published values', () => meets(rows))

describe('low at the camp', () => {
  test('planning is never warmer than the forecast, and the edges hold the likely between them', () => {
    fc.assert(
      fc.property(low, height, height, fc.boolean(), (lowC, fromM, toM, hollow) => {
        const camp = campLow(lowC, fromM, toM, hollow)
        return camp.planningC <= lowC && camp.coldC <= camp.likelyC && camp.likelyC <= camp.mildC && camp.sigmaK >= 2
      }),
    )
  })
  test('a higher camp never has a warmer planning low', () => {
    fc.assert(
      fc.property(low, height, height, fc.double({ min: 0, max: 500, noNaN: true }), (lowC, fromM, toM, up) => {
        return planningLow.compute({ lowC, fromM, toM: toM + up }) <= planningLow.compute({ lowC, fromM, toM })
      }),
    )
  })
  test('as a figure its doubt is the forecast and the climb together', () => {
    const figure = work(planningLow, {
      lowC: given(8, 'degC', 'given', { 'brief:low': 2 }),
      fromM: given(800, 'm', 'given'),
      toM: given(2100, 'm', 'given'),
    })
    expect(Math.abs(uncertainty(figure) - 2.79)).toBeLessThan(0.005) // warmth.md 4
  })
  test('a forecast from far below asks for a nearer one', () => {
    expect(planningLow.cautions({ lowC: 8, fromM: 200, toM: 1800 })).toHaveLength(1)
    expect(planningLow.cautions({ lowC: 8, fromM: 200, toM: 1600 })).toEqual([])
    expect(carriedUp.cautions({ airC: 8, fromM: 200, toM: 1800 })).toHaveLength(1)
  })
})

describe('rain', () => {
  test('more rain never asks for less cover, nor do cold and wind', () => {
    const order = (asked: { need: number; enough: number }): number => asked.need * 10 + asked.enough
    for (const cool of [false, true]) {
      for (const windy of [false, true]) {
        const legs = rains.map((rain) => order(legCoverAsked(rain, cool, windy)))
        expect([...legs].sort((a, b) => a - b)).toEqual(legs)
        for (const rain of rains)
          expect(order(legCoverAsked(rain, true, windy))).toBeGreaterThanOrEqual(order(legCoverAsked(rain, cool, windy)))
      }
    }
    expect(rains.map((rain) => upperCoverAsked(rain, true))).toEqual([
      { need: 0, enough: 1 },
      { need: 1, enough: 2 },
      { need: 1, enough: 2 },
    ])
    expect(rains.map(dryStoreAsked)).toEqual([
      { need: 0, enough: 0 },
      { need: 0, enough: 2 },
      { need: 1, enough: 2 },
    ])
  })
  test('every kind of cover that can be chosen is worth something somewhere, and nothing else is', () => {
    const kinds = new Set(Object.values(coverWorth).flatMap((worths) => Object.keys(worths)))
    expect([...kinds].sort()).toEqual([...(traitByCode.get('cover-kind')?.choices ?? [])].sort())
    expect([worthOf('rain-shell', 'umbrella'), worthOf('rain-shell', ''), worthOf('rain-shell', 'toString')]).toEqual([1, null, null])
  })
  test('a column and its pressure undo each other; classes begin at theirs', () => {
    expect(column_kPa(columnMm(8))).toBeCloseTo(8, 12)
    expect([7.9, 8, 13, 20].map(waterClass)).toEqual([0, 1, 3, 4])
  })
})
