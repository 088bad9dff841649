import type { QueueGroup } from '../../src-domain/closet/bench-queue.ts'
import type { AgainstBefore, WeighingNote } from '../../src-domain/closet/weighing.ts'
import type { ScaleStatus } from '../../src-domain/closet/scale-report.ts'
import { given } from '../../src-domain/figures/figure.ts'
import { formatFigure, metric, us } from '../../src-domain/figures/format.ts'
import type { ScaleRow } from '../../src-main/contract.ts'
import { plain, show, showDay } from '../state/units.svelte.ts'

export const groupWords = (group: QueueGroup, planned: boolean): string => {
  switch (group.kind) {
    case 'planned':
      return `Never weighed, in ${group.loadoutName}`
    case 'never':
      return planned ? 'Never weighed, not in a planned loadout' : 'Never weighed'
    case 'oldest':
      return 'Weighed longest ago'
    case 'differs':
      return 'Far from what was claimed'
  }
}

/** `1 g`, `0.05 oz`: a scale's steps in the unit it counts in, whatever unit is chosen: whole tenths of a gram are no ounces. */
export const stepWords = (stepMg: number): string => inScaleUnit(stepMg, stepMg)
/** A mass of the bench itself, in the unit its scale counts in: a check mass of 200 g stays one of 200 g. */
export const inScaleUnit = (massMg: number, stepMg: number): string =>
  plain(formatFigure(given(massMg / 1000, 'g', 'given'), stepMg % 100 === 0 || stepMg < 100 ? metric : us))
/** `5 kg`, `11 lb`. */
export const limitWords = (capacityMg: number): string =>
  plain(formatFigure(given(capacityMg / 1_000_000, 'kg', 'given'), capacityMg % 1000 === 0 ? metric : us))

export const scaleWords = (scale: ScaleRow, byUsb: boolean): string =>
  `${scale.name} ${byUsb ? 'by USB' : 'by hand'}, ${stepWords(scale.stepMg)} steps, to ${limitWords(scale.capacityMg)}`

/** The second line under the scale's name: what its newest checks said. */
export function checkedWords(scale: ScaleRow, today: string): string {
  const newest = scale.checks[0]
  if (!newest) return 'never checked: its gain counts with ±0.3 %'
  const same = scale.checks.filter((one) => one.readOn === newest.readOn).slice(0, 2)
  const g = (massMg: number) => inScaleUnit(massMg, scale.stepMg)
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length
  const said = [...same].reverse().map((one) => `${g(one.nominalMg)} reads ${g(mean(one.readingsMg))}`)
  return `checked ${newest.readOn === today ? 'today' : showDay(newest.readOn)}: ${said.join(', ')}`
}

export const statusSaid: Readonly<Record<ScaleStatus, string>> = {
  zero: 'empty',
  moving: 'moving',
  stable: 'settling',
  'under-zero': 'under zero',
}

/** What the person should know of this weighing before it is kept. */
export function noteWords(note: WeighingNote): string {
  switch (note.code) {
    case 'finer-scale':
      return `Below twenty steps of ${stepWords(note.stepMg)} each: a finer scale would say more.`
    case 'gain-unchecked':
      return 'This scale was not checked within six months: a check mass would narrow it.'
    case 'not-counted':
      return `It is ${note.why.join(' and ')}: kept, but not as its mass.`
  }
}

const differs = (against: AgainstBefore, pieces: number) =>
  plain(show.item({ massMg: Math.abs(against.differenceMg) * pieces, origin: 'measured' }))

/** The newer weighing against the one that ruled; empty where they agree. */
export function againstWords(against: AgainstBefore, pieces: number, day: string): string {
  const by = differs(against, pieces)
  switch (against.what) {
    case 'agrees':
      return ''
    case 'heavier':
      return `${by} heavier than on ${showDay(day)}, more than three times what the two explain. Wet, mended, other parts?`
    case 'lighter':
      return `${by} lighter than on ${showDay(day)}, more than three times what the two explain. Something missing, or dry at last?`
    case 'damp-gain':
      return `It holds ${by} of water against ${showDay(day)}.`
    case 'dirt-gain':
      return `It holds ${by} of dirt against ${showDay(day)}.`
    case 'incomplete':
      return `${by} from the whole of ${showDay(day)}.`
  }
}
