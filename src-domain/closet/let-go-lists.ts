/**
 * The two lists of letting go over a whole closet, with what is seldom used, kept for safety, and lent out.
 *   stayed home: taken k of n trips it was fit for · carried for nothing: used j of k it went on, of which something was said
 * Strongest evidence first, of equals the heavier. A thing stands in one list: an offer before what is seldom used, staying home before being carried.
 * A thing without duties is kept for safety if its name says so; a marked one (tag *keep*) is never offered.
 */
import { guessDuties } from './guess-duties.ts'
import { indexRecord, type RecordFacts, type ThingFacts, type TripRecordIndex } from './let-go-record.ts'
import {
  evidenceOf,
  FEWEST_TRIPS,
  keptDuty,
  SELDOM_EVIDENCE,
  verdictOf,
  type TaggedSeason,
  type UseEvidence,
  type Withheld,
} from './letting-go.ts'
import { countBits, noBits, type Bits } from './trip-bits.ts'

export interface LetGoThings extends ThingFacts {
  readonly name: readonly string[]
  readonly massMg: readonly (number | null)[]
  readonly pieces: readonly number[]
  readonly archived: readonly boolean[]
}

export interface Standing {
  /** Of the closet. */
  readonly row: number
  readonly fit: number
  readonly taken: number
  readonly said: number
  readonly used: number
  readonly why: 'stayed-home' | 'carried'
  readonly use: UseEvidence
  readonly withheld: readonly Withheld[]
}

export interface LetGoLists {
  readonly index: TripRecordIndex
  readonly stayedHome: readonly Standing[]
  readonly carriedForNothing: readonly Standing[]
  readonly seldom: readonly Standing[]
  readonly kept: readonly Standing[]
  /** Rows. */
  readonly lent: readonly number[]
}

export const KEEP_TAG = 'keep'

export function letGoLists(
  things: LetGoThings,
  record: RecordFacts,
  firstWeighedOn: ReadonlyMap<number, string>,
  today: string,
  southern = false,
): LetGoLists {
  const index = indexRecord(record, things, firstWeighedOn)
  const evidence = rememberedEvidence()
  const serving = servingDuties(things)
  const scratch = noBits(index.count)
  const lists = { stayedHome: [] as Standing[], carriedForNothing: [] as Standing[], seldom: [] as Standing[], kept: [] as Standing[] }
  for (let row = 0; row < things.id.length; row++) {
    if (things.archived[row] || things.status[row] !== 'owned') continue
    const counted = countsOf(index, things, row, scratch)
    if (counted.fit === 0) continue
    const duties = codesOf(things, row)
    if (keptDuty(duties.length === 0 ? guessDuties(things.name[row]!) : duties) !== null) {
      if (counted.taken > 0) lists.kept.push({ row, ...counted, why: 'carried', use: evidence(counted.used, counted.said), withheld: [] })
      continue
    }
    const judged = strongest(counted, evidence)
    if (judged === null) continue
    const facts = {
      status: things.status[row]!,
      markedKeep: things.tags[row]!.split('\n').includes(KEEP_TAG),
      ownedSince: index.ownedSince(row),
      seasons: things.seasons[row] === '' ? [] : (things.seasons[row]!.split('\n') as TaggedSeason[]),
      southern,
      metByOthers: duties.every((duty) => (serving.get(duty) ?? 0) > 1),
    }
    const { kind, withheld } = verdictOf(judged.use, facts, today)
    const standing: Standing = { row, ...counted, ...judged, withheld }
    lists[kind === 'offered' ? (judged.why === 'carried' ? 'carriedForNothing' : 'stayedHome') : 'seldom'].push(standing)
  }
  const ranked = (list: Standing[]): readonly Standing[] => list.sort(ranking(things))
  return {
    index,
    stayedHome: ranked(lists.stayedHome),
    carriedForNothing: ranked(lists.carriedForNothing),
    seldom: ranked(lists.seldom),
    kept: lists.kept,
    lent: [...things.id.keys()].filter((row) => things.status[row] === 'lent' && !things.archived[row]),
  }
}

type Counted = Pick<Standing, 'fit' | 'taken' | 'said' | 'used'>

function countsOf(index: TripRecordIndex, things: ThingFacts, row: number, scratch: Bits): Counted {
  const { taken, said, used } = index.gone(things.id[row]!)
  return { fit: countBits(index.fit(row, scratch)), taken: countBits(taken), said: countBits(said), used: countBits(used) }
}

/** The stronger of the two evidences from 50 % on; null: too little record, or it is in use. */
function strongest(
  { fit, taken, said, used }: Counted,
  evidence: (count: number, of: number) => UseEvidence,
): Pick<Standing, 'why' | 'use'> | null {
  const home = fit >= FEWEST_TRIPS && mayBeSeldom(taken, fit) ? evidence(taken, fit) : null
  const carried = said >= FEWEST_TRIPS && mayBeSeldom(used, said) ? evidence(used, said) : null
  const isHome = home !== null && (carried === null || home.evidence >= carried.evidence)
  const use = isHome ? home : carried
  if (use === null || use.evidence < SELDOM_EVIDENCE) return null
  return { why: isHome ? 'stayed-home' : 'carried', use }
}

/** One in five or more is never *seldom*: the mean is over 0.10 by far, and so is the median. Spares the beta of most pairs. */
const mayBeSeldom = (count: number, of: number): boolean => count * 5 < of

/** Things share their counts: each pair is worked out once. */
function rememberedEvidence(): (count: number, of: number) => UseEvidence {
  const known = new Map<number, UseEvidence>()
  return (count, of) => {
    const key = count * 100_000 + of
    let one = known.get(key)
    if (one === undefined) known.set(key, (one = evidenceOf(count, of)))
    return one
  }
}

const codesOf = (things: ThingFacts, row: number): readonly string[] => {
  const joined = things.duties[row]!
  if (joined === '') return []
  return joined.includes('*') ? joined.replaceAll('*', '').split(' ') : joined.split(' ')
}

/** How many owned things serve each duty. */
function servingDuties(things: LetGoThings): ReadonlyMap<string, number> {
  const serving = new Map<string, number>()
  for (let row = 0; row < things.id.length; row++) {
    if (things.archived[row] || things.status[row] !== 'owned') continue
    for (const duty of codesOf(things, row)) serving.set(duty, (serving.get(duty) ?? 0) + 1)
  }
  return serving
}

const massOf = (things: LetGoThings, row: number): number => (things.massMg[row] ?? 0) * things.pieces[row]!

const ranking =
  (things: LetGoThings) =>
  (a: Standing, b: Standing): number =>
    b.use.evidence - a.use.evidence || massOf(things, b.row) - massOf(things, a.row) || a.row - b.row

/** Owned things that serve a duty of this one and were used on more trips than it: what does its work now. Most used first. */
export function replacedBy(lists: LetGoLists, things: LetGoThings, row: number): readonly number[] {
  const duties = new Set(codesOf(things, row))
  const uses = (other: number): number => countBits(lists.index.gone(things.id[other]!).used)
  const own = uses(row)
  return [...things.id.keys()]
    .filter((other) => other !== row && things.status[other] === 'owned' && !things.archived[other])
    .filter((other) => codesOf(things, other).some((duty) => duties.has(duty)) && uses(other) > own)
    .sort((a, b) => uses(b) - uses(a))
}
