/**
 * Days of food between a start and an end, by the meals eaten out.
 *   days = Σ meals·share        breakfast 0.25, lunch 0.30, dinner 0.30, snacks 0.15 of a day's energy (choices)
 *   first day: from before 07:00 all · to 14:00 lunch, dinner, snacks · later dinner        last day: to before 11:00 breakfast · to 18:00 breakfast,
 *   lunch, half the snacks · later all        a day that is both: what both allow
 * Source: design, no outside authority. Spare food (half a day to a day, choice) is shown apart.
 */
export interface Meals {
  readonly breakfast: number
  readonly lunch: number
  readonly dinner: number
  readonly snacks: number
}

export const mealShares: Meals = { breakfast: 0.25, lunch: 0.3, dinner: 0.3, snacks: 0.15 }
const ALL: Meals = { breakfast: 1, lunch: 1, dinner: 1, snacks: 1 }

/** Minutes of the day. */
export function mealsAfter(startMinute: number): Meals {
  if (startMinute < 7 * 60) return ALL
  return startMinute <= 14 * 60 ? { ...ALL, breakfast: 0 } : { breakfast: 0, lunch: 0, dinner: 1, snacks: 0 }
}

export function mealsBefore(endMinute: number): Meals {
  if (endMinute < 11 * 60) return { breakfast: 1, lunch: 0, dinner: 0, snacks: 0 }
  return endMinute <= 18 * 60 ? { breakfast: 1, lunch: 1, dinner: 0, snacks: 0.5 } : ALL
}

/** Food of one day as a share of a full one. */
export const dayShare = (meals: Meals): number =>
  meals.breakfast * mealShares.breakfast +
  meals.lunch * mealShares.lunch +
  meals.dinner * mealShares.dinner +
  meals.snacks * mealShares.snacks

/** Food of each day, in full days; `days` both ends counted. */
export function foodDays(days: number, startMinute: number, endMinute: number): readonly number[] {
  const [first, last] = [mealsAfter(startMinute), mealsBefore(endMinute)]
  if (days <= 1) return [dayShare(both(first, last))]
  return Array.from({ length: days }, (_, i) => dayShare(i === 0 ? first : i === days - 1 ? last : ALL))
}

const both = (a: Meals, b: Meals): Meals => ({
  breakfast: Math.min(a.breakfast, b.breakfast),
  lunch: Math.min(a.lunch, b.lunch),
  dinner: Math.min(a.dinner, b.dinner),
  snacks: Math.min(a.snacks, b.snacks),
})
