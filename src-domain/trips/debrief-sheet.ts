/**
 * A debrief as it is told: which lines are worth a word, which were said with the rest at once, and of which nobody said anything yet.
 * What nobody said stays unknown, whatever is done with the others.
 */
import type { Use, Verdict } from './record.ts'

export interface ToldLine {
  readonly packedId: number | null
  readonly use: Use
  readonly said: 'one' | 'rest'
  readonly verdict: Verdict
}

export interface ToldPacked {
  readonly id: number
}

export interface DebriefSheet<P extends ToldPacked, L extends ToldLine> {
  /** Told one by one, and what was missed and had stayed at home. */
  readonly worth: readonly { readonly packed: P | null; readonly line: L }[]
  readonly rest: readonly { readonly packed: P; readonly line: L }[]
  readonly unsaid: readonly P[]
}

export function debriefSheet<P extends ToldPacked, L extends ToldLine>(packed: readonly P[], lines: readonly L[]): DebriefSheet<P, L> {
  const of = new Map(lines.flatMap((line) => (line.packedId === null ? [] : [[line.packedId, line] as const])))
  const told = packed.flatMap((one) => {
    const line = of.get(one.id)
    return line === undefined ? [] : [{ packed: one, line }]
  })
  return {
    worth: [
      ...told.filter(({ line }) => line.said === 'one'),
      ...lines.filter(({ packedId }) => packedId === null).map((line) => ({ packed: null, line })),
    ],
    rest: told.filter(({ line }) => line.said === 'rest'),
    unsaid: packed.filter(({ id }) => !of.has(id)),
  }
}

const inTurn: readonly Use[] = ['used', 'unused', 'missed', 'failed']

/** The next word after this one; unknown comes before the first and is never come back to. */
export const nextUse = (use: Use): Use => inTurn[(inTurn.indexOf(use) + 1) % inTurn.length]!

/** Days of a trip whose brief may be empty: by its dates, its legs, or its nights; at least one. */
export function daysTold(given: {
  readonly days: number | null
  readonly legs: readonly { readonly day: number }[]
  readonly nights: number | null
}): number {
  const last = given.legs.reduce((most, { day }) => Math.max(most, day), 0)
  return Math.max(1, given.days ?? 0, last, given.nights === null ? 0 : given.nights + 1)
}
