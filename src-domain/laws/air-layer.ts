/**
 * The layer of air that clings to the outside of clothing or bedding, and what wind, walking and leaky cloth leave of clothing.
 *   Ia = 0.092·exp(−0.15·v − 0.22·w) − 0.0045                            m²K/W
 *   K  = 0.54·exp(−0.15·v − 0.22·w)·p^0.075 − 0.06·ln p + 0.5
 * v air speed at the body m/s, 0.4 … 18; w walking speed m/s, 0 … 1.2; p air permeability of the outer layer l/m²s, 1 or more
 * (p ≥ 1 is a choice: ln p). Outside, the nearer end is taken, as the published program does.
 * Source: ISO 11079:2007, program of its authors (read).
 */
import type { Law } from '../figures/figure.ts'

const held = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x))
const fading = (windMs: number, walkMs: number): number => Math.exp(-0.15 * held(windMs, 0.4, 18) - 0.22 * held(walkMs, 0, 1.2))

const source = { cite: 'ISO 11079:2007, program of its authors', known: 'read' } as const

export const airLayer = {
  name: 'Insulation of the air layer',
  formula: 'Ia = 0.092·exp(−0.15·v − 0.22·w) − 0.0045',
  source,
  takes: { windMs: 'm/s', walkMs: 'm/s' },
  unit: 'm2K/W',
  cautions: ({ windMs }) => (windMs > 18 ? ['Above 18 m/s the value for 18 m/s is taken.'] : []),
  compute: ({ windMs, walkMs }) => 0.092 * fading(windMs, walkMs) - 0.0045,
} as const satisfies Law<{ windMs: 'm/s'; walkMs: 'm/s' }, 'm2K/W'>

export const windCorrection = {
  name: 'What wind and walking leave of clothing',
  formula: 'K = 0.54·exp(−0.15·v − 0.22·w)·p^0.075 − 0.06·ln p + 0.5',
  source,
  takes: { windMs: 'm/s', walkMs: 'm/s', permeability: 'l/m2s' },
  unit: '1',
  cautions: ({ permeability }) => (permeability < 1 ? ['Tighter cloth than 1 l/m²s is taken as 1.'] : []),
  compute({ windMs, walkMs, permeability }) {
    const p = Math.max(1, permeability)
    return 0.54 * fading(windMs, walkMs) * p ** 0.075 - 0.06 * Math.log(p) + 0.5
  },
} as const satisfies Law<{ windMs: 'm/s'; walkMs: 'm/s'; permeability: 'l/m2s' }, '1'>
