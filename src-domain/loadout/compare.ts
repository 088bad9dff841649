import { kitAreas, type KitArea, type Lane } from '../closet/vocabulary.ts'
import type { Row } from '../checks/index.ts'
import type { Check, Finding } from '../checks/check.ts'
import type { Figure } from '../figures/figure.ts'
import type { Line, Loadout } from './loadout.ts'
import { netOf, type Net } from './net.ts'
import { totalsOf, type AreaSum, type Sum, type Totals, type WeighedLine } from './totals.ts'

/**
 * Two to four loadouts about a common zero. Differences are measured from one of them and worked on what differs, so that their bands are
 * those of what differs alone. A thing is an item, or a supply in its container, whatever lane it is in.
 */
export interface Compared {
  readonly names: readonly string[]
  readonly totals: readonly Totals[]
  /** Index of the loadout that differences are measured from. */
  readonly from: number
  /** Base weight by kit area; only areas that one of them has. */
  readonly areas: readonly AreaRow[]
  readonly base: SumRow
  readonly consumables: SumRow
  readonly worn: SumRow
  readonly pack: SumRow
  readonly skinOut: SumRow
  /** By where they are: in one alone first, then in some; what is in all is not listed. */
  readonly held: readonly Held[]
  readonly quantities: readonly QuantityRow[]
  readonly lanes: readonly LaneRow[]
}

export interface SumRow {
  readonly sums: readonly Sum[]
  /** Each less the one measured from; null at that one's own place. */
  readonly differences: readonly (Net | null)[]
  readonly same: boolean
}

export interface AreaRow extends Omit<SumRow, 'sums'> {
  readonly area: KitArea
  /** null: it has nothing in this area. */
  readonly sums: readonly (AreaSum | null)[]
}

export interface Thing {
  readonly name: string
  readonly area: KitArea
  /** As the first that has it holds it; null: not known. */
  readonly mass: Figure<'g'> | null
  readonly line: Line
}

/** Things that these have and the others do not. */
export interface Held {
  readonly inWhich: readonly boolean[]
  readonly things: readonly Thing[]
}

export interface QuantityRow {
  readonly thing: Thing
  /** Of one piece, or of one unit of a supply. */
  readonly pieceG: number | null
  /** Pieces, or the amount in the supply's unit; null: not there, or not known. */
  readonly quantities: readonly (number | null)[]
}

export interface LaneRow {
  readonly thing: Thing
  readonly lanes: readonly (readonly Lane[])[]
}

export function compareLoadouts(loadouts: readonly Loadout[], from = 0): Compared {
  const totals = loadouts.map((loadout) => totalsOf(loadout))
  const held = heldBy(totals)
  const row = (name: string, sumOf: (one: Totals) => Sum, lanes: readonly Lane[]): SumRow =>
    sumRow(name, totals.map(sumOf), totals.map(inLanes(lanes)), from)
  return {
    names: loadouts.map(({ name }) => name),
    totals,
    from,
    areas: areaRows(totals, from),
    base: row('base weight', (one) => one.base, ['in_pack']),
    consumables: row('consumables', (one) => one.consumables, ['used_up']),
    worn: row('worn weight', (one) => one.worn, ['on_me']),
    pack: row('pack weight', (one) => one.pack, ['in_pack', 'used_up']),
    skinOut: row('skin-out weight', (one) => one.skinOut, ['on_me', 'in_pack', 'used_up']),
    held: partlyHeld(held, loadouts.length),
    quantities: quantityRows(held),
    lanes: laneRows(held),
  }
}

export interface CheckRow {
  readonly check: Check
  readonly findings: readonly Finding[]
  /** The same state and the same place on the gauge in all. */
  readonly same: boolean
}

/** The findings of each loadout, check by check. All were asked on one brief. */
export function checkRows(found: readonly (readonly Row[])[]): readonly CheckRow[] {
  return (found[0] ?? []).map(({ check }, at) => {
    const findings = found.map((rows) => rows[at]!.finding)
    return { check, findings, same: findings.every((finding) => isSame(finding, findings[0]!)) }
  })
}

const isSame = (a: Finding, b: Finding): boolean => a.state === b.state && marginOf(a) === marginOf(b)
const marginOf = (finding: Finding): number | null => ('margin' in finding ? finding.margin : null)

