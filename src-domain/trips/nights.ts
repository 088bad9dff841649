/**
 * The nights of a brief: where each camp stands, how high, and how cold it is planned for.
 *   low = the day's own low, else the trip's, carried from the forecast's height up to the camp (laws/lapse-rate.ts)
 * A camp is the last leg of its day that ends in one, else the end of that day's last leg. Without the height of the camp or of the forecast the low
 * stands as it was given. The forecast's own doubt of 2 K is the leaf `brief:low`, the same for every night.
 */
import { given, work, type Figure } from '../figures/figure.ts'
import { FORECAST_SIGMA_K, planningLow } from '../laws/lapse-rate.ts'
import { nightsOf, type Brief, type Leg, type Trip } from './brief.ts'

export interface CampNight {
  /** 1: the night after the first day. */
  readonly night: number
  /** Along the route; null: not known. */
  readonly atM: number | null
  readonly heightM: number | null
  /** The planning low there; null: no low is given. */
  readonly low: Figure<'degC'> | null
  /** High of the day before it; null: none is given. */
  readonly highC: number | null
}

/** null: the brief does not say how many nights there are. */
export function campNights(brief: Brief, trip: Pick<Trip, 'startsOn' | 'endsOn'>): readonly CampNight[] | null {
  const nights = nightsOf(trip, brief)
  if (nights === null) return null
  return Array.from({ length: nights }, (_, i) => campNight(brief, i + 1))
}

/** The coldest planning low of all nights; null: no night, or one of them has none. */
export function coldestLow(nights: readonly CampNight[]): Figure<'degC'> | null {
  let coldest: Figure<'degC'> | null = null
  for (const { low } of nights) {
    if (low === null) return null
    if (coldest === null || low.value < coldest.value) coldest = low
  }
  return coldest
}

function campNight(brief: Brief, night: number): CampNight {
  const camp = campLeg(brief.legs, night)
  const heightM = camp === null ? null : (brief.legs[camp]!.endHeightM ?? null)
  const day = brief.days.find((one) => one.day === night)
  return {
    night,
    atM: camp === null ? null : endOf(brief.legs, camp),
    heightM,
    low: lowAt(day?.lowC ?? brief.lowC, brief.forecastHeightM, heightM),
    highC: day?.highC ?? brief.highC,
  }
}

/** Place in the list of the leg that ends at the night's camp; null: no leg on that day. */
function campLeg(legs: readonly Leg[], day: number): number | null {
  let last: number | null = null
  let camp: number | null = null
  for (const [i, leg] of legs.entries()) {
    if (leg.day !== day) continue
    last = i
    if (leg.camp) camp = i
  }
  return camp ?? last
}

function endOf(legs: readonly Leg[], at: number): number | null {
  let sum = 0
  for (const leg of legs.slice(0, at + 1)) {
    if (leg.lengthM === null) return null
    sum += leg.lengthM
  }
  return sum
}

function lowAt(lowC: number | null, forecastM: number | null, campM: number | null): Figure<'degC'> | null {
  if (lowC === null) return null
  const low = given(lowC, 'degC', 'given', { 'brief:low': FORECAST_SIGMA_K }, 'the expected low')
  if (forecastM === null || campM === null || forecastM === campM) return low
  return work(planningLow, {
    lowC: low,
    fromM: given(forecastM, 'm', 'given', {}, 'height of the forecast'),
    toM: given(campM, 'm', 'given', {}, 'height of the camp'),
  })
}
