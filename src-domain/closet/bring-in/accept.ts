/** What an accepted preview writes: new items in storage units, rows that are things already owned, and the lines of the loadout. */
import type { KitArea, Lane, Status } from '../vocabulary.ts'
import { ownerOf } from './lines.ts'
import type { Preview, RowPreview } from './preview.ts'
import { isTaken } from './preview.ts'

export interface NewItem {
  /** Row of the sheet it comes from, the key that lines name it by. */
  readonly row: string
  readonly name: string
  readonly maker: string
  readonly kitArea: KitArea
  /** All pieces of all rows that are this thing. */
  readonly pieces: number
  readonly status: Status
  /** Of one piece: the foremost of the three below. */
  readonly mass_mg: number | null
  readonly origin: 'measured' | 'claimed' | 'estimated' | 'none'
  readonly measured_mg: number | null
  readonly claimed_mg: number | null
  readonly estimated_mg: number | null
  readonly weighedOn: string | null
  readonly usualLane: Lane
  readonly duties: readonly string[]
  readonly set: string
  readonly tags: readonly string[]
  readonly links: readonly string[]
  readonly priceMinor: number | null
  readonly currency: string
  readonly note: string
}

export interface KnownMatch {
  readonly row: string
  readonly itemId: number
}

export interface NewLine {
  /** One of the two: a new item by its row, or an item of the closet. */
  readonly newItem: string | null
  readonly itemId: number | null
  readonly lane: Lane
  readonly pieces: number
}

export interface BringInPlan {
  readonly items: readonly NewItem[]
  readonly matches: readonly KnownMatch[]
  /** null: the sheet is no loadout. */
  readonly loadout: { readonly name: string; readonly lines: readonly NewLine[] } | null
  /** Rows that still wait and are not brought in. */
  readonly waiting: readonly string[]
}

export function accept(preview: Preview): BringInPlan {
  const taken = preview.rows.filter((row) => isTaken(row.fate))
  const pieces = new Map<string, number>()
  for (const row of taken) pieces.set(ownerOf(row), (pieces.get(ownerOf(row)) ?? 0) + row.pieces)
  return {
    items: taken.filter((row) => row.fate === 'new').map((row) => itemOf(row, pieces.get(row.key)!)),
    matches: taken.flatMap((row) => (row.fate === 'known' ? [{ row: row.key, itemId: row.match!.id }] : [])),
    loadout: preview.asLoadout ? { name: preview.loadoutName, lines: linesOf(preview) } : null,
    waiting: preview.rows.filter((row) => row.fate === 'problem').map((row) => row.key),
  }
}

const mostPieces = 100_000

function linesOf(preview: Preview): readonly NewLine[] {
  return preview.lines.map(({ row, itemId, lane, pieces }) => ({
    newItem: itemId === null ? row : null,
    itemId,
    lane,
    pieces: Math.min(pieces, mostPieces),
  }))
}

function itemOf(row: RowPreview, pieces: number): NewItem {
  const of = (origin: string): number | null => row.masses.find((mass) => mass.origin === origin)?.piece_mg ?? null
  const [first] = row.masses
  return {
    row: row.key,
    name: row.name,
    maker: row.maker,
    kitArea: row.area,
    pieces: Math.min(pieces, mostPieces),
    status: row.status,
    mass_mg: first?.piece_mg ?? null,
    origin: first?.origin ?? 'none',
    measured_mg: of('measured'),
    claimed_mg: of('claimed'),
    estimated_mg: of('estimated'),
    weighedOn: row.weighedOn,
    usualLane: row.lane ?? 'in_pack',
    duties: row.duties,
    set: row.set,
    tags: row.tags,
    links: row.links,
    priceMinor: row.price?.amountMinor ?? null,
    currency: row.price?.currency ?? '',
    note: row.note,
  }
}
