import { beforeTrip, type BeforeTrip } from '../../../src-domain/closet/care.ts'
import { letGoLists, replacedBy, type LetGoLists, type Standing } from '../../../src-domain/closet/let-go-lists.ts'
import { marksOf, type TripMark } from '../../../src-domain/closet/let-go-record.ts'
import { sellingOf, type Selling } from '../../../src-domain/closet/letting-go.ts'
import { indexWear, type WearIndex, type WearThing } from '../../../src-domain/closet/wear-facts.ts'
import { lifeShare, wearOf, type CountedWear, type Wear } from '../../../src-domain/closet/wear.ts'
import { resaleCourse } from '../../../src-domain/laws/resale.ts'
import { nightsOf, readBrief } from '../../../src-domain/trips/brief.ts'
import { closet } from '../../state/closet.svelte.ts'
import { kit } from '../../state/kit.svelte.ts'
import { program } from '../../state/program.svelte.ts'
import { recorded } from '../../state/recorded.svelte.ts'

export const WORN_FROM = 0.9
/** Years ahead that holding is weighed over (choice). */
const AHEAD_YEARS = 2

export interface WornOut {
  readonly row: number
  readonly wear: CountedWear
}

/** What a thing would fetch now, as an estimate, and what keeping it costs. */
export interface Worth extends Selling {
  readonly currency: string
  /** The price of hiring for one trip above which keeping is the cheaper way; null: not known. */
  readonly evenHireMinor: number | null
  readonly tripsAhead: number
}

