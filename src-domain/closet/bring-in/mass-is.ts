/** Whether masses stand for one piece or for the whole line: as the person says, as the heading says, else as the sheet's own sums come out. */
import type { Choices } from './choices.ts'
import type { MassReader } from './mass-cell.ts'
import { piecesOf } from './pieces.ts'
import type { BlockPlan } from './plan-block.ts'
import type { ReasonCode, Told } from './preview.ts'
import type { RawRow } from './raw-rows.ts'
import type { CountedRow } from './sheet-totals.ts'
import { sheetMass, sheetTotals } from './sheet-totals.ts'

export interface MassIs {
  readonly is: 'piece' | 'line'
  readonly because: Told<ReasonCode>
}

export function decideMassIs(
  raws: readonly RawRow[],
  plans: readonly BlockPlan[],
  counted: readonly CountedRow[],
  choices: Choices,
  reader: MassReader,
): MassIs {
  if (choices.massIs) return { is: choices.massIs, because: { code: 'by-person', facts: {} } }
  const line = plans.flatMap((plan) => plan.columnsOf('mass')).find((one) => one.because.facts['line'] === 1)
  if (line) return { is: 'line', because: { code: 'by-heading', facts: { heading: line.heading } } }
  if (!counted.some(({ raw }) => piecesOf(raw, 'piece').times > 1)) return { is: 'piece', because: { code: 'by-default', facts: {} } }
  const [piece, whole] = (['piece', 'line'] as const).map((massIs) => metBy(raws, plans, counted, massIs, reader)) as [number, number]
  if (whole > piece) return { is: 'line', because: { code: 'by-total', facts: { totals: whole } } }
  return { is: 'piece', because: piece > 0 ? { code: 'by-total', facts: { totals: piece } } : { code: 'by-default', facts: {} } }
}

/** How many of the sheet's sums come out under this reading. */
function metBy(
  raws: readonly RawRow[],
  plans: readonly BlockPlan[],
  counted: readonly CountedRow[],
  massIs: 'piece' | 'line',
  reader: MassReader,
): number {
  return sheetTotals(raws, plans, counted, massIs, reader).filter((total) => {
    const sum = total.rows.reduce((all, one) => all + sheetMass(one.raw, massIs), 0)
    return Math.abs(sum - total.said_mg) <= total.step_mg / 2 + total.rows.length
  }).length
}
