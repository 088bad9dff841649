/** One block understood: its headings, the role of each column, the unit and source of each column of mass. */
import type { DecimalMark } from '../quantity.ts'
import type { Block } from './blocks.ts'
import type { Choices, Role } from './choices.ts'
import { said } from './choices.ts'
import type { ColumnFacts } from './column-facts.ts'
import { columnFacts } from './column-facts.ts'
import { findHeading } from './find-heading.ts'
import { guessMassFrom, guessUnit } from './mass-units.ts'
import type { BlockPreview, ColumnPreview } from './preview.ts'
import { guessRoles } from './roles.ts'
import type { KindColumns } from './row-kind.ts'
import { isTotalLabel } from './row-kind.ts'
import type { Grid } from './tidy.ts'

export interface BlockPlan extends BlockPreview {
  readonly kindColumns: KindColumns
  /** The area column is filled on the first row of each group only. */
  readonly areaFillsDown: boolean
  /** No column of masses, or one that is mostly empty: masses may stand in the names. */
  readonly massesAreFew: boolean
  column(role: Role): number | null
  columnsOf(role: Role): readonly ColumnPreview[]
}

export function planBlock(grid: Grid, block: Block, choices: Choices, decimal: DecimalMark | undefined): BlockPlan {
  const heading = headingOf(grid, block, choices)
  const facts = factsOf(grid, block, heading, decimal)
  const guesses = guessRoles(facts, choices)
  const masses = facts.filter(
    (one) => ['mass', 'line_mass'].includes(guesses.get(one.column)!.role) || guesses.get(one.column)!.because.code === 'same-as-column',
  )
  const columns = facts.map((one) => columnOf(one, guesses.get(one.column)!, masses, choices))
  const columnsOf = (role: Role): readonly ColumnPreview[] => columns.filter((one) => one.role === role)
  const column = (role: Role): number | null => columnsOf(role)[0]?.column ?? null
  return {
    index: block.index,
    left: block.left,
    right: block.right,
    heading,
    columns,
    leftOut: choices.blocksLeftOut?.includes(block.index) === true,
    kindColumns: kindColumnsOf(block, columns),
    areaFillsDown: fillsDown(facts, column('area'), column('item')),
    massesAreFew: areFew(facts, columns),
    column,
    columnsOf,
  }
}

function headingOf(grid: Grid, block: Block, choices: Choices): number | null {
  const person = said(choices.heading, block.index)
  if (person === undefined) return findHeading(grid, block)
  return person !== null && grid.rows[person] ? person : null
}

/** Facts over the rows below the headings, sums left out: they would speak for the wrong unit. */
function factsOf(grid: Grid, block: Block, heading: number | null, decimal: DecimalMark | undefined): readonly ColumnFacts[] {
  const body = grid.rows.slice(heading === null ? 0 : heading + 1).filter((row) => !row.slice(block.left, block.right).some(isTotalLabel))
  return Array.from({ length: block.right - block.left }, (_, at) => {
    const column = block.left + at
    return columnFacts(body, column, heading === null ? '' : (grid.rows[heading]![column] ?? ''), decimal)
  })
}

function columnOf(
  one: ColumnFacts,
  guess: { role: Role; because: ColumnPreview['because'] },
  masses: readonly ColumnFacts[],
  choices: Choices,
): ColumnPreview {
  const isMass = guess.role === 'mass' || guess.role === 'line_mass'
  const isPair = guess.role === 'ounces'
  const unit = isMass ? guessUnit(one, masses, choices) : null
  const from = isMass || isPair ? guessMassFrom(one, choices) : null
  return {
    column: one.column,
    heading: one.heading,
    role: guess.role,
    because: guess.because,
    unit: unit?.unit ?? (isPair ? 'oz' : guess.role === 'pounds' ? 'lb' : null),
    unitBecause: unit?.because ?? null,
    unitsInCells: isMass && one.masses > 0,
    massFrom: from?.from ?? null,
    massFromBecause: from?.because ?? null,
  }
}

function kindColumnsOf(block: Block, columns: readonly ColumnPreview[]): KindColumns {
  const figures = new Set(
    columns.filter((one) => ['mass', 'line_mass', 'pounds', 'ounces', 'pieces', 'price'].includes(one.role)).map((one) => one.column),
  )
  const masses = columns.filter((one) => ['mass', 'pounds', 'ounces'].includes(one.role)).map((one) => one.column)
  const isPair = columns.some((one) => one.role === 'pounds')
  return {
    left: block.left,
    right: block.right,
    item: columns.find((one) => one.role === 'item')?.column ?? null,
    figures,
    masses: isPair ? masses.slice(0, 2) : masses.slice(0, 1),
    hasAreaColumn: columns.some((one) => one.role === 'area'),
  }
}

function fillsDown(facts: readonly ColumnFacts[], area: number | null, item: number | null): boolean {
  const filled = (column: number | null): number => facts.find((one) => one.column === column)?.filled ?? 0
  return area !== null && filled(area) > 0 && filled(area) < filled(item) * 0.75
}

function areFew(facts: readonly ColumnFacts[], columns: readonly ColumnPreview[]): boolean {
  const filled = (...roles: readonly Role[]): number =>
    Math.max(0, ...columns.filter((one) => roles.includes(one.role)).map((one) => facts[one.column - columns[0]!.column]!.filled))
  return filled('mass', 'line_mass', 'pounds', 'ounces') < filled('item') * 0.3
}
