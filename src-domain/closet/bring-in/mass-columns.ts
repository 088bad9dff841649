/**
 * Columns of mass among themselves: pounds beside ounces are one mass; the same mass in two units is read once, from the finer one;
 * a column that is pieces times another is the mass of the line. All by arithmetic over the rows.
 */
import type { MassUnit } from '../../figures/units.ts'
import { mgPer } from '../../figures/units.ts'
import type { ColumnFacts } from './column-facts.ts'
import { share } from './column-facts.ts'
import { headingMeaning } from './headings.ts'
import type { RoleGuesses } from './role-guesses.ts'
import { hasRole, isGuess, set } from './role-guesses.ts'

export function settleMassColumns(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  pairByHeading(facts, found)
  pairByCells(facts, found)
  dropOtherUnits(facts, found)
  findLineMass(facts, found)
  onlyLineMass(facts, found)
  dropSurplus(facts, found)
}

export const saidUnit = (one: ColumnFacts): MassUnit | undefined => headingMeaning(one.heading)?.unit

const withRole = (facts: readonly ColumnFacts[], found: RoleGuesses, ...roles: readonly string[]): readonly ColumnFacts[] =>
  facts.filter((one) => roles.includes(found.get(one.column)?.role ?? ''))

/** Rows where both columns hold a number above zero. */
function both(a: ColumnFacts, b: ColumnFacts): readonly (readonly [number, number])[] {
  return [...a.numbers].flatMap(([row, value]) => {
    const other = b.numbers.get(row)
    return other !== undefined && other > 0 && value > 0 ? [[value, other] as const] : []
  })
}

const nearly = (a: number, b: number, part: number, slack: number): boolean => Math.abs(a - b) <= Math.abs(b) * part + slack
const mostly = <T>(all: readonly T[], test: (one: T) => boolean, part = 0.8): boolean =>
  all.length > 0 && all.filter(test).length >= all.length * part

function pairByHeading(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  if (hasRole(found, 'pounds') || hasRole(found, 'ounces')) return
  const masses = withRole(facts, found, 'mass')
  for (const pounds of masses.filter((one) => saidUnit(one) === 'lb')) {
    const ounces = masses.find((one) => saidUnit(one) === 'oz' && Math.abs(one.column - pounds.column) <= 2)
    if (!ounces || !isGuess(found, pounds.column) || !isGuess(found, ounces.column)) continue
    const rows = both(pounds, ounces)
    if (rows.length >= 2 && mostly(rows, ([lb, oz]) => nearly(oz, lb * 16, 0.03, 0.2))) continue
    makePair(found, pounds, ounces, 'by-heading')
    return
  }
}

function makePair(found: RoleGuesses, pounds: ColumnFacts, ounces: ColumnFacts, code: 'by-heading' | 'by-cells'): void {
  set(found, pounds.column, 'pounds', code, { heading: pounds.heading })
  set(found, ounces.column, 'ounces', code, { heading: ounces.heading })
}

/** Without units above: whole numbers often nought or empty, and beside them numbers all below sixteen. */
function pairByCells(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  if (hasRole(found, 'pounds') || hasRole(found, 'ounces')) return
  for (const [at, ounces] of facts.entries()) {
    const pounds = facts[at - 1]
    if (!pounds || !mayPair(found, pounds, ['pieces', 'mass', '']) || !mayPair(found, ounces, ['mass', ''])) continue
    if (!looksLikePair(pounds, ounces)) continue
    makePair(found, pounds, ounces, 'by-cells')
    return
  }
}

function mayPair(found: RoleGuesses, one: ColumnFacts, roles: readonly string[]): boolean {
  const guess = found.get(one.column)
  return roles.includes(guess?.role ?? '') && guess?.because.code !== 'by-person' && !saysPieces(one) && saidUnit(one) === undefined
}
const saysPieces = (one: ColumnFacts): boolean => headingMeaning(one.heading)?.role === 'pieces'

function looksLikePair(pounds: ColumnFacts, ounces: ColumnFacts): boolean {
  const tail = [...ounces.numbers.values()]
  const head = [...ounces.numbers.keys()].map((row) => pounds.numbers.get(row) ?? 0)
  if (tail.length < 4 || share(ounces.numbers.size, ounces) < 0.8 || (pounds.filled > 0 && share(pounds.numbers.size, pounds) < 0.8))
    return false
  const none = head.filter((value) => value === 0).length
  const wholePounds = head.every((value) => Number.isInteger(value) && value >= 0 && value <= 30) && none < head.length
  return (
    wholePounds &&
    none >= head.length * 0.2 &&
    tail.every((value) => value >= 0 && value < 16) &&
    tail.some((value) => value > 8 || !Number.isInteger(value))
  )
}

