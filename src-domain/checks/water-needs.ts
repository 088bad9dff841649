import { constant, given, total, work, type Figure, type Given } from '../figures/figure.ts'
import { drinkingRate, UNLEARNED_SD_DRINK } from '../laws/drinking-rate.ts'
import { skinArea, STANDARD_SKIN_m2 } from '../laws/skin-area.ts'
import { CAMP_DRINK_l, waterForStretch, waterOfDay, WATER_SPARE_l } from '../laws/water-carried.ts'
import type { Brief } from '../trips/brief.ts'
import { campNights } from '../trips/nights.ts'
import { routeOf } from '../trips/route.ts'
import { stretchesOf, type Stretch } from '../trips/water-stretches.ts'
import type { Walker } from '../trips/walker.ts'
import type { Asked } from './check.ts'

/**
 * Water of the way, as `water-carry` and `water-treatment` both read it.
 *   V = hours·rate + dry camps·(1.5 + cooking) + 0.5, the greatest of all stretches        l
 *   drawn = Σ hours·rate + camps·(1.5 + cooking) on stretches filled at a source that is not safe        l
 * rate by effort, sun and the stretch's highest high; skin area by the walker's mass and height, else 1.85 m² (estimate).
 * u: 0.15 of Σ hours·rate, the doubt of the walker's own factor before it is learned (choice).
 */
export type Missing = { readonly ok: false; readonly missing: string; readonly facts?: Readonly<Record<string, string | number>> }
export interface StretchWater {
  readonly stretch: Stretch | null
  readonly litres: Figure<'l'>
}
export type WaterNeed = { readonly ok: true; readonly stretch: StretchWater } | Missing | { readonly ok: true; readonly stretch: null }

/** The greatest dry stretch; null where the brief says there is none. */
export function waterNeed(asked: Asked): WaterNeed {
  if (asked.brief.sources.length === 0) return typedStretch(asked)
  const cut = cutWay(asked)
  if (!cut.ok) return cut
  let worst: StretchWater | null = null
  for (const stretch of cut.stretches) {
    if (stretch.highC === null) return { ok: false, missing: 'high' }
    const litres = stretchLitres(asked, stretch.hours, stretch.highC, stretch.dryCamps)
    if (worst === null || litres.value > worst.litres.value) worst = { stretch, litres }
  }
  return { ok: true, stretch: worst }
}

function typedStretch(asked: Asked): WaterNeed {
  const { brief } = asked
  if (brief.dryHours === null && brief.dryCamps === 0) return { ok: false, missing: 'dry-hours' }
  if ((brief.dryHours ?? 0) === 0 && brief.dryCamps === 0) return { ok: true, stretch: null }
  const highC = highestHigh(brief)
  if (highC === null) return { ok: false, missing: 'high' }
  return { ok: true, stretch: { stretch: null, litres: stretchLitres(asked, brief.dryHours ?? 0, highC, brief.dryCamps) } }
}

export type DrawnNeed = { readonly ok: true; readonly litres: Figure<'l'> | null } | Missing

/** Litres drawn from sources not marked safe over the whole way; null: all of it is safe. Without sources every litre after the trailhead's counts. */
export function drawnNeed(asked: Asked): DrawnNeed {
  const { brief } = asked
  if (brief.sources.length > 0 && brief.sources.every((source) => source.safe)) return { ok: true, litres: null }
  const cut = cutWay(asked)
  if (!cut.ok) return cut
  const parts: Given[] = []
  for (const stretch of cut.stretches) {
    if (brief.sources.length > 0 && (stretch.from === null || stretch.from.safe)) continue
    if (stretch.highC === null) return { ok: false, missing: 'high' }
    const camps = stretch.campsAtSource + stretch.dryCamps
    parts.push({ name: stretch.from?.name || 'on the way', figure: drawnLitres(asked, stretch.hours, stretch.highC, camps) })
  }
  return { ok: true, litres: parts.length === 0 ? null : total('water drawn', 'l', parts) }
}

type Cut = { readonly ok: true; readonly stretches: readonly Stretch[] } | Missing

function cutWay({ brief, trip, walker }: Asked): Cut {
  const nights = campNights(brief, trip)
  if (nights === null) return { ok: false, missing: 'nights' }
  const route = routeOf(brief, walker)
  if (!route.ok) return { ok: false, missing: routeMissing[route.missing], facts: { leg: route.leg } }
  return { ok: true, stretches: stretchesOf(brief, route.legs, nights) }
}

export const routeMissing = {
  legs: 'legs',
  length: 'leg-length',
  climb: 'leg-climb',
  descent: 'leg-descent',
} as const

function stretchLitres({ brief, walker }: Asked, hours: number, highC: number, dryCamps: number): Figure<'l'> {
  return work(waterForStretch, {
    hours: given(hours, 'h', 'worked', {}, 'hours on foot'),
    rate: rateOf(brief, walker, highC),
    dryCamps: given(dryCamps, '1', 'given', {}, 'nights without a source'),
    campL: constant(CAMP_DRINK_l, 'l', 'drink in a camp'),
    cookingL: cookingOf(brief),
    spareL: constant(WATER_SPARE_l, 'l', 'to spare'),
  })
}

function drawnLitres({ brief, walker }: Asked, hours: number, highC: number, camps: number): Figure<'l'> {
  const cooking = cookingOf(brief)
  return work(waterOfDay, {
    hours: given(hours, 'h', 'worked', {}, 'hours on foot'),
    rate: rateOf(brief, walker, highC),
    campL: constant(camps * CAMP_DRINK_l, 'l', 'drink in camps'),
    cookingL: given(camps * cooking.value, 'l', cooking.origin, {}, 'cooking in camps'),
  })
}

/** Litres an hour on foot at this temperature. */
export function rateOf(brief: Brief, walker: Walker, airC: number): Figure<'l/h'> {
  return work(drinkingRate(brief.effort, brief.sun), {
    airC: given(airC, 'degC', 'given', {}, 'the expected high'),
    skin_m2: skinOf(walker),
    factor: given(walker.waterFactor, '1', 'estimated', { 'walker:water': waterDoubt(walker) }, 'own factor'),
  })
}

/** Of the factor: from the walker's own logs, else the choice for what to carry. */
const waterDoubt = ({ waterFactor, waterSdLn }: Walker): number => (waterSdLn === undefined ? UNLEARNED_SD_DRINK : waterFactor * waterSdLn)

function skinOf({ bodyMassG, heightMm }: Walker): Figure<'m2'> {
  if (bodyMassG === null || heightMm === null) return given(STANDARD_SKIN_m2, 'm2', 'estimated', {}, 'a standard body')
  return work(skinArea, {
    bodyKg: given(bodyMassG / 1000, 'kg', 'given', {}, 'body mass'),
    heightCm: given(heightMm / 10, 'cm', 'given', {}, 'height'),
  })
}

/** Water cooked with in a day: the boils of the brief; nothing where none is said. */
function cookingOf({ meals }: Brief): Figure<'l'> {
  const boils = meals.boilsPerDay ?? 0
  const litres = boils * (meals.litresPerBoil ?? USUAL_BOIL_l)
  return given(
    litres,
    'l',
    meals.boilsPerDay === null || (boils > 0 && meals.litresPerBoil === null) ? 'estimated' : 'given',
    {},
    'boils of a day',
  )
}

/** Half a litre a boil where the brief does not say (choice). */
export const USUAL_BOIL_l = 0.5

function highestHigh(brief: Brief): number | null {
  const highs = [brief.highC, ...brief.days.map((day) => day.highC)].filter((high) => high !== null)
  return highs.length === 0 ? null : Math.max(...highs)
}
