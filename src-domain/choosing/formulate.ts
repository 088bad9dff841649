/**
 * Candidates and what is asked of them, as a model of whole numbers.
 *   q pieces in the pack, w on me, taken 0/1, serves: which duty of several a piece is at · least Σ mass·φ·pieces + τ·pieces
 *   τ = 2⁻¹⁰ of a tenth of a gram: nothing useless goes along where worn weight counts nothing, and of equal masses the fewest pieces go
 * Source: choosing.md 3.1 to 3.4. Reserved pieces are taken from what shared needs may stand on, as the check of needs deals them.
 */
import { USED_UP, type Candidate, type Wanted } from './candidate.ts'
import type { Column, Model, Row, Term } from './model.ts'

export const TAU_DG = 2 ** -10

export interface Formulated extends Model {
  readonly candidates: readonly Candidate[]
  readonly parts: readonly Parts[]
}

/** Columns of one candidate; null: it has none of this kind. */
export interface Parts {
  readonly q: number | null
  readonly w: number | null
  /** Its own 0/1 column, where it has more than one piece. */
  readonly u: number | null
  /** Which duty of several a piece is at: duty → column. */
  readonly serves: ReadonlyMap<string, number>
  readonly s: number | null
}

export function formulate(all: readonly Candidate[], wanted: Wanted): Formulated {
  const candidates = all.filter((one) => mayGo(one, wanted))
  const columns: Column[] = []
  const parts = candidates.map((one) => addColumns(columns, one, wanted))
  const usedUp = wanted.usedUpDg === undefined ? null : usedUpColumn(columns, wanted.usedUpDg, wanted)
  const at: At = { candidates, parts, columns, wanted, usedUp, index: new Map(candidates.map(({ id }, i) => [id, i])) }
  const given = new Set(wanted.without)
  const rows = [...linkRows(at), ...dutyRows(at), ...needRows(at), ...carryRows(at), ...bedRows(at), ...personRows(at), ...alsoRows(at)]
  return { columns, rows: rows.filter(({ demand }) => !given.has(demand)), candidates, parts }
}

/** What a solution takes: pieces by id, in the pack and on me. */
export interface Taken {
  readonly id: string
  readonly inPack: number
  readonly onMe: number
}

export function takenOf({ candidates, parts }: Formulated, values: readonly number[]): readonly Taken[] {
  return candidates
    .map(({ id }, i): Taken => {
      const { q, w } = parts[i]!
      return { id, inPack: q === null ? 0 : values[q]!, onMe: w === null ? 0 : values[w]! }
    })
    .filter(({ inPack, onMe }) => inPack + onMe > 0)
}

/** Mass that counts, in tenths of a gram, from the things themselves and never from the objective. */
export function countedDg(taken: readonly Taken[], all: readonly Candidate[], { wornFactor = 0, usedUpFactor = 1 }: Wanted): number {
  const by = new Map(all.map((one) => [one.id, one]))
  return taken.reduce((sum, { id, inPack, onMe }) => {
    const { massDg, usedUp } = by.get(id)!
    return sum + massDg * ((usedUp ? usedUpFactor : 1) * inPack + wornFactor * onMe)
  }, 0)
}

interface At {
  readonly candidates: readonly Candidate[]
  readonly parts: readonly Parts[]
  readonly columns: Column[]
  readonly wanted: Wanted
  readonly index: ReadonlyMap<string, number>
  readonly usedUp: number | null
}

const MOST_USED_UP_DG = 2_000_000
const usedUpColumn = (columns: Column[], least: number, { usedUpFactor = 1 }: Wanted): number =>
  columns.push({ name: 'what is used up', cost: usedUpFactor, least, most: MOST_USED_UP_DG }) - 1

/** A duty at one moment is a part of the demand of that duty. */
const dutyOf = (asked: string): string => asked.split('@')[0]!

/** A ban or a pin out means no column at all, unless it was given up. */
function mayGo({ id, tags }: Candidate, { bans = [], pinOut = [], without = [] }: Wanted): boolean {
  if (pinOut.includes(id)) return without.includes(`out:${id}`)
  return !bans.some((ban) => tags?.includes(ban) && !without.includes(`ban:${ban}`))
}

