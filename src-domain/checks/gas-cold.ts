import { constant, given, work, type Figure, type Law } from '../figures/figure.ts'
import { GOOD_FLAME_kPa, gasFeed, LIQUID_BELOW_AIR_K, WEAK_FLAME_kPa } from '../laws/gas-feed.ts'
import type { GasMix } from '../laws/gas-pressure.ts'
import { campNights, type CampNight } from '../trips/nights.ts'
import { found, notAsked, unknown, type Asked, type Check } from './check.ts'
import { fuelNeed } from './fuel.ts'
import { fuelCarried, gasMixOf, leftAfter } from './stove-kit.ts'

/**
 * Gas in the cold: does gas still flow from the last of the can in the coldest hour that something is cooked?
 *   have: Σ xi·pi(t) − p(h), xi of the share left after the trip's need (liquid fed: of the whole), t = air − 5 °C        kPa, at least
 *   need 30 (a weak flame) · enough 60 (a good one)        choices
 *   air: the planning low where a breakfast is hot, else the mean of the low and the high carried up to the camp; the coldest, lowest night rules
 * A camp without a height lies at sea level, the least favourable. u: the doubt of the low times the slope. Source: provisions.md 1.6.
 * Caution: never warm a canister with a flame, never enclose it in a screen; above 50 °C it may burst.
 */
export const gasCold: Check = {
  id: 'gas-cold',
  label: 'Gas in the cold',
  duties: ['stove', 'fuel-holder'],
  withoutBrief: false,
  find(asked) {
    const need = fuelNeed(asked)
    if (need.kind === 'cold') return notAsked('cold-meals-only')
    if (need.kind === 'missing') return unknown(need.missing, need.name === undefined ? undefined : { name: need.name })
    if (need.stove.fuel !== 'gas') return notAsked('no-gas-stove')
    const mix = gasMixOf(asked.loadout)
    if (mix === null) return unknown('gas-mix', { name: need.stove.name })
    const carried = fuelCarried(asked.loadout, 'gas')
    const left =
      need.stove.feed === 'inverted'
        ? constant(1, '1', 'liquid fed: the mix stays as it is')
        : leftAfter(asked.loadout, carried, need.grams)
    const worst = weakestNight(asked, mix, left)
    if ('missing' in worst) return unknown(worst.missing)
    return found({
      have: worst.gauge,
      need: constant(WEAK_FLAME_kPa, 'kPa', 'a weak flame (choice)'),
      enough: constant(GOOD_FLAME_kPa, 'kPa', 'a good flame (choice)'),
      wants: 'at least',
      saying: [{ code: 'gas-at-the-end', facts: { night: worst.night, left: left.value } }],
      cautions: ['Never warm a canister with a flame, never enclose it in a windscreen. Above 50 °C it may burst.'],
    })
  },
}

type Weakest = { readonly gauge: Figure<'kPa'>; readonly night: number } | { readonly missing: string }

function weakestNight({ brief, trip }: Asked, mix: GasMix, left: Figure<'1'>): Weakest {
  const nights = campNights(brief, trip)
  if (nights === null) return { missing: 'nights' }
  if (nights.length === 0) return dayTrip(brief.lowC, mix, left)
  let weakest: { readonly gauge: Figure<'kPa'>; readonly night: number } | null = null
  for (const night of nights) {
    const air = cookingAir(night, brief.meals.hotBreakfast)
    if ('missing' in air) return air
    const gauge = gaugeIn(air.figure, night.heightM, mix, left)
    if (weakest === null || gauge.value < weakest.gauge.value) weakest = { gauge, night: night.night }
  }
  return weakest ?? { missing: 'nights' }
}

/** Out for the day: the trip's low, at an unknown height. */
function dayTrip(lowC: number | null, mix: GasMix, left: Figure<'1'>): Weakest {
  if (lowC === null) return { missing: 'low' }
  return { gauge: gaugeIn(given(lowC, 'degC', 'given', { 'brief:low': 2 }, 'the expected low'), null, mix, left), night: 0 }
}

function cookingAir(night: CampNight, hotBreakfast: boolean): { readonly figure: Figure<'degC'> } | { readonly missing: string } {
  if (night.low === null) return { missing: 'low' }
  if (hotBreakfast) return { figure: night.low }
  return night.evening === null ? { missing: 'high' } : { figure: night.evening }
}

function gaugeIn(air: Figure<'degC'>, heightM: number | null, mix: GasMix, left: Figure<'1'>): Figure<'kPa'> {
  const share = (gas: keyof GasMix): Figure<'1'> => given(mix[gas], '1', 'claimed', {}, 'share of the mass, as printed')
  return work(gasFeed, {
    liquidC: work(liquidTemp, { air }),
    // The doubt of the need moves the share left; the note counts the doubt of the low alone.
    left: { ...left, shares: {} },
    heightM:
      heightM === null
        ? given(0, 'm', 'estimated', {}, 'no camp height: sea level')
        : given(heightM, 'm', 'given', {}, 'height of the camp'),
    propane: share('propane'),
    isobutane: share('isobutane'),
    butane: share('butane'),
  })
}

const liquidTemp = {
  name: 'The liquid in the canister',
  formula: 'air − 5',
  source: { cite: 'evaporation takes about 340 J/g', known: 'choice' },
  takes: { air: 'degC' },
  unit: 'degC',
  compute: ({ air }) => air - LIQUID_BELOW_AIR_K,
} as const satisfies Law<{ air: 'degC' }, 'degC'>
