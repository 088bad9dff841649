/**
 * What a thing would fetch, and what keeping it costs.
 *   worth(t) = P·r0·(1 − d)^t·(1 − 0.5·min(1, life used))        P price paid, t years since
 *   holding(h) = worth(t) − worth(t + h)        hiring(h) = trips it is fit for·mean share taken·price of hiring or borrowing
 * r0 and d are common practice, no source; the walker's own sales replace r0: the mean of what they fetched over what the rest of the formula gives.
 * Currency is the person's, no inflation. Without a price its worth is unknown, not nothing. Both costs are shown; nothing is decided.
 */
import type { KitArea } from '../closet/vocabulary.ts'

export interface ResaleCourse {
  /** Share of the price left by the first drop. */
  readonly first: number
  /** Loss a year after it. */
  readonly yearly: number
}

const lasting: ResaleCourse = { first: 0.7, yearly: 0.15 }
const quick: ResaleCourse = { first: 0.6, yearly: 0.2 }
const shoes: ResaleCourse = { first: 0.5, yearly: 0.3 }

export const resaleCourse = (area: KitArea): ResaleCourse =>
  area === 'footwear' ? shoes : area === 'clothing' || area === 'light_power' || area === 'wayfinding' ? quick : lasting

export interface Sellable {
  readonly price: number
  readonly years: number
  readonly lifeUsed: number
  readonly course: ResaleCourse
}

export const worth = ({ price, years, lifeUsed, course }: Sellable): number =>
  price * course.first * (1 - course.yearly) ** Math.max(0, years) * (1 - 0.5 * Math.min(1, Math.max(0, lifeUsed)))

export const holdingCost = (thing: Sellable, years: number): number => worth(thing) - worth({ ...thing, years: thing.years + years })
export const hiringCost = (fitTrips: number, meanTaken: number, hire: number): number => fitTrips * meanTaken * hire

/** r0 from the walker's own sales of that course; null without any. */
export function learnedFirst(sales: readonly { readonly sold: number; readonly thing: Sellable }[]): number | null {
  const ratios = sales.filter(({ thing }) => thing.price > 0).map(({ sold, thing }) => (sold / worth(thing)) * thing.course.first)
  return ratios.length === 0 ? null : ratios.reduce((sum, one) => sum + one, 0) / ratios.length
}
