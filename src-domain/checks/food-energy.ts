import { difference, given, scaled, total, work, type Figure, type Given, type Law } from '../figures/figure.ts'
import { partsBetween, ruleOf, type Span } from '../loadout/amounts.ts'
import { traitOf, type Loadout, type SupplyLine } from '../loadout/loadout.ts'
import { amountAt, massAnywhere } from '../loadout/moments.ts'
import { altitudeCautions } from '../laws/day-energy.ts'
import { expectedLossKg, foodMarks } from '../laws/food-deficit.ts'
import { USUAL_DENSITY_KCAL_G } from '../laws/food-mass.ts'
import { found, notAsked, unknown, type Asked, type Check, type Found, type Saying } from './check.ts'
import { energyNeed, isFood, type Body, type DayNeed } from './energy-need.ts'

/**
 * Fed: does the food carried hold the energy this body needs on this way?
 *   have: Σ food's mass × its energy · need: E − 2B · enough: E − B        kcal, at least
 *   E: energy-need.ts, less what is eaten out · B: the lesser of 20 % of E and 2 % of body mass (laws/food-deficit.ts); 0 under 18 years
 *   asked of the whole way and of each stretch between resupplies of food; the worst is shown
 * Food that does not say its energy counts 4.2 kcal/g (estimate). u: 11.70 % of E, with the mass of the food and 10 % of its energy.
 * Source: walking.md 4.4, 7 (choices on published equations).
 * Caution: not for pregnancy, illness or eating disorders; shivering burns more.
 */
export const foodEnergy: Check = {
  id: 'food-energy',
  label: 'Fed',
  duties: ['food-storage'],
  withoutBrief: false,
  find(asked) {
    const need = energyNeed(asked)
    if (!need.ok) return unknown(need.missing, need.facts)
    const spans = stretchesToFeed(asked, need.days.length)
    const whole: Span = { fromDay: 0, toDay: need.days.length }
    if (energyIn(asked, need.days, whole).value <= 0) return notAsked('no-meal-out')
    const silent = asked.loadout.lines.filter(isFood).find((line) => line.amount === null)
    if (silent !== undefined) return unknown('amount', { name: silent.supply.name })
    const findings = (spans.length > 1 ? [...spans, whole] : [whole]).map((span) =>
      spanFound(asked, need.body, need.days, span, spans.length > 1),
    )
    return findings.reduce((worst, one) => (one.margin < worst.margin ? one : worst))
  },
}

/** What is carried for a span, kcal: its own portions, renewed at each resupply inside it. */
export function energyCarried(asked: Asked, span: Span): Figure<'kcal'> {
  const entries = { brief: asked.brief, trip: asked.trip }
  const starts = stretchesToFeed(asked, span.toDay).filter(({ fromDay }) => fromDay >= span.fromDay - 1e-9 && fromDay < span.toDay - 1e-9)
  const parts = asked.loadout.lines
    .filter(isFood)
    .flatMap((line) =>
      starts.map(({ fromDay }): Given => ({ name: line.supply.name, figure: lineEnergy(line, amountAt(line, fromDay, entries) ?? 0) })),
    )
  return parts.length === 0 ? given(0, 'kcal', 'worked', {}, 'no food in the loadout') : total('energy of the food', 'kcal', parts)
}

/** E of a span, kcal: its days' needs, less their part of what is eaten out. */
export function energyIn({ brief }: Pick<Asked, 'brief'>, days: readonly DayNeed[], { fromDay, toDay }: Span): Figure<'kcal'> {
  const wholeKcal = days.reduce((sum, day) => sum + day.asked.value, 0)
  const carriedShare = wholeKcal <= 0 ? 0 : Math.max(0, 1 - brief.meals.eatenOutKcal / wholeKcal)
  const parts = days.flatMap(({ day, asked }): readonly Given[] => {
    const within = Math.min(toDay, day) - Math.max(fromDay, day - 1)
    return within <= 0
      ? []
      : [{ name: `day ${day}`, figure: scaled(asked, within * carriedShare, 'kcal', `day ${day}`, 'the part of it that is carried') }]
  })
  return total('energy need', 'kcal', parts)
}

/**
 * Amounts, in the supply's unit by line id, of food that follows the brief and has no rule: what the rest of the food leaves of the full need of the
 * first stretch, shared out by energy. Nothing while the need is not known.
 */
