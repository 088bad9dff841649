/**
 * Care that is due, and what to see to before the next trip. Limits are common practice, no source, but that of re-proofing (25 days worn, provisions.md 7.1).
 *   wash: bag and jacket of down or synthetic fill, every 50 nights or days of use · reproof: shells, every 25 days · reseal: shelters, every 100 nights
 *   recharge: what holds charge, and air out: shelters and beds, after every trip
 * Counted since the day the person last did it; from 80 % of the limit on it is due soon. Nothing here says that a safety thing is fine.
 */
import type { Counter, Worn } from './lives.ts'
import type { CareCode, WearIndex, WearThing } from './wear-facts.ts'
import { wearOf, type Wear } from './wear.ts'

export interface CareTask {
  readonly code: CareCode
  readonly counter: Counter
  readonly since: number
  readonly limit: number
  readonly lastOn: string | null
  readonly state: 'due' | 'due soon' | 'not due'
}

interface CareRule {
  readonly code: CareCode
  readonly counter: Counter
  readonly limit: number
  readonly asks: (thing: Worn) => boolean
}

const has = (thing: Worn, ...duties: readonly string[]): boolean => duties.some((duty) => thing.duties.includes(duty))
const trait = (thing: Worn, code: string): string | undefined => thing.traits.find((one) => one.code === code)?.text
const isFilled = (thing: Worn): boolean => ['down', 'synthetic'].includes(trait(thing, 'fill') ?? '')

const rules: readonly CareRule[] = [
  { code: 'washed', counter: 'nights', limit: 50, asks: (thing) => isFilled(thing) },
  { code: 'reproofed', counter: 'days', limit: 25, asks: (thing) => has(thing, 'rain-shell', 'rain-legs') },
  { code: 'resealed', counter: 'nights', limit: 100, asks: (thing) => has(thing, 'shelter') },
  {
    code: 'recharged',
    counter: 'days',
    limit: 1,
    asks: (thing) => trait(thing, 'charge') !== undefined || trait(thing, 'cell') === 'lithium-ion',
  },
  { code: 'aired', counter: 'nights', limit: 1, asks: (thing) => has(thing, 'shelter', 'top-insulation') },
]

/** Tasks of one thing; `ahead`: what the next trip will add. */
export function careOf(thing: WearThing, index: WearIndex, ahead: Readonly<Partial<Record<Counter, number>>> = {}): readonly CareTask[] {
  return rules
    .filter(({ asks }) => asks(thing))
    .map(({ code, counter, limit }) => {
      const lastOn = index.counter(thing.id, code)?.notedOn ?? null
      const went = index.outings(thing.id).filter(({ on, use }) => use !== 'unused' && (lastOn === null || on >= lastOn))
      const since = went.reduce((sum, { units }) => sum + units[counter], 0)
      const onTrip = limit > 1 ? (ahead[counter] ?? 0) : 0
      const state = since >= limit ? 'due' : since + onTrip >= limit || (limit > 1 && since >= 0.8 * limit) ? 'due soon' : 'not due'
      return { code, counter, since, limit, lastOn, state }
    })
}

export type BeforeTrip =
  | { readonly kind: 'care'; readonly row: number; readonly task: CareTask }
  | { readonly kind: 'worn' | 'dated'; readonly row: number; readonly wear: Wear }
  | { readonly kind: 'marked'; readonly row: number; readonly mark: 'damp' | 'dirty' }
  | { readonly kind: 'mend'; readonly row: number }

export interface SeeTo {
  readonly row: number
  readonly thing: WearThing
  readonly mark: '' | 'damp' | 'dirty'
  /** The day of the newest verdict that asked to mend it; null: none. */
  readonly mendOn: string | null
}

/** What the things of the next trip want before it: over or nearly worn, dated before its end, care, damp or dirty on the scale, mending asked. */
export function beforeTrip(
  things: readonly SeeTo[],
  index: WearIndex,
  trip: { readonly endsOn: string; readonly nights: number; readonly km: number },
  today: string,
): readonly BeforeTrip[] {
  const ahead: Readonly<Partial<Record<Counter, number>>> = { nights: trip.nights, days: trip.nights + 1, km: trip.km }
  return things.flatMap(({ row, thing, mark, mendOn }): readonly BeforeTrip[] => {
    const wear = wearOf(index.factsOf(thing, today), today)
    const mended = index.counter(thing.id, 'mended')?.notedOn ?? null
    return [
      ...(wear.kind === 'counted' && (wear.share >= 0.9 || (ahead[wear.lifeClass.counter] ?? 0) > wear.left)
        ? [{ kind: 'worn' as const, row, wear }]
        : []),
      ...(wear.kind === 'dated' && wear.dueOn !== null && wear.dueOn <= trip.endsOn ? [{ kind: 'dated' as const, row, wear }] : []),
      ...careOf(thing, index, ahead)
        .filter(({ state }) => state !== 'not due')
        .map((task) => ({ kind: 'care' as const, row, task })),
      ...(mark === '' ? [] : [{ kind: 'marked' as const, row, mark }]),
      ...(mendOn !== null && (mended === null || mended < mendOn) ? [{ kind: 'mend' as const, row }] : []),
    ]
  })
}
