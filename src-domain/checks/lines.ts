import type { Figure, Given } from '../figures/figure.ts'

/** A worked figure with further lines in its working: what is worth reading beside it and opens in turn, without being part of the sum. */
export function withLines<U extends string>(figure: Figure<U>, lines: readonly Given[]): Figure<U> {
  if (figure.working === undefined || lines.length === 0) return figure
  return { ...figure, working: { ...figure.working, given: [...figure.working.given, ...lines] } }
}
