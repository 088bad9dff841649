/**
 * The way by the formulas of the design notes on walking, written again for the worked trips: hours (Campbell et al. 2022, median), power with a load
 * (Looney et al. 2022), energy of a day, resting rate (Mifflin-St Jeor), arrival with Student's t of the package jstat. Nothing comes from the program.
 */
import jstat from 'jstat'
import { rootOf, squares, type Expected } from './expected.ts'

/** Length, climb and descent in metres; ground as factors of time and energy (path 1 and 1.1). */
export interface Way {
  readonly m: number
  readonly up: number
  readonly down: number
  readonly time?: number
  readonly eta?: number
}

/** m/s on a slope in degrees: the median walker. */
export function medianSpeed(degrees: number): number {
  const x = (degrees + 1.4579) / 22.0787
  return 76.3271 / (Math.PI * 22.0787 * (1 + x * x)) + 0.0525 - 3.2002e-4 * degrees
}

interface Part {
  readonly m: number
  readonly rise: number
}

/** A leg as one climb and one descent that share its length by their height. */
function partsOf({ m, up, down }: Way): readonly Part[] {
  if (up + down === 0) return [{ m, rise: 0 }]
  const parts = [
    { m: (m * up) / (up + down), rise: up },
    { m: (m * down) / (up + down), rise: -down },
  ]
  return parts.filter((part) => part.m > 0)
}

const partHours = ({ m, rise }: Part, time: number): number => (time * m) / medianSpeed((Math.atan(rise / m) * 180) / Math.PI) / 3600

/** Moving hours of legs. */
export const hours = (...legs: readonly Way[]): number =>
  legs.reduce((sum, leg) => sum + partsOf(leg).reduce((all, part) => all + partHours(part, leg.time ?? 1), 0), 0)

/** W per kg of body. */
function perKg(body: number, load: number, v: number, grade: number, eta: number, rest: number): number {
  const S = Math.min(1.97, v)
  const G = Math.min(45, Math.max(-40, grade))
  const climb = 0.34 * S * G * (1 - 1.05 ** (1 - 1.1 ** (G + 32)))
  const moving = eta * (1.78 * S ** 0.58 + 0.27 * S ** 4 + climb)
  return Math.max(rest, rest + (0.19 + moving) * (1 + 1.96 * Math.min(0.66, load / body) ** 1.36))
}

/** On snow and sand: how much longer walking takes at the power of a path, 70 kg with 10 kg. */
export function equalEffort(eta: number): number {
  const path = medianSpeed(0)
  const power = perKg(70, 10, path, 0, 1.1, 1.05)
  return path / rootOf((v) => perKg(70, 10, v, 0, eta, 1.05) - power, 0.05, 2.5)
}

export interface BodyByHand {
  readonly kg: number
  readonly cm: number
  readonly years: number
  /** 5 for men, −161 for women, −78 where neither is said. */
  readonly constant: 5 | -161 | -78
}

/** kcal a day at rest. */
export const resting = ({ kg, cm, years, constant }: BodyByHand): number => 10 * kg + 6.25 * cm - 5 * years + constant

/** kcal of a whole day with this load: moving, 8 h of sleep, the rest awake at 1.5 of resting. */
export function dayKcal(body: BodyByHand, legs: readonly Way[], loadKg: number): number {
  const rest = resting(body)
  const restW = (rest * 4184) / 86_400 / body.kg
  let moving = 0
  let walked = 0
  for (const leg of legs)
    for (const part of partsOf(leg)) {
      const h = partHours(part, leg.time ?? 1)
      const watts = body.kg * perKg(body.kg, loadKg, part.m / h / 3600, (100 * part.rise) / part.m, leg.eta ?? 1.1, restW)
      moving += h
      walked += (watts * h * 3600) / 4184
    }
  return walked + (1.5 * rest * (24 - 8 - moving)) / 24 + (rest * 8) / 24
}

export interface FoodByHand {
  readonly body: BodyByHand
  readonly days: readonly (readonly Way[])[]
  /** Meals eaten out of each day, of a full one. */
  readonly shares: readonly number[]
  /** What is on the body at noon of each day without food: worn, pack, water, what is left of fuel, kg. */
  readonly others: readonly number[]
  /** Days walked at each resupply of food, and at the end. */
  readonly stops?: readonly number[]
  readonly eatenOut?: number
}

/**
 * kcal that each day asks of the food. The food's own weight (4.2 kcal/g, what is eaten from noon to the next resupply) is part of the load, so the
 * sum is taken thirty times over; the program stops after three, which leaves it within a ten thousandth.
 */
export function askedKcal({ body, days, shares, others, stops = [], eatenOut = 0 }: FoodByHand): readonly number[] {
  let asked = days.map(() => 0)
  for (let turn = 0; turn < 30; turn++) {
    asked = days.map((legs, i) => {
      const end = [...stops, days.length].find((stop) => stop > i)!
      const toCome = asked.reduce((kcal, one, d) => kcal + one * Math.max(0, Math.min(end, d + 1) - Math.max(i + 0.5, d)), 0)
      return shares[i]! * dayKcal(body, legs, others[i]! + toCome / 4200)
    })
  }
  const whole = asked.reduce((a, b) => a + b, 0)
  return asked.map((kcal) => kcal * Math.max(0, 1 - eatenOut / whole))
}

/** Marks of food for E kcal: a fifth of it or 2 % of the body at 7700 kcal a kg, whichever is less. `uFood`: doubt of what is carried, kcal. */
export function fed(have: number, E: number, bodyKg: number, uFood: number): Expected {
  const slack = Math.min(0.2 * E, 0.02 * bodyKg * 7700)
  const u = squares((0.15 / 1.2816) * E, uFood)
  // A thousandth of E: the three turns of the program (1e-4) and its rounding of portions.
  return { have, need: E - 2 * slack, enough: E - slack, u, wants: 'at least', tolerance: 0.001 * E }
}

/** Food typed from a packet: 3 and 2 % of the amount as squares, 10 % of its energy; kcal. */
export const foodDoubt = (...kcal: readonly number[]): number => squares(...kcal.map((one) => one * squares(0.03, 0.02, 0.1)))

export interface ArrivalByHand {
  readonly start: number
  readonly moving: number
  readonly breaks?: number
  /** Minutes of that local day. */
  readonly sunset: number
  readonly dusk: number
}

/**
 * Arrival without logs: spread 0.23324 with 4 degrees of freedom (√(0.12² + 0.20²)); one in ten comes later than the late end.
 * Tolerance a minute: two routes to the sun differ by that much.
 */
export function arrival({ start, moving, breaks = 0.15, sunset, dusk }: ArrivalByHand): Expected {
  const spread = Math.sqrt(0.12 ** 2 + 0.2 ** 2)
  const walk = 60 * (1 + breaks) * moving
  const later = walk * (Math.exp(jstat.jStat.studentt.inv(0.9, 4) * spread) - 1)
  return { have: start + walk, need: dusk, enough: sunset - later, u: spread * walk, wants: 'at most', tolerance: 1 }
}
