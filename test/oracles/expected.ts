/**
 * What a check of a worked trip is expected to find, and the rule of states, written from the words of the design (not from the program's code).
 *   reserve = |enough − need|; short: have on the wrong side of need · tight: not yet at enough, or nearer to need than u · else enough
 */
export interface Expected {
  readonly have: number
  readonly need: number
  readonly enough: number
  /** One standard uncertainty of have − need. */
  readonly u: number
  readonly wants: 'at least' | 'at most'
  /** How far our figure may lie from this one, in the figure's unit; the reason stands beside each. */
  readonly tolerance: number
}

export type State = 'enough' | 'tight' | 'short'

export function stateOf({ have, need, enough, u, wants }: Expected): State {
  const spare = wants === 'at least' ? have - need : need - have
  const reserve = Math.abs(enough - need)
  if (spare < 0) return 'short'
  return spare >= reserve && spare >= u ? 'enough' : 'tight'
}

/** Doubts that have nothing in common add as squares. */
export const squares = (...parts: readonly number[]): number => Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0))

export const sumOf = (parts: readonly number[]): number => parts.reduce((sum, part) => sum + part, 0)

/** Where `f` changes sign between low and high, by halving a hundred times. */
export function rootOf(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high]
  const rises = f(b) > f(a)
  for (let i = 0; i < 100; i++) {
    const middle = (a + b) / 2
    if (f(middle) > 0 === rises) b = middle
    else a = middle
  }
  return (a + b) / 2
}

/** A count of things that are there or not. */
export const counted = (have: number, need: number, enough = need): Expected => ({
  have,
  need,
  enough,
  u: 0,
  wants: 'at least',
  tolerance: 0,
})
