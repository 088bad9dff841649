/**
 * The pressure under which a new, flat piece of cloth lets water through, in the units it is told in, and what presses on it in use.
 *   1 kPa = 101.97 mm of water (ρ 1000 kg/m³, g 9.80665);  p = m·g/area
 * Says nothing of seams, zips, wear, dirt or storms: never "waterproof enough".
 * Classes of work clothing, EN 343: 8, 13 and (2019) 20 kPa (read, secondary). Sitting 75 kg on 0.12 m², kneeling half of it on 0.01 m²: choices.
 */
const MM_PER_kPa = 1000 / 9.80665

export const columnMm = (pressure_kPa: number): number => pressure_kPa * MM_PER_kPa
export const column_kPa = (mm: number): number => mm / MM_PER_kPa

/** Pressure under a mass on an area, kPa. */
export const pressed_kPa = (massKg: number, areaM2: number): number => (massKg * 9.80665) / areaM2 / 1000

export const SITTING = { massKg: 75, areaM2: 0.12 } as const
export const KNEELING = { massKg: 37.5, areaM2: 0.01 } as const

/** Lowest class of the work-clothing standard, kPa: below it an item's own figure is called just that. */
export const LOWEST_CLASS_kPa = 8

/** Water class by the pressure withstood, EN 343:2019 (classes 2 to 4 after wear or washing); 0: below the lowest. */
export function waterClass(withstood_kPa: number): 0 | 1 | 3 | 4 {
  if (withstood_kPa >= 20) return 4
  if (withstood_kPa >= 13) return 3
  return withstood_kPa >= LOWEST_CLASS_kPa ? 1 : 0
}
