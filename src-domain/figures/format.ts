/**
 * Masses as they are read, by an explicit choice of units. Nothing here knows the window: it gives parts, the window sets them.
 * Rules: provisions.md 9.4 (display, a choice) and the look's *Numbers*: items in whole grams (one decimal under 10 g and per piece, if the
 * scale had it) or in ounces (one decimal, two below 1 oz); totals in kg to 10 g or in pounds and ounces to 0.1 oz; rounded once, half away
 * from zero, from the stored whole milligrams; pounds are split off after rounding, so that 15.96 oz reads `1 lb 0.0 oz`.
 */
import type { Figure, Origin } from './figure.ts'
import { uncertainty } from './figure.ts'
import { convertFigure, convertNumber } from './units.ts'
import type { MassUnit } from './units.ts'
import type { UnitChoice } from './unit-choice.ts'
import type { Shown } from './digits.ts'
import { bandOf, digitsOf, nbsp, placesDeserved, roundHalfAway } from './digits.ts'

export type { Shown } from './digits.ts'
export type { UnitChoice } from './unit-choice.ts'
export { metric, us } from './unit-choice.ts'
export { plain } from './digits.ts'
export * from './format-quantities.ts'

/** A mass from the store (whole milligrams with where it comes from) or a worked one. `uMg`: one standard uncertainty. */
export type Mass = Figure<MassUnit> | StoredMass
export interface StoredMass {
  readonly massMg: number
  readonly origin: Origin | 'none'
  readonly uMg?: number
}

export interface ItemFormat {
  /** What the reading resolved: below 1 g a decimal is shown under 10 g. Default 1 g. */
  readonly stepMg?: number
  /** Show the band when it can be seen. Rows of items go without. */
  readonly band?: boolean
}

/** One item's mass: `412 g`, `~352 g`, `≈95 g`, `6.5 g`; `14.5 oz`, `0.42 oz`. */
export function formatItemMass(mass: Mass, choice: UnitChoice, { stepMg = 1000, band = false }: ItemFormat = {}): Shown {
  const { massMg, origin, uMg } = stored(mass)
  const { steps, places, unit } = choice.mass === 'us' ? ounces(massMg) : grams(massMg, stepMg)
  return {
    prefix: prefixOf(origin),
    digits: digitsOf(steps, places),
    unit,
    band: band ? bandOf(convertNumber(uMg, 'mg', unit), places) : '',
  }
}

/** The mass of one piece in the second tone, without its unit: `8 × 10.5`, `8 × 0.37`. A point and nothing after it is left out: `2 × 161`. */
export function formatPieces(pieces: number, pieceMg: number, choice: UnitChoice, stepMg = 1000): string {
  const { steps, places } = choice.mass === 'us' ? ounces(pieceMg) : tenths(pieceMg, stepMg)
  return `${pieces}${nbsp}×${nbsp}${digitsOf(steps, places)}`
}

export interface TotalFormat {
  /** Round value and band to the places the band deserves (in a sentence; columns keep their places). */
  readonly deserved?: boolean
}

/** A total: `4.31 kg ±0.05`, `9 lb 8.0 oz ±1.6`. */
export function formatTotalMass(mass: Mass, choice: UnitChoice, options: TotalFormat = {}): Shown {
  return choice.mass === 'us' ? poundsAndOunces(mass, options) : weighed(mass, 'kg', 2, options)
}

/** A subtotal, of a kit area or a set: `644 g ±4`, `15.6 oz`, `1 lb 6.7 oz`. */
export function formatSubtotalMass(mass: Mass, choice: UnitChoice, options: TotalFormat = {}): Shown {
  return choice.mass === 'us' ? poundsAndOunces(mass, options) : weighed(mass, 'g', 0, options)
}

/** A load the body or the pack bears: `10.0 kg`, `22 lb 0.7 oz`. */
export function formatLoadMass(mass: Mass, choice: UnitChoice, options: TotalFormat = {}): Shown {
  return choice.mass === 'us' ? poundsAndOunces(mass, options) : weighed(mass, 'kg', 1, options)
}

/** A walker's body mass: `58 kg`, `58.4 kg`, `127.9 lb`. */
export function formatBodyMass(mass: Mass, choice: UnitChoice): Shown {
  if (choice.mass === 'us') return weighed(mass, 'lb', 1, {})
  const { massMg } = stored(mass)
  return weighed(mass, 'kg', roundHalfAway(massMg / 100_000) % 10 === 0 ? 0 : 1, {})
}

/** A difference with its sign: `+24 g`, `−5 g`, `0 g`, `+982 g ±5`, `−1 lb 3.2 oz`. Pass `band: false` where the band is not wanted. */
export function formatMassDifference(mass: Mass, choice: UnitChoice, { band = true }: { readonly band?: boolean } = {}): Shown {
  const shown = choice.mass === 'us' ? signedOunces(mass) : signed(weighed(mass, 'g', 0, {}))
  return { ...shown, prefix: '', band: band ? shown.band : '' }
}

