/**
 * Whether a scale has settled: two equal stable reports at least 0.3 s apart, and nothing else between them. The first report after
 * opening may be an old one and is thrown away. A pure step from state to state; the caller brings the time.
 */
import type { ScaleReport } from './scale-said.ts'

export const settleMs = 300

export interface Steadiness {
  /** Nothing has been heard yet: the next report is thrown away. */
  readonly isFresh: boolean
  /** The last report, for the large figure. */
  readonly shown: ScaleReport | null
  /** A stable mass and since when it has been said. */
  readonly since: { readonly massMg: number; readonly atMs: number } | null
  /** The mass to keep, or null while it moves or after it was taken. */
  readonly steadyMg: number | null
  /** Already taken and still on the plate: it is not offered twice. */
  readonly takenMg: number | null
}

export const justOpened: Steadiness = { isFresh: true, shown: null, since: null, steadyMg: null, takenMg: null }

/** The next state on a report at a moment (any clock that only goes forward; when it goes back the waiting starts again). */
export function heard(state: Steadiness, report: ScaleReport, atMs: number): Steadiness {
  if (state.isFresh) return { ...justOpened, isFresh: false }
  if (report.status !== 'stable') return { isFresh: false, shown: report, since: null, steadyMg: null, takenMg: null }
  const before = state.since?.massMg === report.massMg && atMs >= state.since.atMs ? state.since : null
  const since = before ?? { massMg: report.massMg, atMs }
  const takenMg = state.takenMg === report.massMg ? state.takenMg : null
  const isSteady = before !== null && atMs - since.atMs >= settleMs && takenMg === null
  return { isFresh: false, shown: report, since, steadyMg: isSteady ? report.massMg : null, takenMg }
}

/** The reading was kept: it is not offered again until the plate has moved. */
export const taken = (state: Steadiness): Steadiness => ({ ...state, steadyMg: null, takenMg: state.shown?.massMg ?? null })
