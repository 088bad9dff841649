import { stepM } from './geodesic.ts'

/**
 * Time on the move from a recorded walk.
 *   moving = elapsed − breaks − gaps between segments;  a break: within 15 m of where it began for 60 s and more (choice)
 * Points whose time does not increase are left out. Over 3 m/s for over 60 s is not walking: such a walk teaches no pace.
 * A gap of over 90 min splits the walk: it is neither moving nor a break, as every gap.
 * Source: choice.
 */
export interface TimedPoint {
  readonly latDeg: number
  readonly lonDeg: number
  readonly atMs: number
}

export interface MovingTime {
  readonly elapsedS: number
  readonly movingS: number
  readonly breakS: number
  readonly gapS: number
  /** Longest time at over 3 m/s was over a minute. */
  readonly isNotWalking: boolean
  /** A gap of over 90 min lies inside. */
  readonly isSplit: boolean
  /** For each segment, the points that lie inside a break: their wandering is not distance. */
  readonly inBreak: readonly (readonly boolean[])[]
}

const BREAK_M = 15
const BREAK_S = 60
const WALKING_MS = 3
const SPLIT_S = 90 * 60

/** Segments must be in order and their times increasing. */
export function movingTime(segments: readonly (readonly TimedPoint[])[]): MovingTime {
  const parts = segments.filter((segment) => segment.length > 0)
  const gaps = parts.slice(1).map((segment, i) => Math.max(0, secondsBetween(parts[i]!.at(-1)!, segment[0]!)))
  const insideS = parts.reduce((sum, segment) => sum + secondsBetween(segment[0]!, segment.at(-1)!), 0)
  const found = segments.map(breaksOf)
  const breakS = found.reduce((sum, { seconds }) => sum + seconds, 0)
  const gapS = gaps.reduce((sum, gap) => sum + gap, 0)
  return {
    elapsedS: insideS + gapS,
    movingS: insideS - breakS,
    breakS,
    gapS,
    isNotWalking: segments.some(isTooFast),
    isSplit: gaps.some((gap) => gap > SPLIT_S),
    inBreak: found.map(({ inBreak }) => inBreak),
  }
}

const secondsBetween = (a: TimedPoint, b: TimedPoint): number => (b.atMs - a.atMs) / 1000
const metresBetween = (a: TimedPoint, b: TimedPoint): number => stepM(a.latDeg, a.lonDeg, b.latDeg, b.lonDeg)

function breaksOf(points: readonly TimedPoint[]): { readonly seconds: number; readonly inBreak: readonly boolean[] } {
  const inBreak = new Array<boolean>(points.length).fill(false)
  let seconds = 0
  let i = 0
  while (i < points.length) {
    const last = lastWithin(points, i)
    const stood = secondsBetween(points[i]!, points[last]!)
    if (stood >= BREAK_S) {
      seconds += stood
      inBreak.fill(true, i + 1, last + 1)
    }
    i = stood >= BREAK_S ? last : i + 1
  }
  return { seconds, inBreak }
}

/** The last of the points that stay near point `from` without leaving. */
function lastWithin(points: readonly TimedPoint[], from: number): number {
  let last = from
  while (last + 1 < points.length && metresBetween(points[from]!, points[last + 1]!) <= BREAK_M) last++
  return last
}

function isTooFast(points: readonly TimedPoint[]): boolean {
  let fastS = 0
  for (let i = 1; i < points.length; i++) {
    const dt = secondsBetween(points[i - 1]!, points[i]!)
    fastS = metresBetween(points[i - 1]!, points[i]!) > WALKING_MS * dt ? fastS + dt : 0
    if (fastS > BREAK_S) return true
  }
  return false
}