const prefixes: Readonly<Partial<Record<Origin | 'none', '~' | '≈'>>> = { claimed: '~', estimated: '≈' }
export const prefixOf = (origin: Origin | 'none'): '' | '~' | '≈' => prefixes[origin] ?? ''

/** Whole stored milligrams, whatever was handed in: the one rounding starts from them. */
function stored(mass: Mass): Required<StoredMass> {
  if ('massMg' in mass) return { massMg: mass.massMg, origin: mass.origin, uMg: mass.uMg ?? 0 }
  const inMg = convertFigure(mass, 'mg')
  return { massMg: roundHalfAway(inMg.value), origin: mass.origin, uMg: uncertainty(inMg) }
}

interface Rounded {
  readonly steps: number
  readonly places: number
}

/** Whole milligrams are divided by whole numbers, so a half is seen exactly. */
function grams(massMg: number, stepMg: number): Rounded & { readonly unit: 'g' } {
  const inTenths = roundHalfAway(massMg / 100)
  if (stepMg < 1000 && Math.abs(inTenths) < 100) return { steps: inTenths, places: 1, unit: 'g' }
  return { steps: roundHalfAway(massMg / 1000), places: 0, unit: 'g' }
}

function tenths(massMg: number, stepMg: number): Rounded {
  const inTenths = roundHalfAway(massMg / 100)
  return stepMg < 1000 && inTenths % 10 !== 0 ? { steps: inTenths, places: 1 } : { steps: roundHalfAway(massMg / 1000), places: 0 }
}

/**
 * 1 oz = 45 359 237 / 1600 mg: mg × 16 000 / 45 359 237 tenths. The divisor is odd and shares no factor with 16 000, so no whole
 * milligram lies on a half and the double nearest to the quotient rounds the right way.
 */
const tenthsOfOunce = (massMg: number): number => roundHalfAway((massMg * 16_000) / 45_359_237)

function ounces(massMg: number): Rounded & { readonly unit: 'oz' } {
  const hundredths = roundHalfAway((massMg * 160_000) / 45_359_237)
  if (Math.abs(hundredths) < 100) return { steps: hundredths, places: 2, unit: 'oz' }
  return { steps: tenthsOfOunce(massMg), places: 1, unit: 'oz' }
}

function weighed(mass: Mass, unit: 'g' | 'kg' | 'lb', most: number, { deserved = false }: TotalFormat): Shown {
  const { massMg, origin, uMg } = stored(mass)
  const u = convertNumber(uMg, 'mg', unit)
  const places = deserved ? placesDeserved(u, most) : most
  const inUnit = { g: 1000, kg: 1_000_000, lb: 453_592.37 }[unit]
  const steps = roundHalfAway((massMg * 10 ** places) / inUnit)
  return { prefix: prefixOf(origin), digits: digitsOf(steps, places), unit, band: bandOf(u, places) }
}

function poundsAndOunces(mass: Mass, { deserved = false }: TotalFormat): Shown {
  const { massMg, origin, uMg } = stored(mass)
  const u = convertNumber(uMg, 'mg', 'oz')
  const places = deserved ? placesDeserved(u, 1) : 1
  const perOunce = 10 ** places
  const all = places === 1 ? tenthsOfOunce(massMg) : roundHalfAway((massMg * 1600) / 45_359_237)
  const size = Math.abs(all)
  const pounds = Math.floor(size / (16 * perOunce))
  const band = bandOf(u, places)
  if (pounds === 0) return { prefix: prefixOf(origin), digits: digitsOf(all, places), unit: 'oz', band }
  const head = { digits: digitsOf(all < 0 ? -pounds : pounds, 0), unit: 'lb' }
  return { prefix: prefixOf(origin), head, digits: digitsOf(size - pounds * 16 * perOunce, places), unit: 'oz', band }
}

/** Below a pound a difference is read like an item: two decimals under 1 oz. */
function signedOunces(mass: Mass): Shown {
  const { massMg, uMg } = stored(mass)
  if (Math.abs(tenthsOfOunce(massMg)) >= 160) return signed(poundsAndOunces(mass, {}))
  const { steps, places, unit } = ounces(massMg)
  return { prefix: '', digits: digitsOf(steps, places, 'always'), unit, band: bandOf(convertNumber(uMg, 'mg', 'oz'), places) }
}

/** Puts the plus before the first digits of what is above nothing. */
function signed(shown: Shown): Shown {
  const first = shown.head?.digits ?? shown.digits
  if (first.startsWith('\u2212') || !/[1-9]/u.test(first + shown.digits)) return shown
  return shown.head ? { ...shown, head: { ...shown.head, digits: `+${first}` } } : { ...shown, digits: `+${first}` }
}
