import { campbell2022 } from './campbell.ts'
import { din33466 } from './din-33466.ts'
import { descentClass, langmuir } from './langmuir.ts'
import { munter, munterRate } from './munter.ts'
import { naismith } from './naismith.ts'
import { degreesOf } from './slope.ts'
import { swissSignpost } from './swiss-signpost.ts'
import { tobler } from './tobler.ts'

/**
 * Walking time of a route by every method at once, for the working: honest methods differ by a factor of about 1.4, so a bare minute is never shown.
 *   T = Σ length/speed(slope) over pieces of nearly constant slope
 * Length is horizontal ground distance. Slopes are never averaged first: there and back has a mean slope of nothing.
 * Source: the laws named.
 */
export interface Piece {
  /** Horizontal, metres, not negative. */
  readonly lengthM: number
  /** Height at its end less height at its start, metres. */
  readonly riseM: number
}

export const methods = ['campbell', 'tobler', 'swiss', 'naismith', 'langmuir', 'din', 'munter'] as const
export type Method = (typeof methods)[number]

/** Hours of moving for the pieces, in order. A piece without length takes no time. */
export function walkingHours(method: Method, pieces: readonly Piece[]): number {
  if (method === 'naismith' || method === 'langmuir' || method === 'din') return onTotals[method](totalsOf(pieces))
  return pieces.reduce((sum, piece) => sum + (piece.lengthM === 0 ? 0 : bySlope[method](piece)), 0)
}

export interface Totals {
  readonly distanceKm: number
  readonly climbM: number
  readonly descentM: number
  readonly gentleDescentM: number
  readonly steepDescentM: number
}

/** What the rules on totals read, with the descent split by slope. */
export function totalsOf(pieces: readonly Piece[]): Totals {
  let distanceKm = 0
  let climbM = 0
  const down = { flat: 0, gentle: 0, steep: 0 }
  for (const { lengthM, riseM } of pieces) {
    refuseBad(lengthM, riseM)
    distanceKm += lengthM / 1000
    if (riseM >= 0) climbM += riseM
    else down[lengthM === 0 ? 'steep' : descentClass(riseM / lengthM)] -= riseM
  }
  const descentM = down.flat + down.gentle + down.steep
  return { distanceKm, climbM, descentM, gentleDescentM: down.gentle, steepDescentM: down.steep }
}

/** Hours by the default law for one piece. */
export function campbellHours({ lengthM, riseM }: Piece): number {
  refuseBad(lengthM, riseM)
  return lengthM === 0 ? 0 : lengthM / campbell2022.compute({ slopeDeg: degreesOf(slopeOf({ lengthM, riseM })) }) / 3600
}

/**
 * A leg of which only length, climb and descent are known, as pieces: one up and one down of like steepness, sharing the length by their height.
 * (Choice: the gentlest two slopes that give this climb and this descent.)
 */
export function piecesOfLeg(lengthM: number, climbM: number, descentM: number): readonly Piece[] {
  refuseBad(lengthM, climbM)
  refuseBad(lengthM, descentM)
  if (climbM < 0 || descentM < 0) throw new RangeError('climb and descent are not negative')
  const height = climbM + descentM
  if (height === 0) return [{ lengthM, riseM: 0 }]
  return [
    { lengthM: lengthM * (climbM / height), riseM: climbM },
    { lengthM: lengthM * (descentM / height), riseM: -descentM },
  ].filter((piece) => piece.riseM !== 0)
}

const bySlope: Readonly<Record<'campbell' | 'tobler' | 'swiss' | 'munter', (piece: Piece) => number>> = {
  campbell: campbellHours,
  tobler: (piece) => piece.lengthM / 1000 / tobler.compute({ gradeRatio: slopeOf(piece) }),
  swiss: (piece) => ((piece.lengthM / 1000) * swissSignpost.compute({ gradeRatio: slopeOf(piece) })) / 60,
  munter: ({ lengthM, riseM }) => munter.compute({ distanceKm: lengthM / 1000, changeM: riseM, rate: munterRate(riseM / lengthM) }),
}

const onTotals: Readonly<Record<'naismith' | 'langmuir' | 'din', (totals: Totals) => number>> = {
  naismith: (totals) => naismith.compute(totals),
  langmuir: (totals) => langmuir.compute(totals),
  din: (totals) => din33466.compute(totals),
}

/** Rise over run of a piece that has a length; past 100 % it is no longer walking and stays at 100 %. */
export const slopeOf = ({ lengthM, riseM }: Piece): number => Math.max(-1, Math.min(1, riseM / lengthM))

function refuseBad(lengthM: number, riseM: number): void {
  if (!(lengthM >= 0) || !Number.isFinite(lengthM) || !Number.isFinite(riseM))
    throw new RangeError(`no such piece: ${lengthM} m, rise ${riseM} m`)
}
