import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, work } from '../../../src-domain/figures/figure.ts'
import { frostbiteBand, frostbiteMinutes, frostbiteTime } from '../../../src-domain/laws/frostbite.ts'
import { heatBand, heatIndex, heatIndexF } from '../../../src-domain/laws/heat-index.ts'
import { windAt10mKmh, windChill, windChillF } from '../../../src-domain/laws/wind-chill.ts'
import { canadaChart, usChart } from '../../fixtures/wind-chill-charts.ts'
import { heatChart } from '../../fixtures/heat-index-chart.ts'
import { rows as frost } from '../../published/frostbite.ts'
import { rows as heat } from '../../published/heat-index.ts'
import { meets } from '../../published/published.ts'
import { rows as chill } from '../../published/wind-chill.ts'

const cold = fc.double({ min: -60, max: 10, noNaN: true })
const wind = fc.double({ min: 0, max: 150, noNaN: true })

describe('published wind chill', () => meets(chill))
describe('published frostbite times', () => meets(frost))
describe('published heat index', () => meets(heat))

test('no cell of the charts was dropped', () => {
  expect(Object.values(usChart).flat()).toHaveLength(204)
  expect(Object.values(canadaChart).flat()).toHaveLength(192)
  expect(Object.values(heatChart).flat()).toHaveLength(135) // one of them doubted
})

describe('wind chill', () => {
  test('is never above the air temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 40, noNaN: true }), wind, (airC, windKmh) => windChill.compute({ airC, windKmh }) <= airC),
    )
  })
  test('more wind or colder air never feels warmer', () => {
    fc.assert(
      fc.property(
        cold,
        wind,
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (airC, windKmh, colder, more) => {
          const felt = windChill.compute({ airC, windKmh })
          return windChill.compute({ airC: airC - colder, windKmh: windKmh + more }) <= felt + 1e-9
        },
      ),
    )
  })
  test('outside its range the air temperature answers, and says so', () => {
    expect(windChill.compute({ airC: 12, windKmh: 60 })).toBe(12)
    expect(windChill.compute({ airC: -10, windKmh: 4 })).toBe(-10)
    expect(windChill.cautions({ airC: 12, windKmh: 60 })).toHaveLength(2)
    expect(windChill.cautions({ airC: -10, windKmh: 30 })).toHaveLength(1)
    expect(windChillF(51, 30)).toBe(51)
  })
  test('the two published forms agree within the rounding of their coefficients', () => {
    // Coefficients of four digits: 0.1 °C over the whole range (worked from their last digits).
    fc.assert(
      fc.property(cold, fc.double({ min: 5, max: 100, noNaN: true }), (airC, windKmh) => {
        const viaF = (windChillF(airC * 1.8 + 32, windKmh / 1.609344) - 32) / 1.8
        return Math.abs(viaF - windChill.compute({ airC, windKmh })) < 0.1
      }),
    )
  })
  test('a reading at face height stands for more wind at ten metres', () => {
    expect(windAt10mKmh(20)).toBeCloseTo(29.985, 3)
  })
})

describe('frostbite', () => {
  test('there is none above freezing air, whatever the wind chill', () => {
    expect(frostbiteBand(-12, 1)).toBe('none')
  })
  test.each([
    [-9, 'low'],
    [-10, 'low-cooling'],
    [-27, 'low-cooling'],
    [-28, '10-30-min'],
    [-39, '10-30-min'],
    [-40, '5-10-min'],
    [-47, '5-10-min'],
    [-48, '2-5-min'],
    [-54, '2-5-min'],
    [-55, 'under-2-min'],
  ] as const)('wind chill %s is in the band %s', (chillC, band) => expect(frostbiteBand(chillC, -20)).toBe(band))
  test('outside its range it says why instead of minutes', () => {
    expect(frostbiteMinutes(-23.3, 8)).toEqual({ ok: false, why: 'frostbite.wind', facts: { windKmh: 8, fromKmh: 25, toKmh: 80 } })
    expect(frostbiteMinutes(-10, 40)).toMatchObject({ ok: false, why: 'frostbite.air' })
    expect(frostbiteMinutes(-15, 25)).toMatchObject({ ok: false, why: 'frostbite.slow' })
    expect(frostbiteMinutes(Number.NaN, 40).ok).toBe(false)
  })
  test('colder air or more wind never leaves more minutes', () => {
    const air = fc.double({ min: -50, max: -15, noNaN: true })
    const gale = fc.double({ min: 25, max: 80, noNaN: true })
    fc.assert(
      fc.property(air, air, gale, gale, (a, b, v, w) => {
        const worse = frostbiteTime.compute({ airC: Math.min(a, b), windKmh: Math.max(v, w) })
        return worse <= frostbiteTime.compute({ airC: Math.max(a, b), windKmh: Math.min(v, w) }) + 1e-9
      }),
    )
  })
})

describe('heat index', () => {
  test('damp air never feels cooler, from 27 °C up', () => {
    // Inside the chart; the dry adjustment ends below 13 % and 30 % keeps clear of the polynomial's dry corner.
    fc.assert(
      fc.property(
        fc.double({ min: 27, max: 43, noNaN: true }),
        fc.double({ min: 30, max: 84, noNaN: true }),
        (airC, rhPct) => heatIndex.compute({ airC, rhPct: rhPct + 1 }) > heatIndex.compute({ airC, rhPct }) - 0.05,
      ),
    )
  })
  test('the adjustment for humid air only adds, that for dry air only takes', () => {
    expect(heatIndexF(84, 90)).toBeGreaterThan(heatIndexF(84, 90, false))
    expect(heatIndexF(100, 10)).toBeLessThan(heatIndexF(100, 10, false))
    expect(heatIndexF(95, 50)).toBe(heatIndexF(95, 50, false))
  })
  test.each([
    [79, 'none'],
    [80, 'caution'],
    [90, 'extreme-caution'],
    [103, 'danger'],
    [125, 'extreme-danger'],
  ] as const)('%s °F is in the band %s', (f, band) => expect(heatBand((f - 32) / 1.8)).toBe(band))
  test('carries the doubt of the forecast and a caution for the load', () => {
    const felt = work(heatIndex, { airC: given(35, 'degC', 'given', { 'brief:high': 2 }), rhPct: given(60, '%', 'estimated') })
    expect(Math.abs(felt.shares['brief:high'] ?? 0)).toBeGreaterThan(2) // near 35 °C the index rises faster than the air
    expect(felt.working?.cautions[0]).toContain('no load')
  })
})
