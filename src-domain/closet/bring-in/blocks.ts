/**
 * Blocks: tables that stand side by side in one sheet. A blank column parts two blocks when each side is a table of its own
 * (a column of words and a column of numbers); headings that repeat along one row part them too.
 */
import { headingMeaning } from './headings.ts'
import type { Grid } from './tidy.ts'

export interface Block {
  readonly index: number
  readonly left: number
  /** The column after its last. */
  readonly right: number
}

export function findBlocks(grid: Grid, oneBlock: boolean): readonly Block[] {
  const spans =
    oneBlock || grid.width === 0
      ? [[0, grid.width] as const]
      : joined(grid, filledSpans(grid)).flatMap((span) => partedByHeadings(grid, span))
  return spans.map(([left, right], index) => ({ index, left, right }))
}

type Span = readonly [left: number, right: number]

function filledSpans({ rows, width }: Grid): readonly Span[] {
  const filled = Array.from({ length: width }, (_, column) => rows.some((row) => row[column] !== ''))
  const spans: [number, number][] = []
  filled.forEach((is, column) => {
    if (!is) return
    if (filled[column - 1] && spans.length > 0) spans.at(-1)![1] = column + 1
    else spans.push([column, column + 1])
  })
  return spans.length === 0 ? [[0, width]] : spans
}

/** A span that is no table of its own belongs to the one before it (the first to the one after). */
function joined(grid: Grid, spans: readonly Span[]): readonly Span[] {
  const kept: [number, number][] = []
  for (const [left, right] of spans) {
    const before = kept.at(-1)
    if (before && !(isTable(grid, [left, right]) && isTable(grid, [before[0], before[1]]))) before[1] = right
    else kept.push([left, right])
  }
  return kept
}

const startsAsNumber = /^[~≈€$£]?\s?[+-]?[.,]?\d/u

function isTable({ rows }: Grid, [left, right]: Span): boolean {
  let [hasWords, hasNumbers] = [false, false]
  for (let column = left; column < right; column += 1) {
    const cells = rows.map((row) => row[column] ?? '').filter((cell) => cell !== '')
    const numbers = cells.filter((cell) => startsAsNumber.test(cell)).length
    if (cells.length - numbers >= 2 && cells.length - numbers > numbers) hasWords = true
    else if (numbers >= 2) hasNumbers = true
  }
  return hasWords && hasNumbers
}

/** "Item, Weight, Item, Weight": the first heading comes again. */
function partedByHeadings({ rows }: Grid, [left, right]: Span): readonly Span[] {
  for (const row of rows.slice(0, 12)) {
    const cells = row.slice(left, right)
    const first = cells.find((cell) => cell !== '')
    if (first === undefined || cells.filter((cell) => headingMeaning(cell)).length < 4) continue
    const starts = cells.flatMap((cell, at) => (cell === first ? [left + at] : []))
    if (starts.length > 1) return starts.map((start, at) => [at === 0 ? left : start, starts[at + 1] ?? right])
  }
  return [[left, right]]
}
