import type { Law } from '../figures/figure.ts'
import { gradeTerm } from './lcda-2022.ts'

/**
 * Power of walking without a load, the control beside the backpacking equation.
 *   M = 1.44 + 1.94·S^0.43 + 0.24·S⁴ + M_grade      W per kg of body mass; S m/s; M_grade as there
 * Range: S to 1.96 m/s, −40 to +45 %; 95 participants; level bias −0.02 ± 0.20, graded 0.09 ± 0.40 W/kg.
 * Source: Looney et al. 2019, Med Sci Sports Exerc 51(9) 1954-1960 (abstract read; level part read on several pages, one of which prints base 1.11).
 */
export const lcda2019 = {
  name: 'Walking power without a load',
  formula: 'M = 1.44 + 1.94·S^0.43 + 0.24·S⁴ + M_grade',
  source: { cite: 'Looney et al. 2019, load carriage decision aid, walking equation', known: 'read' },
  takes: { speedMs: 'm/s', gradePercent: '%' },
  unit: 'W/kg',
  compute: ({ speedMs, gradePercent }) => lcda2019WithBase(speedMs, gradePercent, 1.1),
} as const satisfies Law<{ speedMs: 'm/s'; gradePercent: '%' }, 'W/kg'>

/** The same with the grade term's base as one page prints it. */
export function lcda2019WithBase(speedMs: number, gradePercent: number, base: number): number {
  return 1.44 + 1.94 * speedMs ** 0.43 + 0.24 * speedMs ** 4 + gradeTerm(speedMs, gradePercent, base)
}
