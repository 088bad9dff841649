/**
 * Sweat of a walker in the heat.
 *   OSE  = 27.9·Ereq·Emax^−0.455                shown for comparison: it over-predicts
 *   OSEC = 147·e^(0.0012·OSE)
 *   PW   = 147 + 1.527·Ereq − 0.87·Emax         g/(m² h), Ereq and Emax W/m²
 * Source: Gonzalez et al. 2009, J. Appl. Physiol. 107, 379–388, doi 10.1152/japplphysiol.00089.2009 (abstract read); OSE: Shapiro 1982.
 * Range: air 15 to 46 °C, vapour pressure 0.27 to 4.45 kPa, air speed 0.4 to 2.5 m/s, work to 450 W/m², 2 to 8 h; standard error under 100 g/(m² h).
 * A published version for the cold jumps by 203 g/(m² h) at 20 °C against this one: never switched to by itself.
 */
export const shapiroSweat = (neededWm2: number, mostWm2: number): number => 27.9 * Math.max(0, neededWm2) * mostWm2 ** -0.455
export const correctedSweat = (neededWm2: number, mostWm2: number): number => 147 * Math.exp(0.0012 * shapiroSweat(neededWm2, mostWm2))
/** Below nothing it is outside its range. */
export const piecewiseSweat = (neededWm2: number, mostWm2: number): number => 147 + 1.527 * neededWm2 - 0.87 * mostWm2
