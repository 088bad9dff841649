/** Cells made plain for reading: a rectangle of trimmed texts with single spaces, without invisible signs or the guard of our own CSV. */
import { unguarded } from '../own-csv.ts'

export type Cells = readonly (readonly string[])[]

export interface Grid {
  readonly rows: readonly (readonly string[])[]
  readonly width: number
}

export function tidy(cells: Cells): Grid {
  const width = cells.reduce((most, row) => Math.max(most, row.length), 0)
  return { width, rows: cells.map((row) => Array.from({ length: width }, (_, column) => tidyText(row[column] ?? ''))) }
}

const isPlain = /^(?:[!-~](?: ?[!-~])*)?$/u

function tidyText(text: string): string {
  const bare = unguarded(text)
  return isPlain.test(bare) ? bare : bare.replace(/[\s\p{Cc}\p{Cf}\u00A0]+/gu, ' ').trim()
}

/** A dash, "n/a" or "tbd" says that nothing is known: the same as an empty cell. */
export const isNothing = (text: string): boolean =>
  /^(?:[-–—−.?*]{0,3}|n\.?\/?a\.?|nil|none|null|nan|tbd|tbc|unknown|#n\/a|#value!|#ref!|#div\/0!)$/iu.test(text)
