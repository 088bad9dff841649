/**
 * Warm while still, for camp and stop alike: what may be worn against the clothing in which the time planned lasts.
 *   have Icl of all that is carried · need clo at which the minimal exposure lasts the minutes
 *   enough the same at neutral, or ICL minimal without end if that is less, at least      clo
 * Heat made 65 W/m², no walking. No sleeping bag. u: ±15 % of the sum, ±20 % of the heat (never under 58), the air's own.
 * Method: laws/clo-for-minutes.ts (IREQ turned round). Hands, feet and face are outside it.
 */
import { given, work, type Figure } from '../figures/figure.ts'
import { SITTING_W_m2 } from '../laws/activity-heat.ts'
import { cloToLast, cloToLastWell } from '../laws/clo-for-minutes.ts'
import { goingItems, type Going } from '../loadout/going.ts'
import type { Loadout } from '../loadout/loadout.ts'
import { found, unknown, type Finding } from './check.ts'
import { outerPermeability, restGarments, wornTogether } from './clothes.ts'
import { climateFigures } from './cold-air.ts'

export interface Rest {
  readonly airC: Figure<'degC'>
  readonly windMs: Figure<'m/s'>
  readonly minutes: Figure<'min'>
}

/** `only`: which of the garments may be worn. */
export function restWarmth(loadout: Loadout, rest: Rest, only: (garment: Going) => boolean = () => true): Finding {
  const garments = restGarments(goingItems(loadout)).filter(only)
  const worn = wornTogether(garments)
  if (!worn.ok) return unknown(worn.code, { name: worn.item })
  const heat = given(SITTING_W_m2, 'W/m2', 'estimated', {}, 'sitting (choice)')
  const at = { ...climateFigures(heat, rest.airC, rest.windMs, 0, outerPermeability(garments)), minutes: rest.minutes }
  const need = work(cloToLast, at)
  return found({ have: worn.clo, need, enough: work(cloToLastWell, at), wants: 'at least', cautions: need.working?.cautions ?? [] })
}

/** As typed, else the usual time, marked as an estimate. */
export const minutesOr = (typed: number | null, usual: number): Figure<'min'> =>
  given(typed ?? usual, 'min', typed === null ? 'estimated' : 'given', {}, typed === null ? 'usual (choice)' : 'the brief')
