/**
 * The bed of a loadout, as `sleep-warmth` and `ground-warmth` read it.
 * One loadout is one sleeper's. Several rated tops are nested (no data: best state tight); mats stack, pieces and all.
 *   form quilt: open below (0.05 m²K/W to the mat) and at the head · hoodless: open at the head · bag, or not said: closed
 *   in a hammock a mat lies under more of the body and is at best tight; an under-quilt is ground insulation of form quilt
 *   clothes worn inside: rest and mid layers and legwear that are in the pack, dry, and not the base layer · liners by kind
 * A mat is missing unless it is there or ground insulation was struck from what the trip asks.
 */
import { constant, given, total, work, type Figure, type Given } from '../figures/figure.ts'
import { clothesInside, HEAD_BARE_RSI, HEAD_SHARE, HEAD_WITH_HAT_RSI, linerRsi, NO_BASE_LAYER_RSI } from '../laws/bed-modifiers.ts'
import { matsInSeries, PACK_UNDER_LEGS_RSI, TORSO_SHARE } from '../laws/mats-in-series.ts'
import { ratedTop } from '../laws/rated-top.ts'
import { GROUND_AS_AIR_C, GROUND_OF_SNOW_C, type sleepLimit } from '../laws/sleep-limit.ts'
import {
  GROUND_SHARE,
  HAMMOCK_GROUND_SHARE,
  isRatingKind,
  NIGHT_RH_PCT,
  ratingKinds,
  sleepScales,
  UNDER_BAG_RSI,
  UNDER_QUILT_RSI,
  type RatingKind,
} from '../laws/sleep-scales.ts'
import { goingFor, goingItems, goingOf, serves, type Going } from '../loadout/going.ts'
import { traitNumber, traitOf, traitText, type KitItem } from '../loadout/loadout.ts'
import type { Brief } from '../trips/brief.ts'
import type { Asked, Saying } from './check.ts'
import { garmentCloOf } from './clothes.ts'

type BedUnits = (typeof sleepLimit)['takes']
export type BedFigures = { readonly [K in keyof BedUnits]: Figure<BedUnits[K]> }

export interface Top {
  readonly item: KitItem
  readonly ratedC: number
  readonly kind: RatingKind
  readonly kindSaid: boolean
}

export type Found<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly missing: Saying }
const missing = (code: string, item?: KitItem): { readonly ok: false; readonly missing: Saying } => ({
  ok: false,
  missing: item === undefined ? { code } : { code, facts: { name: item.name } },
})

/** Rated tops, the first one first; liners are no tops. */
export function topsOf(going: readonly Going[]): Found<readonly Top[]> {
  const tops: Top[] = []
  for (const { item } of goingFor(going, 'top-insulation')) {
    const ratedC = traitNumber(item, 'rated-temperature')
    if (ratedC === null && Object.hasOwn(linerRsi, traitText(item, 'liner'))) continue
    if (ratedC === null) return missing('rated-temperature', item)
    const word = traitText(item, 'rating-kind')
    tops.push({ item, ratedC, kind: ratingKinds[isRatingKind(word) ? word : 'maker'], kindSaid: isRatingKind(word) })
  }
  return tops.length === 0 ? missing('top-insulation') : { ok: true, value: tops }
}

export interface Below {
  readonly mats: Figure<'m2K/W'>
  readonly legs: Figure<'m2K/W'>
  readonly matShare: number
  readonly hammock: boolean
  /** A mat, not an under-quilt, lies in the hammock. */
  readonly matInHammock: boolean
}

export const hasHammock = (going: readonly Going[]): boolean => goingOf(going, 'form', 'hammock').length > 0

export function belowOf(going: readonly Going[], brief: Brief): Found<Below> {
  const hammock = hasHammock(going)
  const under = goingFor(going, 'ground-insulation')
  const struck = brief.struck.some(({ duty }) => duty === 'ground-insulation')
  if (under.length === 0 && (!struck || hammock)) return missing('ground-insulation')
  const bare = under.find(({ item }) => traitNumber(item, 'thermal-resistance') === null)
  if (bare !== undefined) return missing('thermal-resistance', bare.item)
  const full = under.filter(({ item }) => traitText(item, 'pad-length') !== 'torso')
  const short = full.length < under.length
  const mats = matsInSeries(under.map(matFigure))
  return {
    ok: true,
    value: {
      mats,
      legs: short ? legsFigure(full) : mats,
      matShare: short ? TORSO_SHARE : 1,
      hammock,
      matInHammock: hammock && under.some(({ item }) => traitText(item, 'form') !== 'quilt'),
    },
  }
}

/** 10 % of every mat's figure, from one common method: it adds before it is squared. */
const MAT_DOUBT = 0.1

function matFigure({ item, pieces }: Going): Given & { readonly figure: Figure<'m2K/W'> } {
  const trait = traitOf(item, 'thermal-resistance')
  const rsi = (trait?.number ?? 0) * pieces
  return { name: item.name, figure: given(rsi, 'm2K/W', trait?.origin ?? 'claimed', { 'method:mats': MAT_DOUBT * rsi }, item.name) }
}

/** Off a short mat the legs lie on the full mats or, if that is more, on the pack. */
function legsFigure(full: readonly Going[]): Figure<'m2K/W'> {
  const mats = matsInSeries(full.map(matFigure))
  return mats.value >= PACK_UNDER_LEGS_RSI ? mats : constant(PACK_UNDER_LEGS_RSI, 'm2K/W', 'the pack under the legs (choice)')
}

/** Skin to mat: less under an open quilt. */
export const underFigure = (quilts: boolean): Figure<'m2K/W'> =>
  given(
    quilts ? UNDER_QUILT_RSI : UNDER_BAG_RSI,
    'm2K/W',
    'estimated',
    { 'choice:under-body': 0.04 },
    'squashed underside and base layer (choice)',
  )

