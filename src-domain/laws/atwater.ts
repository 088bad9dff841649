import type { Law } from '../figures/figure.ts'

/**
 * Energy of food from what is in it: the general Atwater factors.
 *   kcal = 4·protein + 9·fat + 4·carbohydrate + 7·alcohol + 2·fibre      grams
 *   kJ   = 17, 37, 17, 29, 8 (rounded apart, so that 4.184·kcal differs by the label's rounding; both are right)
 * A label within 20 % of the sum is taken; beyond, the person is asked. No food holds more than 9 kcal/g.
 * Source: FAO Food and Nutrition Paper 77, 2003 (title and chapters read; 4, 9, 4 read; the rest memory).
 */
export const atwater = {
  name: 'Energy of food (Atwater)',
  formula: 'kcal = 4·protein + 9·fat + 4·carbohydrate + 7·alcohol + 2·fibre',
  source: { cite: 'FAO Food and Nutrition Paper 77, 2003', known: 'read' },
  takes: { proteinG: 'g', fatG: 'g', carbohydrateG: 'g', alcoholG: 'g', fibreG: 'g' },
  unit: 'kcal',
  compute: (at) => weighted(at, { proteinG: 4, fatG: 9, carbohydrateG: 4, alcoholG: 7, fibreG: 2 }),
} as const satisfies Law<Nutrients, 'kcal'>

type Nutrients = { proteinG: 'g'; fatG: 'g'; carbohydrateG: 'g'; alcoholG: 'g'; fibreG: 'g' }
type Amounts = { readonly [K in keyof Nutrients]: number }

/** The same in kJ, by the label's own rounded factors. */
export const atwaterKj = (at: Amounts): number => weighted(at, { proteinG: 17, fatG: 37, carbohydrateG: 17, alcoholG: 29, fibreG: 8 })

/** Whether a printed energy agrees with its own nutrients. */
export const labelAgrees = (labelKcal: number, atwaterKcal: number): boolean => Math.abs(labelKcal - atwaterKcal) <= 0.2 * atwaterKcal

function weighted(amounts: Amounts, factors: Amounts): number {
  const names = Object.keys(factors) as (keyof Nutrients)[]
  return names.reduce((sum, name) => sum + factors[name] * amounts[name], 0)
}
