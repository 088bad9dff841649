/**
 * How much a walker drinks on foot, by effort and air temperature.
 *   rate = table(effort, t)·A/1.85·f            l/h, t °C, A skin m², f the walker's own factor
 *   table = max(PW, OSEC)·1.85/1000 rounded up to 0.05, light wear, 1 m/s, full sun 60 W/m² (half sun 30, shade 0); between its temperatures the line, level below 10 and above 40 °C
 *   humidity 60 % to 15 °C, 50 % to 30 °C, 40 % at 35 °C, 20 % at 40 °C; never above 1.42 l/h
 * The rule is a choice on the published sweat equations; it agrees with the US Army table (TB MED 507 as reprinted, read: 0.47 to 0.95 l/h) within that
 * table's own ± 0.24. Caution: drink to thirst within this; above 1.42 l/h or 11.36 l a day the blood's salt may fall; long hot days need salt with food;
 * children, pregnancy, illness and some medicines change it.
 */
import type { Law } from '../figures/figure.ts'
import { FULL_SUN_W_m2, mostEvaporation, neededEvaporation } from './evaporation-balance.ts'
import { STANDARD_SKIN_m2 } from './skin-area.ts'
import { correctedSweat, piecewiseSweat } from './sweat-rate.ts'

export type Effort = 'easy' | 'moderate' | 'hard'
export const effortW = { easy: 250, moderate: 425, hard: 600 } as const satisfies Record<Effort, number>

/** 1.5 US quarts an hour and 12 a day (TB MED 507 as reprinted, read). */
export const MOST_DRINK_l_h = 1.42

/** Air °C and the relative humidity that goes with it. */
const columns: readonly (readonly [number, number])[] = [
  [10, 0.6],
  [15, 0.6],
  [20, 0.5],
  [25, 0.5],
  [30, 0.5],
  [35, 0.4],
  [40, 0.2],
]

/** How much of the full sun reaches the walker; the same rule with less radiation. */
export type Sun = 'full' | 'half' | 'shade'
const sun_W_m2 = { full: FULL_SUN_W_m2, half: FULL_SUN_W_m2 / 2, shade: 0 } as const satisfies Record<Sun, number>

/** The rule before it is rounded, l/h of the standard body. */
export function sweatOnFoot(effort: Effort, airC: number, humidity: number, sun: Sun = 'full'): number {
  const at = { workW: effortW[effort], skin_m2: STANDARD_SKIN_m2, airC, humidity, speedMs: 1, sun_W_m2: sun_W_m2[sun] }
  const [needed, most] = [neededEvaporation(at), mostEvaporation(at)]
  return (Math.max(piecewiseSweat(needed, most), correctedSweat(needed, most)) * STANDARD_SKIN_m2) / 1000
}

const roundedUp = (value: number): number => Math.ceil(value * 20 - 1e-9) / 20
type Table = Readonly<Record<Effort, readonly number[]>>
const tableIn = (sun: Sun): Table => {
  const row = (effort: Effort) => columns.map(([airC, humidity]) => roundedUp(sweatOnFoot(effort, airC, humidity, sun)))
  return { easy: row('easy'), moderate: row('moderate'), hard: row('hard') }
}
const tables: Readonly<Record<Sun, Table>> = { full: tableIn('full'), half: tableIn('half'), shade: tableIn('shade') }
/** The table in full sun. */
export const drinkingTable: Table = tables.full
export const drinkingTableC: readonly number[] = columns.map(([airC]) => airC)

/** The table between its temperatures, l/h. */
export function tableRate(effort: Effort, airC: number, sun: Sun = 'full'): number {
  const row = tables[sun][effort]
  const at = Math.min(40, Math.max(10, airC))
  const i = Math.min(row.length - 2, Math.floor((at - 10) / 5))
  return row[i]! + ((row[i + 1]! - row[i]!) * (at - drinkingTableC[i]!)) / 5
}

const sunWords = { full: 'full sun', half: 'half sun', shade: 'shade' } as const satisfies Record<Sun, string>
type Takes = { airC: 'degC'; skin_m2: 'm2'; factor: '1' }
const cautions = [
  'Drink to thirst. More than 1.42 l an hour or 11.4 l a day can thin the blood’s salt. Heat, illness, pregnancy and some medicines change the need.',
] as const

/** One law for each effort and sun: they are choices, not numbers with a doubt. */
export const drinkingRate = (effort: Effort, sun: Sun = 'full') =>
  ({
    name: 'Drink on foot',
    formula: `rate = table(${effort}, ${sunWords[sun]}, t)·A/1.85·f, at most 1.42`,
    source: {
      cite: 'sweat equations of Gonzalez et al. 2009, doi 10.1152/japplphysiol.00089.2009, in light wear, rounded up',
      known: 'choice',
    },
    takes: { airC: 'degC', skin_m2: 'm2', factor: '1' },
    unit: 'l/h',
    cautions: () => cautions,
    compute: ({ airC, skin_m2, factor }) => Math.min(MOST_DRINK_l_h, (tableRate(effort, airC, sun) * skin_m2 * factor) / STANDARD_SKIN_m2),
  }) as const satisfies Law<Takes, 'l/h'>

/** Doubt of the factor before any record, for what to carry: the table is already the upper of two equations, in full sun and rounded up (choice). */
export const UNLEARNED_SD_DRINK = 0.15
