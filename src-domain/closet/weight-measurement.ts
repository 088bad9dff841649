/**
 * The Weight Measurement of Bluetooth's Weight Scale Service (0x181D, characteristic 0x2A9D), little-endian, fields as flagged.
 *   flags uint8 (bit 0 imperial, 1 time stamp, 2 user, 3 BMI and height together) · weight uint16 × 0.005 kg or 0.01 lb
 * Such scales step in 5 to 100 g: right for a person or a pack by difference, too coarse for an item.
 * Source: Bluetooth SIG characteristic table of 2014-10-17 (read; provisions.md 9.6).
 */
import type { Outcome } from '../figures/fault.ts'
import { fault, ok } from '../figures/fault.ts'
import { ratio, roundHalfAway, times, toNumber } from '../figures/exact.ts'
import { units } from '../figures/units.ts'

export interface WeightMeasurement {
  readonly massMg: number
  /** `2025-06-15 08:30:00`, as the scale's clock has it; absent where it has none. */
  readonly stamp?: string
  /** Absent: the scale does not know who stands on it. */
  readonly user?: number
  readonly bmi?: number
  readonly heightM?: number
}

export function parseWeightMeasurement(bytes: ArrayLike<number>): Outcome<WeightMeasurement> {
  const flags = bytes[0] ?? 0
  const parts = [3, flags & 2 ? 7 : 0, flags & 4 ? 1 : 0, flags & 8 ? 4 : 0] as const
  const length = parts.reduce((sum: number, part) => sum + part, 0)
  if (bytes.length < length) return fault('scale.unreadable', { bytes: bytes.length, asked: length })
  const raw = two(bytes, 1)
  if (raw === 0xffff) return fault('scale.unsuccessful')
  const imperial = (flags & 1) === 1
  const step = imperial ? times(ratio(1, 100), units.lb.per) : ratio(5000)
  const userAt = 3 + parts[1]
  return ok({
    massMg: Number(roundHalfAway(times(ratio(raw), step))),
    ...(flags & 2 ? stampAt(bytes, 3) : {}),
    ...(flags & 4 && bytes[userAt] !== 0xff ? { user: bytes[userAt]! } : {}),
    ...(flags & 8 ? bodyAt(bytes, userAt + parts[2], imperial) : {}),
  })
}

/** An item wants a step of a gram; these scales have none finer than 5 g. */
export function refuseForItem(stepMg: number): Outcome<never> | undefined {
  return stepMg > 1000 ? fault('scale.too-coarse', { stepMg }) : undefined
}

/** The step from Weight Scale Feature 0x2A9E, bits 3 to 6 (memory); 100 g where the scale does not say. */
export function bodyScaleStepMg(feature: number, imperial: boolean): number {
  const code = (feature >> 3) & 0xf
  const kilograms = [undefined, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005][code]
  const pounds = [undefined, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01][code]
  const said = imperial ? pounds : kilograms
  return said === undefined ? 100_000 : said * toNumber(units[imperial ? 'lb' : 'kg'].per)
}

const two = (bytes: ArrayLike<number>, at: number): number => bytes[at]! + 256 * bytes[at + 1]!
const padded = (value: number): string => String(value).padStart(2, '0')

/** A year, month or day of 0 means unknown: then there is no stamp. */
function stampAt(bytes: ArrayLike<number>, at: number): { readonly stamp?: string } {
  const [year, month, day] = [two(bytes, at), bytes[at + 2]!, bytes[at + 3]!]
  const [hour, minute, second] = [bytes[at + 4]!, bytes[at + 5]!, bytes[at + 6]!]
  if (year === 0 || month < 1 || month > 12 || day < 1 || day > 31 || hour > 23 || minute > 59 || second > 59) return {}
  return { stamp: `${String(year).padStart(4, '0')}-${padded(month)}-${padded(day)} ${padded(hour)}:${padded(minute)}:${padded(second)}` }
}

function bodyAt(bytes: ArrayLike<number>, at: number, imperial: boolean): { readonly bmi: number; readonly heightM: number } {
  const height = two(bytes, at + 2)
  return { bmi: two(bytes, at) / 10, heightM: imperial ? (height * 254) / 100_000 : height / 1000 }
}
