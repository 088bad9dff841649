/**
 * The lightest choice that the rail itself calls enough: solve, ask every check, add a row for each that is not met, and again until all are.
 * Each row leaves out only choices that fail (cuts.ts), so the first choice that passes is the lightest of all.
 */
import type { Check, Saying } from '../checks/check.ts'
import { checks } from '../checks/index.ts'
import { traitNumber } from '../loadout/loadout.ts'
import { USED_UP, type AlsoRow, type Candidate, type Wanted } from './candidate.ts'
import { cutFor, demandOf, loadTerms, onlyThis, type CutGround } from './cuts.ts'
import { formulate, takenOf, type Taken } from './formulate.ts'
import type { Solve } from './model.ts'
import { changesUsedUp, readsOf } from './reads.ts'
import { Trial, briefFor, type Level, type Pieces } from './trial.ts'
import { dutyDemands, type DutyDemands } from './trip-duties.ts'
import { fieldOf, type Choice, type Choosing, type Field } from './trip-choice.ts'

/** A check that is asked of the choice, and the candidates that would leave it unknown. */
export interface Demanded {
  readonly check: Check
  readonly silent: ReadonlyMap<string, Saying>
}

export interface Prepared {
  readonly choosing: Choosing
  readonly field: Field
  readonly demanded: readonly Demanded[]
  /** Checks that cannot be asked yet, and what is missing. */
  readonly unasked: readonly { readonly check: Check; readonly missing: Saying }[]
  readonly asks: DutyDemands['asks']
  readonly candidates: readonly Candidate[]
  readonly wanted: Wanted
}

export function prepare(choosing: Choosing): Prepared {
  const bareField = fieldOf(choosing)
  const stays = { ...choosing.asked, brief: briefFor(choosing), loadout: { ...choosing.asked.loadout, lines: bareField.fixed } }
  const { choices, duties, supplies, asks } = dutyDemands(stays, bareField.choices, choosing.asked.loadout)
  const field = { ...bareField, choices }
  const trial = new Trial(choosing, field)
  const asked = checks.filter(({ id }) => readsOf[id] !== undefined).map((check) => askable(check, trial, field, asks))
  const demanded = asked.flatMap((one) => ('silent' in one ? [one] : []))
  const unasked = asked.flatMap((one) => ('missing' in one ? [one] : []))
  const wanted = wantedOf(choosing, field, { duties, supplies }, demanded, trial)
  return { choosing, field, demanded, unasked, asks, candidates: [...choices.map(({ candidate }) => candidate), ...supplies], wanted }
}

/** Asked of everything at once; what leaves it unknown is put aside, one after another, until it answers or nothing more can be put aside. */
function askable(
  check: Check,
  trial: Trial,
  { choices, stays }: Field,
  asks: DutyDemands['asks'],
): Demanded | { readonly check: Check; readonly missing: Saying } {
  const pieces = new Map(choices.map(({ candidate }) => [candidate.id, candidate.pieces]))
  const silent = new Map<string, Saying>()
  for (;;) {
    const finding = trial.find(check, pieces)
    if (finding.state !== 'unknown')
      return silent.size > 0 && isNeeded(silent, choices, stays, asks) ? { check, missing: [...silent.values()][0]! } : { check, silent }
    const name = finding.missing.facts?.['name']
    const culprits = choices.filter(
      ({ item, candidate }) => item.name === name && pieces.has(candidate.id) && readsOf[check.id]!(item) !== null,
    )
    if (culprits.length === 0) return { check, missing: [...silent.values()][0] ?? finding.missing }
    for (const { candidate } of culprits) {
      silent.set(candidate.id, finding.missing)
      pieces.delete(candidate.id)
    }
  }
}

