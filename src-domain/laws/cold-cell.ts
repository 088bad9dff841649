/**
 * What the cold leaves of a cell's energy.
 *   usable = E·f(kind, t)      f: the line between the points at 20, 0, −10, −20 and −40 °C, level beyond; t °C
 * All points from memory of typical data-sheet shapes, ± 0.10 (spread between makers is wide: one page read says alkaline gives about half between −20 and
 * 0 °C, another shows little loss for a special cell). ± 0.10 is taken as a rectangle: a standard uncertainty of 0.10/√3.
 * Kept warm in clothing or the sleeping bag: + 10 °C (choice). Caution: never charge lithium-ion below 0 °C.
 */
import type { Law } from '../figures/figure.ts'
import type { CellKind } from './cell-energy.ts'

const points_C = [-40, -20, -10, 0, 20] as const
const shares: Readonly<Record<CellKind, readonly [number, number, number, number, number]>> = {
  'lithium-ion': [0.1, 0.55, 0.75, 0.88, 1],
  lithium: [0.4, 0.8, 0.9, 0.95, 1],
  alkaline: [0, 0.2, 0.4, 0.6, 1],
  nimh: [0, 0.45, 0.7, 0.85, 1],
}

export const COLD_U = 0.1 / Math.sqrt(3)
export const KEPT_WARM_K = 10

/** Share of the 20 °C energy left at `cellC`. */
export function coldShare(kind: CellKind, cellC: number): number {
  const row = shares[kind]
  const at = Math.min(20, Math.max(-40, cellC))
  let i = 0
  while (i < 3 && at > points_C[i + 1]!) i++
  const [left, right] = [points_C[i]!, points_C[i + 1]!]
  return row[i]! + ((row[i + 1]! - row[i]!) * (at - left)) / (right - left)
}

export const isCellKind = (text: string): text is CellKind => Object.hasOwn(shares, text)

/** As a law, one for each kind of cell: the kind is a choice, not a number with a doubt. */
export const coldCell = (kind: CellKind) =>
  ({
    name: 'Energy in the cold',
    formula: `E·f(${kind}, t)`,
    source: { cite: 'typical data-sheet shapes, ± 0.10', known: 'memory' },
    takes: { energyWh: 'Wh', cellC: 'degC' },
    unit: 'Wh',
    cautions: ({ cellC }) => (kind === 'lithium-ion' && cellC < 0 ? ['Never charge lithium-ion below 0 °C: warm it first.'] : []),
    compute: ({ energyWh, cellC }) => energyWh * coldShare(kind, cellC),
    spread: ({ energyWh }) => energyWh * COLD_U,
  }) as const satisfies Law<{ energyWh: 'Wh'; cellC: 'degC' }, 'Wh'>
