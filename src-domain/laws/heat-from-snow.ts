/**
 * Heat that turns snow into water at 0 °C, or into water at a temperature.
 *   Q melt = m·(2.09·(0 − ts) + 333.55) + mp·cp·(0 − ts)
 *   Q      = m·(2.09·(0 − ts) + 333.55 + 4.19·t) + mp·cp·(t − ts)        Q kJ, m and mp kg, ts ≤ 0 °C ≤ t
 * Source: handbook values of ice and its melting (memory; handbooks print 333.4 to 333.6 kJ/kg).
 * Caution: dry snow scorches, start with 0.1 l of water; snow fills 3 to 10 times the room of its water (common practice).
 */
import type { Law } from '../figures/figure.ts'
import { WATER_HEAT_kJ_kgK } from './heat-to-boil.ts'

export const MELTING_kJ_kg = 333.55
export const ICE_HEAT_kJ_kgK = 2.09

const source = { cite: 'heat of melting 333.55 kJ/kg, ice 2.09 kJ/(kg K) near −10 °C, handbooks', known: 'memory' } as const
const cautions = [
  'Start with a little water in the pot: dry snow scorches. Snow takes 3 to 10 times the room of the water it gives.',
] as const

export const heatToMelt = {
  name: 'Heat to melt snow',
  formula: 'Q = m·(2.09·(0 − ts) + 333.55) + mp·cp·(0 − ts)',
  source,
  takes: { snowKg: 'kg', snowC: 'degC', potKg: 'kg', potHeat: 'kJ/(kg K)' },
  unit: 'kJ',
  cautions: () => cautions,
  compute({ snowKg, snowC, potKg, potHeat }) {
    const coldK = Math.max(0, -snowC)
    return snowKg * (ICE_HEAT_kJ_kgK * coldK + MELTING_kJ_kg) + potKg * potHeat * coldK
  },
} as const satisfies Law<{ snowKg: 'kg'; snowC: 'degC'; potKg: 'kg'; potHeat: 'kJ/(kg K)' }, 'kJ'>

export const heatFromSnow = {
  name: 'Heat from snow to boiling',
  formula: 'Q = m·(2.09·(0 − ts) + 333.55 + 4.19·t) + mp·cp·(t − ts)',
  source,
  takes: { snowKg: 'kg', snowC: 'degC', targetC: 'degC', potKg: 'kg', potHeat: 'kJ/(kg K)' },
  unit: 'kJ',
  cautions: () => cautions,
  compute({ snowKg, snowC, targetC, potKg, potHeat }) {
    const warmK = Math.max(0, targetC)
    return heatToMelt.compute({ snowKg, snowC, potKg, potHeat }) + (snowKg * WATER_HEAT_kJ_kgK + potKg * potHeat) * warmK
  },
} as const satisfies Law<{ snowKg: 'kg'; snowC: 'degC'; targetC: 'degC'; potKg: 'kg'; potHeat: 'kJ/(kg K)' }, 'kJ'>
