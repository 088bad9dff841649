/**
 * Water, fuel, gas, light, power, room and load by the formulas of the design notes on provisions, written again for the worked trips.
 * Saturation by IAPWS-IF97, vapour of gases by Antoine (Poling), sweat by Gonzalez et al. 2009. Nothing comes from the program.
 */
import { rootOf, squares, sumOf, type Expected } from './expected.ts'

const n = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7, 0.1491510861353e2,
  -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const

/** Pa at a height, standard atmosphere. */
const air_Pa = (m: number): number => 101_325 * (1 - (0.0065 * m) / 288.15) ** 5.2558798

/** °C at which water boils there. */
export function boils(m: number): number {
  const b = (air_Pa(m) / 1e6) ** 0.25
  const E = b * b + n[2] * b + n[5]
  const F = n[0] * b * b + n[3] * b + n[6]
  const G = n[1] * b * b + n[4] * b + n[7]
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G))
  return (n[9] + D - Math.sqrt((n[9] + D) ** 2 - 4 * (n[8] + n[9] * D))) / 2 - 273.15
}

/** Torr of saturated water vapour. */
function torr(t: number): number {
  const T = t + 273.15
  const th = T + n[8] / (T - n[9])
  const A = th * th + n[0] * th + n[1]
  const B = n[2] * th * th + n[3] * th + n[4]
  const C = n[5] * th * th + n[6] * th + n[7]
  return (((2 * C) / (-B + Math.sqrt(B * B - 4 * A * C))) ** 4 * 1e6) / 133.322368
}

const watts = { easy: 250, moderate: 425, hard: 600 } as const

/** l/h of the standard body at a temperature of the table: the upper of two sweat equations, rounded up to 0.05. */
function cell(effort: keyof typeof watts, t: number, sun: number): number {
  const rh = t <= 15 ? 0.6 : t <= 30 ? 0.5 : t === 35 ? 0.4 : 0.2
  const needed = watts[effort] / 1.85 + 6.45 * (t - 36) + sun
  const most = 14.21 * 0.45 * (44 - rh * torr(t))
  const pw = 147 + 1.527 * needed - 0.87 * most
  const osec = 147 * Math.exp(0.0012 * 27.9 * Math.max(0, needed) * most ** -0.455)
  return Math.ceil(((Math.max(pw, osec) * 1.85) / 1000) * 20 - 1e-9) / 20
}

/** DuBois and DuBois 1916, m². */
export const skin = (kg: number, cm: number): number => 0.007184 * kg ** 0.425 * cm ** 0.725

export interface Thirst {
  readonly effort: keyof typeof watts
  readonly high: number
  readonly sun?: 'full' | 'half' | 'shade'
  readonly skin: number
}

/** Litres an hour on foot. */
export function drinks({ effort, high, sun = 'full', skin: area }: Thirst): number {
  const t = Math.min(40, Math.max(10, high))
  const below = Math.min(35, 5 * Math.floor(t / 5))
  const shine = { full: 60, half: 30, shade: 0 }[sun]
  const [a, b] = [cell(effort, below, shine), cell(effort, below + 5, shine)]
  return Math.min(1.42, ((a + ((b - a) * (t - below)) / 5) * area) / 1.85)
}

/** Litres of a dry stretch and of what carries them. Half a litre to spare; 15 % of what is drunk on foot in doubt. */
export function watered(have: number, h: number, rate: number, dryCamps = 0, cooking = 0): Expected {
  const need = h * rate + dryCamps * (1.5 + cooking) + 0.5
  // A hundredth of a litre: hours come by the same law, so that only rounding is left.
  return { have, need, enough: 1.15 * need, u: 0.15 * h * rate, wants: 'at least', tolerance: 0.01 }
}

/** Litres drawn from what is not safe: on foot, and 1.5 l and the cooking of each camp. */
export function madeSafe(have: number, h: number, rate: number, camps: number, cooking = 0): Expected {
  const need = h * rate + camps * (1.5 + cooking)
  return { have, need, enough: 1.15 * need, u: 0.15 * h * rate, wants: 'at least', tolerance: 0.01 }
}

export interface BoilsByHand {
  /** Boils at a height, metres. */
  readonly at: readonly { readonly boils: number; readonly m: number }[]
  readonly litres: number
  readonly potKg: number
  /** kJ/(kg K): aluminium 0.897, titanium 0.523, steel 0.50. */
  readonly potHeat: number
  readonly heatValue: number
  readonly efficiency: number
  readonly wind?: number
  readonly priming?: number
}

/** g for boils of water of 8 °C. */
export function fuelNeed({ at, litres, potKg, potHeat, heatValue, efficiency, wind = 1, priming = 0 }: BoilsByHand): number {
  const kJ = sumOf(at.map((one) => one.boils * (litres * 0.998 * 4.19 + potKg * potHeat) * (boils(one.m) - 8)))
  return (kJ / (heatValue * efficiency)) * wind + priming * sumOf(at.map((one) => one.boils))
}

/** Doubt of the need: efficiency 0.25, water 0.05, heat value 0.03. `uHave`: of what is carried. */
export function fuelled(have: number, need: number, uHave: number, heatShare = 0.03): Expected {
  const u = squares(need * squares(0.25, 0.05, heatShare), uHave)
  return { have, need, enough: 1.2 * need, u, wants: 'at least', tolerance: 0.02 }
}

