import { given, type Figure } from '../figures/figure.ts'
import type { KitArea, Lane, MassOrigin, Status } from '../closet/vocabulary.ts'
import type { AmountRule, KitItem, KitNeed, KitSupply, KitTrait, Line, Loadout } from './loadout.ts'
import { claimedMass, estimatedMass } from './mass.ts'

/** Gathers a loadout from plain rows: the closet as columns, traits and needs as columns, supplies and lines as rows. */
export interface ClosetFacts {
  readonly id: readonly number[]
  readonly uid: readonly string[]
  readonly name: readonly string[]
  readonly kitArea: readonly KitArea[]
  readonly pieces: readonly number[]
  readonly status: readonly Status[]
  readonly statusSince: readonly (string | null)[]
  readonly lentTo: readonly string[]
  /** Per piece. */
  readonly massMg: readonly (number | null)[]
  readonly massFrom: readonly MassOrigin[]
  /** Standard uncertainty per piece of a measured mass: its own, and that of its scale's gain. */
  readonly uOwnMg: readonly number[]
  readonly uGainMg: readonly number[]
  readonly weighingUid: readonly (string | null)[]
  readonly scaleUid: readonly (string | null)[]
  readonly weighedOn: readonly (string | null)[]
  readonly claimedBy: readonly string[]
  readonly isContainer: readonly boolean[]
  readonly setId: readonly (number | null)[]
  /** Duty codes joined by a space; a shared one ends in `*`. */
  readonly duties: readonly string[]
}

interface Owners {
  readonly itemId: readonly (number | null)[]
  readonly supplyId: readonly (number | null)[]
}

export interface PropertyFacts {
  readonly traits: Owners & {
    readonly code: readonly string[]
    readonly number: readonly (number | null)[]
    readonly text: readonly string[]
    readonly origin: readonly KitTrait['origin'][]
  }
  readonly needs: Owners & {
    readonly duty: readonly string[]
    readonly pieces: readonly number[]
    readonly kind: readonly KitNeed['kind'][]
  }
}

export interface RuleFacts {
  readonly per: AmountRule['per']
  readonly amountMilli: number
}

export interface SupplyFacts {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly kitArea: KitArea
  readonly unit: KitSupply['unit']
  readonly mgPerUnit: number
  readonly massFrom: KitSupply['massFrom']
  readonly rule: RuleFacts | null
}

export interface LineFacts {
  readonly id: number
  readonly itemId: number | null
  readonly supplyId: number | null
  readonly lane: Lane
  readonly pieces: number
  readonly amountMilli: number | null
  readonly amountFrom: 'brief' | 'typed' | 'weighed'
  readonly rule: RuleFacts | null
  readonly containerId: number | null
  readonly carriedBy: string
  readonly note: string
  readonly sort: number
}

/** Looks up by id; each item is made once, when first asked for. Made anew when the closet changes. */
export interface KitIndex {
  readonly item: (id: number) => KitItem | null
  readonly supply: (id: number) => KitSupply | null
}

export interface Gathered {
  readonly loadout: Loadout
  /** Lines whose item or supply the closet at hand does not hold (yet): the closet is asked again; nothing is taken as 0. */
  readonly lost: readonly number[]
}

export function indexKit(closet: ClosetFacts, properties: PropertyFacts, supplies: readonly SupplyFacts[]): KitIndex {
  const traits = owned(properties.traits, (row) => traitAt(properties.traits, row))
  const needs = owned(properties.needs, (row) => needAt(properties.needs, row))
  const rowOf = new Map(closet.id.map((id, row) => [id, row]))
  const supplyRow = new Map(supplies.map((one) => [one.id, one]))
  return {
    item: remembered((id) => {
      const row = rowOf.get(id)
      return row === undefined ? null : itemAt(closet, row, traits.item.get(id) ?? [], needs.item.get(id) ?? [])
    }),
    supply: remembered((id) => {
      const row = supplyRow.get(id)
      return row === undefined ? null : supplyOf(row, traits.supply.get(id) ?? [], needs.supply.get(id) ?? [])
    }),
  }
}

export function gather(index: KitIndex, name: string, rows: readonly LineFacts[]): Gathered {
  const lines: Line[] = []
  const lost: number[] = []
  for (const row of [...rows].sort((a, b) => a.sort - b.sort || a.id - b.id)) {
    const line = lineOf(index, row)
    if (line === null) lost.push(row.id)
    else lines.push(line)
  }
  return { loadout: { name, lines }, lost }
}

