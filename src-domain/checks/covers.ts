/**
 * What the covers carried are worth at a duty, for the three rain checks: the best of them (a count, laws/rain-cover.ts).
 * A cover is told by its kind, whatever other duty it serves (a waterproof pack keeps dry, a long poncho covers legs). An item that claims
 * the duty without a kind leaves it unknown, unless another already covers all that is asked.
 */
import { given, type Figure } from '../figures/figure.ts'
import { worthOf, type CoverAsked, type CoverDuty } from '../laws/rain-cover.ts'
import { goingItems, serves } from '../loadout/going.ts'
import { traitText, type Loadout } from '../loadout/loadout.ts'
import type { Brief } from '../trips/brief.ts'
import { found, unknown, type Finding, type Saying } from './check.ts'

export function coverFinding(loadout: Loadout, duty: CoverDuty, asks: CoverAsked, brief: Pick<Brief, 'rain'>): Finding {
  const covers = goingItems(loadout).map(({ item }) => ({ item, worth: worthOf(duty, traitText(item, 'cover-kind')) ?? 0 }))
  const best = covers.reduce<(typeof covers)[number] | null>((a, b) => (b.worth > (a?.worth ?? 0) ? b : a), null)
  const untold = covers.find(({ item }) => serves(item, duty) && traitText(item, 'cover-kind') === '')
  if (untold !== undefined && (best?.worth ?? 0) < asks.enough) return unknown('cover-kind', { name: untold.item.name })
  const asked = (value: number): Figure<'count'> => given(value, 'count', 'given', {}, `rain: ${brief.rain ?? ''}`)
  return found({
    have: given(best?.worth ?? 0, 'count', 'given', {}, best?.item.name ?? 'nothing'),
    need: asked(asks.need),
    enough: asked(asks.enough),
    wants: 'at least',
    counts: true,
    saying: sayingOf(best, asks, duty),
  })
}

function sayingOf(
  best: { readonly item: { readonly name: string }; readonly worth: number } | null,
  asks: CoverAsked,
  duty: CoverDuty,
): readonly Saying[] {
  if (best === null) return [{ code: 'no-cover', facts: { duty } }]
  return best.worth < asks.enough ? [{ code: 'weak-cover', facts: { duty, name: best.item.name } }] : []
}
