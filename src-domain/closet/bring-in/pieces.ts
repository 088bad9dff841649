/** How many pieces a row stands for, and whether its mass is of one of them or of all. */
import { parsePieces } from '../quantity.ts'
import type { RawRow } from './raw-rows.ts'

export interface RowPieces {
  readonly pieces: number
  /** Pieces that the row's mass cell weighs together. */
  readonly inCell: number
  /** How often the sheet counts the cell in its own sums. */
  readonly times: number
  readonly staysHome: boolean
  readonly isReadable: boolean
}

/** `Stakes (8)` with 84 is eight that weigh 84 together; a pieces column counts the cell as often as it says, unless masses are of the whole line. */
export function piecesOf(raw: RawRow, massIs: 'piece' | 'line'): RowPieces {
  const staysHome = /^0+(?:[.,]0+)?$/u.test(raw.piecesText)
  const read = raw.piecesText === '' || staysHome ? null : parsePieces(raw.piecesText)
  const isReadable = read === null || read.ok || raw.choice.pieces !== undefined
  const cell = raw.choice.pieces ?? (read?.ok ? read.value : 1)
  const count = raw.countInName ?? 1
  const saysTwice = count > 1 && cell === count
  const pieces = Math.min(saysTwice || cell === 1 ? Math.max(cell, count) : cell * count, 100_000)
  const inCell = massIs === 'line' ? pieces : saysTwice ? 1 : count
  return { pieces, inCell, times: staysHome ? 0 : massIs === 'line' ? 1 : cell, staysHome, isReadable }
}
