/** What a row of a block is: blank, a total, the name of an area, a heading come again, or an item. By its words and by its place. */
import { guessArea } from '../guess-area.ts'
import type { Lane } from '../vocabulary.ts'
import { lanes } from '../vocabulary.ts'
import type { WordArea } from './choices.ts'
import { areaOfWord, laneOfWord, plainWord } from './plain-words.ts'

/** The columns of a block that a row's kind hangs on. */
export interface KindColumns {
  readonly left: number
  readonly right: number
  readonly item: number | null
  /** Columns of figures: mass, pounds, ounces, pieces, price. */
  readonly figures: ReadonlySet<number>
  /** Columns of mass alone. */
  readonly masses: readonly number[]
  readonly hasAreaColumn: boolean
}

export type RowKind =
  | { readonly kind: 'blank' | 'item' | 'heading-again' }
  | { readonly kind: 'total'; readonly label: string }
  | { readonly kind: 'area'; readonly word: string; readonly area: WordArea | undefined; readonly lane: Lane | undefined }

export function kindOfRow(
  rows: readonly (readonly string[])[],
  at: number,
  columns: KindColumns,
  heading: readonly string[] | undefined,
): RowKind {
  const row = rows[at]!
  const filled = filledColumns(row, columns)
  if (filled.length === 0) return { kind: 'blank' }
  if (heading && isSameHeading(row, heading, columns)) return { kind: 'heading-again' }
  const label = labelOf(row, filled, columns)
  if (isTotalLabel(label)) return { kind: 'total', label }
  return areaRow(rows, at, columns, filled, label) ?? { kind: 'item' }
}

function filledColumns(row: readonly string[], { left, right }: KindColumns): readonly number[] {
  const filled: number[] = []
  for (let column = left; column < right; column += 1) if (row[column] !== '') filled.push(column)
  return filled
}

/** The first words of a row outside its figures. */
function labelOf(row: readonly string[], filled: readonly number[], columns: KindColumns): string {
  const column = filled.find((one) => /\p{L}/u.test(row[one]!) && (!columns.figures.has(one) || isTotalLabel(row[one]!)))
  return column === undefined ? '' : row[column]!
}

function isSameHeading(row: readonly string[], heading: readonly string[], { left, right }: KindColumns): boolean {
  let same = 0
  for (let column = left; column < right; column += 1) {
    if (row[column] === '') continue
    if (row[column]!.toLowerCase() !== heading[column]!.toLowerCase()) return false
    same += 1
  }
  return same >= 2
}

const totalWords: ReadonlySet<string> = new Set(
  'of the all in weight weights mass wt base pack packed worn carried carry consumable consumables skin out g gram grams kg oz ounces lb lbs pounds item items gear kit everything full big small running sub grand on me used up per person with without water food fuel and & est so far day trip start total totals'.split(
    ' ',
  ),
)
const maySum = /total|sum|weight|mass/iu
const totalStart = /^(?:(?:grand|overall|running|full|my|all|kit|gear|the)[ -])*(?:sub ?-?)?(?:totals?|sum)\b/iu
const namedWeight =
  /^(?:total |my |full )?(?:base|pack|packed|worn|skin[- ]?out|carried|consumables?|trail|everything|on[- ]me)[ -](?:weight|mass|total|sum)\b/iu

/** "Total", "Subtotal (g)", "Shelter total", "Base weight": sums, not things. */
export function isTotalLabel(text: string): boolean {
  if (text.length < 3 || text.length > 60 || !maySum.test(text)) return false
  if (namedWeight.test(text)) return true
  const words = plainWord(text).split(' ')
  if (totalStart.test(text)) {
    const rest = words.filter((word) => !totalWords.has(word) && !/^(?:subtotals?|sum|overall)$/u.test(word))
    return rest.length === 0 || areaOfWord(rest.join(' ')) !== undefined
  }
  return /\b(?:sub ?-?)?totals?\s*:?$/iu.test(text) && words.length <= 5
}

