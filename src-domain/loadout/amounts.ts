import { daysOf, nightsOf, type Brief, type Resupply, type Trip } from '../trips/brief.ts'
import { traitNumber, type AmountRule, type KitItem, type KitSupply, type Line, type Loadout, type SupplyLine } from './loadout.ts'

/**
 * Amounts by the brief: rule × how often the brief poses it, up to the first resupply of its kind.
 *   per day, night, boil: counted over the days carried for · per litre: litres drawn · per stretch: the driest stretch, filled once · per trip: once
 *   rounded up to the piece, never over what the container holds
 * A typed or weighed amount stands; what the brief would say is kept beside it.
 */
export interface BriefEntries {
  readonly brief: Brief
  readonly trip: Pick<Trip, 'startsOn' | 'endsOn'>
  /** Litres drawn on the whole trip, as the water law works them out; absent: not known. */
  readonly litres?: number | null
  /** What checks ask of lines without a rule, in the supply's unit by line id (fuel from the fuel check, food from the energy need). */
  readonly asked?: ReadonlyMap<number, number>
}

/** The entry that is not there. */
export type MissingEntry = 'dates' | 'nights' | 'boils' | 'litres' | 'stretch' | 'rule'

export interface BriefAmount {
  /** In the supply's unit; null: `missing` says what for. */
  readonly amount: number | null
  readonly missing: MissingEntry | null
  /** How many days, nights, boils … it counts; null without a rule. */
  readonly times: number | null
  readonly rule: AmountRule | null
  /** What the container holds was less than the rule asks. */
  readonly capped: boolean
}

/** Part of a trip between resupplies, in days from its start: 0 is the first morning, 1 the second. */
export interface Span {
  readonly fromDay: number
  readonly toDay: number
}

/** The rule a line follows: its own, else its supply's. */
export const ruleOf = (line: SupplyLine): AmountRule | null => line.rule ?? line.supply.rule

/** What the brief says for a line, whether the line follows it or not. */
export function amountByBrief(line: SupplyLine, entries: BriefEntries, loadout?: Loadout): BriefAmount {
  const rule = ruleOf(line)
  if (rule === null) return askedAmount(line, entries, loadout)
  const [first] = spansFor(line, rule, entries)
  if (first === undefined) return { amount: null, missing: 'dates', times: null, rule, capped: false }
  return amountIn(line, rule, first, entries, loadout)
}

/** What is carried from the trailhead and from each resupply on: the first portion is the line's amount. */
export function portions(line: SupplyLine, entries: BriefEntries): readonly (Span & BriefAmount)[] {
  const rule = ruleOf(line)
  if (rule === null) return []
  return spansFor(line, rule, entries).map((span) => ({ ...span, ...amountIn(line, rule, span, entries) }))
}

/** Fills the amounts of lines that follow the brief; the others stay as they are, being the same objects. */
export function withAmounts(loadout: Loadout, entries: BriefEntries): Loadout {
  const filled = (line: Line): Line =>
    line.kind === 'supply' && line.amountFrom === 'brief' ? { ...line, amount: amountByBrief(line, entries, loadout).amount } : line
  return { ...loadout, lines: loadout.lines.map(filled) }
}

/** What the container of a line holds, in the supply's unit; null: not known, or not a matter of room. */
export function capacityOf(line: SupplyLine, loadout?: Loadout): number | null {
  const { container, supply } = line
  if (container === null || supply.unit === 'piece') return null
  const one = capacityG(container, supply)
  if (one === null) return null
  return (one * containerPieces(container, loadout)) / (supply.unit === 'g' ? 1 : supply.massGPerUnit)
}

function askedAmount(line: SupplyLine, { asked }: BriefEntries, loadout?: Loadout): BriefAmount {
  const amount = asked?.get(line.id)
  if (amount === undefined) return { amount: null, missing: 'rule', times: null, rule: null, capped: false }
  return { ...fitted(line, amount, loadout), missing: null, times: null, rule: null }
}

function amountIn(line: SupplyLine, rule: AmountRule, span: Span, entries: BriefEntries, loadout?: Loadout): BriefAmount {
  const { times, missing } = timesIn(rule.per, span, entries)
  if (times === null) return { amount: null, missing, times, rule, capped: false }
  return { ...fitted(line, rule.amount * times, loadout), missing: null, times, rule }
}

function fitted(line: SupplyLine, wanted: number, loadout?: Loadout): Pick<BriefAmount, 'amount' | 'capped'> {
  const amount = roundedUp(wanted, line.supply.unit)
  const holds = capacityOf(line, loadout)
  return holds !== null && amount > holds ? { amount: holds, capped: true } : { amount, capped: false }
}

/** To the whole piece; grams and millilitres to the thousandth that is stored. A hair over a whole one is that whole one. */
function roundedUp(amount: number, unit: KitSupply['unit']): number {
  return Math.max(0, unit === 'piece' ? Math.ceil(amount - 1e-9) : Math.ceil(amount * 1000 - 1e-6) / 1000)
}

interface Times {
  readonly times: number | null
  readonly missing: MissingEntry | null
}

