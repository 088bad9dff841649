/**
 * Whether a hard food canister holds the nights it must.
 *   room = C·f                                                 l, C rated litres, f 0.90 (choice; 0.95 for powders, 0.80 for bags of bars)
 *   must fit(night) = food not eaten before it + 0.5 + 0.2·days eaten      l, 0.5 of toiletries, 0.2 of rubbish a day already eaten (choices)
 *   covered = the largest n of nights whose must fit all lie within room;  enough room: 1.05 of the fullest
 * Caution: everything with a scent goes in, every night, unless attended; the first day's meals may be outside while attended (read: US park and
 * Sierra agency advice). Which canisters count is local: local rules decide.
 */
import type { Law } from '../figures/figure.ts'

export const CANISTER_FILL = 0.9
export const TOILETRIES_l = 0.5
export const RUBBISH_l_day = 0.2
export const CANISTER_MARGIN = 0.05

export const canisterRoom = {
  name: 'Room in the food canister',
  formula: 'room = C·f',
  source: { cite: 'packing share 0.90', known: 'choice' },
  takes: { ratedL: 'l', fill: '1' },
  unit: 'l',
  cautions: () => ['Everything with a scent goes in, every night. Which canisters count is local: check before you go.'],
  compute: ({ ratedL, fill }) => ratedL * fill,
} as const satisfies Law<{ ratedL: 'l'; fill: '1' }, 'l'>

/**
 * What must fit on each night, l, in order. `daysOfFood` as counted from the start (meals-counted.ts), `firstDay` the share eaten before the first night,
 * `litresADay` the room of a full day; resupplies add `days` of food on the night after them.
 */
export interface CanisterTrip {
  readonly daysOfFood: number
  readonly firstDay: number
  readonly nights: number
  readonly litresADay: number
  readonly toiletriesL: number
  readonly resupplies: readonly { readonly beforeNight: number; readonly days: number }[]
}

export function mustFitL(trip: CanisterTrip): readonly number[] {
  const nights: number[] = []
  let left = trip.daysOfFood - trip.firstDay
  let eaten = trip.firstDay
  for (let night = 1; night <= trip.nights; night++) {
    const bought = trip.resupplies.filter((one) => one.beforeNight === night)
    if (night > 1) {
      left -= 1
      eaten += 1
    }
    for (const one of bought) {
      left = one.days
      eaten = 0
    }
    nights.push(Math.max(0, left) * trip.litresADay + trip.toiletriesL + eaten * RUBBISH_l_day)
  }
  return nights
}

/** Nights in a row, from the first, whose must fit lies within the room. */
export function nightsCovered(roomL: number, mustFit: readonly number[]): number {
  const over = mustFit.findIndex((litres) => litres > roomL + 1e-9)
  return over === -1 ? mustFit.length : over
}

/** Days of food that fit when nothing else does: room over the litres of a day. */
export const daysThatFit = (roomL: number, litresADay: number): number => roomL / litresADay
