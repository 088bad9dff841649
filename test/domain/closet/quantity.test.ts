import naughty from 'big-list-of-naughty-strings/blns.json' with { type: 'json' }
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  parseDate,
  parseEnergy,
  parseLength,
  parseMass,
  parseMassInTwo,
  parseMoney,
  parsePieces,
  parseResistance,
  parseTemperature,
  parseVolume,
} from '../../../src-domain/closet/quantity.ts'

const massMg = (text: string): number | string => {
  const said = parseMass(text)
  return said.ok ? said.value.massMg : said.fault.code
}

describe('a mass typed freely', () => {
  // Expected milligrams: exact unit definitions (lb 453.59237 g, oz = lb/16; NIST SP 811), worked by hand and rounded half away from zero.
  test.each([
    ['412', 412_000],
    ['412g', 412_000],
    ['412 g', 412_000],
    ['412\u00a0g', 412_000],
    ['412.', 412_000],
    ['14.5 oz', 411_068], // 14.5 × 28 349.523125 = 411 068.0853
    ['14.5oz.', 411_068],
    ['14.5 OZ', 411_068],
    ['1 lb 3 oz', 538_641], // 19 × 28 349.523125 = 538 640.939
    ['1lb3', 538_641],
    ['1lb3oz', 538_641],
    ['1 lb. 3 oz.', 538_641],
    ['1# 3 oz', 538_641],
    ['1 pound, 3 ounces', 538_641],
    ['2 pounds', 907_185], // 907 184.74
    ['2#', 907_185],
    ['0.41kg', 410_000],
    [',5 kg', 500_000],
    ['0,41 kg', 410_000],
    ['6 1/4 oz', 177_185], // 6.25 × 28 349.523125 = 177 184.5195
    ['6-1/4 oz', 177_185],
    ['6¼ oz', 177_185],
    ['½ oz', 14_175], // 14 174.76
    ['1⁄2 oz', 14_175],
    ['1 lb 3 1/2 oz', 552_816], // 19.5 × 28 349.523125 = 552 815.7009
    ['1,284 g', 1_284_000],
    ['1\u202f284 g', 1_284_000],
    ["1'284 g", 1_284_000],
    ['1.284,5 g', 1_284_500],
    ['1,284.5 g', 1_284_500],
    ['1,284,000 mg', 1_284_000],
    ['1 kg 200 g', 1_200_000],
    ['９２ ｇ', 92_000],
    ['㎏', 'quantity.unreadable'],
    ['1.5 ㎏', 1_500_000],
    ['4.12E+02', 412_000],
    ['0', 0],
    ['0.0005 g', 1], // half a milligram, away from zero
    ['+5 g', 5_000],
    ['-5 g', 'quantity.negative'],
    ['−5 g', 'quantity.negative'],
    ['', 'input.missing'],
    [' \u00a0 ', 'input.missing'],
    ['NaN', 'quantity.unreadable'],
    ['Infinity', 'quantity.unreadable'],
    ['0x1F', 'quantity.unit-unknown'],
    ['g', 'quantity.unreadable'],
    ['12 ml', 'quantity.unit-unknown'],
    ['12 fl oz', 'quantity.unit-unknown'],
    ['12 elephants', 'quantity.unit-unknown'],
    ['3 oz 1 lb', 'quantity.unreadable'],
    ['1lb15', 878_835], // 31 × 28 349.523125 = 878 835.217
    ['1lb16', 'quantity.unreadable'],
    ['412-', 'quantity.unreadable'],
    ['2025-10-08', 'quantity.unreadable'],
    ['1.5 lb 3 oz', 'quantity.unreadable'],
    ['1/0 oz', 'quantity.unreadable'],
    ['1.2.3', 'quantity.unreadable'],
    ['1,28,4 g', 'quantity.unreadable'],
    ['1000 kg', 1_000_000_000],
    ['1000.1 kg', 'quantity.too-large'],
    ['9'.repeat(70), 'quantity.too-large'],
    ['9'.repeat(90), 'quantity.unreadable'],
  ])('%j', (text, expected) => expect(massMg(text)).toBe(expected))

  test.each([
    ['352 g (mfr)', 352_000, 'claimed'],
    ['352 g mfr', 352_000, 'claimed'],
    ['352 g (claimed)', 352_000, 'claimed'],
    ['~352', 352_000, 'claimed'],
    ['~ 352 g', 352_000, 'claimed'],
    ['≈95', 95_000, 'estimated'],
    ['about 95 g', 95_000, 'estimated'],
    ['ca. 95 g', 95_000, 'estimated'],
    ['95 g (est.)', 95_000, 'estimated'],
    ['95 g (weighed)', 95_000, 'measured'],
  ])('%j says where it comes from', (text, mg, origin) => {
    expect(parseMass(text)).toMatchObject({ ok: true, value: { massMg: mg, origin } })
  })

  test.each([
    ['3,2 oz', ['3.2 oz', '32 oz']],
    ['3,25 kg', ['3.25 kg', '325 kg']],
    ['1,284 kg', ['1.284 kg', '1284 kg']],
    ['412 gr', ['412 g', '412 grain']],
    ['350-360 g', ['350 g', '360 g']],
    ['350 to 360 g', ['350 g', '360 g']],
  ])('%j is asked about, both readings offered', (text, readings) => {
    const said = parseMass(text)
    expect(said).toMatchObject({
      ok: false,
      fault: { code: 'quantity.ambiguous', facts: { first: readings[0], second: readings[1] } },
      readings,
    })
    for (const reading of readings) expect(massMg(reading)).not.toBe('quantity.ambiguous')
  })

  test('a comma is settled once the person has said which mark they use', () => {
    expect(parseMass('3,2 oz', { unit: 'g', decimal: ',' })).toMatchObject({ ok: true, value: { massMg: 90_718 } }) // 90 718.474
    expect(parseMass('1.284 g', { unit: 'g', decimal: ',' })).toMatchObject({ ok: true, value: { massMg: 1_284_000 } })
    expect(parseMass('1,284 kg', { unit: 'g', decimal: '.' })).toMatchObject({ ok: false, fault: { code: 'quantity.too-large' } })
  })

  test('the same mass said twice is read once, and two different ones are asked about', () => {
    expect(parseMass('412 g (14.5 oz)')).toMatchObject({ ok: true, value: { massMg: 412_000 } })
    expect(parseMass('412 g (20 oz)')).toMatchObject({ ok: false, readings: ['412 g', '20 oz'] })
    expect(parseMass('412 g (with its sack)')).toMatchObject({ ok: true, value: { massMg: 412_000, note: 'with its sack' } })
  })

  test('a bare number takes the unit given, and is refused without one', () => {
    expect(parseMass('14.5', { unit: 'oz' })).toMatchObject({ ok: true, value: { massMg: 411_068, unit: 'oz', unitAssumed: true } })
    expect(parseMass('14.5', {})).toMatchObject({ ok: false, fault: { code: 'quantity.unit-missing' } })
  })

  test('the last digit typed says what the figure resolves', () => {
    expect(parseMass('10.5 g')).toMatchObject({ value: { stepMg: 100 } })
    expect(parseMass('412')).toMatchObject({ value: { stepMg: 1000 } })
  })

  test('pounds in one column and ounces in the next make one mass', () => {
    expect(parseMassInTwo('1', '3')).toMatchObject({ ok: true, value: { massMg: 538_641 } })
    expect(parseMassInTwo('2', '1')).toMatchObject({ ok: true, value: { massMg: 935_534 } }) // 935 534.263: rounded once, not twice
    expect(parseMassInTwo('', '3.2')).toMatchObject({ ok: true, value: { massMg: 90_718 } })
    expect(parseMassInTwo('2', '')).toMatchObject({ ok: true, value: { massMg: 907_185 } })
    expect(parseMassInTwo('', '')).toMatchObject({ ok: false, fault: { code: 'input.missing' } })
    expect(parseMassInTwo('0', '14.5')).toMatchObject({ ok: true, value: { massMg: 411_068 } })
  })
})

