/** What a sheet would become if accepted: plain data for the window, with the reason of every guess and the problem of every row. */
import type { MassUnit } from '../../figures/units.ts'
import type { KitArea, Lane, MassOrigin, Status } from '../vocabulary.ts'
import type { Role, SheetMassFrom, WordArea, MarkLane } from './choices.ts'

/** A code with the facts its sentence needs; the window words it. */
export interface Told<C extends string = string> {
  readonly code: C
  readonly facts: Readonly<Record<string, string | number>>
}

/** Why a row waits for the person. */
export type ProblemCode =
  'mass-unreadable' | 'mass-ambiguous' | 'mass-below-zero' | 'mass-too-large' | 'name-missing' | 'name-too-long' | 'pieces-unreadable'

/** What is worth knowing of a row that is taken all the same. */
export type NoteCode =
  | 'mass-missing'
  | 'mass-zero'
  | 'count-from-name'
  | 'mass-of-all-pieces'
  | 'line-differs'
  | 'price-unreadable'
  | 'currency-missing'
  | 'status-unread'
  | 'mark-unread'
  | 'duty-unread'
  | 'date-unread'
  | 'stays-home'
  | 'text-cut'

export type LeftOutCode =
  'blank' | 'above-heading' | 'heading' | 'heading-again' | 'area' | 'total' | 'remark' | 'by-choice' | 'block-left-out'

/** new: a new item · again: more pieces of an earlier row's item · known: in the closet already · problem: waits · left_out. */
export type Fate = 'new' | 'again' | 'known' | 'problem' | 'left_out'
export const isTaken = (fate: Fate): boolean => fate === 'new' || fate === 'again' || fate === 'known'

export type MatchCode = 'same-name-and-mass' | 'same-name' | 'same-name-other-mass' | 'name-in-part-and-mass'

export interface Match {
  /** An item of the closet (`id`) or an earlier row of the sheet (`row`). */
  readonly of: 'closet' | 'sheet'
  readonly id: number
  readonly row: string
  readonly name: string
  readonly why: Told<MatchCode>
  /** Whether it is taken for the same thing. */
  readonly same: boolean
}

export interface RowMass {
  /** Of one piece. */
  readonly piece_mg: number
  readonly origin: Exclude<MassOrigin, 'none'>
}

export interface RowPreview {
  /** `block:row`, the key of a row's choices. */
  readonly key: string
  readonly block: number
  /** Index in the cells, from 0. */
  readonly row: number
  readonly fate: Fate
  readonly leftOut: Told<LeftOutCode> | null
  readonly problem: Told<ProblemCode> | null
  readonly notes: readonly Told<NoteCode>[]
  /** The ways to read a mass that may be read in two, each readable again without doubt. */
  readonly readings: readonly { readonly text: string; readonly mg: number }[]
  readonly name: string
  readonly maker: string
  /** The sheet's word for its area; '' where it has none. */
  readonly areaWord: string
  readonly area: KitArea
  readonly areaFrom: 'person' | 'word' | 'name' | 'none'
  readonly pieces: number
  /** All that the sheet says of its mass; the first is shown and counted: measured before claimed before estimated. */
  readonly masses: readonly RowMass[]
  readonly price: { readonly amountMinor: number; readonly currency: string } | null
  readonly note: string
  readonly tags: readonly string[]
  readonly links: readonly string[]
  readonly duties: readonly string[]
  readonly dutiesFrom: 'sheet' | 'name'
  readonly set: string
  readonly status: Status
  readonly weighedOn: string | null
  /** Where it goes when the sheet is a loadout; null: stays at home. */
  readonly lane: Lane | null
  readonly match: Match | null
}

export type ReasonCode =
  | 'by-person'
  | 'by-heading'
  | 'by-cells'
  | 'by-range'
  | 'by-total'
  | 'by-arithmetic'
  | 'by-contrast'
  | 'by-default'
  | 'same-as-column'
  | 'row-numbers'
  | 'nothing-in-it'
  | 'not-understood'

