import type { Law } from '../figures/figure.ts'

/**
 * Food to carry for a day: mass of what is eaten, without packaging (that stays in base weight).
 *   g/day = share·E/density      E kcal/day; density kcal/g; share of the need that is carried
 * Density of food for walking: 3.5 to 4.4 kcal/g the usual floor, 4.2 to 5.3 aimed at; 4.2 taken when nothing is weighed (common practice).
 * Source: arithmetic.
 */
export const foodMass = {
  name: 'Food mass of a day',
  formula: 'g = share·E/density',
  source: { cite: 'arithmetic; densities of trail food', known: 'common practice, no source' },
  takes: { energyKcal: 'kcal', densityKcalG: 'kcal/g', share: '1' },
  unit: 'g',
  compute: ({ energyKcal, densityKcalG, share }) => (share * energyKcal) / densityKcalG,
} as const satisfies Law<{ energyKcal: 'kcal'; densityKcalG: 'kcal/g'; share: '1' }, 'g'>

/** Taken for food whose energy is not known. */
export const USUAL_DENSITY_KCAL_G = 4.2