describe('the other quantities', () => {
  test.each([
    ['183 cm', 1.83],
    ['5\'10"', 1.778], // 70 in × 0.0254
    ['5 ft 10 in', 1.778],
    ['5′10″', 1.778],
    ["5'10", 1.778],
    ['2,900 m', 2900],
    ['9,510 ft', 2898.648],
    ['39 mi', 62_764.416],
    ['62 km', 62_000],
  ])('length %j', (text, lengthM) => expect(parseLength(text)).toMatchObject({ ok: true, value: { lengthM } }))

  test.each([
    ['-2', -2],
    ['−2 °C', -2],
    ['28.4F', -2],
    ['28.4 deg F', -2],
    ['28.4 degrees Fahrenheit', -2],
    ['-40 F', -40],
    ['5°', 5],
    ['273.15 K', 0],
  ])('temperature %j', (text, tempC) => expect(parseTemperature(text)).toMatchObject({ ok: true, value: { tempC } }))
  test('nothing is colder than absolute zero', () => {
    expect(parseTemperature('-273.15')).toMatchObject({ ok: true })
    expect(parseTemperature('-273.16')).toMatchObject({ ok: false })
  })

  test.each([
    ['1.3', 1.3],
    ['750 ml', 0.75],
    ['7.5L', 7.5],
    ['32 fl oz', 0.946352946],
    ['32 fl. oz.', 0.946352946],
    ['1 qt', 0.946352946],
    ['1 US gal', 3.785411784],
    ['61 in³', 0.999610904],
    ['40 litres', 40],
  ])('volume %j', (text, volumeL) => expect(parseVolume(text)).toMatchObject({ ok: true, value: { volumeL } }))

  test.each([
    ['1', 4184],
    ['4,500 kcal', 18_828_000],
    ['100 kJ', 100_000],
    ['37 Wh', 133_200],
    ['10000 mAh 3.7 V', 133_200],
    ['10,000 mAh at 3.7V', 133_200],
  ])('energy %j', (text, energyJ) => expect(parseEnergy(text)).toMatchObject({ ok: true, value: { energyJ } }))
  test('a charge without its voltage is no energy', () => {
    expect(parseEnergy('10000 mAh')).toMatchObject({ ok: false, fault: { code: 'quantity.unit-unknown', facts: { unit: 'mah' } } })
  })

  // NIST SP 811: 1 °F·h·ft²/Btu(IT) = 0.176 110 2 K·m²/W.
  test.each(['R 4.2', 'R4.2', '4.2', '4.2 R', 'R-value 4.2', '4.2 ft²·°F·h/Btu', '4.2 ft2F h/Btu', '4.2 h·ft²·°F/Btu'])(
    '%j is R 4.2',
    (text) => {
      const said = parseResistance(text)
      expect(said).toMatchObject({ ok: true, value: { unit: 'R', figure: 4.2 } })
      if (said.ok) expect(said.value.rsi_m2K_W).toBeCloseTo(0.7396628, 6)
    },
  )
  test.each(['RSI 0.74', '0.74 RSI', '0.74 m²K/W', '0.74 m2K/W', '0.74 m²·K/W', 'rsi: 0.74'])('%j is RSI 0.74', (text) => {
    expect(parseResistance(text)).toMatchObject({ ok: true, value: { rsi_m2K_W: 0.74, unit: 'm2K/W' } })
  })
  test('a bare number below 1.3 may be either and is asked about', () => {
    expect(parseResistance('0.7')).toMatchObject({ ok: false, fault: { code: 'quantity.ambiguous' }, readings: ['R 0.7', 'RSI 0.7'] })
    expect(parseResistance('1.29')).toMatchObject({ ok: false })
    expect(parseResistance('1.3')).toMatchObject({ ok: true, value: { unit: 'R' } })
    expect(parseResistance('R 0.7')).toMatchObject({ ok: true })
  })

  test.each([
    ['12.50', 'EUR', 1250, 'EUR'],
    ['€ 12,50', 'USD', 1250, 'EUR'],
    ['12,50 €', 'USD', 1250, 'EUR'],
    ['$1,299.00', 'EUR', 129_900, 'USD'],
    ['$40', 'CAD', 4000, 'CAD'],
    ['1.299,00 EUR', 'EUR', 129_900, 'EUR'],
    ['1,299', 'USD', 129_900, 'USD'],
    ['¥3,000', 'EUR', 3000, 'JPY'],
    ['80.-', 'CHF', 8000, 'CHF'],
    ['0', 'EUR', 0, 'EUR'],
  ])('money %j', (text, own, amountMinor, currency) =>
    expect(parseMoney(text, { currency: own })).toMatchObject({ ok: true, value: { amountMinor, currency } }),
  )
  test.each(['-5', '−5 €', '€ -5', '-€5'])('a price is never below nothing: %j', (text) => {
    expect(parseMoney(text, { currency: 'EUR' })).toMatchObject({ ok: false, fault: { code: 'quantity.negative' } })
  })

  test.each([
    ['2025-10-08', '2025-10-08'],
    ['8 Oct 2025', '2025-10-08'],
    ['8th October 2025', '2025-10-08'],
    ['October 8, 2025', '2025-10-08'],
    ['Wed 8 Oct 2025', '2025-10-08'],
    ['8.10.2025', '2025-10-08'],
    ['8.10.25', '2025-10-08'],
    ['13/10/2025', '2025-10-13'],
    ['10/13/2025', '2025-10-13'],
    ['10/10/2025', '2025-10-10'],
    ['Oct 2025', '2025-10'],
    ['2025-10', '2025-10'],
    ['2025', '2025'],
    ['20251008', '2025-10-08'],
    ['yesterday', '2025-12-31'],
    ['3 Feb', '2026-02-03'],
  ])('date %j', (text, date) => expect(parseDate(text, { today: '2026-01-01' })).toMatchObject({ ok: true, value: { date } }))
  test('either order of day and month is asked about, unless it is known', () => {
    expect(parseDate('08/10/2025')).toMatchObject({
      ok: false,
      fault: { code: 'quantity.ambiguous' },
      readings: ['2025-10-08', '2025-08-10'],
    })
    expect(parseDate('08/10/2025', { order: 'month first' })).toMatchObject({ ok: true, value: { date: '2025-08-10' } })
  })
  test.each(['29 Feb 2025', '2025-02-30', '32/1/2025', '2025-13', 'Smarch 2025', '31.4.2025'])('%j is no date', (text) => {
    expect(parseDate(text)).toMatchObject({ ok: false, fault: { code: 'quantity.unreadable' } })
  })

  test.each([['8', 8], ['×8', 8], ['x2', 2], ['8 pcs', 8], ['8.0', 8]] as const)('pieces %j', (text, pieces) => expect(parsePieces(text)).toEqual({ ok: true, value: pieces })) // prettier-ignore
  test.each(['0', '-1', '1.5', '10000', 'eight'])('%j is no count of pieces', (text) => expect(parsePieces(text).ok).toBe(false))
})

