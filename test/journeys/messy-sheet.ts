import { readFileSync } from 'node:fs'
import { join } from 'node:path'

/** The messy sheet of 200 things read by hand: nothing of the program's own reading is used. */
export interface Thing {
  readonly name: string
  readonly pieces: number
  readonly pieceG: number | null
  readonly lane: 'on_me' | 'in_pack' | 'home'
}

/** One line of a CSV, by RFC 4180 section 2. */
export const cellsOf = (line: string): readonly string[] =>
  [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/gu)].map(([, cell = '']) => cell.replace(/^"|"$/gu, '').replaceAll('""', '"'))

/** 1 oz = 28.349523125 g and 1 lb = 16 oz (NIST SP 811, appendix B.8). */
function grams(text: string): number | null {
  const found = /^~?(?:(?<lb>[\d.]+) lb )?(?<value>[\d.]+) ?(?<unit>kg|oz|g)?(?: \(mfr\))?$/u.exec(text)?.groups
  if (!found) return null
  const perUnit = { kg: 1000, oz: 28.349523125, g: 1 }[found['unit'] ?? 'g'] ?? 1
  return Number(found['lb'] ?? 0) * 453.59237 + Number(found['value']) * perUnit
}

/** Its rows with a place to go are things, its blank rows and sums are not. */
export function things(): readonly Thing[] {
  return readFileSync(join(import.meta.dirname, '../fixtures/sheets/messy-200.csv'), 'utf8')
    .trimEnd()
    .split('\r\n')
    .slice(1)
    .map(cellsOf)
    .filter(([, , , , where = '']) => where !== '')
    .map(([name = '', , weighs = '', many = '', where = '']) => ({
      name,
      pieces: many === '' ? 1 : Number(many),
      pieceG: grams(weighs),
      lane: where === 'worn' ? 'on_me' : where === 'home' ? 'home' : 'in_pack',
    }))
}