/** It stays whatever is chosen, or without it an asked duty has nothing left. */
function isNeeded(
  silent: ReadonlyMap<string, Saying>,
  choices: readonly Choice[],
  stays: Field['stays'],
  asks: DutyDemands['asks'],
): boolean {
  if ([...silent.keys()].some((id) => stays.has(id))) return true
  return asks.some(({ duty }) => {
    const serving = choices.filter(({ item }) => item.duties.some((one) => one.duty === duty))
    return serving.length > 0 && serving.every(({ candidate }) => silent.has(candidate.id))
  })
}

function wantedOf(
  choosing: Choosing,
  field: Field,
  { duties, supplies }: Pick<DutyDemands, 'duties' | 'supplies'>,
  demanded: readonly Demanded[],
  trial: Trial,
): Wanted {
  const { choices, stays } = field
  const pins = choices.filter(({ candidate }) => stays.has(candidate.id))
  return {
    duties,
    atMost: [
      { duty: 'pack@walking', amount: Math.max(1, pins.filter(({ item }) => item.duties.some(({ duty }) => duty === 'pack')).length) },
    ],
    pinIn: Object.fromEntries([...pins.map(({ candidate }) => candidate), ...supplies].map(({ id, pieces }) => [id, pieces])),
    wornFactor: choosing.wornFactor,
    usedUpDg: trial.usedUpDg(new Map()),
    also: [
      ...lanesTogether(choices),
      ...oneTop(choices),
      ...demanded.flatMap(({ check, silent }) => [...silent.keys()].map((id): AlsoRow => notTaken(check, id))),
      ...(demanded.some(({ check }) => check.id === 'pack-load')
        ? [loadRow(choices, 'enough', trial), loadRow(choices, 'not-short', trial)]
        : []),
    ],
  }
}

/** An item in two lanes: never more pieces than are owned. */
function lanesTogether(choices: readonly Choice[]): readonly AlsoRow[] {
  const byItem = Map.groupBy(choices, ({ item }) => item.uid)
  return [...byItem.values()].filter((lanes) => lanes.length > 1).map((lanes) => atMost('owned', lanes, lanes[0]!.item.pieces, 'pieces'))
}

const isRatedTop = ({ item }: Choice): boolean =>
  item.duties.some(({ duty }) => duty === 'top-insulation') && traitNumber(item, 'rated-temperature') !== null

/** Nested tops are at best tight (sleep-warmth): one alone can be enough. */
function oneTop(choices: readonly Choice[]): readonly AlsoRow[] {
  const tops = choices.filter(isRatedTop)
  return tops.length > 1 ? [atMost('check:sleep-warmth', tops, 1, 'taken')] : []
}

const atMost = (demand: string, choices: readonly Choice[], most: number, of: 'taken' | 'pieces'): AlsoRow => ({
  demand,
  terms: choices.map(({ candidate: { id } }) => ({ id, of, coefficient: -1 })),
  low: -most,
})

const notTaken = (check: Check, id: string): AlsoRow => ({
  demand: demandOf(check, 'not-short'),
  terms: [{ id, of: 'taken', coefficient: -1 }],
  low: 0,
})

/** The pack's share of its comfort, less all that is in it; food, water and fuel at their least (with nothing chosen). */
const loadRow = (choices: readonly Choice[], level: Level, trial: Trial): AlsoRow => ({
  demand: demandOf({ id: 'pack-load' }, level),
  terms: loadTerms(choices, level),
  low: trial.leastUsedUpDg(),
})

export interface Change {
  /** Demands given up: `duty:…`, `check:…`. */
  readonly without?: readonly string[]
  /** Candidates that stay at home, and that go. */
  readonly out?: readonly string[]
  readonly in?: readonly string[]
  readonly also?: readonly AlsoRow[]
}

export type Settled =
  | {
      readonly kind: 'found'
      readonly pieces: Pieces
      readonly countedDg: number
      readonly proven: boolean
      readonly gapDg: number
      readonly rounds: number
    }
  | { readonly kind: 'none' }
  | { readonly kind: 'unsettled'; readonly why: string }

