/**
 * Room that food takes.
 *   V = Σ mi/ρi        l, m kg, ρ kg/l of repacked food with the air of its bags
 * Densities are common practice, no source; the middle of the range seen. Unknown food: 0.45 (0.35 to 0.60 for a whole mix).
 */
export const foodDensities_kg_l = {
  nuts: 0.6,
  tortillas: 0.7,
  oil: 1,
  cheese: 0.95,
  grain: 0.8,
  oats: 0.42,
  pasta: 0.38,
  'freeze-dried': 0.25,
  'freeze-dried pouch': 0.15,
  crisps: 0.13,
  mix: 0.45,
} as const
export const FOOD_DENSITY_kg_l = foodDensities_kg_l.mix

export interface FoodPart {
  readonly massKg: number
  /** null: unknown, taken as the mix. */
  readonly density_kg_l: number | null
}

export const foodRoomL = (parts: readonly FoodPart[]): number =>
  parts.reduce(
    (sum, { massKg, density_kg_l }) => sum + massKg / (density_kg_l !== null && density_kg_l > 0 ? density_kg_l : FOOD_DENSITY_kg_l),
    0,
  )