const commonUnits: readonly MassUnit[] = ['g', 'oz', 'lb', 'kg']

/** The units of two columns whose rows stand in the ratio of two units, the finer first to keep; undefined when they do not. */
export function unitsByRatio(a: ColumnFacts, b: ColumnFacts): { readonly a: MassUnit; readonly b: MassUnit } | undefined {
  const rows = both(a, b)
  if (rows.length < 3) return undefined
  for (const unitA of commonUnits) {
    for (const unitB of commonUnits) {
      if (unitA === unitB || (saidUnit(a) ?? unitA) !== unitA || (saidUnit(b) ?? unitB) !== unitB) continue
      if (mostly(rows, (row) => inRatio(row, unitA, unitB), 0.85)) return { a: unitA, b: unitB }
    }
  }
  return undefined
}

/** Compared in the finer of the two units, where rounding to what was shown is the smaller part. */
function inRatio([a, b]: readonly [number, number], unitA: MassUnit, unitB: MassUnit): boolean {
  const ratio = mgPer(unitB) / mgPer(unitA)
  const finer = ratio > 1 ? unitA : unitB
  const slack = finer === 'g' ? 0.6 : 0.06
  return ratio > 1 ? nearly(a, b * ratio, 0.05, slack) : nearly(b, a / ratio, 0.05, slack)
}

function dropOtherUnits(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  dropPairBesideGrams(facts, found)
  const masses = withRole(facts, found, 'mass', 'line_mass')
  for (const a of masses) {
    for (const b of masses) {
      if (a.column >= b.column || found.get(a.column)?.role === 'ignored' || found.get(b.column)?.role === 'ignored') continue
      const units = unitsByRatio(a, b)
      if (!units) continue
      const [finer, coarser] = mgPer(units.a) < mgPer(units.b) ? [a, b] : [b, a]
      set(found, coarser.column, 'ignored', 'same-as-column', { column: finer.column, heading: finer.heading })
    }
  }
}

function dropPairBesideGrams(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  const [pounds] = withRole(facts, found, 'pounds')
  const [ounces] = withRole(facts, found, 'ounces')
  if (!pounds || !ounces) return
  for (const grams of withRole(facts, found, 'mass')) {
    const rows = [...grams.numbers].map(
      ([row, g]) => [g, ((pounds.numbers.get(row) ?? 0) * mgPer('lb') + (ounces.numbers.get(row) ?? 0) * mgPer('oz')) / 1000] as const,
    )
    if (rows.length < 3 || !mostly(rows, ([g, pair]) => nearly(g, pair, 0.03, 2))) continue
    for (const one of [pounds, ounces])
      set(found, one.column, 'ignored', 'same-as-column', { column: grams.column, heading: grams.heading })
    return
  }
}

/** mass × pieces = line, over the rows with more than one piece. */
function findLineMass(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  const [pieces] = withRole(facts, found, 'pieces')
  const masses = withRole(facts, found, 'mass', 'line_mass')
  if (!pieces || masses.length < 2 || withRole(facts, found, 'line_mass').length > 0) return
  for (const line of masses) {
    const piece = masses.find((one) => one !== line && isProduct(line, one, pieces))
    if (!piece) continue
    set(found, line.column, 'line_mass', 'by-arithmetic', { column: piece.column })
    return
  }
}

function isProduct(line: ColumnFacts, piece: ColumnFacts, pieces: ColumnFacts): boolean {
  const rows = [...pieces.numbers].flatMap(([row, count]) => {
    const [all, each] = [line.numbers.get(row), piece.numbers.get(row)]
    return all !== undefined && each !== undefined && count > 1 ? [[all, each * count] as const] : []
  })
  return rows.length >= 2 && mostly(rows, ([all, product]) => nearly(all, product, 0.02, 0.05))
}

/** A column of line masses alone is the column of mass, for all pieces of its row. */
function onlyLineMass(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  const [line] = withRole(facts, found, 'line_mass')
  if (line && withRole(facts, found, 'mass', 'ounces').length === 0)
    set(found, line.column, 'mass', found.get(line.column)!.because.code, { heading: line.heading, line: 1 })
}

/** One column for each source of a mass: what is claimed, what is measured, one of which nothing is said. More only where each row fills but one of them ("base", "worn"). */
function dropSurplus(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  const kept = withRole(facts, found, 'ounces').map((one) => ({ one, source: 'unsaid' }))
  for (const one of withRole(facts, found, 'mass')) {
    const source = headingMeaning(one.heading)?.massFrom ?? 'unsaid'
    const rivals = kept.filter((other) => other.source === source)
    if (rivals.some((other) => both(other.one, one).length > one.filled * 0.05) && isGuess(found, one.column))
      set(found, one.column, 'ignored', 'not-understood')
    else kept.push({ one, source })
  }
}
