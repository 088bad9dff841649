/** The Profile's figures as they are read in its columns: without their bands, which the working shows. */
import { formatDuration, type Shown } from '../../../src-domain/figures/format.ts'
import type { Figure, Quantity } from '../../../src-domain/figures/figure.ts'
import { show } from '../../state/units.svelte.ts'

const bare = (shown: Shown): Shown => ({ ...shown, band: '' })
const asDuration = (minutes: number): Shown => ({ prefix: '', digits: formatDuration(minutes), unit: '', band: '' })

export const said = {
  length: (figure: Figure<'m'>) => bare(show.distance(figure.value)),
  height: (figure: Figure<'m'>) => bare(show.height(figure.value)),
  hours: (figure: Figure<'h'>) => asDuration(60 * figure.value),
  minutes: (figure: Figure<'min'>) => asDuration(figure.value),
  load: (figure: Figure<'kg'>) => bare(show.total(figure)),
  water: (figure: Figure<'l'>) => bare(show.volume(figure.value)),
  /** To the ten: its doubt is of hundreds. */
  energy: (figure: Figure<'kcal'>) =>
    bare(show.figure({ ...figure, value: (10 * Math.round(figure.value / 10)) as Quantity<'kcal'>, shares: {} })),
  clock: (figure: Figure<'clock'>) => bare(show.figure(figure)),
}
