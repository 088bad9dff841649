/**
 * Air half way between the low and the high of a day, where the forecast holds.
 *   (low + high)/2        °C, a choice
 * The forecast's own doubt of 2 K stands behind low and high alike: one leaf, `brief:low`, so that the mean is no surer than either.
 */
import { given, work, type Figure, type Law } from '../figures/figure.ts'
import { FORECAST_SIGMA_K } from '../laws/lapse-rate.ts'

export const forecast = (value: number, from: string): Figure<'degC'> =>
  given(value, 'degC', 'given', { 'brief:low': FORECAST_SIGMA_K }, from)

export const middleOfDay = (lowC: number, highC: number): Figure<'degC'> =>
  work(middle, { lowC: forecast(lowC, 'the expected low'), highC: forecast(highC, 'the expected high') })

const middle = {
  name: 'Middle of the day',
  formula: '(low + high)/2',
  source: { cite: 'Mean of the forecast low and high', known: 'choice' },
  takes: { lowC: 'degC', highC: 'degC' },
  unit: 'degC',
  compute: ({ lowC, highC }) => (lowC + highC) / 2,
} as const satisfies Law<{ lowC: 'degC'; highC: 'degC' }, 'degC'>
