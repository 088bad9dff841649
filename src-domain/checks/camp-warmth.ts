/**
 * Warm in camp: how long one can sit in all that is carried, at the low to plan for.
 *   rule and figures: rest-warmth.ts; air = planning low; 60 min unless said; wind 0.667 of the forecast, or 0.4 m/s in the lee
 * With wet days the same is asked of what was not worn while walking (the dry layers), and a caution says if that drops the state.
 */
import { walkingAir } from '../trips/day-air.ts'
import { nightsOf } from '../trips/brief.ts'
import { notAsked, type Asked, type Check } from './check.ts'
import { coldAir, STILL, windFigure } from './cold-air.ts'

import { minutesOr, restWarmth, type Rest } from './rest-warmth.ts'

const SIT_MINUTES = 60

export const campWarmth: Check = {
  id: 'camp-warmth',
  label: 'Warm in camp',
  duties: ['big-jacket', 'mid-layer', 'dry-base', 'hat', 'gloves'],
  withoutBrief: false,
  find(asked) {
    const { loadout, brief, trip } = asked
    if (nightsOf(trip, brief) === 0) return notAsked('no-night')
    if (brief.sitMinutes === 0) return notAsked('no-sitting')
    const cold = coldAir(walkingAir(brief, trip), brief.windKmh)
    if (!cold.ok) return cold.finding
    const windMs = brief.inLee ? STILL : windFigure(cold.windKmh, 0)
    const rest = { airC: cold.airC, windMs, minutes: minutesOr(brief.sitMinutes, SIT_MINUTES) }
    const now = restWarmth(loadout, rest)
    return 'have' in now ? { ...now, cautions: [...now.cautions, ...dampCautions(asked, rest, now.state)] } : now
  },
}

/** What the dry layers alone come to, if that is worse. */
function dampCautions({ loadout, brief }: Pick<Asked, 'loadout' | 'brief'>, rest: Rest, state: string): readonly string[] {
  if (brief.rain !== 'wet') return []
  const dry = restWarmth(loadout, rest, ({ worn }) => !worn)
  if ('have' in dry) return dry.state === state ? [] : [`If things get damp, the dry layers alone are ${dry.state}.`]
  return state === 'short' ? [] : ['If things get damp, there is no dry layer to change into.']
}
