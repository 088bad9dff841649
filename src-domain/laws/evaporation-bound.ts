/**
 * The most sweat that can pass through clothing: the bound a breathable shell sets, with fully wet skin at 35 °C.
 *   q = (ps(35) − RH/100·ps(T))/(Ret + Rr)      q W/m²; ps Pa; Ret of the shell, Rr of all other layers m²Pa/W;  m = q/0.672 g/m²h
 * Lower Ret is better. ISO 11092 measures Ret on a plate at 35 °C (read); never convert from g/m²/24 h of other methods.
 * Vapour pressure: saturation-vapour.ts; 0.672 Wh evaporates a gram. Vents are left out, and matter more.
 */
import type { Law } from '../figures/figure.ts'
import { vapour_kPa } from './saturation-vapour.ts'

export const EVAPORATION_Wh_g = 0.672

export const evaporationBound = {
  name: 'Most heat that sweat can carry out',
  formula: 'q = (ps(35) − RH/100·ps(T))/(Ret + Rr)',
  source: { cite: 'ISO 11092 resistance to vapour, in series', known: 'read' },
  takes: { airC: 'degC', rhPct: '%', shellRet: 'm2Pa/W', otherRet: 'm2Pa/W' },
  unit: 'W/m2',
  cautions: () => ['Opening the front passes more than any class of cloth. A face fabric that has wetted out passes less than its figure.'],
  compute: ({ airC, rhPct, shellRet, otherRet }) =>
    (1000 * (vapour_kPa(35) - (rhPct / 100) * vapour_kPa(airC))) / Math.max(0.1, shellRet + otherRet),
} as const satisfies Law<{ airC: 'degC'; rhPct: '%'; shellRet: 'm2Pa/W'; otherRet: 'm2Pa/W' }, 'W/m2'>
