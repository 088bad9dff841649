import { constant, given, work, type Figure } from '../figures/figure.ts'
import { traitNumber, traitOf, traitText, type KitItem, type Line, type SupplyLine } from '../loadout/loadout.ts'
import { lineMass } from '../loadout/mass.ts'
import { FOOD_DENSITY_kg_l } from '../laws/food-room.ts'
import { canisterVolumeL, CLASS_U_SHARE, MEASURED_U_SHARE, packedClass, packedDensities_kg_l, packedVolume } from '../laws/packed-volume.ts'
import { doubted } from './margin.ts'

/**
 * Room that each line takes inside the pack.
 *   its own stuffed litres if they are known (± 5 %), else mass over the density of its class (± 30 % as a rectangle)
 *   a gas canister and a hard food box by their outside, what they hold adding nothing; other supplies by their own density; water 1.0 kg/l
 * Stowed outside or nested counts nothing; the pack itself counts nothing. Source: provisions.md 5 (common practice).
 */
export type Room = { readonly ok: true; readonly litres: Figure<'l'> | null } | { readonly ok: false; readonly name: string }

export function roomOf(line: Line): Room {
  return line.kind === 'item' ? itemRoom(line.item, line.pieces) : supplyRoom(line)
}

const NONE: Room = { ok: true, litres: null }

function itemRoom(item: KitItem, pieces: number): Room {
  if (isPack(item) || traitText(item, 'stowed') === 'outside' || traitText(item, 'stowed') === 'nested') return NONE
  const own = ownLitres(item)
  if (own !== null)
    return {
      ok: true,
      litres: doubted(
        given(own.litres * pieces, 'l', own.origin, {}, own.from),
        `room:${item.uid}`,
        own.litres * pieces * MEASURED_U_SHARE,
      ),
    }
  if (item.mass === null) return { ok: false, name: item.name }
  const name = packedClass({
    kitArea: item.kitArea,
    duties: item.duties.map(({ duty }) => duty),
    fill: traitText(item, 'fill'),
    said: traitText(item, 'packing-class'),
  })
  return { ok: true, litres: byDensity((item.mass.value * pieces) / 1000, packedDensities_kg_l[name], name, item.uid) }
}

interface OwnLitres {
  readonly litres: number
  readonly origin: 'measured' | 'claimed' | 'estimated'
  readonly from: string
}

/** Litres it takes whatever its mass; null: by its class. */
function ownLitres(item: KitItem): OwnLitres | null {
  const packed = traitOf(item, 'packed-volume')
  if (packed !== undefined && packed.number !== null) return { litres: packed.number, origin: packed.origin, from: 'stuffed' }
  const box = traitNumber(item, 'hard-canister')
  if (box !== null) return { litres: box * BOX_WALL, origin: 'estimated', from: 'a hard box with its wall' }
  return isGasCan(item) ? { litres: canisterVolumeL(traitNumber(item, 'net-full')!), origin: 'estimated', from: 'its outside' } : null
}

/** A hard box is about a tenth larger outside than inside (choice). */
const BOX_WALL = 1.1

export const isPack = (item: KitItem): boolean => item.duties.some(({ duty }) => duty === 'pack')
const isGasCan = (item: KitItem): boolean =>
  traitNumber(item, 'net-full') !== null && item.duties.some(({ duty }) => duty === 'fuel-holder')

function supplyRoom(line: SupplyLine): Room {
  const { supply, container } = line
  if (container !== null && (traitNumber(container, 'hard-canister') !== null || isGasCan(container))) return NONE
  if (traitText(supply, 'stowed') === 'outside' || traitText(supply, 'stowed') === 'nested') return NONE
  if (container !== null && traitText(container, 'stowed') === 'outside') return NONE
  const mass = lineMass(line)
  if (mass === null) return { ok: false, name: supply.name }
  const kg = mass.value / 1000
  return kg === 0 ? NONE : { ok: true, litres: byDensity(kg, densityOf(line), supply.name, supply.uid) }
}

/** kg/l: its own; liquids by their millilitres; food as a mix; the rest as dense things. */
function densityOf({ supply }: SupplyLine): number {
  const own = traitNumber(supply, 'bulk-density')
  if (own !== null && own > 0) return own
  if (supply.unit === 'ml') return supply.massGPerUnit
  return supply.kitArea === 'food' ? FOOD_DENSITY_kg_l : packedDensities_kg_l.dense
}

function byDensity(massKg: number, density: number, cite: string, uid: string): Figure<'l'> {
  const litres = work(packedVolume, { massKg: given(massKg, 'kg', 'worked'), density: constant(density, 'kg/l', cite) })
  return doubted(litres, `room:${uid}`, litres.value * CLASS_U_SHARE)
}

/** Litres of food of a line, hard box or not; null: its amount is not known. */
export function foodLitres(line: SupplyLine): number | null {
  const mass = lineMass({ ...line, carriedBy: '' })
  return mass === null ? null : mass.value / 1000 / densityOf(line)
}
