/**
 * Wind chill: the temperature of near-calm air that cools a bare face as fast as this wind does.
 *   °C, km/h:  Twc = 13.12 + 0.6215·T − 11.37·V^0.16 + 0.3965·T·V^0.16
 *   °F, mph:   Twc = 35.74 + 0.6215·T − 35.75·V^0.16 + 0.4275·T·V^0.16
 * T air; V wind as forecast, at 10 m: the formula itself brings it down to the face. Sun is not counted.
 * Range: T ≤ 10 °C (50 °F) and V ≥ 4.8 km/h (3 mph); outside it the air temperature is the answer, with a caution.
 * Source: US National Weather Service and Environment Canada, 2001 (read in two program libraries).
 * Agreement: all 204 cells of the US chart and all 192 of the Canadian chart after rounding.
 */
import type { Law } from '../figures/figure.ts'

export const CALM_KMH = 4.8
export const MILD_C = 10

export const windChill = {
  name: 'Wind chill',
  formula: 'Twc = 13.12 + 0.6215·T − 11.37·V^0.16 + 0.3965·T·V^0.16',
  source: { cite: 'Wind chill index, US National Weather Service and Environment Canada, 2001', known: 'read' },
  takes: { airC: 'degC', windKmh: 'km/h' },
  unit: 'degC',
  cautions: ({ airC, windKmh }) => [
    'Applies to bare skin in the shade. Cover skin from wind chill −28 °C (−18 °F); check each other for white or numb patches.',
    ...(hasWindChill(airC, windKmh) ? [] : ['Above 10 °C or in near-calm air there is no wind chill: the air temperature is the answer.']),
  ],
  compute({ airC, windKmh }) {
    if (!hasWindChill(airC, windKmh)) return airC
    const w = windKmh ** 0.16
    return 13.12 + 0.6215 * airC - 11.37 * w + 0.3965 * airC * w
  },
} as const satisfies Law<{ airC: 'degC'; windKmh: 'km/h' }, 'degC'>

/** Whether the index is defined here. */
export const hasWindChill = (airC: number, windKmh: number): boolean => airC <= MILD_C && windKmh >= CALM_KMH

/** The US form, °F and mph: kept for its own chart. */
export function windChillF(airF: number, windMph: number): number {
  if (airF > 50 || windMph < 3) return airF
  const w = windMph ** 0.16
  return 35.74 + 0.6215 * airF - 35.75 * w + 0.4275 * airF * w
}

/** Wind at 10 m from a reading held at face height (factor 0.667, read). */
export const windAt10mKmh = (atFaceKmh: number): number => atFaceKmh / FACE_FACTOR

/** Wind at face height over wind at 10 m. */
export const FACE_FACTOR = 0.667
