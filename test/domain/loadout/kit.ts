import type { KitArea, Lane, MassOrigin, Status } from '../../../src-domain/closet/vocabulary.ts'
import { gather, indexKit, type KitIndex, type LineFacts, type SupplyFacts } from '../../../src-domain/loadout/gather.ts'
import type { Loadout } from '../../../src-domain/loadout/loadout.ts'

/** Builds closets and loadouts for tests from short rows, through the same columns as the program's own. */
export interface TestItem {
  readonly name: string
  readonly area: KitArea
  /** Grams per piece; null: unknown. */
  readonly g: number | null
  readonly from?: MassOrigin
  readonly pieces?: number
  readonly duties?: string
  readonly needs?: readonly { readonly duty: string; readonly pieces: number; readonly kind: 'shared' | 'reserved' }[]
  readonly traits?: Readonly<Record<string, number | string>>
  readonly status?: Status
  readonly lentTo?: string
  /** Standard uncertainty of the whole weighing and of the scale's gain, g; pieces are weighed together. */
  readonly uOwnG?: number
  readonly uGainShare?: number
}

export interface TestSupply {
  readonly name: string
  readonly area: KitArea
  readonly unit?: 'g' | 'ml' | 'piece'
  readonly gPerUnit?: number
  readonly from?: 'measured' | 'claimed' | 'estimated'
  readonly rule?: { readonly per: 'day' | 'night' | 'litre' | 'boil' | 'trip' | 'stretch'; readonly amountMilli: number }
  readonly needs?: TestItem['needs']
  readonly traits?: TestItem['traits']
}

export interface Columns {
  id: number[]
  uid: string[]
  name: string[]
  kitArea: KitArea[]
  pieces: number[]
  status: Status[]
  statusSince: (string | null)[]
  lentTo: string[]
  massMg: (number | null)[]
  massFrom: MassOrigin[]
  uOwnMg: number[]
  uGainMg: number[]
  weighingUid: (string | null)[]
  scaleUid: (string | null)[]
  weighedOn: (string | null)[]
  claimedBy: string[]
  isContainer: boolean[]
  setId: (number | null)[]
  duties: string[]
}

export const idOf = (items: readonly { readonly name: string }[], name: string): number => {
  const at = items.findIndex((item) => item.name === name)
  if (at < 0) throw new Error(`no ${name} in this test's closet`)
  return at + 1
}

export function columnsOf(items: readonly TestItem[]): Columns {
  const measured = (item: TestItem) => (item.from ?? 'measured') === 'measured' && item.g !== null
  return {
    id: items.map((_, i) => i + 1),
    uid: items.map((_, i) => `i${i + 1}`),
    name: items.map((item) => item.name),
    kitArea: items.map((item) => item.area),
    pieces: items.map((item) => item.pieces ?? 1),
    status: items.map((item) => item.status ?? 'owned'),
    statusSince: items.map(() => null),
    lentTo: items.map((item) => item.lentTo ?? ''),
    massMg: items.map((item) => (item.g === null ? null : Math.round(item.g * 1000))),
    massFrom: items.map((item) => (item.g === null ? 'none' : (item.from ?? 'measured'))),
    uOwnMg: items.map((item) => (measured(item) ? ((item.uOwnG ?? 0.65) * 1000) / (item.pieces ?? 1) : 0)),
    uGainMg: items.map((item) => (measured(item) ? item.g! * (item.uGainShare ?? 0.0008) * 1000 : 0)),
    weighingUid: items.map((item, i) => (measured(item) ? `w${i + 1}` : null)),
    scaleUid: items.map((item) => (measured(item) ? 'B' : null)),
    weighedOn: items.map((item) => (measured(item) ? '2025-10-08' : null)),
    claimedBy: items.map(() => ''),
    isContainer: items.map(() => false),
    setId: items.map(() => null),
    duties: items.map((item) => item.duties ?? ''),
  }
}

export function propertiesOf(items: readonly TestItem[], supplies: readonly TestSupply[] = []) {
  const owners = [
    ...items.map((item, i) => ({ ...item, itemId: i + 1, supplyId: null })),
    ...supplies.map((one, i) => ({ ...one, itemId: null, supplyId: i + 1 })),
  ]
  const traits = owners.flatMap((owner) => Object.entries(owner.traits ?? {}).map(([code, value]) => ({ owner, code, value })))
  const needs = owners.flatMap((owner) => (owner.needs ?? []).map((need) => ({ owner, need })))
  return {
    traits: {
      itemId: traits.map(({ owner }) => owner.itemId),
      supplyId: traits.map(({ owner }) => owner.supplyId),
      code: traits.map(({ code }) => code),
      number: traits.map(({ value }) => (typeof value === 'number' ? value : null)),
      text: traits.map(({ value }) => (typeof value === 'string' ? value : '')),
      origin: traits.map(() => 'claimed' as const),
    },
    needs: {
      itemId: needs.map(({ owner }) => owner.itemId),
      supplyId: needs.map(({ owner }) => owner.supplyId),
      duty: needs.map(({ need }) => need.duty),
      pieces: needs.map(({ need }) => need.pieces),
      kind: needs.map(({ need }) => need.kind),
    },
  }
}

export const suppliesOf = (supplies: readonly TestSupply[]): SupplyFacts[] =>
  supplies.map((one, i) => ({
    id: i + 1,
    uid: `s${i + 1}`,
    name: one.name,
    kitArea: one.area,
    unit: one.unit ?? 'g',
    mgPerUnit: Math.round((one.gPerUnit ?? 1) * 1000),
    massFrom: one.from ?? 'claimed',
    rule: one.rule ?? null,
  }))

export const kitIndex = (items: readonly TestItem[], supplies: readonly TestSupply[] = []): KitIndex =>
  indexKit(columnsOf(items), propertiesOf(items, supplies), suppliesOf(supplies))

const blank = {
  lane: 'in_pack' as Lane,
  pieces: 1,
  amountMilli: null,
  amountFrom: 'typed' as const,
  rule: null,
  containerId: null,
  carriedBy: '',
  note: '',
}

export const itemRow = (id: number, itemId: number, more: Partial<LineFacts> = {}): LineFacts => ({
  ...blank,
  id,
  sort: id,
  itemId,
  supplyId: null,
  ...more,
})

export const supplyRow = (id: number, supplyId: number, more: Partial<LineFacts> = {}): LineFacts => ({
  ...blank,
  lane: 'used_up',
  id,
  sort: id,
  itemId: null,
  supplyId,
  ...more,
})

export function loadoutOf(index: KitIndex, rows: readonly LineFacts[], name = 'test'): Loadout {
  const { loadout, lost } = gather(index, name, rows)
  if (lost.length > 0) throw new Error(`lost ${lost.join(' ')}`)
  return loadout
}

/** A loadout of one line per item, each with all its pieces. */
export const loadoutOfAll = (items: readonly TestItem[], lane: Lane = 'in_pack'): Loadout =>
  loadoutOf(
    kitIndex(items),
    items.map((item, i) => itemRow(i + 1, i + 1, { lane, pieces: item.pieces ?? 1 })),
  )
