import { browse, noFacets, sorted, type FacetName, type Facets, type SortKey } from '../../../src-domain/closet/browse.ts'
import { closet } from '../../state/closet.svelte.ts'
import { words } from '../../state/words.svelte.ts'

export interface ViewState {
  readonly query: string
  readonly facets: Facets
  readonly sort: SortKey
  readonly descending: boolean
}

/** What the closet's table shows now: query, facets, order, the row under the keys, the selection and the opened item. Outlives the room. */
class ClosetView {
  query = $state('')
  facets = $state.raw<Facets>(noFacets)
  sort = $state<SortKey>('area')
  descending = $state(false)
  /** The item whose row has the keys. */
  activeId = $state<number | null>(null)
  selected = $state.raw<ReadonlySet<number>>(new Set())
  openId = $state<number | null>(null)

  readonly found = $derived.by(() => {
    void closet.version
    return browse(closet.columns, closet.texts, this.query, this.facets)
  })
  /** Rows of the columns in the order shown. */
  readonly rows = $derived(sorted(closet.columns, this.found.rows, this.sort, this.descending, words.areas))
  readonly ids = $derived(this.rows.map((row) => closet.columns.id[row]!))
  readonly activeAt = $derived(this.activeId === null ? -1 : this.ids.indexOf(this.activeId))
  /** What a command acts on: the selection, else the active row. */
  readonly targets = $derived(this.selected.size > 0 ? [...this.selected] : this.activeId === null ? [] : [this.activeId])
  readonly filtered = $derived(
    this.query.trim() !== '' ||
      (Object.keys(this.facets) as FacetName[]).some((name) => this.facets[name].join() !== noFacets[name].join()),
  )

  toggleFacet(name: FacetName, value: string): void {
    const chosen = this.facets[name]
    this.facets = { ...this.facets, [name]: chosen.includes(value) ? chosen.filter((one) => one !== value) : [...chosen, value] }
  }

  clear(): void {
    this.query = ''
    this.facets = noFacets
  }

  sortBy(key: SortKey): void {
    this.descending = this.sort === key ? !this.descending : false
    this.sort = key
  }

  move(by: number, extend: boolean): void {
    if (this.ids.length === 0) return
    const from = this.activeAt
    const to = Math.min(this.ids.length - 1, Math.max(0, from < 0 ? 0 : from + by))
    if (extend)
      this.selected = new Set([
        ...this.selected,
        ...(this.activeId === null ? [] : [this.activeId]),
        ...this.ids.slice(Math.min(from, to), Math.max(from, to) + 1),
      ])
    this.activeId = this.ids[to]!
    if (this.openId !== null) this.openId = this.activeId
  }

  toggle(id: number): void {
    const next = new Set(this.selected)
    if (!next.delete(id)) next.add(id)
    this.selected = next
  }

  selectTo(id: number): void {
    const from = Math.max(0, this.activeAt)
    const to = this.ids.indexOf(id)
    this.selected = new Set([...this.selected, ...this.ids.slice(Math.min(from, to), Math.max(from, to) + 1)])
    this.activeId = id
  }

  selectAll(): void {
    this.selected = new Set(this.ids)
  }

  take(state: ViewState): void {
    this.query = state.query
    this.facets = { ...noFacets, ...state.facets }
    this.sort = state.sort
    this.descending = state.descending
  }

  get state(): ViewState {
    return { query: this.query, facets: this.facets, sort: this.sort, descending: this.descending }
  }
}

export const view = new ClosetView()
