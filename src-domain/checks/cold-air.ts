/**
 * The air of the three clothing checks as the heat balance takes it, or why the question is not asked.
 *   v = max(0.4, 0.667·V10/3.6 + 0.5·w) m/s at the body; V10 forecast wind, w walking speed (half of it added: choice)
 * Above 10 °C no cold stress is computed: not asked. No wind on the brief: unknown.
 */
import { constant, given, work, type Figure, type Law } from '../figures/figure.ts'
import { COLD_BELOW_C } from '../laws/clothed-balance.ts'
import { FACE_FACTOR } from '../laws/wind-chill.ts'
import type { Air } from '../trips/day-air.ts'
import { notAsked, unknown, type Finding } from './check.ts'

export type ColdAir =
  { readonly ok: true; readonly airC: Figure<'degC'>; readonly windKmh: number } | { readonly ok: false; readonly finding: Finding }

export function coldAir(air: Air, windKmh: number | null): ColdAir {
  if (!air.ok) return { ok: false, finding: unknown(air.missing) }
  if (air.figure.value > COLD_BELOW_C) return { ok: false, finding: notAsked('mild-air') }
  if (windKmh === null) return { ok: false, finding: unknown('wind') }
  return { ok: true, airC: air.figure, windKmh }
}

const windAtBody = {
  name: 'Wind at the body',
  formula: 'v = max(0.4, 0.667·V10/3.6 + 0.5·w)',
  source: { cite: 'Face height over 10 m is 0.667 in the wind chill formulas; half the walking speed is added', known: 'choice' },
  takes: { windKmh: 'km/h', walkMs: 'm/s' },
  unit: 'm/s',
  compute: ({ windKmh, walkMs }) => Math.max(0.4, (FACE_FACTOR * windKmh) / 3.6 + 0.5 * walkMs),
} as const satisfies Law<{ windKmh: 'km/h'; walkMs: 'm/s' }, 'm/s'>

export const windFigure = (windKmh: number, walkMs: number): Figure<'m/s'> =>
  work(windAtBody, { windKmh: given(windKmh, 'km/h', 'given', {}, 'the forecast'), walkMs: given(walkMs, 'm/s', 'estimated') })

export const STILL = constant(0.4, 'm/s', 'in the lee or in shelter')

/** What the balance takes beside the air: heat made, nothing given away, 80 % humidity. */
export const climateFigures = (
  heat: Figure<'W/m2'>,
  airC: Figure<'degC'>,
  windMs: Figure<'m/s'>,
  walkMs: number,
  permeability: Figure<'l/m2s'>,
) => ({
  heat,
  work: constant(0, 'W/m2', 'no work given away'),
  airC,
  permeability,
  walkMs: given(walkMs, 'm/s', 'estimated', {}, walkMs > 0 ? 'walking (choice)' : 'sitting'),
  windMs,
  rhPct: given(80, '%', 'estimated', {}, 'humidity (choice)'),
})
