import { stepM } from '../laws/geodesic.ts'
import type { MovingTime } from '../laws/moving-time.ts'
import { movingTime } from '../laws/moving-time.ts'
import type { HeightsFrom, TrackClimb } from './track-heights.ts'
import { heightsOf, joinedClimb } from './track-heights.ts'

/**
 * What a recorded or drawn track says of the way: length, robust climb, heights along it, pieces for the walking law, times.
 * Segments are never joined by a straight line for climb; the gap between them is counted apart. Heights that are missing are bridged
 * over at most 200 m; over more, only the net difference counts and the band widens by it. No heights at all: climb unknown, never 0.
 */
export interface TrackPoint {
  readonly latDeg: number
  readonly lonDeg: number
  readonly heightM: number | null
  readonly atMs: number | null
}

export interface Track {
  /** Along the segments, m; gaps between them not counted. */
  readonly lengthM: number
  readonly gapM: number
  /** Kept points in order, distance from the start with gaps counted in, so that a place along the way is one number. */
  readonly points: readonly AlongPoint[]
  readonly climb: TrackClimb | null
  readonly times: MovingTime | null
  readonly counts: { readonly points: number; readonly dropped: number; readonly withoutHeight: number; readonly segments: number }
}

export interface AlongPoint {
  readonly atM: number
  readonly latDeg: number
  readonly lonDeg: number
  /** Smoothed; null where nothing is known. */
  readonly heightM: number | null
  readonly segment: number
}

const NOISE_M = 3

/** Reads segments of points into a track. A segment without two places is still counted. */
export function readTrack(segments: readonly (readonly TrackPoint[])[], heightsFrom: HeightsFrom): Track {
  const timed = segments.map(withIncreasingTimes)
  const times = timesOf(timed)
  const lines = timed.map((segment, i) => kept(segment, times?.inBreak[i]))
  const raw = laidOut(lines)
  const climbs = raw.lines.map((line) => heightsOf(line, heightsFrom))
  return {
    lengthM: raw.lengthM,
    gapM: raw.gapM,
    points: raw.lines.flatMap((line, i) => line.map((point, j) => ({ ...point, heightM: climbs[i]!.heightsM[j]!, segment: i }))),
    climb: joinedClimb(climbs, heightsFrom),
    times,
    counts: {
      points: sum(segments, (segment) => segment.length),
      dropped: sum(segments, (segment) => segment.length) - sum(lines, (line) => line.length),
      withoutHeight: sum(segments, (segment) => segment.filter(({ heightM }) => heightM === null).length),
      segments: segments.length,
    },
  }
}

/** Points whose time does not increase are left out; a point without a time stays. */
function withIncreasingTimes(points: readonly TrackPoint[]): readonly TrackPoint[] {
  let latest = -Infinity
  return points.filter(({ atMs }) => {
    if (atMs === null) return true
    if (atMs <= latest) return false
    latest = atMs
    return true
  })
}

/** Times are read only where every point has one. */
function timesOf(segments: readonly (readonly TrackPoint[])[]): MovingTime | null {
  const all = segments.flat()
  if (all.length < 2 || all.some(({ atMs }) => atMs === null)) return null
  return movingTime(segments.map((points) => points.map(({ latDeg, lonDeg, atMs }) => ({ latDeg, lonDeg, atMs: atMs! }))))
}

/** Leaves out points inside breaks and those that moved less than 3 m: noise lengthens a track. A height that only they know is kept. */
function kept(points: readonly TrackPoint[], inBreak: readonly boolean[] | undefined): readonly TrackPoint[] {
  const line: TrackPoint[] = []
  points.forEach((point, i) => {
    const before = line.at(-1)
    if (before && (inBreak?.[i] === true || distance(before, point) < NOISE_M)) {
      if (before.heightM === null && point.heightM !== null) line[line.length - 1] = { ...before, heightM: point.heightM }
    } else line.push(point)
  })
  return line
}

function laidOut(lines: readonly (readonly TrackPoint[])[]) {
  let atM = 0
  let gapM = 0
  let before: TrackPoint | null = null
  const laid = lines.map((line) =>
    line.map((point, i) => {
      const step = before === null ? 0 : distance(before, point)
      if (i === 0) gapM += step
      atM += step
      before = point
      return { ...point, atM }
    }),
  )
  return { lines: laid, lengthM: atM - gapM, gapM }
}

type At = Pick<TrackPoint, 'latDeg' | 'lonDeg'>
const distance = (a: At, b: At): number => stepM(a.latDeg, a.lonDeg, b.latDeg, b.lonDeg)

function sum<T>(values: readonly T[], of: (value: T) => number): number {
  return values.reduce((all, value) => all + of(value), 0)
}
