/**
 * Water for a dry stretch, and for a day.
 *   V     = hours·rate + camps·(1.5 + cooking) + spare        l, hours on foot, rate l/h, camps: nights without a source, spare 0.5 l
 *   W_day = 1.5 + cooking + hours·rate
 * Source: adding up; 1.5 l of drink in a camp, 0.5 l to spare and the margin of 0.15 are choices. EFSA 2010 (EFSA Journal 8(3):1459, read) counts 2.0 and
 * 2.5 l a day of all water for women and men at rest in temperate air, four fifths of it drunk.
 * Caution: sources fail; local knowledge decides. Hours under one still count exactly.
 */
import type { Law } from '../figures/figure.ts'
import { WATER_kg_l } from './heat-to-boil.ts'

export const CAMP_DRINK_l = 1.5
export const WATER_SPARE_l = 0.5
export const WATER_MARGIN = 0.15

type Takes = { hours: 'h'; rate: 'l/h'; dryCamps: '1'; campL: 'l'; cookingL: 'l'; spareL: 'l' }

export const waterForStretch = {
  name: 'Water for the dry stretch',
  formula: 'V = hours·rate + camps·(drink + cooking) + spare',
  source: { cite: '1.5 l of drink a dry camp and half a litre to spare', known: 'choice' },
  takes: { hours: 'h', rate: 'l/h', dryCamps: '1', campL: 'l', cookingL: 'l', spareL: 'l' },
  unit: 'l',
  cautions: () => ['Sources fail: ask locally. Drink to thirst; salt with food on long hot days.'],
  compute: ({ hours, rate, dryCamps, campL, cookingL, spareL }) => hours * rate + dryCamps * (campL + cookingL) + spareL,
} as const satisfies Law<Takes, 'l'>

export const waterOfDay = {
  name: 'Water of a day',
  formula: 'W = hours·rate + drink + cooking',
  source: { cite: '1.5 l of drink in camp', known: 'choice' },
  takes: { hours: 'h', rate: 'l/h', campL: 'l', cookingL: 'l' },
  unit: 'l',
  compute: ({ hours, rate, campL, cookingL }) => hours * rate + campL + cookingL,
} as const satisfies Law<{ hours: 'h'; rate: 'l/h'; campL: 'l'; cookingL: 'l' }, 'l'>

/** Mass of water with what holds it, kg. */
export const waterMassKg = (litres: number, containersKg: number): number => litres * WATER_kg_l + containersKg
