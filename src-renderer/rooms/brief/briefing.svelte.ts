import type { InputOf, SeasonRow, TripRow } from '../../../src-main/contract.ts'
import type { Asked } from '../../../src-domain/checks/check.ts'
import { findAll, type Row } from '../../../src-domain/checks/index.ts'
import type { Loadout } from '../../../src-domain/loadout/loadout.ts'
import { daysOf, nightsOf, readBrief, type Brief, type Leg, type Trip } from '../../../src-domain/trips/brief.ts'
import { campNights } from '../../../src-domain/trips/nights.ts'
import { routeOf } from '../../../src-domain/trips/route.ts'
import type { Walker } from '../../../src-domain/trips/walker.ts'
import { kit } from '../../state/kit.svelte.ts'
import { openLoadout } from '../../state/loadout.svelte.ts'
import { program } from '../../state/program.svelte.ts'
import { recorded } from '../../state/recorded.svelte.ts'
import { faultWords } from '../../words/faults.ts'

export type BriefOf = 'trip' | 'season'

/** One brief open in its room: of a trip, or the standing one of a season. Every change is one call and one undo step. */
export class Briefing {
  readonly of: BriefOf
  readonly id: number
  problem = $state('')
  /** What was changed here and is not read back yet: the next change builds on it. */
  #draft = $state.raw<Brief | null>(null)
  /** The rows as they were when the last change was acknowledged: newer ones hold it. */
  #before: unknown = null
  #pending = 0
  #queue: Promise<unknown> = Promise.resolve()

  readonly trip: TripRow | undefined = $derived.by(() => (this.of === 'trip' ? kit.trip(this.id) : undefined))
  readonly season: SeasonRow | undefined = $derived.by(() =>
    kit.seasons.find((one) => one.id === (this.of === 'season' ? this.id : this.trip?.seasonId)),
  )
  readonly json: string | null = $derived.by(() => (this.of === 'trip' ? this.trip?.brief : this.season?.brief) ?? null)
  readonly brief: Brief = $derived.by(() => this.#draft ?? readBrief(this.json))
  readonly walker: Walker = $derived.by(() => recorded.walker(kit.walkers.find((one) => one.id === this.trip?.walkerId) ?? kit.walkers[0]))
  readonly around: Trip = $derived.by(() => ({
    startsOn: this.trip?.startsOn ?? null,
    endsOn: this.trip?.endsOn ?? null,
    zone: this.trip?.zone ?? program.state?.zone ?? 'UTC',
    season: this.season?.kind ?? 'any',
  }))
  readonly loadoutId: number | null = $derived.by(() => {
    const own = kit.loadouts.filter((one) =>
      this.of === 'trip' ? one.tripId === this.id : one.tripId === null && one.seasonId === this.id,
    )
    return (own.find((one) => one.chosen) ?? own[0])?.id ?? null
  })
  readonly loadout: Loadout | null = $derived.by(() => (this.loadoutId === null ? null : openLoadout(this.loadoutId).loadout))
  readonly asked: Asked | null = $derived.by(() =>
    this.loadout === null
      ? null
      : {
          loadout: this.loadout,
          brief: this.brief,
          trip: this.around,
          walker: this.walker,
          today: program.state?.today ?? '2000-01-01',
        },
  )
  readonly rows: readonly Row[] = $derived.by(() => (this.asked === null ? [] : findAll(this.asked)))
  readonly days: number | null = $derived.by(() => daysOf(this.around))
  readonly nightsOut: number | null = $derived.by(() => nightsOf(this.around, this.brief))
  readonly nights = $derived.by(() => campNights(this.brief, this.around))
  readonly route = $derived.by(() => routeOf(this.brief, this.walker))
  readonly lengthM: number = $derived.by(() => this.brief.legs.reduce((sum, leg) => sum + (leg.lengthM ?? 0), 0))

  constructor(of: BriefOf, id: number) {
    this.of = of
    this.id = id
  }

  put(patch: Partial<Brief>): Promise<string> {
    const next = { ...this.brief, ...patch }
    this.#draft = next
    return this.#write({ brief: JSON.stringify(next) })
  }

  legs(legs: readonly Leg[]): Promise<string> {
    return this.put({ legs })
  }

  leg(at: number, patch: Partial<Leg>): Promise<string> {
    return this.legs(this.brief.legs.map((leg, i) => (i === at ? { ...leg, ...patch } : leg)))
  }

  /** Of the trip around the brief; a season has none of these. */
  edit(patch: Omit<InputOf<'trip.edit'>, 'id'>): Promise<string> {
    return this.#write(patch)
  }

  /** The rows were read anew: what was typed here is in them. They are asked at each acknowledgement, and only the last answer counts (kit). */
  settle(): void {
    if (this.#rows() !== this.#before && this.#pending === 0) this.#draft = null
  }

  #rows(): unknown {
    return this.of === 'trip' ? kit.trips : kit.seasons
  }

  /** One after the other, so that no change is overtaken by the one before it. Answers what is wrong, or nothing. */
  #write(patch: Omit<InputOf<'trip.edit'>, 'id'>): Promise<string> {
    this.#pending++
    const done = this.#queue.then(async () => {
      const answer = await (this.of === 'trip'
        ? program.tryChange('trip.edit', { id: this.id, ...patch })
        : program.tryChange('season.edit', {
            id: this.id,
            ...(patch.name === undefined ? {} : { name: patch.name }),
            ...(patch.brief === undefined ? {} : { brief: patch.brief }),
          }))
      this.#pending--
      if (!answer.ok) this.#draft = null
      this.#before = this.#rows()
      this.problem = answer.ok ? '' : faultWords(answer.fault)
      return this.problem
    })
    this.#queue = done
    return done
  }
}
