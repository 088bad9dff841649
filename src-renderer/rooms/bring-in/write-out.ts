/** The closet as our own CSV (DESIGN.md, CSV of ours), handed over as a download: it does not leave the window by any other way. */
import { writeClosetCsv, type OwnItem } from '../../../src-domain/closet/own-csv.ts'
import { dutyCodes } from '../../../src-domain/closet/browse.ts'
import { band } from '../../../src-domain/figures/figure.ts'
import { massAt } from '../../../src-domain/loadout/gather.ts'
import type { ClosetColumns, KitSet } from '../../../src-main/contract.ts'

/** What was put away stays out. */
export function ownItems(columns: ClosetColumns, sets: readonly KitSet[]): readonly OwnItem[] {
  const setNames = new Map(sets.map((set) => [set.id, set.name]))
  return columns.id.flatMap((_, row): OwnItem[] => (columns.archived[row] ? [] : [itemAt(columns, row, setNames)]))
}

function itemAt(columns: ClosetColumns, row: number, setNames: ReadonlyMap<number, string>): OwnItem {
  const mass = massAt(columns, row)
  const setId = columns.setId[row] ?? null
  return {
    status: columns.status[row]!,
    lastWeighedOn: columns.weighedOn[row] ?? null,
    kitArea: columns.kitArea[row]!,
    name: columns.name[row]!,
    maker: columns.maker[row]!,
    pieces: columns.pieces[row]!,
    pieceMass_mg: columns.massMg[row] ?? null,
    massFrom: columns.massFrom[row]!,
    band_mg: mass === null ? null : Math.round(band(mass) * 1000),
    duties: dutyCodes(columns.duties[row]!),
    set: setId === null ? '' : (setNames.get(setId) ?? ''),
    note: columns.note[row]!,
  }
}

export function download(text: string, name: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The browser has taken hold of it by the next turn; a minute is far on the safe side.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

export const closetCsv = (columns: ClosetColumns, sets: readonly KitSet[]): string => writeClosetCsv(ownItems(columns, sets))
