/** Marks: what the values of a mark column say about where a thing goes. */
import type { Choices, MarkLane } from './choices.ts'
import { said } from './choices.ts'
import type { BlockPlan } from './plan-block.ts'
import { laneOfWord, plainWord, tick } from './plain-words.ts'
import type { ColumnPreview, MarkMatch } from './preview.ts'
import type { RawRow } from './raw-rows.ts'

const mostValues = 40

export function marksOf(plan: BlockPlan, rows: readonly RawRow[], choices: Choices): readonly MarkMatch[] {
  return plan.columnsOf('mark').flatMap((column) => {
    const values = new Map<string, number>()
    for (const row of rows)
      if (row.kind === 'item') values.set(valueAt(row, column.column), (values.get(valueAt(row, column.column)) ?? 0) + 1)
    const hasWords = [...values.keys()].some((value) => laneOfWord(value) !== undefined)
    return [...values].slice(0, mostValues).map(([value, count]) => matchOf(column, value, count, hasWords, choices))
  })
}

const valueAt = (row: RawRow, column: number): string => (row.cells[column] ?? '').toLowerCase().slice(0, 60)
export const markKey = (row: RawRow, column: number): string => `${column}:${valueAt(row, column)}`

function matchOf({ column, heading }: ColumnPreview, value: string, rows: number, hasWords: boolean, choices: Choices): MarkMatch {
  const key = `${column}:${value}`
  const person = said(choices.marks, key)
  const lane = person ?? laneOfWord(value) ?? tickedLane(value, laneInHeading(heading), hasWords)
  return { key, column, value, lane: lane ?? 'none', from: person ? 'person' : lane === undefined ? 'none' : 'words', rows }
}

/** A tick under "worn" is worn, no tick says nothing; no tick under "packed" stays at home. */
function tickedLane(value: string, heading: MarkLane | undefined, hasWords: boolean): MarkLane | undefined {
  const ticked = tick(value)
  if (ticked === undefined) return undefined
  if (ticked) return heading ?? 'in_pack'
  if (heading === 'on_me' || heading === 'used_up') return 'none'
  return value === '' && hasWords ? 'none' : 'home'
}

const headingLanes: readonly (readonly [RegExp, MarkLane])[] = [
  [/\b(?:worn|wear|wearing|on me|body)\b/u, 'on_me'],
  [/\b(?:consumables?|consumed|used up|eaten)\b/u, 'used_up'],
  [/\b(?:packed|pack|in pack|take|taking|bring|carried|carry|base)\b/u, 'in_pack'],
]

/** The one lane a heading names; none where it names two ("worn or packed"). */
function laneInHeading(heading: string): MarkLane | undefined {
  const found = headingLanes.filter(([pattern]) => pattern.test(plainWord(heading)))
  return found.length === 1 ? found[0]![1] : undefined
}

const rank: readonly MarkLane[] = ['on_me', 'used_up', 'home', 'in_pack', 'none']

/** Of several marks the most telling: worn or used up before staying at home before in the pack. */
export function laneByMarks(lanes: readonly MarkLane[]): MarkLane {
  return rank.find((lane) => lanes.includes(lane)) ?? 'none'
}
