import { studentQuantile, studentShareBelow } from './student-t.ts'

/**
 * A walker's own pace: how their moving times compare with the walking law's, from their logs, and how far the next walk may lie from it.
 *   y_i = ln(t_i/T_i)      t observed moving hours, T the law's hours for the same route
 *   Huber M-estimate of the mean μ of y with a normal prior about 0 (τ = 0.20), scatter σ with its own prior (σ0 = 0.12, ν0 = 4), c = 1.345;
 *   short walks weigh less: a_i = T_i/3 h, held to 0.25 … 1. Each round takes w and μ by the old σ², then the new σ² by the new μ:
 *     r = (y − μ)/σ;  w = a·min(1, c/|r|);  μ = (Σwy/σ²)/(Σw/σ² + 1/τ²);  σ² = (ν0σ0² + Σw(y − μ)²)/(ν0 + max(0, Σw − 1))
 *   v = 1/(Σw/σ² + 1/τ²);  ν = ν0 + max(0, Σw − 1);  s = √(σ² + v);  next walk: T·exp(μ ± t_{q,ν}·s)
 * Range: a log counts when T ≥ 0.5 h and 0.3 ≤ t/T ≤ 3. Without logs μ is exactly 0 and the band is widest.
 * Source: Huber's M-estimate is standard statistics; priors are choices with no data behind them yet, to be fitted again when debriefs exist.
 * Agreement: the six-row check table to 2e-5.
 * Caution: one factor per walker and per kind of ground; a group walks at the pace of its slowest.
 */
export interface WalkLog {
  readonly observedHours: number
  readonly modelHours: number
  /** Years since the walk; logs fade with a half-life of two years. Not given: counts in full. */
  readonly ageYears?: number
}

export interface Pace {
  readonly mu: number
  /** exp(μ): own time over the law's time. */
  readonly factor: number
  /** Scatter between this walker's days, of ln time. */
  readonly sigma: number
  /** Variance of μ itself. */
  readonly variance: number
  /** Degrees of freedom of the next walk's t. */
  readonly dof: number
  /** Spread of the next walk's ln time. */
  readonly spread: number
  /** Weight of each log, in order; 0 for one that was not accepted. */
  readonly weights: readonly number[]
}

const TAU = 0.2
const SIGMA0 = 0.12
const NU0 = 4
const HUBER = 1.345
const HALF_LIFE_YEARS = 2

export const isUsableLog = ({ observedHours, modelHours }: WalkLog): boolean =>
  modelHours >= 0.5 && observedHours >= 0.3 * modelHours && observedHours <= 3 * modelHours

/** Fits the walker's pace; the order of logs changes nothing. */
export function paceFrom(logs: readonly WalkLog[]): Pace {
  const used = logs.map((log, at) => ({ at, log })).filter(({ log }) => isUsableLog(log))
  const ys = used.map(({ log }) => Math.log(log.observedHours / log.modelHours))
  const base = used.map(({ log }) => baseWeight(log))
  let mu = 0
  let sigma2 = SIGMA0 ** 2
  let weights = huberWeights(ys, base, mu, sigma2)
  for (let round = 0; round < 500; round++) {
    weights = huberWeights(ys, base, mu, sigma2)
    const before = { mu, sigma2 }
    mu = centre(ys, weights, sigma2)
    sigma2 = scatter(ys, weights, mu)
    if (Math.abs(mu - before.mu) < 1e-12 && Math.abs(sigma2 - before.sigma2) < 1e-14) break
  }
  return described(
    mu,
    sigma2,
    weights,
    used.map(({ at }) => at),
    logs.length,
  )
}

/** Factors between which the next walk's moving time lies with that chance (0.8: one in ten beyond either end). */
export function paceBand(pace: Pick<Pace, 'mu' | 'spread' | 'dof'>, chance = 0.8): readonly [low: number, high: number] {
  const reach = studentQuantile((1 + chance) / 2, pace.dof) * pace.spread
  return [Math.exp(pace.mu - reach), Math.exp(pace.mu + reach)]
}

/**
 * The chance of needing more than the hours there are: x = (ln(A/((1 + b)·T)) − μ)/s; p = 1 − P(x; ν).
 * No time left: certain. Nothing to walk: none.
 */
export function chanceOfLate(
  availableHours: number,
  modelHours: number,
  breakShare: number,
  pace: Pick<Pace, 'mu' | 'spread' | 'dof'>,
): number {
  if (modelHours <= 0) return availableHours < 0 ? 1 : 0
  if (availableHours <= 0) return 1
  const x = (Math.log(availableHours / ((1 + breakShare) * modelHours)) - pace.mu) / pace.spread
  return studentShareBelow(-x, pace.dof)
}

function baseWeight({ modelHours, ageYears = 0 }: WalkLog): number {
  return Math.min(1, Math.max(0.25, modelHours / 3)) * 0.5 ** (Math.max(0, ageYears) / HALF_LIFE_YEARS)
}

function huberWeights(ys: readonly number[], base: readonly number[], mu: number, sigma2: number): readonly number[] {
  return ys.map((y, i) => {
    const r = Math.abs(y - mu) / Math.sqrt(sigma2)
    return base[i]! * (r <= HUBER ? 1 : HUBER / r)
  })
}

function centre(ys: readonly number[], weights: readonly number[], sigma2: number): number {
  return sum(ys, (y, i) => weights[i]! * y) / sigma2 / precision(weights, sigma2)
}

function scatter(ys: readonly number[], weights: readonly number[], mu: number): number {
  return (NU0 * SIGMA0 ** 2 + sum(ys, (y, i) => weights[i]! * (y - mu) ** 2)) / degrees(weights)
}

const precision = (weights: readonly number[], sigma2: number): number => sum(weights, (w) => w) / sigma2 + 1 / TAU ** 2
const degrees = (weights: readonly number[]): number => NU0 + Math.max(0, sum(weights, (w) => w) - 1)

function described(mu: number, sigma2: number, weights: readonly number[], at: readonly number[], count: number): Pace {
  const variance = 1 / precision(weights, sigma2)
  const all = new Array<number>(count).fill(0)
  at.forEach((place, i) => (all[place] = weights[i]!))
  return {
    mu,
    factor: Math.exp(mu),
    sigma: Math.sqrt(sigma2),
    variance,
    dof: degrees(weights),
    spread: Math.sqrt(sigma2 + variance),
    weights: all,
  }
}

function sum(values: readonly number[], of: (value: number, at: number) => number): number {
  return values.reduce((all, value, at) => all + of(value, at), 0)
}
