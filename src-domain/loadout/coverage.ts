import { dutyByCode, type Moment } from '../closet/vocabulary.ts'
import { goingItems, type Going } from './going.ts'
import { itemLines, supplyLines, traitNumber, traitText, type KitItem, type KitNeed, type KitSupply, type Loadout } from './loadout.ts'

/**
 * Which duties and needs a loadout meets, moment by moment.
 *   A piece serves one duty at a moment, unless its duty is marked shared; the same piece may serve another at another moment.
 *   shared needs and what is asked may stand on the same pieces: the greatest of them counts · reserved needs add up
 * At each moment pieces are dealt to duties so that as much as can be is met (augmenting paths on a bipartite graph with capacities);
 * what comes first in the order given is never given up for what comes later.
 */
export interface Demand {
  readonly duty: string
  readonly pieces: number
  readonly kind: KitNeed['kind']
  /** Whose need it is; null: asked by the trip. */
  readonly holder: Holder | null
  /** Met already by the container that holds the supply. */
  readonly settled: boolean
}

export interface Holder {
  readonly name: string
  readonly uid: string
}

export interface Met {
  readonly demand: Demand
  readonly met: boolean
  /** Moments at which it is not. */
  readonly lacking: readonly Moment[]
  /** Pieces there are at the worst moment, and what reserved ones are held by there. */
  readonly present: number
  readonly heldBy: readonly { readonly name: string; readonly pieces: number }[]
}

/** Pieces that go and may serve. */
type Bin = Pick<Going, 'item' | 'pieces'>

/** Needs of everything in the loadout, in its order, once for each item or supply. */
export function needsOf(loadout: Loadout): readonly Demand[] {
  const seen = new Set<string>()
  return loadout.lines.flatMap((line) => {
    const thing = line.kind === 'item' ? line.item : line.supply
    if (seen.has(thing.uid)) return []
    seen.add(thing.uid)
    const holder = { name: thing.name, uid: thing.uid }
    const needs = line.kind === 'item' ? line.item.needs : supplyNeeds(line.supply)
    const isSettled = (duty: string) => line.kind === 'supply' && vessels.has(duty) && isHeld(line.supply, loadout)
    return needs.map(({ duty, pieces, kind }) => ({ duty, pieces, kind, holder, settled: isSettled(duty) }))
  })
}

/** Duties that the container of a supply covers by holding it. */
const vessels: ReadonlySet<string> = new Set(['fuel-holder', 'water-vessel'])

/** As entered; fuel also needs something to hold it, and water a vessel, said or not. */
function supplyNeeds(supply: KitSupply): readonly KitNeed[] {
  const isFuel = traitNumber(supply, 'heat-value') !== null || traitText(supply, 'gas-mix') !== ''
  const isWater = supply.kitArea === 'water' && supply.unit === 'ml'
  const implied = isFuel ? 'fuel-holder' : isWater ? 'water-vessel' : null
  if (implied === null || supply.needs.some(({ duty }) => duty === implied)) return supply.needs
  return [...supply.needs, { duty: implied, pieces: 1, kind: 'shared' }]
}

/** Every line of the supply is in a container that goes too. */
function isHeld(supply: KitSupply, loadout: Loadout): boolean {
  const going = new Set(itemLines(loadout).map((line) => line.item.uid))
  const lines = supplyLines(loadout).filter((line) => line.supply.uid === supply.uid)
  return lines.every(({ container }) => container !== null && going.has(container.uid))
}

export const askedDemand = (duty: string): Demand => ({ duty, pieces: 1, kind: 'shared', holder: null, settled: false })

/** Meets the demands in their order. `on`: the local date of the trip; what expires before it covers nothing. */
export function meet(loadout: Loadout, demands: readonly Demand[], on: string): readonly Met[] {
  const bins = binsOf(loadout, on)
  const present = piecesByDuty(bins)
  const moments = new Map<Demand, readonly Moment[]>(demands.map((demand) => [demand, momentsOf(demand, loadout)]))
  const lacking = new Map<Demand, Moment[]>(demands.map((demand) => [demand, []]))
  for (const moment of allMoments) {
    const now = demands.filter((demand) => !demand.settled && moments.get(demand)!.includes(moment))
    for (const demand of unmetAt(bins, moment, now)) lacking.get(demand)!.push(moment)
  }
  return demands.map((demand) => {
    const missed = lacking.get(demand)!
    const met = missed.length === 0
    return { demand, met, lacking: missed, present: present.get(demand.duty) ?? 0, heldBy: met ? [] : holders(demand, demands, lacking) }
  })
}

const allMoments: readonly Moment[] = ['walking', 'stop', 'camp', 'night']
/** An own duty has no moments: it is counted once and takes nothing from another. */
const ownMoments: readonly Moment[] = ['camp']

export const dutyMoments = (duty: string): readonly Moment[] => dutyByCode.get(duty)?.moments ?? ownMoments

