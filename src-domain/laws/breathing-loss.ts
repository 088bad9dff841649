/**
 * Heat lost by breathing, per m² of body: the breath leaves warmer and wetter than it came.
 *   Tex = 29 + 0.2·T;  H = 0.0173·M·(ps(Tex) − pa) + 0.0014·M·(Tex − T);  pa = RH/100·ps(T)
 * H and heat production M W/m²; T air °C; RH %; ps and pa kPa. Range: −90 … 40 °C.
 * Source: ISO 11079:2007, program of its authors (read).
 */
import type { Law } from '../figures/figure.ts'
import { vapour_kPa } from './saturation-vapour.ts'

export const breathingLoss = {
  name: 'Heat lost by breathing',
  formula: 'H = 0.0173·M·(ps(29 + 0.2·T) − RH/100·ps(T)) + 0.0014·M·(29 − 0.8·T)',
  source: { cite: 'ISO 11079:2007, program of its authors', known: 'read' },
  takes: { heat: 'W/m2', airC: 'degC', rhPct: '%' },
  unit: 'W/m2',
  cautions: ({ airC }) => (airC > 40 ? ['Above 40 °C of air the breath formula was not meant to be used.'] : []),
  compute({ heat, airC, rhPct }) {
    const breathC = 29 + 0.2 * airC
    return 0.0173 * heat * (vapour_kPa(breathC) - (rhPct / 100) * vapour_kPa(airC)) + 0.0014 * heat * (breathC - airC)
  },
} as const satisfies Law<{ heat: 'W/m2'; airC: 'degC'; rhPct: '%' }, 'W/m2'>
