/**
 * The words of an item's name as guesses and comparisons read them: lower case, without accents, marks and plural endings, in order.
 * "Rain trousers (M), 2024" gives rain, trouser, m, 2024. Two names that a person would call the same give the same words.
 */
export function nameWords(name: string): readonly string[] {
  const words = isAscii.test(name) ? name.replaceAll("'", '').toLowerCase().match(asciiWord) : plain(name).match(anyWord)
  return words?.map(singular) ?? []
}

/** Most names; the long way with accents costs several times as much. */
const isAscii = /^[\0-\x7f]*$/u
const asciiWord = /[a-z]+|\d+(?:\.\d+)?/gu
const anyWord = /\p{L}+|\d+(?:\.\d+)?/gu

const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/['’]/gu, '')
    .toLowerCase()

/** Words that end in s and are no plurals of a word without it. */
const whole: ReadonlySet<string> = new Set(['gas', 'lens', 'bias', 'gps', 'plus', 'less', 'us', 'alias', 'canvas', 'atlas'])

/** English plurals by their ending; wrong now and then, but the same way on both sides of a comparison. */
function singular(word: string): string {
  if (word.length < 4 || !word.endsWith('s') || /(?:ss|us|is)$/u.test(word) || whole.has(word)) return word
  if (word.endsWith('ies') && word.length > 5) return `${word.slice(0, -3)}y`
  if (/(?:ss|x|ch|sh|zz)es$/u.test(word)) return word.slice(0, -2)
  return word.slice(0, -1)
}

/** The parts of a name that may each be a thing ("Hat + gloves"), the first words of each before "for", "with", "(" or a comma. */
export function nameParts(name: string): readonly string[] {
  const head = name.split(/\s*[(,;:[]|\s(?:for|with|w\/|from|in|incl\.?|including)\s/iu)[0] ?? ''
  const parts = head.split(/\s*[+&/]\s*|\s+(?:and|plus)\s+/iu).filter((part) => /\p{L}/u.test(part))
  return parts.length === 0 ? [name] : parts
}
