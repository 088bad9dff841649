/** Everything that is not a mass, as it is read: lengths, temperatures, volumes, times, shares, money, and any figure by its unit. */
import type { Figure } from './figure.ts'
import { uncertainty } from './figure.ts'
import type { Shown } from './digits.ts'
import { bandOf, digitsOf, fixed, nbsp, placesDeserved, roundHalfAway, stepsOf } from './digits.ts'
import type { UnitChoice } from './unit-choice.ts'
import type { Unit } from './units.ts'
import { convertNumber, units } from './units.ts'

/** A plain value in the named unit, or a figure that brings its doubt. */
export type Amount<U extends Unit> = number | Figure<U>

const valueOf = (amount: number | Figure): number => (typeof amount === 'number' ? amount : amount.value)
const doubtOf = (amount: number | Figure): number => (typeof amount === 'number' ? 0 : uncertainty(amount))

function shown(value: number, u: number, places: number, unit: string, sign: 'minus only' | 'always' = 'minus only'): Shown {
  return { prefix: '', digits: fixed(value, places, sign), unit, band: bandOf(u, places) }
}

/** Converts value and doubt; the doubt of a temperature takes the factor and never the offset. */
function inUnit(amount: number | Figure, from: Unit, to: Unit): readonly [number, number] {
  const slope = convertNumber(1, from, to) - convertNumber(0, from, to)
  return [convertNumber(valueOf(amount), from, to), doubtOf(amount) * slope]
}

/** `−2 °C`, `28 °F`. */
export function formatTemp(tempC: Amount<'degC'>, choice: UnitChoice, places = 0): Shown {
  const [value, u] = inUnit(tempC, 'degC', choice.temp === 'us' ? 'degF' : 'degC')
  return shown(value, u, places, choice.temp === 'us' ? '°F' : '°C')
}

/** A difference of temperatures: `2 K`, `4 °F`; never gains 32. */
export function formatTempDifference(differenceK: Amount<'K'>, choice: UnitChoice, places = 0): Shown {
  const [value, u] = inUnit(differenceK, 'K', choice.temp === 'us' ? 'degF-step' : 'K')
  return shown(value, u, places, choice.temp === 'us' ? '°F' : 'K')
}

/** A way: `62 km`, `7.4 km`, `39 mi`. One decimal below 10. */
export function formatDistance(lengthM: Amount<'m'>, choice: UnitChoice): Shown {
  const unit = choice.length === 'us' ? 'mi' : 'km'
  const [value, u] = inUnit(lengthM, 'm', unit)
  return shown(value, u, placesBelow(value, 10), unit)
}

/** A height or a climb: `2,900 m`, `9,510 ft` (feet to the nearest ten). */
export function formatHeight(lengthM: Amount<'m'>, choice: UnitChoice): Shown {
  if (choice.length === 'metric') return shown(valueOf(lengthM), doubtOf(lengthM), 0, 'm')
  const [value, u] = inUnit(lengthM, 'm', 'ft')
  const bandTens = roundHalfAway((2 * u) / 10)
  return {
    prefix: '',
    digits: digitsOf(roundHalfAway(value / 10) * 10, 0),
    unit: 'ft',
    band: bandTens >= 1 ? `±${digitsOf(bandTens * 10, 0)}` : '',
  }
}

/** The size of a thing or a person: `183 cm`, `72 in`. */
export function formatSize(lengthM: Amount<'m'>, choice: UnitChoice): Shown {
  const unit = choice.length === 'us' ? 'in' : 'cm'
  const [value, u] = inUnit(lengthM, 'm', unit)
  return shown(value, u, 0, unit)
}

/** `750 ml`, `1.5 L`, `40 L`; `25 fl oz` below a quart, then `1.6 qt`. */
export function formatVolume(volumeL: Amount<'l'>, choice: UnitChoice): Shown {
  const inFine = inUnit(volumeL, 'l', choice.volume === 'us' ? 'floz' : 'ml')
  if (roundHalfAway(Math.abs(inFine[0])) < (choice.volume === 'us' ? 32 : 1000))
    return shown(...inFine, 0, choice.volume === 'us' ? `fl${nbsp}oz` : 'ml')
  const [value, u] = inUnit(volumeL, 'l', choice.volume === 'us' ? 'qt' : 'l')
  return shown(value, u, value >= 20 && stepsOf(value, 1) % 10 === 0 ? 0 : 1, choice.volume === 'us' ? 'qt' : 'L')
}

/** `5 h 37`, `5 h 05`, `3 h`, `50 min`. */
export function formatDuration(minutes: number): string {
  const all = roundHalfAway(minutes)
  const sign = all < 0 ? '\u2212' : ''
  const [hours, rest] = [Math.floor(Math.abs(all) / 60), Math.abs(all) % 60]
  if (hours === 0) return `${sign}${rest}${nbsp}min`
  return `${sign}${digitsOf(hours, 0)}${nbsp}h${rest === 0 ? '' : nbsp + String(rest).padStart(2, '0')}`
}

