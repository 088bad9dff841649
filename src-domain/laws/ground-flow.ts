/**
 * Heat flowing into the ground under the body: what a thick bag on a thin mat cannot make up for.
 *   q = D(32.8, T)/(rb + Σ Rm)      W/m²
 * T air = ground at the expected low; rb skin to mat 0.10 (bag) or 0.05 (quilt); Rm mats m²K/W. Range: T −60 … 20 °C, R ≥ 0.
 * Limits (choices, read off a consumer chart of mat against night that runs along 42 to 48 W/m² from R 4 up): 50 silent, 65, 85.
 * Source: one-dimensional conduction with ISO 11079's moist drive (read).
 */
import type { Law } from '../figures/figure.ts'
import { skinDrive } from './skin-drive.ts'
import { NIGHT_RH_PCT, sleepScales } from './sleep-scales.ts'

export const NOTE_FROM_W_m2 = 50
export const TIGHT_FROM_W_m2 = 65
export const SHORT_FROM_W_m2 = 85

export const groundFlow = {
  name: 'Heat flowing into the ground',
  formula: 'q = D(32.8, T)/(rb + Σ Rm)',
  source: { cite: 'Conduction with the moist drive of ISO 11079; limits from a consumer chart of mats', known: 'choice' },
  takes: { airC: 'degC', matsRsi: 'm2K/W', underRsi: 'm2K/W' },
  unit: 'W/m2',
  cautions: ({ airC }) => (airC < -60 || airC > 20 ? ['Outside −60 to 20 °C this says little.'] : []),
  leavesOut: 'edges of the mat, legs off a short mat, ground warmer than the air',
  compute({ airC, matsRsi, underRsi }) {
    const drive = skinDrive.compute({ skinC: sleepScales.comfort.skinC, airC, rhPct: NIGHT_RH_PCT })
    return drive / (Math.max(0.01, underRsi) + Math.max(0, matsRsi))
  },
} as const satisfies Law<{ airC: 'degC'; matsRsi: 'm2K/W'; underRsi: 'm2K/W' }, 'W/m2'>

/** Mats that let this flow pass at this temperature, m²K/W: the same formula turned round. */
export function matsForFlow(airC: number, flow: number, underRsi: number): number {
  const drive = skinDrive.compute({ skinC: sleepScales.comfort.skinC, airC, rhPct: NIGHT_RH_PCT })
  return Math.max(0, drive / flow - underRsi)
}