/** Rows found before. What fails with some duties struck fails with fewer struck: a row holds wherever no others are. */
export type Pool = Map<string, { readonly row: AlsoRow; readonly struck: readonly string[] | 'any' }>

export const rowsIn = (pool: Pool, struck: readonly string[]): readonly AlsoRow[] =>
  [...pool.values()].filter((one) => one.struck === 'any' || struck.every((duty) => one.struck.includes(duty))).map(({ row }) => row)

/** Checks that read which duties were struck. */
const readsStruck: ReadonlySet<string> = new Set(
  ['duties', 'safety', 'sleep-warmth', 'ground-warmth'].flatMap((id) =>
    (['enough', 'not-short', 'as-now'] as const).map((level) => demandOf({ id }, level)),
  ),
)

const MOST_ROUNDS = 150

/** Where tight is allowed, that a check is enough is given up for all of them. */
export const givenUp = ({ choosing, demanded }: Prepared, { without = [] }: Change): readonly string[] =>
  choosing.notShort ? [...new Set([...without, ...demanded.map(({ check }) => demandOf(check, 'enough'))])] : without

interface Leveled extends Demanded {
  readonly level: Level
}

const leveled = ({ demanded }: Prepared, without: readonly string[]): readonly Leveled[] =>
  demanded.flatMap((one): readonly Leveled[] => {
    if (!without.includes(demandOf(one.check, 'enough'))) return [{ ...one, level: 'enough' }]
    if (!without.includes(demandOf(one.check, 'not-short'))) return [{ ...one, level: 'not-short' }]
    return without.includes(demandOf(one.check, 'as-now')) ? [] : [{ ...one, level: 'as-now' }]
  })

function piecesOf({ field }: Prepared, taken: readonly Taken[]): Pieces {
  const things = new Set(field.choices.map(({ candidate }) => candidate.id))
  return new Map(taken.filter(({ id }) => things.has(id)).map(({ id, inPack, onMe }) => [id, inPack + onMe]))
}

export function settle(prepared: Prepared, change: Change, solve: Solve, pool: Pool): Settled {
  const { choosing, field, candidates } = prepared
  const without = givenUp(prepared, change)
  const struck = without.filter((demand) => demand.startsWith('duty:')).map((demand) => demand.slice(5))
  const trial = new Trial(choosing, field, struck)
  const demanded = leveled(prepared, without)
  const seen = new Set<string>()
  let loose = false
  for (let rounds = 1; rounds <= MOST_ROUNDS; rounds++) {
    const wanted = wantedWith(prepared.wanted, { ...change, without }, rowsIn(pool, struck))
    const model = formulate(candidates, wanted)
    const solved = solve(model)
    if (solved.kind === 'infeasible') return { kind: 'none' }
    if (solved.kind === 'unsettled') return solved
    const pieces = piecesOf(prepared, takenOf(model, solved.values))
    const usedUpDg = solved.values[model.columns.findIndex(({ name }) => name === 'what is used up')] ?? 0
    const { rows, isLoose } = rowsFor(prepared, demanded, trial, pieces, usedUpDg, seen)
    loose ||= isLoose
    if (rows.length === 0) {
      const proven = solved.kind === 'optimal' && !loose
      return {
        kind: 'found',
        pieces,
        countedDg: countedOf(candidates, pieces, wanted, usedUpDg),
        proven,
        gapDg: solved.kind === 'best' ? solved.gap : 0,
        rounds,
      }
    }
    for (const row of rows)
      pool.set(`${struck.join()} ${JSON.stringify(row)}`, { row, struck: readsStruck.has(row.demand) ? struck : 'any' })
  }
  return { kind: 'unsettled', why: `${MOST_ROUNDS} rounds were not enough` }
}

