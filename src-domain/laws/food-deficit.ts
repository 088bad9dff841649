/**
 * How far below the full need food may fall before it is short, and what the missing energy takes off the body.
 *   B = min(0.20·E, 0.02·m·7700);   enough = E − B;   need = E − 2B      kcal; E need of the whole stretch, m body kg
 *   loss = deficit/7700      kg; 7700 kcal per kg of body tissue (memory, common; water swings not modelled)
 * So a loss under 2 % of body mass and under a fifth of the need is enough, over 4 % or two fifths short: more cautious than the sources.
 * Under 18 (and in pregnancy, illness, eating disorders, which are not asked): B = 0, the full need only.
 * Source: the rule is a choice. Institute of Medicine 1995, Not Eating Enough, ch. 14 (read): a deficit costing under 10 % of body mass does not impair.
 */
export interface FoodMarks {
  readonly needKcal: number
  readonly enoughKcal: number
}

export function foodMarks(energyKcal: number, bodyKg: number, ageYears: number): FoodMarks {
  const slack = ageYears < 18 ? 0 : Math.min(0.2 * energyKcal, 0.02 * bodyKg * KCAL_PER_KG)
  return { needKcal: energyKcal - 2 * slack, enoughKcal: energyKcal - slack }
}

/** Body mass expected to go, kg; nothing when there is no deficit. */
export const expectedLossKg = (deficitKcal: number): number => Math.max(0, deficitKcal) / KCAL_PER_KG

const KCAL_PER_KG = 7700
