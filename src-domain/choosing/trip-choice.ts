import type { Asked } from '../checks/check.ts'
import type { KitItem, Line, Loadout } from '../loadout/loadout.ts'
import { nameOf } from '../loadout/mass.ts'
import type { Lane } from '../closet/vocabulary.ts'
import type { Principle } from '../trips/walker.ts'
import type { Candidate } from './candidate.ts'

/**
 * What may be chosen for a trip, from what is owned.
 *   stays: what is used up, with its containers; what is worn; what another carries. The rest of the pack is chosen.
 * A candidate is an item in one lane: that of the loadout, else its usual one. Masses are counted in whole tenths of a gram, each rounded up,
 * to choose; what is shown is worked out again from milligrams.
 */
export interface Choosing {
  readonly asked: Asked
  /** Items owned that may go, and their usual lanes. */
  readonly closet: readonly { readonly item: KitItem; readonly usualLane: Lane; readonly materials: readonly string[] }[]
  /** Past verdicts that keep an item at home under these conditions. */
  readonly banned: readonly { readonly uid: string; readonly why: string }[]
  readonly principles: readonly Principle[]
  readonly pinIn: readonly string[]
  readonly pinOut: readonly string[]
  /** Every want too, not only every must. */
  readonly wants: boolean
  /** Tight is allowed. */
  readonly notShort: boolean
  readonly wornFactor: number
}

export interface Choice {
  readonly item: KitItem
  readonly lane: Lane
  readonly candidate: Candidate
}

/** Why an item that is owned is no candidate. */
export type Reason = 'no-mass' | 'verdict' | 'principle' | 'pinned-out' | 'lent'
export interface LeftOut {
  readonly uid: string
  readonly name: string
  readonly reason: Reason
  /** The verdict's word, or the principle. */
  readonly why: string
}

export interface Field {
  readonly choices: readonly Choice[]
  /** Lines that stay whatever is chosen, and are no candidates: supplies, and what another carries. */
  readonly fixed: readonly Line[]
  /** Ids of candidates that stay: worn, containers of supplies, and what the person pinned. */
  readonly stays: ReadonlyMap<string, 'worn' | 'container' | 'pinned'>
  readonly leftOut: readonly LeftOut[]
}

export const choiceId = (uid: string, lane: Lane): string => `${uid}:${lane}`

export function fieldOf(choosing: Choosing): Field {
  const { asked, closet, pinIn, pinOut } = choosing
  const { lines } = asked.loadout
  const fixed = lines.filter((line) => line.kind === 'supply' || line.carriedBy !== '')
  const holders = new Set(fixed.flatMap((line) => (line.kind === 'supply' && line.container !== null ? [line.container.uid] : [])))
  const choices: Choice[] = []
  const leftOut: LeftOut[] = []
  const stays = new Map<string, 'worn' | 'container' | 'pinned'>()
  for (const { item, usualLane, materials } of closet) {
    const there = lines.filter((line) => line.kind === 'item' && line.carriedBy === '' && line.item.uid === item.uid)
    const isStaying = there.some(({ lane }) => lane === 'on_me') || holders.has(item.uid) || pinIn.includes(item.uid)
    const out = pinOut.includes(item.uid) ? ('pinned-out' as const) : isStaying ? null : reasonOf(item, materials, choosing)
    if (out !== null) {
      leftOut.push({
        uid: item.uid,
        name: item.name,
        reason: typeof out === 'string' ? out : out.reason,
        why: typeof out === 'string' ? '' : out.why,
      })
      continue
    }
    const lanes = there.length > 0 ? [...new Set(there.map(({ lane }) => lane))] : [usualLane]
    for (const lane of lanes) {
      const worn = there.find((line) => line.lane === 'on_me')
      const pieces = lane === 'on_me' && worn?.kind === 'item' ? worn.pieces : item.pieces
      choices.push({ item, lane, candidate: bare(item, lane, pieces) })
      const id = choiceId(item.uid, lane)
      if (pinIn.includes(item.uid)) stays.set(id, 'pinned')
      else if (lane === 'on_me' && worn !== undefined) stays.set(id, 'worn')
      else if (holders.has(item.uid)) stays.set(id, 'container')
    }
  }
  return { choices, fixed, stays, leftOut }
}

/** Mass and place alone; what it serves is added by what is asked. */
function bare(item: KitItem, lane: Lane, pieces: number): Candidate {
  return {
    id: choiceId(item.uid, lane),
    massDg: item.mass === null ? 0 : Math.ceil(item.mass.value * 10 - 1e-6),
    pieces,
    place: lane === 'on_me' ? 'me' : 'pack',
    usedUp: lane === 'used_up',
    covers: {},
    needs: [],
  }
}

type Out = { readonly reason: Reason; readonly why: string }

function reasonOf(item: KitItem, materials: readonly string[], { banned, principles }: Choosing): Out | null {
  if (item.status !== 'owned') return { reason: 'lent', why: item.lentTo }
  if (item.mass === null) return { reason: 'no-mass', why: '' }
  const verdict = banned.find(({ uid }) => uid === item.uid)
  if (verdict !== undefined) return { reason: 'verdict', why: verdict.why }
  const against = principles.find((principle) => isAgainst(principle, item, materials))
  return against === undefined ? null : { reason: 'principle', why: against }
}

/** Words by which a material or a fill is told (as people write them). */
const fibres = /\b(wool|merino|silk|down|leather|fur|feather)\b/i

/** What an item is made of, or burns, goes against a principle. What is not said goes against none. */
export function isAgainst(principle: Principle, item: KitItem, materials: readonly string[]): boolean {
  const text = (code: string) => item.traits.find((trait) => trait.code === code)?.text ?? ''
  const made = (words: RegExp) => materials.some((material) => words.test(material))
  switch (principle) {
    case 'no-down':
      return text('fill') === 'down' || made(/\b(down|feather)\b/i)
    case 'no-animal-fibre':
      return text('fill') === 'down' || made(fibres)
    case 'no-fluorinated-finish':
      return made(/fluor|pfas|pfc/i)
    case 'no-open-flame':
      return ['alcohol', 'solid', 'wood'].includes(text('fuels'))
    case 'no-throwaways':
      return made(/throw-?away|single.use|disposable/i)
  }
}

/** The loadout that a choice makes: what stays, and each thing chosen in its lane. Lines that were there keep their ids and notes. */
export function loadoutWith(
  asked: Asked,
  { fixed, choices }: Pick<Field, 'fixed' | 'choices'>,
  pieces: ReadonlyMap<string, number>,
): Loadout {
  let made = Math.min(0, ...asked.loadout.lines.map(({ id }) => id))
  const lines = choices.flatMap(({ item, lane, candidate }): readonly Line[] => {
    const count = pieces.get(candidate.id) ?? 0
    if (count === 0) return []
    const there = asked.loadout.lines.find(
      (line) => line.kind === 'item' && line.carriedBy === '' && line.lane === lane && line.item.uid === item.uid,
    )
    if (there?.kind === 'item') return [there.pieces === count ? there : { ...there, pieces: count }]
    return [{ kind: 'item', id: --made, lane, carriedBy: '', note: '', item, pieces: count }]
  })
  // In the order of the loadout, then what comes in: the checks read the first of several.
  const order = new Map(asked.loadout.lines.map(({ id }, i) => [id, i]))
  const sorted = [...fixed, ...lines].sort(
    (a, b) => (order.get(a.id) ?? 1e6) - (order.get(b.id) ?? 1e6) || nameOf(a).localeCompare(nameOf(b), 'en'),
  )
  return { ...asked.loadout, lines: sorted }
}
