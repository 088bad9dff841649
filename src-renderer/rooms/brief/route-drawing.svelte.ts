import { stretchesOf, type Stretch } from '../../../src-domain/trips/water-stretches.ts'
import { heightOn, heightsOfLegs } from '../../../src-domain/trips/leg-heights.ts'
import type { Briefing } from './briefing.svelte.ts'

export interface Mark {
  readonly atM: number
  readonly name: string
  readonly heightM: number | null
  readonly kind: 'start' | 'camp' | 'end'
}

/** The line to draw: the track's heights, else those of the legs. */
export function heightLine(briefing: Briefing): { readonly points: readonly (readonly [number, number])[]; readonly anchored: boolean } {
  const { track, legs } = briefing.brief
  if (track.length > 1) return { points: track, anchored: true }
  return heightsOfLegs(legs) ?? { points: [], anchored: false }
}

function heightThere(briefing: Briefing, atM: number): number | null {
  const { points, anchored } = heightLine(briefing)
  return anchored ? heightOn(points, atM) : null
}

/** How far the line and the legs reach. */
export const wayLength = (briefing: Briefing): number => Math.max(briefing.lengthM, briefing.brief.track.at(-1)?.[0] ?? 0)

/** Start, camps and end along the way. */
export function marksOf(briefing: Briefing): readonly Mark[] {
  const { legs } = briefing.brief
  let atM = 0
  const ends = legs.map((leg, i): Mark => {
    atM += leg.lengthM ?? 0
    return {
      atM,
      name: leg.name.replace(/^(.* )?to /u, ''),
      heightM: leg.endHeightM ?? heightThere(briefing, atM),
      kind: i === legs.length - 1 ? 'end' : 'camp',
    }
  })
  const start: Mark = { atM: 0, name: '', heightM: heightThere(briefing, 0), kind: 'start' }
  const nights = ends.filter((mark, i) => mark.kind === 'end' || legs[i]!.day !== legs[i + 1]!.day)
  return [start, ...nights]
}

/** The stretch without water that takes longest; null: there is no way or no night is known. */
export function driest(briefing: Briefing): Stretch | null {
  const { brief, route, nights } = briefing
  if (!route.ok || nights === null || brief.sources.length === 0) return null
  const stretches = stretchesOf(brief, route.legs, nights)
  return stretches.reduce<Stretch | null>((worst, one) => (worst === null || one.hours > worst.hours ? one : worst), null)
}

/** Labels that would lie over the one before are left out; the last always stands. */
export function spaced<T>(marks: readonly T[], x: (mark: T) => number, room: number): readonly T[] {
  const kept: T[] = []
  marks.forEach((mark, i) => {
    const isLast = i === marks.length - 1
    while (isLast && kept.length > 1 && x(mark) - x(kept.at(-1)!) < room) kept.pop()
    if (isLast || kept.length === 0 || x(mark) - x(kept.at(-1)!) >= room) kept.push(mark)
  })
  return kept
}
