/**
 * Energy and power in the units people eat and walk by. 1 kcal = 4184 J (thermochemical), exact.
 *   one watt for one hour = 3600/4184 = 0.860421 kcal;   1 kcal/day = 4184/86400 W
 * Source: definition (memory; used in the sources read).
 */
export const KCAL_J = 4184
export const kcalOf = (powerW: number, hours: number): number => (powerW * hours * 3600) / KCAL_J
export const wattsOfDay = (kcalPerDay: number): number => (kcalPerDay * KCAL_J) / 86_400
