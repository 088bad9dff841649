import { parseScaleReport } from '../../src-domain/closet/scale-report.ts'
import { parseWeightMeasurement } from '../../src-domain/closet/weight-measurement.ts'
import type { Published } from './published.ts'

export const bytesOf = (hex: string): Uint8Array => Uint8Array.from(hex.split(' ').map((byte) => Number.parseInt(byte, 16)))

const usb = 'USB-IF HID Point of Sale usage tables, page 0x8D; report layout of two open drivers (provisions.md 9.5)'
/** Grams of the table, to the half milligram that the store rounds away. */
const report = (hex: string, about: string, grams: number): Published => ({
  law: 'scale report',
  about: `${hex}: ${about}`,
  source: usb,
  known: 'read',
  expected: grams,
  tolerance: 0.0005,
  unit: 'g',
  got: () => {
    const found = parseScaleReport(bytesOf(hex))
    return found.ok ? found.value.massMg / 1000 : Number.NaN
  },
})
const measurement = (hex: string, about: string, kilograms: number, tolerance: number): Published => ({
  law: 'weight measurement',
  about: `${hex}: ${about}`,
  source: 'Bluetooth SIG characteristic 0x2A9D, table of 2014-10-17 (provisions.md 9.6)',
  known: 'read',
  expected: kilograms,
  tolerance,
  unit: 'kg',
  got: () => {
    const found = parseWeightMeasurement(bytesOf(hex))
    return found.ok ? found.value.massMg / 1e6 : Number.NaN
  },
})

export const rows: readonly Published[] = [
  report('04 02 00 9C 01', 'stable, g, 412', 412),
  report('04 0B FF 91 00', 'stable, oz, 14.5', 411.0680853),
  report('04 0C FE E8 03', 'stable, lb, 10.00', 4535.9237),
  report('04 03 FD 9C 01', 'stable, kg, 0.412', 412),
  report('04 02 FF 18 10', 'stable, g, 412.0', 412),
  report('02 02 00 00 00', 'zero', 0),
  report('03 0B FF 64 00', 'in motion, oz, 10.0', 283.495),
  report('05 02 00 05 00', 'under zero', -5),
  measurement('00 E8 3A', 'SI, 15080', 75.4, 0),
  measurement('01 10 40', 'imperial, 164.00 lb', 74.38915, 1e-5),
  measurement('02 E8 3A E9 07 06 0F 08 1E 00', 'SI with a stamp', 75.4, 0),
]
