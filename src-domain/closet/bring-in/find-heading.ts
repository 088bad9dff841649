/** Which row of a block holds its headings, if any: words without numbers, of which some say a role or stand above columns of numbers. */
import type { Block } from './blocks.ts'
import { headingMeaning } from './headings.ts'
import type { Grid } from './tidy.ts'

/** Headings stand near the top; below that they are items. */
const lookedAt = 15

export function findHeading({ rows }: Grid, block: Block): number | null {
  const cut = rows.map((row) => row.slice(block.left, block.right))
  for (let at = 0, seen = 0; at < cut.length && seen < lookedAt; at += 1) {
    const row = cut[at]!
    if (row.every((cell) => cell === '')) continue
    seen += 1
    if (isHeading(row, cut.slice(at + 1, at + 40))) return at
  }
  return null
}

const hasDigits = /\d/u
const isNumber = /^[~≈€$£]?\s?[+-]?[.,]?\d/u

function isHeading(row: readonly string[], below: readonly (readonly string[])[]): boolean {
  const cells = row.filter((cell) => cell !== '')
  if (cells.length === 0 || cells.some((cell) => isNumber.test(cell) || cell.length > 60)) return false
  const meanings = cells.map(headingMeaning).filter((meaning) => meaning !== undefined)
  const roles = new Set(meanings.map((meaning) => meaning.role))
  if (cells.length === 1) return row.length === 1 && meanings[0]?.plainness === 3
  if (roles.size >= 2 && meanings.length * 2 >= cells.length) return true
  return (
    !cells.some((cell) => hasDigits.test(cell)) && standsAboveNumbers(row, below) && (meanings.length > 0 || cells.length * 2 > row.length)
  )
}

/** A column of numbers whose first cell is a word. */
function standsAboveNumbers(row: readonly string[], below: readonly (readonly string[])[]): boolean {
  return row.some((cell, column) => {
    if (cell === '') return false
    const filled = below.map((other) => other[column] ?? '').filter((other) => other !== '')
    return filled.length >= 2 && filled.filter((other) => isNumber.test(other)).length >= filled.length * 0.6
  })
}
