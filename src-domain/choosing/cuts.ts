/**
 * Rows that a check which is not met adds to the model, so that this choice and all that fail for the same cause are left out and nothing else.
 *   At least one of what could mend it comes in, or one of what stands in its way goes.
 *   What helps (reads.ts) is added as long as the check still fails, and what hurts is taken away: the row then speaks only of the rest.
 * Room and water are sums: their rows are exact. The doubt of a sum of rooms is a length, which lies above each of its tangents:
 *   ‖a·x‖ ≥ Σ ai²·xi*·xi/‖a·x*‖        (outer approximation, choosing.md 3.4)
 * A row that was of no use before leaves out this one choice alone.
 */
import { difference, uncertainty } from '../figures/figure.ts'
import type { Check, Found } from '../checks/check.ts'
import { isPack, roomOf } from '../checks/packed-things.ts'
import { COMFORT_SHARE } from '../laws/pack-comfort.ts'
import { MEASURED_U_SHARE, PACK_U_SHARE, ROOM_MARGIN, SOFT_FILL } from '../laws/packed-volume.ts'
import { traitNumber, traitOf, type KitItem } from '../loadout/loadout.ts'
import type { AlsoRow } from './candidate.ts'
import { changesUsedUp, readsOf } from './reads.ts'
import type { Level, Pieces, Trial } from './trial.ts'
import type { Choice } from './trip-choice.ts'

type Term = AlsoRow['terms'][number]

/** The demands of one check, each less than the one before. All given up, it is not asked. */
export const demandOf = ({ id }: Pick<Check, 'id'>, level: Level): string => `${demandKinds[level]}:${id}`
const demandKinds: Readonly<Record<Level, string>> = { enough: 'check', 'not-short': 'tight', 'as-now': 'worse' }

export interface CutGround {
  readonly trial: Trial
  readonly choices: readonly Choice[]
  /** Candidates that leave this check unknown: never counted on to mend it. */
  readonly silent: ReadonlySet<string>
  /** Of each of these groups at most one goes anyway. */
  readonly oneOf: readonly ReadonlySet<string>[]
  readonly level: Level
}

export function cutFor(check: Check, pieces: Pieces, ground: CutGround): AlsoRow {
  const finding = ground.trial.find(check, pieces)
  if ('have' in finding && check.id === 'water-carry' && ground.level !== 'as-now') return waterRow(check, finding, ground)
  if ('have' in finding && check.id === 'room' && ground.level !== 'as-now') return roomRow(check, finding, pieces, ground)
  if ('have' in finding && check.id === 'pack-load' && ground.level !== 'as-now') return loadRow(check, finding, pieces, ground)
  if (check.id === 'room' || check.id === 'pack-load')
    return 'have' in finding ? onlyThis(check, pieces, ground) : aPack(check, pieces, ground)
  return causeRow(check, pieces, ground)
}

/** Neither is answered without a pack. */
function aPack(check: Check, pieces: Pieces, ground: CutGround): AlsoRow {
  const packs = ground.choices.filter(({ item, candidate: { id } }) => isPack(item) && !ground.silent.has(id))
  if (packs.some(({ candidate: { id } }) => taken(pieces, id))) return onlyThis(check, pieces, ground)
  return needsOneOf(
    demandOf(check, ground.level),
    packs.map(({ candidate: { id } }) => ({ id, comes: true })),
  )
}

/** Leaves out one choice and no other. */
export function onlyThis(check: Check, pieces: Pieces, { choices, level }: Pick<CutGround, 'choices' | 'level'>): AlsoRow {
  return needsOneOf(
    demandOf(check, level),
    choices.map(({ candidate: { id } }) => ({ id, comes: !taken(pieces, id) })),
  )
}

const taken = (pieces: Pieces, id: string): boolean => (pieces.get(id) ?? 0) > 0

interface Change {
  readonly id: string
  /** It comes in; false: it goes. */
  readonly comes: boolean
}

