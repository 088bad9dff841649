/**
 * Whether a row is a thing already known: by the words of its name (whole, in part, or by initials) and by its mass.
 *   alike = 2·shared ÷ (words of a + words of b); a word counts as shared whole, by a beginning of four letters (0.8), or as initials (FAK)
 * Choices, no source: the same name with masses within 15 % is the same thing; a name in part needs the same mass (1 g or 0.5 %).
 */
import { nameWords } from '../name-words.ts'
import type { KnownItem, MatchCode } from './preview.ts'

export interface Alike {
  readonly item: KnownItem
  readonly code: MatchCode
  /** Whether it is taken for the same thing unless the person says otherwise. */
  readonly same: boolean
}

export interface ClosetIndex {
  find(name: string, maker: string, mass_mg: number | null): Alike | null
}

interface Entry {
  readonly item: KnownItem
  readonly words: readonly string[]
}

/** Words that name half the closet find nothing; of a longer list only the first are compared. */
const mostCompared = 200

export function closetIndex(closet: readonly KnownItem[]): ClosetIndex {
  const byWord = new Map<string, Entry[]>()
  for (const item of closet) {
    const entry = { item, words: nameWords(item.name) }
    for (const word of keysOf(entry.words)) {
      const list = byWord.get(word)
      if (list) list.push(entry)
      else byWord.set(word, [entry])
    }
  }
  return {
    find(name, maker, mass_mg) {
      const words = nameWords(name)
      const alikes = candidates(byWord, words).flatMap((entry) => compare(words, maker, mass_mg, entry) ?? [])
      return alikes.reduce<Alike | null>((best, one) => (best && rank(best, mass_mg) >= rank(one, mass_mg) ? best : one), null)
    },
  }
}

/** A name is found by each of its words, by their beginnings and by its initials. */
const keysOf = (words: readonly string[]): ReadonlySet<string> =>
  new Set([...words, ...words.filter((word) => word.length > 4).map((word) => word.slice(0, 4)), ...initialRuns(words)])

function initialRuns(words: readonly string[]): readonly string[] {
  const letters = words.filter((word) => /^\p{L}/u.test(word)).map((word) => [...word][0]!)
  return letters.length < 2 || letters.length > 5 ? [] : [letters.join('')]
}

/** Entries that share a word, those of the rarest words first. */
function candidates(byWord: ReadonlyMap<string, readonly Entry[]>, words: readonly string[]): readonly Entry[] {
  const lists = [...keysOf(words)].map((word) => byWord.get(word) ?? []).toSorted((a, b) => a.length - b.length)
  const found = new Set<Entry>()
  for (const list of lists) {
    for (const entry of list) {
      if (found.size >= mostCompared) return [...found]
      found.add(entry)
    }
  }
  return [...found]
}

function compare(words: readonly string[], maker: string, mass_mg: number | null, { item, words: known }: Entry): Alike | null {
  if (!numbersAgree(words, known)) return null
  const { alike, inPart } = likeness(words, known)
  const masses = mass_mg === null || item.mass_mg === null ? null : Math.abs(mass_mg - item.mass_mg) / Math.max(mass_mg, item.mass_mg, 1)
  const isSameMass = mass_mg !== null && item.mass_mg !== null && Math.abs(mass_mg - item.mass_mg) <= Math.max(1000, item.mass_mg * 0.005)
  if (alike >= 0.99) {
    if (maker !== '' && item.maker !== '' && nameWords(maker).join() !== nameWords(item.maker).join() && !isSameMass) return null
    if (masses === null) return { item, code: 'same-name', same: true }
    if (isSameMass) return { item, code: 'same-name-and-mass', same: true }
    return { item, code: 'same-name-other-mass', same: masses <= 0.15 }
  }
  return isSameMass && inPart >= 0.6 && alike >= 0.5 ? { item, code: 'name-in-part-and-mass', same: true } : null
}

/** "Pot 750" is not "Pot 900", whatever else is alike. */
function numbersAgree(a: readonly string[], b: readonly string[]): boolean {
  const [numbersA, numbersB] = [a, b].map((words) => words.filter((word) => /^\d/u.test(word))) as [string[], string[]]
  return numbersA.length === 0 || numbersB.length === 0 || numbersA.some((one) => numbersB.includes(one))
}

export function likeness(a: readonly string[], b: readonly string[]): { readonly alike: number; readonly inPart: number } {
  if (a.length === 0 || b.length === 0) return { alike: 0, inPart: 0 }
  if (a.join('') === b.join('')) return { alike: 1, inPart: 1 }
  if (isInitials(a, b) || isInitials(b, a)) return { alike: 1, inPart: 1 }
  const left = [...b]
  let shared = 0
  for (const word of a) {
    const exact = left.indexOf(word)
    const near = exact >= 0 ? exact : left.findIndex((other) => beginsAlike(word, other))
    if (near < 0) continue
    shared += exact >= 0 ? 1 : 0.8
    left.splice(near, 1)
  }
  return { alike: (2 * shared) / (a.length + b.length), inPart: shared / Math.min(a.length, b.length) }
}

const beginsAlike = (a: string, b: string): boolean => a.length >= 4 && b.length >= 4 && (a.startsWith(b) || b.startsWith(a))

/** FAK and "first aid kit"; F.A.K. too. */
function isInitials(short: readonly string[], long: readonly string[]): boolean {
  const letters = short.join('')
  return (
    long.length >= 2 &&
    letters.length === long.length &&
    letters.length >= 3 &&
    long.every((word, at) => word.startsWith(letters[at]!)) &&
    short.every((word) => word.length === 1 || short.length === 1)
  )
}

function rank({ code, same, item }: Alike, mass_mg: number | null): number {
  const order: readonly MatchCode[] = ['same-name-other-mass', 'name-in-part-and-mass', 'same-name', 'same-name-and-mass']
  const closeness = mass_mg === null || item.mass_mg === null ? 0 : 1 / (1 + Math.abs(mass_mg - item.mass_mg) / 1000)
  return order.indexOf(code) + (same ? 10 : 0) + closeness * 0.9
}
