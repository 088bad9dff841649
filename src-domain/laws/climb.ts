/**
 * Climb and descent from heights along a way, by turning points: a turn counts only once the height has come back by a threshold.
 *   open run from base to extreme; a return of at least h closes it, up or down, and opens the next; the last run is added at the end
 * h m: 5 for satellite heights, 3 for a barometer, 2 for a terrain model (choice); with 0 it is the plain sum of differences.
 * Heights are despiked and smoothed first: with 5 m of noise on a true 1199 m the threshold alone says 7607 m (simulation of the note, indicative).
 * Properties: reversing swaps climb and descent; |climb − descent − (last − first)| < 2h; neither rises with h.
 * Source: established practice (read); parameters are choices. The published example's own sum is 13, where its text says 14.
 */
export interface Climb {
  readonly upM: number
  readonly downM: number
}

export function climbOf(heightsM: readonly number[], thresholdM: number): Climb {
  const first = heightsM[0]
  if (first === undefined) return { upM: 0, downM: 0 }
  let [low, high, base, extreme] = [first, first, first, first]
  let direction: -1 | 0 | 1 = 0
  let [up, down] = [0, 0]
  const returned = (by: number) => by >= thresholdM && by > 0
  for (const z of heightsM) {
    if (direction === 0) {
      low = Math.min(low, z)
      high = Math.max(high, z)
      if (returned(z - low)) [direction, base, extreme] = [1, low, z]
      else if (returned(high - z)) [direction, base, extreme] = [-1, high, z]
    } else if (direction === 1) {
      if (z > extreme) extreme = z
      else if (returned(extreme - z)) [up, base, extreme, direction] = [up + extreme - base, extreme, z, -1]
    } else if (z < extreme) extreme = z
    else if (returned(z - extreme)) [down, base, extreme, direction] = [down + base - extreme, extreme, z, 1]
  }
  if (direction === 1) up += extreme - base
  if (direction === -1) down += base - extreme
  return { upM: up, downM: down }
}
