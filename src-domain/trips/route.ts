/**
 * The way of a brief in hours: each leg with where it begins and ends along the route and how long this walker moves on it.
 *   hours = T(length, climb, descent)·N(terrain)·pace factor        T by the default walking law, without breaks (laws/walking-time.ts, laws/ground-pace.ts)
 * Where the ground has no published factor of time (sand, snow) N is that of equal effort, a consequence of the power law: `slowGround` says so.
 */
import { timeFactorOf } from '../laws/ground-pace.ts'
import { grounds } from '../laws/terrain.ts'
import { piecesOfLeg, walkingHours } from '../laws/walking-time.ts'
import type { Brief, Leg } from './brief.ts'
import type { Walker } from './walker.ts'

export interface TimedLeg {
  readonly leg: Leg
  /** Along the route from its start. */
  readonly fromM: number
  readonly toM: number
  /** Moving, without breaks. */
  readonly hours: number
}

export type Route =
  | { readonly ok: true; readonly legs: readonly TimedLeg[]; readonly lengthM: number; readonly slowGround: boolean }
  /** `leg`: the first leg that lacks it, 1 for the first; 0: no leg at all. */
  | { readonly ok: false; readonly missing: 'legs' | 'length' | 'climb' | 'descent'; readonly leg: number }

export function routeOf(brief: Pick<Brief, 'legs'>, walker: Pick<Walker, 'paceFactor'>): Route {
  if (brief.legs.length === 0) return { ok: false, missing: 'legs', leg: 0 }
  const legs: TimedLeg[] = []
  let fromM = 0
  for (const [i, leg] of brief.legs.entries()) {
    if (leg.lengthM === null) return { ok: false, missing: 'length', leg: i + 1 }
    if (leg.climbM === null) return { ok: false, missing: 'climb', leg: i + 1 }
    if (leg.descentM === null) return { ok: false, missing: 'descent', leg: i + 1 }
    const moving = walkingHours('campbell', piecesOfLeg(leg.lengthM, leg.climbM, leg.descentM))
    const hours = moving * timeFactorOf(leg.terrain) * walker.paceFactor
    legs.push({ leg, fromM, toM: fromM + leg.lengthM, hours })
    fromM += leg.lengthM
  }
  return { ok: true, legs, lengthM: fromM, slowGround: brief.legs.some((leg) => grounds[leg.terrain].timeFactor === null) }
}

/** Moving hours between two places along the route; a leg's hours are spread evenly over its length. */
export function hoursBetween(legs: readonly TimedLeg[], fromM: number, toM: number): number {
  return legs.reduce((sum, one) => sum + one.hours * shareWithin(one, fromM, toM), 0)
}

/** Moving hours of a day. */
export const hoursOfDay = (legs: readonly TimedLeg[], day: number): number =>
  legs.reduce((sum, one) => (one.leg.day === day ? sum + one.hours : sum), 0)

function shareWithin({ fromM: from, toM: to }: TimedLeg, fromM: number, toM: number): number {
  if (to <= from) return from >= fromM && from < toM ? 1 : 0
  return Math.max(0, Math.min(to, toM) - Math.max(from, fromM)) / (to - from)
}
