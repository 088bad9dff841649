/**
 * Moments of a trip at which the pack is judged, and what is left of a line then: the trailhead and each resupply, just after it is packed.
 *   left(day) = portion·(toDay − day)/(toDay − fromDay)      portion: what is carried from `fromDay` to the next resupply of its kind
 * What is filled anew at each source (rule per stretch, water) counts in full at every moment: the driest stretch may follow any of them.
 * A typed or weighed amount is taken again at each resupply of its kind. Without a number of days there is only the trailhead.
 */
import { given, type Figure } from '../figures/figure.ts'
import type { ItemLine, Line, Loadout, SupplyLine } from './loadout.ts'
import { kindOf, partsBetween, portions, ruleOf, type BriefEntries, type Span } from './amounts.ts'
import { isCarriedByAnother, lineMass } from './mass.ts'
import { sumOf, weighed, type Sum } from './totals.ts'

export interface Moment {
  /** Days walked: 0 is the trailhead, 1 the end of the first day. */
  readonly day: number
  readonly what: 'trailhead' | 'resupply'
}

/** In order of the way; the trailhead first. */
export function momentsOf(loadout: Loadout, entries: BriefEntries): readonly Moment[] {
  const days = new Set<number>()
  for (const line of loadout.lines)
    if (line.kind === 'supply') for (const { fromDay } of partsBetween(kindOf(line.supply), entries)) days.add(fromDay)
  const resupplies = [...days].filter((day) => day > 0).sort((a, b) => a - b)
  return [{ day: 0, what: 'trailhead' }, ...resupplies.map((day): Moment => ({ day, what: 'resupply' }))]
}

/** The line as it stands at a moment; an item line is what it was. */
export function lineAt(line: Line, day: number, entries: BriefEntries): Line {
  if (line.kind === 'item') return line
  const amount = amountAt(line, day, entries)
  return amount === line.amount ? line : { ...line, amount }
}

/** In the supply's unit; null: not known. */
export function amountAt(line: SupplyLine, day: number, entries: BriefEntries): number | null {
  if (line.amount === null || isRefilled(line)) return line.amount
  const spans = carriedSpans(line, entries)
  const span = spans.find((one) => day >= one.fromDay && day < one.toDay)
  if (span === undefined) return day === 0 ? line.amount : 0
  return span.amount === null ? null : (span.amount * (span.toDay - day)) / (span.toDay - span.fromDay)
}

/** Lines of the pack and what is used up, those carried by another left out, as they stand at a moment. */
export function packLinesAt(loadout: Loadout, day: number, entries: BriefEntries): readonly Line[] {
  return loadout.lines.filter((line) => line.lane !== 'on_me' && !isCarriedByAnother(line)).map((line) => lineAt(line, day, entries))
}

/** Pack weight at a moment. */
export function packAt(loadout: Loadout, moment: Moment, entries: BriefEntries): Sum {
  return sumOf('pack weight', packLinesAt(loadout, moment.day, entries).map(weighed))
}

export interface HeaviestPack {
  readonly moment: Moment
  readonly sum: Sum
}

/** The moment with the heaviest pack; of equal ones the first. */
export function heaviestPack(loadout: Loadout, entries: BriefEntries): HeaviestPack {
  const all = momentsOf(loadout, entries).map((moment) => ({ moment, sum: packAt(loadout, moment, entries) }))
  return all.reduce((most, one) => (one.sum.massMg > most.sum.massMg ? one : most))
}

const isRefilled = (line: SupplyLine): boolean =>
  ruleOf(line)?.per === 'stretch' || (line.supply.kitArea === 'water' && line.supply.unit === 'ml')

interface CarriedSpan extends Span {
  readonly amount: number | null
}

/** The line's own amount from the trailhead on; what follows a resupply by its rule, else the same again. */
function carriedSpans(line: SupplyLine, entries: BriefEntries): readonly CarriedSpan[] {
  const byRule = line.amountFrom === 'brief' ? portions(line, entries) : []
  return partsBetween(kindOf(line.supply), entries).map((span, i) => ({
    ...span,
    amount: i === 0 ? line.amount : (byRule[i]?.amount ?? line.amount),
  }))
}

/** Mass of a line whoever carries it: what serves the party counts where it is. */
export function massAnywhere(line: ItemLine | SupplyLine): Figure<'g'> {
  return lineMass({ ...line, carriedBy: '' }) ?? given(0, 'g', 'estimated', {}, 'no mass known')
}
