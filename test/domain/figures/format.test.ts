import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseMass, parseMoney, parseTemperature, parseVolume } from '../../../src-domain/closet/quantity.ts'
import { bandOf, fixed, placesDeserved } from '../../../src-domain/figures/digits.ts'
import { given } from '../../../src-domain/figures/figure.ts'
import {
  formatBodyMass,
  formatClock,
  formatDistance,
  formatDuration,
  formatFigure,
  formatHeight,
  formatItemMass,
  formatLoadMass,
  formatMassDifference,
  formatMoney,
  formatPieces,
  formatShare,
  formatSize,
  formatSubtotalMass,
  formatTemp,
  formatTempDifference,
  formatTotalMass,
  formatVolume,
  metric,
  plain,
  us,
} from '../../../src-domain/figures/format.ts'
import type { Mass, StoredMass, UnitChoice } from '../../../src-domain/figures/format.ts'

const measured = (massMg: number, uMg = 0): StoredMass => ({ massMg, origin: 'measured', uMg })
const spaced = (text: string): string => text.replaceAll(' ', '\u00a0')
const reads = (shown: Parameters<typeof plain>[0], text: string): void => expect(plain(shown)).toBe(spaced(text))

describe('a mass', () => {
  // provisions.md 9.4, its check table.
  test.each([
    [412_000, '14.5 oz'],
    [453_000, '16.0 oz'],
  ])('item of %d mg in ounces', (mg, text) => reads(formatItemMass(measured(mg), us), text))
  test.each([
    [453_000, '1 lb 0.0 oz'],
    [1_000_000, '2 lb 3.3 oz'],
    [4_310_000, '9 lb 8.0 oz'],
    [412_000, '14.5 oz'],
    [0, '0.0 oz'],
  ])('total of %d mg in pounds and ounces', (mg, text) => reads(formatTotalMass(measured(mg), us), text))
  // The working check of provisions.md 9.3: total 3996 g, u 31.792 g reads "4.00 kg ±0.06".
  test('the kit of the notes', () => reads(formatTotalMass(measured(3_996_000, 31_792), metric), '4.00 kg ±0.06'))

  test.each<[string, StoredMass, number, string]>([
    ['measured', measured(412_000), 1000, '412 g'],
    ['claimed', { massMg: 352_000, origin: 'claimed' }, 1000, '~352 g'],
    ['estimated', { massMg: 95_000, origin: 'estimated' }, 1000, '≈95 g'],
    ['thousands', measured(1_284_000), 1000, '1,284 g'],
    ['under 10 g on a 1 g scale', measured(6_500), 1000, '7 g'],
    ['under 10 g on a 0.1 g scale', measured(6_500), 100, '6.5 g'],
    ['nearly 10 g on a 0.1 g scale', measured(9_960), 100, '10 g'],
    ['a half goes away from zero', measured(10_500), 1000, '11 g'],
    ['a half below nothing too', measured(-10_500), 1000, '−11 g'],
    ['nothing', measured(-400), 1000, '0 g'],
  ])('%s', (_, mass, stepMg, text) => reads(formatItemMass(mass, metric, { stepMg }), text))
  test('ounces have two decimals below one', () => {
    reads(formatItemMass(measured(12_000), us), '0.42 oz')
    reads(formatItemMass({ massMg: 28_300, origin: 'claimed' }, us), '~1.0 oz') // 0.998 oz
    reads(formatItemMass(measured(514_000), us), '18.1 oz')
  })
  test('the parts are apart, for the window to set', () => {
    expect(formatTotalMass(measured(4_310_000, 23_000), us)).toEqual({
      prefix: '',
      head: { digits: '9', unit: 'lb' },
      digits: '8.0',
      unit: 'oz',
      band: '±1.6',
    })
    expect(formatTotalMass(measured(4_310_000, 23_000), metric)).toEqual({ prefix: '', digits: '4.31', unit: 'kg', band: '±0.05' })
  })
  test('a worked figure in grams is rounded from whole milligrams', () => {
    reads(formatTotalMass(given(4309.9999, 'g', 'worked', { a: 23 }), metric), '4.31 kg ±0.05')
    reads(formatItemMass(given(0.412, 'kg', 'claimed'), metric), '~412 g')
  })
  test('subtotals, loads and bodies', () => {
    reads(formatSubtotalMass(measured(644_000, 2000), metric), '644 g ±4')
    reads(formatSubtotalMass(measured(442_000, 1000), us), '15.6 oz ±0.1')
    reads(formatSubtotalMass(measured(644_000, 2000), us), '1 lb 6.7 oz ±0.1')
    reads(formatLoadMass(measured(10_000_000), metric), '10.0 kg')
    reads(formatLoadMass(measured(10_000_000), us), '22 lb 0.7 oz')
    reads(formatBodyMass(measured(58_000_000), metric), '58 kg')
    reads(formatBodyMass(measured(58_400_000), metric), '58.4 kg')
    reads(formatBodyMass(measured(58_000_000), us), '127.9 lb')
  })
  test('pieces', () => {
    expect(formatPieces(8, 10_500, metric, 125)).toBe(spaced('8 × 10.5'))
    expect(formatPieces(2, 161_000, metric, 500)).toBe(spaced('2 × 161'))
    expect(formatPieces(8, 10_500, us)).toBe(spaced('8 × 0.37'))
    expect(formatPieces(2, 161_000, us)).toBe(spaced('2 × 5.7'))
  })
  test('differences carry their sign, and nothing has none', () => {
    reads(formatMassDifference(measured(24_000), metric), '+24 g')
    reads(formatMassDifference(measured(-5_000), metric), '−5 g')
    reads(formatMassDifference(measured(-400), metric), '0 g')
    reads(formatMassDifference(measured(982_000, 2500), metric), '+982 g ±5')
    reads(formatMassDifference(measured(-1_088_000, 13_500), metric), '−1,088 g ±27')
    reads(formatMassDifference(measured(-1_088_000, 13_500), metric, { band: false }), '−1,088 g')
    reads(formatMassDifference(measured(24_000), us), '+0.85 oz')
    reads(formatMassDifference(measured(-544_000), us), '−1 lb 3.2 oz')
    reads(formatMassDifference(measured(544_000), us), '+1 lb 3.2 oz')
    reads(formatMassDifference(measured(0), us), '0.00 oz')
  })
})

