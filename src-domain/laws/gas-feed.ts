/**
 * Whether gas still flows: the pressure in the canister over that of the air outside.
 *   g = Σ xi·pi(t) − p(h)      kPa; t the liquid's temperature, xi what is left of the mix at the share r (vapour fed), h m
 *   t low = the root of g(t) = asked, by bisection on −60 … 60 °C
 * 0: nothing comes out. 30: a weak flame. 60: a good one (30 and 60 are choices).
 * The liquid is colder than the air: evaporation takes about 340 J/g. Taken as air − 5 °C (choice); as the air when it stands in unfrozen water.
 */
import type { Law } from '../figures/figure.ts'
import { drainedMix } from './gas-drain.ts'
import { mixPressureKPa, moleShares, type GasMix } from './gas-pressure.ts'
import { standardPressure } from './standard-pressure.ts'

export const WEAK_FLAME_kPa = 30
export const GOOD_FLAME_kPa = 60
export const LIQUID_BELOW_AIR_K = 5

type Takes = { liquidC: 'degC'; left: '1'; heightM: 'm'; propane: '1'; isobutane: '1'; butane: '1' }

export const gasFeed = {
  name: 'Gas over the air outside',
  formula: 'g = Σ xi·pi(t) − p(h), xi of the share r left',
  source: {
    cite: 'Raoult’s law and Rayleigh’s distillation on Antoine constants of Poling, Prausnitz and O’Connell; ISO 2533:1975',
    known: 'read',
  },
  takes: { liquidC: 'degC', left: '1', heightM: 'm', propane: '1', isobutane: '1', butane: '1' },
  unit: 'kPa',
  cautions: () => ['Never warm a canister with a flame. Never enclose it in a windscreen.'],
  compute: ({ liquidC, left, heightM, ...mass }) => gaugeKPa(drainedMix(mass, left, liquidC), liquidC, heightM),
  leavesOut: 'the canister cooling further in a long burn',
} as const satisfies Law<Takes, 'kPa'>

/** The coldest liquid at which this mix still has `askedKPa` over the air; NaN when it is not met between −60 and 60 °C. */
export function lowestLiquidC(mass: GasMix, askedKPa: number, heightM: number): number {
  let [low, high] = [-60, 60]
  if (gaugeKPa(mass, low, heightM) > askedKPa || gaugeKPa(mass, high, heightM) < askedKPa) return Number.NaN
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (gaugeKPa(mass, middle, heightM) < askedKPa) low = middle
    else high = middle
  }
  return (low + high) / 2
}

const gaugeKPa = (mass: GasMix, liquidC: number, heightM: number): number =>
  mixPressureKPa(moleShares(mass), liquidC) - standardPressure.compute({ heightM }) / 1000
