import type { Asked, Check, Finding, Found } from '../../../src-domain/checks/check.ts'
import { withAmounts } from '../../../src-domain/loadout/amounts.ts'
import type { Loadout } from '../../../src-domain/loadout/loadout.ts'
import { emptyBrief, type Brief, type Leg, type Trip } from '../../../src-domain/trips/brief.ts'
import { emptyWalker, type Walker } from '../../../src-domain/trips/walker.ts'
import { itemRow, kitIndex, loadoutOf, supplyRow, type TestItem, type TestSupply } from '../loadout/kit.ts'

/** Asks a check in tests: a four-day autumn trip with legs, unless said otherwise. */
export interface Change {
  readonly items?: readonly TestItem[]
  readonly supplies?: readonly (TestSupply & {
    readonly amount?: number
    readonly amountFrom?: 'brief' | 'typed' | 'weighed'
    readonly heldBy?: string
  })[]
  readonly brief?: Partial<Brief>
  readonly trip?: Partial<Trip>
  readonly walker?: Partial<Walker>
  readonly loadout?: Loadout
}

export const leg = (day: number, more: Partial<Leg> = {}): Leg => ({
  day,
  name: '',
  lengthM: 10_000,
  climbM: 0,
  descentM: 0,
  terrain: 'path',
  endHeightM: 0,
  camp: true,
  ...more,
})
export const october: Trip = { startsOn: '2025-10-09', endsOn: '2025-10-12', zone: 'Europe/Berlin', season: 'autumn' }
export const fourDays: Brief = { ...emptyBrief, legs: [leg(1), leg(2), leg(3), leg(4, { camp: false })], lowC: 2, highC: 12, nightsOut: 3 }

export function kitOf(items: readonly TestItem[] = [], supplies: Change['supplies'] = []): Loadout {
  const index = kitIndex(items, supplies)
  return loadoutOf(index, [
    ...items.map((item, i) => itemRow(i + 1, i + 1, { pieces: item.pieces ?? 1 })),
    ...supplies.map((one, i) =>
      supplyRow(100 + i, i + 1, {
        amountMilli: one.amount === undefined ? null : Math.round(one.amount * 1000),
        amountFrom: one.amountFrom ?? 'typed',
        containerId: one.heldBy === undefined ? null : items.findIndex((item) => item.name === one.heldBy) + 1,
      }),
    ),
  ])
}

/** Amounts that follow the brief are filled first, as the program does. */
export function askedOf(change: Change): Asked {
  const brief = { ...fourDays, ...change.brief }
  const trip = { ...october, ...change.trip }
  const loadout = withAmounts(change.loadout ?? kitOf(change.items, change.supplies), { brief, trip })
  return { loadout, brief, trip, walker: { ...emptyWalker, ...change.walker }, today: '2025-10-01' }
}

export const find = (check: Check, change: Change): Finding => check.find(askedOf(change))

export function foundBy(check: Check, change: Change): Found {
  const finding = find(check, change)
  if (!('have' in finding)) throw new Error(`${check.id}: ${JSON.stringify(finding)}`)
  return finding
}
