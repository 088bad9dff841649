import { formatDuration } from '../../src-domain/figures/format.ts'
import type { ProfilePoint } from '../../src-domain/loadout/profile.ts'
import type { LightFound } from '../../src-domain/trips/light.ts'
import { plain, show } from '../state/units.svelte.ts'

/** A place along the way in one sentence: what the mark on the drawing stands for. */
export function placeWords(point: ProfilePoint, areas: readonly string[]): string {
  const kg = (value: number): string => plain({ ...show.total({ massMg: Math.round(value * 1e6), origin: 'measured' }), band: '' })
  const used = areas.flatMap((area, at) => ((point.usedKg[at] ?? 0) > 0.0005 ? [`${area.toLowerCase()} ${kg(point.usedKg[at]!)}`] : []))
  return [`${plain(show.distance(point.atM))}, ${formatDuration(60 * point.hours)} walked: ${kg(point.loadKg)}`, ...used].join(' · ')
}

/** Minutes between arrival and the dark. */
export const spareWords = (minutes: number): string =>
  minutes >= 0 ? `${formatDuration(minutes)} to spare` : `${formatDuration(-minutes)} too late`

export const lightMissing: Readonly<Record<Extract<LightFound, { ok: false }>['missing'], string>> = {
  place: 'say where',
  dates: 'say when',
  zone: 'say the time zone',
  sun: 'too near to a pole',
}
