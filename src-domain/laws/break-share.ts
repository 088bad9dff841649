import type { Law } from '../figures/figure.ts'

/**
 * Time on the way from time on the move: how long this walker stands for each hour walked.
 *   elapsed = (1 + b)·moving;   b = (1.5 h + Σ breaks)/(10 h + Σ moving) over the walker's logs
 * Without logs 0.15, weighing as much as ten hours' walking (choice; five to ten minutes an hour is common practice).
 * Nights, and halts over 90 min, are not breaks: they split the log.
 */
export const elapsedTime = {
  name: 'Time with breaks',
  formula: 'elapsed = (1 + b)·moving',
  source: { cite: 'definition of the break share b', known: 'choice' },
  takes: { movingH: 'h', breakShare: '1' },
  unit: 'h',
  compute: ({ movingH, breakShare }) => movingH * (1 + breakShare),
} as const satisfies Law<{ movingH: 'h'; breakShare: '1' }, 'h'>

export interface BreakLog {
  readonly movingHours: number
  readonly breakHours: number
}

/** The walker's own share of standing time. A log with nothing walked, or with a number that is none, is left out. */
export function breakShareFrom(logs: readonly BreakLog[]): number {
  let breaks = PRIOR_BREAK_H
  let moving = PRIOR_MOVING_H
  for (const { movingHours, breakHours } of logs) {
    if (!(movingHours > 0 && breakHours >= 0 && Number.isFinite(movingHours + breakHours))) continue
    breaks += breakHours
    moving += movingHours
  }
  return breaks / moving
}

const PRIOR_BREAK_H = 1.5
const PRIOR_MOVING_H = 10
