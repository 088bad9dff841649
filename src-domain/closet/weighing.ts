/**
 * The weighing: from what the scale showed to the mass of one piece, with its doubt.
 *   m = (R̄ − T) × c ÷ N      u_own² = u_res² + u_rep² + u_zero²      u_gain of the scale, common to all it weighs
 *   R̄ mean of the readings, T tare reading, c correction by check mass, N pieces on the plate; milligrams
 *   u_res = d/√12 a reading used (zero shown), d/√6 when tared by button or by a second reading; u_rep = s/√n; u_zero = d/√12 if zero was not shown
 * Weight in air is what the back feels: no correction for buoyancy. Source: JCGM 100:2008 (structure from memory); provisions.md 9.1, 9.2.
 */
import type { Figure, Law } from '../figures/figure.ts'
import { given, work } from '../figures/figure.ts'
import type { Outcome } from '../figures/fault.ts'
import { fault, ok } from '../figures/fault.ts'
import { roundHalfAway } from '../figures/digits.ts'
import { formatDate } from '../figures/format-quantities.ts'
import type { BenchScale, Gain } from './scale-gain.ts'
import { gainOf, meanOf, spreadOf } from './scale-gain.ts'

export * from './claims.ts'
export * from './scale-gain.ts'

export type TareKind = 'none' | 'button' | 'reading'

export interface Reading {
  /** Repeats of one weighing, taken off and on again, as the scale showed them. */
  readonly readingsMg: readonly number[]
  /** `reading`: what the empty sack or hand showed, taken off here. `button`: already taken off by the scale, kept for the capacity alone. */
  readonly tareMg: number
  readonly tareKind: TareKind
  readonly pieces: number
  readonly weighedOn: string
  readonly damp?: boolean
  readonly dirty?: boolean
  readonly incomplete?: boolean
  /** Whether the empty scale showed zero before and after. Default: it did. */
  readonly zeroShown?: boolean
}

/** Something the person should know of a weighing that was accepted. */
export type WeighingNote =
  | { readonly code: 'finer-scale'; readonly massMg: number; readonly stepMg: number }
  | { readonly code: 'gain-unchecked' }
  | { readonly code: 'not-counted'; readonly why: readonly ('damp' | 'dirty' | 'incomplete')[] }

export interface Weighed {
  /** Of one piece, whole milligrams. */
  readonly massMg: number
  /** Of one piece; the leaf `weighing:<uid>`. */
  readonly uOwnMg: number
  /** Of one piece; the leaf `scale:<uid>:gain`. */
  readonly uGainMg: number
  /** The same mass in grams with its working. */
  readonly figure: Figure<'g'>
  /** All pieces together, before the division. */
  readonly netMg: number
  readonly gain: Gain
  /** What the own doubt of all pieces together is made of. */
  readonly makeUp: { readonly resolutionMg: number; readonly repeatMg: number; readonly zeroMg: number }
  /** False: kept, but not the item's mass. */
  readonly counted: boolean
  readonly notes: readonly WeighingNote[]
}

/** A mass typed from a scale that is not in the list: 1 g steps, never checked. Its doubt is a leaf of its own. */
export const unknownScale: BenchScale = { uid: 'unknown', name: 'a scale', stepMg: 1000, capacityMg: 1_000_000_000, checks: [] }

/** Works out one weighing. `uid` names its leaf; before it is kept any name will do. */
export function weigh(reading: Reading, scale: BenchScale = unknownScale, uid = 'now'): Outcome<Weighed> {
  const refused = refusal(reading, scale)
  if (refused) return refused
  const { readingsMg, pieces } = reading
  const gain = gainOf(scale, reading.weighedOn)
  const tareMg = reading.tareKind === 'reading' ? reading.tareMg : 0
  const netMg = (meanOf(readingsMg) - tareMg) * gain.correction
  const makeUp = doubtOf(reading, scale)
  const uOwnAllMg = Math.hypot(makeUp.resolutionMg, makeUp.repeatMg, makeUp.zeroMg) * gain.correction
  const figure = worked(reading, scale, gain, Math.hypot(makeUp.resolutionMg, makeUp.repeatMg, makeUp.zeroMg), uid)
  const counted = !reading.damp && !reading.dirty && !reading.incomplete
  return ok({
    massMg: roundHalfAway(netMg / pieces),
    uOwnMg: uOwnAllMg / pieces,
    uGainMg: (netMg * gain.u) / pieces,
    figure,
    netMg,
    gain,
    makeUp,
    counted,
    notes: notesOf(reading, scale, gain, netMg),
  })
}

function refusal(reading: Reading, scale: BenchScale): Outcome<never> | undefined {
  const { readingsMg, tareMg, tareKind, pieces } = reading
  if (readingsMg.length === 0 || !readingsMg.every(Number.isFinite) || !(pieces >= 1)) return fault('weighing.no-reading')
  const onPlateMg = Math.max(...readingsMg) + (tareKind === 'button' ? tareMg : 0)
  if (onPlateMg > scale.capacityMg)
    return fault('weighing.over-capacity', { readingMg: onPlateMg, capacityMg: scale.capacityMg, scale: scale.name })
  const netMg = meanOf(readingsMg) - (tareKind === 'reading' ? tareMg : 0)
  if (netMg < 0) return fault('weighing.negative', { netMg: roundHalfAway(netMg) })
  return netMg === 0 ? fault('weighing.no-reading') : undefined
}

