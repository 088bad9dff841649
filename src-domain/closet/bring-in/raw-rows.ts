/** The rows of a block, cut into fields but not yet decided: kind, section, name with its count, pieces, masses. */
import type { Lane } from '../vocabulary.ts'
import { lanes } from '../vocabulary.ts'
import type { Choices, RowChoice, SheetMassFrom } from './choices.ts'
import { said } from './choices.ts'
import { cleanName } from './clean-name.ts'
import type { MassCell, MassReader } from './mass-cell.ts'
import type { BlockPlan } from './plan-block.ts'
import { laneOfWord, unitOfWord } from './plain-words.ts'
import type { LeftOutCode } from './preview.ts'
import { kindOfRow } from './row-kind.ts'
import type { Grid } from './tidy.ts'
import { isNothing } from './tidy.ts'

export interface SheetMass {
  readonly cell: MassCell
  /** Of the column; the cell's own mark goes before it. */
  readonly from: SheetMassFrom
  /** Of its column, when the heading names one ("worn" above masses). */
  readonly lane: Lane | null
}

export interface RawRow {
  readonly key: string
  readonly block: number
  readonly row: number
  readonly cells: readonly string[]
  readonly choice: RowChoice
  readonly kind: 'item' | LeftOutCode
  /** Of a total: its words. */
  readonly label: string
  /** Counts the area rows above it, from 0. */
  readonly section: number
  readonly areaWord: string
  readonly sectionLane: Lane | null
  readonly name: string
  readonly countInName: number | null
  /** The text of the pieces cell; '' where there is none. */
  readonly piecesText: string
  readonly masses: readonly SheetMass[]
  /** What the row's mass cells say, measured before claimed before estimated; a problem before nothing. */
  readonly mass: MassCell
  readonly lineMass: MassCell
}

const none: MassCell = { kind: 'none' }

interface Section {
  readonly at: number
  readonly word: string
  readonly lane: Lane | null
}

export function rawRows(grid: Grid, plan: BlockPlan, choices: Choices, reader: MassReader): readonly RawRow[] {
  let section: Section = { at: 0, word: '', lane: null }
  let downWord = ''
  return grid.rows.map((cells, row) => {
    const key = `${plan.index}:${row}`
    const choice = said(choices.rows, key) ?? {}
    const found = kindIn(grid, plan, row, choice)
    if (found.kind === 'area') section = { at: section.at + 1, word: found.word, lane: found.lane }
    const own = areaCell(plan, cells)
    if (own !== '' || found.kind === 'area') downWord = own
    const areaWord = own !== '' ? own : plan.areaFillsDown && downWord !== '' ? downWord : section.word
    return {
      ...fieldsOf(plan, cells, reader),
      key,
      block: plan.index,
      row,
      cells,
      choice,
      kind: found.kind,
      label: found.label,
      section: section.at,
      areaWord,
      sectionLane: section.lane,
    }
  })
}

interface FoundKind {
  readonly kind: RawRow['kind']
  readonly label: string
  readonly word: string
  readonly lane: Lane | null
}

function kindIn(grid: Grid, plan: BlockPlan, row: number, choice: RowChoice): FoundKind {
  const plain = (kind: RawRow['kind'], label = ''): FoundKind => ({ kind, label, word: '', lane: null })
  if (plan.leftOut) return plain('block-left-out')
  if (choice.take === true) return plain('item')
  if (row === plan.heading) return plain('heading')
  const found = kindOfRow(grid.rows, row, plan.kindColumns, plan.heading === null ? undefined : grid.rows[plan.heading])
  if (found.kind === 'area') return { kind: 'area', label: found.word, word: found.word, lane: found.lane ?? null }
  if (found.kind === 'total') return plain('total', found.label)
  if (found.kind !== 'item') return plain(found.kind)
  if (plan.heading !== null && row < plan.heading) return plain('above-heading')
  return plain(isRemark(grid.rows[row]!, plan) ? 'remark' : 'item')
}

