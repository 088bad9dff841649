import type { Law } from '../figures/figure.ts'
import { POWER_DOUBT } from './lcda-2022.ts'

/**
 * Energy of a day on the way: what was walked, what was rested.
 *   E = walking + 1.5·RMR·(breaks + camp)/24 + 1.0·RMR·sleep/24      kcal; RMR kcal/day; hours h, with the walking adding to 24
 * Walking is gross (rest included), so its hours take no share of rest. 1.5: sitting, cooking, pitching; 1.0: sleep. Heat of digestion is not added again.
 * Band ± 15 % at 80 % (choice); PAL = E/RMR.
 * Source: activity ratios after FAO/WHO/UNU 2001 (memory).
 * Caution: shivering is not modelled; above 4000 m the upper band is 17 % of RMR wider and appetite falls (sources disagree, Butterfield 1992 memory).
 */
export const dayEnergy = {
  name: 'Energy of a day',
  formula: 'E = walking + 1.5·RMR·(breaks + camp)/24 + RMR·sleep/24',
  source: { cite: 'activity ratios after FAO/WHO/UNU 2001', known: 'memory' },
  takes: { walkingKcal: 'kcal', restKcalDay: 'kcal/day', upH: 'h', sleepH: 'h' },
  unit: 'kcal',
  compute: ({ walkingKcal, restKcalDay, upH, sleepH }) => walkingKcal + (restKcalDay * (UP_RATIO * upH + sleepH)) / 24,
  spread: ({ walkingKcal, restKcalDay, upH, sleepH }) => POWER_DOUBT * (walkingKcal + (restKcalDay * (UP_RATIO * upH + sleepH)) / 24),
  leavesOut: 'Shivering, illness, and what a body burns to digest.',
} as const satisfies Law<{ walkingKcal: 'kcal'; restKcalDay: 'kcal/day'; upH: 'h'; sleepH: 'h' }, 'kcal'>

const UP_RATIO = 1.5

/** What to say of a height at which a camp or a walk is, m above sea level. */
export function altitudeCautions(heightM: number): readonly string[] {
  if (heightM > 4000) return ['Above 4000 m a body may burn up to 17 % more at rest, and appetite falls.', SLOWER]
  return heightM > 2500 ? [SLOWER] : []
}

const SLOWER = 'Above 2500 m expect to be slower: about 1 % less capacity for each 100 m above 1500 m.'
