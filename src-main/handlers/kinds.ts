import type { Outcome, Fault } from '../../src-domain/figures/fault.ts'
import type { Call, CheckedOf, ClosetColumns, Contract, OutputOf, StepName, Touched } from '../contract.ts'
import type { Running } from '../running.ts'
import type { Raw, ReadDb, WriteDb } from '../store/handles.ts'
import type { Changed } from '../store/transactions.ts'

/** What a handler may know besides its handle and its input. */
export interface Around {
  /** The connection behind the handle, for statements that run thousands of times. */
  readonly raw: Raw
  readonly now: Date
  /** Today where the computer stands, YYYY-MM-DD. */
  readonly today: string
}

/** What a reply tells besides its value: the row changes that other windows hear too, and the closet's changed rows. */
export interface Told extends Touched {
  readonly closet?: ClosetColumns
  readonly undo: StepName | null
  readonly redo: StepName | null
}
export type Answered<T> = { readonly ok: true; readonly value: T; readonly told?: Told } | { readonly ok: false; readonly fault: Fault }

export type AskHandler<K extends Call> = (db: ReadDb, input: CheckedOf<K>, around: Around) => Promise<Outcome<OutputOf<K>>>
export type ChangeHandler<K extends Call> = (db: WriteDb, input: CheckedOf<K>, around: Around) => Promise<Changed<OutputOf<K>>>
export type NoteHandler<K extends Call> = (db: WriteDb, input: CheckedOf<K>, around: Around) => Promise<Outcome<OutputOf<K>>>
export type ProgramHandler<K extends Call> = (running: Running, input: CheckedOf<K>) => Promise<Answered<OutputOf<K>>>

export type HandlerOf<K extends Call> = {
  ask: AskHandler<K>
  change: ChangeHandler<K>
  note: NoteHandler<K>
  program: ProgramHandler<K>
}[Contract[K]['kind']]

/** One handler for each row of the contract: a row without one does not compile. */
export type Handlers = { readonly [K in Call]: HandlerOf<K> }
/** The handlers of the nouns named, `item` for every `item.…`. */
export type HandlersOf<Noun extends string> = { readonly [K in Extract<Call, `${Noun}.${string}`>]: HandlerOf<K> }
