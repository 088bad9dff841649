/**
 * Reading one freely typed number, and a row of numbers with unit words. Nothing here knows a kind of quantity.
 * A number may be read in two ways (`3,2`: a decimal comma or a stray mark): both readings are kept and the caller asks.
 */
import type { Ratio } from '../figures/exact.ts'
import { fromDecimal, over, plus, ratio } from '../figures/exact.ts'

/** Longest text looked at; a longer one is no quantity. */
export const longestText = 80

export type DecimalMark = '.' | ','

export interface NumberReading {
  readonly value: Ratio
  /** As it would be typed without doubt: digits with a decimal point, or a fraction. */
  readonly text: string
  /** One step of the last typed digit; absent for a fraction. */
  readonly step?: Ratio
}

export interface Term {
  /** One reading, or two where the comma may mean either. */
  readonly readings: readonly NumberReading[]
  /** The unit's word as typed, lower case, no full stop; '' when there is none. */
  readonly word: string
}

/** How a comma before three digits is taken: `grouping` unless the unit makes thousands unlikely (kg, lb, km …). */
export interface CommaRule {
  readonly mark?: DecimalMark | undefined
  readonly thousandsUnlikely: boolean
  /** One or two digits after a comma are a decimal part without asking (money). */
  readonly shortPartIsDecimal?: boolean
}

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5',
  '⅙': '1/6', '⅚': '5/6', '⅐': '1/7', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅑': '1/9', '⅒': '1/10',
} // prettier-ignore

/** Compatibility forms made plain: no-break and thin spaces, full-width digits, fraction signs, every dash and minus, curly quotes. */
export function plainText(typed: string): string {
  // Most cells are plain already.
  if (/^[!-&(-~]+(?: [!-&(-~]+)*$/u.test(typed)) return typed
  return typed
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/gu, (sign) => ` ${vulgar[sign] ?? ''} `)
    .normalize('NFKC')
    .replace(/\u2044|\u2215/gu, '/')
    .replace(/[\u2010-\u2015\u2212]/gu, '-')
    .replace(/[\u2018\u2019\u2032\u02B9]/gu, "'")
    .replace(/[\u201C\u201D\u2033\u02BA]|''/gu, '"')
    .replace(/[\u223C\u02DC]/gu, '~')
    .replace(/[\p{Cf}\p{Cc}\s]+/gu, ' ')
    .trim()
}

const number =
  /(\d+[ -]+\d+ ?\/ ?\d+|\d+ ?\/ ?\d+|\d{1,3}(?:[ ']\d{3})+(?![\d/])(?:[.,]\d+)?|\d+(?:[.,]\d+)*|[.,]\d+)([eE][+-]?\d{1,2}(?![\p{L}\d]))?/uy
const word = /(?:[ -]?(fl\.? ?oz|\p{L}+(?:[²2]\p{L}+)?|[#"'°%]+\p{L}*))?\.?/uy
const between = /(?: ?[,;&+] ?| and | )?/uy

/** Numbers each followed by a unit word or none, to the end of the text; undefined when something else stands in it. */
export function terms(text: string, rule: (unitWord: string) => CommaRule): readonly Term[] | undefined {
  const found: Term[] = []
  let at = 0
  while (at < text.length) {
    const digits = matchAt(number, text, at)
    if (!digits) return undefined
    const unit = matchAt(word, text, at + digits[0].length)
    const unitWord = (unit?.[1] ?? '').toLowerCase()
    const readings = readNumber(digits[1] ?? '', digits[2] ?? '', rule(unitWord))
    if (!readings) return undefined
    found.push({ readings, word: unitWord })
    at += digits[0].length + (unit?.[0].length ?? 0)
    at += matchAt(between, text, at)?.[0].length ?? 0
  }
  return found.length === 0 ? undefined : found
}

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at
  return pattern.exec(text)
}

function readNumber(typed: string, exponent: string, rule: CommaRule): readonly NumberReading[] | undefined {
  if (typed.includes('/')) return exponent === '' ? readFraction(typed) : undefined
  const decimals = readMarks(typed.replaceAll(/[ ']/gu, ''), /[ ']/u.test(typed), rule)
  return decimals?.map((text) => decimalReading(text, exponent))
}

function decimalReading(text: string, exponent: string): NumberReading {
  const places = text.split('.')[1]?.length ?? 0
  return { value: fromDecimal(text + exponent), text: text + exponent, step: fromDecimal(`1e-${places}`) }
}

/** "1/4" or "6 1/4" or "6-1/4". */
function readFraction(typed: string): readonly NumberReading[] | undefined {
  const parts = /^(?:(\d+)[ -]+)?(\d+) ?\/ ?(\d+)$/u.exec(typed)
  if (!parts) return undefined
  const [, whole = '0', top = '', bottom = ''] = parts
  if (BigInt(bottom) === 0n) return undefined
  const value = plus(ratio(BigInt(whole)), over(ratio(BigInt(top)), ratio(BigInt(bottom))))
  return [{ value, text: whole === '0' ? `${top}/${bottom}` : `${whole} ${top}/${bottom}` }]
}

/** The ways to read digits with points and commas, the likelier one first; undefined when none makes sense. */
function readMarks(typed: string, grouped: boolean, rule: CommaRule): readonly string[] | undefined {
  const comma = typed.includes(',')
  const point = typed.includes('.')
  if (!comma && !point) return [typed]
  if (comma && point) return both(typed)
  const mark = comma ? ',' : '.'
  const pieces = typed.split(mark)
  if (pieces.length > 2) return isGrouped(pieces) && !grouped ? [pieces.join('')] : undefined
  if (grouped) return [pieces.join('.')]
  return comma ? oneComma(pieces, rule) : onePoint(pieces, rule)
}

/** Both marks stand in it: the last one, once, is the decimal mark; the other must group by three. */
function both(typed: string): readonly string[] | undefined {
  const last = typed.lastIndexOf(',') > typed.lastIndexOf('.') ? ',' : '.'
  const [whole = '', part = '', more] = typed.split(last)
  if (more !== undefined) return undefined
  const groups = whole.split(last === ',' ? '.' : ',')
  return isGrouped(groups) ? [`${groups.join('')}.${part}`] : undefined
}

const isGrouped = ([first = '', ...rest]: readonly string[]): boolean =>
  /^[1-9]\d{0,2}$/u.test(first) && rest.every((group) => /^\d{3}$/u.test(group))

function onePoint(pieces: readonly string[], rule: CommaRule): readonly string[] {
  if (rule.mark === ',' && isGrouped(pieces)) return [pieces.join('')]
  return [pieces.join('.')]
}

function oneComma(pieces: readonly string[], rule: CommaRule): readonly string[] {
  const [whole = '', part = ''] = pieces
  const decimal = `${whole}.${part}`
  const joined = whole + part
  if (rule.mark === ',' || /^0*$/u.test(whole)) return [decimal]
  if (rule.shortPartIsDecimal && part.length <= 2) return [decimal]
  if (!isGrouped(pieces)) return [decimal, joined]
  return rule.thousandsUnlikely && rule.mark !== '.' ? [decimal, joined] : [joined]
}
