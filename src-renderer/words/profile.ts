import { formatDuration } from '../../src-domain/figures/format.ts'
import type { ProfilePoint } from '../../src-domain/loadout/profile.ts'
import type { LightFound } from '../../src-domain/trips/light.ts'
import { plain, show } from '../state/units.svelte.ts'

const kg = (value: number): string => plain({ ...show.total({ massMg: Math.round(value * 1e6), origin: 'measured' }), band: '' })

/** A place along the way: where, what lies on the shoulders, and what of it will be used up. */
export function placeParts(point: ProfilePoint, areas: readonly string[]): { readonly where: string; readonly used: readonly string[] } {
  const used = areas.flatMap((area, at) => ((point.usedKg[at] ?? 0) > 0.0005 ? [`${area.toLowerCase()} ${kg(point.usedKg[at]!)}`] : []))
  return { where: `${plain(show.distance(point.atM))}, ${formatDuration(60 * point.hours)} walked`, used }
}

/** The same in one sentence: what the mark on the drawing stands for. */
export function placeWords(point: ProfilePoint, areas: readonly string[]): string {
  const { where, used } = placeParts(point, areas)
  return [`${where}: ${kg(point.loadKg)}`, ...used].join(' · ')
}

/** Rows of the tables of days and legs: the name in the margin, and the words before `day 2` that name one figure of it. */
export const rowWords = {
  length: ['distance', 'Distance of'],
  climb: ['climb', 'Climb of'],
  descent: ['descent', 'Descent of'],
  onFoot: ['on foot', 'Hours on foot on'],
  energy: ['energy used', 'Energy used on'],
  loadStart: ['load, start', 'Load at the start of'],
  loadEnd: ['load, arrival', 'Load on arrival,'],
  waterStart: ['water, start', 'Water at the start of'],
  waterEnd: ['water, arrival', 'Water on arrival,'],
  start: ['starts', 'Start of'],
  arrival: ['arrives about', 'Arrival,'],
  late: ['1 in 10 after', 'Late arrival,'],
  set: ['sunset', 'Sunset on'],
  dusk: ['last light', 'Last light on'],
  spare: ['to spare', 'Time to spare on'],
} as const satisfies Readonly<Record<string, readonly [row: string, figure: string]>>

export const profileWords = {
  whole: 'the whole trip',
  days: 'Day by day',
  legs: 'Leg by leg',
  light: 'Arrival against the light',
  onFoot: 'on foot, with breaks; the thin line ends where one walk in ten is later',
  twilight: 'twilight',
  dark: 'dark, from last light to dawn',
  noLight: 'light not known',
  noDusk: 'no dusk',
  afterDusk: 'after last light',
  lateAfterDusk: 'late end in dark',
} as const

export const lightMissing: Readonly<Record<Extract<LightFound, { ok: false }>['missing'], string>> = {
  place: 'say where',
  dates: 'say when',
  zone: 'say the time zone',
  sun: 'too near to a pole',
}
