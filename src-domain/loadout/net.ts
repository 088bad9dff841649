import type { Figure, Given, Source } from '../figures/figure.ts'
import type { KitItem } from './loadout.ts'
import { isCarriedByAnother, milligrams, piecesOf, thingOf } from './mass.ts'
import type { WeighedLine } from './totals.ts'

/**
 * The difference of two lists of lines, worked on what differs: what both hold cancels exactly, its doubt included
 * (provisions.md 9.3). An item in both counts by its net pieces, so that only their doubt is left.
 */
export interface Net {
  /** after − before, g. */
  readonly figure: Figure<'g'>
  readonly massMg: number
  /** Names of things that differ and whose mass is not known: the difference says so. */
  readonly withoutMass: readonly string[]
  /** Nothing differs: not a gram and not a doubt. */
  readonly same: boolean
}

interface Part {
  readonly name: string
  readonly massMg: number
  readonly figure: Figure<'g'> | null
}

export function netOf(name: string, before: readonly WeighedLine[], after: readonly WeighedLine[]): Net {
  const groups = new Map<string, { before: WeighedLine[]; after: WeighedLine[] }>()
  for (const one of before) groupOf(groups, one).before.push(one)
  for (const one of after) groupOf(groups, one).after.push(one)
  const parts = [...groups.values()].map((group) => partOf(group.before, group.after)).filter((part) => part !== null)
  return summed(name, parts)
}

function groupOf(groups: Map<string, { before: WeighedLine[]; after: WeighedLine[] }>, one: WeighedLine) {
  const thing = thingOf(one.line)
  const group = groups.get(thing) ?? { before: [], after: [] }
  groups.set(thing, group)
  return group
}

/** One thing's difference; null: none. */
function partOf(before: readonly WeighedLine[], after: readonly WeighedLine[]): Part | null {
  const { name } = (before[0] ?? after[0])!
  const item = commonItem([...before, ...after])
  if (item !== null) return itemPart(name, item, piecesHere(after) - piecesHere(before))
  return leafPart(name, before, after)
}

/** The item behind all of the lines, if it weighs the same in each. */
function commonItem(lines: readonly WeighedLine[]): KitItem | null {
  const [first] = lines
  if (first?.line.kind !== 'item') return null
  const { item } = first.line
  return lines.every(({ line }) => line.kind === 'item' && isAlike(line.item.mass, item.mass)) ? item : null
}

const isAlike = (a: Figure | null, b: Figure | null): boolean =>
  a === b || (a !== null && b !== null && a.value === b.value && JSON.stringify(a.shares) === JSON.stringify(b.shares))

/** Pieces that weigh here: what another carries weighs nothing. */
const piecesHere = (lines: readonly WeighedLine[]): number =>
  lines.reduce((sum, { line }) => sum + (line.kind === 'item' && !isCarriedByAnother(line) ? line.pieces : 0), 0)

function itemPart(name: string, { mass }: KitItem, pieces: number): Part | null {
  if (pieces === 0) return null
  if (mass === null) return { name, massMg: 0, figure: null }
  return { name, massMg: milligrams(mass.value) * pieces, figure: piecesOf(mass, pieces) }
}

function leafPart(name: string, before: readonly WeighedLine[], after: readonly WeighedLine[]): Part | null {
  if ([...before, ...after].some(({ mass }) => mass === null)) return bothUnknown(before, after) ? null : { name, massMg: 0, figure: null }
  const leaves = new Map<string, number>()
  let massMg = 0
  const add = (lines: readonly WeighedLine[], sign: 1 | -1) => {
    for (const { mass } of lines) {
      massMg += sign * milligrams(mass!.value)
      for (const [leaf, share] of Object.entries(mass!.shares)) leaves.set(leaf, (leaves.get(leaf) ?? 0) + sign * share)
    }
  }
  add(after, 1)
  add(before, -1)
  const shares = Object.fromEntries([...leaves].filter(([, share]) => share !== 0))
  if (massMg === 0 && Object.keys(shares).length === 0) return null
  return { name, massMg, figure: figureOf(name, massMg, shares, []) }
}

/** A supply whose amount follows the brief in both, and the brief does not say enough yet: the same nothing in both. */
function bothUnknown(before: readonly WeighedLine[], after: readonly WeighedLine[]): boolean {
  const rule = ({ line, mass }: WeighedLine) =>
    mass === null && line.kind === 'supply' && line.amountFrom === 'brief' ? JSON.stringify(line.rule ?? line.supply.rule) : null
  const [a, b] = [before, after].map((lines) => (lines.length === 1 ? rule(lines[0]!) : null))
  return a !== null && a !== undefined && a === b
}

function summed(name: string, parts: readonly Part[]): Net {
  const shares: Record<string, number> = {}
  const given: Given[] = []
  let massMg = 0
  for (const { name: part, massMg: partMg, figure } of parts) {
    if (figure === null) continue
    massMg += partMg
    for (const leaf in figure.shares) shares[leaf] = (shares[leaf] ?? 0) + figure.shares[leaf]!
    given.push({ name: part, figure })
  }
  const withoutMass = parts.filter(({ figure }) => figure === null).map((part) => part.name)
  return { figure: figureOf(name, massMg, shares, given), massMg, withoutMass, same: parts.length === 0 }
}

const netting: Source = { cite: 'JCGM 100:2008, 5.2: what two figures have in common cancels in their difference', known: 'memory' }

const figureOf = (name: string, massMg: number, shares: Readonly<Record<string, number>>, given: readonly Given[]): Figure<'g'> => ({
  value: (massMg / 1000) as Figure<'g'>['value'],
  unit: 'g',
  origin: 'worked',
  shares,
  working: { name, formula: 'sum of what differs', source: netting, cautions: [], given },
})