function momentsOf({ duty, holder }: Demand, loadout: Loadout): readonly Moment[] {
  const line = holder === null ? undefined : loadout.lines.find((one) => one.kind === 'item' && one.item.uid === holder.uid)
  return line?.kind === 'item' ? needMoments(duty, line.item) : dutyMoments(duty)
}

/** A need holds while what has it is in use and the duty it needs has a moment then; where the two never meet, at all of the duty's. */
export function needMoments(duty: string, holder: KitItem): readonly Moment[] {
  const all = dutyMoments(duty)
  const used = new Set(holder.duties.flatMap((one) => dutyMoments(one.duty)))
  const both = all.filter((moment) => used.has(moment))
  return both.length === 0 ? all : both
}

const binsOf = (loadout: Loadout, on: string): readonly Bin[] => goingItems(loadout).filter(({ item }) => !isPast(item, on))

export const isPast = (item: KitItem, on: string): boolean => {
  const expires = traitText(item, 'expires')
  return expires !== '' && expires < on
}

/** Deals the pieces of one moment. Returns the demands that could not be met. */
function unmetAt(bins: readonly Bin[], moment: Moment, demands: readonly Demand[]): readonly Demand[] {
  const deal = new Deal(bins, moment, new Set(demands.map(({ duty }) => duty)))
  return demands.filter((demand) => !deal.meet(demand))
}

interface Source {
  /** Pieces that may serve. */
  readonly pieces: number
  /** Pieces dealt, by duty. A source of a shared duty has that one alone. */
  readonly dealt: Map<string, number>
}

class Deal {
  readonly #byDuty = new Map<string, Source[]>()
  /** Pieces on which shared needs and asked duties stand together. */
  readonly #common = new Map<string, number>()

  constructor(bins: readonly Bin[], moment: Moment, wanted: ReadonlySet<string>) {
    for (const { item, pieces } of bins) {
      const one: Source = { pieces, dealt: new Map() }
      for (const { duty, shared } of item.duties) {
        if (!wanted.has(duty) || !dutyMoments(duty).includes(moment)) continue
        const source = shared || !dutyByCode.has(duty) ? { pieces, dealt: new Map<string, number>() } : one
        const sources = this.#byDuty.get(duty)
        if (sources === undefined) this.#byDuty.set(duty, [source])
        else sources.push(source)
      }
    }
  }

  meet({ duty, pieces, kind }: Demand): boolean {
    const common = this.#common.get(duty) ?? 0
    const more = kind === 'reserved' ? pieces : Math.max(0, pieces - common)
    for (let dealt = 0; dealt < more; dealt++) {
      if (this.#deal(duty, new Set())) continue
      for (let back = 0; back < dealt; back++) this.#takeBack(duty)
      return false
    }
    if (kind === 'shared') this.#common.set(duty, common + more)
    return true
  }

  /** One more piece for a duty: a free one, else one whose present duty can be served by another piece. */
  #deal(duty: string, tried: Set<Source>): boolean {
    for (const source of this.#byDuty.get(duty) ?? []) {
      if (tried.has(source)) continue
      tried.add(source)
      if (dealtOf(source) < source.pieces || this.#free(source, duty, tried)) {
        change(source, duty, 1)
        return true
      }
    }
    return false
  }

  #free(source: Source, duty: string, tried: Set<Source>): boolean {
    for (const [other, count] of source.dealt) {
      if (other === duty || count === 0 || !this.#deal(other, tried)) continue
      change(source, other, -1)
      return true
    }
    return false
  }

  #takeBack(duty: string): void {
    const source = this.#byDuty.get(duty)!.find(({ dealt }) => (dealt.get(duty) ?? 0) > 0)
    change(source!, duty, -1)
  }
}

function dealtOf({ dealt }: Source): number {
  let sum = 0
  for (const count of dealt.values()) sum += count
  return sum
}

const change = ({ dealt }: Source, duty: string, by: number): void => void dealt.set(duty, (dealt.get(duty) ?? 0) + by)

/** For the sentence of a need that is not met: who holds reserved pieces of the same duty. */
function holders(demand: Demand, demands: readonly Demand[], lacking: ReadonlyMap<Demand, readonly Moment[]>): Met['heldBy'] {
  const holds = (other: Demand) =>
    other !== demand && other.duty === demand.duty && other.kind === 'reserved' && other.holder !== null && lacking.get(other)!.length === 0
  return demands.filter(holds).map(({ holder, pieces }) => ({ name: holder!.name, pieces }))
}

/** Pieces there are of each duty, whatever else they serve. */
function piecesByDuty(bins: readonly Bin[]): ReadonlyMap<string, number> {
  const present = new Map<string, number>()
  for (const { item, pieces } of bins) for (const { duty } of item.duties) present.set(duty, (present.get(duty) ?? 0) + pieces)
  return present
}
