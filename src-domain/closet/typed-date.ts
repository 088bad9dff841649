/**
 * Dates typed freely, as local dates: `2025-10-08`, `8 Oct 2025`, `Oct 8, 2025`, `8.10.2025`, `13/10/2025`, `Oct 2025`, `2025`.
 * `08/10/2025` may be either order and is asked about unless `order` says which.
 */
import { fault } from '../figures/fault.ts'
import type { Parsed } from './parsed.ts'
import { longestText, plainText } from './typed-number.ts'

export interface TypedDate {
  /** `2025-10-08`, `2025-10` or `2025`. */
  readonly date: string
  readonly precision: 'day' | 'month' | 'year'
}

export interface DateOptions {
  readonly order?: 'day first' | 'month first'
  /** For `today` and `yesterday`, and for a date without a year; the caller reads the clock. */
  readonly today?: string
}

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
const fullMonths = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
]

export function parseDate(text: string, options: DateOptions = {}): Parsed<TypedDate> {
  const shown = { text: text.trim().slice(0, longestText) }
  const plain = text.length > longestText * 4 ? undefined : plainText(text).toLowerCase()
  if (plain === '') return fault('input.missing')
  const said = plain === undefined ? undefined : (relative(plain, options.today) ?? readDate(plain, options))
  if (!said || said.length === 0) return fault('quantity.unreadable', { ...shown, why: 'not a date' })
  if (said.length === 1) return { ok: true, value: said[0]! }
  const readings = said.map((one) => one.date)
  return { ...fault('quantity.ambiguous', { ...shown, first: readings[0]!, second: readings[1]! }), readings }
}

function relative(plain: string, today: string | undefined): readonly TypedDate[] | undefined {
  if (today === undefined || (plain !== 'today' && plain !== 'yesterday')) return undefined
  const [year = 0, month = 0, day = 0] = today.split('-').map(Number)
  if (plain === 'today' || day > 1) return dayOf(year, month, plain === 'today' ? day : day - 1)
  return month > 1 ? dayOf(year, month - 1, daysIn(year, month - 1)) : dayOf(year - 1, 12, 31)
}

/** Every reading that is a real date. */
function readDate(plain: string, options: DateOptions): readonly TypedDate[] {
  const iso = /^(\d{4})[-/.](\d{1,2})(?:[-/.](\d{1,2}))?(?:t.*)?$/u.exec(plain) ?? /^(\d{4})(\d{2})(\d{2})$/u.exec(plain)
  if (iso) return iso[3] === undefined ? monthOf(Number(iso[1]), Number(iso[2])) : dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]))
  if (/^\d{4}$/u.test(plain)) return inYears(Number(plain)) ? [{ date: plain, precision: 'year' }] : []
  const numbers = /^(\d{1,2})([-/. ]+)(\d{1,2})[-/. ]+(\d{4}|\d{2})$/u.exec(plain)
  if (numbers)
    return twoOrders(Number(numbers[1]), Number(numbers[3]), fullYear(numbers[4]!), numbers[2]!.includes('.') ? 'day first' : options.order)
  return worded(plain, options)
}

function twoOrders(first: number, second: number, year: number, order: DateOptions['order']): readonly TypedDate[] {
  const dayFirst = order === 'month first' ? [] : dayOf(year, second, first)
  const monthFirst = order === 'day first' ? [] : dayOf(year, first, second)
  return first === second ? dayOf(year, first, second) : [...dayFirst, ...monthFirst]
}

/** A month by name: `8 Oct 2025`, `October 8th, 2025`, `Oct 2025`, `8 Oct` of the year of today. */
function worded(plain: string, options: DateOptions): readonly TypedDate[] {
  const bare = plain.replace(/(\d)(?:st|nd|rd|th)\b/gu, '$1').replace(/^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*[., ]+/u, '')
  const parts = bare.split(/[-/., ]+|\bof\b/u).filter((part) => part !== '')
  const named = parts.findIndex((part) => monthNamed(part) > 0)
  const rest = parts.filter((_, at) => at !== named)
  if (named < 0 || rest.some((part) => !/^\d{1,4}$/u.test(part)) || rest.length > 2 || named > 1) return []
  const month = monthNamed(parts[named]!)
  const year = rest.find((part) => part.length === 4) ?? (rest.length === 2 ? rest[1] : undefined)
  const day = rest.find((part) => part !== year && part.length <= 2)
  if (day === undefined) return year === undefined ? [] : monthOf(fullYear(year), month)
  if (year === undefined && options.today === undefined) return []
  return dayOf(fullYear(year ?? options.today!.slice(0, 4)), month, Number(day))
}

function monthNamed(word: string): number {
  const short = months.indexOf(word === 'sept' ? 'sep' : word)
  return (short >= 0 ? short : fullMonths.indexOf(word)) + 1
}

/** Two digits are of this century up to 69, as POSIX reads them (memory). */
function fullYear(digits: string): number {
  const year = Number(digits)
  if (digits.length > 2) return year
  return year < 69 ? 2000 + year : 1900 + year
}

const inYears = (year: number): boolean => year >= 1900 && year <= 2199
const two = (value: number): string => String(value).padStart(2, '0')

function monthOf(year: number, month: number): readonly TypedDate[] {
  return inYears(year) && month >= 1 && month <= 12 ? [{ date: `${year}-${two(month)}`, precision: 'month' }] : []
}

function dayOf(year: number, month: number, day: number): readonly TypedDate[] {
  if (!inYears(year) || month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return []
  return [{ date: `${year}-${two(month)}-${two(day)}`, precision: 'day' }]
}

function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28
  return [4, 6, 9, 11].includes(month) ? 30 : 31
}
