/**
 * Letting go: which things the record says to part with, and why; never a thing kept for safety for lack of use.
 *   stayed home: k taken of n trips it was fit for · carried for nothing: used j of k carried, k ≥ 5, the same law (laws/use-share.ts)
 *   offered when all hold (choice): owned · not kept for safety · not marked keep · owned 12 months and through each season it is tagged for · n ≥ 5
 *   · E = P(θ < 0.10) ≥ 0.80 · another owned thing meets each of its duties. From 0.50 it is seldom used, without an offer.
 * Both costs, holding and hiring, are shown; the program never decides.
 */
import { Temporal } from 'temporal-polyfill'
import { hiringCost, holdingCost, worth, type Sellable } from '../laws/resale.ts'
import { meanShare, noneOfNext, RARE_SHARE, shareQuantile, shareUnder, useShare } from '../laws/use-share.ts'
import { dutyByCode, type Status } from './vocabulary.ts'

export type TaggedSeason = 'spring' | 'summer' | 'autumn' | 'winter'

export interface LettingGoFacts {
  readonly status: Status
  /** Codes; own duties are not kept. */
  readonly duties: readonly string[]
  readonly markedKeep: boolean
  /** Bought, made or given; null: not known, then by the first trip or weighing on record. */
  readonly ownedSince: string | null
  readonly seasons: readonly TaggedSeason[]
  readonly southern: boolean
  /** Trips it was fit for, those it went on, and those it was used on. */
  readonly fit: number
  readonly taken: number
  readonly used: number
  /** For each of its duties, whether another owned thing meets it. */
  readonly metByOthers: boolean
}

export interface UseEvidence {
  readonly of: number
  readonly count: number
  readonly mean: number
  /** P(θ < 0.10). */
  readonly evidence: number
  /** The 90 % upper bound of the share. */
  readonly upper: number
  readonly noneOfNextThree: number
}

export type Withheld = 'not-owned' | 'marked-keep' | 'owned-too-short' | 'season-not-seen' | 'nothing-else-serves'

export type LettingGo =
  | { readonly kind: 'kept-for-safety'; readonly duty: string }
  /** `missing` trips to go until it may be said. */
  | { readonly kind: 'too-little-record'; readonly missing: number }
  | { readonly kind: 'offered' | 'seldom' | 'in-use'; readonly use: UseEvidence; readonly withheld: readonly Withheld[] }

export const FEWEST_TRIPS = 5
export const OFFER_EVIDENCE = 0.8
export const SELDOM_EVIDENCE = 0.5

/** The duty for which a thing is never let go for lack of use; null: none. */
export const keptDuty = (duties: readonly string[]): string | null => duties.find((code) => dutyByCode.get(code)?.kept === true) ?? null

/** First list: it stayed home. */
export const stayedHome = (facts: LettingGoFacts, today: string): LettingGo => judged(facts, facts.taken, facts.fit, today)

/** Second list: it was carried for nothing. */
export const carriedForNothing = (facts: LettingGoFacts, today: string): LettingGo => judged(facts, facts.used, facts.taken, today)

export function evidenceOf(count: number, of: number): UseEvidence {
  const share = useShare(count, of)
  return {
    of,
    count,
    mean: meanShare(share),
    evidence: shareUnder(share, RARE_SHARE),
    upper: shareQuantile(share, 0.9),
    noneOfNextThree: noneOfNext(share, 3),
  }
}

function judged(facts: LettingGoFacts, count: number, of: number, today: string): LettingGo {
  const duty = keptDuty(facts.duties)
  if (duty !== null) return { kind: 'kept-for-safety', duty }
  if (of < FEWEST_TRIPS) return { kind: 'too-little-record', missing: Math.ceil(FEWEST_TRIPS - of) }
  const use = evidenceOf(Math.min(count, of), of)
  return { use, ...verdictOf(use, facts, today) }
}

type Withholding = Pick<LettingGoFacts, 'status' | 'markedKeep' | 'ownedSince' | 'seasons' | 'southern' | 'metByOthers'>

/** What the evidence comes to, with all that stands against an offer. */
export function verdictOf(
  use: UseEvidence,
  facts: Withholding,
  today: string,
): { readonly kind: 'offered' | 'seldom' | 'in-use'; readonly withheld: readonly Withheld[] } {
  const withheld = whyWithheld(facts, today)
  if (use.evidence >= OFFER_EVIDENCE) return { kind: withheld.length === 0 ? 'offered' : 'seldom', withheld }
  return { kind: use.evidence >= SELDOM_EVIDENCE ? 'seldom' : 'in-use', withheld }
}

function whyWithheld(facts: Withholding, today: string): readonly Withheld[] {
  const reasons: Withheld[] = []
  if (facts.status !== 'owned') reasons.push('not-owned')
  if (facts.markedKeep) reasons.push('marked-keep')
  if (facts.ownedSince === null || yearAfter(facts.ownedSince) > today) reasons.push('owned-too-short')
  if (facts.ownedSince === null || !facts.seasons.every((season) => sawSeason(facts.ownedSince!, today, season, facts.southern)))
    reasons.push('season-not-seen')
  if (!facts.metByOthers) reasons.push('nothing-else-serves')
  return reasons
}

/** The same day a year on; the 29th of February becomes the 28th. In text: a whole closet is asked at once. */
function yearAfter(on: string): string {
  const later = `${Number(on.slice(0, 4)) + 1}${on.slice(4)}`
  return later.endsWith('-02-29') ? later.replace('-29', '-28') : later
}

/** First month of the season in the north; three months each. */
const firstMonth: Readonly<Record<TaggedSeason, number>> = { spring: 3, summer: 6, autumn: 9, winter: 12 }

/** Whether one whole season of that name lies between the two days. */
export function sawSeason(sinceOn: string, today: string, season: TaggedSeason, southern: boolean): boolean {
  // In two years every season has come whole, from its first day to its last.
  if (yearAfter(yearAfter(sinceOn)) <= today) return true
  const since = Temporal.PlainDate.from(sinceOn)
  const month = ((firstMonth[season] + (southern ? 6 : 0) - 1) % 12) + 1
  let start = Temporal.PlainDate.from({ year: since.year, month, day: 1 })
  if (Temporal.PlainDate.compare(start, since) < 0) start = start.add({ years: 1 })
  return start.add({ months: 3 }).subtract({ days: 1 }).toString() <= today
}

export interface SellingFacts {
  /** null: unknown (a gift, or never entered); then its worth is unknown, not nothing. */
  readonly thing: Sellable | null
  /** The years ahead that are weighed. */
  readonly years: number
  readonly fitTripsAhead: number
  readonly meanTaken: number
  /** Price of hiring or borrowing for one trip; null: not said. */
  readonly hire: number | null
}

export interface Selling {
  readonly worthNow: number | null
  readonly holding: number | null
  readonly hiring: number | null
  /** Keeping costs more than hiring would; null where either is unknown. */
  readonly sellingPays: boolean | null
}

export function sellingOf({ thing, years, fitTripsAhead, meanTaken, hire }: SellingFacts): Selling {
  const worthNow = thing === null ? null : worth(thing)
  const holding = thing === null ? null : holdingCost(thing, years)
  const hiring = hire === null ? null : hiringCost(fitTripsAhead, meanTaken, hire)
  return { worthNow, holding, hiring, sellingPays: holding === null || hiring === null ? null : holding > hiring }
}

/** Strongest evidence first; equal evidence keeps its order. */
export const byEvidence = <T extends { readonly use: UseEvidence }>(list: readonly T[]): readonly T[] =>
  [...list].sort((a, b) => b.use.evidence - a.use.evidence)
