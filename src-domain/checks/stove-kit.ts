import type { KitTrait, Loadout, SupplyLine } from '../loadout/loadout.ts'
import { covering, itemLines, supplyLines, traitNumber, traitOf, traitText } from '../loadout/loadout.ts'
import { massAnywhere } from '../loadout/moments.ts'
import { constant, given, total, work, type Figure, type Given } from '../figures/figure.ts'
import { blendHeatMJkg, fuelDefaults, isFuelKind, type FuelKind } from '../laws/fuel-heat.ts'
import { readGasMix } from '../laws/gas-mix.ts'
import type { GasMix } from '../laws/gas-pressure.ts'
import { potHeat_kJ_kgK, type PotMetal } from '../laws/heat-to-boil.ts'
import { PRIMING_g, stoveKinds, usualStove } from '../laws/stove-efficiency.ts'
import { canisterLeft } from '../laws/fuel-mass.ts'

/**
 * The stove of a loadout with its fuel, pot and screen, as `fuel` and `gas-cold` read them. A stove or pot carried by another serves too.
 * Defaults, shown as estimates: efficiency by the fuel (laws/stove-efficiency.ts), priming 3 g for pressurised liquids, an aluminium pot of 120 g.
 */
export interface StoveKit {
  readonly name: string
  readonly uid: string
  readonly fuel: FuelKind
  readonly efficiency: Figure<'1'>
  readonly primingG: Figure<'g'>
  readonly feed: 'upright' | 'inverted'
  readonly hasScreen: boolean
}

export type StoveFound =
  { readonly ok: true; readonly stove: StoveKit } | { readonly ok: false; readonly missing: string; readonly name?: string }

/** The first stove that says what it burns. */
export function stoveOf(loadout: Loadout): StoveFound {
  const lines = covering(loadout, 'stove')
  if (lines.length === 0) return { ok: false, missing: 'stove' }
  const told = lines.find((line) => isFuelKind(traitText(line.item, 'fuels')))
  if (told === undefined) return { ok: false, missing: 'fuels', name: lines[0]!.item.name }
  const { item } = told
  const fuel = traitText(item, 'fuels') as FuelKind
  const kind = stoveKinds[usualStove[fuel]]
  const feed = traitText(item, 'feed')
  return {
    ok: true,
    stove: {
      name: item.name,
      uid: item.uid,
      fuel,
      efficiency: traitFigure(item, 'efficiency', '1') ?? given(kind.efficiency, '1', 'estimated', {}, kind.cite),
      primingG: traitFigure(item, 'priming', 'g') ?? usualPriming(fuel),
      feed: feed === 'inverted' || feed === 'liquid' ? 'inverted' : 'upright',
      hasScreen: covering(loadout, 'windscreen').length > 0,
    },
  }
}

const usualPriming = (fuel: FuelKind): Figure<'g'> =>
  fuel === 'petrol' || fuel === 'paraffin'
    ? given(PRIMING_g, 'g', 'estimated', {}, 'priming, each lighting')
    : constant(0, 'g', 'no priming')

export interface Pot {
  readonly massKg: Figure<'kg'>
  readonly heat: Figure<'kJ/(kg K)'>
}

export function potOf(loadout: Loadout): Pot {
  const item = covering(loadout, 'pot')[0]?.item
  const metal = item === undefined ? '' : traitText(item, 'pot-metal')
  const known = Object.hasOwn(potHeat_kJ_kgK, metal)
  const massG = item?.mass ?? given(120, 'g', 'estimated', {}, 'a pot')
  return {
    massKg: work(gramsAsKg, { massG }),
    heat: known
      ? constant(potHeat_kJ_kgK[metal as PotMetal], 'kJ/(kg K)', metal)
      : given(potHeat_kJ_kgK.aluminium, 'kJ/(kg K)', 'estimated', {}, 'taken as aluminium, which asks for most'),
  }
}

const gramsAsKg = {
  name: 'Pot',
  formula: 'g/1000',
  source: { cite: 'exact', known: 'memory' },
  takes: { massG: 'g' },
  unit: 'kg',
  compute: ({ massG }: { readonly massG: number }) => massG / 1000,
} as const

