/**
 * Warm from below: heat flowing into the ground under the body at the low, which no top can make up for.
 *   have q at the planning low · need 85 · enough 65 W/m², at most (choices, laws/ground-flow.ts); shown as R
 * Stacked mats add. u: 10 % of the mats, 0.04 m²K/W between skin and mat, and the low's own. Not asked in a hammock: there is air below.
 */
import { constant, type Figure, work } from '../figures/figure.ts'
import { groundFlow, matsForFlow, NOTE_FROM_W_m2, SHORT_FROM_W_m2, TIGHT_FROM_W_m2 } from '../laws/ground-flow.ts'
import { goingFor, goingItems, type Going } from '../loadout/going.ts'
import { traitText } from '../loadout/loadout.ts'
import { belowOf, hasHammock, underFigure } from './bed.ts'
import { found, notAsked, unknown, type Check, type Saying } from './check.ts'
import { coldNight } from './sleep-warmth.ts'

export const groundWarmth: Check = {
  id: 'ground-warmth',
  label: 'Warm from below',
  duties: ['ground-insulation'],
  withoutBrief: false,
  find(asked) {
    const night = coldNight(asked)
    if (!night.ok) return night.finding
    const going = goingItems(asked.loadout)
    if (hasHammock(going)) return notAsked('hammock')
    const below = belowOf(going, asked.brief)
    if (!below.ok) return unknown(below.missing.code, below.missing.facts)
    const underRsi = underOf(going)
    const have = work(groundFlow, { airC: night.low, matsRsi: below.value.mats, underRsi })
    const limit = (flow: number, from: string): Figure<'W/m2'> => constant(flow, 'W/m2', from)
    return found({
      have,
      need: limit(SHORT_FROM_W_m2, 'consumer chart of mats (choice)'),
      enough: limit(TIGHT_FROM_W_m2, 'consumer chart of mats (choice)'),
      wants: 'at most',
      saying: [sayingOf(below.value.mats.value, night.low.value, underRsi.value)],
      cautions: cautionsOf(have.value),
    })
  },
}

/** The same as mats, in m²K/W, which is how it is shown: what is there, and what lets 85 and 65 pass. */
function sayingOf(haveRsi: number, lowC: number, underRsi: number): Saying {
  const [needRsi, enoughRsi] = [SHORT_FROM_W_m2, TIGHT_FROM_W_m2].map((flow) => matsForFlow(lowC, flow, underRsi))
  return { code: 'ground-mats', facts: { haveRsi, needRsi: needRsi!, enoughRsi: enoughRsi! } }
}

function cautionsOf(flow: number): readonly string[] {
  if (flow > TIGHT_FROM_W_m2) return ['Cold from below is likely, however thick the top.']
  return flow > NOTE_FROM_W_m2 ? ['Cool from below.'] : []
}

/** All tops are quilts: less between skin and mat. Tops without a rating count too: only their form is read. */
function underOf(going: readonly Going[]): Figure<'m2K/W'> {
  const tops = goingFor(going, 'top-insulation')
  const quilts = tops.length > 0 && tops.every(({ item }) => traitText(item, 'form') === 'quilt')
  return underFigure(quilts)
}
