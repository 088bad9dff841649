import type { Walking } from './lcda-2022.ts'
import { lcda2022 } from './lcda-2022.ts'

/**
 * The speed at which walking costs a given power: how load or ground slow a walker who works as hard as before.
 *   P(S) = P₀, S by bisection on 0.05 … 2.5 m/s
 * A consequence of the power law, not a measurement: walkers also choose to work harder. Uphill each further tenth of body mass
 * costs 8 to 12 points of the unloaded climbing speed.
 * Source: the power law given; equal effort is a choice.
 */
export function speedAtPower(powerAt: (speedMs: number) => number, powerW: number): number {
  let low = SLOWEST_MS
  let high = FASTEST_MS
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (powerAt(middle) < powerW) low = middle
    else high = middle
  }
  return (low + high) / 2
}

const SLOWEST_MS = 0.05
const FASTEST_MS = 2.5

/** Speed of equal effort when the state changes, over the speed before: 1 if nothing changed. */
export function speedRatio(
  before: Walking,
  change: Partial<Walking>,
  powerOf: (at: Walking) => number = (at) => lcda2022.compute(at),
): number {
  const speedMs = speedAtPower((speed) => powerOf({ ...before, ...change, speedMs: speed }), powerOf(before))
  return speedMs / before.speedMs
}
