/**
 * Packed lines: a loadout as it was when the door list was closed, and back. What is written holds all that totals, checks, profile and report read,
 * so that a trip which is out or back no longer hangs on the closet. Of one thing only, each item's or supply's uid, the closet is still asked: it never changes.
 *   mass: of one piece, or of one unit of a supply, whole milligrams, with its shares of doubt in g
 *   amounts are those of that day, the rule of the person's beside them; what the brief could not say stays unknown
 */
import { given } from '../figures/figure.ts'
import { isKitArea, type KitArea, type Lane, type MassOrigin } from '../closet/vocabulary.ts'
import { readDuties, type RuleFacts } from './gather.ts'
import type { KitItem, KitNeed, KitSupply, KitTrait, Line, Loadout } from './loadout.ts'
import { milligrams } from './mass.ts'

export interface PackedThing {
  readonly itemId: number | null
  readonly supplyId: number | null
  readonly containerId: number | null
  readonly name: string
  readonly kitArea: KitArea
  readonly lane: Lane
  readonly pieces: number
  readonly ownedPieces: number
  readonly amountMilli: number | null
  readonly amountFrom: 'brief' | 'typed' | 'weighed'
  readonly rule: RuleFacts | null
  /** Of a supply; empty: an item. */
  readonly unit: '' | KitSupply['unit']
  readonly massMg: number | null
  readonly massFrom: MassOrigin
  readonly shares: Readonly<Record<string, number>>
  readonly massAbout: string
  readonly duties: string
  readonly needs: readonly KitNeed[]
  readonly traits: readonly KitTrait[]
  readonly isContainer: boolean
  readonly status: 'owned' | 'lent'
  readonly carriedBy: string
  readonly note: string
}

/** A packed line as it is read: with its own id and the uid of its thing; empty where it is none of the closet's. */
export interface PackedFacts extends PackedThing {
  readonly id: number
  readonly uid: string
  readonly thingUid: string
}

/** What really goes: owned things, and lent ones that another carries. Wished for, sold, retired and lost things were not there to be packed. */
export const isThere = (line: Line): boolean =>
  line.kind === 'supply' || line.item.status === 'owned' || (line.item.status === 'lent' && line.carriedBy !== '')

/** The lines of a loadout whose amounts are filled in, as they are written; the others are left at home. */
export const packLine = (line: Line): PackedThing => (line.kind === 'item' ? packedItem(line) : packedSupply(line))

function packedItem({ item, pieces, lane, carriedBy, note }: Line & { kind: 'item' }): PackedThing {
  return {
    ...noAmount,
    itemId: item.id,
    name: item.name,
    kitArea: item.kitArea,
    lane,
    pieces,
    ownedPieces: item.pieces,
    massMg: item.mass === null ? null : milligrams(item.mass.value),
    massFrom: item.massFrom,
    shares: item.mass?.shares ?? {},
    massAbout: item.mass?.from ?? '',
    duties: item.duties.map(({ duty, shared }) => (shared ? `${duty}*` : duty)).join(' '),
    needs: item.needs,
    traits: item.traits,
    isContainer: item.isContainer,
    status: item.status === 'lent' ? 'lent' : 'owned',
    carriedBy,
    note,
  }
}

const noAmount = { supplyId: null, containerId: null, amountMilli: null, amountFrom: 'typed', rule: null, unit: '' } as const

function packedSupply(line: Line & { kind: 'supply' }): PackedThing {
  const { supply, amount, amountFrom, container, lane, carriedBy, note } = line
  const rule = line.rule ?? supply.rule
  return {
    itemId: null,
    supplyId: supply.id,
    containerId: container?.id ?? null,
    name: supply.name,
    kitArea: supply.kitArea,
    lane,
    pieces: 1,
    ownedPieces: 1,
    amountMilli: amount === null ? null : milligrams(amount),
    amountFrom,
    rule: rule === null ? null : { per: rule.per, amountMilli: milligrams(rule.amount) },
    unit: supply.unit,
    massMg: milligrams(supply.massGPerUnit),
    massFrom: supply.massFrom,
    shares: {},
    massAbout: '',
    duties: '',
    needs: supply.needs,
    traits: supply.traits,
    isContainer: false,
    status: 'owned',
    carriedBy,
    note,
  }
}

/** The loadout again, for everything that reads one. A container that was no line of its own is not among them. */
export function unpack(name: string, rows: readonly PackedFacts[]): Loadout {
  const items = new Map(rows.filter((row) => row.unit === '').map((row) => [row.itemId ?? -row.id, itemOf(row)]))
  return { name, lines: rows.map((row) => lineOf(row, items)) }
}

function lineOf(row: PackedFacts, items: ReadonlyMap<number, KitItem>): Line {
  const { id, lane, carriedBy, note } = row
  if (row.unit === '') return { kind: 'item', id, lane, carriedBy, note, item: items.get(row.itemId ?? -id)!, pieces: row.pieces }
  const amount = row.amountMilli === null ? null : row.amountMilli / 1000
  const rule = row.rule === null ? null : { per: row.rule.per, amount: row.rule.amountMilli / 1000 }
  const container = row.containerId === null ? null : (items.get(row.containerId) ?? null)
  return { kind: 'supply', id, lane, carriedBy, note, supply: supplyOf(row, row.unit), amount, amountFrom: row.amountFrom, rule, container }
}

function itemOf(row: PackedFacts): KitItem {
  const { massMg, massFrom, shares, massAbout } = row
  const mass = massMg === null || massFrom === 'none' ? null : given(massMg / 1000, 'g', massFrom, shares, massAbout)
  return {
    id: row.itemId ?? -row.id,
    uid: row.thingUid === '' ? row.uid : row.thingUid,
    name: row.name,
    kitArea: areaOf(row),
    status: row.status,
    pieces: row.ownedPieces,
    mass,
    massFrom: mass === null ? 'none' : massFrom,
    duties: readDuties(row.duties),
    needs: row.needs,
    traits: row.traits,
    isContainer: row.isContainer,
    setId: null,
    lentTo: '',
    statusSince: null,
  }
}

function supplyOf(row: PackedFacts, unit: KitSupply['unit']): KitSupply {
  return {
    id: row.supplyId ?? -row.id,
    uid: row.thingUid === '' ? row.uid : row.thingUid,
    name: row.name,
    kitArea: areaOf(row),
    unit,
    massGPerUnit: (row.massMg ?? 0) / 1000,
    massFrom: row.massFrom === 'none' ? 'estimated' : row.massFrom,
    rule: null,
    needs: row.needs,
    traits: row.traits,
  }
}

const areaOf = ({ kitArea }: PackedFacts): KitArea => (isKitArea(kitArea) ? kitArea : 'extras')
