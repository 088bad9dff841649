import { climbOf } from '../laws/climb.ts'
import { despiked } from '../laws/heights-despiked.ts'
import { smoothed } from '../laws/heights-smoothed.ts'

/**
 * Heights and climb of one segment of a track: missing heights bridged, spikes taken out, smoothed, turns counted.
 * Parameters by where the heights come from: smoothing ± w, threshold h, band (2u). All choices (walking.md 6.3).
 */
export type HeightsFrom = 'satellite' | 'barometer' | 'terrain'

/** Climb and descent of the whole track. */
export interface TrackClimb {
  readonly upM: number
  readonly downM: number
  /** Shown band (2u) of each. */
  readonly upBandM: number
  readonly downBandM: number
  /** Length over which heights were missing too far to bridge. */
  readonly bridgedM: number
  /** Some heights at the start or end of a segment are unknown. */
  readonly isPartial: boolean
}

export const heightRules: Readonly<
  Record<HeightsFrom, { readonly halfWidthM: number; readonly thresholdM: number; readonly band: number }>
> = {
  satellite: { halfWidthM: 40, thresholdM: 5, band: 0.1 },
  barometer: { halfWidthM: 20, thresholdM: 3, band: 0.05 },
  terrain: { halfWidthM: 0, thresholdM: 2, band: 0.03 },
}
const BRIDGE_M = 200

interface Place {
  readonly atM: number
  readonly heightM: number | null
}

export interface Heights {
  readonly heightsM: readonly (number | null)[]
  readonly upM: number
  readonly downM: number
  readonly bridgedM: number
  /** Net differences over bridged stretches: they widen the band. */
  readonly doubtM: number
  readonly known: number
  readonly isPartial: boolean
}

export function heightsOf(line: readonly Place[], heightsFrom: HeightsFrom): Heights {
  const { halfWidthM, thresholdM } = heightRules[heightsFrom]
  const heightsM = new Array<number | null>(line.length).fill(null)
  const [climb, bridge] = [
    { upM: 0, downM: 0 },
    { bridgedM: 0, doubtM: 0 },
  ]
  const runs = knownRuns(line)
  runs.forEach((run, i) => {
    const heights = smoothed(run.atM, despiked(run.atM, run.heightsM), halfWidthM)
    heights.forEach((height, j) => (heightsM[run.from + j] = height))
    const { upM, downM } = climbOf(heights, thresholdM)
    climb.upM += upM
    climb.downM += downM
    const next = runs[i + 1]
    if (!next) return
    const net = next.heightsM[0]! - run.heightsM.at(-1)!
    climb.upM += Math.max(0, net)
    climb.downM += Math.max(0, -net)
    bridge.doubtM += Math.abs(net)
    bridge.bridgedM += next.atM[0]! - run.atM.at(-1)!
  })
  const known = sum(runs, (run) => run.heightsM.length)
  const isPartial = line.length > 0 && (line[0]!.heightM === null || line.at(-1)!.heightM === null)
  return { heightsM, ...climb, ...bridge, known, isPartial }
}

interface Run {
  readonly from: number
  readonly atM: number[]
  readonly heightsM: number[]
}

/** Stretches with heights, missing ones in between filled in a line where the gap is at most 200 m. */
function knownRuns(line: readonly Place[]): readonly Run[] {
  const runs: Run[] = []
  let last = -1
  line.forEach((point, i) => {
    if (point.heightM === null) return
    const before = last < 0 ? null : line[last]!
    const run = runs.at(-1)
    if (run && before && (i === last + 1 || point.atM - before.atM <= BRIDGE_M)) {
      for (let j = last + 1; j < i; j++) push(run, line[j]!.atM, between(before, point, line[j]!.atM))
      push(run, point.atM, point.heightM)
    } else runs.push({ from: i, atM: [point.atM], heightsM: [point.heightM] })
    last = i
  })
  return runs
}

function push(run: Run, atM: number, heightM: number): void {
  run.atM.push(atM)
  run.heightsM.push(heightM)
}

/** The segments' climbs together; null when no height is known at all. */
export function joinedClimb(all: readonly Heights[], heightsFrom: HeightsFrom): TrackClimb | null {
  if (sum(all, ({ known }) => known) === 0) return null
  const { band } = heightRules[heightsFrom]
  const upM = sum(all, (part) => part.upM)
  const downM = sum(all, (part) => part.downM)
  const doubtM = sum(all, (part) => part.doubtM)
  return {
    upM,
    downM,
    upBandM: band * upM + doubtM,
    downBandM: band * downM + doubtM,
    bridgedM: sum(all, (part) => part.bridgedM),
    isPartial: all.some((part) => part.isPartial),
  }
}

/** The height in a line between two places that have one. */
export function between(a: Place, b: Place, atM: number): number {
  const share = b.atM === a.atM ? 0 : (atM - a.atM) / (b.atM - a.atM)
  return a.heightM! + share * (b.heightM! - a.heightM!)
}

function sum<T>(values: readonly T[], of: (value: T) => number): number {
  return values.reduce((all, value) => all + of(value), 0)
}
