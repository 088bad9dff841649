/**
 * What a USB scale says: the data report of USB-IF's HID point-of-sale usages, page 0x8D, and the steadiness of what it says.
 *   mass = weight × 10^scaling × unit      status, unit: one byte each; scaling: signed byte; weight: 16 bits, low byte first
 * The fields are looked for in the device's own report descriptor; the common five-byte report stands in where it does not tell.
 * Worked exactly and rounded once, to whole milligrams. Source: usage tables and two open drivers (read; provisions.md 9.5).
 */
import type { Outcome } from '../figures/fault.ts'
import { fault, ok } from '../figures/fault.ts'
import type { Ratio } from '../figures/exact.ts'
import { isBelow, ratio, roundHalfAway, times, toNumber } from '../figures/exact.ts'
import type { MassUnit } from '../figures/units.ts'
import { units } from '../figures/units.ts'
import type { Field, Layout } from './scale-layout.ts'
import { commonLayout } from './scale-layout.ts'
import type { ScaleReport, ScaleStatus } from './scale-said.ts'

export * from './scale-layout.ts'
export * from './scale-steady.ts'
export type { ScaleReport, ScaleStatus } from './scale-said.ts'

/** Units by their place in the table, 1 to 12. The tael is left out: it is 36 to 50 g by country. */
const unitByIndex: readonly (MassUnit | undefined)[] = [
  undefined,
  'mg',
  'g',
  'kg',
  'ct',
  undefined,
  'grain',
  'dwt',
  't',
  'short-ton',
  'ozt',
  'oz',
  'lb',
]
const statusByIndex: readonly (ScaleStatus | undefined)[] = [undefined, undefined, 'zero', 'moving', 'stable', 'under-zero']
const faultByIndex = { 1: 'scale.fault', 6: 'scale.over-limit', 7: 'scale.needs-calibration', 8: 'scale.needs-zero' } as const

/** A report of more than this is no kitchen scale's: 1000 t. */
const mostMg = ratio(1_000_000_000_000)

/** Reads one report, its bytes without the report id. */
export function parseScaleReport(bytes: ArrayLike<number>, layout: Layout = commonLayout): Outcome<ScaleReport> {
  const read = (field: Field): number | undefined => valueAt(bytes, field)
  const [status, unit, weight] = [read(layout.status), read(layout.unit), read(layout.weight)]
  const scaling = layout.scaling ? read(layout.scaling) : 0
  if (status === undefined || unit === undefined || weight === undefined || scaling === undefined)
    return fault('scale.unreadable', { bytes: hex(bytes) })
  if (status === 1 || status === 6 || status === 7 || status === 8) return fault(faultByIndex[status])
  const said = statusByIndex[status]
  if (!said) return fault('scale.unreadable', { bytes: hex(bytes) })
  const named = unitByIndex[unit]
  if (!named) return fault('scale.unit-refused', { unit })
  return massOf(said, weight, tenTo(scaling), named, bytes)
}

function massOf(status: ScaleStatus, weight: number, power: Ratio, unit: MassUnit, bytes: ArrayLike<number>): Outcome<ScaleReport> {
  const step = times(power, units[unit].per)
  const mass = times(ratio(Math.abs(weight)), step)
  if (isBelow(mostMg, mass)) return fault('scale.unreadable', { bytes: hex(bytes) })
  const below = weight < 0 || status === 'under-zero'
  const massMg = Number(roundHalfAway(mass))
  return ok({
    status: below && massMg > 0 ? 'under-zero' : status,
    massMg: below && massMg > 0 ? -massMg : massMg,
    stepMg: toNumber(step),
    unit,
  })
}

const tenTo = (power: number): Ratio => (power < 0 ? ratio(1, 10n ** BigInt(-power)) : ratio(10n ** BigInt(power)))

/** A field's value: for a list of usages the usage's place in its table, else the number itself. Undefined where the report is too short. */
function valueAt(bytes: ArrayLike<number>, field: Field): number | undefined {
  const raw = bitsAt(bytes, field.bit, field.bits)
  if (raw === undefined) return undefined
  const value = field.isSigned && raw >= 2 ** (field.bits - 1) ? raw - 2 ** field.bits : raw
  if (!field.places) return value
  return field.places[value - field.least] ?? 0
}

/** Up to 32 bits, low byte first, low bit first. */
function bitsAt(bytes: ArrayLike<number>, bit: number, bits: number): number | undefined {
  if (bit + bits > bytes.length * 8) return undefined
  let value = 0
  for (let at = 0; at < bits; at++) {
    const place = bit + at
    if ((bytes[place >> 3]! >> (place & 7)) & 1) value += 2 ** at
  }
  return value
}

const hex = (bytes: ArrayLike<number>): string =>
  Array.from({ length: Math.min(bytes.length, 16) }, (_, at) => (bytes[at]! & 0xff).toString(16).padStart(2, '0')).join(' ')

/**
 * The scale's own step, coarser than one count on scales that read in twos or fives: the greatest step that all masses seen are whole
 * multiples of each other by. Undefined below three different masses (choice), or while the unit changes.
 */
export function learntStepMg(reports: readonly ScaleReport[]): number | undefined {
  const stepMg = reports[0]?.stepMg
  if (stepMg === undefined || reports.some((report) => report.stepMg !== stepMg)) return undefined
  const counts = [...new Set(reports.map((report) => Math.round(report.massMg / stepMg)))]
  if (counts.length < 3) return undefined
  const common = counts.reduce((so, count) => greatest(so, Math.abs(count - counts[0]!)), 0)
  return common * stepMg
}

function greatest(a: number, b: number): number {
  while (b > 0) [a, b] = [b, a % b]
  return a
}
