import type { Lane } from './vocabulary.ts'

/** Duties whose items are usually worn or in hand while walking (common practice, no source). */
const worn: ReadonlySet<string> = new Set(['shoes', 'socks', 'base-layer', 'legwear', 'sun-cover'])
const inHand = /\b(?:trekking|walking|hiking) poles?\b/i

/** The lane an item usually goes to, guessed from its duties and name; the person may change it. */
export const guessLane = (name: string, duties: readonly string[]): Lane =>
  inHand.test(name) || duties.some((duty) => worn.has(duty)) ? 'on_me' : 'in_pack'
