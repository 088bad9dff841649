import type { ClosetColumns, TraitColumns } from '../../src-main/contract.ts'
import { searchText, type SearchText } from '../../src-domain/closet/browse.ts'
import { program } from './program.svelte.ts'
import { words } from './words.svelte.ts'

type Columns = { [K in keyof ClosetColumns]: ClosetColumns[K][number][] }

const empty: ClosetColumns = {
  id: [],
  uid: [],
  name: [],
  maker: [],
  kitArea: [],
  pieces: [],
  status: [],
  statusSince: [],
  lentTo: [],
  massMg: [],
  massFrom: [],
  uOwnMg: [],
  uGainMg: [],
  weighingUid: [],
  scaleUid: [],
  weighedOn: [],
  claimedMg: [],
  claimedBy: [],
  estimatedMg: [],
  usualLane: [],
  isContainer: [],
  setId: [],
  duties: [],
  tags: [],
  seasons: [],
  note: [],
  priceMinor: [],
  currency: [],
  cameOn: [],
  lastOutOn: [],
  trips: [],
  photos: [],
  archived: [],
}

const fields = Object.keys(empty) as (keyof ClosetColumns)[]

/**
 * The closet in memory, as columns. Rows are patched in place and `version` counts the patches: whoever derives from the columns reads
 * it first. Search texts are made once per row and again for a row that changed.
 */
class Closet {
  version = $state(0)
  loaded = $state(false)
  columns: ClosetColumns = empty
  traits = $state.raw<TraitColumns | null>(null)
  #rowOf = new Map<number, number>()
  #texts: SearchText[] = []

  constructor() {
    program.listen((heard, reply) => void this.#heard(heard.touched, reply?.closet))
  }

  async load(): Promise<void> {
    const answer = await program.ask('closet.all', {})
    if (!answer.ok) return
    this.columns = answer.value
    this.#rowOf = new Map(answer.value.id.map((id, row) => [id, row]))
    this.#texts = answer.value.id.map((_, row) => searchText(this.columns, row, (code) => words.duty(code)))
    this.loaded = true
    this.version++
  }

  async loadTraits(): Promise<void> {
    const answer = await program.ask('closet.traits', {})
    if (answer.ok) this.traits = answer.value
  }

  get texts(): readonly SearchText[] {
    return this.#texts
  }

  rowOf(id: number): number | undefined {
    return this.#rowOf.get(id)
  }

  /** One field of one item, or undefined where the item is unknown. */
  get<K extends keyof ClosetColumns>(id: number, field: K): ClosetColumns[K][number] | undefined {
    const row = this.#rowOf.get(id)
    return row === undefined ? undefined : this.columns[field][row]
  }

  /** Shows a state at once; returns the way back for a refused write. */
  showAtOnce<K extends keyof ClosetColumns>(id: number, field: K, value: ClosetColumns[K][number]): () => void {
    const row = this.#rowOf.get(id)
    if (row === undefined) return () => undefined
    const column = this.columns[field] as ClosetColumns[K][number][]
    const before = column[row]!
    column[row] = value
    this.version++
    return () => {
      column[row] = before
      this.version++
    }
  }

  async #heard(
    touched: readonly { readonly table: string; readonly ids: readonly number[] }[],
    given: ClosetColumns | undefined,
  ): Promise<void> {
    if (touched.some((one) => one.table === '*')) {
      await Promise.all([this.load(), this.loadTraits()])
      return
    }
    if (touched.some((one) => one.table === 'trait_value' || one.table === 'need')) void this.loadTraits()
    const ids = touched.find((one) => one.table === 'item')?.ids ?? []
    if (given) this.#patch(given, ids)
    else if (ids.length > 0) {
      const answer = await program.ask('closet.rows', { ids: [...ids] })
      if (answer.ok) this.#patch(answer.value, ids)
    }
  }

  /** Rows asked for that did not come back are gone. */
  #patch(rows: ClosetColumns, ids: readonly number[]): void {
    const columns = this.columns as Columns
    const got = new Set(rows.id)
    for (let from = 0; from < rows.id.length; from++) {
      const id = rows.id[from]!
      const row = this.#rowOf.get(id) ?? columns.id.length
      this.#rowOf.set(id, row)
      for (const field of fields) (columns[field] as unknown[])[row] = rows[field][from]
      this.#texts[row] = searchText(this.columns, row, (code) => words.duty(code))
    }
    const gone = new Set(ids.filter((id) => !got.has(id) && this.#rowOf.has(id)))
    if (gone.size > 0) this.#drop(gone)
    this.version++
  }

  #drop(gone: ReadonlySet<number>): void {
    const columns = this.columns as Columns
    const keep = columns.id.map((id) => !gone.has(id))
    for (const field of fields) {
      const kept = (columns[field] as unknown[]).filter((_, row) => keep[row])
      ;(columns as Record<string, unknown[]>)[field] = kept
    }
    this.#texts = this.#texts.filter((_, row) => keep[row])
    this.#rowOf = new Map(columns.id.map((id, row) => [id, row]))
  }
}

export const closet = new Closet()
