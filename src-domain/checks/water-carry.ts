import { given, total, type Figure, type Given } from '../figures/figure.ts'
import { itemLines, supplyLines, traitNumber, type KitSupply, type Loadout, type SupplyLine } from '../loadout/loadout.ts'
import { isCarriedByAnother } from '../loadout/mass.ts'
import { WATER_kg_l } from '../laws/heat-to-boil.ts'
import { WATER_MARGIN } from '../laws/water-carried.ts'
import { found, notAsked, unknown, type Check } from './check.ts'
import { enoughOf, nothing } from './margin.ts'
import { waterNeed } from './water-needs.ts'

/**
 * Watered: does what is carried hold the water of the longest dry stretch?
 *   have: Σ litres the vessels hold, or the water typed if that is less
 *   need: V of the greatest stretch (water-needs.ts) · enough: 1.15·V        l, at least
 * Range: adults used to the heat. Source: provisions.md 2.3, 2.4 (choices on published sweat equations).
 * Caution: sources fail; drink to thirst; more than 1.42 l an hour can thin the blood's salt.
 */
export const waterCarry: Check = {
  id: 'water-carry',
  label: 'Watered',
  duties: ['water-vessel'],
  withoutBrief: false,
  find(asked) {
    const need = waterNeed(asked)
    if (!need.ok) return unknown(need.missing, need.facts)
    if (need.stretch === null) return notAsked('no-dry-stretch')
    const silent = vesselWithoutLitres(asked.loadout)
    if (silent !== null) return unknown('water-capacity', { name: silent })
    const { stretch, litres } = need.stretch
    const saying =
      stretch === null
        ? []
        : [{ code: 'dry-stretch', facts: { fromM: stretch.fromM, toM: stretch.toM, hours: stretch.hours, dryCamps: stretch.dryCamps } }]
    return found({
      have: waterCarried(asked.loadout),
      need: litres,
      enough: enoughOf(litres, WATER_MARGIN),
      wants: 'at least',
      saying,
      cautions: ['Sources fail: ask locally. Drink to thirst; salt with food on long hot days.'],
    })
  },
}

/** Water as a supply: by volume, in the water area. */
export const isWater = (supply: KitSupply): boolean =>
  supply.kitArea === 'water' && supply.unit === 'ml' && traitNumber(supply, 'treats') === null

export const litresOf = (line: SupplyLine): number => ((line.amount ?? 0) * line.supply.massGPerUnit) / 1000 / WATER_kg_l

/** What the vessels hold, or the typed water where that is less. */
export function waterCarried(loadout: Loadout): Figure<'l'> {
  const holds = capacityL(loadout)
  const typed = supplyLines(loadout).filter(
    (line) => isWater(line.supply) && line.amountFrom !== 'brief' && line.amount !== null && !isCarriedByAnother(line),
  )
  if (typed.length === 0) return holds
  const parts = typed.map((line): Given => ({
    name: line.supply.name,
    figure: given((line.amount ?? 0) / 1000, 'l', line.amountFrom === 'weighed' ? 'measured' : 'given'),
  }))
  const water = total('water typed', 'l', parts)
  return water.value < holds.value ? water : holds
}

export function capacityL(loadout: Loadout): Figure<'l'> {
  const parts: Given[] = []
  for (const line of itemLines(loadout)) {
    const litres = traitNumber(line.item, 'water-capacity')
    if (litres === null || isCarriedByAnother(line)) continue
    const origin = line.item.traits.find((trait) => trait.code === 'water-capacity')?.origin ?? 'claimed'
    parts.push({ name: line.item.name, figure: given(litres * line.pieces, 'l', origin) })
  }
  return parts.length === 0 ? nothing('l', 'no vessel') : total('water the vessels hold', 'l', parts)
}

/** A vessel that is asked to hold water and does not say how much. */
function vesselWithoutLitres(loadout: Loadout): string | null {
  const silent = itemLines(loadout).find(
    (line) =>
      !isCarriedByAnother(line) &&
      line.item.duties.some(({ duty }) => duty === 'water-vessel') &&
      traitNumber(line.item, 'water-capacity') === null,
  )
  return silent?.item.name ?? null
}
