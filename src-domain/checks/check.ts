import { uncertainty, difference, type Figure } from '../figures/figure.ts'
import type { Loadout } from '../loadout/loadout.ts'
import type { Brief, Trip } from '../trips/brief.ts'
import type { Walker } from '../trips/walker.ts'

/**
 * The rule of a check: three figures in one unit, have, need and enough, and a direction.
 *   reserve = |enough − need|, never negative      u = one standard uncertainty of have − need, netted leaf by leaf
 *   short: have on the wrong side of need · tight: not short, and not yet at enough or nearer to need than u
 *   enough: at or past enough and at least u past need · unknown: an input is missing, named · not asked: the brief does not pose it
 */
export type State = 'enough' | 'tight' | 'short' | 'unknown' | 'not-asked'

/** A sentence's code and its facts; the window has the words. */
export interface Saying {
  readonly code: string
  readonly facts?: Readonly<Record<string, string | number>>
}

export interface Asked {
  readonly loadout: Loadout
  readonly brief: Brief
  readonly trip: Trip
  readonly walker: Walker
  /** The local date, given: checks know no clock. */
  readonly today: string
}

export interface Found {
  readonly state: 'enough' | 'tight' | 'short'
  readonly have: Figure
  readonly need: Figure
  readonly enough: Figure
  readonly wants: 'at least' | 'at most'
  /** How far past need, in reserves (in u where the reserve is 0; 1 for a count): the place on the gauge. Right is good. */
  readonly margin: number
  /** Half a whisker on that gauge. */
  readonly marginU: number
  /** The second line of the rail where it says more than need and have. */
  readonly saying: readonly Saying[]
  readonly cautions: readonly string[]
}

export type Finding =
  | Found
  | { readonly state: 'unknown'; readonly missing: Saying; readonly cautions: readonly string[] }
  | { readonly state: 'not-asked'; readonly why: Saying }

export interface Check {
  readonly id: string
  readonly label: string
  /** Duties whose items mend it: clicking the check filters the shelf to these. */
  readonly duties: readonly string[]
  /** The check reads only the loadout: it is asked without a brief too. */
  readonly withoutBrief: boolean
  readonly find: (asked: Asked) => Finding
}

export const unknown = (code: string, facts?: Saying['facts'], cautions: readonly string[] = []): Finding => ({
  state: 'unknown',
  missing: facts === undefined ? { code } : { code, facts },
  cautions,
})

export const notAsked = (code: string): Finding => ({ state: 'not-asked', why: { code } })

export interface Measured {
  readonly have: Figure
  readonly need: Figure
  readonly enough: Figure
  readonly wants: 'at least' | 'at most'
  /** Caps of the science notes: the best state this can be. */
  readonly best?: 'tight'
  readonly saying?: readonly Saying[]
  readonly cautions?: readonly string[]
  /** Shown as one standard uncertainty instead of have − need (before-dark states its own spread). */
  readonly u?: number
  /** A check that counts: one unit across the gauge is one. */
  readonly counts?: boolean
}

/** Applies the rule to three figures. A figure that is not a number is a bug here, not a state: unknown is decided before. */
export function found(measured: Measured): Found {
  const { have, need, enough, wants } = measured
  if (![have, need, enough].every((figure) => Number.isFinite(figure.value)))
    throw new Error(`A check found ${have.value}, ${need.value}, ${enough.value}`)
  const sign = wants === 'at least' ? 1 : -1
  const past = sign * (have.value - need.value)
  const reserve = Math.abs(enough.value - need.value)
  const u = measured.u ?? uncertainty(difference('have − need', { name: 'have', figure: have }, { name: 'need', figure: need }))
  const one = measured.counts ? 1 : reserve > 0 ? reserve : u > 0 ? u : 1
  const state = past < 0 ? 'short' : past < reserve || past < u ? 'tight' : 'enough'
  return {
    state: state === 'enough' && measured.best === 'tight' ? 'tight' : state,
    have,
    need,
    enough,
    wants,
    margin: past / one,
    marginU: measured.counts ? 0 : u / one,
    saying: measured.saying ?? [],
    cautions: measured.cautions ?? [],
  }
}
