import { given, scaled, type Figure } from '../figures/figure.ts'
import type { KitArea } from '../closet/vocabulary.ts'
import type { KitItem, ItemLine, Line, SupplyLine } from './loadout.ts'

/**
 * What a line weighs, with its doubt.
 *   claimed: own 3 % of the mass, 2 % in common with every claim · estimated: own 10 %, 5 % in common with every estimate (provisions.md 9.3, choices)
 *   amount by the brief or typed: like a claim, on a leaf of its own, until it is weighed (a choice)
 * Masses are whole milligrams underneath, so that sums do not depend on their order.
 */
export const claimDoubt = { own: 0.03, common: 0.02 } as const
export const estimateDoubt = { own: 0.1, common: 0.05 } as const

/** An amount has no common part with claims: both parts of a claim's doubt stand on its own leaf, as squares. */
const amountDoubt = Math.hypot(claimDoubt.own, claimDoubt.common)
/** One reading at 1 g steps with a spread of half a step: √(0.408² + 0.5²) g (provisions.md 9.1). */
const readingU_g = 0.65

export const claimedMass = (massG: number, leaf: string, from: string): Figure<'g'> =>
  given(massG, 'g', 'claimed', { [leaf]: claimDoubt.own * massG, 'claims:bias': claimDoubt.common * massG }, from)

export const estimatedMass = (massG: number, leaf: string, from: string): Figure<'g'> =>
  given(massG, 'g', 'estimated', { [leaf]: estimateDoubt.own * massG, 'estimates:bias': estimateDoubt.common * massG }, from)

/** Whole milligrams of a mass in grams. */
export const milligrams = (massG: number): number => Math.round(massG * 1000)

export const isCarriedByAnother = (line: Line): boolean => line.carriedBy !== ''
export const nameOf = (line: Line): string => (line.kind === 'item' ? line.item.name : line.supply.name)
export const areaOf = (line: Line): KitArea => (line.kind === 'item' ? line.item.kitArea : line.supply.kitArea)
export const isWished = (line: Line): boolean => line.kind === 'item' && line.item.status === 'wished'

/** What a line is of, whatever its lane: the item, or the supply in its container. */
export const thingOf = (line: Line): string =>
  line.kind === 'item' ? line.item.uid : line.container === null ? line.supply.uid : `${line.supply.uid}:${line.container.uid}`

/** The key of a line within its loadout: `<item or supply uid>:<lane>[:<container uid>]`. */
export function keyOf(line: Line): string {
  if (line.kind === 'item') return `${line.item.uid}:${line.lane}`
  const place = line.container === null ? '' : `:${line.container.uid}`
  return `${line.supply.uid}:${line.lane}${place}`
}

/** g; null: not known. A line carried by another weighs nothing here. */
export function lineMass(line: Line): Figure<'g'> | null {
  if (isCarriedByAnother(line)) return given(0, 'g', 'given', {}, `carried by ${line.carriedBy}`)
  return line.kind === 'item' ? itemLineMass(line) : supplyLineMass(line)
}

function itemLineMass({ item, pieces }: ItemLine): Figure<'g'> | null {
  return item.mass === null ? null : piecesOf(item.mass, pieces)
}

/** Pieces alike share every leaf of the one figure: their doubt grows with their number, not with its root. */
export function piecesOf(piece: Figure<'g'>, pieces: number): Figure<'g'> {
  if (pieces === 1) return piece
  const many = scaled(piece, pieces, 'g', 'one piece', `${pieces} × one piece`)
  return { ...many, value: ((milligrams(piece.value) * pieces) / 1000) as Figure<'g'>['value'] }
}

function supplyLineMass(line: SupplyLine): Figure<'g'> | null {
  if (line.amount === null) return null
  return line.supply.unit === 'piece' ? countedMass(line, line.amount) : pouredMass(line, line.amount)
}

/** Pieces are counted, so only the mass of one is in doubt. */
function countedMass({ supply }: SupplyLine, pieces: number): Figure<'g'> {
  const pieceG = supply.massGPerUnit
  const leaf = `supply:${supply.uid}`
  if (supply.massFrom === 'claimed') return piecesOf(claimedMass(pieceG, leaf, 'claimed'), pieces)
  if (supply.massFrom === 'estimated') return piecesOf(estimatedMass(pieceG, leaf, 'estimated'), pieces)
  const u = Math.min(readingU_g, claimDoubt.own * pieceG)
  return piecesOf(given(pieceG, 'g', 'measured', { [leaf]: u }, 'weighed'), pieces)
}

function pouredMass(line: SupplyLine, amount: number): Figure<'g'> {
  const massG = milligrams(amount * line.supply.massGPerUnit) / 1000
  const leaf = `amount:${keyOf(line)}`
  if (line.amountFrom === 'weighed') return contentsMass(massG, leaf, line.container)
  if (line.amountFrom === 'typed' && line.supply.massFrom === 'estimated') return estimatedMass(massG, leaf, 'typed, estimated')
  const shares = { [leaf]: amountDoubt * massG }
  return line.amountFrom === 'brief' ? given(massG, 'g', 'brief', shares, 'by the brief') : given(massG, 'g', 'claimed', shares, 'typed')
}

/** contents = reading − empty: the doubt of the empty mass counts against it, and cancels where the container is carried too. */
function contentsMass(massG: number, leaf: string, container: KitItem | null): Figure<'g'> {
  const shares: Record<string, number> = { [leaf]: readingU_g }
  for (const [empty, share] of Object.entries(container?.mass?.shares ?? {})) if (!isGain(empty)) shares[empty] = -share
  return given(massG, 'g', 'measured', shares, container === null ? 'weighed' : `weighed in ${container.name}`)
}

/** The reading's own gain is not kept with the amount; the container's alone would have the wrong sign. */
const isGain = (leaf: string): boolean => leaf.startsWith('scale:')
