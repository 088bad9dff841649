/** What stands in a column, counted: the ground on which its role and unit are guessed. */
import type { MassUnit } from '../../figures/units.ts'
import type { DecimalMark } from '../quantity.ts'
import { isNothing } from './tidy.ts'

export interface ColumnFacts {
  readonly column: number
  readonly heading: string
  /** Cells that say something. */
  readonly filled: number
  /** Values of bare numbers, by row of `rows`. */
  readonly numbers: ReadonlyMap<number, number>
  /** Cells of a number with a unit of mass, and how often each unit. */
  readonly masses: number
  readonly units: ReadonlyMap<MassUnit, number>
  readonly prices: number
  readonly links: number
  readonly dates: number
  /** Cells of words. */
  readonly words: number
  readonly distinct: ReadonlyMap<string, number>
  readonly averageLength: number
}

/** Rows that are looked at; a long sheet says no more than its first ones. */
const mostRows = 3000

export function columnFacts(
  rows: readonly (readonly string[])[],
  column: number,
  heading: string,
  decimal: DecimalMark | undefined,
): ColumnFacts {
  const numbers = new Map<number, number>()
  const units = new Map<MassUnit, number>()
  const distinct = new Map<string, number>()
  const count = { filled: 0, masses: 0, prices: 0, links: 0, dates: 0, words: 0, length: 0 }
  for (const [at, row] of rows.slice(0, mostRows).entries()) {
    const cell = row[column] ?? ''
    if (isNothing(cell)) continue
    count.filled += 1
    count.length += cell.length
    const plain = cell.toLowerCase()
    distinct.set(plain, (distinct.get(plain) ?? 0) + 1)
    const kind = kindOfCell(cell)
    if (kind === 'number') numbers.set(at, quickNumber(cell, decimal))
    else count[kind] += 1
    if (kind === 'masses') addUnit(units, cell)
  }
  const { length, ...counts } = count
  return { column, heading, ...counts, numbers, units, distinct, averageLength: count.filled === 0 ? 0 : length / count.filled }
}

type CellKind = 'number' | 'masses' | 'prices' | 'links' | 'dates' | 'words'

const front = String.raw`^(?:[~≈<>]|about |approx\.? |est\.? |ca?\. ?)?\s?`
const bare = new RegExp(String.raw`${front}[+-]?(?:\d[\d.,' ]*|[.,]\d+)(?:\s?\d?\/\d{1,2})?(?:\s?\((?:\w|\?)+\))?$`, 'iu')
const withUnit = /(?:\d|[½¼¾⅓⅔])\s?(mg|g|gr|gms?|grams?|grammes?|kgs?|kilos?|kilograms?|ozs?|ounces?|lbs?|pounds?)\b/iu
const mass = new RegExp(
  String.raw`${front}[+-]?[.,]?(?:\d|[½¼¾⅓⅔])[^\p{L}]*(?:mg|g|gr|gms?|grams?|grammes?|kgs?|kilos?|kilograms?|ozs?|ounces?|lbs?|pounds?)\b`,
  'iu',
)
const price =
  /^(?:[€$£¥₹]|(?:eur|usd|gbp|chf|sek|nok|dkk|cad|aud)\s?)\s?-?\d|^-?\d[\d.,' ]*\s?(?:€|\$|£|¥|₹|eur|usd|gbp|chf|sek|nok|dkk|cad|aud|kr|zł)\.?$/iu
const link = /^(?:https?:\/\/|www\.)\S+$/iu
const date = /^\d{4}-\d{1,2}-\d{1,2}$|^\d{1,2}[./]\d{1,2}[./](?:\d{4}|\d{2})$/u

function kindOfCell(cell: string): CellKind {
  if (link.test(cell)) return 'links'
  if (date.test(cell)) return 'dates'
  if (bare.test(cell)) return 'number'
  if (mass.test(cell)) return 'masses'
  return price.test(cell) ? 'prices' : 'words'
}

const unitByWord: readonly (readonly [RegExp, MassUnit])[] = [[/^mg/iu, 'mg'], [/^kg|^kilo/iu, 'kg'], [/^g/iu, 'g'], [/^oz|^ounce/iu, 'oz'], [/^lb|^pound/iu, 'lb']] // prettier-ignore

function addUnit(units: Map<MassUnit, number>, cell: string): void {
  const word = withUnit.exec(cell)?.[1] ?? ''
  const unit = unitByWord.find(([pattern]) => pattern.test(word))?.[1]
  if (unit) units.set(unit, (units.get(unit) ?? 0) + 1)
}

/** A number near enough for guessing; the cell is read exactly later. */
export function quickNumber(cell: string, decimal: DecimalMark | undefined): number {
  const digits = cell.replace(/^[^\d.,+-]+|\s?\(.*\)$/gu, '').replace(/[' ](?=\d{3})/gu, '')
  const [whole = '', ...fraction] = digits.split(/[ ](?=\d\/)/u)
  const over = /^(\d+)\/(\d+)$/u.exec(fraction[0] ?? whole)
  const plain =
    decimal === ','
      ? whole.replace(/\.(?=\d{3})/gu, '').replace(',', '.')
      : /^\d+,\d{1,2}$/u.test(whole)
        ? whole.replace(',', '.')
        : whole.replaceAll(',', '')
  const base = /^[+-]?(?:\d|\.\d)/u.test(plain) && !whole.includes('/') ? Number.parseFloat(plain) : 0
  return base + (over ? Number(over[1]) / Math.max(1, Number(over[2])) : 0)
}

/**
 * Which sign parts decimals in the whole sheet: the comma when at least two cells have one that groups no thousands and no cell has such
 * a point; the point when a cell has one and commas only group. Else it is not known, and a doubtful comma is asked about row by row.
 */
export function decimalMark(rows: readonly (readonly string[])[]): DecimalMark | undefined {
  let [commas, points] = [0, 0]
  for (const row of rows.slice(0, mostRows)) {
    for (const cell of row) {
      if (cell.length > 20 || date.test(cell) || !/^[^\p{L}\d]{0,3}\d/u.test(cell)) continue
      if (/^\D*\d+,(?:\d{1,2}|\d{4,})(?!\d|[.,])|^\D*0,\d/u.test(cell)) commas += 1
      if (/^\D*\d+\.(?:\d{1,2}|\d{4,})(?!\d|[.,])|^\D*0?\.\d/u.test(cell)) points += 1
    }
  }
  if (commas >= 2 && points === 0) return ','
  return points > 0 && commas === 0 ? '.' : undefined
}

/** 1, 2, 3, …: row numbers. */
export function isSequence({ numbers, filled }: ColumnFacts): boolean {
  const values = [...numbers.values()]
  return values.length >= 4 && values.length === filled && values.every((value, at) => at === 0 || value === values[at - 1]! + 1)
}

export const share = (part: number, { filled }: ColumnFacts): number => (filled === 0 ? 0 : part / filled)
