import type { Asked, Check, Finding, Found } from './check.ts'
import { beforeDark } from './before-dark.ts'
import { bodyLoad } from './body-load.ts'
import { foodEnergy } from './food-energy.ts'
import { rules } from './rules.ts'
import { packLoad } from './pack-load.ts'
import { room } from './room.ts'
import { power } from './power.ts'
import { light } from './light.ts'
import { sleepWarmth } from './sleep-warmth.ts'
import { groundWarmth } from './ground-warmth.ts'
import { walkWarmth } from './walk-warmth.ts'
import { campWarmth } from './camp-warmth.ts'
import { stopWarmth } from './stop-warmth.ts'
import { rainCover } from './rain-cover.ts'
import { legCover } from './leg-cover.ts'
import { dryStore } from './dry-store.ts'
import { gasCold } from './gas-cold.ts'
import { fuel } from './fuel.ts'
import { waterTreatment } from './water-treatment.ts'
import { waterCarry } from './water-carry.ts'
import { duties } from './duties.ts'
import { safety } from './safety.ts'

/** All checks, in the order of DESIGN.md's table. They keep their places whatever they find. */
export const checks: readonly Check[] = [
  sleepWarmth,
  groundWarmth,
  walkWarmth,
  campWarmth,
  stopWarmth,
  rainCover,
  legCover,
  dryStore,
  waterCarry,
  waterTreatment,
  foodEnergy,
  fuel,
  gasCold,
  light,
  power,
  room,
  packLoad,
  bodyLoad,
  beforeDark,
  rules,
  safety,
  duties,
]

export interface Row {
  readonly check: Check
  readonly finding: Finding
}

/** Asks every check; without a brief only those that read nothing but the loadout. */
export const findAll = (asked: Asked, hasBrief = true): readonly Row[] =>
  checks.filter((check) => hasBrief || check.withoutBrief).map((check) => ({ check, finding: check.find(asked) }))

export interface Tally {
  readonly short: number
  readonly tight: number
  readonly unknown: number
  readonly enough: number
  /** Counted apart. */
  readonly notAsked: number
}

export function tallyOf(rows: readonly Row[]): Tally {
  const count = (state: Finding['state']) => rows.filter(({ finding }) => finding.state === state).length
  return { short: count('short'), tight: count('tight'), unknown: count('unknown'), enough: count('enough'), notAsked: count('not-asked') }
}

export const isFound = (finding: Finding): finding is Found => 'have' in finding

/** The closet as far as mending reads it. */
export interface ShelfFacts {
  readonly id: readonly number[]
  readonly massMg: readonly (number | null)[]
  readonly pieces: readonly number[]
  readonly status: readonly string[]
  readonly archived: readonly boolean[]
  /** Codes joined by a space; a shared one ends in `*`. */
  readonly duties: readonly string[]
}

/**
 * Ids of what would mend a check, lightest first (all its pieces), unknown masses last: items owned or wished for that serve one of the
 * duties it misses, or, where it names none, one of the duties it reads.
 */
export function mends({ check, finding }: Row, shelf: ShelfFacts): readonly number[] {
  const wanted = new Set(missedDuties(finding) ?? check.duties)
  const massOf = (row: number) => (shelf.massMg[row] == null ? Infinity : shelf.massMg[row] * shelf.pieces[row]!)
  return shelf.id
    .map((_, row) => row)
    .filter((row) => mayGo(shelf, row) && serves(shelf.duties[row]!, wanted))
    .sort((a, b) => (massOf(a) === massOf(b) ? a - b : massOf(a) - massOf(b)))
    .map((row) => shelf.id[row]!)
}

function missedDuties(finding: Finding): readonly string[] | null {
  const named = isFound(finding) ? finding.saying.filter(({ code }) => code !== 'struck').map(({ facts }) => facts?.duty) : []
  const codes = named.filter((duty) => typeof duty === 'string')
  return codes.length === 0 ? null : codes
}

const mayGo = (shelf: ShelfFacts, row: number): boolean =>
  !shelf.archived[row] && (shelf.status[row] === 'owned' || shelf.status[row] === 'wished')

const serves = (joined: string, wanted: ReadonlySet<string>): boolean =>
  joined !== '' && joined.split(' ').some((word) => wanted.has(word.endsWith('*') ? word.slice(0, -1) : word))
