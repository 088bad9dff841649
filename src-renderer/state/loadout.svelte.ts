import type { InputOf, LineRow, LoadoutOpen } from '../../src-main/contract.ts'
import { filledByBrief } from '../../src-domain/checks/by-brief.ts'
import { gather } from '../../src-domain/loadout/gather.ts'
import type { Loadout } from '../../src-domain/loadout/loadout.ts'
import { totalsOf, type Totals } from '../../src-domain/loadout/totals.ts'
import { emptyBrief, readBrief, type Brief, type Trip } from '../../src-domain/trips/brief.ts'
import type { Walker } from '../../src-domain/trips/walker.ts'
import type { Lane } from '../../src-domain/closet/vocabulary.ts'
import { kit } from './kit.svelte.ts'
import { program } from './program.svelte.ts'
import { recorded } from './recorded.svelte.ts'

/** The trip around a loadout, with its season; a loadout of a season only takes the season's standing brief. */
export interface Around {
  readonly trip: Trip
  readonly brief: Brief
  readonly walker: Walker
  /** There is a brief at all. */
  readonly briefed: boolean
}

/** One loadout opened: its lines, and all that follows from them in one pure pass. Several may be open (Compare). */
export class OpenLoadout {
  open = $state.raw<LoadoutOpen | null>(null)
  missing = $state(false)
  readonly id: number

  readonly around: Around = $derived.by(() => aroundOf(this.open))
  readonly loadout: Loadout | null = $derived.by(() => {
    if (!this.open || !kit.index) return null
    const gathered = gather(kit.index, this.open.name, this.open.line).loadout
    return filledByBrief({ loadout: gathered, ...this.around, today: program.state?.today ?? '2000-01-01' }).loadout
  })
  readonly totals: Totals | null = $derived(this.loadout ? totalsOf(this.loadout) : null)

  constructor(id: number) {
    this.id = id
    void this.load()
    program.listen((heard) => {
      if (heard.touched.some((one) => one.table === '*' || one.table === 'line' || (one.table === 'loadout' && one.ids.includes(this.id))))
        void this.load()
    })
  }

  async load(): Promise<void> {
    const answer = await program.ask('loadout.open', { ids: [this.id] })
    this.missing = !answer.ok || answer.value.length === 0
    if (answer.ok) this.open = answer.value[0] ?? null
  }

  /** Shows the lines as they will be, then writes; a refused write is taken back. */
  async #change(lines: readonly LineRow[], write: () => Promise<{ readonly ok: boolean }>): Promise<boolean> {
    const before = this.open
    if (!before) return false
    this.open = { ...before, line: lines }
    const answer = await write()
    if (!answer.ok) this.open = before
    return answer.ok
  }

  async put(lines: InputOf<'lines.put'>['lines']): Promise<boolean> {
    const answer = await program.change('lines.put', { loadoutId: this.id, lines })
    return answer.ok
  }

  async move(ids: readonly number[], lane: Lane): Promise<boolean> {
    const lines = (this.open?.line ?? []).map((line) => (ids.includes(line.id) ? { ...line, lane } : line))
    return this.#change(lines, () => program.change('lines.move', { ids: [...ids], lane }))
  }

  async takeOut(ids: readonly number[]): Promise<boolean> {
    const lines = (this.open?.line ?? []).filter((line) => !ids.includes(line.id))
    return this.#change(lines, () => program.change('lines.remove', { ids: [...ids] }))
  }

  async edit(id: number, patch: Omit<InputOf<'line.edit'>, 'id'>): Promise<boolean> {
    const answer = await program.change('line.edit', { id, ...patch })
    return answer.ok
  }
}

function aroundOf(open: LoadoutOpen | null): Around {
  const trip = kit.trip(open?.tripId ?? null)
  const seasonId = trip?.seasonId ?? open?.seasonId ?? null
  const season = kit.seasons.find((one) => one.id === seasonId)
  const walker = kit.walkers.find((one) => one.id === trip?.walkerId) ?? kit.walkers[0]
  const briefed = trip !== undefined || (season?.brief ?? null) !== null
  return {
    trip: {
      startsOn: trip?.startsOn ?? null,
      endsOn: trip?.endsOn ?? null,
      zone: trip?.zone ?? program.state?.zone ?? 'UTC',
      season: season?.kind ?? 'any',
    },
    brief: trip ? readBrief(trip.brief) : season ? readBrief(season.brief) : emptyBrief,
    walker: recorded.walker(walker),
    briefed,
  }
}

const opened = new Map<number, OpenLoadout>()
/** The one object of a loadout: rooms that show it share it. */
export function openLoadout(id: number): OpenLoadout {
  const there = opened.get(id)
  if (there) return there
  // Under a root of its own: what it derives must outlive the room that opened it first.
  let made: OpenLoadout | undefined
  $effect.root(() => void (made = new OpenLoadout(id)))
  opened.set(id, made!)
  return made!
}
