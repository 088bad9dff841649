/**
 * What is left of a thing: life used, the chance that it is over, and when it will be worn at the walker's own pace.
 *   used = u/L50 to 150 %; dates: the 10, 50 and 90 % points of the wait for 90 % of the life (laws/waiting-time.ts), mapped along the seasons it goes out in
 *   with a limit in years the earlier date rules; dated things have their date only
 * Counters fall only by a renewal (re-proofed, new cell, resoled), which counts what came after it. With no trip seen it is a guess and says so.
 * Caution: safety things are inspected and retired by the maker's rule; nothing here says one is fine.
 */
import { Temporal } from 'temporal-polyfill'
import { leftToWorn, lifeUsed, pastLife, SHOWN_TO, WORN_SHARE } from '../laws/life-used.ts'
import { FORESEEABLE_YEARS, tripRate, unitsPerTrip, wornYears } from '../laws/waiting-time.ts'
import { datedClassByCode, lifeClassByCode, type LifeClass } from './lives.ts'

export interface WearEntry {
  /** Local date; null: before this program, always counted unless renewed since. */
  readonly on: string | null
  readonly units: number
  readonly estimated: boolean
}

export interface WearFacts {
  /** A class of lives.ts; null: none. */
  readonly lifeClass: string | null
  /** The person's own life in the class's counter; null: the class's. */
  readonly ownLife: number | null
  readonly entries: readonly WearEntry[]
  /** Dates of renewals. */
  readonly renewedOn: readonly string[]
  /** Made, bought or first used; null: not known. */
  readonly sinceOn: string | null
  /** Printed or stated end (trait `expires`); null: none. */
  readonly endsOn: string | null
  /** A blow, a fall, frozen wet: it is over whatever its counter says. */
  readonly endedOn: string | null
  /** Trips of this walker the thing was fit for, and the years they were seen in. */
  readonly fitTrips: number
  readonly seenYears: number
  /** The walker's own eligible trips a year; null: no history. */
  readonly usualTripsPerYear: number | null
  /** Share of the walker's fit trips by month, January first; null: uniform. Used from ten trips on. */
  readonly byMonth: readonly number[] | null
}

export type When = { readonly kind: 'now' } | { readonly kind: 'on'; readonly on: string } | { readonly kind: 'not-foreseeable' }

export interface CountedWear {
  readonly kind: 'counted'
  readonly lifeClass: LifeClass
  readonly used: number
  readonly life: number
  /** Life used, 0 to 1.5. */
  readonly share: number
  readonly past: number
  readonly pastWorn: number
  readonly left: number
  readonly early: When
  readonly median: When
  readonly late: When
  /** Resting on no trip at all. */
  readonly guess: boolean
  /** Part of the counter is estimated. */
  readonly estimated: boolean
  readonly state: 'good' | 'worn soon' | 'worn' | 'over'
}

export interface DatedWear {
  readonly kind: 'dated'
  /** null: no date is known, it is to be looked up and entered. */
  readonly dueOn: string | null
  readonly state: 'due' | 'due soon' | 'inspect'
  readonly cite: string
}

export type Wear = CountedWear | DatedWear | { readonly kind: 'none' }

/** Wear of one thing on a day. */
export function wearOf(facts: WearFacts, today: string): Wear {
  const dated = datedClassByCode.get(facts.lifeClass ?? '')
  if (dated !== undefined) return datedWear(facts, dated.limitYears, dated.cite, today)
  const counted = lifeClassByCode.get(facts.lifeClass ?? '')
  if (counted !== undefined) return countedWear(facts, counted, today)
  return facts.endsOn === null ? { kind: 'none' } : datedWear(facts, null, 'the date entered for it', today)
}

function datedWear(facts: WearFacts, limitYears: number | null, cite: string, today: string): DatedWear {
  const limit =
    limitYears !== null && facts.sinceOn !== null
      ? Temporal.PlainDate.from(facts.sinceOn)
          .add({ months: Math.round(limitYears * 12) })
          .toString()
      : null
  const dueOn = earliest([facts.endedOn, facts.endsOn, limit])
  const soon = Temporal.PlainDate.from(today).add({ months: 6 }).toString()
  return { kind: 'dated', dueOn, state: dueOn === null || dueOn > soon ? 'inspect' : dueOn <= today ? 'due' : 'due soon', cite }
}

/** Life used of a counted thing, 0 to 1.5, without its dates: for whole closets. null: nothing is counted. */
export function lifeShare(facts: WearFacts, today: string): number | null {
  const lifeClass = lifeClassByCode.get(facts.lifeClass ?? '')
  return lifeClass === undefined ? null : usedOf(facts, lifeClass, today).share
}

interface UsedLife {
  readonly life: number
  readonly entries: readonly WearEntry[]
  readonly used: number
  readonly share: number
}

function usedOf(facts: WearFacts, lifeClass: LifeClass, today: string): UsedLife {
  const life = facts.ownLife !== null && facts.ownLife > 0 ? facts.ownLife : lifeClass.life
  const entries = sinceRenewal(facts)
  const age = ageYears(facts, today)
  const used = lifeClass.counter === 'years' ? age : entries.reduce((sum, one) => sum + one.units, 0)
  const byAge = lifeClass.limitYears === null ? 0 : age / lifeClass.limitYears
  const isEnded = facts.endedOn !== null && facts.endedOn <= today
  return { life, entries, used, share: isEnded ? SHOWN_TO : Math.min(SHOWN_TO, Math.max(lifeUsed(used, life), byAge)) }
}

