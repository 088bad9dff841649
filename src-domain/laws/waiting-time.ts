/**
 * When a thing will be worn, from how often its walker goes and how much each trip wears it.
 *   λ ~ Gamma(a, b): a = 1 + n, b = 1/λ0 + T        n trips seen in T years, λ0 the walker's own rate (no history: 4 a year)
 *   μ = (m0 + Σ units)/(1 + n)                       units to the trip, drawn to the class's usual m0
 *   τ = b·x/(1 − x), x = I⁻¹(q; r, a)                years to the r-th trip, r = left/μ, a real number; mean b·r/(a − 1)
 * Exact for a Poisson run of trips whose rate is itself uncertain (a scaled beta-prime). Source: standard statistics (memory); the note's first two checks
 * were also met by simulation of two million draws. With a spread of lives: 21 lives of equal probability, their chances averaged.
 */
import { betaQuantile, betaShareBelow } from './beta.ts'
import { leftToWorn, WORN_SHARE } from './life-used.ts'
import { normalQuantile } from './normal.ts'

export interface TripRate {
  /** a: one more than the trips seen. */
  readonly shape: number
  /** b: the years they were seen in, and those the prior is worth. */
  readonly years: number
}

export const USUAL_TRIPS_A_YEAR = 4
/** Fewer trips than this are now. */
export const NOW_TRIPS = 0.05
/** Beyond this the 90 % date is no forecast. */
export const FORESEEABLE_YEARS = 20
const LIVES = 21

export const tripRate = (trips: number, years: number, usualPerYear: number = USUAL_TRIPS_A_YEAR): TripRate => ({
  shape: 1 + trips,
  years: 1 / usualPerYear + years,
})

/** Units to the trip, drawn to the usual with the weight of one trip. */
export const unitsPerTrip = (usual: number, units: readonly number[]): number =>
  (usual + units.reduce((sum, one) => sum + one, 0)) / (1 + units.length)

/** The years by which the `trips`-th trip is over with probability q. */
export function waitingYears(q: number, trips: number, rate: TripRate): number {
  if (trips < NOW_TRIPS) return 0
  const x = betaQuantile(q, trips, rate.shape)
  return (rate.years * x) / (1 - x)
}

/** The mean of it; null with no trip seen, where it has none. */
export const meanWaitingYears = (trips: number, rate: TripRate): number | null =>
  rate.shape > 1 ? (rate.years * trips) / (rate.shape - 1) : null

export interface SpreadLife {
  readonly medianLife: number
  readonly sigma: number
  readonly used: number
  readonly unitsPerTrip: number
  readonly rate: TripRate
}

/** The chance that 90 % of the life is used within the years. */
export function wornWithin(years: number, life: SpreadLife): number {
  const x = years / (years + life.rate.years)
  return tripsLeft(life).reduce((sum, trips) => sum + (trips <= 0 ? 1 : betaShareBelow(x, trips, life.rate.shape)), 0) / LIVES
}

/** The years by which 90 % of the life is used with probability q; 0 when that is so now. */
export function wornYears(q: number, life: SpreadLife): number {
  if (life.sigma <= 0) return waitingYears(q, leftToWorn(life.used, life.medianLife) / life.unitsPerTrip, life.rate)
  const trips = tripsLeft(life)
  const within = (x: number): number =>
    trips.reduce((sum, one) => sum + (one <= 0 ? 1 : betaShareBelow(x, one, life.rate.shape)), 0) / LIVES
  if (within(0) >= q) return 0
  let [low, high] = [0, 1]
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (within(middle) < q) low = middle
    else high = middle
  }
  const x = (low + high) / 2
  return (life.rate.years * x) / (1 - x)
}

/** Trips left in each of the lives of equal probability. */
function tripsLeft({ medianLife, sigma, used, unitsPerTrip: each }: SpreadLife): readonly number[] {
  return lifePoints.map((z) => Math.max(0, WORN_SHARE * medianLife * Math.exp(sigma * z) - used) / each)
}

const lifePoints: readonly number[] = Array.from({ length: LIVES }, (_, i) => normalQuantile((i + 0.5) / LIVES))