export interface SleepBed {
  readonly figures: BedFigures
  readonly tops: readonly Top[]
  readonly below: Below
  /** What changes the bed beside bag and mat: its name and term, each a line of the working. */
  readonly added: readonly Given[]
  readonly openHead: boolean
}

/** Everything the sleep balance takes, as figures that open, or the one thing missing. */
export function bedOf({ loadout, brief }: Pick<Asked, 'loadout' | 'brief'>): Found<SleepBed> {
  const going = goingItems(loadout)
  const tops = topsOf(going)
  if (!tops.ok) return tops
  const below = belowOf(going, brief)
  if (!below.ok) return below
  const first = firstTop(tops.value, below.value)
  const added = addedTo(going, tops.value, first)
  const openHead = tops.value.every(({ item }) => ['quilt', 'hoodless'].includes(traitText(item, 'form')))
  return {
    ok: true,
    value: {
      tops: tops.value,
      below: below.value,
      added,
      openHead,
      figures: { ...first, ...rest(going, brief, below.value, added, openHead) },
    },
  }
}

type RatedFigures = Pick<BedFigures, 'ratedC' | 'ratedSkinC' | 'ratedHeat' | 'groundShare' | 'underRsi' | 'rhPct'>

function firstTop(tops: readonly Top[], below: Below): RatedFigures {
  return ratedFigures(tops[0]!, {
    groundShare: given(
      below.matInHammock ? HAMMOCK_GROUND_SHARE : GROUND_SHARE,
      '1',
      'estimated',
      { 'choice:ground-share': 0.06 },
      'choice',
    ),
    underRsi: underFigure(tops.every(({ item }) => traitText(item, 'form') === 'quilt')),
    rhPct: given(NIGHT_RH_PCT, '%', 'estimated', {}, 'choice'),
  })
}

function ratedFigures({ item, ratedC, kind }: Top, shared: Pick<RatedFigures, 'groundShare' | 'underRsi' | 'rhPct'>): RatedFigures {
  const scale = sleepScales[kind.scale]
  const origin = traitOf(item, 'rated-temperature')?.origin ?? 'claimed'
  return {
    ratedC: given(ratedC, 'degC', origin, { [`rating:${item.uid}`]: kind.sigmaK }, item.name),
    ratedSkinC: constant(scale.skinC, 'degC', `skin of the ${kind.scale} scale`),
    ratedHeat: constant(scale.heat_W_m2, 'W/m2', `heat of the ${kind.scale} scale`),
    ...shared,
  }
}

function rest(
  going: readonly Going[],
  brief: Brief,
  below: Below,
  added: readonly Given[],
  openHead: boolean,
): Omit<BedFigures, keyof RatedFigures> {
  const hat = goingFor(going, 'hat').length > 0
  const snow = brief.legs.some((leg) => leg.camp && leg.terrain === 'snow')
  return {
    matsRsi: below.mats,
    legsRsi: below.legs,
    matShare: given(below.matShare, '1', 'estimated', {}, 'length of the mats'),
    damp: given(1, '1', 'estimated', {}, 'dry'),
    addedRsi: total('worn inside, liner and further tops', 'm2K/W', added),
    bareShare: given(openHead ? HEAD_SHARE : 0, '1', 'estimated', {}, openHead ? 'head without hood (choice)' : 'hood closed'),
    headRsi: given(hat ? HEAD_WITH_HAT_RSI : HEAD_BARE_RSI, 'm2K/W', 'estimated', {}, hat ? 'warm hat (choice)' : 'bare head (choice)'),
    skinC: constant(sleepScales.comfort.skinC, 'degC', 'skin of the comfort scale'),
    heat: constant(sleepScales.comfort.heat_W_m2, 'W/m2', 'heat of the comfort scale'),
    groundAtMostC: given(
      snow ? GROUND_OF_SNOW_C : GROUND_AS_AIR_C,
      'degC',
      'estimated',
      {},
      snow ? 'camp on snow' : 'ground as cold as the air',
    ),
  }
}

function addedTo(going: readonly Going[], tops: readonly Top[], shared: RatedFigures): readonly Given[] {
  const sumClo = clothesFigure(going)
  const liners = going.filter(({ item }) => Object.hasOwn(linerRsi, traitText(item, 'liner')))
  return [
    ...(sumClo.value > 0 ? [{ name: 'clothes worn inside', figure: work(clothesInside, { clo: sumClo }) }] : []),
    ...liners.map(({ item }) => ({ name: item.name, figure: constant(linerRsi[traitText(item, 'liner')]!, 'm2K/W', 'liner (choice)') })),
    ...(goingFor(going, 'base-layer', 'dry-base').length > 0
      ? []
      : [{ name: 'no base layer', figure: constant(NO_BASE_LAYER_RSI, 'm2K/W', 'the rating counts on a base layer') }]),
    ...tops.slice(1).map((top) => ({ name: top.item.name, figure: work(ratedTop, ratedFigures(top, shared)) })),
  ]
}

/** Clothes not worn while walking, beyond the base layer; one whose insulation is not known adds nothing. */
function clothesFigure(going: readonly Going[]): Figure<'clo'> {
  const kept = goingFor(going, 'big-jacket', 'mid-layer', 'legwear').filter(
    ({ item, worn }) => !worn && !serves(item, 'base-layer', 'dry-base'),
  )
  return total(
    'clothes worn inside',
    'clo',
    kept.flatMap(({ item }) => {
      const clo = garmentCloOf(item)
      return clo === null ? [] : [{ name: item.name, figure: clo }]
    }),
  )
}
