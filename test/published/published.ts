import { expect, test } from 'vitest'

/** One value from outside that a law must meet. `got` runs our code; `expected` never comes from it. */
export interface Published {
  /** Which law or check it speaks of; rows with the same name are reported together by `npm run accuracy`. */
  readonly law: string
  /** What is computed, e.g. "−10 °C, 30 km/h". */
  readonly about: string
  /** Where the expected value was published or how it was computed independently, and how we know it. */
  readonly source: string
  readonly known: 'read' | 'memory' | 'recomputed' | 'reference library' | 'common practice, no source'
  readonly expected: number
  /** Absolute, in the same unit; the reason stands in a comment beside the rows. */
  readonly tolerance: number
  readonly unit: string
  readonly got: () => number
}

/** Runs every row as a test of its own. */
export function meets(rows: readonly Published[]): void {
  test.each(rows.map((row) => [`${row.law}: ${row.about}`, row] as const))('%s', (_, row) => {
    expect(
      Math.abs(row.got() - row.expected),
      `expected ${row.expected} ± ${row.tolerance} ${row.unit}, got ${row.got()} (${row.source})`,
    ).toBeLessThanOrEqual(row.tolerance)
  })
}
