import { constant, given, total, work, type Figure, type Given, type Law } from '../figures/figure.ts'
import { covering, supplyLines, traitNumber, traitText, type ItemLine, type Loadout } from '../loadout/loadout.ts'
import { coldCell, coldShare, COLD_U, isCellKind, KEPT_WARM_K } from '../laws/cold-cell.ts'
import type { CellKind } from '../laws/cell-energy.ts'
import { CAMP_LIGHT_h, DRAW_U_SHARE, POWER_MARGIN, USUAL_LAMP_W } from '../laws/power-draw.ts'
import { darkHours } from '../trips/dark-hours.ts'
import { walkingAir } from '../trips/day-air.ts'
import { found, notAsked, unknown, type Check } from './check.ts'
import { doubted, enoughOf, nothing } from './margin.ts'

/**
 * Light: do the lamps burn through the dark hours in the cold?
 *   have: Σ E·f(kind, t)/draw, or burn time·f(kind, t), of everything that gives light, with its spare cells        h
 *   need: dark walking + 0.5 h a camp evening · enough: 1.25·need        at least
 *   t the planning low, + 10 °C where it is kept warm; 0.53 W (50 lm) where no draw is said (estimate)
 * u: 0.10/√3 of the hours at 20 °C, and 0.173 of the need (choices). Source: provisions.md 4 (cold factors from memory, ± 0.10).
 * Caution: a lamp fails; one to spare is a duty of its own.
 */
export const light: Check = {
  id: 'light',
  label: 'Light',
  duties: ['light'],
  withoutBrief: false,
  find({ loadout, brief, trip, walker }) {
    const dark = darkHours(brief, trip, walker)
    if (!dark.ok) return unknown(dark.missing, dark.leg === undefined ? undefined : { leg: dark.leg })
    const need = needed(dark.walkingH, dark.evenings)
    if (need.value <= 0) return notAsked('no-dark-hours')
    const air = walkingAir(brief, trip)
    if (!air.ok) return unknown(air.missing)
    const lamps = lampHours(loadout, { ...air.figure, shares: {} })
    if ('missing' in lamps) return unknown(lamps.missing, { name: lamps.name })
    return found({
      have: lamps.hours,
      need,
      enough: enoughOf(need, POWER_MARGIN),
      wants: 'at least',
      saying: [{ code: 'dark-hours', facts: { walkingH: dark.walkingH, evenings: dark.evenings } }],
      cautions: dark.startEstimated ? ['Where no start is said, the day starts at 08:00.'] : [],
    })
  },
}

function needed(walkingH: number, evenings: number): Figure<'h'> {
  const sum = total('light needed', 'h', [
    { name: 'walking in the dark', figure: given(walkingH, 'h', 'worked') },
    { name: `${evenings} evenings`, figure: constant(evenings * CAMP_LIGHT_h, 'h', 'half an hour each (choice)') },
  ])
  return doubted(sum, 'brief:dark', sum.value * DRAW_U_SHARE)
}

type Lamps = { readonly hours: Figure<'h'> } | { readonly missing: string; readonly name: string }

function lampHours(loadout: Loadout, air: Figure<'degC'>): Lamps {
  const lamps = covering(loadout, 'light')
  const parts: Given[] = []
  for (const line of lamps) {
    const hours = hoursOf(line, loadout, air)
    if ('missing' in hours) return hours
    parts.push({ name: line.item.name, figure: hours.hours })
  }
  return { hours: parts.length === 0 ? nothing('h', 'nothing gives light') : total('hours of light', 'h', parts) }
}