function wantedWith(wanted: Wanted, { without = [], out = [], in: inside = [], also = [] }: Change, rows: readonly AlsoRow[]): Wanted {
  return {
    ...wanted,
    without,
    pinOut: out,
    pinIn: {
      ...Object.fromEntries(Object.entries(wanted.pinIn ?? {}).filter(([id]) => !out.includes(id))),
      ...Object.fromEntries(inside.map((id) => [id, 1])),
    },
    also: [...(wanted.also ?? []), ...rows, ...also],
  }
}

function countedOf(candidates: readonly Candidate[], pieces: Pieces, { wornFactor = 0 }: Wanted, usedUpDg: number): number {
  return candidates.reduce(
    (sum, { id, massDg, place }) => sum + (pieces.get(id) ?? 0) * massDg * (place === 'me' ? wornFactor : 1),
    usedUpDg,
  )
}

interface RowsFound {
  readonly rows: readonly AlsoRow[]
  /** A row had to speak of things as taken or not while it is their pieces that count: what is then the lightest is not proven. */
  readonly isLoose: boolean
}

function rowsFor(
  prepared: Prepared,
  demanded: readonly Leveled[],
  trial: Trial,
  pieces: Pieces,
  usedUpDg: number,
  seen: Set<string>,
): RowsFound {
  const { choices } = prepared.field
  let isLoose = false
  const failing = demanded.filter(({ check, level }) => !trial.isMet(check, pieces, level))
  const rows = failing.map((one) => {
    const { check } = one
    const ground = groundOf(prepared, one, trial)
    const row = cutFor(check, pieces, ground)
    const key = JSON.stringify(row)
    const isNew = !seen.has(key) && !isKept(row, pieces)
    seen.add(key)
    if (isNew) return row
    // Rounding, or pieces: this choice alone is left out.
    isLoose ||= choices.some(
      ({ candidate: { id, pieces: owned } }) => owned > 1 && pieces.has(id) && readsOf[check.id]!(itemOf(choices, id)) !== null,
    )
    return onlyThis(check, pieces, ground)
  })
  const trueDg = trial.usedUpDg(pieces)
  return { rows: trueDg > usedUpDg ? [...rows, usedUpRow(prepared, pieces, trueDg)] : rows, isLoose }
}

const itemOf = (choices: readonly Choice[], id: string) => choices.find(({ candidate }) => candidate.id === id)!.item

/** The choice that was to be left out keeps the row all the same. */
const isKept = ({ terms, low }: AlsoRow, pieces: Pieces): boolean =>
  terms.reduce((sum, { id, of, coefficient }) => {
    const count = pieces.get(id) ?? 0
    return sum + coefficient * (of === 'taken' ? Math.min(1, count) : count)
  }, 0) >= low

function groundOf({ field }: Prepared, { silent, level }: Leveled, trial: Trial): CutGround {
  const group = (of: (choice: Choice) => boolean) => new Set(field.choices.filter(of).map(({ candidate }) => candidate.id))
  const packs = group(({ item }) => item.duties.some(({ duty }) => duty === 'pack'))
  return {
    trial,
    choices: field.choices,
    silent: new Set(silent.keys()),
    oneOf: [packs, ...(level === 'enough' ? [group(isRatedTop)] : [])],
    level,
  }
}

/** With just this stove, pot, screen, lamps and means of treatment, what is used up weighs at least so much. */
function usedUpRow({ field, wanted }: Prepared, pieces: Pieces, trueDg: number): AlsoRow {
  const over = trueDg - (wanted.usedUpDg ?? 0)
  const read = field.choices.filter(({ item }) => changesUsedUp(item) !== null).map(({ candidate }) => candidate.id)
  const inside = read.filter((id) => (pieces.get(id) ?? 0) > 0)
  const terms = read.map((id) => ({ id, of: 'taken' as const, coefficient: inside.includes(id) ? -over : over }))
  return { demand: 'used up', terms: [{ id: USED_UP, of: 'pieces', coefficient: 1 }, ...terms], low: trueDg - over * inside.length }
}