function needsOneOf(demand: string, changes: readonly Change[]): AlsoRow {
  const going = changes.filter(({ comes }) => !comes).length
  return {
    demand,
    terms: changes.map(({ id, comes }): Term => ({ id, of: 'taken', coefficient: comes ? 1 : -1 })),
    low: 1 - going,
  }
}

function causeRow(check: Check, pieces: Pieces, { trial, choices, silent, oneOf, level }: CutGround): AlsoRow {
  const reads = readsOf[check.id]!
  const extreme = new Map(pieces)
  const helping: Choice[] = []
  const changes: Change[] = []
  const fails: Fails = (pieces) => !trial.isMet(check, pieces, level)
  for (const choice of choices) {
    const { id } = choice.candidate
    const way = reads(choice.item)
    if (way === null || silent.has(id)) continue
    if (way === 'helps') helping.push(choice)
    else if (taken(pieces, id)) {
      if (way === 'hurts' && fails(new Map(extreme).set(id, 0))) extreme.set(id, 0)
      else changes.push({ id, comes: false })
    } else if (way === 'either' && !oneOf.some((group) => group.has(id) && [...group].some((other) => taken(pieces, other))))
      changes.push({ id, comes: true })
  }
  return needsOneOf(demandOf(check, level), [...changes, ...helpersNeeded(fails, extreme, helping)])
}

type Fails = (pieces: Pieces) => boolean

/** What helps and is still needed when all that is of no use has been added: all at once if even that fails, else one after another. */
function helpersNeeded(fails: Fails, extreme: Map<string, number>, helping: readonly Choice[]): readonly Change[] {
  const all = new Map(extreme)
  for (const { candidate } of helping) all.set(candidate.id, candidate.pieces)
  if (fails(all)) return []
  const needed: Change[] = []
  // The heavy ones first: what is left as a mender is then light, and the bound tight.
  for (const { candidate } of [...helping].sort((a, b) => b.candidate.massDg - a.candidate.massDg)) {
    const { id, pieces } = candidate
    if (fails(new Map(extreme).set(id, pieces))) extreme.set(id, pieces)
    else if (!taken(extreme, id)) needed.push({ id, comes: true })
    else needed.push(...morePieces(id))
  }
  return needed
}

/** More pieces of a thing that goes already: it has no column of its own, so the row asks for it as if it came in anew (never too much). */
const morePieces = (id: string): readonly Change[] => [{ id, comes: true }]

const asked = ({ need, enough, have }: Found, level: Level): number => {
  if (level === 'not-short') return need.value
  const u = uncertainty(difference('have − need', { name: 'have', figure: have }, { name: 'need', figure: need }))
  return Math.max(enough.value, need.value + u)
}

function waterRow(check: Check, finding: Found, { choices, level }: CutGround): AlsoRow {
  const ml = (item: KitItem) => Math.round((traitNumber(item, 'water-capacity') ?? 0) * 1000)
  return {
    demand: demandOf(check, level),
    terms: choices.map(({ candidate: { id }, item }): Term => ({ id, of: 'pieces', coefficient: ml(item) })),
    low: Math.ceil(asked(finding, level) * 1000 - 1e-6),
  }
}

/** Room of one piece inside the pack, over the share of it that can be filled, and its doubt; ml. */
function roomMl({ item, lane }: Choice): { readonly ml: number; readonly u: number } {
  if (lane === 'on_me') return { ml: 0, u: 0 }
  const room = roomOf({ kind: 'item', id: 0, lane, carriedBy: '', note: '', item, pieces: 1 })
  if (!room.ok || room.litres === null) return { ml: 0, u: 0 }
  return { ml: (room.litres.value * 1000) / SOFT_FILL, u: (uncertainty(room.litres) * 1000) / SOFT_FILL }
}

