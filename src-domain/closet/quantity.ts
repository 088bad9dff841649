/**
 * Quantities typed freely: `14.5 oz`, `1 lb 3 oz`, `412`, `0.41kg`, `6 1/4 oz`, `1lb3`, `~352`, `352 g (mfr)`.
 * Every parser is total: any string gives either a value or a fault, never NaN, never an exception. What can be read in two ways
 * is not guessed: the fault `quantity.ambiguous` offers both readings, each typed so that it can be read again without doubt.
 */
import type { Outcome } from '../figures/fault.ts'
import { fault } from '../figures/fault.ts'
import type { Ratio } from '../figures/exact.ts'
import { fromDecimal, isBelow, plus, ratio, roundHalfAway, times, toNumber } from '../figures/exact.ts'
import type { MassUnit, Unit, UnitKind, UnitOf } from '../figures/units.ts'
import { exactInBase, units } from '../figures/units.ts'
import type { Parsed, Refused } from './parsed.ts'
import type { Claimed, SaidOrigin } from './typed-marks.ts'
import { takeMarks } from './typed-marks.ts'
import type { CommaRule, DecimalMark, NumberReading, Term } from './typed-number.ts'
import { longestText, plainText, terms } from './typed-number.ts'

export { parseMoney } from './typed-money.ts'
export { parseDate } from './typed-date.ts'
export type { Parsed } from './parsed.ts'
export type { DecimalMark }

export interface ReadingOptions<U extends Unit> {
  /** Unit of a bare number. Without it a bare number is refused. */
  readonly unit?: U
  /** The decimal mark, once the person has said which. */
  readonly decimal?: DecimalMark
}

/** What every quantity keeps of how it was typed. */
export interface Typed<U extends Unit> {
  /** The first unit typed, or the one assumed. */
  readonly unit: U
  readonly unitAssumed: boolean
  /** The figure in `unit`. */
  readonly figure: number
  readonly origin?: SaidOrigin
  /** Words in brackets that are no mark of origin. */
  readonly note?: string
}

export interface TypedMass extends Typed<MassUnit> {
  readonly massMg: number
  /** One step of the last digit typed, in mg: what the figure resolves. Absent for fractions. */
  readonly stepMg?: number
}

/** Mass in whole milligrams, 0 mg to 1000 kg. */
export function parseMass(text: string, options: ReadingOptions<MassUnit> = { unit: 'g' }): Parsed<TypedMass> {
  return read(text, massKind, options, (said, base) => ({ ...said.typed, massMg: Number(roundHalfAway(base)), ...stepOf(said) }))
}

export interface TypedLength extends Typed<UnitOf<'length'>> {
  readonly lengthM: number
}
/** Length in metres, up to 100 000 km. `5'10"`, `183 cm`, `2,900 m`, `39 mi`. */
export function parseLength(text: string, options: ReadingOptions<UnitOf<'length'>> = { unit: 'm' }): Parsed<TypedLength> {
  return read(text, lengthKind, options, ({ typed }, base) => ({ ...typed, lengthM: toNumber(times(base, ratio(1, 1000))) }))
}

export interface TypedTemperature extends Typed<UnitOf<'temperature'>> {
  readonly tempC: number
}
/** Temperature in °C, absolute zero to 1000 °C. */
export function parseTemperature(
  text: string,
  options: ReadingOptions<UnitOf<'temperature'>> = { unit: 'degC' },
): Parsed<TypedTemperature> {
  return read(text, temperatureKind, options, ({ typed }, base) => ({ ...typed, tempC: toNumber(base) }))
}

export interface TypedVolume extends Typed<UnitOf<'volume'>> {
  readonly volumeL: number
}
/** Volume in litres, up to 10 000 l. */
export function parseVolume(text: string, options: ReadingOptions<UnitOf<'volume'>> = { unit: 'l' }): Parsed<TypedVolume> {
  return read(text, volumeKind, options, ({ typed }, base) => ({ ...typed, volumeL: toNumber(times(base, ratio(1, 1000))) }))
}

