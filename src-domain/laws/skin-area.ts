/**
 * Skin area of a body.
 *   A = 0.007184·W^0.425·h^0.725      m², W kg, h cm
 * Source: Du Bois and Du Bois 1916 (memory). 70 kg and 175 cm give 1.848 m². Adults; a standard body here is 1.85 m².
 */
import type { Law } from '../figures/figure.ts'

export const STANDARD_SKIN_m2 = 1.85

export const skinArea = {
  name: 'Skin area',
  formula: 'A = 0.007184·W^0.425·h^0.725',
  source: { cite: 'Du Bois and Du Bois 1916', known: 'memory' },
  takes: { bodyKg: 'kg', heightCm: 'cm' },
  unit: 'm2',
  compute: ({ bodyKg, heightCm }) => 0.007184 * bodyKg ** 0.425 * heightCm ** 0.725,
} as const satisfies Law<{ bodyKg: 'kg'; heightCm: 'cm' }, 'm2'>
