/**
 * Warmth by the formulas of the design notes on warmth, written again for the worked trips: bed, ground, clothing in cold air (ISO 11079).
 * Nothing here comes from the program. All bisections halve a hundred times, so that figures differ from the program's by rounding alone:
 * tolerances are 0.01 in °C and W/m², 0.002 in clo.
 */
import { rootOf, squares, type Expected } from './expected.ts'

/** Saturation pressure of water, kPa, as printed in the program of ISO 11079. */
const psat = (t: number): number => 0.1333 * Math.exp(18.6686 - 4030.183 / (t + 235))

/** R (ft²·°F·h/Btu) in m²K/W: 1/5.678263337. */
export const rsi = (r: number): number => r * 0.1761101838

const lost = (heat: number, air: number, rh: number): number => {
  const exhaled = 29 + 0.2 * air
  return 0.0173 * heat * (psat(exhaled) - (rh / 100) * psat(air)) + 0.0014 * heat * (exhaled - air)
}
/** Dry and moist drive from skin to air, K, at 80 % humidity. */
const drive = (skin: number, air: number): number => skin - air + 0.38 * (psat(skin) - 0.8 * psat(air))

const scales = { comfort: [32.8, 46.5, 2], limit: [32.9, 55, 2], extreme: [31.3, 76.9, 5], maker: [32.9, 55, 4] } as const

export interface BedByHand {
  readonly rated: number
  readonly kind: keyof typeof scales
  /** m²K/W of each mat. */
  readonly mats: readonly number[]
  /** Open below and at the head. */
  readonly quilt?: boolean
  /** Open at the head alone. */
  readonly openHead?: boolean
  readonly hat?: boolean
  /** clo of each garment worn inside beyond the base layer. */
  readonly inside?: readonly number[]
  readonly low: number
  /** km between the forecast's height and the camp's, for the doubt of the low. */
  readonly liftKm?: number
  readonly offset?: number
}

interface Judged {
  readonly rated: number
  readonly mats: number
  readonly share: number
  readonly under: number
}

function coldest(bed: BedByHand, { rated, mats, share, under }: Judged): number {
  const [skin, heat] = scales[bed.kind]
  const whole = drive(skin, rated) / (heat - lost(heat, rated, 80))
  const top = (1 - share) / (1 / whole - share / (under + 0.85))
  const inside = Math.min(0.2, 0.155 * 0.7 * (bed.inside ?? []).reduce((a, b) => a + b, 0))
  const bare = (bed.quilt ?? bed.openHead) ? 0.05 * (1 / (bed.hat ? 0.3 : 0.12) - 1 / top) : 0
  const all = (1 - share) / (top + inside) + share / (under + mats) + bare
  return rootOf((air) => all * drive(32.8, air) - (46.5 - lost(46.5, air, 80)), -90, 32.8)
}

const sigmaLow = (liftKm = 0): number => squares(2, 1.5 * liftKm)

export function asleep(bed: BedByHand): Expected {
  const mats = bed.mats.reduce((a, b) => a + b, 0)
  const at: Judged = { rated: bed.rated, mats, share: 0.3, under: bed.quilt ? 0.05 : 0.1 }
  const half = (up: Partial<Judged>, down: Partial<Judged>) => (coldest(bed, { ...at, ...up }) - coldest(bed, { ...at, ...down })) / 2
  const sigma = scales[bed.kind][2]
  const u = squares(
    half({ rated: at.rated + sigma }, { rated: at.rated - sigma }),
    half({ mats: 1.1 * mats }, { mats: 0.9 * mats }),
    half({ share: 0.36 }, { share: 0.24 }),
    half({ under: at.under + 0.04 }, { under: at.under - 0.04 }),
    3,
    sigmaLow(bed.liftKm),
  )
  const have = coldest(bed, at) + (bed.offset ?? 0)
  return { have, need: bed.low, enough: bed.low - 2, u, wants: 'at most', tolerance: 0.01 }
}

export function fromBelow({ mats, low, liftKm, quilt }: Pick<BedByHand, 'mats' | 'low' | 'liftKm' | 'quilt'>): Expected {
  const all = mats.reduce((a, b) => a + b, 0)
  const under = quilt ? 0.05 : 0.1
  const flow = (rsiAll: number, rb: number, air: number) => drive(32.8, air) / (rb + rsiAll)
  const h = 1e-4
  const u = squares(
    (0.1 * all * (flow(all + h, under, low) - flow(all - h, under, low))) / (2 * h),
    (0.04 * (flow(all, under + h, low) - flow(all, under - h, low))) / (2 * h),
    (sigmaLow(liftKm) * (flow(all, under, low + h) - flow(all, under, low - h))) / (2 * h),
  )
  return { have: flow(all, under, low), need: 85, enough: 65, u, wants: 'at most', tolerance: 0.01 }
}

/** Planning low at a camp: 6.5 K a km up, no credit down. */
export const lowAt = (low: number, forecastM: number, campM: number): number => low - (6.5 * Math.max(0, campM - forecastM)) / 1000

