/**
 * Fuel for a heat.
 *   m = Q/(LHV·η)·w      m g, Q kJ, LHV MJ/kg, η 1, w wind factor 1 (kJ divided by MJ/kg gives g)
 * Source: definition of stove efficiency. Margin of a trip 0.20 (choice).
 * Caution: fire and gas. Follow the maker and the local rules; never burn in a closed shelter; never plan on refilling a canister.
 */
import type { Law } from '../figures/figure.ts'

export const FUEL_MARGIN = 0.2

type Takes = { heatKJ: 'kJ'; heatValue: 'MJ/kg'; efficiency: '1'; wind: '1'; primingG: 'g' }

export const fuelMass = {
  name: 'Fuel for the boils',
  formula: 'm = Q/(LHV·η)·w + priming',
  source: {
    cite: 'definition of stove efficiency; wind factor and efficiency from the walker’s burns or the table of stoves',
    known: 'common practice, no source',
  },
  takes: { heatKJ: 'kJ', heatValue: 'MJ/kg', efficiency: '1', wind: '1', primingG: 'g' },
  unit: 'g',
  cautions: () => ['Wind, a bad screen or a cold pot can double this. Local rules on fire decide.'],
  compute: ({ heatKJ, heatValue, efficiency, wind, primingG }) => (heatKJ / (heatValue * efficiency)) * wind + primingG,
} as const satisfies Law<Takes, 'g'>

/** Share of the full canister left when the trip's need has been burned. */
export const canisterLeft = {
  name: 'Left in the canister at the end',
  formula: 'r = (carried − need)/full, 0 to 1',
  source: { cite: 'subtraction', known: 'memory' },
  takes: { carriedG: 'g', needG: 'g', fullG: 'g' },
  unit: '1',
  compute: ({ carriedG, needG, fullG }) => (fullG > 0 ? Math.min(1, Math.max(0, (carriedG - needG) / fullG)) : 0),
} as const satisfies Law<{ carriedG: 'g'; needG: 'g'; fullG: 'g' }, '1'>

/** What a weighed burn says of the efficiency: Q/(LHV·Δm). */
export const burnEfficiency = (heatKJ: number, heatMJkg: number, burnedG: number): number => heatKJ / (heatMJkg * burnedG)
