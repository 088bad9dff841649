/**
 * The nights of a brief: where each camp stands, how high, and how cold it is planned for.
 *   low = the day's own low, else the trip's, carried from the forecast's height up to the camp (laws/lapse-rate.ts)
 * A camp is the last leg of its day that ends in one, else the end of that day's last leg. Without the height of the camp or of the forecast the low
 * stands as it was given. The forecast's own doubt of 2 K is the leaf `brief:low`, the same for every night.
 */
import { given, work, type Figure } from '../figures/figure.ts'
import { carriedUp, planningLow } from '../laws/lapse-rate.ts'
import { nightsOf, type Brief, type Leg, type Trip } from './brief.ts'
import { forecast, middleOfDay } from './middle-of-day.ts'

export interface CampNight {
  /** 1: the night after the first day. */
  readonly night: number
  /** Along the route; null: not known. */
  readonly atM: number | null
  readonly heightM: number | null
  /** The planning low there; null: no low is given. */
  readonly low: Figure<'degC'> | null
  /** Air when the evening meal is cooked: the mean of that day's low and high, carried up to the camp; null: one of them is not given. */
  readonly evening: Figure<'degC'> | null
}

/** null: the brief does not say how many nights there are. */
export function campNights(brief: Brief, trip: Pick<Trip, 'startsOn' | 'endsOn'>): readonly CampNight[] | null {
  const nights = nightsOf(trip, brief)
  if (nights === null) return null
  const known = kept.get(brief)
  if (known?.length === nights) return known
  const worked = Array.from({ length: nights }, (_, i) => campNight(brief, i + 1))
  kept.set(brief, worked)
  return worked
}

/** Every check asks for the nights of the one brief; a brief is never changed in place, so its nights of one count are worked out once. */
const kept = new WeakMap<Brief, readonly CampNight[]>()

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
  const [lowC, highC] = [day?.lowC ?? brief.lowC, day?.highC ?? brief.highC]
  return {
    night,
    atM: camp === null ? null : endOf(brief.legs, camp),
    heightM,
    low: lowC === null ? null : lowAt(lowC, brief.forecastHeightM, heightM),
    evening: lowC === null || highC === null ? null : eveningAt(middleOfDay(lowC, highC), brief.forecastHeightM, heightM),
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

function lowAt(lowC: number, forecastM: number | null, campM: number | null): Figure<'degC'> {
  const low = forecast(lowC, 'the expected low')
  return forecastM === null || campM === null || forecastM === campM ? low : work(planningLow, { lowC: low, ...heights(forecastM, campM) })
}

function eveningAt(airC: Figure<'degC'>, forecastM: number | null, campM: number | null): Figure<'degC'> {
  return forecastM === null || campM === null || forecastM === campM ? airC : work(carriedUp, { airC, ...heights(forecastM, campM) })
}

const heights = (forecastM: number, campM: number) => ({
  fromM: given(forecastM, 'm', 'given', {}, 'height of the forecast'),
  toM: given(campM, 'm', 'given', {}, 'height of the camp'),
})
