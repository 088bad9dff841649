/** The kit area that an item's name speaks for, by plain words of the trade; undefined when it says nothing. Always changeable. */
import { nameParts } from './name-words.ts'
import { tradeWord } from './trade-words.ts'
import type { KitArea } from './vocabulary.ts'

export interface AreaGuess {
  readonly area: KitArea
  /** The word that spoke for it. */
  readonly because: string
}

export function guessArea(name: string): AreaGuess | undefined {
  for (const part of [...nameParts(name), name]) {
    const found = tradeWord(part)
    if (found) return { area: found.area, because: found.words }
  }
  return undefined
}
