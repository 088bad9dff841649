/**
 * The door list: what is confirmed before leaving, in the order in which it is asked.
 *   first: what was missed on an earlier trip, or was missing at the door and then found · kit areas in their order · on me
 *   · what another carries, under that name · last: what can only be packed at the end
 *   last by rule: food, water, what is charged over night (a cell that is recharged, in daily use or giving power), what is needed in the morning;
 *   the person may place any line otherwise
 * What is wished for, sold, lent away, retired or lost is not there: it is named apart and never ready.
 * Source: DESIGN.md, LOOK.md (choices).
 */
import { kitAreas, type KitArea, type Status } from '../closet/vocabulary.ts'
import type { DoorState } from '../trips/record.ts'
import { traitNumber, traitText, type KitItem, type Line, type Loadout } from './loadout.ts'
import { areaOf, isCarriedByAnother, nameOf } from './mass.ts'
import { isThere } from './packed.ts'

export interface DoorMark {
  readonly id: number
  /** null: a last thing of the person's own words. */
  readonly lineId: number | null
  readonly name: string
  readonly state: DoorState
  readonly last: boolean | null
  readonly note: string
}

export interface MissedBefore {
  readonly itemId: number
  readonly tripName: string
  readonly startsOn: string | null
  readonly month: string | null
  readonly how: 'missed' | 'found'
  readonly note: string
}

/** Why it comes last: out of the fridge, from the tap, off the charger, after the morning, or because the person said so. */
export type LastBecause = 'food' | 'water' | 'charged' | 'morning' | 'said'

export interface DoorRow {
  /** `line:<id>` or `own:<id>`. */
  readonly key: string
  /** null: in the person's own words. */
  readonly line: Line | null
  readonly ownId: number | null
  readonly name: string
  readonly state: DoorState
  readonly last: LastBecause | null
  /** Newest first. */
  readonly before: readonly MissedBefore[]
  readonly note: string
}

export interface DoorPart {
  readonly kind: 'area' | 'on-me' | 'other' | 'last'
  readonly area: KitArea | null
  /** Who carries it; empty: the walker. */
  readonly who: string
  readonly rows: readonly DoorRow[]
}

export interface NotThere {
  readonly line: Line
  readonly name: string
  readonly status: Exclude<Status, 'owned'>
}

export interface DoorSheet {
  readonly first: readonly DoorRow[]
  readonly parts: readonly DoorPart[]
  readonly notThere: readonly NotThere[]
  /** Every row once, in the order in which it is asked. */
  readonly rows: readonly DoorRow[]
}

export function doorSheet(loadout: Loadout, marks: readonly DoorMark[], missed: readonly MissedBefore[]): DoorSheet {
  const ofLine = new Map(marks.flatMap((mark) => (mark.lineId === null ? [] : [[mark.lineId, mark] as const])))
  const rows = loadout.lines.filter(isThere).map((line) => rowOf(line, ofLine.get(line.id), missed))
  const own = marks.filter(({ lineId }) => lineId === null).map(ownRow)
  const parts = partsOf([...rows, ...own])
  const first = rows.filter(({ before }) => before.length > 0)
  const keys = new Set(first.map(({ key }) => key))
  return {
    first,
    parts,
    notThere: loadout.lines.flatMap(notThere),
    rows: [...first, ...parts.flatMap((part) => part.rows).filter(({ key }) => !keys.has(key))],
  }
}

function rowOf(line: Line, mark: DoorMark | undefined, missed: readonly MissedBefore[]): DoorRow {
  const byRule = isCarriedByAnother(line) ? null : lastByRule(line)
  const last = mark?.last === null || mark === undefined ? byRule : mark.last ? (byRule ?? 'said') : null
  return {
    key: `line:${line.id}`,
    line,
    ownId: null,
    name: nameOf(line),
    state: mark?.state ?? 'open',
    last,
    before: line.kind === 'item' ? missed.filter(({ itemId }) => itemId === line.item.id) : [],
    note: mark?.note ?? '',
  }
}

const ownRow = (mark: DoorMark): DoorRow => ({
  key: `own:${mark.id}`,
  line: null,
  ownId: mark.id,
  name: mark.name,
  state: mark.state,
  last: 'said',
  before: [],
  note: mark.note,
})

function lastByRule(line: Line): LastBecause | null {
  if (line.kind === 'item') return isChargedDaily(line.item) ? 'charged' : isOfTheMorning(line.item) ? 'morning' : null
  if (line.supply.kitArea === 'food') return 'food'
  return line.supply.kitArea === 'water' && line.supply.unit === 'ml' ? 'water' : null
}

/** A cell that is recharged, in something used every day or that gives power to others. */
function isChargedDaily(item: KitItem): boolean {
  const recharged = ['lithium-ion', 'nimh'].includes(traitText(item, 'cell')) && traitNumber(item, 'charge') !== null
  const inUse = (traitNumber(item, 'draw') ?? 0) * (traitNumber(item, 'hours-a-day') ?? 0) > 0
  return recharged && (inUse || serves(item, 'power'))
}

/** Used once more before the door. */
const isOfTheMorning = (item: KitItem): boolean => serves(item, 'hygiene') || serves(item, 'medicine')

const serves = (item: KitItem, duty: string): boolean => item.duties.some((one) => one.duty === duty)

function notThere(line: Line): readonly NotThere[] {
  if (isThere(line) || line.kind === 'supply' || line.item.status === 'owned') return []
  return [{ line, name: line.item.name, status: line.item.status }]
}

function partsOf(rows: readonly DoorRow[]): readonly DoorPart[] {
  const others = Map.groupBy(
    rows.filter(({ line }) => line !== null && isCarriedByAnother(line)),
    ({ line }) => line!.carriedBy,
  )
  const mine = rows.filter(({ line }) => line === null || !isCarriedByAnother(line))
  const now = mine.filter(({ last }) => last === null)
  const inPack = now.filter(({ line }) => line!.lane !== 'on_me')
  const part = (kind: DoorPart['kind'], some: readonly DoorRow[], area: KitArea | null = null, who = ''): DoorPart => ({ kind, area, who, rows: some }) // prettier-ignore
  const parts = [
    ...kitAreas.map((area) =>
      part(
        'area',
        inPack.filter(({ line }) => areaOf(line!) === area),
        area,
      ),
    ),
    part(
      'on-me',
      now.filter(({ line }) => line!.lane === 'on_me'),
    ),
    ...[...others].map(([who, some]) => part('other', some, null, who)),
    part(
      'last',
      mine.filter(({ last }) => last !== null),
    ),
  ]
  return parts.filter((one) => one.rows.length > 0)
}

export interface DoorCount {
  readonly all: number
  readonly packed: number
  readonly missing: number
  readonly open: number
}

export function countRows(rows: readonly DoorRow[]): DoorCount {
  const count = (state: DoorState) => rows.filter((row) => row.state === state).length
  return { all: rows.length, packed: count('packed'), missing: count('missing'), open: count('open') }
}
