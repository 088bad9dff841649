/**
 * Heights along the way from the legs alone, for drawing where there is no track: each leg's end lies climb − descent above its start.
 *   h(i) = h(i − 1) + climb(i) − descent(i), the whole line shifted onto the first camp height that is said
 * Inside a leg the line is straight: where it climbs is not known.
 */
import type { Leg } from './brief.ts'

export interface LegHeights {
  /** [m from the start, height m]; relative to the start where no height is said. */
  readonly points: readonly (readonly [number, number])[]
  readonly anchored: boolean
}

/** null: a length, climb or descent is not said, or there is no leg. */
export function heightsOfLegs(legs: readonly Leg[]): LegHeights | null {
  if (legs.length === 0) return null
  let [atM, heightM] = [0, 0]
  const points: [number, number][] = [[0, 0]]
  for (const leg of legs) {
    if (leg.lengthM === null || leg.climbM === null || leg.descentM === null) return null
    atM += leg.lengthM
    heightM += leg.climbM - leg.descentM
    points.push([atM, heightM])
  }
  const known = legs.findIndex((leg) => leg.endHeightM !== null)
  const shift = known < 0 ? 0 : legs[known]!.endHeightM! - points[known + 1]![1]
  return { points: points.map(([at, height]): readonly [number, number] => [at, height + shift]), anchored: known >= 0 }
}

/** The height on a line of [m, height], between neighbours in a straight line; the ends hold beyond it. */
export function heightOn(points: readonly (readonly [number, number])[], atM: number): number | null {
  const after = points.findIndex(([at]) => at >= atM)
  const i = after < 0 ? points.length - 1 : after
  if (i <= 0) return points[Math.max(0, i)]?.[1] ?? null
  const [[fromM, from], [toM, to]] = [points[i - 1]!, points[i]!]
  return toM === fromM || atM >= toM ? to : from + ((atM - fromM) / (toM - fromM)) * (to - from)
}
