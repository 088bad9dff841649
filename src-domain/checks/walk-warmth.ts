/**
 * Warm walking: is what is worn on foot enough in the coldest walking hour?
 *   have Icl without the rest jacket · need ICL minimal less what that jacket adds (0.835·Iclu) · enough ICL minimal, at least      clo
 * Heat made 150, 200 or 260 W/m² by the effort of the brief, walking 1.1 m/s (choices). u: ±15 % of the sum, ±20 % of the heat, the low.
 * Method: IREQ, laws/ireq.ts. For the body as a whole: hands, feet and face are outside it.
 */
import { given, total, work, type Figure, type Law } from '../figures/figure.ts'
import { PER_GARMENT_CLO } from '../laws/clothing-insulation.ts'
import { clothingMinimal } from '../laws/ireq.ts'
import { goingFor, goingItems, type Going } from '../loadout/going.ts'
import { walkingAir } from '../trips/day-air.ts'
import { found, unknown, type Check } from './check.ts'
import { garmentCloOf, outerPermeability, walkingGarments, wornTogether } from './clothes.ts'
import { climateFigures, coldAir, windFigure } from './cold-air.ts'
import { LOADED_CLIMB_W_m2, LOADED_WALK_W_m2 } from '../laws/activity-heat.ts'
import { bareSkin } from './bare-skin.ts'
import { withLines } from './lines.ts'

const WALK_MS = 1.1
const heatOf = { easy: 150, moderate: LOADED_WALK_W_m2, hard: LOADED_CLIMB_W_m2 } as const

export const walkWarmth: Check = {
  id: 'walk-warmth',
  label: 'Warm walking',
  duties: ['base-layer', 'mid-layer', 'wind-shell', 'legwear', 'hat', 'gloves', 'big-jacket'],
  withoutBrief: false,
  find({ loadout, brief, trip }) {
    const cold = coldAir(walkingAir(brief, trip), brief.windKmh)
    if (!cold.ok) return cold.finding
    const going = goingItems(loadout)
    const worn = wornTogether(walkingGarments(going))
    if (!worn.ok) return unknown(worn.code, { name: worn.item })
    const jacket = jacketClo(going)
    if (!jacket.ok) return unknown('garment-clo', { name: jacket.item })
    const heat = given(heatOf[brief.effort], 'W/m2', 'estimated', {}, `${brief.effort} effort`)
    const outer = outerPermeability(walkingGarments(going))
    const enough = work(clothingMinimal, climateFigures(heat, cold.airC, windFigure(cold.windKmh, WALK_MS), WALK_MS, outer))
    const need = work(lessJacket, { iclClo: enough, jacketClo: jacket.clo })
    const chill = bareSkin(cold.airC, cold.windKmh)
    const cautions = [...(enough.working?.cautions ?? []), ...chill.cautions]
    return found({ have: withLines(worn.clo, chill.lines), need, enough, wants: 'at least', cautions })
  },
}

const lessJacket = {
  name: 'Clothing asked for, with the rest jacket in reserve',
  formula: 'max(0, ICL − 0.835·Iclu of the jacket)',
  source: { cite: 'ISO 9920 summation', known: 'read' },
  takes: { iclClo: 'clo', jacketClo: 'clo' },
  unit: 'clo',
  compute: ({ iclClo, jacketClo }) => Math.max(0, iclClo - PER_GARMENT_CLO * jacketClo),
} as const satisfies Law<{ iclClo: 'clo'; jacketClo: 'clo' }, 'clo'>

type Jacket = { readonly ok: true; readonly clo: Figure<'clo'> } | { readonly ok: false; readonly item: string }

function jacketClo(going: readonly Going[]): Jacket {
  const parts: { readonly name: string; readonly figure: Figure<'clo'> }[] = []
  for (const { item } of goingFor(going, 'big-jacket')) {
    const figure = garmentCloOf(item)
    if (figure === null) return { ok: false, item: item.name }
    parts.push({ name: item.name, figure })
  }
  return { ok: true, clo: total('rest jacket', 'clo', parts) }
}
