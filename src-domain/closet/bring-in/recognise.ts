/**
 * Recognising a spreadsheet: cells in, a preview of what they would become out. Pure, total, and repeatable: the same cells, choices and
 * closet give the same preview. Each row of the cells is, in each block, exactly one of taken, left out, or a problem that waits.
 */
import type { DecimalMark } from '../quantity.ts'
import { closetIndex } from './alike.ts'
import { areaWords } from './areas.ts'
import { findBlocks } from './blocks.ts'
import { fieldReader } from './cell-fields.ts'
import type { Choices } from './choices.ts'
import { decimalMark } from './column-facts.ts'
import { compareTotal } from './compare-totals.ts'
import { withoutHiddenSums } from './hidden-sums.ts'
import { loadoutLines, ourMasses } from './lines.ts'
import { makeRow } from './make-row.ts'
import { marksOf } from './marks.ts'
import { massReader } from './mass-cell.ts'
import type { MassReader } from './mass-cell.ts'
import { matchRows } from './match-rows.ts'
import { decideMassIs } from './mass-is.ts'
import type { BlockPlan } from './plan-block.ts'
import { planBlock } from './plan-block.ts'
import type { Counts, KnownItem, MarkMatch, Preview, RowPreview } from './preview.ts'
import type { RawRow } from './raw-rows.ts'
import { rawRows } from './raw-rows.ts'
import type { CountedRow } from './sheet-totals.ts'
import { sheetTotals } from './sheet-totals.ts'
import type { Cells, Grid } from './tidy.ts'
import { tidy } from './tidy.ts'

export function recognise(cells: Cells, choices: Choices, closet: readonly KnownItem[]): Preview {
  const grid = tidy(cells)
  const decimal = choices.decimal ?? decimalMark(grid.rows)
  const reader = massReader(decimal)
  const plans = findBlocks(grid, choices.oneBlock === true).map((block) => planBlock(grid, block, choices, decimal))
  const raws = withoutHiddenSums(plans.map((plan) => rawRows(grid, plan, choices, reader)))
  const all = raws.flat()
  const marks = plans.flatMap((plan, at) => marksOf(plan, raws[at]!, choices))
  const areas = areaWords(all, choices)
  const make = (massIs: 'piece' | 'line'): readonly RowPreview[] =>
    makeAll({ cells, grid, choices, decimal, reader, plans, raws, marks, areas, massIs })
  const first = make('piece')
  const massIs = decideMassIs(all, plans, countedRows(all, first), choices, reader)
  const rows = matchRows(massIs.is === 'piece' ? first : make('line'), closetIndex(closet), choices)
  const known = new Map(closet.map((item) => [item.id, item]))
  const masses = ourMasses(rows, known)
  const asLoadout = choices.asLoadout ?? canBeLoadout(plans, all)
  const byKey = new Map(rows.map((row) => [row.key, row]))
  const totals = sheetTotals(all, plans, countedRows(all, rows), massIs.is, reader)
  return {
    blocks: plans.map(({ index, left, right, heading, columns, leftOut }) => ({ index, left, right, heading, columns, leftOut })),
    rows,
    words: areas.words,
    marks,
    massIs: massIs.is,
    massIsBecause: massIs.because,
    asLoadout,
    loadoutName: choices.loadoutName ?? '',
    lines: asLoadout ? loadoutLines(rows, masses) : [],
    totals: totals.map((total) => compareTotal(total, byKey, masses, massIs.is)),
    counts: countsOf(rows),
  }
}

interface Everything {
  readonly cells: Cells
  readonly grid: Grid
  readonly choices: Choices
  readonly decimal: DecimalMark | undefined
  readonly reader: MassReader
  readonly plans: readonly BlockPlan[]
  readonly raws: readonly (readonly RawRow[])[]
  readonly marks: readonly MarkMatch[]
  readonly areas: ReturnType<typeof areaWords>
  readonly massIs: 'piece' | 'line'
}

function makeAll({ cells, grid, choices, decimal, reader, plans, raws, marks, areas, massIs }: Everything): readonly RowPreview[] {
  const lanes = new Map(marks.map((mark) => [mark.key, mark.lane]))
  return plans.flatMap((plan, at) => {
    const fields = fieldReader(plan, grid.rows, choices, decimal)
    return raws[at]!.map((raw) => makeRow(raw, { plan, reader, fields, areas, marks: lanes, massIs, cells }))
  })
}

/** Item rows as the sheet's sums may count them; rows left out by the person are among them, for the sheet counts them. */
function countedRows(raws: readonly RawRow[], rows: readonly RowPreview[]): readonly CountedRow[] {
  return raws.flatMap((raw, at): CountedRow[] => (raw.kind === 'item' ? [{ raw, area: rows[at]!.area, lane: laneIn(raw, rows[at]!) }] : []))
}

const laneIn = (raw: RawRow, row: RowPreview): CountedRow['lane'] => (raw.choice.take === false ? 'in_pack' : row.lane)

/** A quantity, a mark, or sections named by lanes make a sheet a loadout too. */
function canBeLoadout(plans: readonly BlockPlan[], raws: readonly RawRow[]): boolean {
  return (
    plans.some((plan) => !plan.leftOut && (plan.column('pieces') !== null || plan.column('mark') !== null)) ||
    raws.some((raw) => raw.sectionLane !== null || raw.masses.some((one) => one.lane !== null))
  )
}

function countsOf(rows: readonly RowPreview[]): Counts {
  const count = (fate: RowPreview['fate']): number => rows.filter((row) => row.fate === fate).length
  return {
    newItems: count('new'),
    rowsNew: count('new'),
    rowsAgain: count('again'),
    rowsKnown: count('known'),
    problems: count('problem'),
    leftOut: count('left_out'),
    rows: rows.length,
  }
}
