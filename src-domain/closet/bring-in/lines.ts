/** The loadout a sheet also is: lines by item and lane, pieces added up, known things with the closet's own mass. */
import type { Lane } from '../vocabulary.ts'
import type { KnownItem, LoadoutLine, RowPreview } from './preview.ts'
import { isTaken } from './preview.ts'

export interface OurMasses {
  /** All pieces of the row as they will weigh here: the closet's mass for what is known, the first row's for more of the same. */
  of(row: RowPreview): number
}

export function ourMasses(rows: readonly RowPreview[], closet: ReadonlyMap<number, KnownItem>): OurMasses {
  const byKey = new Map(rows.map((row) => [row.key, row]))
  const piece = (row: RowPreview): number => {
    const known = row.fate === 'known' ? closet.get(row.match!.id)?.mass_mg : undefined
    const first = row.fate === 'again' ? byKey.get(row.match!.row) : undefined
    return known ?? first?.masses[0]?.piece_mg ?? row.masses[0]?.piece_mg ?? 0
  }
  return { of: (row) => (isTaken(row.fate) ? piece(row) * row.pieces : 0) }
}

export function loadoutLines(rows: readonly RowPreview[], masses: OurMasses): readonly LoadoutLine[] {
  const lines = new Map<string, LoadoutLine>()
  for (const row of rows) {
    if (!isTaken(row.fate) || row.lane === null) continue
    const key = `${ownerOf(row)} ${row.lane}`
    const before = lines.get(key)
    lines.set(key, before ? added(before, row, masses.of(row)) : lineOf(row, row.lane, masses.of(row)))
  }
  return [...lines.values()]
}

const added = (line: LoadoutLine, row: RowPreview, mass_mg: number): LoadoutLine => ({
  ...line,
  rows: [...line.rows, row.key],
  pieces: line.pieces + row.pieces,
  mass_mg: line.mass_mg + mass_mg,
})

function lineOf(row: RowPreview, lane: Lane, mass_mg: number): LoadoutLine {
  const isKnown = row.fate === 'known'
  return {
    row: row.fate === 'again' ? row.match!.row : row.key,
    rows: [row.key],
    itemId: isKnown ? row.match!.id : null,
    name: isKnown ? row.match!.name : row.name,
    area: row.area,
    lane,
    pieces: row.pieces,
    mass_mg,
  }
}

/** Whose line it is: the closet's item, or the first row of a new one. */
export const ownerOf = (row: RowPreview): string =>
  row.fate === 'known' ? `#${row.match!.id}` : row.fate === 'again' ? row.match!.row : row.key
