/**
 * Takes single wild heights out of a track: a height more than 10 m from the median of its neighbours becomes that median.
 *   neighbours: two either side, itself not, within 60 m along the way; without one on each side a height is left alone
 * A plain running median is wrong here: it cuts every summit, pass and end by one spacing.
 * Source: choice, after established practice (read).
 */
export function despiked(atM: readonly number[], heightsM: readonly number[]): number[] {
  return heightsM.map((height, i) => {
    const before = neighbours(atM, heightsM, i, -1)
    const after = neighbours(atM, heightsM, i, 1)
    if (before.length === 0 || after.length === 0) return height
    const middle = median([...before, ...after])
    return Math.abs(height - middle) > SPIKE_M ? middle : height
  })
}

const SPIKE_M = 10
const NEAR_M = 60

function neighbours(atM: readonly number[], heightsM: readonly number[], i: number, side: -1 | 1): number[] {
  const found: number[] = []
  for (let step = 1; step <= 2; step++) {
    const j = i + side * step
    if (j < 0 || j >= atM.length || Math.abs(atM[j]! - atM[i]!) > NEAR_M) break
    found.push(heightsM[j]!)
  }
  return found
}

function median(values: number[]): number {
  values.sort((a, b) => a - b)
  const half = values.length >> 1
  return values.length % 2 === 1 ? values[half]! : (values[half - 1]! + values[half]!) / 2
}
