import { mgPer } from '../../../src-domain/figures/units.ts'

/** Where things stand on the ruler of the bench: a straight scale in the unit shown, with a claim, its band, the reading and the one before. */
export interface RulerGiven {
  readonly claimMg: number | null
  readonly claimBandMg: number
  readonly readingMg: number | null
  readonly beforeMg: number | null
}

export interface Tick {
  readonly x: number
  readonly size: 'major' | 'half' | 'minor'
  readonly label: string
}
export interface Ruler {
  readonly from: number
  readonly to: number
  readonly ticks: readonly Tick[]
  readonly x: (massMg: number) => number
}

/** Drawn from 1 to this. */
export const rulerWidth = 834

/** Null where there is nothing to show. */
export function rulerOf({ claimMg, claimBandMg, readingMg, beforeMg }: RulerGiven, unit: 'g' | 'oz'): Ruler | null {
  const one = mgPer(unit)
  const edges = [claimMg === null ? [] : [claimMg - claimBandMg, claimMg + claimBandMg], readingMg ?? [], beforeMg ?? []].flat()
  if (edges.length === 0) return null
  const [least, most] = [Math.min(...edges) / one, Math.max(...edges) / one]
  const span = Math.max(most - least, most * 0.06, unit === 'g' ? 6 : 0.3)
  const middle = (least + most) / 2
  const major = niceStep((span * 5) / 3 / 8)
  const from = Math.max(0, Math.floor((middle - (span * 5) / 6) / major) * major)
  const to = Math.max(from + 4 * major, middle + (span * 5) / 6)
  const x = (massMg: number) => 1 + ((massMg / one - from) / (to - from)) * rulerWidth
  return { from, to, ticks: ticksOf(from, to, major), x }
}

/** 1, 2 or 5 times a power of ten, the nearest. */
function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough))
  const head = rough / power
  return (head < 1.5 ? 1 : head < 3.5 ? 2 : head < 7.5 ? 5 : 10) * power
}

/** Tenths between the majors, the fifth longer. */
function ticksOf(from: number, to: number, major: number): readonly Tick[] {
  const minor = major / 10
  const count = Math.floor((to - from) / minor + 1e-9)
  const places = Math.max(0, -Math.floor(Math.log10(major) + 1e-9))
  return Array.from({ length: count + 1 }, (_, at) => {
    const value = from + at * minor
    const size = at % 10 === 0 ? ('major' as const) : at % 5 === 0 ? ('half' as const) : ('minor' as const)
    const label = size === 'major' ? value.toLocaleString('en-GB', { minimumFractionDigits: places, maximumFractionDigits: places }) : ''
    return { x: 1 + ((value - from) / (to - from)) * rulerWidth, size, label }
  })
}

export interface Label {
  /** Where its line stands. */
  readonly x: number
  readonly width: number
}

/** Middles of labels that must not overlap: pushed apart as little as it takes, kept within the ruler. */
export function apart(labels: readonly Label[], gap = 14): readonly number[] {
  const order = labels.map((_, at) => at).sort((a, b) => labels[a]!.x - labels[b]!.x)
  const at = labels.map(({ x, width }) => Math.min(rulerWidth - width / 2, Math.max(width / 2, x)))
  for (let round = 0; round < 8; round++) {
    for (let one = 1; one < order.length; one++) {
      const [left, right] = [order[one - 1]!, order[one]!]
      const over = at[left]! + labels[left]!.width / 2 + gap - (at[right]! - labels[right]!.width / 2)
      if (over <= 0) continue
      at[left] = Math.max(labels[left]!.width / 2, at[left]! - over / 2)
      at[right] = Math.min(rulerWidth - labels[right]!.width / 2, at[right]! + over / 2)
    }
  }
  return at
}
