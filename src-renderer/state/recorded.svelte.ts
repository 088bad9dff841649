import type { CareColumns, LearningLog, RecordColumns, WalkerRow } from '../../src-main/contract.ts'
import { learnedOf, withLearned, type Learned } from '../../src-domain/learning/learned.ts'
import { emptyWalker, readWalker, type Walker } from '../../src-domain/trips/walker.ts'
import { kit } from './kit.svelte.ts'
import { program } from './program.svelte.ts'

const told: readonly string[] = ['record', 'packed', 'debrief', 'debrief_line', 'leg_log', 'night_log', 'burn_log', 'day_log', 'away']

/** What trips left behind: logs that factors are learned from, and (once a room asks) the record's columns and the facts of care. Asked anew when touched. */
class Recorded {
  logs = $state.raw<readonly LearningLog[]>([])
  columns = $state.raw<RecordColumns | null>(null)
  care = $state.raw<CareColumns | null>(null)
  /** A room reads the columns. */
  #wanted = false

  /** By walker; a trip without one is the first walker's. */
  readonly #byWalker: ReadonlyMap<number, readonly Learned[]> = $derived.by(() => {
    const first = kit.walkers[0]?.id ?? null
    return new Map(
      kit.walkers.map(({ id, profile }) => [
        id,
        learnedOf(
          this.logs.filter((log) => (log.walkerId ?? first) === id),
          readWalker(profile),
        ),
      ]),
    )
  })

  constructor() {
    program.listen(({ touched }) => void this.#heard(touched.map(({ table }) => table)))
  }

  async load(): Promise<void> {
    const answer = await program.ask('learning.logs', {})
    if (answer.ok) this.logs = answer.value
  }

  /** The record as columns with the facts of care, from now on kept fresh. */
  async want(): Promise<void> {
    this.#wanted = true
    await Promise.all([this.#columns(), this.#care()])
  }

  learned(walkerId: number): readonly Learned[] {
    return this.#byWalker.get(walkerId) ?? []
  }

  /** The walker as the checks read them. */
  walker(row: WalkerRow | undefined): Walker {
    return row === undefined ? emptyWalker : withLearned(readWalker(row.profile), this.learned(row.id))
  }

  async #heard(tables: readonly string[]): Promise<void> {
    const all = tables.includes('*')
    const recorded = all || tables.some((table) => told.includes(table))
    await Promise.all([
      (recorded || tables.includes('trip')) && this.load(),
      this.#wanted && (recorded || tables.includes('trip')) && this.#columns(),
      this.#wanted && (all || tables.includes('item') || tables.includes('item_counter') || tables.includes('weighing')) && this.#care(),
    ])
  }

  async #columns(): Promise<void> {
    const answer = await program.ask('record.all', {})
    if (answer.ok) this.columns = answer.value
  }
  async #care(): Promise<void> {
    const answer = await program.ask('care.all', {})
    if (answer.ok) this.care = answer.value
  }
}

export const recorded = new Recorded()
