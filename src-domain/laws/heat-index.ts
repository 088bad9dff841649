/**
 * Heat index: how hot shade and a light wind feel, from air temperature and relative humidity. °F and % as published.
 *   simple = 0.5·(T + 61 + 1.2·(T − 68) + 0.094·RH);  a = (simple + T)/2;  below 80 °F the answer is a, else
 *   HI = −42.379 + 2.04901523·T + 10.14333127·RH − 0.22475541·T·RH − 0.00683783·T² − 0.05481717·RH²
 *        + 0.00122874·T²·RH + 0.00085282·T·RH² − 0.00000199·T²·RH²
 *   dry air (RH < 13, 80 … 112 °F): − ((13 − RH)/4)·√((17 − |T − 95|)/17);  humid (RH > 85, 80 … 87 °F): + ((RH − 85)/10)·((87 − T)/5)
 * Source: Rothfusz 1990 on Steadman 1979, procedure of the US National Weather Service (read).
 * Agreement: its printed chart after rounding, 135 cells, but one known misprint and the cells made without the humid adjustment.
 */
import type { Law } from '../figures/figure.ts'

/** `adjust: false` gives the bare polynomial, as the printed chart was made. */
export function heatIndexF(airF: number, rhPct: number, adjust = true): number {
  const a = (0.5 * (airF + 61 + (airF - 68) * 1.2 + 0.094 * rhPct) + airF) / 2
  if (a < 80) return a
  return polynomial(airF, rhPct) + (adjust ? adjustment(airF, rhPct) : 0)
}

/** The regression alone, without gate or adjustments. */
export function polynomial(t: number, rh: number): number {
  return (
    -42.379 +
    2.04901523 * t +
    10.14333127 * rh -
    0.22475541 * t * rh -
    0.00683783 * t * t -
    0.05481717 * rh * rh +
    0.00122874 * t * t * rh +
    0.00085282 * t * rh * rh -
    0.00000199 * t * t * rh * rh
  )
}

function adjustment(t: number, rh: number): number {
  if (rh < 13 && t >= 80 && t <= 112) return -((13 - rh) / 4) * Math.sqrt(Math.max(0, 17 - Math.abs(t - 95)) / 17)
  if (rh > 85 && t >= 80 && t <= 87) return ((rh - 85) / 10) * ((87 - t) / 5)
  return 0
}

export type HeatBand = 'none' | 'caution' | 'extreme-caution' | 'danger' | 'extreme-danger'

/** Bands of the newer edition (80, 90, 103, 125 °F; the older one says 105 and 130), read to the whole degree. */
export function heatBand(indexC: number): HeatBand {
  const f = Math.round(indexC * 1.8 + 32)
  if (f < 80) return 'none'
  if (f < 90) return 'caution'
  if (f < 103) return 'extreme-caution'
  return f < 125 ? 'danger' : 'extreme-danger'
}

export const heatIndex = {
  name: 'Heat index',
  formula: 'HI = −42.379 + 2.04901523·T + 10.14333127·RH − 0.22475541·T·RH − … (°F, with the published adjustments)',
  source: { cite: 'Rothfusz 1990 on Steadman 1979, US National Weather Service procedure', known: 'read' },
  takes: { airC: 'degC', rhPct: '%' },
  unit: 'degC',
  cautions: ({ airC, rhPct }) => [
    'Danger bands are for shade and no load. With a pack, in sun, take the next band up.',
    ...(airC > 45 || rhPct < 0 || rhPct > 100 ? ['Outside the air temperatures and humidities it was fitted to.'] : []),
  ],
  compute: ({ airC, rhPct }) => (heatIndexF(airC * 1.8 + 32, Math.min(100, Math.max(0, rhPct))) - 32) / 1.8,
} as const satisfies Law<{ airC: 'degC'; rhPct: '%' }, 'degC'>
