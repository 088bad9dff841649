/**
 * How far a scale's readings are off in proportion, and how well that is known.
 *   never checked: u_gain = 0.003/√3 (±0.3 % of the reading, common practice for kitchen scales)
 *   checked with a mass m_ref that reads R_ref: correction m_ref/R_ref, u_gain = √(d²/6 + s²/n + mpe²/3)/m_ref
 *   d step, s spread of n check readings, mpe the check mass's permissible error; a share of one throughout
 * A check holds for six months (choice) or until the scale is moved far. Source: JCGM 100:2008, F.2.2.1 and 4.3.7; provisions.md 9.1.
 */
import { Temporal } from 'temporal-polyfill'

export interface CheckReading {
  readonly readOn: string
  readonly nominalMg: number
  /** The most the check mass may be off; 0 is taken as exact. */
  readonly mpeMg: number
  readonly readingsMg: readonly number[]
}

export interface BenchScale {
  readonly uid: string
  readonly name: string
  readonly stepMg: number
  readonly capacityMg: number
  readonly checks: readonly CheckReading[]
  /** Spread of one reading taken off and on again, learnt from this scale's repeats. */
  readonly spreadMg?: number
}

export interface Gain {
  /** What a reading is multiplied by. */
  readonly correction: number
  /** Standard uncertainty as a share of the mass. */
  readonly u: number
  /** The check it rests on; absent: never checked, or longer than six months ago. */
  readonly check?: CheckReading
}

export const uncheckedGain: Gain = { correction: 1, u: 0.003 / Math.sqrt(3) }

/** The scale's gain on a day: the finest check that holds then and agrees with the newest ones; of equally fine ones the newest. */
export function gainOf(scale: BenchScale, day: string): Gain {
  const holding = scale.checks.filter((check) => holdsOn(check, day) && meanOf(check.readingsMg) > 0)
  const newestDay = holding.reduce((newest, check) => (check.readOn > newest ? check.readOn : newest), '')
  const gains = holding.map((check) => gainFrom(check, scale)).sort((a, b) => a.u - b.u || byDay(b.check, a.check))
  const newest = gains.find((gain) => gain.check.readOn === newestDay)
  if (!newest) return uncheckedGain
  return gains.find((gain) => Math.abs(gain.correction - newest.correction) <= 3 * Math.hypot(gain.u, newest.u)) ?? newest
}

const byDay = (a: CheckReading, b: CheckReading): number => (a.readOn < b.readOn ? -1 : a.readOn > b.readOn ? 1 : 0)

/** What one check says of the scale. */
export function gainFrom(check: CheckReading, scale: Pick<BenchScale, 'stepMg' | 'spreadMg'>): Gain & { readonly check: CheckReading } {
  const { nominalMg, mpeMg, readingsMg } = check
  const spread = spreadOf(readingsMg, scale)
  const u = Math.sqrt(scale.stepMg ** 2 / 6 + spread ** 2 / readingsMg.length + mpeMg ** 2 / 3) / nominalMg
  return { correction: nominalMg / meanOf(readingsMg), u, check }
}

/** Six months to the day, by the calendar; a check made after the weighing says nothing of it. */
export function holdsOn(check: CheckReading, day: string): boolean {
  const ends = Temporal.PlainDate.from(check.readOn).add({ months: 6 }).toString()
  return check.readOn <= day && day <= ends
}

/** Spread of one reading: of these repeats, else the scale's own, else half a step (choice). */
export function spreadOf(readingsMg: readonly number[], scale: Pick<BenchScale, 'stepMg' | 'spreadMg'>): number {
  if (readingsMg.length > 1) return sampleSd(readingsMg)
  return scale.spreadMg ?? 0.5 * scale.stepMg
}

/** Spread of one reading learnt from repeats of earlier weighings, pooled; undefined below ten degrees of freedom (choice). */
export function learntSpread(repeats: readonly (readonly number[])[]): number | undefined {
  let squares = 0
  let freedom = 0
  for (const readings of repeats) {
    if (readings.length < 2) continue
    squares += sampleSd(readings) ** 2 * (readings.length - 1)
    freedom += readings.length - 1
  }
  return freedom < 10 ? undefined : Math.sqrt(squares / freedom)
}

export const massClasses = ['M1', 'M2', 'M3'] as const
export type MassClass = (typeof massClasses)[number]

/** Maximum permissible errors in mg by nominal grams: OIML R 111-1, table 1 (memory; provisions.md 9.1 has 100 g to 2 kg). */
const permissibleMg: Readonly<Record<MassClass, Readonly<Record<number, number>>>> = {
  M1: { 10: 2, 20: 2.5, 50: 3, 100: 5, 200: 10, 500: 25, 1000: 50, 2000: 100 },
  M2: { 10: 6, 20: 8, 50: 10, 100: 16, 200: 30, 500: 80, 1000: 160, 2000: 300 },
  M3: { 10: 20, 20: 25, 50: 30, 100: 50, 200: 100, 500: 250, 1000: 500, 2000: 1000 },
}

/** The permissible error of a check mass of a class; undefined for a nominal the class does not have. */
export const permissibleErrorMg = (massClass: MassClass, nominalMg: number): number | undefined =>
  permissibleMg[massClass][nominalMg / 1000]

export const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** Sample standard deviation, n − 1. */
export function sampleSd(values: readonly number[]): number {
  const mean = meanOf(values)
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1))
}
