import type { Law } from '../figures/figure.ts'

/**
 * Walking speed on a slope, after Tobler: fastest on a gentle descent, slower the steeper either way.
 *   v = 6·exp(−3.5·|S + 0.05|)      v km/h; S rise over run, signed
 * Off the path: × 0.6. Fitted to older march data; optimistic for people who carry, photograph and cook.
 * Source: W. Tobler, Three Presentations on Geographical Analysis and Modeling, NCGIA report 93-1, 1993 (read in secondary pages and two public packages).
 * Agreement: the published table of six angles to its two decimals.
 */
export const tobler = {
  name: 'Walking speed (Tobler)',
  formula: 'v = 6·exp(−3.5·|S + 0.05|)',
  source: { cite: 'Tobler 1993, NCGIA report 93-1', known: 'read' },
  takes: { gradeRatio: 'rise/run' },
  unit: 'km/h',
  compute: ({ gradeRatio }) => 6 * Math.exp(-3.5 * Math.abs(gradeRatio + 0.05)),
} as const satisfies Law<{ gradeRatio: 'rise/run' }, 'km/h'>
