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

/** Of the things that weigh the same so many are compared. */
const mostCompared = 300

/** Found by the whole name, by its words in another order, by its initials; and, since a name in part needs the same mass, by mass. */
export function closetIndex(closet: readonly KnownItem[]): ClosetIndex {
  const byKey = new Map<string, Entry[]>()
  const byGram = new Map<number, Entry[]>()
  for (const item of closet) {
    const entry = { item, words: nameWords(item.name) }
    for (const key of keysOf(entry.words)) add(byKey, key, entry)
    if (item.mass_mg !== null) add(byGram, gramOf(item.mass_mg), entry)
  }
  return {
    find(name, maker, mass_mg) {
      if (closet.length === 0) return null
      const words = nameWords(name)
      let best: Alike | null = null
      for (const entry of candidates(byKey, byGram, words, mass_mg)) {
        const one = compare(words, maker, mass_mg, entry)
        if (one && (!best || rank(one, mass_mg) > rank(best, mass_mg))) best = one
      }
      return best
    },
  }
}

function add<K>(index: Map<K, Entry[]>, key: K, entry: Entry): void {
  const list = index.get(key)
  if (list) list.push(entry)
  else index.set(key, [entry])
}

const gramOf = (mass_mg: number): number => Math.round(mass_mg / 1000)
/** How far two masses of one thing may lie apart when only a part of the name is the same. */
const slackOf = (mass_mg: number): number => Math.max(1000, mass_mg * 0.005)

function keysOf(words: readonly string[]): ReadonlySet<string> {
  const letters = words.map((word) => word[0] ?? '')
  const initials = words.length >= 2 && words.length <= 6 ? [letters.join('')] : []
  return new Set([words.join(''), words.toSorted().join(' '), ...initials])
}

function candidates(
  byKey: ReadonlyMap<string, Entry[]>,
  byGram: ReadonlyMap<number, Entry[]>,
  words: readonly string[],
  mass_mg: number | null,
): ReadonlySet<Entry> {
  const found = new Set<Entry>()
  for (const key of keysOf(words)) for (const entry of (byKey.get(key) ?? []).slice(0, mostCompared)) found.add(entry)
  if (mass_mg === null) return found
  const slack = slackOf(mass_mg) * 1.01
  for (let gram = gramOf(mass_mg - slack); gram <= gramOf(mass_mg + slack); gram += 1) {
    for (const entry of byGram.get(gram) ?? [])
      if (found.size < mostCompared && entry.words.some((word) => mayShare(word, words))) found.add(entry)
  }
  return found
}

const mayShare = (word: string, words: readonly string[]): boolean => words.some((other) => other[0] === word[0])

function compare(words: readonly string[], maker: string, mass_mg: number | null, { item, words: known }: Entry): Alike | null {
  const masses = mass_mg === null || item.mass_mg === null ? null : Math.abs(mass_mg - item.mass_mg) / Math.max(mass_mg, item.mass_mg, 1)
  const isSameMass = mass_mg !== null && item.mass_mg !== null && Math.abs(mass_mg - item.mass_mg) <= slackOf(item.mass_mg)
  // Without the same mass only the whole name counts, which needs as many words or initials.
  if (!isSameMass && words.length !== known.length && words.length > 1 && known.length > 1) return null
  if (!numbersAgree(words, known)) return null
  const { alike, inPart } = likeness(words, known)
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
  const [numbersA, numbersB] = [a, b].map((words) => words.filter((word) => isNumber(word))) as [string[], string[]]
  return numbersA.length === 0 || numbersB.length === 0 || numbersA.some((one) => numbersB.includes(one))
}

const isNumber = (word: string): boolean => word.charCodeAt(0) < 58

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
