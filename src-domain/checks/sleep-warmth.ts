/**
 * Warm asleep: the coldest night this bed holds for this sleeper against the low to plan for.
 *   have T + δ · need the planning low · enough that low less 2 K (choice), at most      °C
 * T: laws/sleep-limit.ts; δ the sleeper's own offset, K. u: rating, mats 10 %, ground share, skin to mat, sleeper 3 K, forecast.
 * Caps: an extreme rating, a mat in a hammock, nested tops or a rating outside −40 … 20 °C are at best tight; a maker's single figure reads
 * enough only from 6 K of margin. Children: always unknown, the standards have no model of them (under 16 here; choice).
 * With wet days the same bed is worked damp too, and a caution says if that drops the state. Each addition's worth in K and the chance of a
 * warm night are lines of the working.
 */
import { given, work, type Figure, type Given, type Law } from '../figures/figure.ts'
import { dampFactor, isFrostLikely } from '../laws/bed-modifiers.ts'
import { normalShareBelow } from '../laws/normal.ts'
import { bedBalance, sleepLimit, type Bed } from '../laws/sleep-limit.ts'
import { PRIOR_SD_K } from '../laws/sleeper-offset.ts'
import { traitText } from '../loadout/loadout.ts'
import { campNights, coldestLow } from '../trips/nights.ts'
import { bedOf, type BedFigures, type SleepBed } from './bed.ts'
import { found, notAsked, unknown, type Asked, type Check, type Finding, type Found } from './check.ts'
import { withLines } from './lines.ts'

export const RESERVE_K = 2
export const MILD_NIGHT_C = 20
const CHILD_UNDER = 16

export const sleepWarmth: Check = {
  id: 'sleep-warmth',
  label: 'Warm asleep',
  duties: ['top-insulation', 'ground-insulation'],
  withoutBrief: false,
  find(asked) {
    const night = coldNight(asked)
    if (!night.ok) return night.finding
    if (isChild(asked)) return unknown('adult-sleeper')
    const bed = bedOf(asked)
    if (!bed.ok) return unknown(bed.missing.code, bed.missing.facts)
    const inRange = bedBalance(valuesOf(bed.value.figures))
    if (!inRange.ok && inRange.why === 'sleep.rating-range') return unknown('rating-range', { name: bed.value.tops[0]!.item.name })
    const now = stateOf(asked, bed.value, night.low, bed.value.figures)
    const lines = [...effectsOf(bed.value), chanceOf(night.low.value - now.have.value, now.marginU * RESERVE_K)]
    return { ...now, have: withLines(now.have, lines), cautions: [...now.cautions, ...furtherCautions(asked, bed.value, night, now)] }
  },
}

type Night =
  { readonly ok: true; readonly low: Figure<'degC'>; readonly nights: number } | { readonly ok: false; readonly finding: Finding }

/** The low to plan for, or why the question is not asked; shared with ground-warmth. */
export function coldNight({ brief, trip }: Pick<Asked, 'brief' | 'trip'>): Night {
  const nights = campNights(brief, trip)
  if (nights === null) return { ok: false, finding: unknown('nights') }
  if (nights.length === 0) return { ok: false, finding: notAsked('no-night') }
  const low = coldestLow(nights)
  if (low === null) return { ok: false, finding: unknown('low') }
  if (low.value > MILD_NIGHT_C) return { ok: false, finding: notAsked('mild-night') }
  return { ok: true, low, nights: nights.length }
}

function isChild({ walker, trip, today }: Asked): boolean {
  return walker.bornYear !== null && Number((trip.startsOn ?? today).slice(0, 4)) - walker.bornYear < CHILD_UNDER
}

const forSleeper = {
  name: 'Coldest night held by this sleeper',
  formula: 'T + δ',
  source: { cite: "The sleeper's own word or their own debriefs", known: 'choice' },
  takes: { limitC: 'degC', offsetK: 'K' },
  unit: 'degC',
  compute: ({ limitC, offsetK }) => limitC + offsetK,
} as const satisfies Law<{ limitC: 'degC'; offsetK: 'K' }, 'degC'>

const lowLess = {
  name: 'Low with a reserve',
  formula: 'low − reserve',
  source: { cite: 'A reserve of 2 K', known: 'choice' },
  takes: { lowC: 'degC', reserveK: 'K' },
  unit: 'degC',
  compute: ({ lowC, reserveK }) => lowC - reserveK,
} as const satisfies Law<{ lowC: 'degC'; reserveK: 'K' }, 'degC'>

