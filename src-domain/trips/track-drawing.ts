import { nearestOn } from './track-places.ts'
import type { AlongPoint, Track } from './track.ts'

/** Heights along the way for drawing: at most about `most` points, the highest and lowest of each stretch among them. */
export function profileOf(track: Track, most = 600): readonly (readonly [number, number])[] {
  const known = track.points.filter(hasHeight)
  if (known.length <= most) return known.map(({ atM, heightM }) => [round(atM, 1), round(heightM, 1)])
  const buckets = Math.max(1, Math.floor((most - 2) / 2))
  const chosen = new Set<AlongPoint>([known[0]!, known.at(-1)!])
  for (let bucket = 0; bucket < buckets; bucket++) {
    const part = known.slice(Math.floor((bucket * known.length) / buckets), Math.floor(((bucket + 1) * known.length) / buckets))
    chosen.add(part.reduce((a, b) => (b.heightM > a.heightM ? b : a)))
    chosen.add(part.reduce((a, b) => (b.heightM < a.heightM ? b : a)))
  }
  return known.filter((point) => chosen.has(point)).map(({ atM, heightM }) => [round(atM, 1), round(heightM, 1)])
}

/** The plan for drawing, [lat, lon], at most `most` points: those that the line would miss most. */
export function planOf(track: Track, most = 600): readonly (readonly [number, number])[] {
  const every = Math.max(1, Math.ceil(track.points.length / (8 * most)))
  const points = track.points.filter((_, i) => i % every === 0 || i === track.points.length - 1)
  return simplified(points, most).map(({ latDeg, lonDeg }) => [round(latDeg, 6), round(lonDeg, 6)])
}

type High = AlongPoint & { readonly heightM: number }
const hasHeight = (point: AlongPoint): point is High => point.heightM !== null

/** Under a metre nothing is seen on a plan. */
const SEEN_M = 1

interface Span {
  readonly from: number
  readonly to: number
  readonly at: number
  readonly offM: number
}

/** Adds the point furthest from the line drawn so far, again and again (Douglas and Peucker, furthest first). */
function simplified(points: readonly AlongPoint[], most: number): readonly AlongPoint[] {
  if (points.length < 3) return points
  const keep = new Set<number>([0, points.length - 1])
  const open = [furthest(points, 0, points.length - 1)]
  while (keep.size < most) {
    const next = open.reduce((a, b) => (b.offM > a.offM ? b : a))
    if (next.offM <= SEEN_M) break
    keep.add(next.at)
    open.splice(open.indexOf(next), 1, furthest(points, next.from, next.at), furthest(points, next.at, next.to))
  }
  return points.filter((_, i) => keep.has(i))
}

function furthest(points: readonly AlongPoint[], from: number, to: number): Span {
  let best = { from, to, at: from, offM: 0 }
  for (let i = from + 1; i < to; i++) {
    const { offM } = nearestOn(points[from]!, points[to]!, points[i]!)
    if (offM > best.offM) best = { from, to, at: i, offM }
  }
  return best
}

const round = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places
