import { duties as allDuties } from '../closet/vocabulary.ts'
import { nightsOf } from '../trips/brief.ts'
import type { Ask } from '../trips/asked.ts'
import { found, notAsked, unknown, type Check, type Saying } from './check.ts'
import { askedCount, countedOf, countOf, labelOf, sayingOf } from './counted.ts'

/**
 * Safety duties: is every safety duty that the trip asks covered at each of its moments?
 *   have: covered · need = enough: asked (count)
 * No saving removes them. One that was struck with a reason is not counted, and the reason stays in sight; what has expired covers nothing.
 * Source: DESIGN.md, Starter codes; provisions.md 12 (choices).
 */
export const safety: Check = {
  id: 'safety',
  label: 'Safety duties',
  duties: allDuties.filter((duty) => duty.safety).map(({ code }) => code),
  withoutBrief: false,
  find(asked) {
    if (nightsOf(asked.trip, asked.brief) === null) return unknown('nights')
    const counted = countedOf(asked)
    const mets = counted.asked.filter(({ ask }) => ask.safety).map(({ met }) => met)
    const struck = counted.asks.filter((ask) => ask.safety && ask.struck !== null)
    if (mets.length === 0 && struck.length === 0) return notAsked('nothing-asked')
    const need = askedCount('safety duties asked', mets)
    const saying = [...mets.filter(({ met }) => !met).map(sayingOf), ...struck.map(struckSaying)]
    return found({ have: countOf('safety duties covered', mets), need, enough: need, wants: 'at least', counts: true, saying })
  },
}

const struckSaying = ({ duty, struck }: Ask): Saying => ({ code: 'struck', facts: { duty, label: labelOf(duty), reason: struck ?? '' } })
