/**
 * Warm at a stop: a rest on the highest point of the coldest day, in all that is carried, in the wind.
 *   rule and figures: rest-warmth.ts; air = mean of low and high carried up by 6.5 K/km; 20 min unless said; no lee
 */
import { stopAir } from '../trips/day-air.ts'
import { notAsked, type Check } from './check.ts'
import { bareSkin } from './bare-skin.ts'
import { coldAir, windFigure } from './cold-air.ts'

import { withLines } from './lines.ts'
import { minutesOr, restWarmth } from './rest-warmth.ts'

const STOP_MINUTES = 20

export const stopWarmth: Check = {
  id: 'stop-warmth',
  label: 'Warm at a stop',
  duties: ['big-jacket', 'mid-layer', 'wind-shell', 'hat', 'gloves'],
  withoutBrief: false,
  find({ loadout, brief, trip }) {
    if (brief.stopMinutes === 0) return notAsked('no-stop')
    const cold = coldAir(stopAir(brief, trip), brief.windKmh)
    if (!cold.ok) return cold.finding
    const minutes = minutesOr(brief.stopMinutes, STOP_MINUTES)
    const now = restWarmth(loadout, { airC: cold.airC, windMs: windFigure(cold.windKmh, 0), minutes })
    if (!('have' in now)) return now
    const chill = bareSkin(cold.airC, cold.windKmh)
    return { ...now, have: withLines(now.have, chill.lines), cautions: [...now.cautions, ...chill.cautions] }
  },
}
