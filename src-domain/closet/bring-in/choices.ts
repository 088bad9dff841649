/** What the person has said about a sheet, over what was guessed. All of it may be absent; plain data, so that it can be kept and sent. */
import type { MassUnit } from '../../figures/units.ts'
import type { DecimalMark } from '../quantity.ts'
import type { KitArea, Lane, Status } from '../vocabulary.ts'

/** What a column is read as. Several columns may be mass (claimed and measured), mark, note, tags or link; the others stand once in a block. */
export const roles = [
  'item', 'area', 'maker', 'mass', 'unit', 'line_mass', 'pounds', 'ounces', 'pieces', 'mark', 'price', 'note', 'from', 'status', 'tags',
  'duties', 'set', 'link', 'weighed_on', 'ignored',
] as const // prettier-ignore
export type Role = (typeof roles)[number]

export type SheetMassFrom = 'measured' | 'claimed' | 'estimated'

/** A word of the sheet means this kit area, or each row is guessed by its own name. */
export type WordArea = KitArea | 'by_name'

/** A mark means this lane, or that the thing stays at home, or it says nothing of where it goes. */
export type MarkLane = Lane | 'home' | 'none'

export interface RowChoice {
  /** true: put back a row that was left out; false: leave this row out. */
  readonly take?: boolean
  /** The mass typed anew, or one of the readings offered. */
  readonly mass?: string
  readonly pieces?: number
  readonly name?: string
  readonly area?: KitArea
  readonly lane?: MarkLane
  /** The thing it resembles: the same, or another one. */
  readonly same?: 'same' | 'another'
}

export interface Choices {
  /** Blocks not brought in, by index. */
  readonly blocksLeftOut?: readonly number[]
  /** true: all columns are one table, whatever blank columns stand between. */
  readonly oneBlock?: boolean
  /** Block index → row of its headings, or null: it has none. */
  readonly heading?: Readonly<Record<string, number | null>>
  /** Column index → role. */
  readonly roles?: Readonly<Record<string, Role>>
  /** Column index → unit of its bare numbers. */
  readonly units?: Readonly<Record<string, MassUnit>>
  /** Column index → where its unmarked masses come from. */
  readonly massFrom?: Readonly<Record<string, SheetMassFrom>>
  /** Whether a mass stands for one piece or for all pieces of its row. */
  readonly massIs?: 'piece' | 'line'
  readonly decimal?: DecimalMark
  /** Currency of prices that name none (ISO 4217). */
  readonly currency?: string
  /** Word of the sheet, as `words` of the preview names it → kit area. */
  readonly words?: Readonly<Record<string, WordArea>>
  /** `column:value`, as `marks` of the preview names it → lane. */
  readonly marks?: Readonly<Record<string, MarkLane>>
  /** Status word of the sheet → status. */
  readonly statuses?: Readonly<Record<string, Status>>
  /** `block:row` → what was said about it. */
  readonly rows?: Readonly<Record<string, RowChoice>>
  readonly asLoadout?: boolean
  readonly loadoutName?: string
}

/** Own keys only: a word of the sheet may be `constructor`. */
export function said<T>(table: Readonly<Record<string, T>> | undefined, key: string | number): T | undefined {
  return table !== undefined && Object.hasOwn(table, String(key)) ? table[String(key)] : undefined
}
