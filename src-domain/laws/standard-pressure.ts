/**
 * Air pressure at a height, in the standard atmosphere.
 *   p = 101325·(1 − 0.0065·h/288.15)^5.255880      p Pa, h m of height on the map, −500 … 11 000
 *   exponent = 9.80665/(0.0065·287.05287)
 * Map height stands for geopotential height (choice): 13 Pa at 3000 m, 28 Pa at 5000 m, under 0.01 °C of boiling point.
 * Source: ISO 2533:1975, layer 0 to 11 km (memory). Weather moves p by 2 to 3 kPa, the boiling point by about 0.7 °C: never show more than 0.5 °C.
 */
import type { Law } from '../figures/figure.ts'

const EXPONENT = 9.80665 / (0.0065 * 287.05287)

export const standardPressure = {
  name: 'Air pressure at a height',
  formula: 'p = 101325·(1 − 0.0065·h/288.15)^5.255880',
  source: { cite: 'ISO 2533:1975, standard atmosphere, layer 0 to 11 km', known: 'memory' },
  takes: { heightM: 'm' },
  unit: 'Pa',
  cautions: ({ heightM }) => (heightM < -500 || heightM > 11000 ? ['Outside −500 to 11 000 m this formula does not hold.'] : []),
  compute: ({ heightM }) => 101325 * (1 - (0.0065 * heightM) / 288.15) ** EXPONENT,
  leavesOut: 'the weather of the day, which moves the pressure by 2 to 3 kPa',
} as const satisfies Law<{ heightM: 'm' }, 'Pa'>
