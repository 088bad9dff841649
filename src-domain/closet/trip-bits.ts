/**
 * Sets of trips as bits, thirty-two to a word: twenty thousand things against five hundred trips are counted, not looked through.
 */
export type Bits = Uint32Array

export const noBits = (trips: number): Bits => new Uint32Array(Math.ceil(trips / 32))
export const setBit = (bits: Bits, at: number): void => void (bits[at >>> 5]! |= 1 << (at & 31))
export const clearBit = (bits: Bits, at: number): void => void (bits[at >>> 5]! &= ~(1 << (at & 31)))
export const hasBit = (bits: Bits, at: number): boolean => ((bits[at >>> 5]! >>> (at & 31)) & 1) === 1

/** `into` takes on what `other` holds too. */
export function addBits(into: Bits, other: Bits): Bits {
  for (let i = 0; i < into.length; i++) into[i]! |= other[i]!
  return into
}

/** `into` keeps what `other` holds too. */
export function keepBits(into: Bits, other: Bits): Bits {
  for (let i = 0; i < into.length; i++) into[i]! &= other[i]!
  return into
}

/** How many trips: the usual sum of bits within a word (common practice). */
export function countBits(bits: Bits): number {
  let all = 0
  for (let word of bits) {
    word -= (word >>> 1) & 0x55555555
    word = (word & 0x33333333) + ((word >>> 2) & 0x33333333)
    all += (((word + (word >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24
  }
  return all
}