/** Lines of fuel for this kind of stove, whoever carries them. */
export function fuelLines(loadout: Loadout, fuel: FuelKind): readonly SupplyLine[] {
  return supplyLines(loadout).filter((line) => {
    const kind = fuelKindOf(line)
    return kind === fuel || kind === 'unsaid'
  })
}

/** Which stove a supply is for; `unsaid`: fuel that does not name its kind; null: no fuel. */
export function fuelKindOf(line: SupplyLine): FuelKind | 'unsaid' | null {
  const said = traitText(line.supply, 'fuels')
  if (isFuelKind(said)) return said
  if (traitOf(line.supply, 'gas-mix') !== undefined) return 'gas'
  const isHeld = line.container?.duties.some(({ duty }) => duty === 'fuel-holder') === true
  const asksHolder = line.supply.needs.some(({ duty }) => duty === 'fuel-holder')
  if (line.container !== null && traitNumber(line.container, 'net-full') !== null && isHeld) return 'gas'
  return isHeld || asksHolder || traitOf(line.supply, 'heat-value') !== undefined ? 'unsaid' : null
}

export function fuelCarried(loadout: Loadout, fuel: FuelKind): Figure<'g'> {
  const parts = fuelLines(loadout, fuel).map((line): Given => ({ name: line.supply.name, figure: massAnywhere(line) }))
  return parts.length === 0 ? given(0, 'g', 'worked', {}, 'no fuel in the loadout') : total('fuel carried', 'g', parts)
}

/** Heat value of the fuel with its relative doubt as a share of it: as its supply says, by its mix, else the usual of its kind. */
export function heatValueOf(loadout: Loadout, fuel: FuelKind): { readonly value: Figure<'MJ/kg'>; readonly uShare: number } {
  const usual = fuelDefaults[fuel]
  for (const { supply } of fuelLines(loadout, fuel)) {
    const own = traitFigure(supply, 'heat-value', 'MJ/kg')
    if (own !== null) return { value: own, uShare: HEAT_U_SHARE }
  }
  const mix = fuel === 'gas' ? gasMixOf(loadout) : null
  if (mix !== null) return { value: constant(blendHeatMJkg(mix), 'MJ/kg', 'from its gas mix'), uShare: HEAT_U_SHARE }
  return {
    value: given(usual.heatMJkg, 'MJ/kg', 'estimated', {}, usual.cite),
    uShare: Math.max(HEAT_U_SHARE, usual.uMJkg / usual.heatMJkg),
  }
}

/** 3 % (choice). */
export const HEAT_U_SHARE = 0.03

/** The mix named on the gas or on its canister; null: not named, or not to be read. */
export function gasMixOf(loadout: Loadout): GasMix | null {
  for (const line of fuelLines(loadout, 'gas')) {
    const text = traitText(line.supply, 'gas-mix') || (line.container === null ? '' : traitText(line.container, 'gas-mix'))
    if (text !== '') return readGasMix(text)
  }
  for (const { item } of itemLines(loadout)) if (traitText(item, 'gas-mix') !== '') return readGasMix(traitText(item, 'gas-mix'))
  return null
}

/** Share of a full canister left after the trip's need, 0 to 1; without a full figure what is carried counts as full. */
export function leftAfter(loadout: Loadout, carried: Figure<'g'>, needG: Figure<'g'>): Figure<'1'> {
  const fullG = fuelLines(loadout, 'gas').reduce(
    (sum, line) => sum + (line.container === null ? 0 : (traitNumber(line.container, 'net-full') ?? 0)),
    0,
  )
  const full =
    fullG > 0
      ? given(Math.max(fullG, carried.value), 'g', 'claimed', {}, 'full canisters')
      : given(carried.value, 'g', 'estimated', {}, 'taken as full')
  return work(canisterLeft, { carriedG: carried, needG, fullG: full })
}

function traitFigure<U extends string>(holder: { readonly traits: readonly KitTrait[] }, code: string, unit: U): Figure<U> | null {
  const trait = traitOf(holder, code)
  return trait === undefined || trait.number === null ? null : given(trait.number, unit, trait.origin)
}
