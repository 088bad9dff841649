/**
 * The temperature at which water boils at a height.
 *   t = Ts(p(h)) − 273.15      t °C, h m, −500 … 11 000; Ts: IF97 region 4 in MPa, p: standard atmosphere
 * Source: IAPWS R7-97 (read) on ISO 2533:1975 (memory). Agreement: a three-term Antoine equation for water lies 0.06 to 0.10 °C above it.
 */
import type { Law } from '../figures/figure.ts'
import { standardPressure } from './standard-pressure.ts'
import { saturationTempK } from './water-saturation.ts'

export const boilingPoint = {
  name: 'Water boils at',
  formula: 't = Ts(p(h)) − 273.15',
  source: { cite: 'IAPWS R7-97, region 4, equation 31; ISO 2533:1975', known: 'read' },
  takes: { heightM: 'm' },
  unit: 'degC',
  cautions: standardPressure.cautions,
  compute: ({ heightM }) => saturationTempK(standardPressure.compute({ heightM }) / 1e6) - 273.15,
  leavesOut: 'the weather of the day, which moves it by about 0.7 °C',
} as const satisfies Law<{ heightM: 'm' }, 'degC'>
