import type { ChoosingFacts, ChoosingOptions } from '../../src-domain/choosing/from-facts.ts'
import type { Without, Why } from '../../src-domain/choosing/explain.ts'
import type { Reason } from '../../src-domain/choosing/trip-choice.ts'
import type { Lane } from '../../src-domain/closet/vocabulary.ts'

/** What passes between the program and the solver's thread: plain data both ways. */
export interface Job {
  readonly facts: ChoosingFacts
  readonly options: ChoosingOptions
}

export interface ChosenLine {
  readonly itemId: number
  readonly lane: Lane
  readonly pieces: number
  /** It stays whatever is chosen; null: it was chosen. */
  readonly stays: 'worn' | 'container' | 'pinned' | null
}

export interface ChosenSet {
  readonly lines: readonly ChosenLine[]
  /** What the choice was made by: pack and what is used up but food, tenths of a gram. */
  readonly countedDg: number
  readonly proven: boolean
  readonly gapDg: number
  readonly rounds: number
}

export interface Proposal {
  /** Every demand met; or nothing meets all of them, and `givenUp` had to give way; or the solver could not say. */
  readonly kind: 'found' | 'none' | 'unsettled'
  readonly why: string
  readonly chosen: ChosenSet | null
  readonly givenUp: readonly string[]
  readonly unasked: readonly {
    readonly checkId: string
    readonly code: string
    readonly facts: Readonly<Record<string, string | number>>
  }[]
  readonly leftOut: readonly { readonly itemId: number; readonly reason: Reason; readonly why: string }[]
  readonly silent: readonly { readonly itemId: number; readonly checkId: string }[]
}

export interface LineReason {
  readonly itemId: number
  readonly lane: Lane
  readonly why: readonly Why[]
  /** null: still being worked out. */
  readonly without: Without | null
  /** Items that would come in its place. */
  readonly instead: readonly number[]
}

export type Said =
  | { readonly kind: 'proposal'; readonly proposal: Proposal }
  | { readonly kind: 'reason'; readonly reason: LineReason }
  | { readonly kind: 'price'; readonly name: string; readonly dg: number | null }
  | { readonly kind: 'next'; readonly chosen: ChosenSet }
  | { readonly kind: 'done' }
  | { readonly kind: 'failed'; readonly why: string }
