import type { Figure } from '../figures/figure.ts'
import type { KitArea, Lane, MassOrigin, Status } from '../closet/vocabulary.ts'

/** A loadout as the checks and totals see it: lines with everything a calculation may read, no ids of the store needed. */
export interface KitTrait {
  readonly code: string
  readonly number: number | null
  readonly text: string
  readonly origin: 'measured' | 'claimed' | 'estimated'
}

export interface KitNeed {
  readonly duty: string
  readonly pieces: number
  readonly kind: 'shared' | 'reserved'
}

export interface KitItem {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly kitArea: KitArea
  readonly status: Status
  /** Pieces owned. */
  readonly pieces: number
  /** Mass per piece; null: nothing known. */
  readonly mass: Figure<'g'> | null
  readonly massFrom: MassOrigin
  readonly duties: readonly { readonly duty: string; readonly shared: boolean }[]
  readonly needs: readonly KitNeed[]
  readonly traits: readonly KitTrait[]
  readonly isContainer: boolean
  readonly setId: number | null
  readonly lentTo: string
  readonly statusSince: string | null
}

export interface AmountRule {
  readonly per: 'day' | 'night' | 'litre' | 'boil' | 'trip' | 'stretch'
  /** In the supply's unit. */
  readonly amount: number
}

export interface KitSupply {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly kitArea: KitArea
  readonly unit: 'g' | 'ml' | 'piece'
  readonly massGPerUnit: number
  readonly massFrom: 'measured' | 'claimed' | 'estimated'
  readonly rule: AmountRule | null
  readonly needs: readonly KitNeed[]
  readonly traits: readonly KitTrait[]
}

interface CommonLine {
  readonly id: number
  readonly lane: Lane
  /** Empty: the walker carries it. */
  readonly carriedBy: string
  readonly note: string
}

export interface ItemLine extends CommonLine {
  readonly kind: 'item'
  readonly item: KitItem
  readonly pieces: number
}

export interface SupplyLine extends CommonLine {
  readonly kind: 'supply'
  readonly supply: KitSupply
  /** In the supply's unit; null: follows the brief and the brief does not say enough yet. */
  readonly amount: number | null
  readonly amountFrom: 'brief' | 'typed' | 'weighed'
  readonly rule: AmountRule | null
  readonly container: KitItem | null
}

export type Line = ItemLine | SupplyLine

export interface Loadout {
  readonly name: string
  readonly lines: readonly Line[]
}

export const isItemLine = (line: Line): line is ItemLine => line.kind === 'item'
export const isSupplyLine = (line: Line): line is SupplyLine => line.kind === 'supply'
export const itemLines = (loadout: Loadout): readonly ItemLine[] => loadout.lines.filter(isItemLine)
export const supplyLines = (loadout: Loadout): readonly SupplyLine[] => loadout.lines.filter(isSupplyLine)

/** Item lines that serve a duty, carried by anyone of the party. */
export const covering = (loadout: Loadout, duty: string): readonly ItemLine[] =>
  itemLines(loadout).filter((line) => line.item.duties.some((one) => one.duty === duty))

export const traitOf = (holder: { readonly traits: readonly KitTrait[] }, code: string): KitTrait | undefined =>
  holder.traits.find((trait) => trait.code === code)

/** A number trait, or null. */
export const traitNumber = (holder: { readonly traits: readonly KitTrait[] }, code: string): number | null =>
  traitOf(holder, code)?.number ?? null

/** A choice trait's word, or ''. */
export const traitText = (holder: { readonly traits: readonly KitTrait[] }, code: string): string => traitOf(holder, code)?.text ?? ''