function timesIn(per: AmountRule['per'], span: Span, entries: BriefEntries): Times {
  switch (per) {
    case 'day':
      return known(span.toDay - span.fromDay, 'dates')
    case 'night':
      return known(nightsIn(span, entries), 'nights')
    case 'boil':
      return known(boilsIn(span, entries), 'boils')
    case 'litre':
      return known(litresIn(span, entries), 'litres')
    case 'trip':
      return known(span.fromDay === 0 ? 1 : 0, 'dates')
    case 'stretch':
      return known(stretchesOf(entries.brief), 'stretch')
  }
}

const known = (times: number | null, missing: MissingEntry): Times => (times === null ? { times, missing } : { times, missing: null })

/** Night n follows day n; at a resupply on the evening of day n, night n is already of the part after it. */
function nightsIn({ fromDay, toDay }: Span, entries: BriefEntries): number | null {
  const nights = nightsCount(entries)
  if (nights === null) return null
  const last = toDay >= (daysCount(entries) ?? 0) ? nights : Math.min(nights, Math.ceil(toDay) - 1)
  const before = fromDay === 0 ? 0 : Math.min(nights, Math.ceil(fromDay) - 1)
  return Math.max(0, last - before)
}

function boilsIn({ fromDay, toDay }: Span, { brief }: BriefEntries): number | null {
  const { boilsPerDay, coldDays } = brief.meals
  if (boilsPerDay === null) return null
  let days = 0
  for (let day = 1; day < toDay + 1; day++) {
    const part = Math.min(toDay, day) - Math.max(fromDay, day - 1)
    if (part > 0 && !coldDays.includes(day)) days += part
  }
  return boilsPerDay * days
}

function litresIn({ fromDay, toDay }: Span, entries: BriefEntries): number | null {
  const days = daysCount(entries)
  return entries.litres == null || days === null ? null : (entries.litres * (toDay - fromDay)) / days
}

/** 1 where there is a dry stretch to carry water over, 0 where the brief says there is none; what is carried is drawn anew after each. */
function stretchesOf(brief: Brief): number | null {
  if (brief.sources.length > 0 || brief.dryCamps > 0) return 1
  return brief.dryHours === null ? null : brief.dryHours > 0 ? 1 : 0
}

/** Parts of the trip between resupplies of this supply's kind; none without a number of days, but for what needs none. */
function spansFor({ supply }: SupplyLine, { per }: AmountRule, entries: BriefEntries): readonly Span[] {
  const parts = partsBetween(kindOf(supply), entries)
  return parts.length === 0 && (per === 'trip' || per === 'stretch') ? [{ fromDay: 0, toDay: 1 }] : parts
}

/** Parts of the trip between resupplies of a kind, in order (null: nothing renews it, one part); none without a number of days. */
export function partsBetween(kind: Resupply['what'][number] | null, entries: BriefEntries): readonly Span[] {
  const days = daysCount(entries)
  if (days === null) return []
  const stops = entries.brief.resupplies
    .filter((resupply) => kind !== null && resupply.what.includes(kind))
    .map((resupply) => daysAt(resupply, entries.brief))
    .filter((at) => at > 0 && at < days)
    .sort((a, b) => a - b)
  const marks = [0, ...new Set(stops), days]
  return marks.slice(1).map((toDay, i) => ({ fromDay: marks[i]!, toDay }))
}

/** Which resupply renews it; null: none does. */
export function kindOf(supply: KitSupply): Resupply['what'][number] | null {
  if (supply.kitArea === 'food') return 'food'
  if (supply.kitArea === 'kitchen') return 'fuel'
  return supply.kitArea === 'light_power' ? 'power' : null
}

/** Days walked when a resupply is reached: by its place along that day's legs, else the whole day. */
function daysAt({ day, atM }: Resupply, { legs }: Brief): number {
  let before = 0
  let that = 0
  for (const leg of legs) {
    if (leg.lengthM === null && leg.day <= day) return day
    if (leg.day < day) before += leg.lengthM ?? 0
    if (leg.day === day) that += leg.lengthM ?? 0
  }
  return that > 0 ? day - 1 + Math.min(1, Math.max(0, (atM - before) / that)) : day
}

/** By the dates, else by the last day that has a leg, else one more than the nights. */
function daysCount({ trip, brief }: BriefEntries): number | null {
  const last = brief.legs.reduce((most, leg) => Math.max(most, leg.day), 0)
  return daysOf(trip) ?? (last > 0 ? last : brief.nightsOut === null ? null : brief.nightsOut + 1)
}

function nightsCount(entries: BriefEntries): number | null {
  const days = daysCount(entries)
  return nightsOf(entries.trip, entries.brief) ?? (days === null ? null : days - 1)
}

/** g of this supply that one container holds. */
function capacityG(container: KitItem, supply: KitSupply): number | null {
  const netG = traitNumber(container, 'net-full')
  if (netG !== null) return netG
  const litres = traitNumber(container, 'water-capacity') ?? traitNumber(container, 'hard-canister')
  const kgPerLitre = supply.unit === 'ml' ? supply.massGPerUnit : traitNumber(supply, 'bulk-density')
  return litres === null || kgPerLitre === null ? null : litres * kgPerLitre * 1000
}

/** How many of the container go; 1 where it is not a line of its own. */
function containerPieces(container: KitItem, loadout?: Loadout): number {
  let pieces = 0
  for (const line of loadout?.lines ?? []) if (line.kind === 'item' && line.item.uid === container.uid) pieces += line.pieces
  return Math.max(1, pieces)
}
