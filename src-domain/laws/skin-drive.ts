/**
 * What drives heat from resting skin through bedding: the temperature difference, and the insensible moisture reckoned as one.
 *   D = (Tsk − T) + im·(ps(Tsk) − pa)      D K; Tsk skin °C; T air °C; im 0.38; ps, pa kPa; pa = RH/100·ps(T)
 * With Re = (w/im)·R and w = 0.06 the moisture term w·(ps − pa)/Re is im·(ps − pa)/R: both go through the same resistance R.
 * Adds 1.7 K at 0 °C. No sweating. Source: ISO 11079:2007, wettedness and permeability of its minimal criterion (read).
 */
import type { Law } from '../figures/figure.ts'
import { vapour_kPa } from './saturation-vapour.ts'

export const MOISTURE_INDEX = 0.38

export const skinDrive = {
  name: 'Skin over air, moisture included',
  formula: 'D = (Tsk − T) + 0.38·(ps(Tsk) − RH/100·ps(T))',
  source: { cite: 'ISO 11079:2007, dry and moist path with im 0.38 and wettedness 0.06', known: 'read' },
  takes: { skinC: 'degC', airC: 'degC', rhPct: '%' },
  unit: 'K',
  compute: ({ skinC, airC, rhPct }) => skinC - airC + MOISTURE_INDEX * (vapour_kPa(skinC) - (rhPct / 100) * vapour_kPa(airC)),
} as const satisfies Law<{ skinC: 'degC'; airC: 'degC'; rhPct: '%' }, 'K'>
