import type { Law } from '../figures/figure.ts'
import { betaShareBelow } from './beta.ts'

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

/**
 * Shares between which the next day's breaks lie with that chance, over its hours of moving.
 *   breaks are halts of one length ℓ = 0.15 h that come at random, N ~ Poisson(μ·h), μ ~ Gamma((1.5 + Σ breaks)/ℓ, 10 + Σ moving): the mean of ℓ·μ is b
 *   P(N ≤ k) = I(p; r, k + 1), p = (10 + Σ moving)/(10 + Σ moving + h)      negative binomial, read between whole halts at k + ½
 * Nine minutes a halt and ten halts' worth of prior are choices; the mean is the estimator above whatever they are.
 */
export function breakBand(logs: readonly BreakLog[], chance = 0.8, hours = 6): readonly [low: number, high: number] {
  const usable = logs.filter(({ movingHours: h, breakHours: b }) => h > 0 && b >= 0 && Number.isFinite(h + b))
  const rate = PRIOR_MOVING_H + usable.reduce((sum, one) => sum + one.movingHours, 0)
  const shape = (PRIOR_BREAK_H + usable.reduce((sum, one) => sum + one.breakHours, 0)) / HALT_H
  const below = (k: number): number => (k <= -0.5 ? 0 : betaShareBelow(rate / (rate + hours), shape, k + 0.5))
  const at = (q: number): number => (HALT_H * haltsAt(q, below)) / hours
  return [at((1 - chance) / 2), at((1 + chance) / 2)]
}

function haltsAt(q: number, below: (k: number) => number): number {
  let [low, high] = [0, 1]
  while (below(high) < q) high *= 2
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (below(middle) < q) low = middle
    else high = middle
  }
  return (low + high) / 2
}

const PRIOR_BREAK_H = 1.5
const PRIOR_MOVING_H = 10
const HALT_H = 0.15
