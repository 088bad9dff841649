import type { KitArea, MassOrigin, Status } from './vocabulary.ts'

/** The closet's columns that finding, facets and sorting read: one plain array per field (see `closet.all`). */
export interface BrowseColumns {
  readonly id: readonly number[]
  readonly name: readonly string[]
  readonly maker: readonly string[]
  readonly kitArea: readonly KitArea[]
  readonly pieces: readonly number[]
  readonly status: readonly Status[]
  readonly massMg: readonly (number | null)[]
  readonly massFrom: readonly MassOrigin[]
  readonly claimedMg: readonly (number | null)[]
  readonly weighedOn: readonly (string | null)[]
  /** Codes joined by a space; a shared duty ends in `*`. */
  readonly duties: readonly string[]
  /** Joined by a newline. */
  readonly tags: readonly string[]
  readonly seasons: readonly string[]
  readonly note: readonly string[]
  readonly trips: readonly number[]
  readonly archived: readonly boolean[]
}

export const dutyCodes = (joined: string): readonly string[] =>
  joined === '' ? [] : joined.split(' ').map((code) => code.replace(/\*$/, ''))
export const lines = (joined: string): readonly string[] => (joined === '' ? [] : joined.split('\n'))

/** Lower case without accents, so that `Noël` is found by `noel`. */
export const fold = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

/** What one row is searched by: name, maker, note, duty words and tags; and the initials of its name. */
export interface SearchText {
  readonly text: string
  readonly initials: string
}

export function searchText(columns: BrowseColumns, row: number, dutyLabel: (code: string) => string): SearchText {
  const name = fold(columns.name[row]!)
  const duties = dutyCodes(columns.duties[row]!).map(dutyLabel).join('\n')
  return {
    text: [name, fold(columns.maker[row]!), fold(columns.note[row]!), fold(duties), fold(columns.tags[row]!)].join('\n'),
    initials: name
      .split(/[^\p{L}\p{N}]+/u)
      .map((word) => word.charAt(0))
      .join(''),
  }
}

/** Every word of the query is found somewhere in the row, or the query without spaces runs along the initials of its name. */
export function matches(row: SearchText, query: string): boolean {
  const words = fold(query).split(/\s+/).filter(Boolean)
  if (words.length === 0) return true
  return words.every((word) => row.text.includes(word)) || (words.length === 1 && words[0]!.length > 1 && row.initials.includes(words[0]!))
}

export const facetNames = ['area', 'duty', 'status', 'weight', 'season', 'tag'] as const
export type FacetName = (typeof facetNames)[number]
/** Chosen values by facet; an empty list means any. */
export type Facets = Readonly<Record<FacetName, readonly string[]>>

export const noFacets: Facets = { area: [], duty: [], status: ['owned', 'lent'], weight: [], season: [], tag: [] }

/** The values a row has in a facet. */
export function facetValues(columns: BrowseColumns, row: number, facet: FacetName): readonly string[] {
  switch (facet) {
    case 'area':
      return [columns.kitArea[row]!]
    case 'duty':
      return dutyCodes(columns.duties[row]!)
    case 'status':
      return [columns.archived[row] ? 'archived' : columns.status[row]!]
    case 'weight':
      return [columns.massFrom[row]!]
    case 'season':
      return lines(columns.seasons[row]!)
    case 'tag':
      return lines(columns.tags[row]!)
  }
}

const within = (columns: BrowseColumns, row: number, facet: FacetName, chosen: readonly string[]): boolean =>
  chosen.length === 0 || facetValues(columns, row, facet).some((value) => chosen.includes(value))

export interface Browsed {
  /** Rows that match query and facets, in the columns' order. */
  readonly rows: readonly number[]
  /** By facet: how many rows each value would show, the other facets as chosen. */
  readonly counts: Readonly<Record<FacetName, ReadonlyMap<string, number>>>
}

/** Query and facets in one pass: a row that fails a single facet still counts for that facet's other values. */
export function browse(columns: BrowseColumns, texts: readonly SearchText[], query: string, facets: Facets): Browsed {
  const rows: number[] = []
  const counts = Object.fromEntries(facetNames.map((facet) => [facet, new Map<string, number>()])) as Record<FacetName, Map<string, number>>
  for (let row = 0; row < columns.id.length; row++) {
    if (!matches(texts[row]!, query)) continue
    const failed = facetNames.filter((facet) => !within(columns, row, facet, facets[facet]))
    if (failed.length === 0) rows.push(row)
    for (const facet of failed.length === 0 ? facetNames : failed.length === 1 ? failed : [])
      for (const value of facetValues(columns, row, facet)) counts[facet].set(value, (counts[facet].get(value) ?? 0) + 1)
  }
  return { rows, counts }
}

export const sortKeys = ['area', 'name', 'duty', 'mass', 'claim', 'weighed', 'trips'] as const
export type SortKey = (typeof sortKeys)[number]

/** Difference of a measured mass to its claim, per piece, in mg; null where either is missing. */
export function againstClaim(columns: Pick<BrowseColumns, 'massMg' | 'massFrom' | 'claimedMg'>, row: number): number | null {
  const claimed = columns.claimedMg[row] ?? null
  const mass = columns.massMg[row] ?? null
  return columns.massFrom[row] !== 'measured' || claimed === null || mass === null ? null : mass - claimed
}

/** Rows in the order of a column; what has no value comes last whichever way; equal ones keep kit area, then name. */
export function sorted(
  columns: BrowseColumns,
  rows: readonly number[],
  key: SortKey,
  descending: boolean,
  areaOrder: readonly string[],
): readonly number[] {
  const place = new Map(areaOrder.map((code, at) => [code, at]))
  const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' })
  const area = (row: number) => place.get(columns.kitArea[row]!) ?? areaOrder.length
  const byName = (a: number, b: number) => collator.compare(columns.name[a]!, columns.name[b]!)
  const value = (row: number): number | string | null => {
    switch (key) {
      case 'area':
        return area(row)
      case 'name':
        return columns.name[row]!
      case 'duty':
        return columns.duties[row] === '' ? null : columns.duties[row]!
      case 'mass':
        return columns.massMg[row] === null ? null : columns.massMg[row]! * columns.pieces[row]!
      case 'claim':
        return againstClaim(columns, row)
      case 'weighed':
        return columns.weighedOn[row]!
      case 'trips':
        return columns.trips[row]!
    }
  }
  const keyed = rows.map((row) => ({ row, value: value(row) }))
  const sign = descending ? -1 : 1
  const compare = (a: number | string, b: number | string) =>
    typeof a === 'number' && typeof b === 'number'
      ? a - b
      : key === 'name'
        ? collator.compare(String(a), String(b))
        : a < b
          ? -1
          : a > b
            ? 1
            : 0
  keyed.sort((a, b) => {
    if (a.value === null || b.value === null) return a.value === b.value ? 0 : a.value === null ? 1 : -1
    return sign * compare(a.value, b.value) || area(a.row) - area(b.row) || byName(a.row, b.row)
  })
  return keyed.map((one) => one.row)
}