const parsers = {
  parseMass: (text: string) => parseMass(text),
  parseLength: (text: string) => parseLength(text),
  parseTemperature: (text: string) => parseTemperature(text),
  parseVolume: (text: string) => parseVolume(text),
  parseEnergy: (text: string) => parseEnergy(text),
  parseResistance: (text: string) => parseResistance(text),
  parseMoney: (text: string) => parseMoney(text, { currency: 'EUR' }),
  parseDate: (text: string) => parseDate(text),
  parsePieces: (text: string) => parsePieces(text),
}

/** A parser answers with a value whose numbers are finite, or with a fault. */
function isSound(text: string, parse: (text: string) => { readonly ok: boolean }): boolean {
  const said: unknown = parse(text)
  const numbers = JSON.stringify(said, (_, value: unknown) => (typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value))
  return !numbers.includes('"not finite"')
}

const like = fc.array(fc.constantFrom(...'0123456789.,/-+~≈ ½#"\'°()[]'.split(''), 'oz', 'lb', 'g', 'kg', 'R', 'RSI', 'C', 'F', 'e', 'Oct', '€', '\u00a0', 'mAh', 'V', ' to '), { maxLength: 24 }).map((parts) => parts.join('')) // prettier-ignore

describe.each(Object.entries(parsers))('%s is total', (_, parse) => {
  test('over every string', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => isSound(text, parse)))
  })
  test('over what looks like a quantity', () => {
    fc.assert(
      fc.property(like, (text) => isSound(text, parse)),
      { numRuns: 2000 },
    )
  })
  test('over the naughty strings', () => {
    expect(naughty.length).toBeGreaterThan(400)
    for (const text of naughty) expect(isSound(text, parse)).toBe(true)
  })
  test('in a time that does not run away with the length', () => {
    for (const piece of ['1', '1 ', '1,', '- ', "1'", '(', '~', '1/', 'e', ' 1-']) {
      parse(piece.repeat(100_000))
      parse(piece.repeat(80))
    }
  })
})

describe('properties of a typed mass', () => {
  // 0.01 oz is 283.5 mg, so a whole milligram always tells hundredths of an ounce apart (provisions.md 9.4).
  test('hundredths of an ounce survive the way through whole milligrams', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_500_000 }), (hundredths) => {
        const mg = massMg(`${(hundredths / 100).toFixed(2)} oz`)
        return typeof mg === 'number' && Math.round((mg / 28_349.523125) * 100) === hundredths
      }),
    )
  })
  test('whole milligrams typed in grams are kept exactly', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 999_999_999 }), (mg) => massMg(`${(mg / 1000).toFixed(3)} g`) === mg))
  })
  test('every offered reading can be read without doubt', () => {
    fc.assert(
      fc.property(like, (text) => {
        const said = parseMass(text)
        if (said.ok || !said.readings) return true
        return said.readings.every((reading) => {
          const again = parseMass(reading)
          return again.ok || again.fault.code === 'quantity.too-large'
        })
      }),
      { numRuns: 3000 },
    )
  })
})
