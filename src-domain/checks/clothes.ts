/**
 * What may be worn, in clo, as the three clothing checks read it.
 *   Icl = 0.161 + 0.835·Σ Iclu over each item once (laws/clothing-insulation.ts)
 * A garment's own figure is `garment-clo`; without one the smaller table value of its kind (laws/garment-table.ts), an estimate. An
 * insulating layer whose kind is not told by its fill has no table value: the check then asks for it. An umbrella is no garment.
 */
import { given, total, work, type Figure } from '../figures/figure.ts'
import { ensembleClo } from '../laws/clothing-insulation.ts'
import { garmentClo } from '../laws/garment-table.ts'
import { goingFor, serves, type Going } from '../loadout/going.ts'
import { traitNumber, traitOf, traitText, type KitItem } from '../loadout/loadout.ts'

export const walkingDuties = [
  ...['base-layer', 'legwear', 'mid-layer', 'wind-shell', 'rain-shell', 'rain-legs', 'hat', 'gloves', 'shoes', 'socks'],
] as const
export const restDuties = [...walkingDuties, 'big-jacket', 'dry-base'] as const

/** Kind of garment that stands for a duty where nothing better is said. */
const kindOfDuty: Readonly<Record<string, string>> = {
  'base-layer': 'base-bottom',
  'dry-base': 'base-bottom',
  legwear: 'trousers-thin',
  'wind-shell': 'shell',
  'rain-shell': 'shell',
  'rain-legs': 'over-trousers',
  hat: 'hat',
  gloves: 'gloves',
  shoes: 'shoes',
  socks: 'socks-thin',
}

/** Insulation of one garment; null: not known and no table value stands for it. */
export function garmentCloOf(item: KitItem): Figure<'clo'> | null {
  const said = traitOf(item, 'garment-clo')
  if (said?.number != null) return given(said.number, 'clo', said.origin, {}, item.name)
  const kind = tableKind(item)
  if (kind === null) return null
  return given(kind === '' ? 0 : garmentClo(kind), 'clo', 'estimated', {}, kind === '' ? 'no garment' : `garment table: ${kind}`)
}

/** '' : no garment; null: an insulating layer of no known kind. */
function tableKind(item: KitItem): string | null {
  if (traitText(item, 'cover-kind') === 'umbrella') return ''
  if (serves(item, 'big-jacket')) return filledKind[traitText(item, 'fill')] ?? null
  if (serves(item, 'mid-layer')) return null
  const kinds = item.duties.flatMap(({ duty }) => kindOfDuty[duty] ?? [])
  return kinds.length === 0 ? '' : kinds.reduce((a, b) => (garmentClo(b) > garmentClo(a) ? b : a))
}
const filledKind: Readonly<Record<string, string>> = { down: 'jacket-down', synthetic: 'jacket-fibre' }

export type Worn =
  | { readonly ok: true; readonly clo: Figure<'clo'> }
  | { readonly ok: false; readonly code: 'clothing' | 'garment-clo'; readonly item: string }

/** All of these garments together, or what is missing. */
export function wornTogether(garments: readonly Going[]): Worn {
  if (garments.length === 0) return { ok: false, code: 'clothing', item: '' }
  const parts: { readonly name: string; readonly figure: Figure<'clo'> }[] = []
  for (const { item } of garments) {
    const figure = garmentCloOf(item)
    if (figure === null) return { ok: false, code: 'garment-clo', item: item.name }
    if (figure.value > 0) parts.push({ name: item.name, figure })
  }
  return { ok: true, clo: work(ensembleClo, { sumClo: total('garments', 'clo', parts) }) }
}

/** What is worn while walking: everything but the rest jacket. */
export const walkingGarments = (going: readonly Going[]): readonly Going[] =>
  goingFor(going, ...walkingDuties).filter(({ item }) => !serves(item, 'big-jacket'))
export const restGarments = (going: readonly Going[]): readonly Going[] => goingFor(going, ...restDuties)

const AIRY = 100
const SHELLED = 8

/** Air permeability of the outer layer, l/m²s: the tightest shell's own figure, 8 with a shell, 100 without. */
export function outerPermeability(going: readonly Going[]): Figure<'l/m2s'> {
  const shells = goingFor(going, 'wind-shell', 'rain-shell').filter(({ item }) => traitText(item, 'cover-kind') !== 'umbrella')
  const said = shells.flatMap(({ item }) => traitNumber(item, 'air-permeability') ?? [])
  if (said.length > 0) return given(Math.min(...said), 'l/m2s', 'claimed', {}, 'the tightest shell')
  return given(shells.length > 0 ? SHELLED : AIRY, 'l/m2s', 'estimated', {}, shells.length > 0 ? 'a shell' : 'no shell')
}
