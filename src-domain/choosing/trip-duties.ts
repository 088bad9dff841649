/**
 * The duties and needs of a trip as demands on candidates, moment by moment, as the rail deals them (loadout/coverage.ts).
 *   a piece serves one duty at a moment unless it is marked shared there; what has expired serves none
 *   asked duties and shared needs stand together: the greatest counts · reserved needs add up
 */
import { dutyByCode, type Moment } from '../closet/vocabulary.ts'
import type { Asked } from '../checks/check.ts'
import { dutyMoments, isPast, needMoments, needsOf } from '../loadout/coverage.ts'
import type { KitItem, Line, Loadout } from '../loadout/loadout.ts'
import { daysOf } from '../trips/brief.ts'
import { asksOf, outlasts, standing, type Ask } from '../trips/asked.ts'
import type { Candidate, Need } from './candidate.ts'
import type { Choice } from './trip-choice.ts'

export interface DutyDemands {
  readonly duties: Readonly<Record<string, number>>
  readonly choices: readonly Choice[]
  /** What the supplies that stay need, as things of no mass that go anyway. */
  readonly supplies: readonly Candidate[]
  readonly asks: readonly Ask[]
}

const at = (duty: string, moment: Moment): string => `${duty}@${moment}`

/** `asked.loadout` is what stays; `whole`, as it is now, says what its supplies need and what holds them. */
export function dutyDemands(asked: Asked, choices: readonly Choice[], whole: Loadout): DutyDemands {
  const asks = standing(asksOf(asked.brief, asked.trip))
  const duties = Object.fromEntries(asks.flatMap(({ duty }) => dutyMoments(duty).map((moment) => [at(duty, moment), 1])))
  const supplies = suppliesNeeding(whole)
  const days = daysOf(asked.trip)
  const needing = choices.map((choice) => ({ ...choice, candidate: { ...choice.candidate, needs: itemNeeds(choice.item, days) } }))
  const wanted = new Set([
    ...asks.map(({ duty }) => duty),
    ...[...supplies, ...needing.map(({ candidate }) => candidate)].flatMap(({ needs }) => needs.map(({ duty }) => duty.split('@')[0]!)),
  ])
  const on = asked.trip.endsOn ?? asked.trip.startsOn ?? asked.today
  const serving = needing.map((choice) => ({ ...choice, candidate: served(choice, wanted, on) }))
  return { duties: lessWhatStays(duties, asked.loadout.lines, on), choices: serving, supplies, asks }
}

function suppliesNeeding(loadout: Loadout): readonly Candidate[] {
  const names = new Set(loadout.lines.flatMap((line) => (line.kind === 'supply' ? [line.supply.uid] : [])))
  const open = needsOf(loadout).filter(({ holder, settled }) => !settled && holder !== null && names.has(holder.uid))
  const byHolder = Map.groupBy(open, ({ holder }) => holder!.uid)
  return [...byHolder].map(([uid, demands]): Candidate => ({
    id: `supply:${uid}`,
    massDg: 0,
    pieces: 1,
    place: 'pack',
    covers: {},
    needs: demands.flatMap(({ duty, pieces, kind }) =>
      dutyMoments(duty).map((moment) => ({ duty: at(duty, moment), amount: pieces, kind, once: true })),
    ),
  }))
}

/** Its own needs, and charge where it draws more than its own cells hold over the days. */
function itemNeeds(item: KitItem, days: number | null): readonly Need[] {
  const own = item.needs.flatMap(({ duty, pieces, kind }) =>
    needMoments(duty, item).map((moment): Need => ({ duty: at(duty, moment), amount: pieces, kind, once: true })),
  )
  return outlasts(item, days)
    ? [...own, ...dutyMoments('power').map((moment): Need => ({ duty: at('power', moment), amount: 1, kind: 'shared', once: true }))]
    : own
}

/** What another carries serves already, where it serves one duty alone; a piece that could serve several is left to the rail. */
function lessWhatStays(duties: Readonly<Record<string, number>>, lines: readonly Line[], on: string): Readonly<Record<string, number>> {
  const left: Record<string, number> = { ...duties }
  for (const line of lines) {
    if (line.kind !== 'item' || isPast(line.item, on)) continue
    for (const { duty } of line.item.duties)
      for (const moment of dutyMoments(duty)) if (left[at(duty, moment)] !== undefined) left[at(duty, moment)]! -= line.pieces
  }
  return Object.fromEntries(Object.entries(left).filter(([, amount]) => amount > 0))
}

function served({ item, candidate }: Choice, wanted: ReadonlySet<string>, on: string): Candidate {
  const covers: Record<string, number> = {}
  const alone = new Map<Moment, string[]>()
  for (const { duty, shared } of isPast(item, on) ? [] : item.duties) {
    if (!wanted.has(duty)) continue
    for (const moment of dutyMoments(duty)) {
      covers[at(duty, moment)] = 1
      if (!shared && dutyByCode.has(duty)) alone.set(moment, [...(alone.get(moment) ?? []), at(duty, moment)])
    }
  }
  const oneOf = [...alone.values()].filter((duties) => duties.length > 1)
  return { ...candidate, covers, ...(oneOf.length === 0 ? {} : { oneOf }) }
}
