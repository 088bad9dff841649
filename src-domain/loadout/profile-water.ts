import { rateOf } from '../checks/water-needs.ts'
import { CAMP_DRINK_l, WATER_SPARE_l } from '../laws/water-carried.ts'
import type { Brief } from '../trips/brief.ts'
import type { CampNight } from '../trips/nights.ts'
import { hoursBetween, type TimedLeg } from '../trips/route.ts'
import { CAMP_AT_SOURCE_M, countedOn, stretchesOf, type Stretch } from '../trips/water-stretches.ts'
import type { Walker } from '../trips/walker.ts'

/**
 * Water carried at a place along the way, as a share of what the loadout holds of it.
 *   at a source: filled with what its stretch asks, hours·rate + dry camps·1.5 + 0.5 l, and never more than is carried; from there drunk by the hour, at a dry camp by the camp
 * Without sources in the brief, or without a high, nothing says where it is filled: all of it counts everywhere.
 * Source: provisions.md 2.4 (choices).
 */
export interface WaterCourse {
  /** 0 … 1 of the water in the loadout; `after`: once filled, where the place is a source. */
  readonly shareAt: (atM: number, side: 'before' | 'after') => number
  /** Where it is filled, from the trailhead on. */
  readonly fillsM: readonly number[]
}

const everywhere: WaterCourse = { shareAt: () => 1, fillsM: [] }

export function waterCourse(
  brief: Brief,
  walker: Walker,
  legs: readonly TimedLeg[],
  nights: readonly CampNight[] | null,
  carriedL: number,
): WaterCourse {
  if (brief.sources.length === 0 || nights === null || carriedL <= 0) return everywhere
  const stretches = stretchesOf(brief, legs, nights)
  if (stretches.some(({ highC }) => highC === null)) return everywhere
  const dry = dryCampsM(brief, nights)
  const litresAt = (stretch: Stretch, atM: number) => {
    const drunk = (toM: number) =>
      rateOf(brief, walker, stretch.highC!).value * hoursBetween(legs, stretch.fromM, toM) + campLitres(dry, stretch.fromM, toM)
    const filled = Math.min(carriedL, drunk(stretch.toM) + WATER_SPARE_l)
    return Math.max(0, filled - drunk(atM))
  }
  return {
    shareAt: (atM, side) => litresAt(stretchAt(stretches, atM, side), atM) / carriedL,
    fillsM: stretches.map(({ fromM }) => fromM),
  }
}

function stretchAt(stretches: readonly Stretch[], atM: number, side: 'before' | 'after'): Stretch {
  const has = ({ fromM, toM }: Stretch) => (side === 'before' ? atM > fromM && atM <= toM : atM >= fromM && atM < toM)
  return stretches.find(has) ?? (atM <= stretches[0]!.fromM ? stretches[0]! : stretches.at(-1)!)
}

/** Camps that draw from no source. */
function dryCampsM(brief: Brief, nights: readonly CampNight[]): readonly number[] {
  const sources = countedOn(brief)
  return nights.flatMap(({ atM }) =>
    atM === null || sources.some((source) => Math.abs(source.atM - atM) <= CAMP_AT_SOURCE_M) ? [] : [atM],
  )
}

const campLitres = (dryM: readonly number[], fromM: number, toM: number): number =>
  CAMP_DRINK_l * dryM.filter((at) => at >= fromM && at <= toM).length