export interface TypedEnergy extends Typed<UnitOf<'energy'>> {
  readonly energyJ: number
}
/** Energy in joules, up to 1 GJ. `10000 mAh 3.7 V` gives charge times voltage. */
export function parseEnergy(text: string, options: ReadingOptions<UnitOf<'energy'>> = { unit: 'kcal' }): Parsed<TypedEnergy> {
  return read(chargeAsEnergy(text), energyKind, options, ({ typed }, base) => ({ ...typed, energyJ: toNumber(base) }))
}

export interface TypedResistance extends Typed<UnitOf<'resistance'>> {
  readonly rsi_m2K_W: number
}
/**
 * Thermal resistance in m²K/W, up to R 100. A bare number is R (ft²·°F·h/Btu) from 1.3 up; below it either may be meant and it is asked
 * (R 1.3 is RSI 0.23, RSI 1.3 is R 7.4: mats stand on both sides).
 */
export function parseResistance(text: string, options: ReadingOptions<UnitOf<'resistance'>> = {}): Parsed<TypedResistance> {
  const plain = resistanceWords(plainText(text.slice(0, longestText * 4)))
  const bare = read(plain, resistanceKind, { ...options, unit: options.unit ?? 'R' }, ({ typed }, base) => ({
    ...typed,
    rsi_m2K_W: toNumber(base),
  }))
  if (!bare.ok || options.unit || !bare.value.unitAssumed || bare.value.figure >= 1.3) return bare
  return ambiguous(text, [`R ${bare.value.figure}`, `RSI ${bare.value.figure}`])
}

/** Two columns of one sheet, pounds in the first and ounces in the next (or any two mass units). An empty cell counts nothing, two empty ones are missing. */
export function parseMassInTwo(
  first: string,
  second: string,
  head: MassUnit = 'lb',
  tail: MassUnit = 'oz',
  decimal?: DecimalMark,
): Parsed<TypedMass> {
  const mark = decimal === undefined ? {} : { decimal }
  if (second.trim() === '') return parseMass(first, { unit: head, ...mark })
  if (first.trim() === '') return parseMass(second, { unit: tail, ...mark })
  const exactly = (text: string, unit: MassUnit) => read(text, massKind, { unit, ...mark }, (said, base) => ({ ...said, base }))
  const big = exactly(first, head)
  const small = exactly(second, tail)
  if (!big.ok) return big
  if (!small.ok) return small
  const base = plus(big.value.base, small.value.base)
  if (isBelow(massKind.most, base)) return fault('quantity.too-large', { text: shown(`${first} ${second}`), limit: massKind.mostText })
  const { typed } = big.value
  const origin = typed.origin ?? small.value.typed.origin
  const figure = toNumber(times(base, inverse(typed.unit)))
  return {
    ok: true,
    value: { ...typed, figure, massMg: Number(roundHalfAway(base)), ...stepOf(small.value), ...(origin ? { origin } : {}) },
  }
}

/** A count of pieces, 1 to 9999: `8`, `×8`, `8 pcs`, `2 pairs` is 2. */
export function parsePieces(text: string): Outcome<number> {
  const plain = plainText(text.slice(0, longestText * 4)).toLowerCase()
  if (plain === '') return fault('input.missing')
  const digits = /^(?:[x×] ?)?(\d{1,4})(?:\.0+)?(?: ?(?:x|×|pcs?\.?|pieces?|ea|each|pairs?|no\.?|off))?$/u.exec(plain)?.[1]
  if (digits !== undefined && Number(digits) > 0) return { ok: true, value: Number(digits) }
  return fault(plain.startsWith('-') ? 'quantity.negative' : 'quantity.unreadable', { text: shown(text) })
}

interface KindOfQuantity<U extends Unit> {
  readonly kind: UnitKind
  readonly words: Readonly<Record<string, U>>
  /** Several words that make one unit, joined before the text is cut into terms. */
  readonly join?: readonly (readonly [RegExp, string])[]
  /** Words that name two units: both are offered. */
  readonly doubtful?: Readonly<Record<string, readonly U[]>>
  /** Units in which thousands are unlikely, so that a comma before three digits is asked about. */
  readonly large: ReadonlySet<string>
  /** Unit of a bare number after one in this unit (`1lb3`). */
  readonly tail?: Readonly<Record<string, U>>
  readonly mayBeNegative?: boolean
  /** In base units. */
  readonly least?: Ratio
  readonly most: Ratio
  readonly mostText: string
}

