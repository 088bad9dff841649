/**
 * A name never holds the count: "Stakes (8)", "8 x stakes", "Stakes x8", "Stakes, 8 pcs", "Set of 8 stakes" are the name Stakes and 8 pieces.
 * A bare number is taken for a count only beside a plural ("Stakes (8)", not "Pack (50)" or "Pot 750"). "(pair)" stays: a pair is one thing here.
 */
import { nameWords } from '../name-words.ts'

export interface CleanName {
  readonly name: string
  /** null: the name held no count. */
  readonly pieces: number | null
}

const mostPieces = 999

export function cleanName(typed: string): CleanName {
  let [name, pieces] = [typed.trim(), 1]
  for (let found = takeCount(name); found; found = takeCount(name)) {
    name = found.name
    pieces = Math.min(pieces * found.pieces, mostPieces)
  }
  return { name, pieces: name === typed.trim() ? null : pieces }
}

const piecesWord = String.raw`(?:pcs?|pieces?|ea|each|off|count|ct|units?|items?)`
/** Said plainly: a sign of times or a word for pieces. Each pattern gives the name and the number. */
const plainly: readonly RegExp[] = [
  /^(?<name>.+?)[ ,]*[([]\s*(?:x|×|qty:?|set of|pack of)\s*(?<n>\d{1,3})\s*[)\]]$/iu,
  /^(?<name>.+?)[ ,]*[([]\s*(?<n>\d{1,3})\s*(?:x|×)\s*[)\]]$/iu,
  new RegExp(String.raw`^(?<name>.+?)[ ,]*[([]\s*(?<n>\d{1,3}) ?${piecesWord}\.?\s*[)\]]$`, 'iu'),
  /^(?<name>.*\p{L}.*?)[ ,]+(?:x|×) ?(?<n>\d{1,3})$/iu,
  /^(?<name>.*\p{L}.*?)[ ,]+(?<n>\d{1,3}) ?(?:x|×)$/iu,
  new RegExp(String.raw`^(?<name>.*\p{L}.*?)(?:,| -| –)? (?<n>\d{1,3}) ?(?:pcs?|pieces)\.?$`, 'iu'),
  /^(?<n>\d{1,3}) ?(?:x|×) ?(?<name>\p{L}.*)$/iu,
  /^(?:set|pack) of (?<n>\d{1,3}) (?<name>\p{L}.*)$/iu,
]
/** Only beside a plural. */
const beside: readonly RegExp[] = [/^(?<name>.*\p{L}.*?) ?[([]\s*(?<n>\d{1,2})\s*[)\]]$/u, /^(?<n>\d{1,2}) (?<name>\p{L}.*)$/u]

function takeCount(name: string): { readonly name: string; readonly pieces: number } | undefined {
  if (name.length > 300 || !/\d/u.test(name)) return undefined
  for (const pattern of plainly) {
    const found = counted(pattern.exec(name))
    if (found) return found
  }
  for (const pattern of beside) {
    const found = counted(pattern.exec(name))
    if (found && found.pieces > 1 && found.pieces <= 30 && isPlural(found.name)) return found
  }
  return undefined
}

function counted(match: RegExpExecArray | null): { readonly name: string; readonly pieces: number } | undefined {
  const [name, pieces] = [match?.groups?.['name']?.trim() ?? '', Number(match?.groups?.['n'] ?? 0)]
  return pieces > 0 && /\p{L}/u.test(name) ? { name, pieces } : undefined
}

/** Measures beside a number are no things to count: "2 person tents" is one word for a size. */
const measures: ReadonlySet<string> = new Set([
  'person',
  'man',
  'season',
  'day',
  'night',
  'litre',
  'liter',
  'l',
  'oz',
  'ounce',
  'lb',
  'pound',
  'gram',
  'g',
  'kg',
  'ml',
  'cm',
  'mm',
  'inch',
  'in',
  'ft',
  'foot',
  'denier',
  'd',
  'layer',
  'way',
  'ply',
  'lumen',
  'hour',
  'degree',
  'watt',
  'volt',
  'mah',
  'wh',
  'essential',
  'c',
  'f',
])

function isPlural(name: string): boolean {
  const first = nameWords(name)[0] ?? ''
  const last = /(\p{L}+)$/u.exec(name)?.[1]?.toLowerCase() ?? ''
  return !measures.has(first) && last.length > 3 && nameWords(last)[0] !== last
}
