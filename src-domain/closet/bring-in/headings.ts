/** What a column's heading says, by plain words: its role, the unit of its masses, where they come from, which lane its ticks mean. */
import type { MassUnit } from '../../figures/units.ts'
import type { Role, SheetMassFrom } from './choices.ts'
import { massFromOfWord, plainWord } from './plain-words.ts'

export interface HeadingMeaning {
  readonly role: Role
  /** How plainly it says it: 3 the very word, 2 one of its words, 1 a word that may mean something else. */
  readonly plainness: 1 | 2 | 3
  readonly unit?: MassUnit
  readonly massFrom?: SheetMassFrom
}

export function headingMeaning(text: string): HeadingMeaning | undefined {
  const plain = plainWord(text)
  const words = plain.split(' ')
  if (plain === '' || words.length > 6 || text.length > 60) return undefined
  const exact = exactly.get(plain)
  if (exact) return { ...exact, ...(exact.role === 'mass' || exact.role === 'line_mass' ? massFacts(plain, words) : {}) }
  if (words.some((word) => massWords.has(word) || Object.hasOwn(unitWords, word)) && !words.includes('per'))
    return massMeaning(plain, words)
  return byOneWord(words)
}

const massWords: ReadonlySet<string> = new Set(['weight', 'weights', 'mass', 'wt', 'wgt', 'weighs', 'heavy'])
const unitWords: Readonly<Record<string, MassUnit>> = {
  g: 'g', gr: 'g', gram: 'g', grams: 'g', gm: 'g', gms: 'g', gramme: 'g', grammes: 'g', kg: 'kg', kgs: 'kg', kilo: 'kg', kilos: 'kg', kilograms: 'kg',
  oz: 'oz', ozs: 'oz', ounce: 'oz', ounces: 'oz', lb: 'lb', lbs: 'lb', pound: 'lb', pounds: 'lb',
} // prettier-ignore
const lineWords: ReadonlySet<string> = new Set(['total', 'totals', 'line', 'sum', 'extended', 'combined', 'subtotal', 'all'])

function massMeaning(plain: string, words: readonly string[]): HeadingMeaning {
  const role: Role = words.some((word) => lineWords.has(word)) ? 'line_mass' : 'mass'
  return { role, plainness: words.some((word) => massWords.has(word)) ? 3 : 2, ...massFacts(plain, words) }
}

function massFacts(plain: string, words: readonly string[]): Pick<HeadingMeaning, 'unit' | 'massFrom'> {
  const named = new Set(words.filter((word) => Object.hasOwn(unitWords, word)).map((word) => unitWords[word]!))
  const from = massFromOfWord(plain) ?? (words.some((word) => word === 'my' || word === 'own') ? 'measured' : undefined)
  return { ...(named.size === 1 ? { unit: [...named][0]! } : {}), ...(from ? { massFrom: from } : {}) }
}

type Row = readonly [role: Role, strong: string, weak: string]
const rows: readonly Row[] = [
  ['item', 'item, items, name, thing, things, article, what, object, product, item name, name of item, what it is', 'description, desc, model, gear, equipment, kit, piece'],
  ['area', 'kit area, area, category, type, group, section, class, kind, system, gear type, item type, kit group, part of kit, categories, types', 'use, where'],
  ['maker', 'maker, brand, make, manufacturer, made by, company, producer', 'by, from whom'],
  ['pieces', 'qty, quantity, count, pieces, pcs, how many, number of, amount, no of, number of pieces, n, #, units, quant', 'number, no, num, x'],
  ['mark', 'worn, wear, wearing, packed, consumable, consumables, consumed, used up, lane, where carried, worn or carried, worn carried, worn packed, worn or packed, on me, in pack, carried, how carried, w c, w p c, worn consumable, worn or consumable, mark, taking, take, bring, pack it, worn base, on body', 'carry, base, mode, pack, where is it'],
  ['price', 'price, cost, paid, value, €, $, £, eur, usd, gbp, chf, spent, price paid, cost paid, what it cost', 'worth, money'],
  ['note', 'note, notes, comment, comments, remark, remarks, memo, thoughts, details', 'info, information, more, colour, color, size, why'],
  ['from', 'mass from, weight from, source, how known, source of weight, weight source, measured or claimed, weighed or claimed, weighed, measured, claimed or measured', 'from'],
  ['status', 'status, state, owned, own, have, wished, wish, to buy, buy, got it, have it, wanted', 'got, need'],
  ['tags', 'tag, tags, label, labels, season, seasons', ''],
  ['duties', 'duty, duties', ''],
  ['set', 'set, set name', ''],
  ['link', 'link, links, url, web, website, address, web page', ''],
  ['weighed_on', 'last weighed on, weighed on, date weighed, last weighed, weighing date', ''],
  ['unit', 'unit, uom, weight unit, unit of weight, mass unit, g or oz', ''],
  ['mass', 'weight, mass, wt, piece mass g, unit weight, weight each, each, weight per piece, mass per piece', ''],
  ['line_mass', 'total weight, weight total, total mass, line weight, line total, extended weight, total, sum, weight all', ''],
  ['ignored', 'band g, row, line, id, nr', 'date'],
] // prettier-ignore

const exactly: ReadonlyMap<string, HeadingMeaning> = new Map(
  rows.flatMap(([role, strong, weak]) => [...listed(weak, role, 1), ...listed(strong, role, 3)]),
)

function listed(words: string, role: Role, plainness: 1 | 3): readonly [string, HeadingMeaning][] {
  return words === '' ? [] : words.split(', ').map((word) => [word, { role, plainness }])
}

/** The roles one may read from a single word of a longer heading, the more telling first. */
const telling: readonly Role[] = ['price', 'pieces', 'note', 'link', 'maker', 'area', 'status', 'mark', 'tags', 'item']

function byOneWord(words: readonly string[]): HeadingMeaning | undefined {
  for (const role of telling) {
    if (words.some((word) => exactly.get(word)?.role === role && exactly.get(word)?.plainness === 3)) return { role, plainness: 2 }
  }
  return undefined
}
