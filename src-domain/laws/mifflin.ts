import type { Law } from '../figures/figure.ts'

/**
 * What a body burns at rest in a day, after Mifflin and St Jeor; the default for adults of 19 and more.
 *   kcal/day = 10·kg + 6.25·cm − 5·years + 5 (men) or − 161 (women); sex not said: the mean, − 78, with 83 kcal of doubt either way
 *   full form: 9.99·kg + 6.25·cm − 4.92·years + 166·(man) − 161
 * 498 healthy adults of 19 to 78 years, R² 0.71; of four equations the one most often within 10 % of measurement (Frankenfield et al. 2005, abstract read).
 * Source: Mifflin et al. 1990, Am J Clin Nutr 51, 241-247 (abstract read).
 */
type Takes = { bodyKg: 'kg'; heightCm: 'cm'; ageYears: 'years' }
export type Sex = 'female' | 'male' | null

function law(constant: number, doubtKcal: number): Law<Takes, 'kcal/day'> {
  return {
    name: 'Resting rate (Mifflin-St Jeor)',
    formula: `10·kg + 6.25·cm − 5·years ${constant < 0 ? '−' : '+'} ${Math.abs(constant)}`,
    source: { cite: 'Mifflin et al. 1990', known: 'read' },
    takes: { bodyKg: 'kg', heightCm: 'cm', ageYears: 'years' },
    unit: 'kcal/day',
    compute: ({ bodyKg, heightCm, ageYears }) => 10 * bodyKg + 6.25 * heightCm - 5 * ageYears + constant,
    cautions: ({ ageYears }) => (ageYears > 78 ? ['Measured on adults up to 78 years.'] : []),
    ...(doubtKcal === 0 ? {} : { spread: () => doubtKcal }),
  }
}

const mifflinMale = law(5, 0)
const mifflinFemale = law(-161, 0)
/** Two values equally likely, 166 apart: one standard uncertainty is half of that. */
const mifflinUnsaid = law(-78, 83)

export const mifflin = (sex: Sex): Law<Takes, 'kcal/day'> =>
  sex === 'male' ? mifflinMale : sex === 'female' ? mifflinFemale : mifflinUnsaid

/** The full form, for comparison. */
export function mifflinFull(sex: 'female' | 'male', bodyKg: number, heightCm: number, ageYears: number): number {
  return 9.99 * bodyKg + 6.25 * heightCm - 4.92 * ageYears + (sex === 'male' ? 166 : 0) - 161
}
