import { duties as allDuties } from '../closet/vocabulary.ts'
import { found, notAsked, type Check } from './check.ts'
import { askedCount, countedOf, countOf, sayingOf } from './counted.ts'

/**
 * Needs and duties: is every duty that the trip asks covered at each of its moments, and every need of what goes met?
 *   have: duties covered + needs met · need = enough: duties asked + needs (count); safety duties have a check of their own
 * Without a brief only the needs are asked. It counts that something is there, not that it is good enough: other checks do.
 * Source: DESIGN.md, Starter codes; provisions.md 12 (choices).
 */
export const duties: Check = {
  id: 'duties',
  label: 'Needs and duties',
  duties: allDuties.filter(({ safety }) => !safety).map(({ code }) => code),
  withoutBrief: true,
  find(asked) {
    const counted = countedOf(asked)
    const mets = [...counted.asked.filter(({ ask }) => !ask.safety).map(({ met }) => met), ...counted.needs]
    if (mets.length === 0) return notAsked('nothing-asked')
    const need = askedCount('duties asked and needs of what goes', mets)
    const saying = mets.filter(({ met }) => !met).map(sayingOf)
    return found({ have: countOf('covered and met', mets), need, enough: need, wants: 'at least', counts: true, saying })
  },
}
