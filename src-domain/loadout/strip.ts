import { kitAreas, type KitArea, type Lane } from '../closet/vocabulary.ts'
import type { Figure } from '../figures/figure.ts'
import { band } from '../figures/figure.ts'
import type { Walker } from '../trips/walker.ts'
import { covering, traitNumber, type Loadout } from './loadout.ts'
import { isCarriedByAnother } from './mass.ts'
import type { Totals } from './totals.ts'

/**
 * The load strip hangs on one line: worn weight grows left of zero, base weight right of it, then what is used up, to one scale in grams.
 * Which names fit where is the window's matter; so is the length of a gram.
 */
export interface Segment {
  readonly lane: Lane
  readonly area: KitArea
  /** From the zero line, g; worn segments are below 0. */
  readonly fromG: number
  readonly toG: number
  readonly massG: number
  /** It will go on the way. */
  readonly hatched: boolean
}

/** The part of the line that a strip shows, g from its zero. */
export interface Scale {
  readonly leftG: number
  readonly rightG: number
}

export type FlagKind = 'comfortable' | 'easy' | 'upper'

export interface Flag {
  readonly kind: FlagKind
  readonly atG: number
  /** Off the scale: it stands at its end with its figure and an arrow. */
  readonly beyond: boolean
  /** Of a mark on the body: the share of body mass it stands at. */
  readonly share: number | null
}

export interface Dimension {
  readonly of: 'worn' | 'base' | 'consumables'
  readonly fromG: number
  readonly toG: number
  readonly figure: Figure<'g'>
}

export interface Strip {
  readonly segments: readonly Segment[]
  readonly dimensions: readonly Dimension[]
  /** The end of the pack weight with its band, 2u. */
  readonly endG: number
  readonly bandG: number
  readonly scale: Scale
  readonly flags: readonly Flag[]
}

export interface Mark {
  readonly kind: FlagKind
  readonly atG: number
  readonly share: number | null
}

export function stripOf(totals: Totals, marks: readonly Mark[], scale: Scale = scaleFor([totals], marks)): Strip {
  const [wornG, baseG, packG] = [totals.worn.figure.value, totals.base.figure.value, totals.pack.figure.value]
  return {
    segments: [...segmentsOf(totals, 'on_me', 0), ...segmentsOf(totals, 'in_pack', 0), ...segmentsOf(totals, 'used_up', baseG)],
    dimensions: [
      { of: 'worn', fromG: 0 - wornG, toG: 0, figure: totals.worn.figure },
      { of: 'base', fromG: 0, toG: baseG, figure: totals.base.figure },
      { of: 'consumables', fromG: baseG, toG: packG, figure: totals.consumables.figure },
    ],
    endG: packG,
    bandG: band(totals.pack.figure),
    scale,
    flags: marks.map((mark) => ({ ...mark, beyond: mark.atG > scale.rightG })),
  }
}

/** Kit areas in their fixed order, growing away from the zero line. */
function segmentsOf(totals: Totals, lane: Lane, startG: number): Segment[] {
  const away = lane === 'on_me' ? -1 : 1
  let atMg = Math.round(startG * 1000)
  return kitAreas.flatMap((area) => {
    const sum = totals.areas.find((one) => one.lane === lane && one.area === area)
    if (sum === undefined || sum.massMg === 0) return []
    const ends = [atMg, atMg + away * sum.massMg].map((mg) => mg / 1000).sort((a, b) => a - b)
    atMg += away * sum.massMg
    return [{ lane, area, fromG: ends[0]!, toG: ends[1]!, massG: sum.massMg / 1000, hatched: lane === 'used_up' }]
  })
}

/**
 * One scale for one or several loadouts, in grams: whole kilograms at the right, quarters at the left. A mark up to twice the heaviest
 * pack is held on it, a further one is not: the scale is never squeezed for a mark. `kept`, the scale shown now, stays while the
 * loads still fit and fill more than a third of it, so that one item more or less moves nothing else.
 */
export function scaleFor(totals: readonly Totals[], marks: readonly Mark[], kept?: Scale): Scale {
  const packG = Math.max(0, ...totals.map((one) => one.pack.figure.value))
  const wornG = Math.max(0, ...totals.map((one) => one.worn.figure.value))
  if (kept !== undefined && fits(kept, packG, wornG)) return kept
  const furthestG = Math.max(0, ...marks.filter((mark) => mark.atG <= 2 * packG).map((mark) => mark.atG + 1000))
  return {
    leftG: -(Math.ceil(wornG / 250) * 250 + 250),
    rightG: Math.max(2000, Math.ceil(Math.max(1.15 * packG, furthestG) / 1000) * 1000),
  }
}

const fits = ({ leftG, rightG }: Scale, packG: number, wornG: number): boolean =>
  -leftG >= wornG + 100 && rightG >= 1.04 * packG && (packG === 0 || packG > rightG / 3)

export interface Tick {
  readonly atG: number
  /** Whole units from zero; a tick without a figure has null. */
  readonly figure: number | null
}

/** Ticks in whole units from zero both ways, with figures so few that they do not touch. */
export function ticksOf(scale: Scale, unit: 'kg' | 'lb', mostFigures = 17): readonly Tick[] {
  const unitG = unit === 'kg' ? 1000 : 453.59237
  const units = (scale.rightG - scale.leftG) / unitG
  const step = [1, 2, 5, 10, 20, 50].find((each) => units / each <= mostFigures) ?? 100
  const first = Math.ceil(scale.leftG / unitG - 1e-9)
  const last = Math.floor(scale.rightG / unitG + 1e-9)
  return Array.from({ length: last - first + 1 }, (_, i) => first + i).map((n) => ({
    atG: n * unitG,
    figure: n % step === 0 ? Math.abs(n) : null,
  }))
}

/** The comfortable load of the pack that is carried; null: it states none. */
export function comfortableLoadG(loadout: Loadout): number | null {
  const packs = covering(loadout, 'pack').filter((line) => !isCarriedByAnother(line))
  const loads = packs.map((line) => traitNumber(line.item, 'comfortable-load')).filter((kg) => kg !== null)
  return loads.length === 0 ? null : Math.max(...loads) * 1000
}

/** Usual marks on the body, shares of its mass: 20 and 30 %, under 18 15 and 20 % (common practice, no source; editable). */
export function bodyShares(walker: Walker, today: string): { readonly easy: number; readonly upper: number } {
  const young = walker.bornYear !== null && Number(today.slice(0, 4)) - walker.bornYear < 18
  return { easy: walker.easyShare ?? (young ? 0.15 : 0.2), upper: walker.upperShare ?? (young ? 0.2 : 0.3) }
}

/** Marks of this loadout on this walker, nearest first. */
export function marksOf(loadout: Loadout, walker: Walker, today: string): readonly Mark[] {
  const comfortableG = comfortableLoadG(loadout)
  const marks: Mark[] = comfortableG === null ? [] : [{ kind: 'comfortable', atG: comfortableG, share: null }]
  if (walker.bodyMassG !== null) {
    const { easy, upper } = bodyShares(walker, today)
    marks.push({ kind: 'easy', atG: easy * walker.bodyMassG, share: easy }, { kind: 'upper', atG: upper * walker.bodyMassG, share: upper })
  }
  return marks.sort((a, b) => a.atG - b.atG)
}
