import type { Law } from '../figures/figure.ts'

/**
 * Energy of walking one metre on a slope, per kg moved: an independent control on what the power laws say of slopes.
 *   C = 280.5·i⁵ − 58.7·i⁴ − 76.8·i³ + 51.9·i² + 19.6·i + 2.5      J/(kg·m); i rise over run, signed, −0.45 … 0.45
 * Source: Minetti et al. 2002, J Appl Physiol 93, 1039-1046 (read in a public package's page). Some packages feed it |i|: wrong downhill.
 */
export const minetti = {
  name: 'Energy of a metre on a slope (Minetti)',
  formula: 'C = 280.5·i⁵ − 58.7·i⁴ − 76.8·i³ + 51.9·i² + 19.6·i + 2.5',
  source: { cite: 'Minetti et al. 2002, walking', known: 'read' },
  takes: { gradeRatio: 'rise/run' },
  unit: 'J/(kg·m)',
  cautions: ({ gradeRatio }) => (Math.abs(gradeRatio) > 0.45 ? ['Steeper than 45 % was not measured.'] : []),
  compute: ({ gradeRatio: i }) => ((((280.5 * i - 58.7) * i - 76.8) * i + 51.9) * i + 19.6) * i + 2.5,
} as const satisfies Law<{ gradeRatio: 'rise/run' }, 'J/(kg·m)'>
