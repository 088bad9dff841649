import type { LoadoutHead, PlannedLine, SeasonRow, SupplyRow, TripRow, WalkerRow } from '../../src-main/contract.ts'
import { indexKit, type KitIndex } from '../../src-domain/loadout/gather.ts'
import { closet } from './closet.svelte.ts'
import { program } from './program.svelte.ts'

/** What loadouts are made of and belong to: supplies, seasons, trips, walkers and the heads of all loadouts; asked anew when touched. */
class Kit {
  supplies = $state.raw<readonly SupplyRow[]>([])
  seasons = $state.raw<readonly SeasonRow[]>([])
  trips = $state.raw<readonly TripRow[]>([])
  walkers = $state.raw<readonly WalkerRow[]>([])
  loadouts = $state.raw<readonly LoadoutHead[]>([])
  planned = $state.raw<readonly PlannedLine[]>([])
  loaded = $state(false)
  // Answers may overtake one another: only the last asked counts.
  #tripTurn = 0
  #seasonTurn = 0

  /** Items and supplies as the calculations see them; made anew when the closet or its traits change. */
  readonly index: KitIndex | null = $derived.by(() => {
    void closet.version
    return closet.traits === null ? null : indexKit(closet.columns, closet.traits, this.supplies)
  })

  constructor() {
    program.listen((heard) => void this.#heard(heard.touched.map((one) => one.table)))
  }

  async load(): Promise<void> {
    await Promise.all([this.#supplies(), this.#seasons(), this.#trips(), this.#walkers(), this.#loadouts()])
    this.loaded = true
  }

  trip(id: number | null): TripRow | undefined {
    return id === null ? undefined : this.trips.find((one) => one.id === id)
  }

  loadout(id: number | null): LoadoutHead | undefined {
    return id === null ? undefined : this.loadouts.find((one) => one.id === id)
  }

  async #heard(tables: readonly string[]): Promise<void> {
    const touched = (...names: readonly string[]) => tables.includes('*') || names.some((name) => tables.includes(name))
    await Promise.all([
      touched('supply', 'trait_value') && this.#supplies(),
      touched('season') && this.#seasons(),
      touched('trip') && this.#trips(),
      touched('walker') && this.#walkers(),
      touched('loadout', 'line', 'trip', 'season') && this.#loadouts(),
    ])
  }

  async #supplies(): Promise<void> {
    const answer = await program.ask('supply.all', {})
    if (answer.ok) this.supplies = answer.value
  }
  async #seasons(): Promise<void> {
    const turn = ++this.#seasonTurn
    const answer = await program.ask('season.all', {})
    if (answer.ok && turn === this.#seasonTurn) this.seasons = answer.value
  }
  async #trips(): Promise<void> {
    const turn = ++this.#tripTurn
    const answer = await program.ask('trip.all', {})
    if (answer.ok && turn === this.#tripTurn) this.trips = answer.value
  }
  async #walkers(): Promise<void> {
    const answer = await program.ask('walker.all', {})
    if (answer.ok) this.walkers = answer.value
  }
  async #loadouts(): Promise<void> {
    const [heads, planned] = await Promise.all([program.ask('loadout.all', {}), program.ask('loadout.planned', {})])
    if (heads.ok) this.loadouts = heads.value
    if (planned.ok) this.planned = planned.value
  }
}

export const kit = new Kit()
