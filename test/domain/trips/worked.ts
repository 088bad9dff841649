import { filledByBrief } from '../../../src-domain/checks/by-brief.ts'
import type { Asked } from '../../../src-domain/checks/check.ts'
import { alpineAutumn } from '../../fixtures/trips/alpine-autumn.ts'
import { desert } from '../../fixtures/trips/desert.ts'
import { wetHeath } from '../../fixtures/trips/wet-heath.ts'
import { highPlateau } from '../../fixtures/trips/high-plateau.ts'
import { overnighter } from '../../fixtures/trips/overnighter.ts'
import { lowCoast } from '../../fixtures/trips/low-coast.ts'
import { smallWalker } from '../../fixtures/trips/small-walker.ts'
import { longNight } from '../../fixtures/trips/long-night.ts'
import { twoWeeks } from '../../fixtures/trips/two-weeks.ts'
import { winterHuts } from '../../fixtures/trips/winter-huts.ts'
import type { WorkedTrip } from '../../fixtures/trips/trip.ts'
import { itemRow, kitIndex, loadoutOf, supplyRow } from '../loadout/kit.ts'

/** The ten worked trips, with what the program asks of each: amounts by the brief first. */
export const trips: readonly WorkedTrip[] = [
  alpineAutumn,
  desert,
  wetHeath,
  highPlateau,
  overnighter,
  lowCoast,
  smallWalker,
  longNight,
  twoWeeks,
  winterHuts,
]

export function askedOf({ brief, trip, walker, things, provisions }: WorkedTrip): Asked {
  const loadout = loadoutOf(kitIndex(things, provisions), [
    ...things.map((one, i) => itemRow(i + 1, i + 1, { lane: one.lane, pieces: one.pieces ?? 1 })),
    ...provisions.map((one, i) =>
      supplyRow(100 + i, i + 1, {
        amountMilli: one.amount === undefined ? null : Math.round(one.amount * 1000),
        amountFrom: one.amount === undefined ? 'brief' : 'typed',
        containerId: one.heldBy === undefined ? null : things.findIndex(({ name }) => name === one.heldBy) + 1,
      }),
    ),
  ])
  return filledByBrief({ loadout, brief, trip, walker, today: '2025-01-01' })
}