/** g by the brief: the least that is past need by a fifth and by its doubt (its own amount 3 and 2 % as squares). */
export function fuelByBrief(need: number): number {
  const u = need * squares(0.25, 0.05, 0.03)
  return rootOf((g) => g - need - Math.max(0.2 * need, squares(u, g * squares(0.03, 0.02))), need, 5 * need)
}

/** 80 isobutane 20 propane and the like, MJ/kg by mass. */
export interface Mix {
  readonly propane: number
  readonly isobutane: number
  readonly butane: number
}
export const heatOf = ({ propane, isobutane, butane }: Mix): number => 46.34 * propane + 45.55 * isobutane + 45.72 * butane

const gases = {
  propane: [8.92828, 803.997, -26.11, 44.097],
  isobutane: [9.00272, 947.54, -24.28, 58.124],
  butane: [8.93266, 935.773, -34.361, 58.124],
} as const

/** kPa over the air's of what is left when a share r of the mass remains, drained as vapour at that temperature. */
function gauge(mix: Mix, t: number, r: number, m: number): number {
  const parts = (['propane', 'isobutane', 'butane'] as const).map((gas) => {
    const [A, B, C, M] = gases[gas]
    return { M, p: 10 ** (A - B / (t + 273.15 + C)) / 1000, mol: mix[gas] / M }
  })
  const mass = (tau: number) => sumOf(parts.map(({ M, p, mol }) => M * mol * Math.exp(-p * tau)))
  const tau = r >= 1 ? 0 : rootOf((one) => mass(one) - r * mass(0), 0, 1)
  const left = parts.map(({ p, mol }) => ({ p, mol: mol * Math.exp(-p * tau) }))
  const all = sumOf(left.map(({ mol }) => mol))
  return sumOf(left.map(({ p, mol }) => (p * mol) / all)) - air_Pa(m) / 1000
}

export function gasFlows(mix: Mix, air: number, r: number, m: number, sigmaAir: number): Expected {
  const have = gauge(mix, air - 5, r, m)
  const slope = (gauge(mix, air - 4.99, r, m) - gauge(mix, air - 5.01, r, m)) / 0.02
  return { have, need: 30, enough: 60, u: Math.abs(slope) * sigmaAir, wants: 'at least', tolerance: 0.05 }
}

const coldCurves = {
  'lithium-ion': [1, 0.88, 0.75, 0.55, 0.1],
  lithium: [1, 0.95, 0.9, 0.8, 0.4],
  alkaline: [1, 0.6, 0.4, 0.2, 0],
  nimh: [1, 0.85, 0.7, 0.45, 0],
} as const
export type Cell = keyof typeof coldCurves

/** Share of a cell's energy at t °C: the table at 20, 0, −10, −20, −40, lines between. */
export function coldShare(cellKind: Cell, t: number): number {
  const at = [20, 0, -10, -20, -40]
  const row = coldCurves[cellKind]
  if (t >= 20) return 1
  if (t <= -40) return row[4]
  const i = at.findIndex((one) => t >= one)
  return row[i]! + ((row[i - 1]! - row[i]!) * (t - at[i]!)) / (at[i - 1]! - at[i]!)
}

export interface LampByHand {
  /** Hours at 20 °C. */
  readonly h: number
  readonly cell: Cell
  readonly t: number
}

/** Hours of light against dark walking and half an hour an evening. Lamps whose cells are of one kind share the doubt of the cold. */
export function lit(lamps: readonly LampByHand[], darkWalking: number, evenings: number): Expected {
  const need = darkWalking + 0.5 * evenings
  const kinds = [...new Set(lamps.map((lamp) => lamp.cell))]
  const cold = kinds.map((kind) => (0.1 / Math.sqrt(3)) * sumOf(lamps.filter((lamp) => lamp.cell === kind).map((lamp) => lamp.h)))
  return {
    have: sumOf(lamps.map(({ h, cell: kind, t }) => h * coldShare(kind, t))),
    need,
    enough: 1.25 * need,
    u: squares(...cold, (need * 0.3) / Math.sqrt(3)),
    wants: 'at least',
    // Two minutes in all: two routes to the sun differ by a minute at each end of a day.
    tolerance: 0.04,
  }
}

/** Wh carried against Wh drawn; each ±10 and ±30 % as rectangles. */
export function powered(have: number, need: number): Expected {
  const third = 1 / Math.sqrt(3)
  return { have, need, enough: 1.25 * need, u: squares(0.1 * third * have, 0.3 * third * need), wants: 'at least', tolerance: 0.01 }
}

/** A bank's label through its port and into a device's cell. */
export const bank = (label: number, port = 0.85): number => label * port * 0.85

/** Litres that things take: stuffed ones are known to 5 %, by class to 30 % as a rectangle; the pack to 10 % as one. */
export function packed(packL: number, stuffed: readonly number[], byClass: readonly number[], fill = 0.95): Expected {
  const need = (sumOf(stuffed) + sumOf(byClass)) / fill
  const u = squares(
    (0.1 / Math.sqrt(3)) * packL,
    ...stuffed.map((one) => (0.05 * one) / fill),
    ...byClass.map((one) => ((0.3 / Math.sqrt(3)) * one) / fill),
  )
  return { have: packL, need, enough: 1.05 * need, u, wants: 'at least', tolerance: 0.01 }
}

/** kg on the back against the need and the easy mark. A gram: masses are whole milligrams, amounts by the brief come from elsewhere. */
export const load = (have: number, need: number, enough: number, u: number, tolerance = 0.001): Expected => ({
  have,
  need,
  enough,
  u,
  wants: 'at most',
  tolerance,
})
