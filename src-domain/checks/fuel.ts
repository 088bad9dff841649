import { constant, given, total, work, type Figure, type Given, type Law } from '../figures/figure.ts'
import { partsBetween } from '../loadout/amounts.ts'
import { boilingPoint } from '../laws/boiling-point.ts'
import { FUEL_MARGIN, fuelMass } from '../laws/fuel-mass.ts'
import { heatToBoil, WATER_kg_l } from '../laws/heat-to-boil.ts'
import { PRIOR_SD_LN_EFFICIENCY, windFactor } from '../laws/stove-efficiency.ts'
import { daysOf, type Brief, type Trip } from '../trips/brief.ts'
import { campNights } from '../trips/nights.ts'
import { found, notAsked, unknown, type Asked, type Check } from './check.ts'
import { doubted, enoughOf } from './margin.ts'
import { fuelCarried, heatValueOf, potOf, stoveOf, type Pot, type StoveKit } from './stove-kit.ts'
import { USUAL_BOIL_l } from './water-needs.ts'

/**
 * Fuel: is there enough for the boils planned, at the height of the camps?
 *   have: net fuel carried (reading less empty, or as typed)
 *   need: Σ boils Q/(LHV·η)·w + priming, of the part between resupplies that asks most · enough: 1.20·need        g, at least
 *   u: need·√(0.25² + 0.05² + 0.03²): ln of the efficiency before any weighed burn (after it, the learned sd), the water, the heat value (choices)
 *   with weighed burns of this stove the efficiency is the table's over the learned factor
 * Defaults as estimates: water of 8 °C, half a litre a boil, w 1.0 behind a windscreen, else 1.15; a camp without a height lies at sea level, where most
 * fuel is asked. Snow to melt is not in it. Source: provisions.md 1.2 to 1.5.
 * Caution: fire and gas: the maker and local rules decide; never in a closed shelter.
 */
export const fuel: Check = {
  id: 'fuel',
  label: 'Fuel',
  duties: ['stove', 'fuel-holder', 'pot', 'windscreen'],
  withoutBrief: false,
  find(asked) {
    const need = fuelNeed(asked)
    if (need.kind === 'cold') return notAsked('cold-meals-only')
    if (need.kind === 'missing') return unknown(need.missing, need.name === undefined ? undefined : { name: need.name })
    return found({
      have: fuelCarried(asked.loadout, need.stove.fuel),
      need: need.grams,
      enough: enoughOf(need.grams, FUEL_MARGIN),
      wants: 'at least',
      saying: [{ code: 'boils', facts: { boils: need.boils, litres: need.litresPerBoil } }],
      cautions: fuelCautions,
    })
  },
}

const fuelCautions = [
  'Wind, a bad screen or snow to melt can double this. Never fuel what is hot; never burn anything in a closed shelter. Local rules decide.',
]

export type FuelNeed =
  | { readonly kind: 'cold' }
  | { readonly kind: 'missing'; readonly missing: string; readonly name?: string }
  | {
      readonly kind: 'asked'
      readonly grams: Figure<'g'>
      readonly stove: StoveKit
      readonly boils: number
      readonly litresPerBoil: number
    }

/** What the boils ask; the loadout gives stove, pot and screen, never the fuel itself. */
export function fuelNeed(asked: Asked): FuelNeed {
  const { brief, trip, loadout } = asked
  const boilsPerDay = brief.meals.boilsPerDay
  if (boilsPerDay === null) return { kind: 'missing', missing: 'boils' }
  if (boilsPerDay === 0) return { kind: 'cold' }
  const days = daysCount(brief, trip)
  if (days === null) return { kind: 'missing', missing: 'nights' }
  const hot = hotDays(brief, days)
  if (hot.length === 0) return { kind: 'cold' }
  const stove = stoveOf(loadout)
  if (!stove.ok) return { kind: 'missing', missing: stove.missing, ...(stove.name === undefined ? {} : { name: stove.name }) }
  return mostAsked(asked, stove.stove, hot, boilsPerDay)
}

/** Of the parts between resupplies of fuel, the one that asks most. */
function mostAsked(asked: Asked, stove: StoveKit, hot: readonly number[], boilsPerDay: number): FuelNeed {
  const { brief, trip, loadout } = asked
  const litres = brief.meals.litresPerBoil ?? USUAL_BOIL_l
  const pot = potOf(loadout)
  const spans = partsBetween('fuel', { brief, trip })
  const parts = spans.length > 0 ? spans : [{ fromDay: 0, toDay: Infinity }]
  let most: FuelNeed = { kind: 'cold' }
  for (const { fromDay, toDay } of parts) {
    const within = hot
      .map((day) => ({ day, share: Math.max(0, Math.min(toDay, day) - Math.max(fromDay, day - 1)) }))
      .filter(({ share }) => share > 0)
    if (within.length === 0) continue
    const boils = within.reduce((sum, { share }) => sum + share * boilsPerDay, 0)
    const grams = spanGrams(asked, stove, pot, litres, within, boilsPerDay, boils)
    if (most.kind !== 'asked' || grams.value > most.grams.value) most = { kind: 'asked', grams, stove, boils, litresPerBoil: litres }
  }
  return most
}

