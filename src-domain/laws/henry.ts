import type { Law } from '../figures/figure.ts'
import type { Sex } from './mifflin.ts'

/**
 * What a body burns at rest in a day, after Henry (the Oxford equations): under 19 years, and the comparison beside Mifflin-St Jeor.
 *   kcal/day = a·kg + b·m + c by sex and age class: [10, 18), [18, 30), [30, 60), 60 and over; height in METRES
 * Sex not said: the mean of both. Under 10 years the classes known here do not reach: the youngest is taken and said so.
 * Source: Henry 2005, Public Health Nutr 8(7A) 1133-1152, table 15 (coefficients read in two public files).
 */
type Takes = { bodyKg: 'kg'; heightM: 'm'; ageYears: 'years' }

const classes = [
  { from: 60, male: [11.4, 541, -256], female: [8.52, 421, 10.7] },
  { from: 30, male: [11.4, 541, -137], female: [8.18, 502, -11.6] },
  { from: 18, male: [14.4, 313, 113], female: [10.4, 615, -282] },
  { from: 10, male: [15.6, 266, 299], female: [9.4, 249, 462] },
] as const

export function henry(sex: Sex): Law<Takes, 'kcal/day'> {
  return {
    name: 'Resting rate (Henry)',
    formula: 'a·kg + b·m + c by sex and age class',
    source: { cite: 'Henry 2005, Oxford equations', known: 'read' },
    takes: { bodyKg: 'kg', heightM: 'm', ageYears: 'years' },
    unit: 'kcal/day',
    cautions: ({ ageYears }) => (ageYears < 10 ? ['The equations known here begin at 10 years.'] : []),
    compute: (at) => (sex === null ? (rate('female', at) + rate('male', at)) / 2 : rate(sex, at)),
    ...(sex === null ? { spread: (at) => Math.abs(rate('male', at) - rate('female', at)) / 2 } : {}),
  }
}

function rate(sex: 'female' | 'male', { bodyKg, heightM, ageYears }: { readonly [K in keyof Takes]: number }): number {
  const found = classes.find(({ from }) => ageYears >= from) ?? classes[3]
  const [perKg, perM, constant] = found[sex]
  return perKg * bodyKg + perM * heightM + constant
}