/** A row that says one thing only, or a known area with the sum of its rows beside it. */
function areaRow(
  rows: readonly (readonly string[])[],
  at: number,
  columns: KindColumns,
  filled: readonly number[],
  label: string,
): RowKind | undefined {
  const row = rows[at]!
  const words = filled.filter(
    (column) => /\p{L}/u.test(row[column]!) && !(columns.figures.has(column) && /^[~≈]?\s?[.,]?\d/u.test(row[column]!)),
  )
  if (label === '' || words.length !== 1 || label.length > 40) return undefined
  const bare = label.replace(/\s*:$/u, '')
  const found = { kind: 'area' as const, word: bare, area: areaOfWord(bare), lane: laneOf(bare) }
  const isKnown = found.area !== undefined || found.lane !== undefined
  const figures = filled.filter((column) => columns.figures.has(column))
  if (figures.length === 0)
    return isKnown
      ? standsApart(rows, at, columns) || isPlainlyArea(bare)
        ? found
        : undefined
      : strangeArea(rows, at, columns, label)
        ? found
        : undefined
  if (found.lane !== undefined && figures.every((column) => columns.masses.includes(column)) && isBesideTotal(rows, at, columns))
    return { kind: 'total', label }
  return isKnown && isPlainlyArea(bare) && isSumOfBelow(rows, at, columns) ? found : undefined
}

/** "Base 1651, Worn 943, Consumables 1045, Total 3639": names of lanes in a row with a sum among them. */
function isBesideTotal(rows: readonly (readonly string[])[], at: number, columns: KindColumns): boolean {
  return [-1, 1].some((way) => {
    for (let next = at + way; Math.abs(next - at) < 8; next += way) {
      const row = rows[next]
      const label = row === undefined ? '' : labelOf(row, filledColumns(row, columns), columns)
      if (isTotalLabel(label)) return true
      if (laneOf(label.replace(/\s*:$/u, '')) === undefined) return false
    }
    return false
  })
}

const laneOf = (text: string): Lane | undefined => lanes.find((lane) => lane === laneOfWord(text))

/** Written as a title: capitals, a colon, or a word that names a group and hardly a thing. */
const isPlainlyArea = (text: string): boolean =>
  /:$/u.test(text) ||
  (text.length > 2 && text === text.toUpperCase()) ||
  laneOf(text) !== undefined ||
  (areaOfWord(text) !== undefined && !isAlsoAThing(text))
const isAlsoAThing = (text: string): boolean =>
  /^(?:tent|tarp|sleeping bag|backpack|pack|rucksack|bag|stove|shoes?|boots?|socks?|map|camera|water|underwear|stuff sacks?|phone|food|light|bed|battery)$/iu.test(
    text,
  )

/** Above it a blank row, a total or nothing; below it a row with figures. */
function standsApart(rows: readonly (readonly string[])[], at: number, columns: KindColumns): boolean {
  const above = rows[at - 1]
  const isFree =
    above === undefined || filledColumns(above, columns).length <= 1 || isTotalLabel(labelOf(above, filledColumns(above, columns), columns))
  const below = rows[at + 1]
  return isFree && below !== undefined && filledColumns(below, columns).length >= 2
}

/** A title whose word is not known: only where its look and its place both say so. */
function strangeArea(rows: readonly (readonly string[])[], at: number, columns: KindColumns, label: string): boolean {
  if (columns.hasAreaColumn || guessArea(label) || !standsApart(rows, at, columns)) return false
  return rows[at - 1] !== undefined ? true : /:$/u.test(label) || label === label.toUpperCase()
}

const quick = (text: string): number => Number.parseFloat(text.replace(',', '.').replace(/[^\d.]/gu, '')) || 0

/** "Shelter, 900" above rows that sum to 900: the sum stands at the head. */
function isSumOfBelow(rows: readonly (readonly string[])[], at: number, columns: KindColumns): boolean {
  const sumAt = (from: readonly string[]): number =>
    columns.masses.reduce(
      (sum, column, place) => sum + quick(from[column] ?? '') * (columns.masses.length === 2 && place === 0 ? 16 : 1),
      0,
    )
  const said = sumAt(rows[at]!)
  let sum = 0
  for (const row of rows.slice(at + 1, at + 200)) {
    if (said > 0 && sum > 0 && Math.abs(sum - said) <= Math.max(0.05, said * 0.002)) return true
    const filled = filledColumns(row, columns)
    if (filled.length === 0 || sum > said * 1.01) return false
    sum += sumAt(row)
  }
  return said > 0 && sum > 0 && Math.abs(sum - said) <= Math.max(0.05, said * 0.002)
}
