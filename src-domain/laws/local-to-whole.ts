/**
 * What insulation on one part of the body is worth over all of it: zones lose heat side by side.
 *   1/R = Σ ai/(Ri + Ra)      R with the air layer, m²K/W; ai shares of the area, Σ ai = 1 (else `clothing.zones`)
 * Why 3 clo on the label of a jacket (trunk and arms, 49 %) is about half a clo for the wearer. A label's clo is local: convert it here.
 * Source: parallel conductances (physics); area shares after DuBois (memory).
 */
import { CLO_RSI } from './clothed-balance.ts'
import { outside, within, type Ranged } from './ranged.ts'

export interface Zone {
  readonly share: number
  /** Resistance of clothing and air layer there, m²K/W. */
  readonly rsi: number
}

export const TRUNK_AND_ARMS_SHARE = 0.49

/** Resistance over the whole body, air layer included. */
export function wholeRsi(zones: readonly Zone[]): Ranged {
  const shares = zones.reduce((sum, { share }) => sum + share, 0)
  if (!(Math.abs(shares - 1) < 1e-9 && zones.every(({ rsi, share }) => rsi > 0 && share >= 0))) return outside('clothing.zones', { shares })
  return within(1 / zones.reduce((sum, { share, rsi }) => sum + share / rsi, 0))
}

/** Whole-body clo gained by adding a local resistance over a share of the body that is otherwise evenly clothed. */
export function gainedClo(evenRsi: number, localRsi: number, share = TRUNK_AND_ARMS_SHARE): Ranged {
  const whole = wholeRsi([
    { share: 1 - share, rsi: evenRsi },
    { share, rsi: evenRsi + localRsi },
  ])
  return whole.ok ? within((whole.value - evenRsi) / CLO_RSI) : whole
}
