import type { Profile, ProfileDay } from '../../../src-domain/loadout/profile.ts'
import type { Brief } from '../../../src-domain/trips/brief.ts'
import type { UnitChoice } from '../../../src-domain/figures/format.ts'
import { convertNumber } from '../../../src-domain/figures/units.ts'

/** Where things stand on the drawing: places along the way and loads to one scale each, in the units the person chose. */
export interface Frame {
  readonly x: (atM: number) => number
  readonly y: (kg: number) => number
  readonly loadTicks: readonly { readonly y: number; readonly text: string }[]
  readonly wayTicks: readonly { readonly x: number; readonly text: string | null }[]
  readonly loadUnit: string
}

export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500]
const stepFor = (span: number, most: number): number => steps.find((each) => span / each <= most) ?? 1000

const ticks = (to: number, step: number): readonly number[] => Array.from({ length: Math.floor(to / step + 1e-9) + 1 }, (_, i) => i * step)

export function frameOf(profile: Profile, box: Box, choice: UnitChoice): Frame {
  const loadUnit = choice.mass === 'us' ? 'lb' : 'kg'
  const wayUnit = choice.length === 'us' ? 'mi' : 'km'
  const topKg = 1.15 * Math.max(...profile.points.map(({ loadKg }) => loadKg), 0.5)
  const x = (atM: number): number => box.left + (profile.lengthM > 0 ? atM / profile.lengthM : 0) * (box.right - box.left)
  const y = (kg: number): number => box.bottom - (kg / topKg) * (box.bottom - box.top)
  const perLoad = convertNumber(1, loadUnit, 'kg')
  const perWay = convertNumber(1, wayUnit, 'm')
  const loadStep = stepFor(topKg / perLoad, 10)
  const wayStep = stepFor(profile.lengthM / perWay, Math.max(4, (box.right - box.left) / 80))
  const last = Math.floor(profile.lengthM / perWay / wayStep + 1e-9) * wayStep
  return {
    x,
    y,
    loadUnit,
    loadTicks: ticks(topKg / perLoad, loadStep).map((value) => ({ y: y(value * perLoad), text: String(+value.toFixed(1)) })),
    wayTicks: ticks(profile.lengthM / perWay, wayStep / 5).map((value) => {
      const whole = Math.abs(value / wayStep - Math.round(value / wayStep)) < 1e-6
      return { x: x(value * perWay), text: whole ? `${+value.toFixed(1)}${Math.abs(value - last) < 1e-6 ? ` ${wayUnit}` : ''}` : null }
    }),
  }
}

/** Heights along the way, from the start: the track's, else those said of the legs' ends; fewer than two draw no line. */
export function heightsOf({ track, legs }: Pick<Brief, 'track' | 'legs'>): readonly (readonly [atM: number, heightM: number])[] {
  if (track.length > 1) return track
  let atM = 0
  const ends: [number, number][] = []
  for (const leg of legs) {
    const before = leg.endHeightM !== null && atM === 0 && leg.climbM !== null && leg.descentM !== null
    if (before) ends.push([0, leg.endHeightM - leg.climbM + leg.descentM])
    atM += leg.lengthM ?? 0
    if (leg.endHeightM !== null) ends.push([atM, leg.endHeightM])
    else if (leg.climbM !== null && leg.descentM !== null && ends.length > 0) ends.push([atM, ends.at(-1)![1] + leg.climbM - leg.descentM])
  }
  return ends.length > 1 ? ends : []
}

/** What is used up lies on the base weight: water on top, as it changes most. */
export function bandsOf(
  profile: Profile,
): readonly { readonly area: Profile['areas'][number]; readonly from: readonly number[]; readonly to: readonly number[] }[] {
  const order = profile.areas.map((area, at) => ({ area, at })).sort((a, b) => Number(a.area === 'water') - Number(b.area === 'water'))
  const sums = profile.points.map(({ baseKg }) => baseKg)
  return order.map(({ area, at }) => {
    const from = [...sums]
    profile.points.forEach(({ usedKg }, i) => (sums[i] = sums[i]! + usedKg[at]!))
    return { area, from, to: [...sums] }
  })
}

/** Where each day begins and ends along the way. */
export function daySpans(
  days: readonly ProfileDay[],
): readonly { readonly day: ProfileDay; readonly fromM: number; readonly toM: number }[] {
  let fromM = 0
  return days.map((day) => {
    const span = { day, fromM, toM: fromM + day.lengthM }
    fromM = span.toM
    return span
  })
}
