import type { Law } from '../figures/figure.ts'

/**
 * Marks for what a body carries on its back: a share of its mass.
 *   mark = share·body      easy 20 %, upper 30 %; under 18 years 15 and 20 %
 * Counts the pack alone, as walkers do; military shares count worn clothing too (fighting load 30 %, approach march to 45 %, emergency to 70 %).
 * Rules for lifting by hand (ISO 11228, NIOSH) do not speak of backs; their one use: over 23 kg "lift it in two stages, or with help".
 * Source: 20 and 30 % common practice; children 10 to 20 % after the American Academy of Pediatrics as quoted (read).
 */
export const loadMark = {
  name: 'Mark for the load on the body',
  formula: 'mark = share·body',
  source: { cite: 'walkers’ usual marks', known: 'common practice, no source' },
  takes: { bodyKg: 'kg', share: '1' },
  unit: 'kg',
  compute: ({ bodyKg, share }) => share * bodyKg,
} as const satisfies Law<{ bodyKg: 'kg'; share: '1' }, 'kg'>

export interface LoadShares {
  readonly easy: number
  readonly upper: number
}

/** The usual shares at an age; an age that is not said is taken as grown up. */
export const usualShares = (ageYears: number | null): LoadShares =>
  ageYears !== null && ageYears < 18 ? { easy: 0.15, upper: 0.2 } : { easy: 0.2, upper: 0.3 }

/** Above this a pack is lifted in two stages, or with help (NIOSH load constant, memory). */
export const LIFT_WITH_HELP_KG = 23
