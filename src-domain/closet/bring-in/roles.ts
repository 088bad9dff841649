/**
 * Which column holds what. The person's word first, then headings that the cells do not contradict, then the cells themselves,
 * and last the arithmetic between columns of mass. Every guess keeps its reason and can be changed.
 */
import type { Choices, Role } from './choices.ts'
import { said } from './choices.ts'
import type { ColumnFacts } from './column-facts.ts'
import { isSequence, share } from './column-facts.ts'
import type { HeadingMeaning } from './headings.ts'
import { headingMeaning } from './headings.ts'
import { settleMassColumns } from './mass-columns.ts'
import { areaOfWord, laneOfWord, massFromOfWord, statusOfWord, unitOfWord } from './plain-words.ts'
import type { RoleGuesses } from './role-guesses.ts'
import { hasRole, isGuess, set } from './role-guesses.ts'

/** Roles that several columns may hold. */
const many: ReadonlySet<Role> = new Set(['mass', 'mark', 'note', 'tags', 'link', 'ignored'])

export function guessRoles(facts: readonly ColumnFacts[], choices: Choices): RoleGuesses {
  const found: RoleGuesses = new Map()
  byPerson(facts, choices, found)
  byHeading(facts, found)
  byCells(facts, found)
  settleMassColumns(facts, found)
  needsAnItem(facts, found)
  for (const one of facts)
    if (!found.has(one.column)) set(found, one.column, 'ignored', one.filled === 0 ? 'nothing-in-it' : 'not-understood')
  return found
}

const isFree = (found: RoleGuesses, role: Role): boolean => many.has(role) || !hasRole(found, role)

function byPerson(facts: readonly ColumnFacts[], { roles }: Choices, found: RoleGuesses): void {
  for (const { column } of facts) {
    const role = said(roles, column)
    if (role !== undefined && isFree(found, role)) found.set(column, { role, because: { code: 'by-person', facts: {} } })
  }
}

function byHeading(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  const meant = facts.flatMap((one) => {
    const meaning = one.heading === '' ? undefined : (fitting(one, headingMeaning(one.heading)) ?? figuresUnder(one))
    return meaning ? [{ one, meaning }] : []
  })
  for (const { one, meaning } of meant.toSorted((a, b) => b.meaning.plainness - a.meaning.plainness)) {
    if (found.has(one.column)) continue
    const role = isFree(found, meaning.role) ? meaning.role : secondChoice(meaning.role)
    if (role !== undefined) set(found, one.column, role, 'by-heading', { heading: one.heading })
  }
}

/** A second column of names ("Item", "Description") is a note on the first. */
const secondChoice = (role: Role): Role | undefined => (role === 'item' || role === 'maker' ? 'note' : undefined)

/** "Measured", "Claimed", "Worn" above figures: a column of masses. */
function figuresUnder(one: ColumnFacts): HeadingMeaning | undefined {
  return (massFromOfWord(one.heading) ?? laneOfWord(one.heading)) && share(one.numbers.size + one.masses, one) >= 0.6 && one.filled > 0
    ? { role: 'mass', plainness: 2 }
    : undefined
}

function fitting(one: ColumnFacts, meaning: HeadingMeaning | undefined): HeadingMeaning | undefined {
  return meaning && (one.filled === 0 || fits(one, meaning.role)) ? meaning : undefined
}

function fits(one: ColumnFacts, role: Role): boolean {
  const figures = one.numbers.size + one.masses
  if (role === 'mass' || role === 'line_mass') return share(figures, one) >= 0.4
  if (role === 'pieces') return share(one.numbers.size, one) >= 0.5 && !isSequence(one)
  if (role === 'price') return share(one.numbers.size + one.prices, one) >= 0.5
  if (role === 'unit') return [...one.distinct.keys()].every(unitOfWord)
  if (role === 'item') return share(one.words, one) >= 0.5
  if (role === 'mark' || role === 'status') return one.distinct.size <= 16 && share(one.masses, one) < 0.2 && !holdsLargeNumbers(one)
  if (role === 'link') return share(one.links, one) >= 0.3
  if (role === 'from') return share(one.words, one) >= 0.3 || one.distinct.size <= 3
  return role === 'note' || role === 'weighed_on' || role === 'ignored' || share(one.words, one) >= 0.3
}