/** "g gram grams": words of one unit, space between. */
function named<U extends Unit>(table: Readonly<Partial<Record<U, string>>>): Readonly<Record<string, U>> {
  const pairs = (Object.entries(table) as [U, string][]).flatMap(([unit, words]) => words.split(' ').map((one): [string, U] => [one, unit]))
  return Object.assign(Object.create(null) as object, Object.fromEntries(pairs))
}

const massKind: KindOfQuantity<MassUnit> = {
  kind: 'mass',
  words: named<MassUnit>({
    mg: 'mg milligram milligrams',
    g: 'g gm gms grs gram grams gramme grammes',
    kg: 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes',
    oz: 'oz ozs ounce ounces onz',
    lb: 'lb lbs pound pounds #',
    st: 'st stone stones',
    grain: 'grain grains',
    ct: 'ct carat carats',
  }),
  // `gr` is the grain in NIST Handbook 44 and the gram in many a kitchen.
  doubtful: { gr: ['g', 'grain'] },
  large: new Set(['kg', 'lb', 'st']),
  tail: { lb: 'oz', st: 'lb' },
  most: ratio(1_000_000_000),
  mostText: '1000 kg',
}

const lengthKind: KindOfQuantity<UnitOf<'length'>> = {
  kind: 'length',
  words: named<UnitOf<'length'>>({
    mm: 'mm millimetre millimetres millimeter millimeters',
    cm: 'cm centimetre centimetres centimeter centimeters',
    m: 'm metre metres meter meters',
    km: 'km kms kilometre kilometres kilometer kilometers',
    in: 'in inch inches "',
    ft: "ft foot feet '",
    yd: 'yd yds yard yards',
    mi: 'mi mile miles',
  }),
  large: new Set(['km', 'mi']),
  tail: { ft: 'in' },
  most: ratio(100_000_000_000),
  mostText: '100 000 km',
}

const temperatureKind: KindOfQuantity<UnitOf<'temperature'>> = {
  kind: 'temperature',
  words: named<UnitOf<'temperature'>>({ degC: 'c °c degc celsius centigrade', degF: 'f °f degf fahrenheit', kelvin: 'k kelvin' }),
  join: [[/°\s*(?=[cfk])/giu, '°'], [/\bdeg(?:rees?|s)?\.?\s*(?=[cf])/giu, ''], [/(?<=\d) ?(?:°|deg(?:rees?)?)$/giu, '']], // prettier-ignore
  large: new Set(['degC', 'degF', 'kelvin']),
  mayBeNegative: true,
  least: ratio(-27_315, 100),
  most: ratio(1000),
  mostText: '1000 °C',
}

const volumeKind: KindOfQuantity<UnitOf<'volume'>> = {
  kind: 'volume',
  words: named<UnitOf<'volume'>>({
    ml: 'ml mls cc millilitre millilitres milliliter milliliters',
    cl: 'cl centilitre centilitres',
    dl: 'dl decilitre decilitres',
    l: 'l lt ltr ltrs litre litres liter liters',
    in3: 'cuin cui',
    floz: 'floz',
    cup: 'cup cups',
    pt: 'pt pts pint pints',
    qt: 'qt qts quart quarts',
    gal: 'gal gals gallon gallons',
  }),
  join: [[/\bus (?=fl|cup|p|q|g)/giu, ''], [/\bfl(?:uid)?\.? ?(?:oz|ounces?)\b/giu, 'floz'], [/\bcu(?:bic)?\.? ?in(?:ch|ches)?\b/giu, 'cuin'], [/\bin(?:ch|ches)?\^?3/giu, 'cuin'], [/\bcm\^?3/giu, 'ml'], [/\bdm\^?3/giu, 'l']], // prettier-ignore
  large: new Set(['l', 'qt', 'gal', 'pt']),
  most: ratio(10_000_000),
  mostText: '10 000 l',
}

const energyKind: KindOfQuantity<UnitOf<'energy'>> = {
  kind: 'energy',
  words: named<UnitOf<'energy'>>({
    J: 'j joule joules',
    kJ: 'kj kilojoule kilojoules',
    MJ: 'mj megajoule megajoules',
    Wh: 'wh',
    kWh: 'kwh',
    // On a packet "cal" and "Cal" are the kilocalorie.
    kcal: 'kcal kcals cal cals calorie calories kilocalorie kilocalories',
    Btu: 'btu',
  }),
  join: [[/\bwatt[- ]?hours?/giu, 'wh'], [/\b(k?)w[· *.]h\b/giu, '$1wh']], // prettier-ignore
  large: new Set(['MJ', 'kWh']),
  most: ratio(1_000_000_000),
  mostText: '1 GJ',
}

