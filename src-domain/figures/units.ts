/**
 * Units, each an exact ratio to the base of its kind, and conversion between units of one kind.
 * Source of the definitions: NIST SP 811 and NIST Handbook 44, appendix C (digits from memory, checked against printed roundings; test/published/units.ts).
 * Bases: mass mg · length mm · temperature °C · temperature difference K · volume ml · energy J · thermal resistance m²K/W · speed m/s.
 * A temperature difference is `K` (or `degF-step`), never `degC`: it must not gain 32 on the way to Fahrenheit.
 */
import type { Figure, Quantity } from './figure.ts'
import type { Ratio } from './exact.ts'
import { negative, over, plus, ratio, times, toNumber } from './exact.ts'

export interface UnitDefinition<K extends UnitKind = UnitKind> {
  readonly kind: K
  /** Base units in one of this unit. */
  readonly per: Ratio
  /** Base reading at zero of this unit; temperatures only. */
  readonly zero?: Ratio
}
export type UnitKind = 'mass' | 'length' | 'temperature' | 'difference' | 'volume' | 'energy' | 'resistance' | 'speed'

const of = <K extends UnitKind>(kind: K, n: bigint | number, d: bigint | number = 1): UnitDefinition<K> => ({ kind, per: ratio(n, d) })

export const units = {
  mg: of('mass', 1),
  g: of('mass', 1_000),
  kg: of('mass', 1_000_000),
  t: of('mass', 1_000_000_000),
  ct: of('mass', 200),
  lb: of('mass', 45_359_237, 100),
  oz: of('mass', 45_359_237, 1_600),
  st: of('mass', 14 * 45_359_237, 100),
  grain: of('mass', 45_359_237, 700_000),
  ozt: of('mass', 311_034_768, 10_000),
  dwt: of('mass', 155_517_384, 100_000),
  'short-ton': of('mass', 907_184_740),
  mm: of('length', 1),
  cm: of('length', 10),
  m: of('length', 1_000),
  km: of('length', 1_000_000),
  in: of('length', 254, 10),
  ft: of('length', 3_048, 10),
  yd: of('length', 9_144, 10),
  mi: of('length', 1_609_344),
  degC: of('temperature', 1),
  degF: { kind: 'temperature', per: ratio(5, 9), zero: ratio(-160, 9) },
  kelvin: { kind: 'temperature', per: ratio(1), zero: ratio(-27_315, 100) },
  K: of('difference', 1),
  'degF-step': of('difference', 5, 9),
  ml: of('volume', 1),
  cl: of('volume', 10),
  dl: of('volume', 100),
  l: of('volume', 1_000),
  in3: of('volume', 16_387_064, 1_000_000),
  floz: of('volume', 3_785_411_784n, 128_000_000n),
  cup: of('volume', 3_785_411_784n, 16_000_000n),
  pt: of('volume', 3_785_411_784n, 8_000_000n),
  qt: of('volume', 3_785_411_784n, 4_000_000n),
  gal: of('volume', 3_785_411_784n, 1_000_000n),
  J: of('energy', 1),
  kJ: of('energy', 1_000),
  MJ: of('energy', 1_000_000),
  Wh: of('energy', 3_600),
  kWh: of('energy', 3_600_000),
  kcal: of('energy', 4_184),
  Btu: of('energy', 105_505_585_262n, 100_000_000n),
  'm2K/W': of('resistance', 1),
  /** ft²·°F·h/Btu(IT): 0.3048² × 5/9 × 3600 ÷ 1055.05585262. */
  R: of('resistance', 18_580_608_000n, 105_505_585_262n),
  tog: of('resistance', 1, 10),
  clo: of('resistance', 155, 1_000),
  'm/s': of('speed', 1),
  'km/h': of('speed', 10, 36),
  mph: of('speed', 44_704, 100_000),
} as const satisfies Readonly<Record<string, UnitDefinition>>

export type Unit = keyof typeof units
export type UnitOf<K extends UnitKind> = { [U in Unit]: (typeof units)[U]['kind'] extends K ? U : never }[Unit]
export type MassUnit = UnitOf<'mass'>

/** A mass unit's size in milligrams, as the nearest double. */
export const mgPer = (unit: MassUnit): number => toNumber(units[unit].per)

/** One unit as a multiple of another of its kind, and what must be added to it, both exact. */
function step(from: Unit, to: Unit): { readonly factor: Ratio; readonly add: Ratio } {
  const a: UnitDefinition = units[from]
  const b: UnitDefinition = units[to]
  if (a.kind !== b.kind) throw new Error(`${from} is no ${b.kind}`)
  const nothing = ratio(0)
  return { factor: over(a.per, b.per), add: over(plus(a.zero ?? nothing, negative(b.zero ?? nothing)), b.per) }
}

interface Conversion {
  readonly up: number
  readonly down: number
  readonly add: number
}
const known = new Map<string, Conversion>()

function conversion(from: Unit, to: Unit): Conversion {
  const name = `${from}>${to}`
  const before = known.get(name)
  if (before) return before
  const { factor, add } = step(from, to)
  const made = { up: Number(factor.n), down: Number(factor.d), add: toNumber(add) }
  known.set(name, made)
  return made
}

/** value × factor + offset. The factor stays a fraction, so that whole and decimal values suffer one rounding, not two. */
export function convertNumber(value: number, from: Unit, to: Unit): number {
  if (from === to) return value
  const { up, down, add } = conversion(from, to)
  return (value * up) / down + add
}

/** The figure in another unit of its kind; shares are differences, so they never take the offset. */
export function convertFigure<U extends Unit>(figure: Figure<Unit>, to: U): Figure<U> {
  if (figure.unit === to) return figure as Figure<U>
  const { up, down } = conversion(figure.unit, to)
  const shares: Record<string, number> = {}
  for (const leaf in figure.shares) shares[leaf] = (figure.shares[leaf]! * up) / down
  return { ...figure, unit: to, value: convertNumber(figure.value, figure.unit, to) as Quantity<U>, shares }
}

export function convert(value: number, from: Unit, to: Unit): number
export function convert<U extends Unit>(figure: Figure<Unit>, to: U): Figure<U>
export function convert(value: number | Figure<Unit>, a: Unit, b?: Unit): number | Figure<Unit> {
  if (typeof value !== 'number') return convertFigure(value, a)
  if (b === undefined) throw new Error('a plain number needs both units')
  return convertNumber(value, a, b)
}

/** An exact quantity of one unit in the base of its kind. */
export function exactInBase(value: Ratio, unit: Unit): Ratio {
  const { per, zero }: UnitDefinition = units[unit]
  return zero ? plus(times(value, per), zero) : times(value, per)
}