function spanGrams(
  { brief, trip, loadout, walker }: Asked,
  stove: StoveKit,
  pot: Pot,
  litres: number,
  within: readonly { readonly day: number; readonly share: number }[],
  boilsPerDay: number,
  boils: number,
): Figure<'g'> {
  const heats = within.map(({ day, share }): Given => ({
    name: `day ${day}`,
    figure: dayHeat(campHeight(brief, trip, day), pot, litres, share * boilsPerDay),
  }))
  const heat = heatValueOf(loadout, stove.fuel)
  const learned = walker.stoves?.[stove.uid]
  const grams = work(fuelMass, {
    heatKJ: total('heat of the boils', 'kJ', heats),
    heatValue: heat.value,
    efficiency: learned === undefined ? stove.efficiency : work(ownEfficiency, { table: stove.efficiency, factor: ownFuel(learned) }),
    wind: windFigure(stove.hasScreen),
    primingG: given(stove.primingG.value * boils, 'g', stove.primingG.origin, {}, `${boils} lightings`),
  })
  // The pot's own mass is known to grams: its doubt is left inside the water's 5 %.
  const exact = { ...grams, shares: {} }
  const eta = doubted(exact, `efficiency:${stove.name}`, grams.value * (learned?.sdLn ?? PRIOR_SD_LN_EFFICIENCY))
  const water = doubted(eta, 'brief:boils', grams.value * WATER_U_SHARE)
  return doubted(water, `heat-value:${stove.fuel}`, grams.value * heat.uShare)
}

type OwnFuel = { readonly factor: number; readonly burns: number }
const ownFuel = ({ factor, burns }: OwnFuel): Figure<'1'> =>
  given(factor, '1', 'estimated', {}, `fuel over the table's, from ${burns} weighed burn${burns === 1 ? '' : 's'}`)

const ownEfficiency = {
  name: 'Efficiency from own burns',
  formula: 'η = η0/f',
  source: { cite: "conjugate update of the table's efficiency by the walker's weighed burns, standard statistics", known: 'memory' },
  takes: { table: '1', factor: '1' },
  unit: '1',
  compute: ({ table, factor }) => table / factor,
} as const satisfies Law<{ table: '1'; factor: '1' }, '1'>

export interface Burned {
  readonly litres: number
  /** null: as many as the brief's litres to a boil make. */
  readonly boils: number | null
  /** Water as it came; null: as from a stream. */
  readonly fromC: number | null
}

/** Grams that the law, before any learning, gives for water brought to the boil on a trip; null: no stove that says what it burns. */
export function burnLaw({ brief, trip, loadout }: Asked, burned: Burned): { readonly grams: number; readonly stove: StoveKit } | null {
  const kit = stoveOf(loadout)
  if (!kit.ok) return null
  const { stove } = kit
  const boils = burned.boils !== null && burned.boils > 0 ? burned.boils : burned.litres / (brief.meals.litresPerBoil ?? USUAL_BOIL_l)
  const pot = potOf(loadout)
  const heatKJ = heatToBoil.compute({
    waterKg: burned.litres * WATER_kg_l,
    startC: burned.fromC ?? COLD_WATER_C,
    targetC: work(boilingPoint, { heightM: campHeight(brief, trip, 1) }).value,
    potKg: pot.massKg.value * boils,
    potHeat: pot.heat.value,
  })
  const grams = fuelMass.compute({
    heatKJ,
    heatValue: heatValueOf(loadout, stove.fuel).value.value,
    efficiency: stove.efficiency.value,
    wind: windFigure(stove.hasScreen).value,
    primingG: stove.primingG.value * boils,
  })
  return grams > 0 ? { grams, stove } : null
}

/** 5 % of the water, and so of the heat (choice). */
const WATER_U_SHARE = 0.05
const COLD_WATER_C = 8

function dayHeat(heightM: Figure<'m'>, pot: Pot, litres: number, boils: number): Figure<'kJ'> {
  const one = work(heatToBoil, {
    waterKg: given(litres * WATER_kg_l, 'kg', 'given', {}, `${litres} l`),
    startC: given(COLD_WATER_C, 'degC', 'estimated', {}, 'water from a stream'),
    targetC: work(boilingPoint, { heightM }),
    potKg: pot.massKg,
    potHeat: pot.heat,
  })
  return { ...one, value: (one.value * boils) as typeof one.value }
}

const windFigure = (hasScreen: boolean): Figure<'1'> =>
  hasScreen
    ? constant(1, '1', 'behind a windscreen')
    : given(windFactor(2, 'none') ?? 1.15, '1', 'estimated', {}, 'no windscreen, light air')

/** Height of the camp that a day's boils are made at: the night's after it, on the last day the night's before. */
function campHeight(brief: Brief, trip: Pick<Trip, 'startsOn' | 'endsOn'>, day: number): Figure<'m'> {
  const nights = campNights(brief, trip) ?? []
  const heightM = (nights[day - 1] ?? nights.at(-1))?.heightM ?? null
  return heightM === null
    ? given(0, 'm', 'estimated', {}, 'no camp height: sea level asks for most')
    : given(heightM, 'm', 'given', {}, 'height of the camp')
}

export function daysCount(brief: Brief, trip: Pick<Trip, 'startsOn' | 'endsOn'>): number | null {
  const last = brief.legs.reduce((most, leg) => Math.max(most, leg.day), 0)
  return daysOf(trip) ?? (last > 0 ? last : brief.nightsOut === null ? null : brief.nightsOut + 1)
}

export const hotDays = ({ meals }: Brief, days: number): readonly number[] =>
  Array.from({ length: days }, (_, i) => i + 1).filter((day) => !meals.coldDays.includes(day))
