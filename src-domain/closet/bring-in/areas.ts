/** The sheet's own words for groups of things, matched to kit areas: one table that the person can change. */
import { guessArea } from '../guess-area.ts'
import type { KitArea } from '../vocabulary.ts'
import type { Choices, WordArea } from './choices.ts'
import { said } from './choices.ts'
import { areaOfWord, plainWord } from './plain-words.ts'
import type { RowPreview, WordMatch } from './preview.ts'
import type { RawRow } from './raw-rows.ts'

export interface AreaWords {
  readonly words: readonly WordMatch[]
  areaOf(raw: RawRow): { readonly area: KitArea; readonly from: RowPreview['areaFrom'] }
}

export function areaWords(rows: readonly RawRow[], choices: Choices): AreaWords {
  const found = new Map<string, { word: string; area: WordArea; from: WordMatch['from']; rows: number }>()
  for (const { kind, areaWord } of rows) {
    if (kind !== 'item' || areaWord === '') continue
    const key = plainWord(areaWord)
    const before = found.get(key)
    if (before) before.rows += 1
    else found.set(key, { word: areaWord, ...meant(areaWord, choices), rows: 1 })
  }
  return {
    words: [...found.values()].toSorted((a, b) => b.rows - a.rows),
    areaOf(raw) {
      if (raw.choice.area) return { area: raw.choice.area, from: 'person' }
      const word = raw.areaWord === '' ? undefined : found.get(plainWord(raw.areaWord))
      if (word && word.area !== 'by_name') return { area: word.area, from: 'word' }
      const guess = guessArea(raw.name)
      return guess ? { area: guess.area, from: 'name' } : { area: 'extras', from: 'none' }
    },
  }
}

function meant(word: string, choices: Choices): { area: WordArea; from: WordMatch['from'] } {
  const person = said(choices.words, word)
  if (person) return { area: person, from: 'person' }
  const area = areaOfWord(word)
  return { area: area ?? 'by_name', from: area === undefined ? 'none' : 'words' }
}
