/** The smaller fields of a row: price, note, tags, links, duties, status, day of weighing. What cannot be read is said, never guessed. */
import { parseDate, parseMoney } from '../quantity.ts'
import type { DecimalMark } from '../quantity.ts'
import type { Status } from '../vocabulary.ts'
import { duties as tradeDuties, dutyByCode } from '../vocabulary.ts'
import type { Choices } from './choices.ts'
import { said } from './choices.ts'
import { plainWord, statusOfWord, tick } from './plain-words.ts'
import type { BlockPlan } from './plan-block.ts'
import type { NoteCode, RowPreview, Told } from './preview.ts'
import { isNothing } from './tidy.ts'

type Tell = (code: NoteCode, facts?: Told['facts']) => void

export interface FieldReader {
  price(cells: readonly string[], tell: Tell): RowPreview['price']
  status(cells: readonly string[], tell: Tell): Status
  duties(cells: readonly string[], tell: Tell): readonly string[]
  weighedOn(cells: readonly string[], tell: Tell): string | null
  tags(cells: readonly string[]): readonly string[]
  links(cells: readonly string[]): readonly string[]
  text(cells: readonly string[], role: 'maker' | 'set', tell: Tell): string
  note(raw: readonly string[], tell: Tell): string
}

/** Stands for "no currency said"; no price is kept in it. */
const unsaid = 'XXX'

export function fieldReader(
  plan: BlockPlan,
  rows: readonly (readonly string[])[],
  choices: Choices,
  decimal: DecimalMark | undefined,
): FieldReader {
  const at = (cells: readonly string[], column: number | null): string =>
    column === null || isNothing(cells[column] ?? '') ? '' : cells[column]!
  const own = currencyOfColumn(plan, rows) ?? choices.currency ?? unsaid
  const status = plan.columnsOf('status')[0]
  return {
    price: (cells, tell) => priceOf(at(cells, plan.column('price')), own, decimal, tell),
    status: (cells, tell) => (status ? statusOf(at(cells, status.column), status.heading, choices, tell) : 'owned'),
    duties: (cells, tell) => dutiesOf(at(cells, plan.column('duties')), tell),
    weighedOn: (cells, tell) => dayOf(at(cells, plan.column('weighed_on')), tell),
    tags: (cells) => listed(plan.columnsOf('tags').map((one) => at(cells, one.column)), /[,;|]/u), // prettier-ignore
    links: (cells) => plan.columnsOf('link').flatMap((one) => linkOf(at(cells, one.column))),
    text: (cells, role, tell) => clipped(at(cells, plan.column(role)), 300, tell),
    note: (raw, tell) => clipped(plan.columnsOf('note').map((one) => (raw[one.column] ?? '').trim()).filter((one) => !isNothing(one)).join('; '), 20_000, tell), // prettier-ignore
  }
}

function clipped(text: string, most: number, tell: Tell): string {
  if (text.length <= most) return text
  tell('text-cut', { most })
  return text.slice(0, most)
}

/** The currency that the heading or any cell of the price column names. */
function currencyOfColumn(plan: BlockPlan, rows: readonly (readonly string[])[]): string | undefined {
  const [price] = plan.columnsOf('price')
  if (!price) return undefined
  const inHeading = price.heading.match(/[€£$¥₹]|\b[A-Za-z]{3}\b/gu) ?? []
  for (const sign of inHeading) {
    const read = parseMoney(`1 ${sign}`, { currency: unsaid })
    if (read.ok && /[€£$¥₹]|^(?:eur|usd|gbp|chf|sek|nok|dkk|cad|aud|nzd|jpy|pln|czk)$/iu.test(sign)) return read.value.currency
  }
  for (const row of rows.slice(0, 500)) {
    const read = parseMoney(row[price.column] ?? '', { currency: unsaid })
    if (read.ok && !read.value.currencyAssumed) return read.value.currency
  }
  return undefined
}

function priceOf(text: string, currency: string, decimal: DecimalMark | undefined, tell: Tell): RowPreview['price'] {
  if (text === '') return null
  const read = parseMoney(text, { currency, ...(decimal === undefined ? {} : { decimal }) })
  if (!read.ok) return (tell('price-unreadable', { text: text.slice(0, 80) }), null)
  if (read.value.currency === unsaid) return (tell('currency-missing', { text: text.slice(0, 80) }), null)
  return { amountMinor: read.value.amountMinor, currency: read.value.currency }
}

function statusOf(text: string, heading: string, choices: Choices, tell: Tell): Status {
  const word = said(choices.statuses, text.toLowerCase()) ?? statusOfWord(text)
  if (word) return word
  const ticked = tick(text)
  const ofHeading = statusOfWord(heading)
  if (ticked === true && ofHeading) return ofHeading
  if (ticked === false) return ofHeading === 'owned' ? 'wished' : 'owned'
  tell('status-unread', { text: text.slice(0, 80) })
  return 'owned'
}

const dutyByWord: ReadonlyMap<string, string> = new Map(tradeDuties.map((duty) => [plainWord(duty.label), duty.code]))

/** Codes parted by spaces (our own CSV), or words parted by commas. */
function dutiesOf(text: string, tell: Tell): readonly string[] {
  if (text === '') return []
  const parts = /[,;|]/u.test(text) || dutyByWord.has(plainWord(text)) ? text.split(/[,;|]/u) : text.split(' ')
  const found = parts.map((part) => part.trim()).filter((part) => part !== '')
  const codes = found.flatMap((part) => (dutyByCode.has(part) ? [part] : (dutyByWord.get(plainWord(part)) ?? [])))
  if (codes.length < found.length) tell('duty-unread', { text: text.slice(0, 80) })
  return [...new Set(codes)]
}

function dayOf(text: string, tell: Tell): string | null {
  if (text === '') return null
  const read = parseDate(text)
  if (read.ok && read.value.precision === 'day') return read.value.date
  return (tell('date-unread', { text: text.slice(0, 80) }), null)
}

function listed(texts: readonly string[], by: RegExp): readonly string[] {
  const all = texts.flatMap((text) => text.split(by)).map((one) => one.trim().slice(0, 100).trim()).filter((one) => one !== '') // prettier-ignore
  return [...new Set(all)].slice(0, 100)
}

function linkOf(text: string): readonly string[] {
  const whole = text.startsWith('www.') ? `https://${text}` : text
  return /^https?:\/\/[^\s/]+\.[^\s]+$/iu.test(whole) && whole.length <= 2000 ? [whole] : []
}