const inLanes =
  (lanes: readonly Lane[]) =>
  ({ lines }: Totals): readonly WeighedLine[] =>
    lines.filter(({ line }) => lanes.includes(line.lane))

function sumRow(name: string, sums: readonly Sum[], lines: readonly (readonly WeighedLine[])[], from: number): SumRow {
  const differences = lines.map((some, at) => (at === from ? null : netOf(name, lines[from]!, some)))
  return { sums, differences, same: differences.every((net) => net === null || net.same) }
}

function areaRows(totals: readonly Totals[], from: number): readonly AreaRow[] {
  return kitAreas.flatMap((area) => {
    const sums = totals.map((one) => one.areas.find((sum) => sum.lane === 'in_pack' && sum.area === area) ?? null)
    if (sums.every((sum) => sum === null)) return []
    const lines = totals.map((one) => one.lines.filter(({ line, area: of }) => of === area && line.lane === 'in_pack'))
    const { differences, same } = sumRow(area, [], lines, from)
    return [{ area, sums, differences, same }]
  })
}

interface Holding {
  readonly thing: Thing
  /** The lines of each loadout that hold it. */
  readonly lines: readonly (readonly Line[])[]
}

/** Every thing of all of them, by kit area and then in the order in which they have it. */
function heldBy(totals: readonly Totals[]): readonly Holding[] {
  const holdings = new Map<string, { thing: Thing; lines: Line[][] }>()
  totals.forEach(({ lines }, at) => {
    for (const { line, name, area, mass } of lines) {
      const uid = comparedAs(line)
      const holding = holdings.get(uid) ?? { thing: { name, area, mass, line }, lines: totals.map(() => []) }
      holding.lines[at]!.push(line)
      holdings.set(uid, holding)
    }
  })
  const place = new Map(kitAreas.map((area, at) => [area, at]))
  return [...holdings.values()].sort((a, b) => place.get(a.thing.area)! - place.get(b.thing.area)!)
}

/** A supply is one thing, whichever container it is in. */
const comparedAs = (line: Line): string => (line.kind === 'item' ? line.item.uid : line.supply.uid)

function partlyHeld(holdings: readonly Holding[], count: number): readonly Held[] {
  const groups = new Map<string, { inWhich: readonly boolean[]; things: Thing[] }>()
  for (const { thing, lines } of holdings) {
    const inWhich = lines.map((some) => some.length > 0)
    if (inWhich.every(Boolean)) continue
    const key = inWhich.map(Number).join('')
    const group = groups.get(key) ?? { inWhich, things: [] }
    group.things.push(thing)
    groups.set(key, group)
  }
  const holders = ({ inWhich }: Held) => inWhich.filter(Boolean).length
  // Fewest holders first; among equals A before B before C.
  const first = ({ inWhich }: Held) => inWhich.reduce((sum, has, at) => sum + (has ? 0 : 2 ** (count - at)), 0)
  return [...groups.values()].sort((a, b) => holders(a) - holders(b) || first(a) - first(b))
}

function quantityRows(holdings: readonly Holding[]): readonly QuantityRow[] {
  return holdings.flatMap(({ thing, lines }) => {
    const quantities = lines.map(quantityOf)
    const there = lines.filter((some) => some.length > 0).length
    const differs = there > 1 && new Set(quantities.filter((_, at) => lines[at]!.length > 0)).size > 1
    return differs ? [{ thing, pieceG: pieceOf(thing.line), quantities }] : []
  })
}

function quantityOf(lines: readonly Line[]): number | null {
  let sum = lines.length === 0 ? null : 0
  for (const line of lines) {
    const part = line.kind === 'item' ? line.pieces : line.amount
    sum = sum === null || part === null ? null : sum + part
  }
  return sum
}

const pieceOf = (line: Line): number | null => (line.kind === 'item' ? (line.item.mass?.value ?? null) : line.supply.massGPerUnit)

function laneRows(holdings: readonly Holding[]): readonly LaneRow[] {
  return holdings.flatMap(({ thing, lines }) => {
    const lanes = lines.map((some) => [...new Set(some.map(({ lane }) => lane))].sort())
    const there = lanes.filter((some) => some.length > 0).map((some) => some.join(' '))
    return new Set(there).size > 1 ? [{ thing, lanes }] : []
  })
}
