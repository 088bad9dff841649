/** The unit of a column's bare numbers and where its unmarked masses come from, each with its reason. */
import type { MassUnit } from '../../figures/units.ts'
import { mgPer } from '../../figures/units.ts'
import type { Choices, SheetMassFrom } from './choices.ts'
import { said } from './choices.ts'
import type { ColumnFacts } from './column-facts.ts'
import { headingMeaning } from './headings.ts'
import { saidUnit, unitsByRatio } from './mass-columns.ts'
import { massFromOfWord } from './plain-words.ts'
import type { ReasonCode, Told } from './preview.ts'

export interface UnitGuess {
  readonly unit: MassUnit
  readonly because: Told<ReasonCode>
}

/** Most single things of a walking kit lie between these (common practice, no source). */
const leastG = 20
const mostG = 1400

export function guessUnit(one: ColumnFacts, others: readonly ColumnFacts[], choices: Choices): UnitGuess {
  const person = said(choices.units, one.column)
  if (person) return { unit: person, because: { code: 'by-person', facts: {} } }
  const heading = saidUnit(one)
  if (heading) return { unit: heading, because: { code: 'by-heading', facts: { heading: one.heading, unit: heading } } }
  for (const other of others) {
    const units = other === one ? undefined : unitsByRatio(one, other)
    if (units) return { unit: units.a, because: { code: 'by-arithmetic', facts: { column: other.column, unit: units.a } } }
  }
  return byRange(one)
}

/** The unit under which most bare numbers are masses of a thing one carries; units that stand in the cells speak where that is even. */
function byRange(one: ColumnFacts): UnitGuess {
  const values = [...one.numbers.values()].filter((value) => value > 0)
  const [used] = [...one.units].toSorted((a, b) => b[1] - a[1])[0] ?? []
  if (values.length === 0) return { unit: used ?? 'g', because: { code: used ? 'by-cells' : 'by-default', facts: { unit: used ?? 'g' } } }
  const hasDecimals = values.filter((value) => !Number.isInteger(value)).length * 2 >= values.length
  const order: readonly MassUnit[] = hasDecimals ? ['oz', 'g', 'kg', 'lb'] : ['g', 'oz', 'kg', 'lb']
  const count = (unit: MassUnit): number => values.filter((value) => isLikely(value, unit)).length
  const score = (unit: MassUnit): number =>
    count(unit) + (unit === used ? values.length * 0.1 : 0) + (unit === 'lb' ? -values.length * 0.1 : 0)
  const unit = order.reduce((best, next) => (score(next) > score(best) + values.length * 0.04 ? next : best))
  const [low, high] = [leastG, mostG].map((g) => Number(((g * 1000) / mgPer(unit)).toPrecision(2))) as [number, number]
  return { unit, because: { code: 'by-range', facts: { unit, inside: count(unit), of: values.length, low, high } } }
}

function isLikely(value: number, unit: MassUnit): boolean {
  const g = (value * mgPer(unit)) / 1000
  return g >= leastG && g <= mostG
}

/**
 * What a column's unmarked masses are. A sheet that marks some masses as the maker's means the others as weighed; one that says nothing is
 * taken as claimed, for what no scale has said must not look like it. One choice turns the whole column.
 */
export function guessMassFrom(one: ColumnFacts, choices: Choices): { readonly from: SheetMassFrom; readonly because: Told<ReasonCode> } {
  const person = said(choices.massFrom, one.column)
  if (person) return { from: person, because: { code: 'by-person', facts: {} } }
  const heading = headingMeaning(one.heading)?.massFrom ?? massFromOfWord(one.heading)
  if (heading) return { from: heading, because: { code: 'by-heading', facts: { heading: one.heading } } }
  const marked = [...one.distinct].reduce((sum, [text, count]) => sum + (isMarked(text) ? count : 0), 0)
  if (marked > 0) return { from: 'measured', because: { code: 'by-contrast', facts: { marked } } }
  return { from: 'claimed', because: { code: 'by-default', facts: {} } }
}

const isMarked = (text: string): boolean =>
  /\b(?:mfr|mfg|maker|manufacturer|claimed|claim|spec|listed|catalogu?e|advertised|stated)\b/iu.test(text)
