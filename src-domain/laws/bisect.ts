/**
 * The root of a steadily rising function between two bounds, by halving until the two neighbours are adjacent doubles.
 * Below the root the function is negative. A bound is returned where the function has no root inside: the caller tests for that first.
 */
export function rootOfRising(rising: (x: number) => number, low: number, high: number): number {
  let [below, above] = [low, high]
  for (let i = 0; i < 100; i++) {
    const middle = (below + above) / 2
    if (middle === below || middle === above) break
    if (rising(middle) < 0) below = middle
    else above = middle
  }
  return (below + above) / 2
}
