/**
 * Heat that brings water and its pot to a temperature, usually to boiling.
 *   Q = (m·4.19 + mₚ·cₚ)·(t − t0)      Q kJ, m and mₚ kg, cₚ kJ/(kg K), t and t0 °C; nothing when t0 ≥ t
 * 4.19 kJ/(kg K) is the mean of water from 0 to 100 °C by IF97 region 1 (recomputed: 418.97 − 0.10 kJ/kg over 99.96 K).
 * Source: definition of heat capacity; metals' figures in `potHeat_kJ_kgK` are handbook values (memory).
 */
import type { Law } from '../figures/figure.ts'

export const WATER_HEAT_kJ_kgK = 4.19

/** Water at 20 °C (IF97: 998.206 kg/m³). */
export const WATER_kg_l = 0.998

/** Handbook values, memory. `steel` is stainless. */
export const potHeat_kJ_kgK = { aluminium: 0.897, titanium: 0.523, steel: 0.5, 'cast-iron': 0.46 } as const
export type PotMetal = keyof typeof potHeat_kJ_kgK

type Takes = { waterKg: 'kg'; startC: 'degC'; targetC: 'degC'; potKg: 'kg'; potHeat: 'kJ/(kg K)' }

export const heatToBoil = {
  name: 'Heat to boil',
  formula: 'Q = (m·4.19 + mp·cp)·(t − t0)',
  source: { cite: 'heat capacity of water, mean 0 to 100 °C, IAPWS-IF97 region 1; metals from handbooks', known: 'memory' },
  takes: { waterKg: 'kg', startC: 'degC', targetC: 'degC', potKg: 'kg', potHeat: 'kJ/(kg K)' },
  unit: 'kJ',
  cautions: ({ startC, targetC }) => (startC >= targetC ? ['The water is already as hot as asked: no heat is counted.'] : []),
  compute: ({ waterKg, startC, targetC, potKg, potHeat }) =>
    (waterKg * WATER_HEAT_kJ_kgK + potKg * potHeat) * Math.max(0, targetC - startC),
  leavesOut: 'heat lost by the pot on the way up (it is inside the efficiency of the stove)',
} as const satisfies Law<Takes, 'kJ'>