export function foodByBrief(asked: Asked): ReadonlyMap<number, number> {
  const following = asked.loadout.lines.filter(isFood).filter((line) => line.amountFrom === 'brief' && ruleOf(line) === null)
  const need = following.length === 0 ? null : energyNeed(asked)
  if (need === null || !need.ok) return new Map()
  const [first = { fromDay: 0, toDay: need.days.length }] = stretchesToFeed(asked, need.days.length)
  const others: Loadout = { ...asked.loadout, lines: asked.loadout.lines.filter((line) => !following.some(({ id }) => id === line.id)) }
  const have = energyCarried({ ...asked, loadout: others }, first).value
  const each = Math.max(0, energyIn(asked, need.days, first).value - have) / following.length
  return new Map(following.map((line) => [line.id, each / (kcalPerGram(line) * line.supply.massGPerUnit)]))
}

/** Stretches between resupplies of food; one where nothing renews it. */
function stretchesToFeed({ brief, trip }: Pick<Asked, 'brief' | 'trip'>, days: number): readonly Span[] {
  const spans = partsBetween('food', { brief, trip })
  return spans.length === 0 ? [{ fromDay: 0, toDay: days }] : spans
}

function spanFound(asked: Asked, body: Body, days: readonly DayNeed[], span: Span, isOneOfSeveral: boolean): Found {
  const energy = energyIn(asked, days, span)
  const marks = foodMarks(energy.value, body.bodyKg, body.ageYears)
  const have = energyCarried(asked, span)
  return found({
    have,
    need: less(energy, energy.value - marks.needKcal, 'need', 'E − 2B'),
    enough: less(energy, energy.value - marks.enoughKcal, 'enough', 'E − B'),
    wants: 'at least',
    saying: sayings(energy.value, have.value, body, span, isOneOfSeveral),
    cautions: [...ageCaution(body), ...altitudeCautions(highestM(asked))],
  })
}

/** The allowance is a rule, not a measurement: the doubt of E stays whole. */
function less(energy: Figure<'kcal'>, byKcal: number, name: string, formula: string): Figure<'kcal'> {
  const allowance = given(byKcal, 'kcal', 'constant', {}, `${formula}: the lesser of 20 % of E and 2 % of body mass`)
  return difference(name, { name: 'E', figure: energy }, { name: 'allowance', figure: allowance })
}

function sayings(
  energyKcal: number,
  haveKcal: number,
  { bodyKg }: Body,
  { fromDay, toDay }: Span,
  isOneOfSeveral: boolean,
): readonly Saying[] {
  const lossKg = expectedLossKg(energyKcal - haveKcal)
  return [
    ...(isOneOfSeveral ? [{ code: 'food-stretch', facts: { fromDay, toDay } }] : []),
    ...(lossKg > 0 ? [{ code: 'expected-loss', facts: { kg: lossKg, percent: (100 * lossKg) / bodyKg } }] : []),
  ]
}

const ageCaution = ({ ageYears }: Body): readonly string[] =>
  ageYears < 18
    ? ['Under 18 the full need is asked.']
    : ['Not for pregnancy, illness or eating disorders: carry the full need. Cold nights and shivering burn more.']

const highestM = ({ brief }: Asked): number => brief.legs.reduce((most, leg) => Math.max(most, leg.endHeightM ?? 0), 0)

const energyOfFood = {
  name: 'Energy of a food',
  formula: 'kcal = g·(kcal/100 g)/100',
  source: { cite: 'as its packet says, or 4.2 kcal/g', known: 'common practice, no source' },
  takes: { massG: 'g', per100g: 'kcal/100g' },
  unit: 'kcal',
  compute: ({ massG, per100g }) => (massG * per100g) / 100,
} as const satisfies Law<{ massG: 'g'; per100g: 'kcal/100g' }, 'kcal'>

function lineEnergy(line: SupplyLine, amount: number): Figure<'kcal'> {
  return work(energyOfFood, { massG: massAnywhere({ ...line, amount }), per100g: energyTrait(line) })
}

/** A packet's figure is right within 10 % (choice); the usual density of food for walking within 15 % (3.5 to 5 kcal/g, common practice). */
function energyTrait({ supply }: SupplyLine): Figure<'kcal/100g'> {
  const trait = traitOf(supply, 'energy')
  const leaf = `energy:${supply.uid}`
  if (trait === undefined || trait.number === null) {
    const usual = 100 * USUAL_DENSITY_KCAL_G
    return given(usual, 'kcal/100g', 'estimated', { [leaf]: 0.15 * usual }, 'usual food for walking')
  }
  return given(trait.number, 'kcal/100g', trait.origin, { [leaf]: 0.1 * trait.number })
}

export const kcalPerGram = (line: SupplyLine): number => energyTrait(line).value / 100
