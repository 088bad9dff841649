/**
 * Smooths the heights of a track: each becomes the mean of all within ± w metres along the way.
 *   near an end w shrinks to the distance to that end, so that the first and last height stay
 * w m: 40 for satellite heights, 20 for a barometer, 0 for a planned line on a good terrain model (choice).
 * It costs about w/2 × slope at each turn of the way: that belongs to the band.
 * Source: choice, after established practice (read).
 */
export function smoothed(atM: readonly number[], heightsM: readonly number[], halfWidthM: number): readonly number[] {
  if (halfWidthM <= 0 || heightsM.length < 3) return heightsM
  const sums = runningSums(heightsM)
  const first = atM[0]!
  const last = atM[atM.length - 1]!
  return heightsM.map((_, i) => {
    const at = atM[i]!
    // A hair's breadth, so that a point that lies on the edge is not lost to rounding.
    const reach = Math.min(halfWidthM, at - first, last - at) + 1e-9
    const from = firstAtOrAfter(atM, at - reach)
    const to = firstAtOrAfter(atM, at + reach)
    return (sums[to]! - sums[from]!) / (to - from)
  })
}

function runningSums(values: readonly number[]): readonly number[] {
  const sums = [0]
  for (const value of values) sums.push(sums[sums.length - 1]! + value)
  return sums
}

function firstAtOrAfter(atM: readonly number[], place: number): number {
  let low = 0
  let high = atM.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (atM[middle]! < place) low = middle + 1
    else high = middle
  }
  return low
}
