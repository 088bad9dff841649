/**
 * Heat made by the body for what it does, where nothing better is known, and work given away in climbing.
 *   1 met = 58.15 W/m² of body (read).  Climb: W = (body + load)·9.80665·climb/A      W/m²; kg, m/s, m² of body
 * Mets from the ASHRAE 55 table (read), for no load; ISO 8996 classes from memory; the camp and loaded values are choices.
 */
import type { Law } from '../figures/figure.ts'

export const MET_W_m2 = 58.15

/** met: seated quiet, standing, cooking, walking at three paces. */
export const mets = {
  seated: 1.0,
  standing: 1.2,
  cooking: 1.8,
  'walking-3.2-kmh': 2.0,
  'walking-4.8-kmh': 2.6,
  'walking-6.4-kmh': 3.8,
} as const

/** What the checks take when nothing is known, W/m² (choices). */
export const SITTING_W_m2 = 65

export const LOADED_WALK_W_m2 = 200
export const LOADED_CLIMB_W_m2 = 260

export const climbingWork = {
  name: 'Work given to the climb',
  formula: 'W = (body + load)·9.80665·climb/A',
  source: { cite: 'Weight times height gained, per m² of body', known: 'memory' },
  takes: { bodyKg: 'kg', loadKg: 'kg', climbMs: 'm/s', areaM2: 'm2' },
  unit: 'W/m2',
  cautions: ({ areaM2 }) => (areaM2 < 0.5 || areaM2 > 4 ? ['A body area outside 0.5 to 4 m² is no grown person.'] : []),
  compute: ({ bodyKg, loadKg, climbMs, areaM2 }) => ((bodyKg + loadKg) * 9.80665 * climbMs) / areaM2,
} as const satisfies Law<{ bodyKg: 'kg'; loadKg: 'kg'; climbMs: 'm/s'; areaM2: 'm2' }, 'W/m2'>