/** Words without a thing: no name and no figure, or a sentence where the name should be. */
function isRemark(cells: readonly string[], plan: BlockPlan): boolean {
  const { item, figures } = plan.kindColumns
  const hasFigures = [...figures].some((column) => /\d/u.test(cells[column] ?? ''))
  if (hasFigures || item === null) return false
  const name = cells[item] ?? ''
  return name === '' || name.length > 80 || name.split(' ').length > 9
}

function areaCell(plan: BlockPlan, cells: readonly string[]): string {
  const column = plan.column('area')
  const text = column === null ? '' : (cells[column] ?? '')
  return isNothing(text) || text.length > 60 ? '' : text
}

function fieldsOf(
  plan: BlockPlan,
  cells: readonly string[],
  reader: MassReader,
): Pick<RawRow, 'name' | 'countInName' | 'piecesText' | 'masses' | 'mass' | 'lineMass'> {
  const cell = (column: number | null): string => (column === null ? '' : (cells[column] ?? ''))
  const split = splitMass(cell(plan.column('item')), plan, cells)
  const clean = cleanName(split.name)
  const masses = massesOf(plan, cells, reader, split.mass)
  const [line] = plan.columnsOf('line_mass')
  const pieces = cell(plan.column('pieces'))
  return {
    name: isNothing(clean.name) ? '' : clean.name,
    countInName: clean.pieces,
    piecesText: isNothing(pieces) ? '' : pieces,
    masses,
    mass: foremost(masses),
    lineMass: line ? reader.one(cell(line.column), line.unit ?? 'g') : none,
  }
}

function massesOf(plan: BlockPlan, cells: readonly string[], reader: MassReader, inName: string): readonly SheetMass[] {
  const unit = unitOfWord(cells[plan.column('unit') ?? -1] ?? '')
  const single = plan.columnsOf('mass').map((one): SheetMass => {
    const text = cells[one.column] ?? ''
    return { cell: reader.one(text, unit ?? one.unit ?? 'g'), from: one.massFrom ?? 'claimed', lane: laneOfHeading(one.heading) }
  })
  const [pounds, ounces] = [plan.columnsOf('pounds')[0], plan.columnsOf('ounces')[0]]
  if (pounds || ounces) {
    const pair = reader.poundsAndOunces(pounds ? (cells[pounds.column] ?? '') : '', ounces ? (cells[ounces.column] ?? '') : '')
    return [{ cell: pair, from: ounces?.massFrom ?? 'claimed', lane: null }, ...single]
  }
  return inName === '' ? single : [{ cell: reader.one(inName, 'g'), from: 'claimed', lane: null }]
}

export const laneOfHeading = (heading: string): Lane | null => lanes.find((lane) => lane === laneOfWord(heading)) ?? null

/** "Tarp 268 g" in a list that has no column of masses: the end of the name is the mass. */
const endsInMass =
  /^(?<name>.*?\p{L}.*?)[ ,:;=–-]*[([]?(?<mass>[~≈]?\d[\d.,]*(?: ?\d\/\d)? ?(?:g|gr|grams?|kg|oz|ounces?|lbs?|pounds?)\b(?: ?\d[\d.]* ?oz)?)[)\]]?$/iu

function splitMass(text: string, plan: BlockPlan, cells: readonly string[]): { readonly name: string; readonly mass: string } {
  const mayHold = plan.massesAreFew && text.length <= 120 && [...plan.kindColumns.masses].every((column) => isNothing(cells[column] ?? ''))
  const found = mayHold ? endsInMass.exec(text) : null
  return { name: found?.groups?.['name'] ?? text, mass: found?.groups?.['mass'] ?? '' }
}

const order: readonly SheetMassFrom[] = ['measured', 'claimed', 'estimated']
export const originOf = ({ cell, from }: SheetMass): SheetMassFrom => (cell.kind === 'mass' && cell.origin !== null ? cell.origin : from)

function foremost(masses: readonly SheetMass[]): MassCell {
  const doubtful = masses.find((one) => one.cell.kind === 'problem')
  if (doubtful) return doubtful.cell
  for (const origin of order) {
    const found = masses.find((one) => one.cell.kind === 'mass' && originOf(one) === origin)
    if (found) return found.cell
  }
  return (masses.find((one) => one.cell.kind === 'zero') ?? masses[0])?.cell ?? none
}
