/**
 * What wind does to bare skin, beside the clothing checks: wind chill, and about how many minutes where the frostbite formula answers, as
 * lines of the working; a caution from the band at which skin can freeze.
 * Laws: laws/wind-chill.ts, laws/frostbite.ts. Never a state.
 */
import { given, work, type Figure, type Given } from '../figures/figure.ts'
import { frostbiteBand, frostbiteMinutes, frostbiteTime } from '../laws/frostbite.ts'
import { hasWindChill, windChill } from '../laws/wind-chill.ts'

export interface BareSkin {
  readonly lines: readonly Given[]
  readonly cautions: readonly string[]
}

export function bareSkin(airC: Figure<'degC'>, windKmh: number): BareSkin {
  if (!hasWindChill(airC.value, windKmh)) return { lines: [], cautions: [] }
  const at = { airC, windKmh: given(windKmh, 'km/h', 'given', {}, 'the forecast') }
  const chill = work(windChill, at)
  const band = frostbiteBand(chill.value, airC.value)
  const lines: Given[] = [{ name: 'wind chill on bare skin', figure: chill }]
  if (frostbiteMinutes(airC.value, windKmh).ok) lines.push({ name: 'bare skin may freeze after about', figure: work(frostbiteTime, at) })
  const cautions = band in freezesIn ? [freezesIn[band]!, ...windChill.cautions({ airC: airC.value, windKmh })] : []
  return { lines, cautions }
}

const freezesIn: Readonly<Partial<Record<string, string>>> = {
  '10-30-min': 'In this wind exposed skin can freeze in 10 to 30 minutes.',
  '5-10-min': 'In this wind exposed skin can freeze in 5 to 10 minutes.',
  '2-5-min': 'In this wind exposed skin can freeze in 2 to 5 minutes.',
  'under-2-min': 'In this wind exposed skin can freeze in under 2 minutes.',
}
