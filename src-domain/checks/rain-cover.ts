/**
 * Dry above: a cover of the upper body for the rain the brief expects.
 *   have 2 full (jacket, poncho, cape), 1 weak (umbrella or wind shirt alone), 0 none · need and enough by rain class (laws/rain-cover.ts)
 * In mountains a cover is asked even of a dry forecast. The check knows no seams and forecasts nothing.
 */
import { upperCoverAsked } from '../laws/rain-cover.ts'
import { unknown, type Check } from './check.ts'
import { coverFinding } from './covers.ts'

export const rainCover: Check = {
  id: 'rain-cover',
  label: 'Dry above',
  duties: ['rain-shell'],
  withoutBrief: false,
  find({ loadout, brief }) {
    if (brief.rain === null) return unknown('rain')
    return coverFinding(loadout, 'rain-shell', upperCoverAsked(brief.rain, brief.mountains), brief)
  },
}
