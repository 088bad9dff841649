import { uncertainty } from '../../src-domain/figures/figure.ts'
import { totalsOf, type Totals } from '../../src-domain/loadout/totals.ts'
import { loadoutOfAll, type TestItem } from '../domain/loadout/kit.ts'
import type { Published } from './published.ts'

/**
 * The two worked sums of provisions.md 9.3, computed there by scratch code from
 *   u² = Σ u_ind² + Σ_scales (u_gain Σ m)² + (c_cl Σ claimed)² + (c_est Σ estimated)²
 * Tolerances are the note's.
 */
const source = 'provisions.md 9.3, check table'

// 9.1: a reading at 1 g steps with s = 0.5 g: √(1/6 + 0.25); the scale checked once with 1 kg of class M1.
const uOwnG = Math.sqrt(1 / 6 + 0.25)
const uGainShare = 0.00064614

const measured = (g: number): TestItem => ({ name: `m${g}`, area: 'extras', g, uOwnG, uGainShare })
const claimed = (g: number, n = 0): TestItem => ({ name: `c${g} ${n}`, area: 'extras', g, from: 'claimed' })
const eight = [
  ...[412, 865, 233, 96, 1340].map(measured),
  claimed(590),
  claimed(310),
  { name: 'e150', area: 'extras', g: 150, from: 'estimated' } as const,
]
const ten = Array.from({ length: 10 }, (_, i) => claimed(300, i))

const totals = (items: readonly TestItem[]): Totals => totalsOf(loadoutOfAll(items))
const isCommon = (leaf: string): boolean => leaf.startsWith('scale:') || leaf.endsWith(':bias')
const part = (items: readonly TestItem[], common: boolean): number =>
  Math.hypot(
    ...Object.entries(totals(items).base.figure.shares)
      .filter(([leaf]) => isCommon(leaf) === common)
      .map(([, share]) => share),
  )

const row = (about: string, expected: number, unit: string, got: () => number): Published => ({
  law: 'Sum of a kit',
  about,
  source,
  known: 'recomputed',
  expected,
  tolerance: 0.01,
  unit,
  got,
})

export const rows: readonly Published[] = [
  row('five measured, two claimed, one estimated', 3996, 'g', () => totals(eight).base.figure.value),
  row('their independent part', 25.037, 'g', () => part(eight, false)),
  row('their common part', 19.593, 'g', () => part(eight, true)),
  row('their uncertainty', 31.792, 'g', () => uncertainty(totals(eight).base.figure)),
  row('ten claims of 300 g, independent part', 28.46, 'g', () => part(ten, false)),
  row('ten claims of 300 g, common part', 60, 'g', () => part(ten, true)),
  row('ten claims of 300 g', 66.41, 'g', () => uncertainty(totals(ten).base.figure)),
]
