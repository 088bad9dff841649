import { climbOf } from '../laws/climb.ts'
import { metresPerDegree, turn } from '../laws/geodesic.ts'
import type { Piece } from '../laws/walking-time.ts'
import type { HeightsFrom } from './track-heights.ts'
import { between, heightRules } from './track-heights.ts'
import type { AlongPoint, Track, TrackPoint } from './track.ts'

/** A stretch of the way, from one distance to another: what a leg needs to know. */
export interface Stretch {
  readonly lengthM: number
  readonly climbM: number | null
  readonly descentM: number | null
  readonly endHeightM: number | null
}

/** Cuts the way at the places given (distance from the start, increasing): one stretch before each cut and one after the last. */
export function cutTrack(track: Track, cutsM: readonly number[], heightsFrom: HeightsFrom): readonly Stretch[] {
  const endM = track.points.at(-1)?.atM ?? 0
  const marks = [0, ...cutsM.filter((at) => at > 0 && at < endM), endM]
  return marks.slice(1).map((to, i) => stretch(track, marks[i]!, to, heightRules[heightsFrom].thresholdM))
}

/** The place along the way nearest to a waypoint, and how far off the way it lies. */
export function snap(
  track: Track,
  place: { readonly latDeg: number; readonly lonDeg: number },
): { readonly atM: number; readonly offM: number } | null {
  const { points } = track
  if (points.length === 0) return null
  let best = { atM: points[0]!.atM, offM: Math.hypot(...offset(points[0]!, place)) }
  for (let i = 1; i < points.length; i++) {
    const found = nearestOn(points[i - 1]!, points[i]!, place)
    if (found.offM < best.offM) best = found
  }
  return best
}

/** Pieces of 25 m for the walking law, from smoothed heights; without heights they are level. A remainder under 5 m joins its neighbour. */
export function piecesOf(track: Track): readonly Piece[] {
  return bySegment(track.points).flatMap((line) => {
    const from = line[0]!.atM
    const to = line.at(-1)!.atM
    if (to === from) return []
    const count = Math.max(
      1,
      (to - from) % PIECE_M < SHORTEST_PIECE_M ? Math.floor((to - from) / PIECE_M) : Math.ceil((to - from) / PIECE_M),
    )
    const edges = Array.from({ length: count + 1 }, (_, i) => (i === count ? to : from + i * PIECE_M))
    const heights = heightsAt(line, edges)
    return edges.slice(1).map((edge, i) => ({ lengthM: edge - edges[i]!, riseM: rise(heights[i]!, heights[i + 1]!, edge - edges[i]!) }))
  })
}

const PIECE_M = 25
const SHORTEST_PIECE_M = 5

function stretch(track: Track, fromM: number, toM: number, thresholdM: number): Stretch {
  let lengthM = 0
  let [up, down, known] = [0, 0, 0]
  let endHeightM: number | null = null
  for (const line of bySegment(track.points)) {
    const [from, to] = [Math.max(fromM, line[0]!.atM), Math.min(toM, line.at(-1)!.atM)]
    if (to <= from) continue
    lengthM += to - from
    const edges = [from, ...line.map(({ atM }) => atM).filter((atM) => atM > from && atM < to), to]
    const heights = heightsAt(line, edges)
    const found = heights.filter((height) => height !== null)
    endHeightM = heights.at(-1) ?? endHeightM
    known += found.length
    const climb = climbOf(found, thresholdM)
    up += climb.upM
    down += climb.downM
  }
  return { lengthM, climbM: known > 1 ? up : null, descentM: known > 1 ? down : null, endHeightM }
}

function bySegment(points: readonly AlongPoint[]): readonly (readonly AlongPoint[])[] {
  const lines: AlongPoint[][] = []
  for (const point of points) {
    const line = lines.at(-1)
    if (line?.[0]!.segment === point.segment) line.push(point)
    else lines.push([point])
  }
  return lines
}

/** Heights at places along one segment, in a line between known neighbours; null where either is unknown. Places must increase. */
function heightsAt(line: readonly AlongPoint[], placesM: readonly number[]): readonly (number | null)[] {
  let i = 0
  return placesM.map((place) => {
    while (i < line.length - 2 && line[i + 1]!.atM < place) i++
    const [a, b] = [line[i]!, line[Math.min(i + 1, line.length - 1)]!]
    if (place <= a.atM) return a.heightM
    if (place >= b.atM) return b.heightM
    return hasHeight(a) && hasHeight(b) ? between(a, b, place) : null
  })
}

function rise(from: number | null, to: number | null, lengthM: number): number {
  if (from === null || to === null) return 0
  return Math.max(-lengthM, Math.min(lengthM, to - from))
}

const hasHeight = (point: AlongPoint): boolean => point.heightM !== null

type At = Pick<TrackPoint, 'latDeg' | 'lonDeg'>

/** Metres east and north of b from a, on the plane that touches there: right for neighbours. */
function offset(a: At, b: At): readonly [number, number] {
  const { north, east } = metresPerDegree((a.latDeg + b.latDeg) / 2)
  return [east * turn(b.lonDeg - a.lonDeg), north * (b.latDeg - a.latDeg)]
}

/** The nearest place to another on the straight piece from a to b. */
export function nearestOn(a: AlongPoint, b: AlongPoint, place: At): { readonly atM: number; readonly offM: number } {
  const [bx, by] = offset(a, b)
  const [px, py] = offset(a, place)
  const square = bx * bx + by * by
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, (px * bx + py * by) / square))
  return { atM: a.atM + share * (b.atM - a.atM), offM: Math.hypot(px - share * bx, py - share * by) }
}