/** Minutes of the day as a clock: `15:00`; past midnight it goes round. */
export function formatClock(minuteOfDay: number): string {
  const minute = ((roundHalfAway(minuteOfDay) % 1440) + 1440) % 1440
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
}

/** A share of one: 0.125 is `12.5 %`. */
export function formatShare(share: number, places = 1, sign: 'minus only' | 'always' = 'minus only'): Shown {
  return { prefix: '', digits: fixed(share * 100, places, sign), unit: '%', band: '' }
}

/** `€ 48`, `€ 1.84`, `CHF 80`: whole units without their empty cents. */
export function formatMoney(amountMinor: number, currency: string, minorPlaces = 2): string {
  const sign = ({ EUR: '€', USD: '$', GBP: '£', JPY: '¥' } as Readonly<Record<string, string>>)[currency] ?? currency
  const whole = amountMinor % 10 ** minorPlaces === 0
  const digits = whole ? digitsOf(amountMinor / 10 ** minorPlaces, 0) : digitsOf(amountMinor, minorPlaces)
  return digits.startsWith('\u2212') ? `\u2212${sign}${nbsp}${digits.slice(1)}` : `${sign}${nbsp}${digits}`
}

/** How the units of the trade are written. */
const written: Readonly<Record<string, string>> = {
  l: 'L', 'm2K/W': 'm²K/W', 'l/m2s': 'l/m²s', 'kcal/100g': 'kcal/100 g', '1': '', degC: '°C', degF: '°F', 'degF-step': '°F', floz: `fl${nbsp}oz`, in3: 'in³', grain: 'gr', kelvin: 'K', 'W/m2': 'W/m²', 'W/m2K': 'W/m²K',
} // prettier-ignore
export const unitWritten = (unit: string): string => written[unit] ?? unit

/** Units with a US way of saying them, by kind of choice. */
const american: Readonly<Record<string, readonly [keyof UnitChoice, Unit]>> = {
  g: ['mass', 'oz'], kg: ['mass', 'lb'], mg: ['mass', 'oz'], m: ['length', 'ft'], km: ['length', 'mi'], cm: ['length', 'in'], mm: ['length', 'in'],
  degC: ['temp', 'degF'], K: ['temp', 'degF-step'], l: ['volume', 'qt'], ml: ['volume', 'floz'], 'km/h': ['length', 'mph'], 'm/s': ['length', 'mph'],
} // prettier-ignore

/** Any figure in the unit the person chose for its kind, to the places its band deserves, else to four significant digits. */
export function formatFigure(figure: Figure, choice: UnitChoice, places?: number): Shown {
  if (figure.unit === 'clock') return clock(figure)
  const other = american[figure.unit]
  const to = other && choice[other[0]] === 'us' ? other[1] : undefined
  const [value, u] = to && figure.unit in units ? inUnit(figure, figure.unit as Unit, to) : [figure.value as number, uncertainty(figure)]
  const prefix = figure.origin === 'claimed' ? '~' : figure.origin === 'estimated' ? '≈' : ''
  const unit = unitWritten(to ?? figure.unit)
  if (places === undefined && u === 0) return { prefix, digits: asFarAsNeeded(value), unit, band: '' }
  return { ...shown(value, u, places ?? placesDeserved(u, 6), unit), prefix }
}

/** A minute of the day reads as the clock does, its band in minutes: `17:02 ±101 min`. */
function clock(figure: Figure): Shown {
  const bandMin = roundHalfAway(2 * uncertainty(figure))
  const prefix = figure.origin === 'estimated' ? '≈' : ''
  return { prefix, digits: formatClock(figure.value), unit: '', band: bandMin >= 1 ? `±${digitsOf(bandMin, 0)}${nbsp}min` : '' }
}

/** Up to four significant digits, whole numbers in full, no trailing zeros: `2.5`, `45.57`, `1,284`, `0.0015`. */
function asFarAsNeeded(value: number): string {
  const size = Math.abs(value)
  const most = size >= 1000 || size === 0 ? 0 : Math.min(10, 3 - Math.floor(Math.log10(size)))
  const text = fixed(value, most)
  return text.includes('.') ? text.replace(/\.?0+$/u, '') : text
}

const placesBelow = (value: number, limit: number): number => (Math.abs(stepsOf(value, 1)) < limit * 10 ? 1 : 0)

const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** A local date as it is read: `2025-10-08` is `8 Oct 2025`, `2025-10` is `Oct 2025`. */
export function formatDate(date: string): string {
  const [year = '', month = '', day] = date.split('-')
  const name = monthNames[Number(month) - 1]
  if (name === undefined) return year
  return `${day === undefined ? '' : `${Number(day)}${nbsp}`}${name}${nbsp}${year}`
}
