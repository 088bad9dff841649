/**
 * Vapour pressure of air saturated over water, as the heat balances of ISO 11079 use it.
 *   ps = 0.1333·exp(18.6686 − 4030.183/(t + 235))      ps kPa, t °C
 * Range: −90 … 50 °C (choice; the balance below is searched down to −90); colder or warmer is taken at that end, with a caution.
 * Source: the program of ISO 11079:2007, in three public ports (read).
 * Agreement: within 0.5 % of IAPWS-IF97 from 1 to 45 °C and of a comfort library; below 0 °C it is over supercooled water, not ice.
 */
import type { Law } from '../figures/figure.ts'

const [COLDEST, WARMEST] = [-90, 50]

export const saturationVapour = {
  name: 'Vapour pressure at saturation',
  formula: 'ps = 0.1333·exp(18.6686 − 4030.183/(t + 235))',
  source: { cite: 'ISO 11079:2007, program of its authors', known: 'read' },
  takes: { tempC: 'degC' },
  unit: 'kPa',
  cautions: ({ tempC }) => (tempC < COLDEST || tempC > WARMEST ? [`Outside ${COLDEST} to ${WARMEST} °C the nearer end is taken.`] : []),
  compute: ({ tempC }) => vapour_kPa(tempC),
} as const satisfies Law<{ tempC: 'degC' }, 'kPa'>

/** The bare formula, for the balances. */
export function vapour_kPa(tempC: number): number {
  const t = Math.min(WARMEST, Math.max(COLDEST, tempC))
  return 0.1333 * Math.exp(18.6686 - 4030.183 / (t + 235))
}
