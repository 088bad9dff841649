import type { Saying } from '../checks/check.ts'
import type { Trip } from '../trips/brief.ts'
import { capacityOf } from './amounts.ts'
import { itemLines, supplyLines, type ItemLine, type KitItem, type Loadout } from './loadout.ts'

/**
 * What the rail says beside the checks: things that cannot go as they stand. Nothing here is refused; it is named.
 *   `more-than-owned` pieces, owned · `lent` to, since · `sold` `retired` `lost` since · `elsewhere` loadout, trip, from, to
 *   `container-left` supply, container · `over-capacity` supply, container, amount, capacity, unit · facts `name` and `lines` (ids) throughout
 */
export interface Notice extends Saying {
  readonly lineIds: readonly number[]
}

/** Lines of the loadouts of other planned trips. */
export interface PlannedFacts {
  readonly loadoutId: number
  readonly loadoutName: string
  readonly tripId: number
  readonly startsOn: string | null
  readonly endsOn: string | null
  readonly itemId: number
  readonly pieces: number
}

export interface ThisTrip extends Pick<Trip, 'startsOn' | 'endsOn'> {
  readonly tripId: number
}

export function noticesOf(loadout: Loadout, planned: readonly PlannedFacts[] = [], trip: ThisTrip | null = null): readonly Notice[] {
  const items = byItem(itemLines(loadout))
  const away = trip === null ? [] : overlapping(planned, trip)
  return [
    ...items.flatMap((group) => [...moreThanOwned(group), ...notHere(group), ...elsewhere(group, away)]),
    ...containersLeft(loadout),
    ...overCapacity(loadout),
  ]
}

interface ItemGroup {
  readonly item: KitItem
  readonly lines: readonly ItemLine[]
  /** Over all lanes. */
  readonly pieces: number
}

function byItem(lines: readonly ItemLine[]): readonly ItemGroup[] {
  const groups = new Map<string, ItemLine[]>()
  for (const line of lines) {
    const group = groups.get(line.item.uid)
    if (group === undefined) groups.set(line.item.uid, [line])
    else group.push(line)
  }
  return [...groups.values()].map((group) => ({
    item: group[0]!.item,
    lines: group,
    pieces: group.reduce((sum, line) => sum + line.pieces, 0),
  }))
}

const notice = ({ item, lines }: ItemGroup, code: string, facts: Readonly<Record<string, string | number>>): Notice => ({
  code,
  facts: { name: item.name, ...facts },
  lineIds: lines.map(({ id }) => id),
})

function moreThanOwned(group: ItemGroup): readonly Notice[] {
  const { pieces, item } = group
  return pieces > item.pieces ? [notice(group, 'more-than-owned', { pieces, owned: item.pieces })] : []
}

function notHere(group: ItemGroup): readonly Notice[] {
  const { status, lentTo, statusSince } = group.item
  if (status === 'owned' || status === 'wished') return []
  // What is lent to someone who carries it on this trip is where it belongs.
  if (status === 'lent' && group.lines.every((line) => line.carriedBy !== '')) return []
  const since = statusSince ?? ''
  return [status === 'lent' ? notice(group, 'lent', { to: lentTo, since }) : notice(group, status, { since })]
}

/** One for each other trip on whose days more pieces would be away than are owned. */
function elsewhere(group: ItemGroup, away: readonly PlannedFacts[]): readonly Notice[] {
  const trips = new Map<number, PlannedFacts>()
  for (const one of mostPerLoadout(away.filter(({ itemId }) => itemId === group.item.id))) {
    if (one.pieces > (trips.get(one.tripId)?.pieces ?? 0)) trips.set(one.tripId, one)
  }
  return [...trips.values()]
    .filter(({ pieces }) => group.pieces <= group.item.pieces && pieces + group.pieces > group.item.pieces)
    .map(({ loadoutName, startsOn, endsOn }) =>
      notice(group, 'elsewhere', { loadout: loadoutName, from: startsOn ?? '', to: endsOn ?? startsOn ?? '' }),
    )
}

/** Lanes of one loadout added up; alternatives of one trip are not. */
function mostPerLoadout(lines: readonly PlannedFacts[]): readonly PlannedFacts[] {
  const sums = new Map<number, PlannedFacts>()
  for (const line of lines) {
    const sum = sums.get(line.loadoutId)
    sums.set(line.loadoutId, sum === undefined ? line : { ...sum, pieces: sum.pieces + line.pieces })
  }
  return [...sums.values()]
}

/** Both ends counted. A trip without an end is a day; one without a start overlaps nothing. */
function overlapping(planned: readonly PlannedFacts[], trip: ThisTrip): readonly PlannedFacts[] {
  const { startsOn } = trip
  if (startsOn === null) return []
  const endsOn = trip.endsOn ?? startsOn
  return planned.filter((one) => {
    if (one.tripId === trip.tripId || one.startsOn === null) return false
    return one.startsOn <= endsOn && startsOn <= (one.endsOn ?? one.startsOn)
  })
}

function containersLeft(loadout: Loadout): readonly Notice[] {
  const going = new Set(itemLines(loadout).map((line) => line.item.uid))
  return supplyLines(loadout).flatMap(({ id, supply, container }) =>
    container === null || going.has(container.uid)
      ? []
      : [{ code: 'container-left', facts: { name: supply.name, container: container.name }, lineIds: [id] }],
  )
}

function overCapacity(loadout: Loadout): readonly Notice[] {
  return supplyLines(loadout).flatMap((line) => {
    const capacity = capacityOf(line, loadout)
    if (capacity === null || line.amount === null || line.amount <= capacity * (1 + 1e-9)) return []
    const facts = { name: line.supply.name, container: line.container!.name, amount: line.amount, capacity, unit: line.supply.unit }
    return [{ code: 'over-capacity', facts, lineIds: [line.id] }]
  })
}