describe('the band', () => {
  // DESIGN.md: shown when 2u is at least half of the last digit shown. Worn weight 1.42 kg ±4 g has none, base weight 4.31 kg ±0.05 has.
  test('is shown from half of the last digit shown', () => {
    reads(formatTotalMass(measured(1_420_000, 2000), metric), '1.42 kg')
    reads(formatTotalMass(measured(1_420_000, 2499), metric), '1.42 kg')
    reads(formatTotalMass(measured(1_420_000, 2500), metric), '1.42 kg ±0.01')
    reads(formatTotalMass(measured(1_420_000, 2000), us), '3 lb 2.1 oz ±0.1') // 50.09 oz
  })
  test('never stands without a step of its own', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e4, noNaN: true }), fc.integer({ min: 0, max: 3 }), (u, places) => {
        const shown = bandOf(u, places)
        return (shown === '') === 2 * u < 0.5 * 10 ** -places || Math.abs(2 * u - 0.5 * 10 ** -places) < 1e-9
      }),
    )
  })
  // GUM 7.2.6: at most two significant figures; provisions.md 9.4: one, or two when it begins with 1.
  test.each([
    [0.025, 2, 2], // 2u 0.05
    [0.06, 2, 2], // 0.12
    [0.135, 2, 1], // 0.27
    [0.0485, 3, 2], // 0.097 rounds to 0.10
    [0.75, 2, 1], // 1.5
    [1.4, 2, 0], // 2.8
    [31, 2, 0],
    [0, 2, 2],
  ])('u %d deserves, of %d places, %d', (u, most, places) => expect(placesDeserved(u, most)).toBe(places))
  test('a sentence may ask for the places the band deserves', () => {
    reads(formatTotalMass(measured(8_670_000, 135_000), metric, { deserved: true }), '8.7 kg ±0.3')
    reads(formatTotalMass(measured(4_310_000, 54_000), us, { deserved: true }), '9 lb 8 oz ±4') // 2u 3.8 oz
  })
})

