/** Digits on the page: whole-number rounding, thousands, the minus sign, and the band beside a figure. */

export const nbsp = '\u00a0'
export const minus = '\u2212'

/** A figure ready to be set: the window styles unit and band apart from the digits. */
export interface Shown {
  /** `~` claimed, `≈` estimated, else nothing; stands directly before the digits. */
  readonly prefix: '' | '~' | '≈'
  /** The larger part of a mass in pounds and ounces: `9` `lb`. Its sign is in its digits. */
  readonly head?: { readonly digits: string; readonly unit: string }
  readonly digits: string
  readonly unit: string
  /** `±0.05` in `unit`, or '' when it is too small to be seen. */
  readonly band: string
}

/** One line of text, parts held together by no-break spaces. */
export function plain({ prefix, head, digits, unit, band }: Shown): string {
  const before = head ? `${head.digits}${nbsp}${head.unit}${nbsp}` : ''
  const after = unit === '' ? '' : nbsp + unit
  return `${prefix}${before}${digits}${after}${band === '' ? '' : nbsp + band}`
}

/** Nearest whole number, half away from zero; never −0. */
export function roundHalfAway(value: number): number {
  const size = Math.abs(value)
  const whole = Math.floor(size)
  // `floor(size + 0.5)` would lift 0.49999999999999994 to 1; the remainder is exact.
  const near = size - whole >= 0.5 ? whole + 1 : whole
  return value < 0 && near > 0 ? -near : near
}

/** Whole steps of 10^−places as digits: 431 with 2 places is `4.31`. `sign` always shows it, except at nothing. */
export function digitsOf(steps: number, places: number, sign: 'minus only' | 'always' = 'minus only'): string {
  const text = String(Math.abs(steps)).padStart(places + 1, '0')
  const whole = text.slice(0, text.length - places)
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/gu, ',')
  const body = places === 0 ? grouped : `${grouped}.${text.slice(-places)}`
  if (steps < 0) return minus + body
  return sign === 'always' && steps > 0 ? `+${body}` : body
}

/** A value with a fixed number of places, half away from zero as its shortest decimal text reads. */
export function fixed(value: number, places: number, sign: 'minus only' | 'always' = 'minus only'): string {
  return digitsOf(stepsOf(value, places), places, sign)
}

/** value ÷ 10^−places, to the nearest whole. Shifting the decimal text keeps 1.005 a half and not 1.00499…. */
export function stepsOf(value: number, places: number): number {
  if (!Number.isFinite(value)) throw new Error(`${value} cannot be written as a figure`)
  const text = String(value)
  return roundHalfAway(text.includes('e') ? value * 10 ** places : Number(`${text}e${places}`))
}

/** The band 2u, shown when it is at least half of the last digit shown: then it rounds to one step or more. */
export function bandOf(u: number, places: number): string {
  const steps = stepsOf(2 * u, places)
  return steps >= 1 ? `±${digitsOf(steps, places)}` : ''
}

/**
 * The places a band deserves: one significant figure of 2u, two when it begins with 1, and never more than `most`
 * (JCGM 100:2008, 7.2.6 allows at most two). Zero places at least: tens of grams are still written as grams.
 */
export function placesDeserved(u: number, most: number): number {
  if (!(u > 0)) return most
  const power = Math.floor(Math.log10(2 * u))
  const leads = roundHalfAway((2 * u) / 10 ** (power - 1))
  return Math.max(0, Math.min(most, leads < 20 ? 1 - power : -power))
}