function addColumns(columns: Column[], one: Candidate, { wornFactor = 0, usedUpFactor = 1 }: Wanted): Parts {
  const { id, massDg, pieces, place, usedUp = false } = one
  const add = (name: string, cost: number, most: number): number => columns.push({ name, cost, least: 0, most }) - 1
  const q = place === 'me' ? null : add(`${id} in the pack`, massDg * (usedUp ? usedUpFactor : 1) + TAU_DG, pieces)
  const w = place === 'pack' ? null : add(`${id} on me`, massDg * wornFactor + TAU_DG, pieces)
  const u = pieces > 1 ? add(`${id} taken`, 0, 1) : null
  const served = new Set(one.oneOf?.flat())
  const serves = new Map([...served].map((duty) => [duty, add(`${id} at ${duty}`, 0, pieces)]))
  const s = one.topAsksR === undefined ? null : add(`${id} as the top`, 0, one.topAsksR === null ? 0 : 1)
  return { q, w, u, serves, s }
}

const x = ({ q, w }: Parts, coefficient = 1): Term[] =>
  [q, w].flatMap((column) => (column === null ? [] : [[column, coefficient] as const]))
const taken = (parts: Parts, coefficient = 1): Term[] => (parts.u === null ? x(parts, coefficient) : [[parts.u, coefficient]])
const atLeast = (name: string, demand: string, terms: readonly Term[], low: number): Row => ({
  name,
  demand,
  terms: summed(terms),
  low,
  high: null,
})
const atMost = (name: string, demand: string, terms: readonly Term[], high: number): Row => ({
  name,
  demand,
  terms: summed(terms),
  low: null,
  high,
})

/** One term for each column, none of 0. */
function summed(terms: readonly Term[]): readonly Term[] {
  const by = new Map<number, number>()
  for (const [column, coefficient] of terms) by.set(column, (by.get(column) ?? 0) + coefficient)
  return [...by].filter(([, coefficient]) => coefficient !== 0)
}

function linkRows({ candidates, parts }: At): Row[] {
  return candidates.flatMap(({ id, pieces, oneOf = [] }, i) => {
    const part = parts[i]!
    const rows: Row[] = []
    if (part.q !== null && part.w !== null) rows.push(atMost(`${id}: pieces owned`, 'owned', x(part), pieces))
    if (part.u !== null) {
      rows.push(atLeast(`${id}: taken`, 'owned', [...x(part), [part.u, -1]], 0))
      rows.push(atMost(`${id}: left`, 'owned', [...x(part), [part.u, -pieces]], 0))
    }
    for (const group of oneOf)
      rows.push(atMost(`${id}: one duty a piece`, 'owned', [...group.map((d): Term => [part.serves.get(d)!, 1]), ...x(part, -1)], 0))
    if (part.s !== null) rows.push(atMost(`${id}: the top goes`, 'owned', [[part.s, 1], ...taken(part, -1)], 0))
    return rows
  })
}

/** What a candidate brings to a duty. */
function coverTerms({ candidates, parts }: At, duty: string, but = -1): Term[] {
  return candidates.flatMap(({ covers }, i) => {
    const amount = covers[duty] ?? 0
    if (amount === 0 || i === but) return []
    const column = parts[i]!.serves.get(duty)
    return column === undefined ? x(parts[i]!, amount) : [[column, amount] as const]
  })
}

/** What is there of a duty, whatever else it serves. */
const thereTerms = ({ candidates, parts }: At, duty: string): Term[] =>
  candidates.flatMap(({ covers }, i) => ((covers[duty] ?? 0) === 0 ? [] : x(parts[i]!, covers[duty])))

const reservedTerms = ({ candidates, parts }: At, duty: string): Term[] =>
  candidates.flatMap(({ needs }, i) =>
    needs
      .filter((need) => need.kind === 'reserved' && need.duty === duty)
      .flatMap(({ amount, once }) => (once ? taken(parts[i]!, -amount) : x(parts[i]!, -amount))),
  )

