import { difference, given, uncertainty, type Figure } from '../figures/figure.ts'
import { capacityOf, ruleOf, withAmounts } from '../loadout/amounts.ts'
import { covering, supplyLines, traitNumber, traitText, type Loadout, type SupplyLine } from '../loadout/loadout.ts'
import { massAnywhere } from '../loadout/moments.ts'
import { FUEL_MARGIN } from '../laws/fuel-mass.ts'
import { WATER_MARGIN } from '../laws/water-carried.ts'
import type { Asked, Check } from './check.ts'
import { foodByBrief } from './food-energy.ts'
import { fuelNeed } from './fuel.ts'
import { light, isOwnLamp } from './light.ts'
import { enoughOf, leastEnough } from './margin.ts'
import { power } from './power.ts'
import { fuelCarried, fuelLines } from './stove-kit.ts'
import { isWater } from './water-carry.ts'
import { drawnNeed, waterNeed } from './water-needs.ts'
import { waterTreatment } from './water-treatment.ts'

/**
 * Amounts that follow the brief where no rule of the person's says how: the least at which the check they serve reads enough.
 *   fuel, water: need + max(reserve, u), less what other lines bring · tablets and cells: the fewest pieces with which the check reads enough
 *   food: the full energy need (food-energy.ts)
 * Containers are filled in the order of the lines and never over what they hold. What a check cannot say yet stays open.
 */
export function filledByBrief(asked: Asked): Asked {
  const litres = litresDrawn(asked)
  const entries = { brief: asked.brief, trip: asked.trip, litres }
  let at = filled({ ...asked, loadout: emptied(asked.loadout) }, new Map(), entries)
  for (const serve of [fuelByBrief, waterByBrief, piecesByBrief, foodByBrief]) at = filled(at, serve(at), entries)
  return at
}

/** What an earlier brief filled in is forgotten. */
const emptied = (loadout: Loadout): Loadout => ({
  ...loadout,
  lines: loadout.lines.map((line) => (line.kind === 'supply' && isOpen(line) ? { ...line, amount: null } : line)),
})

type Entries = Parameters<typeof withAmounts>[1]

/** Lines already answered keep their amount; the rest takes the rule's, or what was asked now. */
function filled(at: Asked, asked: ReadonlyMap<number, number>, entries: Entries): Asked {
  const known = new Map<number, number>()
  for (const line of supplyLines(at.loadout)) if (isOpen(line) && line.amount !== null) known.set(line.id, line.amount)
  for (const [id, amount] of asked) known.set(id, amount)
  return { ...at, loadout: withAmounts(at.loadout, { ...entries, asked: known }) }
}

const isOpen = (line: SupplyLine): boolean => line.amountFrom === 'brief' && ruleOf(line) === null

/** Litres drawn on the whole way, for rules by the litre; null: not known. */
function litresDrawn(asked: Asked): number | null {
  const drawn = drawnNeed(asked)
  return drawn.ok ? (drawn.litres?.value ?? 0) : null
}

/** g of fuel into supplies' units by line id. */
export function fuelByBrief(asked: Asked): ReadonlyMap<number, number> {
  const need = fuelNeed(asked)
  if (need.kind !== 'asked') return new Map()
  const lines = fuelLines(asked.loadout, need.stove.fuel).filter(isOpen)
  if (lines.length === 0) return new Map()
  const others = fuelCarried(without(asked.loadout, lines), need.stove.fuel)
  const grams = stillAsked(need.grams, enoughOf(need.grams, FUEL_MARGIN), others, ownShare(lines[0]!))
  return shared(lines, asked.loadout, grams, (line) => 1 / line.supply.massGPerUnit)
}