const holdsLargeNumbers = (one: ColumnFacts): boolean => [...one.numbers.values()].some((value) => value > 5)

function byCells(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  const open = facts.filter((one) => one.filled > 0 && !found.has(one.column))
  for (const one of open) {
    const role = plainContent(one)
    if (role !== undefined && isFree(found, role)) set(found, one.column, role, isSequence(one) ? 'row-numbers' : 'by-cells')
  }
  const left = (): readonly ColumnFacts[] => open.filter((one) => !found.has(one.column))
  needsAnItem(facts, found)
  for (const one of left()) if (isFree(found, 'area') && looksLikeArea(one)) set(found, one.column, 'area', 'by-cells')
  numbersByCells(left().filter((one) => share(one.numbers.size, one) >= 0.6), found) // prettier-ignore
  for (const one of left())
    if (share(one.words, one) >= 0.5 && one.heading === '' && one.averageLength > 12) set(found, one.column, 'note', 'by-cells')
}

function plainContent(one: ColumnFacts): Role | undefined {
  const every = (test: (text: string) => unknown): boolean => [...one.distinct.keys()].every((text) => test(text) !== undefined)
  if (share(one.links, one) >= 0.5) return 'link'
  if (isSequence(one)) return 'ignored'
  if (share(one.masses, one) >= 0.3) return 'mass'
  if (share(one.prices, one) >= 0.3) return 'price'
  if (one.words > 0 && every(unitOfWord)) return 'unit'
  if (one.words > 0 && every(laneOfWord)) return 'mark'
  return one.words > 0 && every(statusOfWord) ? 'status' : undefined
}

function looksLikeArea(one: ColumnFacts): boolean {
  const known = [...one.distinct].reduce((sum, [text, count]) => sum + (areaOfWord(text) === undefined ? 0 : count), 0)
  return share(known, one) >= 0.6 && one.averageLength < 25 && one.distinct.size <= Math.max(15, one.filled * 0.6)
}

/** Small whole numbers beside larger ones are pieces; the largest are the mass. */
function numbersByCells(columns: readonly ColumnFacts[], found: RoleGuesses): void {
  const small = columns.find((one) => isSmallCount(one))
  const others = columns.filter((one) => one !== small)
  const hasMass = hasRole(found, 'mass') || hasRole(found, 'line_mass') || others.length > 0
  if (small && hasMass && isFree(found, 'pieces')) set(found, small.column, 'pieces', 'by-cells')
  const rest = columns.filter((one) => !found.has(one.column))
  if (!hasRole(found, 'mass') && rest.length > 0) {
    const most = rest.reduce((best, one) => (one.filled > best.filled ? one : best))
    set(found, most.column, 'mass', 'by-cells')
  }
}

function isSmallCount(one: ColumnFacts): boolean {
  const values = [...one.numbers.values()]
  const ones = values.filter((value) => value === 1).length
  return values.every((value) => Number.isInteger(value) && value >= 0 && value <= 60) && ones >= values.length * 0.4
}

/** The column of names: of those with words, the one with the most different ones. */
function needsAnItem(facts: readonly ColumnFacts[], found: RoleGuesses): void {
  if (hasRole(found, 'item')) return
  const may = facts.filter((one) => one.words > 0 && (!found.has(one.column) || mayYield(found, one.column)))
  if (may.length === 0) return
  const score = (one: ColumnFacts): number => one.distinct.size * share(one.words, one) * (one.averageLength > 60 ? 0.3 : 1)
  const best = may.reduce((first, one) => (score(one) > score(first) * 1.05 ? one : first))
  set(found, best.column, 'item', 'by-cells')
}

/** A weaker claim may be given up for the name, without which nothing can be brought in. */
const mayYield = (found: RoleGuesses, column: number): boolean =>
  isGuess(found, column) && ['note', 'ignored'].includes(found.get(column)?.role ?? 'ignored')
