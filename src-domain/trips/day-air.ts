/**
 * Air on foot: the coldest to plan for while walking, and at a stop on the highest point of each day.
 *   walking: the coldest planning low of the nights (nights.ts); without a night out the lowest low the brief names
 *   stop: (low + high)/2 of the day, carried from the forecast's height up to the day's highest point by 6.5 K/km (laws/lapse-rate.ts)
 * The highest point is the highest end of the day's legs, the evening before included, and of the whole track where there is one.
 * The forecast's own doubt of 2 K stands behind low and high alike: one leaf, `brief:low`.
 */
import { given, work, type Figure } from '../figures/figure.ts'
import { carriedUp } from '../laws/lapse-rate.ts'
import { lowestC } from './asked.ts'
import { daysOf, nightsOf, type Brief, type Trip } from './brief.ts'
import { forecast, middleOfDay } from './middle-of-day.ts'
import { campNights, coldestLow } from './nights.ts'

type Around = Pick<Trip, 'startsOn' | 'endsOn'>
export type Air =
  { readonly ok: true; readonly figure: Figure<'degC'> } | { readonly ok: false; readonly missing: 'nights' | 'low' | 'high' }

export function walkingAir(brief: Brief, trip: Around): Air {
  const nights = campNights(brief, trip)
  if (nights === null) return { ok: false, missing: 'nights' }
  if (nights.length > 0) return orMissing(coldestLow(nights))
  const low = lowestC(brief)
  return orMissing(low === null ? null : forecast(low, 'the expected low'))
}

const orMissing = (figure: Figure<'degC'> | null): Air => (figure === null ? { ok: false, missing: 'low' } : { ok: true, figure })

/** The coldest of all days' stops. */
export function stopAir(brief: Brief, trip: Around): Air {
  const days = daysOf(trip) ?? nightsAndOne(brief, trip)
  if (days === null) return { ok: false, missing: 'nights' }
  let coldest: Figure<'degC'> | null = null
  for (let day = 1; day <= days; day++) {
    const air = airAtTop(brief, day)
    if (!air.ok) return air
    if (coldest === null || air.figure.value < coldest.value) coldest = air.figure
  }
  return coldest === null ? { ok: false, missing: 'nights' } : { ok: true, figure: coldest }
}

function nightsAndOne(brief: Brief, trip: Around): number | null {
  const nights = nightsOf(trip, brief)
  return nights === null ? null : nights + 1
}

function airAtTop(brief: Brief, day: number): Air {
  const own = brief.days.find((one) => one.day === day)
  const [lowC, highC] = [own?.lowC ?? brief.lowC, own?.highC ?? brief.highC]
  if (lowC === null) return { ok: false, missing: 'low' }
  if (highC === null) return { ok: false, missing: 'high' }
  const middle = middleOfDay(lowC, highC)
  const [fromM, toM] = [brief.forecastHeightM, highestM(brief, day)]
  if (fromM === null || toM === null) return { ok: true, figure: middle }
  const fromTo = { fromM: given(fromM, 'm', 'given', {}, 'height of the forecast'), toM: given(toM, 'm', 'given', {}, 'highest point') }
  return { ok: true, figure: work(carriedUp, { airC: middle, ...fromTo }) }
}

function highestM(brief: Brief, day: number): number | null {
  const ends = brief.legs.filter((leg) => leg.day === day || leg.day === day - 1).flatMap(({ endHeightM }) => endHeightM ?? [])
  const heights = [...ends, ...brief.track.map(([, heightM]) => heightM)]
  return heights.length === 0 ? null : heights.reduce((most, height) => Math.max(most, height))
}