/** Litres into millilitres by line id. */
export function waterByBrief(asked: Asked): ReadonlyMap<number, number> {
  const need = waterNeed(asked)
  const lines = supplyLines(asked.loadout).filter((line) => isWater(line.supply) && isOpen(line))
  if (!need.ok || need.stretch === null || lines.length === 0) return new Map()
  const typedL = supplyLines(asked.loadout)
    .filter((line) => isWater(line.supply) && !isOpen(line) && line.carriedBy === '')
    .reduce((sum, line) => sum + (line.amount ?? 0) / 1000, 0)
  const { litres } = need.stretch
  const asks = stillAsked(litres, enoughOf(litres, WATER_MARGIN), given(typedL, 'l', 'given'), 0)
  return shared(lines, asked.loadout, asks, () => 1000)
}

/** Tablets and cells: whole pieces, found with the check itself. */
export function piecesByBrief(asked: Asked): ReadonlyMap<number, number> {
  const found = new Map<number, number>()
  let at = asked
  for (const line of supplyLines(asked.loadout).filter((one) => isOpen(one) && one.supply.unit === 'piece')) {
    const check = checkOfPieces(at.loadout, line)
    const pieces = check === null ? null : fewestPieces(check, at, line)
    if (pieces === null) continue
    found.set(line.id, pieces)
    at = { ...at, loadout: withAmount(at.loadout, line.id, pieces) }
  }
  return found
}

/** The check that a supply of pieces serves; null: none. */
function checkOfPieces(loadout: Loadout, { supply }: SupplyLine): Check | null {
  if (traitNumber(supply, 'treats') !== null) return waterTreatment
  const kind = traitText(supply, 'cell')
  if (kind === '' || traitNumber(supply, 'charge') === null) return null
  return covering(loadout, 'light').some((line) => isOwnLamp(line) && traitText(line.item, 'cell') === kind) ? light : power
}

/** Never more than this: then it is not the pieces that are missing. */
const MOST_PIECES = 512

/** Null: the check cannot say, or no number of pieces makes it enough. */
function fewestPieces(check: Check, asked: Asked, line: SupplyLine): number | null {
  const state = (pieces: number) => check.find({ ...asked, loadout: withAmount(asked.loadout, line.id, pieces) }).state
  const first = state(0)
  if (first === 'not-asked') return 0
  if (first === 'enough') return 0
  if (first === 'unknown' || state(MOST_PIECES) !== 'enough') return null
  let [low, high] = [0, MOST_PIECES]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (state(middle) === 'enough') high = middle
    else low = middle
  }
  return high
}

/** What is still to be carried beside the others so that it is enough. */
function stillAsked<U extends string>(need: Figure<U>, enough: Figure<U>, others: Figure<U>, own: number): number {
  const left = difference('still asked', { name: 'need', figure: need }, { name: 'others', figure: others })
  return Math.max(0, leastEnough(left, enough.value - others.value, own))
}

/** Fills the lines in their order, each to what it holds; what is over goes to the last, which says that it is capped. */
function shared(
  lines: readonly SupplyLine[],
  loadout: Loadout,
  asks: number,
  perUnit: (line: SupplyLine) => number,
): ReadonlyMap<number, number> {
  const amounts = new Map<number, number>()
  let left = asks
  for (const [i, line] of lines.entries()) {
    const wanted = left * perUnit(line)
    const holds = i === lines.length - 1 ? wanted : (capacityOf(line, loadout) ?? wanted)
    const amount = Math.min(wanted, holds)
    amounts.set(line.id, amount)
    left -= amount / perUnit(line)
  }
  return amounts
}

/** Relative standard uncertainty that the amount of a line brings along. */
function ownShare(line: SupplyLine): number {
  const mass = massAnywhere({ ...line, amount: 100 })
  return mass.value > 0 ? Math.min(0.9, uncertainty(mass) / mass.value) : 0
}

const without = (loadout: Loadout, lines: readonly SupplyLine[]): Loadout => ({
  ...loadout,
  lines: loadout.lines.filter((line) => !lines.some((one) => one.id === line.id)),
})

const withAmount = (loadout: Loadout, id: number, amount: number): Loadout => ({
  ...loadout,
  lines: loadout.lines.map((line) => (line.kind === 'supply' && line.id === id ? { ...line, amount } : line)),
})
