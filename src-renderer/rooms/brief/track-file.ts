import type { TrackFound, TrackLine } from '../../../src-main/contract.ts'
import { fault, type Outcome } from '../../../src-domain/figures/fault.ts'
import type { HeightsFrom } from '../../../src-domain/trips/track-heights.ts'
import type { Track } from '../../../src-domain/trips/track.ts'
import { program } from '../../state/program.svelte.ts'

/** Sends a track to the program, which reads it as it comes in and keeps nothing; null: given up. */
export async function readTrackFile(file: Blob, heightsFrom: HeightsFrom, signal: AbortSignal): Promise<Outcome<TrackFound> | null> {
  try {
    const headers = { 'content-type': 'application/octet-stream' }
    const answer = await program.host?.fetch(`/track/${heightsFrom}`, { method: 'POST', body: file, headers, signal })
    return answer === undefined ? fault('program.gone') : ((await answer.json()) as Outcome<TrackFound>)
  } catch {
    return signal.aborted ? null : fault('file.unreadable')
  }
}

/** A line as the domain reads tracks. */
export function trackOf({ points, kind: _kind, name: _name, ...line }: TrackLine): Track {
  return {
    ...line,
    times: null,
    points: points.map(([atM, latDeg, lonDeg, heightM, segment]) => ({ atM, latDeg, lonDeg, heightM, segment })),
  }
}