/** ISO 9920: 0.161 and 0.835 of every garment's clo. */
export const ensemble = (...clo: readonly number[]): number => 0.161 + 0.835 * clo.reduce((a, b) => a + b, 0)

interface Cold {
  readonly heat: number
  readonly air: number
  /** Wind at the body, m/s, and walking speed. */
  readonly wind: number
  readonly walk: number
  /** Air permeability of the outer layer, l/m²s. */
  readonly p: number
}

type Criterion = 'minimal' | 'neutral'

/** Clipped as the standard's program does. */
function climate({ heat, air, wind, walk, p }: Cold) {
  const M = Math.min(400, Math.max(58, heat))
  const w = Math.min(1.2, Math.max(walk, 0.0052 * (M - 58)))
  const v = Math.min(18, Math.max(0.4, wind))
  const slow = Math.exp(-0.15 * v - 0.22 * w)
  return { M, air: Math.min(10, air), Ia: 0.092 * slow - 0.0045, K: 0.54 * slow * p ** 0.075 - 0.06 * Math.log(p) + 0.5 }
}

/** Heat left over in W/m² in clothing of resultant resistance I, with storage S. */
function balance(at: Cold, by: Criterion, I: number, S: number): number {
  const { M, air, Ia } = climate(at)
  const skin = by === 'minimal' ? 33.34 - 0.0354 * M : 35.7 - 0.0285 * M
  const wet = by === 'minimal' ? 0.06 : 0.001 * M
  const fcl = 1 + 1.197 * I
  const evaporated = (wet * (psat(skin) - 0.8 * psat(air))) / ((0.06 / 0.38) * (Ia + I))
  const q = M - evaporated - lost(M, air, 80) - S
  const shell = skin - I * q
  const hr =
    Math.abs(shell - air) < 1e-9
      ? 5.67e-8 * 0.95 * 0.77 * 4 * (273 + air) ** 3
      : (5.67e-8 * 0.95 * 0.77 * ((273 + shell) ** 4 - (273 + air) ** 4)) / (shell - air)
  const hc = 1 / Ia - hr
  return q - fcl * hr * (shell - air) - fcl * hc * (shell - air)
}

/** Static clothing, clo, in which the balance with storage S holds. */
function cloFor(at: Cold, by: Criterion, S: number): number {
  const { Ia, K } = climate(at)
  if (balance(at, by, 1e-4, S) > 0) return 0
  const I = rootOf((one) => balance(at, by, one, S), 1e-4, 3)
  const fcl = 1 + 1.197 * I
  return ((I + Ia / fcl) / K - 0.085 / fcl) / 0.155
}

/** The three parts of the doubt: ±15 % of what is worn and ±20 % of the heat as rectangles, the air as it is. */
function doubtOf(at: Cold, have: number, sigmaAir: number, need: (one: Cold) => number): number {
  const h = 0.01
  return squares(
    (0.15 * have) / Math.sqrt(3),
    (need({ ...at, heat: Math.max(58, 0.8 * at.heat) }) - need({ ...at, heat: 1.2 * at.heat })) / (2 * Math.sqrt(3)),
    (sigmaAir * (need({ ...at, air: at.air + h }) - need({ ...at, air: at.air - h }))) / (2 * h),
  )
}

/** Wind at the body: two thirds of the forecast's in m/s, half the walking speed added, never under 0.4. */
export const atBody = (windKmh: number, walk = 0): number => Math.max(0.4, (0.667 * windKmh) / 3.6 + 0.5 * walk)

export interface SittingByHand {
  readonly worn: readonly number[]
  readonly air: number
  readonly wind: number
  readonly minutes: number
  readonly p?: number
  readonly liftKm?: number
}

/** Sitting still at 65 W/m² for the minutes planned: 40 Wh/m² may be lost over them. */
export function sitting({ worn, air, wind, minutes, p = 8, liftKm }: SittingByHand): Expected {
  const at: Cold = { heat: 65, air, wind, walk: 0, p }
  const S = -2400 / minutes
  const need = (one: Cold) => cloFor(one, 'minimal', S)
  const have = ensemble(...worn)
  return {
    have,
    need: need(at),
    enough: Math.min(cloFor(at, 'neutral', S), cloFor(at, 'minimal', 0)),
    u: doubtOf(at, have, sigmaLow(liftKm), need),
    wants: 'at least',
    tolerance: 0.002,
  }
}

export interface WalkingByHand {
  readonly worn: readonly number[]
  readonly jacket: number
  readonly heat: number
  readonly air: number
  readonly windKmh: number
  readonly p?: number
  readonly liftKm?: number
}

export function walkingWarm({ worn, jacket, heat, air, windKmh, p = 8, liftKm }: WalkingByHand): Expected {
  const at: Cold = { heat, air, wind: atBody(windKmh, 1.1), walk: 1.1, p }
  const have = ensemble(...worn)
  const enough = cloFor(at, 'minimal', 0)
  const need = (one: Cold) => Math.max(0, cloFor(one, 'minimal', 0) - 0.835 * jacket)
  return { have, need: need(at), enough, u: doubtOf(at, have, sigmaLow(liftKm), need), wants: 'at least', tolerance: 0.002 }
}
