import type { Fault } from '../figures/fault.ts'

/** What a parser of typed text answers: a value, or why there is none. */
export type Parsed<T> = { readonly ok: true; readonly value: T } | Refused
export interface Refused {
  readonly ok: false
  readonly fault: Fault
  /** Of `quantity.ambiguous`: what may have been meant, likelier first, each readable again without doubt. */
  readonly readings?: readonly string[]
}