function packMl({ item }: Choice): { readonly ml: number; readonly u: number } {
  const trait = isPack(item) ? traitOf(item, 'pack-volume') : undefined
  const ml = (trait?.number ?? 0) * 1000
  return { ml, u: ml * (trait?.origin === 'measured' ? MEASURED_U_SHARE : PACK_U_SHARE) }
}

/** The larger of reserve and doubt rules: two rows would be exact, the one that this choice breaks most is added. */
function roomRow(check: Check, { have, need }: Found, pieces: Pieces, { choices, level }: CutGround): AlsoRow {
  const notShort = level === 'not-short'
  const net = difference('have − need', { name: 'have', figure: have }, { name: 'need', figure: need })
  const u = uncertainty(net) * 1000
  const reserve = notShort ? 0 : need.value * ROOM_MARGIN * 1000
  const byDoubt = !notShort && u > reserve
  const own = choices.map((choice) => ({
    id: choice.candidate.id,
    count: pieces.get(choice.candidate.id) ?? 0,
    room: roomMl(choice),
    pack: packMl(choice),
  }))
  // What food and water take: what the things chosen do not.
  const suppliesMl = need.value * 1000 - own.reduce((sum, { count, room }) => sum + count * room.ml, 0)
  const restU = byDoubt ? u - own.reduce((sum, { count, room, pack }) => sum + (count * (room.u ** 2 + pack.u ** 2) * count) / u, 0) : 0
  const margin = notShort || byDoubt ? 1 : 1 + ROOM_MARGIN
  const tangent = (side: { readonly u: number }, count: number) => (byDoubt ? (side.u ** 2 * count) / u : 0)
  return {
    demand: demandOf(check, level),
    // Rounded so that nothing is left out that fits.
    terms: own.map(({ id, count, room, pack }): Term => ({
      id,
      of: 'pieces',
      coefficient: Math.ceil(pack.ml - tangent(pack, count) - room.ml * margin - tangent(room, count)),
    })),
    low: Math.floor(suppliesMl * margin + restU),
  }
}

/**
 * Comfort of the pack less all that is in it, with what is used up as it is with this stove, these vessels and lamps; any other may have less:
 * down to what nothing chosen leaves. Food counts at its least, for a light kit asks for less of it.
 */
function loadRow(check: Check, { have }: Found, pieces: Pieces, { trial, choices, level }: CutGround): AlsoRow {
  const inPack = choices.filter(({ lane }) => lane !== 'on_me')
  const kitG = inPack.reduce((sum, { item, candidate }) => sum + (item.mass?.value ?? 0) * (pieces.get(candidate.id) ?? 0), 0)
  const lessFoodG = trial.foodG(pieces) - trial.foodG(new Map())
  const usedUpDg = Math.floor((have.value * 1000 - kitG - Math.max(0, lessFoodG)) * 10)
  const over = Math.max(0, usedUpDg - trial.leastUsedUpDg())
  const changing = choices.filter(({ item }) => changesUsedUp(item) !== null).map(({ candidate: { id } }) => id)
  const inside = changing.filter((id) => taken(pieces, id))
  return {
    demand: demandOf(check, level),
    terms: [
      ...loadTerms(choices, level),
      ...changing.map((id): Term => ({ id, of: 'taken', coefficient: taken(pieces, id) ? -over : over })),
    ],
    low: usedUpDg - over * inside.length,
  }
}

/** What each thing in the pack takes of its comfort, and each pack brings; a tenth of a gram was rounded up for each. */
export function loadTerms(choices: readonly Choice[], level: Level): readonly Term[] {
  const comfortDg = (item: KitItem) =>
    Math.ceil((traitNumber(item, 'comfortable-load') ?? 0) * 10_000 * (level === 'enough' ? COMFORT_SHARE : 1))
  return choices
    .filter(({ lane }) => lane !== 'on_me')
    .map(({ item, candidate: { id, massDg } }) => ({
      id,
      of: 'pieces',
      coefficient: (isPack(item) ? comfortDg(item) : 0) - Math.max(0, massDg - 1),
    }))
}
