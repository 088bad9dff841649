import type { Law } from '../figures/figure.ts'

/**
 * Power of walking with a load on the back: what the body burns, rest included.
 *   M = M_rest + (0.19 + η·(1.78·S^0.58 + 0.27·S⁴ + M_grade))·(1 + 1.96·(L/W)^1.36)
 *   M_grade = 0.34·S·G·(1 − 1.05^(1 − 1.1^(G + 32)))       power = M·W
 * M W per kg of body mass; W body kg; L everything carried and worn kg; S m/s; G percent, signed; η ground (1: treadmill, blacktop).
 * Held to what was studied: S 0 … 1.97, G −40 … 45 %, L/W 0 … 0.66; standing still the speed and grade terms are nothing; never below rest.
 * M_rest from the resting rate, 1.05 W/kg when unknown (read).
 * Source: Looney et al. 2022, Med Sci Sports Exerc 54 (abstract read; equation read in two public source files that cite it). Reported error −0.08 ± 0.59 W/kg.
 * Doubt: one file leaves M_grade outside η (equal at η = 1, 9 % apart at η = 1.2, +10 %); base 1.1 is printed 1.11 on one page of 2019 (up to 0.27 W/kg).
 * No worked example of the paper was found; check values are recomputed from the equation as printed here.
 */
export const lcda2022 = {
  name: 'Walking power with a load',
  formula:
    'P = W·(M_rest + (0.19 + η·(1.78·S^0.58 + 0.27·S⁴ + M_grade))·(1 + 1.96·(L/W)^1.36)); M_grade = 0.34·S·G·(1 − 1.05^(1 − 1.1^(G+32)))',
  source: { cite: 'Looney et al. 2022, load carriage decision aid, backpacking equation', known: 'read' },
  takes: { bodyKg: 'kg', loadKg: 'kg', speedMs: 'm/s', gradePercent: '%', terrain: '1', restWPerKg: 'W/kg' },
  unit: 'W',
  cautions: outsideStudied,
  compute({ bodyKg, loadKg, speedMs, gradePercent, terrain, restWPerKg }) {
    const S = clamp(speedMs, 0, FASTEST_MS)
    const load = 1 + 1.96 * clamp(loadKg / bodyKg, 0, HEAVIEST_SHARE) ** 1.36
    const moving = S === 0 ? 0 : terrain * (1.78 * S ** 0.58 + 0.27 * S ** 4 + gradeTerm(S, gradePercent))
    return bodyKg * Math.max(restWPerKg, restWPerKg + (0.19 + moving) * load)
  },
} as const satisfies Law<WalkingState, 'W'>

export type WalkingState = { bodyKg: 'kg'; loadKg: 'kg'; speedMs: 'm/s'; gradePercent: '%'; terrain: '1'; restWPerKg: 'W/kg' }
export type Walking = { readonly [K in keyof WalkingState]: number }

/** Resting power taken when height or age is not said. */
export const REST_W_PER_KG = 1.05
/** The law's 80 % band is ± 15 % (choice, from the spread between three models); one standard uncertainty of it. */
export const POWER_DOUBT = 0.15 / 1.2816

const FASTEST_MS = 1.97
const HEAVIEST_SHARE = 0.66
const STEEPEST = { down: -40, up: 45 } as const

/** M_grade in W/kg; `base` is 1.1 in both files and 1.11 on one page about the equation of 2019. */
export function gradeTerm(speedMs: number, gradePercent: number, base = 1.1): number {
  const G = clamp(gradePercent, STEEPEST.down, STEEPEST.up)
  return 0.34 * speedMs * G * (1 - 1.05 ** (1 - base ** (G + 32)))
}

function outsideStudied({ bodyKg, loadKg, speedMs, gradePercent }: Walking): readonly string[] {
  const beyond = [
    ...(speedMs > FASTEST_MS ? ['speed'] : []),
    ...(gradePercent < STEEPEST.down || gradePercent > STEEPEST.up ? ['slope'] : []),
    ...(loadKg / bodyKg > HEAVIEST_SHARE ? ['load'] : []),
    ...(bodyKg < 30 ? ['body mass'] : []),
  ]
  return beyond.length === 0 ? [] : [`Outside the studied range: ${beyond.join(', ')}.`]
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))