const resistanceKind: KindOfQuantity<UnitOf<'resistance'>> = {
  kind: 'resistance',
  words: named<UnitOf<'resistance'>>({ 'm2K/W': 'rsi', R: 'r', tog: 'tog togs', clo: 'clo' }),
  large: new Set(['m2K/W', 'R', 'tog', 'clo']),
  most: exactInBase(ratio(100), 'R'),
  mostText: 'R 100',
}

/** `R 4.2`, `R-value 4.2`, `RSI 0.74`, `4.2 ft²·°F·h/Btu`, `0.74 m²K/W`: one order, one word each. */
function resistanceWords(plain: string): string {
  const after = plain
    .replace(/\bft\^?2[^a-z0-9]*°? ?f[^a-z0-9]*h(?:r|our)?[^a-z0-9]*btu(?:it)?\b/iu, 'r')
    .replace(/\bh(?:r|our)?[^a-z0-9]*ft\^?2[^a-z0-9]*°? ?f[^a-z0-9]*btu(?:it)?\b/iu, 'r')
    .replace(/\bm\^?2[^a-z0-9]*k[^a-z0-9]*w\b/iu, 'rsi')
  return after.replace(/^([~≈]? ?)(rsi|r)(?:[- ]?value)?[ :=-]*(\d[\d.,]*|[.,]\d+)/iu, '$1$3 $2')
}

/** A cell's charge means energy only with its voltage: mAh × V ÷ 1000 = Wh, worked exactly. */
function chargeAsEnergy(text: string): string {
  const plain = plainText(text.slice(0, longestText * 4))
  const said = /^([~≈]?) ?(\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?) ?mAh[ ,@]*(?:at )?(\d+(?:\.\d+)?) ?V$/iu.exec(plain)
  if (!said) return text
  const [, mark = '', charge = '', volts = ''] = said
  const wh = times(times(fromDecimal(charge.replaceAll(',', '')), fromDecimal(volts)), ratio(1, 1000))
  return `${mark}${wh.n}/${wh.d} Wh`
}

interface Said<U extends Unit> {
  readonly typed: Typed<U>
  readonly lastStep: Ratio | undefined
}

/** The common way: marks, sign, terms, unit words, sum in base units, limits. */
function read<U extends Unit, T>(
  text: string,
  kind: KindOfQuantity<U>,
  options: ReadingOptions<U>,
  make: (said: Said<U>, base: Ratio) => T,
): Parsed<T> {
  if (text.length > longestText * 4) return unreadable(text, 'too long')
  const plain = plainText(text)
  if (plain === '') return fault('input.missing')
  if (plain.length > longestText) return unreadable(text, 'too long')
  const marked = takeMarks(plain)
  const { rest, isNegative } = takeSign(joinWords(marked.rest, kind))
  if (isNegative && !kind.mayBeNegative) return { ...fault('quantity.negative', { text: shown(text) }) }
  const inner = disagreement(marked, kind, options)
  if (inner) return ambiguous(text, inner)
  const range = rangeOf(text, rest, kind, options)
  if (range) return range
  const found = terms(rest, commaRule(kind, options))
  if (!found) return unreadable(text, 'not a quantity')
  return readTerms(text, found, kind, options, { isNegative, marked, make })
}

interface Rest<U extends Unit, T> {
  readonly isNegative: boolean
  readonly marked: Claimed
  readonly make: (said: Said<U>, base: Ratio) => T
}

function readTerms<U extends Unit, T>(
  text: string,
  found: readonly Term[],
  kind: KindOfQuantity<U>,
  options: ReadingOptions<U>,
  rest: Rest<U, T>,
): Parsed<T> {
  const choices = unitsOf(found, kind, options)
  if (typeof choices === 'string')
    return choices === 'missing' ? fault('quantity.unit-missing', { text: shown(text) }) : unknownUnit(text, found, kind)
  if (!descends(choices[0]!)) return unreadable(text, 'units in an odd order')
  if (!fitsUnderHead(found, choices[0]!)) return unreadable(text, 'a second number too large')
  if (!wholeHeads(found)) return unreadable(text, 'a part before the last unit')
  const lists = choices.length > 1 || found.some((term) => term.readings.length > 1)
  if (lists) return ambiguous(text, allReadings(found, choices, rest.isNegative))
  return finish(text, found, choices[0]!, kind, rest)
}

