import { betaQuantile, betaShareBelow } from '../../src-domain/laws/beta.ts'
import { normalQuantile, normalShareBelow } from '../../src-domain/laws/normal.ts'
import type { Published } from './published.ts'

// I(0.5; 2, 3) = 11/16 is exact. The others are the check table of provisions.md 11, computed apart from this code; half a unit of their last digit.
const note = 'provisions.md 11, computed apart in double precision'
const beta = { law: 'Incomplete beta', known: 'recomputed', source: note, unit: '1' } as const
const normal = { law: 'Normal distribution', known: 'recomputed', source: note, unit: '1', tolerance: 1e-6 } as const

export const rows: readonly Published[] = [
  {
    ...beta,
    about: 'I(0.5; 2, 3) = 11/16, exact',
    source: 'polynomial, exact',
    expected: 0.6875,
    tolerance: 1e-12,
    got: () => betaShareBelow(0.5, 2, 3),
  },
  { ...beta, about: 'I(0.1; 0.5, 8.5)', expected: 0.812824, tolerance: 1e-5, got: () => betaShareBelow(0.1, 0.5, 8.5) },
  { ...beta, about: 'I(0.85; 39, 7)', expected: 0.478167, tolerance: 1e-6, got: () => betaShareBelow(0.85, 39, 7) },
  { ...beta, about: 'I⁻¹(0.5; 39, 7)', expected: 0.852884, tolerance: 1e-6, got: () => betaQuantile(0.5, 39, 7) },
  { ...beta, about: 'I(0.3; 4.444444, 11)', expected: 0.572901, tolerance: 1e-5, got: () => betaShareBelow(0.3, 4.444444, 11) },
  { ...normal, about: 'Φ(1)', expected: 0.841345, got: () => normalShareBelow(1) },
  { ...normal, about: 'Φ⁻¹(0.9)', expected: 1.281552, got: () => normalQuantile(0.9) },
  { ...normal, about: 'Φ⁻¹(0.5/21)', expected: -1.980752, got: () => normalQuantile(0.5 / 21) },
]