function stateOf({ walker }: Pick<Asked, 'walker'>, bed: SleepBed, low: Figure<'degC'>, figures: BedFigures): Found {
  const offsetK = given(walker.coldOffsetK, 'K', 'estimated', { 'walker:cold-offset': walker.coldSdK ?? PRIOR_SD_K }, 'this sleeper')
  const have = work(forSleeper, { limitC: work(sleepLimit, figures), offsetK })
  const enough = work(lowLess, { lowC: low, reserveK: given(RESERVE_K, 'K', 'constant') })
  const capped = isCapped(bed, low.value - have.value)
  const plain = found({ have, need: low, enough, wants: 'at most', ...(capped ? { best: 'tight' as const } : {}) })
  return { ...plain, cautions: cautionsOf(plain, bed) }
}

function isCapped({ tops, below, figures }: SleepBed, marginK: number): boolean {
  const rated = figures.ratedC.value as number
  if (below.matInHammock || tops.length > 1 || rated > 20 || rated < -40) return true
  return tops.some(({ kind: { best } }) => best === 'tight' || (typeof best === 'number' && marginK < best))
}

function cautionsOf(plain: Found, { tops }: SleepBed): readonly string[] {
  return [
    ...(plain.have.working?.given[0]?.figure.working?.cautions ?? []),
    ...(plain.state === 'tight' ? ['Carry one more way to warm up, or plan a way down.'] : []),
    ...(plain.state === 'short' ? ['On this brief the gear does not hold heat by this sum. Change the gear, the camp or the night.'] : []),
    ...(tops.some(({ kind }) => kind.scale === 'extreme')
      ? ['The extreme figure is about survival, with risk of cold injury. It is never a plan.']
      : []),
    'Local rescue, avalanche and medical advice comes before this program.',
  ]
}

const valuesOf = (figures: BedFigures): Bed =>
  Object.fromEntries(Object.entries(figures).map(([name, figure]) => [name, figure.value])) as unknown as Bed

/** Roughly how likely the night is a warm one: Φ(margin/u); shown to the nearest 10 %. */
const chanceOf = (marginK: number, sigmaK: number): Given => ({
  name: 'roughly the chance of a warm night',
  figure: given(100 * normalShareBelow(marginK / sigmaK), '%', 'worked'),
})

/** K by which each addition moves the coldest night held, the others kept. */
function effectsOf({ figures, added, openHead }: SleepBed): readonly Given[] {
  const bed = valuesOf(figures)
  const limitC = sleepLimit.compute(bed)
  const effect = (of: string, without: Bed): Given => ({
    name: `worth of: ${of}`,
    figure: given(limitC - sleepLimit.compute(without), 'K', 'worked'),
  })
  return [
    ...added.map(({ name, figure }) => effect(name, { ...bed, addedRsi: bed.addedRsi - figure.value })),
    ...(openHead ? [effect('head without hood', { ...bed, bareShare: 0 })] : []),
  ]
}

function furtherCautions(asked: Asked, bed: SleepBed, night: Night & { readonly ok: true }, now: Found): readonly string[] {
  const damp = dampState(asked, bed, night.low)
  return [
    ...(damp === null || damp === now.state ? [] : [`If things get damp, this bed is ${damp}.`]),
    ...bed.tops
      .filter(({ kindSaid }) => !kindSaid)
      .map(({ item }) => `${item.name}: the kind of rating is not said, so it is read as a maker's single figure.`),
    ...(isFrostLikely(night.low.value, night.nights)
      ? ['Frost gathers in the fill over several nights this cold without drying, most of it in the first.']
      : []),
    ...(bed.tops.some(({ item }) => traitText(item, 'form') === 'quilt')
      ? ['Draughts of an unattached quilt are not in this figure.']
      : []),
  ]
}

/** The state with damp fill, on wet days. */
function dampState(asked: Asked, bed: SleepBed, low: Figure<'degC'>): Found['state'] | null {
  if (asked.brief.rain !== 'wet') return null
  const fill = traitText(bed.tops[0]!.item, 'fill') === 'synthetic' ? 'synthetic' : 'down'
  const damp = given(dampFactor(fill, 'damp'), '1', 'estimated', {}, `damp ${fill} (choice)`)
  return stateOf(asked, bed, low, { ...bed.figures, damp }).state
}
