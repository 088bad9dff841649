import type { Outcome } from '../src-domain/figures/fault.ts'
import type { ProgramState } from './answers.ts'
import type { Heard } from './contract.ts'
import type { Told } from './handlers/kinds.ts'
import type { ProgramOptions } from './program.ts'
import type { Store } from './store/open.ts'

/** The running program as calls of kind `program` see it. */
export interface Running {
  readonly options: ProgramOptions
  /** The open store, or the fault that keeps it shut. */
  readonly store: () => Outcome<Store>
  /** Waits for the writes before it, then has the store to itself until it settles. Never call it inside itself. */
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>
  readonly state: () => Promise<ProgramState>
  /** Counts one acknowledged change, tells every listener, and gives what the reply carries. */
  readonly tell: (touched: Heard['touched'], closet?: Told['closet']) => Told
  /** Everything may have changed: table `*`. */
  readonly tellAll: () => Told
  /** Shuts the store, lets `swap` change the file, and opens it again, whatever became of it. Inside `alone` only. */
  readonly reopen: (swap: () => Promise<void>) => Promise<Outcome<Store>>
}
