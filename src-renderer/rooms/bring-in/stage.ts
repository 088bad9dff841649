/** From an accepted plan to the rows that are staged: each new item once, each further lane of it by the row that made it, each known thing by its id. */
import type { InputOf } from '../../../src-main/contract.ts'
import type { BringInPlan, NewItem, NewLine } from '../../../src-domain/closet/bring-in/accept.ts'

export type StagedRow = InputOf<'bringIn.stage'>['rows'][number]

/** Rows go over in parts of this many. */
export const stagedAtOnce = 500

/** `source`: who says what is claimed, shown beside it ("gear 2024.csv"). */
export function stagedRows(plan: BringInPlan, source: string): readonly StagedRow[] {
  const lines = linesByItem(plan.loadout?.lines ?? [])
  const rows: StagedRow[] = []
  for (const item of plan.items) {
    const made = rows.length
    const [first, ...more] = lines.get(item.row) ?? []
    rows.push({ itemId: null, item: itemInput(item, source), set: item.set, links: linksOf(item), line: lineInput(first) })
    for (const line of more) rows.push({ itemId: null, item: null, asRow: made, line: lineInput(line) })
  }
  for (const line of plan.loadout?.lines ?? [])
    if (line.itemId !== null) rows.push({ itemId: line.itemId, item: null, line: lineInput(line) })
  return rows
}

function linesByItem(lines: readonly NewLine[]): ReadonlyMap<string, readonly NewLine[]> {
  const found = new Map<string, NewLine[]>()
  for (const line of lines) {
    if (line.newItem === null) continue
    const before = found.get(line.newItem)
    if (before) before.push(line)
    else found.set(line.newItem, [line])
  }
  return found
}

const lineInput = (line: NewLine | undefined): StagedRow['line'] => (line ? { lane: line.lane, pieces: line.pieces } : null)

/** What is no address of the web stays in the note, so that nothing of the sheet is lost. */
const isAddress = (link: string): boolean => /^https?:\/\//iu.test(link) && URL.canParse(link) && link.length <= 2000
const linksOf = (item: NewItem): { url: string; label: string }[] => item.links.filter(isAddress).slice(0, 100).map((url) => ({ url, label: '' })) // prettier-ignore

function itemInput(item: NewItem, source: string): NonNullable<StagedRow['item']> {
  const note = [item.note, ...item.links.filter((link) => !isAddress(link))].filter((part) => part !== '').join('\n')
  return {
    name: item.name,
    kitArea: item.kitArea,
    maker: item.maker,
    pieces: item.pieces,
    status: item.status,
    claimedMg: item.claimed_mg,
    claimedBy: item.claimed_mg === null ? '' : source.slice(0, 300),
    estimatedMg: item.estimated_mg,
    weighedMg: item.measured_mg,
    ...(item.weighedOn === null ? {} : { weighedOn: item.weighedOn }),
    usualLane: item.usualLane,
    priceMinor: item.priceMinor,
    currency: item.currency,
    note: note.slice(0, 20_000),
    duties: item.duties.map((duty) => ({ duty, shared: false })),
    tags: [...item.tags],
  }
}
