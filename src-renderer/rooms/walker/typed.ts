import { parseLength, parseMass } from '../../../src-domain/closet/quantity.ts'
import type { UnitChoice } from '../../../src-domain/figures/unit-choice.ts'
import { faultWords } from '../../words/faults.ts'

/** What was typed in a field of the walker: a value, nothing (the field was cleared), or what is wrong with it. */
export type Entry = { readonly ok: true; readonly value: number | null } | { readonly ok: false; readonly problem: string }

const said = (value: number | null): Entry => ({ ok: true, value })
const wrong = (problem: string): Entry => ({ ok: false, problem })

/** A body from 2 to 400 kg, in grams. */
export function typedBodyMass(text: string, choice: UnitChoice): Entry {
  if (text === '') return said(null)
  const read = parseMass(text, { unit: choice.mass === 'us' ? 'lb' : 'kg' })
  if (!read.ok) return wrong(faultWords(read.fault))
  const massG = read.value.massMg / 1000
  return massG < 2000 || massG > 400_000 ? wrong('A body has between 2 and 400 kg.') : said(massG)
}

/** A height from 0.4 to 2.6 m, in millimetres. */
export function typedHeight(text: string, choice: UnitChoice): Entry {
  if (text === '') return said(null)
  const read = parseLength(text, { unit: choice.length === 'us' ? 'in' : 'cm' })
  if (!read.ok) return wrong(faultWords(read.fault))
  const heightMm = Math.round(read.value.lengthM * 1000)
  return heightMm < 400 || heightMm > 2600 ? wrong('A height is between 40 and 260 cm.') : said(heightMm)
}

export function typedYear(text: string, thisYear: number): Entry {
  if (text === '') return said(null)
  if (!/^\d{4}$/.test(text) || Number(text) > thisYear || Number(text) < thisYear - 120) return wrong('A year in four digits.')
  return said(Number(text))
}

interface Limits {
  readonly least: number
  readonly most: number
  /** What an emptied field stands for. */
  readonly empty: number | null
  readonly unit?: RegExp
}

/** A plain number within limits; a comma counts as the decimal point, U+2212 as minus, a unit behind it is passed over. */
export function typedNumber(text: string, { least, most, empty, unit }: Limits): Entry {
  if (text === '') return said(empty)
  const plain = text
    .replaceAll('−', '-')
    .replace(',', '.')
    .replace(unit ?? /$^/, '')
    .trim()
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return wrong('Write a number.')
  const value = Number(plain)
  return value < least || value > most ? wrong(`Between ${least} and ${most}.`.replaceAll('-', '−')) : said(value)
}