describe('the rest', () => {
  test('temperatures', () => {
    reads(formatTemp(-2, metric), '−2 °C')
    reads(formatTemp(-2, us), '28 °F')
    reads(formatTemp(given(-3.2, 'degC', 'worked', { a: 1 }), metric), '−3 °C ±2')
    reads(formatTemp(given(-3.2, 'degC', 'worked', { a: 1 }), us), '26 °F ±4')
    reads(formatTempDifference(2, metric), '2 K')
    reads(formatTempDifference(2, us), '4 °F')
    reads(formatTemp(-0.4, metric), '0 °C')
  })
  test('ways, heights and sizes', () => {
    reads(formatDistance(62_000, metric), '62 km')
    reads(formatDistance(62_000, us), '39 mi')
    reads(formatDistance(7_440, metric), '7.4 km')
    reads(formatDistance(9_960, metric), '10 km')
    reads(formatHeight(2_900, metric), '2,900 m')
    reads(formatHeight(2_900, us), '9,510 ft')
    reads(formatSize(1.83, metric), '183 cm')
    reads(formatSize(1.83, us), '72 in')
  })
  test('volumes', () => {
    reads(formatVolume(0.75, metric), '750 ml')
    reads(formatVolume(1.5, metric), '1.5 L')
    reads(formatVolume(40, metric), '40 L')
    reads(formatVolume(0.9996, metric), '1.0 L')
    reads(formatVolume(0.75, us), '25 fl oz')
    reads(formatVolume(1.5, us), '1.6 qt')
  })
  test('times, clocks, shares, money', () => {
    expect(formatDuration(337)).toBe(spaced('5 h 37'))
    expect(formatDuration(305)).toBe(spaced('5 h 05'))
    expect(formatDuration(180)).toBe(spaced('3 h'))
    expect(formatDuration(49.6)).toBe(spaced('50 min'))
    expect(formatClock(900)).toBe('15:00')
    expect(formatClock(1439.6)).toBe('00:00')
    expect(formatClock(-30)).toBe('23:30')
    reads(formatShare(0.125), '12.5 %')
    reads(formatShare(0.054, 1, 'always'), '+5.4 %')
    reads(formatShare(-0.054, 1, 'always'), '−5.4 %')
    expect(formatMoney(4800, 'EUR')).toBe(spaced('€ 48'))
    expect(formatMoney(184, 'EUR')).toBe(spaced('€ 1.84'))
    expect(formatMoney(-500, 'USD')).toBe(spaced('−$ 5'))
    expect(formatMoney(3000, 'JPY', 0)).toBe(spaced('¥ 3,000'))
  })
  test('any figure, by its unit', () => {
    reads(formatFigure(given(45.57, 'MJ/kg', 'constant'), us), '45.57 MJ/kg')
    reads(formatFigure(given(0.5, '1', 'estimated', { a: 0.035 }), us), '≈0.50 ±0.07')
    reads(formatFigure(given(7.5, 'l', 'measured'), metric), '7.5 L')
    reads(formatFigure(given(89, 'g', 'worked', { a: 7 }), metric), '89 g ±14')
    reads(formatFigure(given(2900, 'm', 'given'), us), '9,514 ft')
    reads(formatFigure(given(0, 'degC', 'claimed'), us), '~32 °F')
  })
  test('a figure that is no number is a bug and is not written', () => {
    expect(() => fixed(Number.NaN, 1)).toThrow('cannot be written')
  })
})

describe('what is written can be read again', () => {
  const milligrams = fc.integer({ min: 0, max: 50_000_000 })
  const origin = fc.constantFrom('measured', 'claimed', 'estimated')
  const again = (mass: Mass, choice: UnitChoice, stepMg: number): unknown => {
    const text = plain(formatItemMass(mass, choice, { stepMg }))
    const said = parseMass(text)
    if (!said.ok) return said
    return plain(formatItemMass({ massMg: said.value.massMg, origin: said.value.origin ?? 'measured' }, choice, { stepMg })) === text
  }
  test('an item, whatever its unit and origin, reads the same', () => {
    fc.assert(
      fc.property(milligrams, origin, fc.constantFrom(metric, us), fc.constantFrom(100, 1000), (massMg, from, choice, stepMg) => {
        expect(again({ massMg, origin: from }, choice, stepMg)).toBe(true)
      }),
    )
  })
  test('whole grams come back exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), (massG) => {
        const said = parseMass(plain(formatItemMass(measured(massG * 1000), metric)))
        return said.ok && said.value.massMg === massG * 1000
      }),
    )
  })
  test('a total in pounds and ounces reads the same, and its ounces stay below 16', () => {
    fc.assert(
      fc.property(milligrams, (massMg) => {
        const text = plain(formatTotalMass(measured(massMg), us))
        const said = parseMass(text)
        expect(text).not.toContain('16.0')
        return said.ok && plain(formatTotalMass(measured(said.value.massMg), us)) === text
      }),
    )
  })
  test('grams and ounces are the nearest, by exact integers', () => {
    fc.assert(
      fc.property(fc.integer({ min: 28_400, max: 900_000_000 }), (massMg) => {
        // An independent sum: tenths of an ounce t with |mg·16000 − t·45359237| ≤ 45359237/2, in BigInt.
        const shown = Math.round(Number(formatItemMass(measured(massMg), us).digits.replaceAll(',', '')) * 10)
        const off = BigInt(massMg) * 16_000n - BigInt(shown) * 45_359_237n
        return 2n * (off < 0n ? -off : off) <= 45_359_237n
      }),
    )
  })
  test('temperatures, volumes and money', () => {
    fc.assert(fc.property(fc.integer({ min: -60, max: 60 }), (c) => parseTemperature(plain(formatTemp(c, metric))).ok))
    fc.assert(
      fc.property(fc.integer({ min: -60, max: 60 }), (c) => {
        const said = parseTemperature(plain(formatTemp(c, metric)))
        return said.ok && said.value.tempC === c
      }),
    )
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), (ml) => {
        const said = parseVolume(plain(formatVolume(ml / 1000, metric)))
        return said.ok && Math.abs(said.value.volumeL * 1000 - ml) < 1e-9
      }),
    )
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999_999 }), fc.constantFrom('EUR', 'USD', 'CHF'), (amountMinor, currency) => {
        const said = parseMoney(formatMoney(amountMinor, currency), { currency: 'EUR' })
        return said.ok && said.value.amountMinor === amountMinor && said.value.currency === currency
      }),
    )
  })
})
