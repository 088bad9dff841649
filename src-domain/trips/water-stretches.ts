/**
 * The way cut at its sources of water: hours on foot and camps on each stretch, from the trailhead and from each source on which the walker may count.
 * A source that is not sure is skipped; where water is protected or in drought only sure ones count, the likely are skipped too.
 * A camp within 200 m of a source draws from it (choice); any other is dry and its water is carried along the stretch it lies on.
 * At the trailhead bottles are full of safe water; what is fetched further on is as safe as its source.
 */
import type { Brief, WaterSource } from './brief.ts'
import type { CampNight } from './nights.ts'
import { hoursBetween, type TimedLeg } from './route.ts'

export const CAMP_AT_SOURCE_M = 200

export interface Stretch {
  readonly fromM: number
  readonly toM: number
  /** Where it was filled; null: at the trailhead. */
  readonly from: WaterSource | null
  readonly hours: number
  /** Camps that draw from the source it begins at. */
  readonly campsAtSource: number
  readonly dryCamps: number
  /** Highest high of the days it is walked on, °C; null: none is given for one of them. */
  readonly highC: number | null
}

export function stretchesOf(brief: Brief, legs: readonly TimedLeg[], nights: readonly CampNight[]): readonly Stretch[] {
  const endM = legs.at(-1)?.toM ?? 0
  const sources = countedOn(brief).filter((source) => source.atM >= 0 && source.atM <= endM)
  const starts: readonly (WaterSource | null)[] = [null, ...sources]
  return starts.map((from, i) => {
    const fromM = from?.atM ?? 0
    const toM = sources[i]?.atM ?? endM
    return {
      fromM,
      toM,
      from,
      hours: hoursBetween(legs, fromM, toM),
      campsAtSource: nights.filter((night) => night.atM !== null && nearest(sources, night.atM) === from && from !== null).length,
      dryCamps: nights.filter((night) => isDryWithin(night, sources, fromM, toM, endM)).length,
      highC: highestHigh(brief, legs, fromM, toM),
    }
  })
}

/** Sources the walker may count on, along the way. */
export function countedOn(brief: Pick<Brief, 'sources' | 'rules'>): readonly WaterSource[] {
  const strict = brief.rules.includes('protected-water')
  return brief.sources.filter((source) => source.sure === 'sure' || (source.sure === 'likely' && !strict)).toSorted((a, b) => a.atM - b.atM)
}

function nearest(sources: readonly WaterSource[], atM: number): WaterSource | null {
  let near: WaterSource | null = null
  for (const source of sources) {
    const off = Math.abs(source.atM - atM)
    if (off <= CAMP_AT_SOURCE_M && (near === null || off < Math.abs(near.atM - atM))) near = source
  }
  return near
}

/** On the last stretch the end counts too. */
function isDryWithin(night: CampNight, sources: readonly WaterSource[], fromM: number, toM: number, endM: number): boolean {
  if (night.atM === null || nearest(sources, night.atM) !== null) return false
  return night.atM >= fromM && (night.atM < toM || (toM === endM && night.atM <= endM && fromM < toM))
}

function highestHigh(brief: Brief, legs: readonly TimedLeg[], fromM: number, toM: number): number | null {
  let highest: number | null = null
  for (const { leg, fromM: from, toM: to } of legs) {
    if (to <= fromM || from >= toM) continue
    const highC = brief.days.find((one) => one.day === leg.day)?.highC ?? brief.highC
    if (highC === null) return null
    if (highest === null || highC > highest) highest = highC
  }
  return highest ?? brief.highC
}
