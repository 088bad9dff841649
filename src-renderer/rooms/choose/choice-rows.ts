import type { ChosenSet } from '../../../src-main/contract.ts'
import { kitAreas, type KitArea, type Lane } from '../../../src-domain/closet/vocabulary.ts'
import type { ItemLine, Loadout } from '../../../src-domain/loadout/loadout.ts'
import { lineMass } from '../../../src-domain/loadout/mass.ts'
import type { Figure } from '../../../src-domain/figures/figure.ts'

/** A line of the choice beside the loadout as it is. */
export interface ChoiceRow {
  readonly key: string
  readonly change: 'in' | 'out' | 'pieces' | 'same'
  readonly area: KitArea
  readonly itemId: number
  readonly uid: string
  readonly name: string
  readonly lane: Lane
  /** With the choice; of what goes, as it is now. */
  readonly pieces: number
  readonly mass: Figure<'g'> | null
  readonly stays: 'worn' | 'container' | 'pinned' | null
  /** The line there is now. */
  readonly lineId: number | null
}

export function choiceRows(now: Loadout, then: Loadout, chosen: ChosenSet): readonly ChoiceRow[] {
  const isOwn = (line: Loadout['lines'][number]): line is ItemLine => line.kind === 'item' && line.carriedBy === ''
  const nowLines = now.lines.filter(isOwn)
  const thenLines = then.lines.filter(isOwn)
  const at = (lines: readonly ItemLine[], { item, lane }: ItemLine) => lines.find((one) => one.item.id === item.id && one.lane === lane)
  const going = nowLines.filter((line) => at(thenLines, line) === undefined).map((line) => rowOf(line, 'out', line.id, null))
  const coming = thenLines.map((line) => {
    const before = at(nowLines, line)
    const stays = chosen.lines.find(({ itemId, lane }) => itemId === line.item.id && lane === line.lane)?.stays ?? null
    const change = before === undefined ? 'in' : before.pieces === line.pieces ? 'same' : 'pieces'
    return rowOf(line, change, before?.id ?? null, stays)
  })
  const order = { in: 0, pieces: 0, same: 1, out: 2 }
  return [...coming, ...going].sort(
    (a, b) =>
      kitAreas.indexOf(a.area) - kitAreas.indexOf(b.area) || order[a.change] - order[b.change] || a.name.localeCompare(b.name, 'en'),
  )
}

const rowOf = (line: ItemLine, change: ChoiceRow['change'], lineId: number | null, stays: ChoiceRow['stays']): ChoiceRow => ({
  key: `${line.item.id}:${line.lane}`,
  change,
  area: line.item.kitArea,
  itemId: line.item.id,
  uid: line.item.uid,
  name: line.item.name,
  lane: line.lane,
  pieces: line.pieces,
  mass: lineMass(line),
  stays,
  lineId,
})