export interface ColumnPreview {
  readonly column: number
  readonly heading: string
  readonly role: Role
  readonly because: Told<ReasonCode>
  /** Of a mass column: the unit of its bare numbers and why; whether units stand in its cells. */
  readonly unit: MassUnit | null
  readonly unitBecause: Told<ReasonCode> | null
  readonly unitsInCells: boolean
  /** Of a mass column: where its unmarked masses come from and why. */
  readonly massFrom: SheetMassFrom | null
  readonly massFromBecause: Told<ReasonCode> | null
}

export interface BlockPreview {
  readonly index: number
  /** First column, and the one after the last. */
  readonly left: number
  readonly right: number
  /** Row of its headings; null: none. */
  readonly heading: number | null
  readonly columns: readonly ColumnPreview[]
  readonly leftOut: boolean
}

export interface WordMatch {
  /** As the sheet writes it first. */
  readonly word: string
  readonly area: WordArea
  readonly from: 'person' | 'words' | 'none'
  readonly rows: number
}

export interface MarkMatch {
  /** `column:value`, the key of a mark's choice. */
  readonly key: string
  readonly column: number
  /** '' is the empty cell. */
  readonly value: string
  readonly lane: MarkLane
  readonly from: 'person' | 'words' | 'none'
  readonly rows: number
}

export interface LoadoutLine {
  /** The row whose item this is: a new item, or the earlier row's, or the closet's. */
  readonly row: string
  readonly rows: readonly string[]
  readonly itemId: number | null
  readonly name: string
  readonly area: KitArea
  readonly lane: Lane
  readonly pieces: number
  /** As it will weigh here: the closet's mass where the thing is known. */
  readonly mass_mg: number
}

/** Why our sum and the sheet's differ, line by line; each `delta_mg` is ours less the sheet's. */
export type ExplainCode =
  'left-out' | 'waiting' | 'closet-mass' | 'own-line' | 'counted-once' | 'not-a-number' | 'not-counted' | 'counted-twice' | 'no-lane'

export interface Explanation {
  readonly row: string
  readonly name: string
  readonly code: ExplainCode
  readonly delta_mg: number
}

export interface TotalComparison {
  /** The row of the sheet's total. */
  readonly row: string
  readonly label: string
  readonly scope: 'all' | 'block' | 'section' | 'area' | 'lane' | 'pack'
  /** The area or lane of the scope, else ''. */
  readonly of: string
  readonly unit: MassUnit
  readonly said_mg: number
  readonly ours_mg: number
  /** What the rounding of the sheet's total allows. */
  readonly within_mg: number
  /** What may come besides from cells shown rounded: 2u, each cell half a step either way. */
  readonly cellsMay_mg: number
  readonly agrees: boolean
  readonly explained: readonly Explanation[]
  /** What no line explains; within `within_mg` when all is explained. */
  readonly rest_mg: number
}

export interface Counts {
  readonly newItems: number
  readonly rowsNew: number
  readonly rowsAgain: number
  readonly rowsKnown: number
  readonly problems: number
  readonly leftOut: number
  readonly rows: number
}

export interface Preview {
  readonly blocks: readonly BlockPreview[]
  readonly rows: readonly RowPreview[]
  readonly words: readonly WordMatch[]
  readonly marks: readonly MarkMatch[]
  readonly massIs: 'piece' | 'line'
  readonly massIsBecause: Told<ReasonCode>
  readonly asLoadout: boolean
  readonly loadoutName: string
  /** Lines by lane, when the sheet is also a loadout. */
  readonly lines: readonly LoadoutLine[]
  readonly totals: readonly TotalComparison[]
  readonly counts: Counts
}

/** An item of the closet, as far as recognising needs it. */
export interface KnownItem {
  readonly id: number
  readonly name: string
  readonly maker: string
  readonly pieces: number
  /** Of one piece; null: nothing is known. */
  readonly mass_mg: number | null
}
