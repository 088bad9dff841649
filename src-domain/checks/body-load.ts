import { given, scaled, work, type Figure } from '../figures/figure.ts'
import { heaviestPack } from '../loadout/moments.ts'
import { LIFT_WITH_HELP_KG, loadMark, usualShares } from '../laws/load-marks.ts'
import { found, unknown, type Asked, type Check } from './check.ts'
import { ageOn } from './energy-need.ts'

/**
 * Load on the body: does the pack stay within what this walker's body carries well?
 *   have: pack weight at its heaviest moment · need: upper mark · enough: easy mark        kg, at most
 *   marks: 30 and 20 % of body mass, under 18 years 20 and 15 %, or the walker's own shares
 * Counts the pack alone. Source: walkers' common practice (laws/load-marks.ts); walking.md 3.
 */
export const bodyLoad: Check = {
  id: 'body-load',
  label: 'Load on the body',
  duties: [],
  withoutBrief: false,
  find(asked) {
    const marks = marksOf(asked)
    if (marks === null) return unknown('body-mass')
    const { moment, sum } = heaviestPack(asked.loadout, { brief: asked.brief, trip: asked.trip })
    if (sum.withoutMass.length > 0) return unknown('mass', { name: sum.withoutMass[0]!, more: sum.withoutMass.length - 1 })
    const have = scaled(sum.figure, 0.001, 'kg', 'pack weight at its heaviest', 'g/1000')
    return found({
      have,
      need: marks.upper,
      enough: marks.easy,
      wants: 'at most',
      saying: [{ code: 'heaviest', facts: { day: moment.day, what: moment.what } }],
      cautions: [...(have.value > LIFT_WITH_HELP_KG ? [`Over ${LIFT_WITH_HELP_KG} kg: lift it in two stages, or with help.`] : [])],
    })
  },
}

export interface BodyMarks {
  readonly easy: Figure<'kg'>
  readonly upper: Figure<'kg'>
}

/** Marks on the body; null: its mass is not said. The load strip draws the same ones. */
export function marksOf({ walker, trip, today }: Pick<Asked, 'walker' | 'trip' | 'today'>): BodyMarks | null {
  const { bodyMassG, bornYear, easyShare, upperShare } = walker
  if (bodyMassG === null) return null
  const usual = usualShares(bornYear === null ? null : ageOn(trip.startsOn ?? today, bornYear))
  const bodyKg = given(bodyMassG / 1000, 'kg', 'given', {}, 'body mass')
  const mark = (own: number | null, share: number) =>
    work(loadMark, {
      bodyKg,
      share: given(own ?? share, '1', own === null ? 'constant' : 'given', {}, own === null ? 'usual share' : 'own share'),
    })
  return { easy: mark(easyShare, usual.easy), upper: mark(upperShare, usual.upper) }
}