function doubtOf({ readingsMg, tareKind, zeroShown = true }: Reading, scale: BenchScale): Weighed['makeUp'] {
  return {
    resolutionMg: scale.stepMg / Math.sqrt(tareKind === 'none' ? 12 : 6),
    repeatMg: spreadOf(readingsMg, scale) / Math.sqrt(readingsMg.length),
    zeroMg: zeroShown ? 0 : scale.stepMg / Math.sqrt(12),
  }
}

/** Below 20 steps a finer scale is the better one: OIML R 76-1 sets 20 e as the least load of class III (read). */
function notesOf(reading: Reading, scale: BenchScale, gain: Gain, netMg: number): readonly WeighingNote[] {
  const why = (['damp', 'dirty', 'incomplete'] as const).filter((mark) => reading[mark])
  const notes: WeighingNote[] = []
  if (netMg < 20 * scale.stepMg) notes.push({ code: 'finer-scale', massMg: roundHalfAway(netMg), stepMg: scale.stepMg })
  if (!gain.check) notes.push({ code: 'gain-unchecked' })
  if (why.length > 0) notes.push({ code: 'not-counted', why })
  return notes
}

const massByWeighing = {
  name: 'Mass by weighing',
  formula: 'm = (R − T) × c ÷ N',
  source: { cite: 'JCGM 100:2008, 4.3, 5.1 and F.2.2.1', known: 'memory' },
  takes: { readingG: 'g', tareG: 'g', correction: '1', pieces: '1' },
  unit: 'g',
  leavesOut: 'the lift of the air, which the back does not feel either',
  compute: ({ readingG, tareG, correction, pieces }) => ((readingG - tareG) * correction) / pieces,
} as const satisfies Law<{ readingG: 'g'; tareG: 'g'; correction: '1'; pieces: '1' }, 'g'>

function worked(reading: Reading, scale: BenchScale, gain: Gain, uOwnMg: number, uid: string): Figure<'g'> {
  const { readingsMg, tareKind, tareMg, pieces } = reading
  const day = formatDate(reading.weighedOn)
  const repeats = readingsMg.length === 1 ? 'one reading' : `mean of ${readingsMg.length} readings`
  const checked = gain.check ? `checked ${formatDate(gain.check.readOn)}` : 'never checked, or longer than six months ago'
  const figure = work(massByWeighing, {
    readingG: given(
      meanOf(readingsMg) / 1000,
      'g',
      'measured',
      { [`weighing:${uid}`]: uOwnMg / 1000 },
      `${repeats}, ${day}, ${scale.name}`,
    ),
    tareG: given(tareKind === 'reading' ? tareMg / 1000 : 0, 'g', 'measured', {}, tareWords[tareKind]),
    correction: given(
      gain.correction,
      '1',
      'measured',
      { [`scale:${scale.uid}:gain`]: gain.correction * gain.u },
      `${scale.name}, ${checked}`,
    ),
    pieces: given(pieces, '1', 'given', {}, 'on the plate'),
  })
  return { ...figure, origin: 'measured', from: `weighed ${day} on ${scale.name}` }
}

const tareWords: Readonly<Record<TareKind, string>> = {
  none: 'none',
  button: 'taken off by the scale',
  reading: 'read with the plate empty of the item',
}

export interface PieceMass {
  readonly massMg: number
  readonly uMg: number
}

/** Pieces by weight: N = W/w to the nearest. Sure only while N·u(w) + u(W) stays below half a piece; else the person counts. */
export function countPieces(all: PieceMass, one: PieceMass): Outcome<number> {
  const pieces = one.massMg > 0 ? roundHalfAway(all.massMg / one.massMg) : 0
  if (pieces >= 1 && pieces * one.uMg + all.uMg < one.massMg / 2) return ok(pieces)
  return fault('weighing.count-unsure', { nearest: pieces })
}

export interface PastWeighing extends PieceMass {
  readonly weighedOn: string
  readonly damp: boolean
  readonly dirty: boolean
  readonly incomplete: boolean
}

export interface AgainstBefore {
  /** Newer less older, of one piece. */
  readonly differenceMg: number
  /** One standard uncertainty of the difference. The gain of two days is taken as two: a scale drifts between them. */
  readonly uMg: number
  /** `agrees` within 3 u; damp or dirty weighings say what clings to the thing; else something changed: wet, mended, other parts? */
  readonly what: 'agrees' | 'heavier' | 'lighter' | 'damp-gain' | 'dirt-gain' | 'incomplete'
}

/** Two weighings of one item side by side (provisions.md 9.3: warn beyond 3·√(u1² + u2²)). */
export function againstBefore(newer: PastWeighing, older: PastWeighing): AgainstBefore {
  const differenceMg = newer.massMg - older.massMg
  const uMg = Math.hypot(newer.uMg, older.uMg)
  const apart = Math.abs(differenceMg) > 3 * uMg
  return { differenceMg, uMg, what: apart ? whatChanged(newer, differenceMg) : 'agrees' }
}

function whatChanged(newer: PastWeighing, differenceMg: number): AgainstBefore['what'] {
  if (newer.incomplete) return 'incomplete'
  if (differenceMg < 0) return 'lighter'
  return newer.damp ? 'damp-gain' : newer.dirty ? 'dirt-gain' : 'heavier'
}

/** The weighing that is the item's mass: the latest that was dry, clean and whole. Of one day the one kept last. */
export function rulingWeighing<W extends PastWeighing>(inOrderKept: readonly W[]): W | undefined {
  let ruling: W | undefined
  for (const one of inOrderKept) {
    if (one.damp || one.dirty || one.incomplete) continue
    if (!ruling || one.weighedOn >= ruling.weighedOn) ruling = one
  }
  return ruling
}
