import { ok, fault, type Outcome } from '../../src-domain/figures/fault.ts'
import { heightRules, type HeightsFrom } from '../../src-domain/trips/track-heights.ts'
import { readTrack } from '../../src-domain/trips/track.ts'
import type { TrackFound, TrackLine } from '../answers.ts'
import { readGpx, type GpxLine } from './gpx.ts'

export const isHeightsFrom = (text: string | undefined): text is HeightsFrom => text !== undefined && Object.hasOwn(heightRules, text)

/**
 * Reads a track file as it comes in: at most one piece of the file, and the points that came of it, are in memory.
 * Lines of fewer than two points are no way to walk and are left out; a file with nothing else than those is refused.
 */
export async function readTrackFile(from: AsyncIterable<Uint8Array>, heightsFrom: HeightsFrom): Promise<Outcome<TrackFound>> {
  const read = await readGpx(breathing(from))
  if (!read.ok) return read
  const { tracks, routes, waypoints, ignored } = read.value
  const lines = [
    ...tracks.map((line) => lineOf('track', line, heightsFrom)),
    ...routes.map((line) => lineOf('route', line, heightsFrom)),
  ].filter((line) => line.points.length > 1)
  if (lines.length === 0) return fault('track.unreadable', { why: 'no-points' })
  return ok({ lines, waypoints, ignored })
}

/** Between two pieces of a long file other calls get their turn. */
async function* breathing(from: AsyncIterable<Uint8Array>): AsyncIterable<Uint8Array> {
  for await (const part of from) {
    yield part
    await new Promise((resolve) => setImmediate(resolve))
  }
}

function lineOf(kind: TrackLine['kind'], { name, segments }: GpxLine, heightsFrom: HeightsFrom): TrackLine {
  const { points, times: _times, ...track } = readTrack(segments, heightsFrom)
  return {
    kind,
    name,
    ...track,
    points: points.map(({ atM, latDeg, lonDeg, heightM, segment }) => [rounded(atM, 2), latDeg, lonDeg, rounded(heightM, 2), segment]),
  }
}

function rounded(value: number, places: number): number
function rounded(value: number | null, places: number): number | null
function rounded(value: number | null, places: number): number | null {
  return value === null ? null : Math.round(value * 10 ** places) / 10 ** places
}