function finish<U extends Unit, T>(
  text: string,
  found: readonly Term[],
  chosen: readonly U[],
  kind: KindOfQuantity<U>,
  rest: Rest<U, T>,
): Parsed<T> {
  const base = sum(found, chosen, rest.isNegative)
  if (isBelow(kind.most, base)) return fault('quantity.too-large', { text: shown(text), limit: kind.mostText })
  if (kind.least && isBelow(base, kind.least)) return unreadable(text, 'below absolute zero')
  const unit = chosen[0]!
  const typed: Typed<U> = {
    unit,
    unitAssumed: found[0]!.word === '',
    figure: found.length === 1 ? signedNumber(found[0]!, rest.isNegative) : toNumber(times(base, inverse(unit))),
    ...(rest.marked.origin ? { origin: rest.marked.origin } : {}),
    ...(rest.marked.note ? { note: rest.marked.note } : {}),
  }
  const step = found.at(-1)!.readings[0]!.step
  return { ok: true, value: rest.make({ typed, lastStep: step && times(step, units[chosen.at(-1)!].per) }, base) }
}

const inverse = (unit: Unit): Ratio => ({ n: units[unit].per.d, d: units[unit].per.n })
const signedNumber = (term: Term, isNegative: boolean): number => (isNegative ? -1 : 1) * toNumber(term.readings[0]!.value) || 0
const stepOf = ({ lastStep }: Said<MassUnit>): { stepMg?: number } => (lastStep ? { stepMg: toNumber(lastStep) } : {})

function sum(found: readonly Term[], chosen: readonly Unit[], isNegative: boolean): Ratio {
  return found.reduce((base, term, at) => {
    const { value } = term.readings[0]!
    return plus(base, exactInBase(isNegative ? { n: -value.n, d: value.d } : value, chosen[at]!))
  }, ratio(0))
}

function joinWords(text: string, kind: KindOfQuantity<Unit>): string {
  return (kind.join ?? []).reduce((now, [pattern, word]) => now.replace(pattern, word), text)
}

function takeSign(text: string): { readonly rest: string; readonly isNegative: boolean } {
  const sign = /^([+-]) ?(?=[\d.,])/u.exec(text)
  return { rest: sign ? text.slice(sign[0].length) : text, isNegative: sign?.[1] === '-' }
}

function commaRule<U extends Unit>(kind: KindOfQuantity<U>, options: ReadingOptions<U>): (word: string) => CommaRule {
  return (word) => ({ mark: options.decimal, thousandsUnlikely: kind.large.has((word === '' ? options.unit : kind.words[word]) ?? '') })
}

/** The unit of each term; several lists where a word names two units. */
function unitsOf<U extends Unit>(
  found: readonly Term[],
  kind: KindOfQuantity<U>,
  options: ReadingOptions<U>,
): readonly (readonly U[])[] | 'missing' | 'unknown' {
  let lists: readonly (readonly U[])[] = [[]]
  for (const [at, term] of found.entries()) {
    const next = at === 0 ? options.unit : kind.tail?.[lists[0]![at - 1]!]
    const may =
      term.word === ''
        ? next
          ? [next]
          : undefined
        : (kind.doubtful?.[term.word] ?? (kind.words[term.word] ? [kind.words[term.word]!] : undefined))
    if (!may) return term.word === '' ? 'missing' : 'unknown'
    lists = lists.flatMap((list) => may.map((unit) => [...list, unit]))
  }
  return lists
}

/** `1 lb 3 oz`, never `3 oz 1 lb` or `3 oz 4 oz`: the second is more often a slip than a sum. */
function descends(chosen: readonly Unit[]): boolean {
  return chosen.every((unit, at) => at === 0 || isBelow(units[unit].per, units[chosen[at - 1]!].per))
}

