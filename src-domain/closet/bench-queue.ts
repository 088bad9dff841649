/**
 * What to put on the scale next. What narrows the next trip most comes first:
 *   planned  never weighed and in the loadout of a trip to come, the nearest trip first, the widest band first
 *   never    never weighed, in no such loadout, the widest band first
 *   oldest   weighed longest ago, if before the day given (a year back, as a rule)
 *   differs  weighed since, and further from the claim than the claim's own doubt and the weighing's explain
 * A thing of no known mass has no band at all and stands before all that have one. Only what is owned and at home is queued.
 */
import { uncertainty } from '../figures/figure.ts'
import type { ItemMassRow } from './claims.ts'
import { claimedMass, itemMass } from './claims.ts'
import type { Status } from './vocabulary.ts'

export interface QueueItem extends ItemMassRow {
  readonly id: number
  readonly name: string
  readonly status: Status
  readonly archived: boolean
  readonly pieces: number
  readonly weighedOn: string | null
  readonly claimedMg: number | null
}

/** A line of a loadout whose trip is planned or out. */
export interface QueueLine {
  readonly loadoutId: number
  readonly loadoutName: string
  readonly startsOn: string | null
  readonly itemId: number
  readonly pieces: number
  readonly carriedBy: string
}

export interface QueueEntry {
  readonly id: number
  /** What the mass of its pieces leaves open, 2u in mg; null where no mass is known. */
  readonly bandMg: number | null
  /** The pieces the band speaks of. */
  readonly pieces: number
}

export type QueueGroup =
  | { readonly kind: 'planned'; readonly loadoutId: number; readonly loadoutName: string; readonly entries: readonly QueueEntry[] }
  | { readonly kind: 'never' | 'oldest' | 'differs'; readonly entries: readonly QueueEntry[] }

/** The queue in groups, empty ones left out; no item stands in two. `before`: weighings older than this day are old. */
export function benchQueue(items: readonly QueueItem[], lines: readonly QueueLine[], before: string): readonly QueueGroup[] {
  const home = items.filter((item) => item.status === 'owned' && !item.archived)
  const unweighed = home.filter((item) => item.massFrom !== 'measured')
  const weighed = home.filter((item) => item.massFrom === 'measured')
  const planned = plannedGroups(unweighed, lines)
  const inPlan = new Set(planned.flatMap((group) => group.entries.map((entry) => entry.id)))
  const old = weighed.filter(({ weighedOn }) => weighedOn !== null && weighedOn < before)
  const recent = weighed.filter(({ weighedOn }) => weighedOn === null || weighedOn >= before)
  const rest = [
    { kind: 'never' as const, entries: byBand(unweighed.filter((item) => !inPlan.has(item.id)).map((item) => entryOf(item, item.pieces))) },
    { kind: 'oldest' as const, entries: [...old].sort(oldestFirst).map((item) => entryOf(item, item.pieces)) },
    { kind: 'differs' as const, entries: furthestFromClaim(recent) },
  ]
  return [...planned, ...rest.filter((group) => group.entries.length > 0)]
}

/** The ids in their order. */
export const queueOrder = (groups: readonly QueueGroup[]): readonly number[] =>
  groups.flatMap((group) => group.entries.map((entry) => entry.id))

/** Every unweighed thing stands once, under the loadout of the nearest trip that carries it, with the pieces carried there. */
function plannedGroups(
  unweighed: readonly QueueItem[],
  lines: readonly QueueLine[],
): readonly (QueueGroup & { readonly kind: 'planned' })[] {
  const byId = new Map(unweighed.map((item) => [item.id, item]))
  const own = lines.filter((line) => line.carriedBy === '' && byId.has(line.itemId))
  const groups = new Map<number, { readonly loadoutName: string; readonly pieces: Map<number, number> }>()
  const seen = new Map<number, number>()
  for (const line of [...own].sort(nearestFirst)) {
    const loadoutId = seen.get(line.itemId) ?? line.loadoutId
    if (loadoutId !== line.loadoutId) continue
    seen.set(line.itemId, loadoutId)
    const group = groups.get(loadoutId) ?? { loadoutName: line.loadoutName, pieces: new Map<number, number>() }
    groups.set(loadoutId, group)
    group.pieces.set(line.itemId, (group.pieces.get(line.itemId) ?? 0) + line.pieces)
  }
  return [...groups].map(([loadoutId, { loadoutName, pieces }]) => {
    const entries = byBand([...pieces].map(([id, count]) => entryOf(byId.get(id)!, count)))
    return { kind: 'planned', loadoutId, loadoutName, entries }
  })
}

function entryOf(item: QueueItem, pieces: number): QueueEntry {
  const mass = itemMass(item)
  return { id: item.id, bandMg: mass === null ? null : 2 * uncertainty(mass) * 1000 * pieces, pieces }
}

/** Sorting keeps what is alike in the order it came. */
const byBand = (entries: readonly QueueEntry[]): readonly QueueEntry[] =>
  [...entries].sort((a, b) => compare(b.bandMg ?? Infinity, a.bandMg ?? Infinity))

/** A trip without a date is the furthest; loadouts of one day stay together. */
function nearestFirst(a: QueueLine, b: QueueLine): number {
  return compare(a.startsOn ?? '9999', b.startsOn ?? '9999') || a.loadoutId - b.loadoutId
}

const oldestFirst = (a: QueueItem, b: QueueItem): number => compare(a.weighedOn ?? '', b.weighedOn ?? '')

/** Further from the claim than 2u of both together, the furthest in those terms first. */
function furthestFromClaim(weighed: readonly QueueItem[]): readonly QueueEntry[] {
  return weighed
    .map((item) => ({ item, away: awayFromClaim(item) }))
    .filter(({ away }) => away > 2)
    .sort((a, b) => b.away - a.away)
    .map(({ item }) => entryOf(item, item.pieces))
}

/** |measured − claimed| in standard uncertainties of the two. */
function awayFromClaim(item: QueueItem): number {
  const mass = itemMass(item)
  if (mass === null || item.claimedMg === null) return 0
  const claim = claimedMass(item.claimedMg, item.uid)
  const u = Math.hypot(uncertainty(mass), uncertainty(claim))
  return u === 0 ? 0 : Math.abs(mass.value - claim.value) / u
}

const compare = <T extends number | string>(a: T, b: T): number => (a < b ? -1 : a > b ? 1 : 0)
