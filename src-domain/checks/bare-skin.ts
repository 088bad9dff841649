/**
 * What wind does to bare skin, said beside the clothing checks: wind chill, its frostbite band, and minutes where the formula answers.
 * Laws: laws/wind-chill.ts, laws/frostbite.ts. A caution, never a state.
 */
import { frostbiteBand, frostbiteMinutes } from '../laws/frostbite.ts'
import { hasWindChill, windChill } from '../laws/wind-chill.ts'
import type { Saying } from './check.ts'

export function bareSkin(airC: number, windKmh: number): { readonly saying: readonly Saying[]; readonly cautions: readonly string[] } {
  if (!hasWindChill(airC, windKmh)) return { saying: [], cautions: [] }
  const chillC = windChill.compute({ airC, windKmh })
  const band = frostbiteBand(chillC, airC)
  const minutes = frostbiteMinutes(airC, windKmh)
  const facts = { chillC, band, ...(minutes.ok ? { minutes: minutes.value } : {}) }
  const freezing = band !== 'none' && band !== 'low'
  return { saying: [{ code: 'wind-chill', facts }], cautions: freezing ? windChill.cautions({ airC, windKmh }) : [] }
}