function hoursOf({ item, pieces }: ItemLine, loadout: Loadout, air: Figure<'degC'>): Lamps {
  const burnH = traitNumber(item, 'burn-time')
  const chargeWh = traitNumber(item, 'charge')
  const kind = traitText(item, 'cell')
  if (burnH === null && chargeWh === null) return { missing: 'charge', name: item.name }
  if (!isCellKind(kind)) return { missing: 'cell', name: item.name }
  const cellC = cellTemp(air, (traitNumber(item, 'kept-warm') ?? 0) === 1)
  const drawW = drawOf(item)
  const spare = spareCells(loadout, kind)
  const ofSpare = spare === null ? [] : [{ name: 'spare cells', figure: energyHours(spare, drawW, kind, cellC) }]
  const own =
    burnH !== null
      ? burnHours(given(burnH * pieces, 'h', 'claimed'), kind, cellC)
      : energyHours(given(chargeWh! * pieces, 'Wh', 'claimed'), drawW, kind, cellC)
  return { hours: ofSpare.length === 0 ? own : total(item.name, 'h', [{ name: 'its own cells', figure: own }, ...ofSpare]) }
}

const drawOf = (item: ItemLine['item']): Figure<'W'> => {
  const drawW = traitNumber(item, 'draw')
  return drawW === null || drawW <= 0 ? given(USUAL_LAMP_W, 'W', 'estimated', {}, '50 lm') : given(drawW, 'W', 'claimed')
}

/** Kept in clothing or the sleeping bag: 10 °C warmer. */
export function cellTemp(air: Figure<'degC'>, keptWarm: boolean): Figure<'degC'> {
  return keptWarm ? work(keptWarmTemp, { air }) : air
}

const keptWarmTemp = {
  name: 'Kept warm',
  formula: 'air + 10',
  source: { cite: 'in clothing or the sleeping bag', known: 'choice' },
  takes: { air: 'degC' },
  unit: 'degC',
  compute: ({ air }) => air + KEPT_WARM_K,
} as const satisfies Law<{ air: 'degC' }, 'degC'>

function energyHours(energyWh: Figure<'Wh'>, drawW: Figure<'W'>, kind: CellKind, cellC: Figure<'degC'>): Figure<'h'> {
  const usable = { ...work(coldCell(kind), { energyWh, cellC }), shares: {} }
  const hours = work(energyOverDraw, { energyWh: usable, drawW })
  return doubted(hours, `cold:${kind}`, (energyWh.value / drawW.value) * COLD_U)
}

function burnHours(burn: Figure<'h'>, kind: CellKind, cellC: Figure<'degC'>): Figure<'h'> {
  return doubted(work(coldBurn(kind), { burn, cellC }), `cold:${kind}`, burn.value * COLD_U)
}

const energyOverDraw = {
  name: 'Hours of light',
  formula: 'E/draw',
  source: { cite: 'definition of power', known: 'memory' },
  takes: { energyWh: 'Wh', drawW: 'W' },
  unit: 'h',
  compute: ({ energyWh, drawW }) => energyWh / drawW,
} as const satisfies Law<{ energyWh: 'Wh'; drawW: 'W' }, 'h'>

const coldBurn = (kind: CellKind) =>
  ({
    name: 'Burn time in the cold',
    formula: `burn·f(${kind}, t)`,
    source: { cite: 'typical data-sheet shapes, ± 0.10', known: 'memory' },
    takes: { burn: 'h', cellC: 'degC' },
    unit: 'h',
    compute: ({ burn, cellC }) => burn * coldShare(kind, cellC),
  }) as const satisfies Law<{ burn: 'h'; cellC: 'degC' }, 'h'>

/** Spare cells of the lamps' kind, Wh; null: none go. */
export function spareCells(loadout: Loadout, kind: CellKind): Figure<'Wh'> | null {
  const parts = supplyLines(loadout)
    .filter((line) => traitText(line.supply, 'cell') === kind && (traitNumber(line.supply, 'charge') ?? 0) > 0)
    .map((line): Given => ({
      name: line.supply.name,
      figure: given((line.amount ?? 0) * traitNumber(line.supply, 'charge')!, 'Wh', 'claimed'),
    }))
  return parts.length === 0 ? null : total('spare cells', 'Wh', parts)
}

/** A lamp that burns its own cells: it counts in light alone. */
export const isOwnLamp = ({ item }: ItemLine): boolean =>
  item.duties.some(({ duty }) => duty === 'light' || duty === 'spare-light') &&
  (traitNumber(item, 'charge') !== null || traitNumber(item, 'burn-time') !== null)