/** Everything the room shows, from record, closet and facts of care. */
class LetGo {
  readonly lists: LetGoLists | null = $derived.by(() => {
    void closet.version
    const { columns, care } = recorded
    if (!closet.loaded || columns === null || care === null) return null
    const weighed = new Map(
      care.items.id.flatMap((id, i) => (care.items.firstWeighedOn[i] ? [[id, care.items.firstWeighedOn[i]] as const] : [])),
    )
    return letGoLists(closet.columns, columns, weighed, this.#today())
  })
  readonly wear: WearIndex | null = $derived(
    recorded.columns === null || recorded.care === null ? null : indexWear(recorded.columns, recorded.care.counters),
  )
  readonly worn: readonly WornOut[] = $derived.by(() => {
    void closet.version
    if (!this.wear || !kit.index) return []
    const { id, status, archived } = closet.columns
    return id
      .flatMap((one, row): readonly WornOut[] => {
        if (status[row] !== 'owned' || archived[row]) return []
        const thing = this.thing(row)
        if (thing === null) return []
        const facts = this.wear!.factsOf(thing, this.#today())
        if ((lifeShare(facts, this.#today()) ?? 0) < WORN_FROM) return []
        const wear = wearOf(facts, this.#today())
        return wear.kind === 'counted' ? [{ row: closet.rowOf(one)!, wear }] : []
      })
      .sort((a, b) => b.wear.share - a.wear.share)
  })
  /** The next planned trip, and what its things want before it. */
  readonly next: { readonly name: string; readonly todo: readonly BeforeTrip[] } | null = $derived.by(() => {
    void closet.version
    const trip = kit.trips
      .filter(({ state, startsOn }) => state === 'planned' && startsOn !== null && startsOn >= this.#today())
      .toSorted((a, b) => a.startsOn!.localeCompare(b.startsOn!))[0]
    if (!trip || !this.wear) return null
    const own = kit.loadouts.filter((one) => one.tripId === trip.id)
    const loadout = own.find((one) => one.chosen) ?? own[0]
    const ids = new Set(kit.planned.filter((line) => line.loadoutId === loadout?.id && line.itemId !== null).map((line) => line.itemId))
    const brief = readBrief(trip.brief)
    const km = brief.legs.reduce((sum, leg) => sum + (leg.lengthM ?? 0), 0) / 1000
    const about = { endsOn: trip.endsOn ?? trip.startsOn!, nights: nightsOf(trip, brief) ?? 0, km }
    const things = [...ids].flatMap((id) => {
      const row = closet.rowOf(id)
      const thing = row === undefined ? null : this.thing(row)
      return thing === null ? [] : [{ row: row!, thing, mark: this.#markOf(id), mendOn: this.#mendOn(id) }]
    })
    return { name: trip.name, todo: beforeTrip(things, this.wear, about, this.#today()) }
  })

  #today(): string {
    return program.state?.today ?? '2000-01-01'
  }

  thing(row: number): WearThing | null {
    const { id, kitArea, cameOn } = closet.columns
    const item = kit.index?.item(id[row]!) ?? null
    if (item === null) return null
    const expires = item.traits.find(({ code }) => code === 'expires')?.text ?? ''
    return {
      id: id[row]!,
      kitArea: kitArea[row]!,
      duties: item.duties.map(({ duty }) => duty),
      traits: item.traits,
      cameOn: cameOn[row]!,
      expiresOn: /^\d{4}-\d{2}-\d{2}$/.test(expires) ? expires : null,
    }
  }

  /** Litres it takes in the pack, where it says so. */
  packedL(row: number): number {
    return kit.index?.item(closet.columns.id[row]!)?.traits.find(({ code }) => code === 'packed-volume')?.number ?? 0
  }

  wearOf(row: number): Wear {
    const thing = this.thing(row)
    return thing === null || !this.wear ? { kind: 'none' } : wearOf(this.wear.factsOf(thing, this.#today()), this.#today())
  }

  marks(row: number): readonly TripMark[] {
    return this.lists === null ? [] : marksOf(this.lists.index, closet.columns, row)
  }

  replacedBy(row: number): number | null {
    return this.lists === null ? null : (replacedBy(this.lists, closet.columns, row)[0] ?? null)
  }

  worth({ row, use, fit }: Pick<Standing, 'row' | 'use' | 'fit'>): Worth | null {
    const { priceMinor, currency, cameOn, kitArea } = closet.columns
    const [price, since] = [priceMinor[row], cameOn[row]]
    if (price == null || since == null) return null
    const wear = this.wearOf(row)
    const years = Math.max(0, (Date.parse(this.#today()) - Date.parse(since)) / (365.2425 * 86_400_000))
    const seen = this.lists!.index.onDay
    const span = seen.length === 0 ? 0 : Math.max(0.25, (Date.parse(this.#today()) - Date.parse(seen[0]!)) / (365.2425 * 86_400_000))
    const tripsAhead = span === 0 ? 0 : (fit / span) * AHEAD_YEARS
    const lifeUsed = wear.kind === 'counted' ? wear.share : 0
    const thing = { price, years, lifeUsed, course: resaleCourse(kitArea[row]!) }
    const selling = sellingOf({ thing, years: AHEAD_YEARS, fitTripsAhead: tripsAhead, meanTaken: use.mean, hire: null })
    const takes = tripsAhead * use.mean
    return {
      ...selling,
      currency: currency[row]!,
      tripsAhead,
      evenHireMinor: selling.holding === null || takes <= 0 ? null : selling.holding / takes,
    }
  }

  #markOf(id: number): '' | 'damp' | 'dirty' {
    const at = recorded.care?.items.id.indexOf(id) ?? -1
    return at < 0 ? '' : recorded.care!.items.lastMark[at]!
  }

  /** The day of the newest trip that asked to mend it. */
  #mendOn(id: number): string | null {
    const { taken, trips } = recorded.columns!
    const at = new Map(trips.id.map((trip, i) => [trip, i]))
    const days = taken.itemId.flatMap((itemId, i) =>
      itemId === id && taken.change[i] === 'mend' ? [trips.onDay[at.get(taken.tripId[i]!)!]!] : [],
    )
    return days.toSorted().at(-1) ?? null
  }
}

export const letgo = new LetGo()
