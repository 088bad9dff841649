/** A law's answer that knows its range: the value, or why there is none, as a code with its facts. Never a silent NaN. */
export type Ranged<T = number> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string; readonly facts: Readonly<Record<string, number>> }

export const within = <T>(value: T): Ranged<T> => ({ ok: true, value })

export const outside = (why: string, facts: Readonly<Record<string, number>> = {}): Ranged<never> => ({ ok: false, why, facts })
