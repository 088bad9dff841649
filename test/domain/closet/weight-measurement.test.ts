import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bodyScaleStepMg, parseWeightMeasurement, refuseForItem } from '../../../src-domain/closet/weight-measurement.ts'
import { bytesOf, rows } from '../../published/scale-report.ts'
import { meets } from '../../published/published.ts'

meets(rows.filter((row) => row.law === 'weight measurement'))

describe('a Bluetooth weight measurement', () => {
  test('carries its time stamp where the scale has a clock', () => {
    expect(parseWeightMeasurement(bytesOf('02 E8 3A E9 07 06 0F 08 1E 00'))).toMatchObject({ value: { stamp: '2025-06-15 08:30:00' } })
    expect(parseWeightMeasurement(bytesOf('02 E8 3A 00 00 06 0F 08 1E 00'))).toEqual({ ok: true, value: { massMg: 75_400_000 } })
  })
  test('may say who, and body and height together by bit 3', () => {
    // BMI 23.1 = 231 × 0.1; height 1.81 m = 1810 × 0.001, 71.3 in = 713 × 0.1 (the SIG table)
    expect(parseWeightMeasurement(bytesOf('0C E8 3A 02 E7 00 12 07'))).toEqual({
      ok: true,
      value: { massMg: 75_400_000, user: 2, bmi: 23.1, heightM: 1.81 },
    })
    expect(parseWeightMeasurement(bytesOf('0D 10 40 FF E7 00 C9 02'))).toMatchObject({ value: { bmi: 23.1, heightM: 1.81102 } })
  })
  test('that failed, or is cut short, is refused', () => {
    expect(parseWeightMeasurement(bytesOf('00 FF FF'))).toMatchObject({ fault: { code: 'scale.unsuccessful' } })
    expect(parseWeightMeasurement(bytesOf('02 E8 3A E9'))).toMatchObject({ fault: { code: 'scale.unreadable' } })
    expect(parseWeightMeasurement([])).toMatchObject({ fault: { code: 'scale.unreadable' } })
  })
  test('any bytes give whole milligrams or a fault', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 20 }), (bytes) => {
        const found = parseWeightMeasurement(bytes)
        return !found.ok || Number.isSafeInteger(found.value.massMg)
      }),
    )
  })
  test('is too coarse for an item', () => {
    expect(bodyScaleStepMg(7 << 3, false)).toBe(5000)
    expect(bodyScaleStepMg(3 << 3, true)).toBeCloseTo(90_718.474, 6) // 0.2 lb
    expect(bodyScaleStepMg(0, false)).toBe(100_000)
    expect(refuseForItem(5000)).toMatchObject({ fault: { code: 'scale.too-coarse' } })
    expect(refuseForItem(1000)).toBeUndefined()
  })
})
