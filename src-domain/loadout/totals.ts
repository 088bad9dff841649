import type { Figure, Given, Origin, Source } from '../figures/figure.ts'
import { kitAreas, type KitArea, type Lane } from '../closet/vocabulary.ts'
import type { Line, Loadout } from './loadout.ts'
import { areaOf, isCarriedByAnother, isWished, lineMass, milligrams, nameOf } from './mass.ts'

/**
 * What a loadout weighs.
 *   worn = Σ on me · base = Σ in the pack · consumables = Σ used up · pack = base + consumables · skin-out = pack + worn      all g
 * Values are summed in whole milligrams; shares of one leaf add before they are squared (provisions.md 9.3). A line of unknown
 * mass adds nothing and is named: its total is at least what it says.
 */
export interface Sum {
  readonly figure: Figure<'g'>
  readonly massMg: number
  readonly lines: number
  /** Names of lines whose mass is not known: the total says how many. */
  readonly withoutMass: readonly string[]
  /** Lines in it that are only wished for. */
  readonly wished: number
}

export interface AreaSum extends Sum {
  readonly lane: Lane
  readonly area: KitArea
}

/** A subtotal over kit areas of the pack; the window joins their words. */
export interface NamedSum extends Sum {
  readonly areas: readonly KitArea[]
}

export interface WeighedLine {
  readonly line: Line
  readonly name: string
  readonly area: KitArea
  /** null: not known. */
  readonly mass: Figure<'g'> | null
}

/** Share of the skin-out mass by where it comes from; they add to 1, or are all 0 with nothing weighed. */
export type Resting = Readonly<Record<'measured' | 'claimed' | 'brief' | 'estimated', number>>

export interface Totals {
  readonly worn: Sum
  readonly base: Sum
  readonly consumables: Sum
  readonly pack: Sum
  readonly skinOut: Sum
  /** By lane, then kit area, in their fixed order; only areas with a line. */
  readonly areas: readonly AreaSum[]
  readonly named: readonly NamedSum[]
  readonly rests: Resting
  readonly lines: readonly WeighedLine[]
}

/** Shelter + Sleep + Carry, from the start. */
export const startNamed: readonly (readonly KitArea[])[] = [['shelter', 'sleep', 'carry']]

export function totalsOf(loadout: Loadout, named: readonly (readonly KitArea[])[] = startNamed): Totals {
  const lines = loadout.lines.map(weighed)
  const lane = (code: Lane) => lines.filter(({ line }) => line.lane === code)
  const [onMe, inPack, usedUp] = [lane('on_me'), lane('in_pack'), lane('used_up')]
  const worn = sumOf('worn weight', onMe)
  const base = sumOf('base weight', inPack)
  const consumables = sumOf('consumables', usedUp)
  const pack = together('pack weight', [base, consumables])
  return {
    worn,
    base,
    consumables,
    pack,
    skinOut: together('skin-out weight', [pack, worn]),
    areas: [...byArea('on_me', onMe), ...byArea('in_pack', inPack), ...byArea('used_up', usedUp)],
    named: named.map((areas) => ({
      areas,
      ...sumOf(
        areas.join(' + '),
        inPack.filter(({ area }) => areas.includes(area)),
      ),
    })),
    rests: restingOf(lines),
    lines,
  }
}

export const weighed = (line: Line): WeighedLine => ({ line, name: nameOf(line), area: areaOf(line), mass: lineMass(line) })

/** The sum of lines, each named in its working. */
export function sumOf(name: string, lines: readonly WeighedLine[]): Sum {
  const shares: Record<string, number> = {}
  const given: Given[] = []
  const withoutMass: string[] = []
  let massMg = 0
  let wished = 0
  for (const one of lines) {
    if (one.mass === null) withoutMass.push(one.name)
    else {
      massMg += milligrams(one.mass.value)
      addShares(shares, one.mass)
      given.push({ name: one.name, figure: one.mass })
    }
    if (isWished(one.line) && !isCarriedByAnother(one.line)) wished++
  }
  return { figure: summed(name, massMg, shares, given, withoutMass), massMg, lines: lines.length, withoutMass, wished }
}

/** The sum of sums, each opened in turn. */
function together(name: string, sums: readonly Sum[]): Sum {
  const shares: Record<string, number> = {}
  for (const { figure } of sums) addShares(shares, figure)
  const massMg = sums.reduce((total, sum) => total + sum.massMg, 0)
  const withoutMass = sums.flatMap((sum) => sum.withoutMass)
  const given = sums.map(({ figure }) => ({ name: figure.working!.name, figure }))
  return {
    figure: summed(name, massMg, shares, given, withoutMass),
    massMg,
    lines: sums.reduce((total, sum) => total + sum.lines, 0),
    withoutMass,
    wished: sums.reduce((total, sum) => total + sum.wished, 0),
  }
}

function byArea(lane: Lane, lines: readonly WeighedLine[]): AreaSum[] {
  const groups = new Map<KitArea, WeighedLine[]>()
  for (const one of lines) {
    const group = groups.get(one.area)
    if (group === undefined) groups.set(one.area, [one])
    else group.push(one)
  }
  return kitAreas.flatMap((area) => {
    const group = groups.get(area)
    return group === undefined ? [] : [{ lane, area, ...sumOf(area, group) }]
  })
}

const restingOrigins = ['measured', 'claimed', 'brief', 'estimated'] as const

function restingOf(lines: readonly WeighedLine[]): Resting {
  const massMg = { measured: 0, claimed: 0, brief: 0, estimated: 0 }
  for (const { mass } of lines) if (mass !== null && isResting(mass.origin)) massMg[mass.origin] += milligrams(mass.value)
  const whole = restingOrigins.reduce((total, origin) => total + massMg[origin], 0)
  const share = (origin: keyof Resting) => (whole === 0 ? 0 : massMg[origin] / whole)
  return { measured: share('measured'), claimed: share('claimed'), brief: share('brief'), estimated: share('estimated') }
}

const isResting = (origin: Origin): origin is keyof Resting => (restingOrigins as readonly string[]).includes(origin)

const adding: Source = { cite: 'JCGM 100:2008, 5.1 and 5.2: shares of one leaf add, leaves add as squares', known: 'memory' }

function summed(
  name: string,
  massMg: number,
  shares: Readonly<Record<string, number>>,
  given: readonly Given[],
  withoutMass: readonly string[],
): Figure<'g'> {
  const cautions = withoutMass.length === 0 ? [] : [`${withoutMass.length} without a mass: ${withoutMass.join(', ')}`]
  return {
    value: (massMg / 1000) as Figure<'g'>['value'],
    unit: 'g',
    origin: 'worked',
    shares,
    working: { name, formula: 'sum of the parts', source: adding, cautions, given },
  }
}

export function addShares(shares: Record<string, number>, figure: Figure, factor = 1): void {
  for (const leaf in figure.shares) shares[leaf] = (shares[leaf] ?? 0) + factor * figure.shares[leaf]!
}