/** A second number without a unit counts parts of the first: `1lb15` is 1 lb 15 oz, `1lb16` is a slip. */
function fitsUnderHead(found: readonly Term[], chosen: readonly Unit[]): boolean {
  return found.every((term, at) => {
    if (at === 0 || term.word !== '') return true
    const part = times(term.readings[0]!.value, units[chosen[at]!].per)
    return isBelow(part, units[chosen[at - 1]!].per)
  })
}

/** Only the last term may have a part: `1.5 lb 3 oz` is no way to say a mass. */
function wholeHeads(found: readonly Term[]): boolean {
  return found.slice(0, -1).every((term) => term.readings.every((reading) => reading.value.d === 1n))
}

function allReadings(found: readonly Term[], choices: readonly (readonly Unit[])[], isNegative: boolean): readonly string[] {
  const say = (chosen: readonly Unit[], pick: (readings: readonly NumberReading[]) => NumberReading): string =>
    (isNegative ? '-' : '') + found.map((term, at) => `${pick(term.readings).text} ${typedName(chosen[at]!)}`).join(' ')
  const first = choices.map((chosen) => say(chosen, (readings) => readings[0]!))
  const last = choices.map((chosen) => say(chosen, (readings) => readings.at(-1)!))
  return [...new Set([...first, ...last])]
}

/** A word for the unit that its own parser reads without doubt. */
function typedName(unit: Unit): string {
  const names: Partial<Record<Unit, string>> = { degC: '°C', degF: '°F', kelvin: 'K', in3: 'cu in', floz: 'fl oz', 'm2K/W': 'RSI' }
  return names[unit] ?? unit
}

/** `350–360 g`: two quantities with a dash or "to" between them are offered one by one. */
function rangeOf<U extends Unit>(text: string, rest: string, kind: KindOfQuantity<U>, options: ReadingOptions<U>): Refused | undefined {
  if (!rest.includes('-') && !rest.includes('to')) return undefined
  const sides = rest.split(/(?<=[\p{L}\d.]) ?(?:-|\bto\b) ?(?=[\d.,])(?!\d+ ?\/)/u)
  if (sides.length !== 2) return undefined
  const high = terms(sides[1]!, commaRule(kind, options))
  const low = terms(sides[0]!, commaRule(kind, options))
  if (low?.length !== 1 || high?.length !== 1 || (low[0]!.word !== '' && low[0]!.word !== high[0]!.word)) return undefined
  const lent = low[0]!.word === '' ? [{ ...low[0]!, word: high[0]!.word }] : low
  const [lowUnits, highUnits] = [unitsOf(lent, kind, options), unitsOf(high, kind, options)]
  if (typeof lowUnits === 'string' || typeof highUnits === 'string') return undefined
  return ambiguous(text, [...allReadings(lent, lowUnits, false), ...allReadings(high, highUnits, false)])
}

/** `412 g (14.5 oz)`: the same said twice is fine; when the two differ by more than 1 % both are offered. */
function disagreement<U extends Unit>(marked: Claimed, kind: KindOfQuantity<U>, options: ReadingOptions<U>): readonly string[] | undefined {
  if (!marked.note || !/\d/u.test(marked.note)) return undefined
  const inBase = (said: string): number | undefined => {
    const one = read(said, kind, options, (_, base) => toNumber(base))
    return one.ok ? one.value : undefined
  }
  const [outer, inner] = [inBase(marked.rest), inBase(marked.note)]
  if (outer === undefined || inner === undefined) return undefined
  return Math.abs(outer - inner) <= Math.abs(outer) * 0.01 ? undefined : [marked.rest, marked.note]
}

function unknownUnit(text: string, found: readonly Term[], kind: KindOfQuantity<Unit>): Refused {
  const unit = found.find((term) => term.word !== '' && !kind.words[term.word] && !kind.doubtful?.[term.word])?.word ?? ''
  return fault('quantity.unit-unknown', { text: shown(text), unit, kind: kind.kind })
}

const shown = (text: string): string => text.trim().slice(0, longestText)
const unreadable = (text: string, why: string): Refused => fault('quantity.unreadable', { text: shown(text), why })
function ambiguous(text: string, readings: readonly string[]): Refused {
  return { ...fault('quantity.ambiguous', { text: shown(text), first: readings[0] ?? '', second: readings[1] ?? '' }), readings }
}