function dutyRows(at: At): Row[] {
  const { duties, atMost: limits = [] } = at.wanted
  const reserved = at.candidates.flatMap(({ needs }) => needs.filter(({ kind }) => kind === 'reserved').map(({ duty }) => duty))
  const asked = [...new Set([...Object.keys(duties), ...reserved])]
  return [
    ...asked.map((duty) => atLeast(duty, `duty:${dutyOf(duty)}`, [...coverTerms(at, duty), ...reservedTerms(at, duty)], duties[duty] ?? 0)),
    ...limits.map(({ duty, amount }) => atMost(`at most ${amount} ${duty}`, `most:${dutyOf(duty)}`, thereTerms(at, duty), amount)),
  ]
}

function needRows(at: At): Row[] {
  return at.candidates.flatMap(({ id, needs }, i) =>
    needs
      .filter(({ kind }) => kind === 'shared')
      .map(({ duty, amount, once }) =>
        atLeast(
          `${id} needs ${duty}`,
          `need:${id}:${dutyOf(duty)}`,
          [...coverTerms(at, duty, once ? -1 : i), ...reservedTerms(at, duty), ...taken(at.parts[i]!, -amount)],
          0,
        ),
      ),
  )
}

/** Room and comfortable load: what is worn takes neither. */
function carryRows({ candidates, parts, wanted: { volumeMl, loadDg, slots = {} } }: At): Row[] {
  const inPack = (i: number, coefficient: number): Term[] => (parts[i]!.q === null ? [] : [[parts[i]!.q, coefficient]])
  const rows: Row[] = []
  if (volumeMl !== undefined) {
    const terms = candidates.flatMap(({ packMl = 0, volumeMl: own = 0 }, i) => inPack(i, packMl - own))
    rows.push(atLeast('room in the pack', 'volume', terms, volumeMl))
  }
  if (loadDg !== undefined) {
    const terms = candidates.flatMap(({ packLoadDg = 0, massDg }, i) => inPack(i, packLoadDg - massDg))
    rows.push(atLeast('load on the pack', 'load', terms, loadDg))
  }
  for (const [slot, capacity] of Object.entries(slots)) {
    const terms = candidates.flatMap((one, i): Term[] => (one.slot === slot && parts[i]!.w !== null ? [[parts[i]!.w, 1]] : []))
    rows.push(atMost(`worn: ${slot}`, `slot:${slot}`, terms, capacity))
  }
  return rows
}

/** Warm from below, a top that tonight's warmth is counted on, and the ground it asks. */
function bedRows({ candidates, parts, wanted: { groundR } }: At): Row[] {
  if (groundR === undefined) return []
  const pads = candidates.flatMap(({ padR = 0 }, i) => x(parts[i]!, padR))
  const tops = parts.flatMap(({ s }): Term[] => (s === null ? [] : [[s, 1]]))
  const asked = parts.flatMap(({ s }, i): Term[] => (s === null ? [] : [[s, -(candidates[i]!.topAsksR ?? 0)]]))
  return [
    atLeast('warm from below', 'ground', pads, groundR),
    atLeast('a top', 'top', tops, 1),
    atLeast('warm asleep', 'sleep', [...pads, ...asked], 0),
  ]
}

function personRows({ parts, index, wanted: { exclude = [], pinIn = {} } }: At): Row[] {
  const groups = exclude.map((ids) => ids.flatMap((id) => index.get(id) ?? [])).filter((group) => group.length > 1)
  return [
    ...groups.map((group, n) =>
      atMost(
        'not both',
        `exclude:${n}`,
        group.flatMap((i) => taken(parts[i]!)),
        1,
      ),
    ),
    ...Object.entries(pinIn).map(([id, pieces]) => {
      const i = index.get(id)
      return atLeast(`${id} pinned`, `in:${id}`, i === undefined ? [] : x(parts[i]!), pieces)
    }),
  ]
}

function alsoRows({ parts, index, usedUp, wanted: { also = [] } }: At): Row[] {
  return also.map(({ demand, terms, low }) => {
    const made = terms.flatMap(({ id, of, coefficient }): Term[] => {
      if (id === USED_UP) return usedUp === null ? [] : [[usedUp, coefficient] as const]
      const i = index.get(id)
      if (i === undefined) return []
      return of === 'taken' ? taken(parts[i]!, coefficient) : x(parts[i]!, coefficient)
    })
    return atLeast(demand, demand, made, low)
  })
}
