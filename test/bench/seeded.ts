/** Repeatable chance for invented data: a linear congruence modulo 2³² (common practice); the same seed gives the same data on every machine. */
export interface Chance {
  /** A whole number from 0 to below n. */
  readonly below: (n: number) => number
  readonly pick: <T>(list: readonly T[]) => T
}

export function seeded(seed: number): Chance {
  let state = seed >>> 0
  const below = (n: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((state / 2 ** 32) * n)
  }
  return { below, pick: (list) => list[below(list.length)]! }
}