function countedWear(facts: WearFacts, lifeClass: LifeClass, today: string): CountedWear {
  const { life, entries, used, share } = usedOf(facts, lifeClass, today)
  const when = dates(facts, lifeClass, used, life, entries, today, share >= 1)
  return {
    kind: 'counted',
    lifeClass,
    used,
    life,
    share,
    past: pastLife(used, life, lifeClass.sigma),
    pastWorn: pastLife(used, life, lifeClass.sigma, WORN_SHARE),
    left: share >= SHOWN_TO ? 0 : leftToWorn(used, life),
    ...when,
    guess: lifeClass.counter !== 'years' && facts.fitTrips === 0,
    estimated: entries.some((one) => one.estimated && one.units > 0),
    state: share >= 1 ? 'over' : share >= WORN_SHARE ? 'worn' : share >= 0.75 ? 'worn soon' : 'good',
  }
}

function dates(
  facts: WearFacts,
  lifeClass: LifeClass,
  used: number,
  life: number,
  entries: readonly WearEntry[],
  today: string,
  over: boolean,
): Pick<CountedWear, 'early' | 'median' | 'late'> {
  const years = (q: number): number => {
    if (over) return 0
    if (lifeClass.counter === 'years') return leftToWorn(used, life)
    const rate = tripRate(facts.fitTrips, facts.seenYears, facts.usualTripsPerYear ?? undefined)
    const perTrip = unitsPerTrip(
      lifeClass.perTrip,
      entries.filter((one) => one.on !== null && !one.estimated && one.units > 0).map((one) => one.units),
    )
    return wornYears(q, { medianLife: life, sigma: lifeClass.sigma, used, unitsPerTrip: perTrip, rate })
  }
  const late = years(0.9)
  const limit = limitOn(facts, lifeClass)
  const when = (tau: number): When =>
    earlierOf(late > FORESEEABLE_YEARS ? { kind: 'not-foreseeable' } : asDate(tau, facts, today), limit, today)
  return { early: when(years(0.1)), median: when(years(0.5)), late: when(late) }
}

const asDate = (years: number, facts: WearFacts, today: string): When =>
  years <= 0 ? { kind: 'now' } : { kind: 'on', on: dateAfter(today, years, facts.fitTrips >= 10 ? facts.byMonth : null) }

function earlierOf(when: When, limit: string | null, today: string): When {
  if (limit === null) return when
  if (limit <= today) return { kind: 'now' }
  return when.kind === 'not-foreseeable' || (when.kind === 'on' && limit < when.on) ? { kind: 'on', on: limit } : when
}

function limitOn(facts: WearFacts, { limitYears }: LifeClass): string | null {
  const byAge =
    limitYears !== null && facts.sinceOn !== null
      ? Temporal.PlainDate.from(facts.sinceOn)
          .add({ months: Math.round(limitYears * 12) })
          .toString()
      : null
  return earliest([facts.endsOn, facts.endedOn, byAge])
}

/**
 * The date some years of trips later. A year's worth of trips is spread over the months as the walker spreads theirs; a month without trips is walked over.
 */
export function dateAfter(fromOn: string, years: number, byMonth: readonly number[] | null): string {
  const from = Temporal.PlainDate.from(fromOn)
  const sum = byMonth?.reduce((all, share) => all + Math.max(0, share), 0) ?? 0
  if (byMonth === null || byMonth.length !== 12 || !(sum > 0)) return from.add({ days: Math.round(years * 365.2425) }).toString()
  const whole = Math.floor(years)
  let left = years - whole
  let at = from.add({ years: whole })
  while (left > 1e-12) {
    const share = Math.max(0, byMonth[at.month - 1]!) / sum
    const next = at.with({ day: 1 }).add({ months: 1 })
    const inMonth = (share * at.until(next).days) / at.daysInMonth
    if (inMonth >= left) return at.add({ days: Math.round((left / share) * at.daysInMonth) }).toString()
    left -= inMonth
    at = next
  }
  return at.toString()
}

const lastRenewal = (facts: WearFacts): string | null =>
  facts.renewedOn.reduce<string | null>((last, on) => (last === null || on > last ? on : last), null)

/** Entries that still count: all, or those after the last renewal. What is dated before it, or has no date, is gone with it. */
function sinceRenewal(facts: WearFacts): readonly WearEntry[] {
  const last = lastRenewal(facts)
  return last === null ? facts.entries : facts.entries.filter((one) => one.on !== null && one.on >= last)
}

function ageYears(facts: WearFacts, today: string): number {
  const since = lastRenewal(facts) ?? facts.sinceOn
  if (since === null) return 0
  return Math.max(0, Temporal.PlainDate.from(since).until(today, { largestUnit: 'day' }).days / 365.2425)
}

function earliest(dates: readonly (string | null)[]): string | null {
  return dates.reduce((first, on) => (on !== null && (first === null || on < first) ? on : first), null)
}
