/**
 * Duties that an item's name suggests, by plain words of the trade. A suggestion only: the person ticks what is true.
 * "Hat + gloves" suggests both; a name without a word of the trade suggests none.
 */
import { nameParts } from './name-words.ts'
import { tradeWord } from './trade-words.ts'

export function guessDuties(name: string): readonly string[] {
  const parts = nameParts(name)
  const fromParts = parts.flatMap((part) => tradeWord(part)?.duties ?? [])
  const found = fromParts.length > 0 || parts.some((part) => tradeWord(part)) ? fromParts : (tradeWord(name)?.duties ?? [])
  return [...new Set(found)]
}
