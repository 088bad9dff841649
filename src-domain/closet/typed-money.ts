/**
 * Money typed freely, as whole minor units with a currency code: `12.50`, `€ 12,50`, `$1,299.00`, `1.299,00 EUR`, `80 CHF`.
 * One or two digits after a single comma are a decimal part; three are thousands (common practice, no source).
 */
import { isBelow, ratio, roundHalfAway, times } from '../figures/exact.ts'
import { fault } from '../figures/fault.ts'
import type { Parsed } from './parsed.ts'
import type { DecimalMark } from './typed-number.ts'
import { longestText, plainText, terms } from './typed-number.ts'

export interface TypedMoney {
  readonly amountMinor: number
  /** ISO 4217 code. */
  readonly currency: string
  readonly currencyAssumed: boolean
}

/** Digits after the point in ISO 4217 where they are not two (memory). */
const places: Readonly<Record<string, number>> = {
  BIF: 0, CLP: 0, DJF: 0, GNF: 0, ISK: 0, JPY: 0, KMF: 0, KRW: 0, PYG: 0, RWF: 0, UGX: 0, VND: 0, VUV: 0, XAF: 0, XOF: 0, XPF: 0,
  BHD: 3, IQD: 3, JOD: 3, KWD: 3, LYD: 3, OMR: 3, TND: 3,
} // prettier-ignore
export const minorPlaces = (currency: string): number => places[currency] ?? 2

/** A sign may belong to several currencies: the person's own comes first, else the first named. */
const signs: Readonly<Record<string, readonly string[]>> = {
  '€': ['EUR'], '£': ['GBP'], '¥': ['JPY', 'CNY'], '₹': ['INR'], '₩': ['KRW'], '₺': ['TRY'], '₽': ['RUB'], '₴': ['UAH'], '₪': ['ILS'], 'zł': ['PLN'], 'kč': ['CZK'], 'ft': ['HUF'], 'fr.': ['CHF'], 'fr': ['CHF'],
  '$': ['USD', 'CAD', 'AUD', 'NZD', 'SGD', 'HKD', 'MXN'], 'us$': ['USD'], 'c$': ['CAD'], 'a$': ['AUD'], 'nz$': ['NZD'], 'kr': ['SEK', 'NOK', 'DKK', 'ISK'], 'kr.': ['DKK', 'SEK', 'NOK', 'ISK'],
} // prettier-ignore

/** A price, 0 up to 10 million. Negative ones are refused. */
export function parseMoney(text: string, options: { readonly currency: string; readonly decimal?: DecimalMark }): Parsed<TypedMoney> {
  const plain = text.length > longestText * 4 ? '' : plainText(text)
  const shown = { text: text.trim().slice(0, longestText) }
  if (text.trim() === '' || (plain === '' && text.length <= longestText * 4)) return fault('input.missing')
  const cut = /^(-)?([^\d.,-]{0,4}?) ?(-)?((?:\d|[.,]\d)[\d.,' ]*?)(?:[.,]-{1,2})? ?([^\d,\s]{0,4})$/u.exec(plain)
  if (!cut) return fault('quantity.unreadable', { ...shown, why: 'not a price' })
  const [, minus, ahead = '', inner, digits = '', behind = ''] = cut
  if (ahead !== '' && behind !== '') return fault('quantity.unreadable', { ...shown, why: 'two currencies' })
  const currency = currencyOf((ahead + behind).trim(), options.currency)
  if (!currency) return fault('quantity.unit-unknown', { ...shown, unit: ahead + behind, kind: 'money' })
  if (minus ?? inner) return fault('quantity.negative', shown)
  return amount(digits.trim(), currency, ahead + behind === '', options.decimal, shown)
}

function amount(
  digits: string,
  currency: string,
  currencyAssumed: boolean,
  mark: DecimalMark | undefined,
  shown: { text: string },
): Parsed<TypedMoney> {
  const found = terms(digits, () => ({ mark, thousandsUnlikely: false, shortPartIsDecimal: true }))
  const readings = found?.length === 1 ? found[0]!.readings : undefined
  if (!readings) return fault('quantity.unreadable', { ...shown, why: 'not a price' })
  if (readings.length > 1) {
    const said = readings.map((reading) => `${reading.text} ${currency}`)
    return { ...fault('quantity.ambiguous', { ...shown, first: said[0]!, second: said[1]! }), readings: said }
  }
  const { value } = readings[0]!
  if (isBelow(ratio(10_000_000), value)) return fault('quantity.too-large', { ...shown, limit: '10 000 000' })
  return {
    ok: true,
    value: { amountMinor: Number(roundHalfAway(times(value, ratio(10 ** minorPlaces(currency))))), currency, currencyAssumed },
  }
}

function currencyOf(sign: string, own: string): string | undefined {
  if (sign === '') return own
  const may = Object.hasOwn(signs, sign.toLowerCase()) ? signs[sign.toLowerCase()] : undefined
  if (may) return may.includes(own) ? own : may[0]
  return /^[a-z]{3}$/iu.test(sign) ? sign.toUpperCase() : undefined
}
