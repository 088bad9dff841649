/**
 * Insulation of what is worn together, from single garments.
 *   ISO 9920:  Icl = 0.161 + 0.835·Σ Iclu          Olesen:  Icl = Σ Iclu      clo
 * For fairly even cover. ISO 9920's sum is used, the other is the far end of the band (70 ensembles between 0.7 and 2.6 clo);
 * above 2.6 clo both are extrapolation. No garments: nothing, not 0.161.
 * Doubt: ±15 % by summation, as a half-width (choice).
 * Source: ISO 9920 in a public program library (read); Olesen 1985, ASHRAE HI-85-09 (abstract, read).
 */
import type { Law } from '../figures/figure.ts'

export const PER_GARMENT_CLO = 0.835

export const ensembleClo = {
  name: 'Insulation of what is worn',
  formula: 'Icl = 0.161 + 0.835·Σ Iclu',
  source: { cite: 'ISO 9920, summation of garments', known: 'read' },
  takes: { sumClo: 'clo' },
  unit: 'clo',
  cautions: ({ sumClo }) => (sumClo > 2.6 ? ['Above 2.6 clo the sum of garments is extrapolated.'] : []),
  compute: ({ sumClo }) => (sumClo > 0 ? 0.161 + PER_GARMENT_CLO * sumClo : 0),
  spread: ({ sumClo }) => (sumClo > 0 ? (0.15 * (0.161 + PER_GARMENT_CLO * sumClo)) / Math.sqrt(3) : 0),
} as const satisfies Law<{ sumClo: 'clo' }, 'clo'>

export const ensembleOlesen = {
  name: 'Insulation of what is worn, plain sum',
  formula: 'Icl = Σ Iclu',
  source: { cite: 'Olesen 1985, ASHRAE HI-85-09 no. 4', known: 'read' },
  takes: { sumClo: 'clo' },
  unit: 'clo',
  cautions: ({ sumClo }) => (sumClo < 0.7 || sumClo > 2.6 ? ['Measured between 0.7 and 2.6 clo.'] : []),
  compute: ({ sumClo }) => Math.max(0, sumClo),
} as const satisfies Law<{ sumClo: 'clo' }, 'clo'>