/** Mass per piece from its columns; null: nothing known. */
export function massAt(closet: ClosetFacts, row: number): Figure<'g'> | null {
  const massMg = closet.massMg[row]
  if (massMg === null || massMg === undefined) return null
  const uid = closet.uid[row]!
  switch (closet.massFrom[row]!) {
    case 'measured':
      return measuredAt(closet, row, massMg / 1000)
    case 'claimed':
      return claimedMass(massMg / 1000, `claim:${uid}`, `claimed by ${closet.claimedBy[row] || 'its maker'}`)
    case 'estimated':
      return estimatedMass(massMg / 1000, `estimate:${uid}`, 'estimated')
    case 'none':
      return null
  }
}

function measuredAt(closet: ClosetFacts, row: number, massG: number): Figure<'g'> {
  const weighing = closet.weighingUid[row] ?? closet.uid[row]!
  const scale = closet.scaleUid[row]
  const gain = scale === null || scale === undefined ? `weighing:${weighing}:gain` : `scale:${scale}:gain`
  const shares: Record<string, number> = {}
  if (closet.uOwnMg[row]) shares[`weighing:${weighing}`] = closet.uOwnMg[row] / 1000
  if (closet.uGainMg[row]) shares[gain] = closet.uGainMg[row] / 1000
  return given(massG, 'g', 'measured', shares, `weighed ${closet.weighedOn[row] ?? ''}`.trimEnd())
}

function itemAt(closet: ClosetFacts, row: number, traits: readonly KitTrait[], needs: readonly KitNeed[]): KitItem {
  return {
    id: closet.id[row]!,
    uid: closet.uid[row]!,
    name: closet.name[row]!,
    kitArea: closet.kitArea[row]!,
    status: closet.status[row]!,
    pieces: closet.pieces[row]!,
    mass: massAt(closet, row),
    massFrom: closet.massFrom[row]!,
    duties: readDuties(closet.duties[row]!),
    needs,
    traits,
    isContainer: closet.isContainer[row]!,
    setId: closet.setId[row] ?? null,
    lentTo: closet.lentTo[row]!,
    statusSince: closet.statusSince[row] ?? null,
  }
}

/** "pole stake*": codes joined by a space, a shared one ends in `*`. */
export function readDuties(joined: string): KitItem['duties'] {
  if (joined === '') return []
  return joined.split(' ').map((word) => (word.endsWith('*') ? { duty: word.slice(0, -1), shared: true } : { duty: word, shared: false }))
}

function supplyOf(row: SupplyFacts, traits: readonly KitTrait[], needs: readonly KitNeed[]): KitSupply {
  const { id, uid, name, kitArea, unit, massFrom } = row
  return { id, uid, name, kitArea, unit, massGPerUnit: row.mgPerUnit / 1000, massFrom, rule: ruleOf(row.rule), needs, traits }
}

const ruleOf = (rule: RuleFacts | null): AmountRule | null => (rule === null ? null : { per: rule.per, amount: rule.amountMilli / 1000 })

function lineOf(index: KitIndex, row: LineFacts): Line | null {
  const { id, lane, carriedBy, note } = row
  if (row.itemId !== null) {
    const item = index.item(row.itemId)
    return item && { kind: 'item', id, lane, carriedBy, note, item, pieces: row.pieces }
  }
  const supply = row.supplyId === null ? null : index.supply(row.supplyId)
  const container = row.containerId === null ? null : index.item(row.containerId)
  if (supply === null || (row.containerId !== null && container === null)) return null
  const amount = row.amountFrom === 'brief' || row.amountMilli === null ? null : row.amountMilli / 1000
  return { kind: 'supply', id, lane, carriedBy, note, supply, amount, amountFrom: row.amountFrom, rule: ruleOf(row.rule), container }
}

const traitAt = (columns: PropertyFacts['traits'], row: number): KitTrait => ({
  code: columns.code[row]!,
  number: columns.number[row] ?? null,
  text: columns.text[row]!,
  origin: columns.origin[row]!,
})

const needAt = (columns: PropertyFacts['needs'], row: number): KitNeed => ({
  duty: columns.duty[row]!,
  pieces: columns.pieces[row]!,
  kind: columns.kind[row]!,
})

/** Rows by their owner's id. */
function owned<T>(owners: Owners, read: (row: number) => T): { readonly item: Map<number, T[]>; readonly supply: Map<number, T[]> } {
  const item = new Map<number, T[]>()
  const supply = new Map<number, T[]>()
  for (let row = 0; row < owners.itemId.length; row++) {
    const itemId = owners.itemId[row]
    const [map, id] = itemId === null || itemId === undefined ? [supply, owners.supplyId[row]!] : [item, itemId]
    const list = map.get(id)
    if (list === undefined) map.set(id, [read(row)])
    else list.push(read(row))
  }
  return { item, supply }
}

function remembered<T>(make: (id: number) => T): (id: number) => T {
  const kept = new Map<number, T>()
  return (id) => {
    const known = kept.get(id)
    if (known !== undefined) return known
    const made = make(id)
    kept.set(id, made)
    return made
  }
}
