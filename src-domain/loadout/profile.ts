import { arrivalOf, type DayArrival } from '../checks/before-dark.ts'
import type { Asked, Saying } from '../checks/check.ts'
import { energyNeed, legParts, type Body, type EnergyNeed } from '../checks/energy-need.ts'
import { isWater, litresOf } from '../checks/water-carry.ts'
import { routeMissing } from '../checks/water-needs.ts'
import { given, scaled, total, type Figure } from '../figures/figure.ts'
import type { KitArea } from '../closet/vocabulary.ts'
import { kcalOf } from '../laws/kcal.ts'
import { lightOfDay, type LightFound } from '../trips/light.ts'
import { campNights } from '../trips/nights.ts'
import { hoursBetween, hoursOfDay, routeOf, type TimedLeg } from '../trips/route.ts'
import { partsBetween, type BriefEntries } from './amounts.ts'
import type { Line, SupplyLine } from './loadout.ts'
import { isCarriedByAnother, lineMass, nameOf } from './mass.ts'
import { amountAt } from './moments.ts'
import { waterCourse, type WaterCourse } from './profile-water.ts'
import { sumOf, weighed } from './totals.ts'

/**
 * The load on the shoulders along the whole way: falling as food, fuel and water go, jumping where they are renewed.
 *   food, fuel, power: linear in days walked, a day's share being the share of its length · water: by the hour from each source (profile-water.ts)
 * So the load is a straight line between the ends of legs, sources and resupplies; where it jumps, a place has a point before and one after.
 * Pack weight alone; what is worn or carried by another is not on these shoulders. Hours, energy and arrival against the light by day and by leg.
 * Source: lanes and amounts as the totals and checks read them; the straight lines are a choice.
 */
export interface ProfilePoint {
  readonly atM: number
  /** Moving hours from the start. */
  readonly hours: number
  /** Days walked, 0 at the trailhead. */
  readonly days: number
  readonly baseKg: number
  /** What is used up, by kit area, in the order of `areas`. */
  readonly usedKg: readonly number[]
  readonly loadKg: number
}

export interface ProfileLeg {
  readonly leg: TimedLeg
  readonly loadStartKg: number
  readonly loadEndKg: number
  /** Energy of the walking alone at the leg's mean load; null: the body is not known. */
  readonly walkingKcal: number | null
}

export interface ProfileDay {
  readonly day: number
  readonly lengthM: number
  readonly climbM: number
  readonly descentM: number
  readonly movingHours: number
  /** With breaks. */
  readonly onFootHours: number
  readonly loadStart: Figure<'kg'>
  readonly loadArrival: Figure<'kg'>
  /** A whole day's; null: the body is not known. */
  readonly energy: Figure<'kcal'> | null
  readonly arrival: DayArrival
  readonly light: LightFound
}

export interface Profile {
  readonly areas: readonly KitArea[]
  readonly points: readonly ProfilePoint[]
  readonly legs: readonly ProfileLeg[]
  readonly days: readonly ProfileDay[]
  readonly lengthM: number
  /** Over the moving hours. */
  readonly meanLoadKg: number
  /** Where water is filled and where supplies wait, along the way. */
  readonly fillsM: readonly number[]
  readonly resuppliesM: readonly number[]
  /** Lines whose mass is not known: the load is at least what it says. */
  readonly withoutMass: readonly string[]
  /** What energy needs and is not said; null: nothing. */
  readonly energyMissing: Saying | null
}

export type ProfileFound = { readonly ok: true; readonly profile: Profile } | { readonly ok: false; readonly missing: Saying }

export function profileOf(asked: Asked): ProfileFound {
  const route = routeOf(asked.brief, asked.walker)
  if (!route.ok) return { ok: false, missing: { code: routeMissing[route.missing], facts: { leg: route.leg } } }
  const course = courseOf(asked, route.legs)
  const points = pointsOf(course)
  const need = energyNeed(asked)
  return {
    ok: true,
    profile: {
      areas: course.areas,
      points,
      legs: route.legs.map((leg) => profileLeg(course, leg, need)),
      days: daysWalked(route.legs).map((day) => profileDay(course, day, need)),
      lengthM: route.lengthM,
      meanLoadKg: meanOverHours(points),
      fillsM: course.water.fillsM,
      resuppliesM: asked.brief.resupplies.map(({ atM }) => atM).filter((atM) => atM > 0 && atM < route.lengthM),
      withoutMass: course.lines.filter((line) => lineMass(line) === null).map(nameOf),
      energyMissing: need.ok ? null : { code: need.missing, ...(need.facts === undefined ? {} : { facts: need.facts }) },
    },
  }
}

/** Of a place where the load jumps: before what is filled or renewed there, or after. */
export type Side = 'before' | 'after'

interface Course {
  readonly asked: Asked
  readonly entries: BriefEntries
  readonly legs: readonly TimedLeg[]
  readonly lines: readonly Line[]
  readonly base: Figure<'g'>
  readonly supplies: readonly SupplyLine[]
  readonly areas: readonly KitArea[]
  readonly water: WaterCourse
}

function courseOf(asked: Asked, legs: readonly TimedLeg[]): Course {
  const lines = asked.loadout.lines.filter((line) => line.lane !== 'on_me' && !isCarriedByAnother(line))
  const supplies = lines.filter((line) => line.kind === 'supply')
  const waterL = supplies.filter(({ supply }) => isWater(supply)).reduce((sum, line) => sum + litresOf(line), 0)
  return {
    asked,
    entries: { brief: asked.brief, trip: asked.trip },
    legs,
    lines,
    base: sumOf('base weight', lines.filter((line) => line.kind === 'item').map(weighed)).figure,
    supplies,
    areas: [...new Set(supplies.map(({ supply }) => supply.kitArea))],
    water: waterCourse(asked.brief, asked.walker, legs, campNights(asked.brief, asked.trip), waterL),
  }
}

/** Ends of legs, sources and resupplies in order; both points where the load jumps. */
function pointsOf(course: Course): readonly ProfilePoint[] {
  const endM = course.legs.at(-1)!.toM
  const marks = [0, ...course.legs.map(({ toM }) => toM), ...course.water.fillsM, ...resupplyMarks(course)].filter(
    (at) => at >= 0 && at <= endM,
  )
  return [...new Set(marks)]
    .sort((a, b) => a - b)
    .flatMap((atM) => {
      const [before, after] = [pointAt(course, atM, 'before'), pointAt(course, atM, 'after')]
      if (atM === 0) return [after]
      return atM === endM || !jumps(before, after) ? [before] : [before, after]
    })
}

/** Where the amounts themselves begin anew: places of resupplies as the amounts read them. */
function resupplyMarks({ entries, legs }: Course): readonly number[] {
  const kinds = ['food', 'fuel', 'power'] as const
  return kinds.flatMap((kind) =>
    partsBetween(kind, entries)
      .slice(1)
      .map(({ fromDay }) => placeOf(legs, fromDay)),
  )
}

function pointAt(course: Course, atM: number, side: Side): ProfilePoint {
  const days = daysAt(course.legs, atM, side)
  const kg = course.supplies.map((line) => (amountOn(course, line, atM, days, side) * line.supply.massGPerUnit) / 1000)
  const usedKg = course.areas.map((area) =>
    course.supplies.reduce((sum, line, i) => (line.supply.kitArea === area ? sum + kg[i]! : sum), 0),
  )
  const baseKg = course.base.value / 1000
  return { atM, hours: hoursBetween(course.legs, 0, atM), days, baseKg, usedKg, loadKg: baseKg + kg.reduce((sum, one) => sum + one, 0) }
}

const jumps = (a: ProfilePoint, b: ProfilePoint): boolean =>
  Math.abs(a.loadKg - b.loadKg) > 1e-6 || a.usedKg.some((kg, i) => Math.abs(kg - b.usedKg[i]!) > 1e-6)

/** A hair before a resupply the old portion is nearly gone; at it the new one is there. */
const HAIR_DAYS = 1e-9

function amountOn({ entries, water }: Course, line: SupplyLine, atM: number, days: number, side: Side): number {
  if (isWater(line.supply)) return (line.amount ?? 0) * water.shareAt(atM, side)
  return amountAt(line, side === 'before' ? Math.max(0, days - HAIR_DAYS) : days, entries) ?? 0
}

/** Days walked at a place: the share of a day's length. Between days, `after` is the morning of the next day that walks. */
function daysAt(legs: readonly TimedLeg[], atM: number, side: Side): number {
  const spans = daySpans(legs)
  const has = ({ fromM, toM }: DaySpan) => (side === 'before' ? atM > fromM && atM <= toM : atM >= fromM && atM < toM)
  const span = spans.find(has) ?? (atM <= 0 ? spans[0]! : spans.at(-1)!)
  const length = span.toM - span.fromM
  return span.day - 1 + (length > 0 ? Math.min(1, Math.max(0, (atM - span.fromM) / length)) : side === 'before' ? 1 : 0)
}

function placeOf(legs: readonly TimedLeg[], days: number): number {
  const spans = daySpans(legs)
  const span = spans.find(({ day }) => days >= day - 1 && days < day) ?? spans.find(({ day }) => day > days)
  if (span === undefined) return spans.at(-1)!.toM
  return span.fromM + (span.toM - span.fromM) * Math.max(0, days - (span.day - 1))
}

interface DaySpan {
  readonly day: number
  readonly fromM: number
  readonly toM: number
}

function daySpans(legs: readonly TimedLeg[]): readonly DaySpan[] {
  return daysWalked(legs).map((day) => {
    const own = legs.filter(({ leg }) => leg.day === day)
    return { day, fromM: own[0]!.fromM, toM: own.at(-1)!.toM }
  })
}

const daysWalked = (legs: readonly TimedLeg[]): readonly number[] => [...new Set(legs.map(({ leg }) => leg.day))]

function profileLeg(course: Course, leg: TimedLeg, need: EnergyNeed): ProfileLeg {
  const [start, end] = [pointAt(course, leg.fromM, 'after'), pointAt(course, leg.toM, 'before')]
  const meanKg = (start.loadKg + end.loadKg) / 2 + wornKg(course.asked)
  return {
    leg,
    loadStartKg: start.loadKg,
    loadEndKg: end.loadKg,
    walkingKcal: need.ok ? walkingKcal(leg, course.asked.walker.paceFactor, meanKg, need.body) : null,
  }
}

function walkingKcal({ leg }: TimedLeg, paceFactor: number, loadKg: number, body: Body): number {
  return legParts(leg, paceFactor, loadKg, body).reduce((sum, { hours, powerW }) => sum + kcalOf(powerW, hours), 0)
}

function wornKg({ loadout }: Asked): number {
  return loadout.lines.reduce((sum, line) => sum + (line.lane === 'on_me' ? (lineMass(line)?.value ?? 0) / 1000 : 0), 0)
}

function profileDay(course: Course, day: number, need: EnergyNeed): ProfileDay {
  const { asked, legs } = course
  const own = legs.filter(({ leg }) => leg.day === day)
  const movingHours = hoursOfDay(legs, day)
  return {
    day,
    lengthM: own.at(-1)!.toM - own[0]!.fromM,
    climbM: own.reduce((sum, { leg }) => sum + (leg.climbM ?? 0), 0),
    descentM: own.reduce((sum, { leg }) => sum + (leg.descentM ?? 0), 0),
    movingHours,
    onFootHours: (1 + asked.walker.breakShare) * movingHours,
    loadStart: loadFigure(course, own[0]!.fromM, 'after'),
    loadArrival: loadFigure(course, own.at(-1)!.toM, 'before'),
    energy: need.ok ? (need.days[day - 1]?.whole ?? null) : null,
    arrival: arrivalOf(asked, legs, day),
    light: lightOfDay(asked.brief, asked.trip, day),
  }
}

/** The load at a place with the doubt of every leaf behind it. */
function loadFigure(course: Course, atM: number, side: Side): Figure<'kg'> {
  const days = daysAt(course.legs, atM, side)
  const parts = course.supplies.flatMap((line) => {
    const figure = lineMass({ ...line, amount: amountOn(course, line, atM, days, side) })
    return figure === null ? [] : [{ name: nameOf(line), figure }]
  })
  return scaled(
    total('load on the shoulders', 'g', [{ name: 'base weight', figure: course.base }, ...parts]),
    0.001,
    'kg',
    'load',
    'g/1000',
  )
}

/** What is on the shoulders at any place along the way, as figures that open: `profileOf` stays plain numbers for speed. */
export interface Carried {
  readonly load: (atM: number, side: Side) => Figure<'kg'>
  readonly water: (atM: number, side: Side) => Figure<'l'>
}

/** null: the way is not known. */
export function carriedAlong(asked: Asked): Carried | null {
  const route = routeOf(asked.brief, asked.walker)
  if (!route.ok) return null
  const course = courseOf(asked, route.legs)
  return { load: (atM, side) => loadFigure(course, atM, side), water: (atM, side) => waterFigure(course, atM, side) }
}

function waterFigure(course: Course, atM: number, side: Side): Figure<'l'> {
  const days = daysAt(course.legs, atM, side)
  const parts = course.supplies
    .filter(({ supply }) => isWater(supply))
    .map((line) => ({
      name: nameOf(line),
      figure: given(
        litresOf({ ...line, amount: amountOn(course, line, atM, days, side) }),
        'l',
        'worked',
        {},
        'filled and drunk by the hour',
      ),
    }))
  return total('water on the shoulders', 'l', parts)
}

function meanOverHours(points: readonly ProfilePoint[]): number {
  let area = 0
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!]
    area += ((a.loadKg + b.loadKg) / 2) * (b.hours - a.hours)
  }
  const hours = points.at(-1)!.hours
  return hours > 0 ? area / hours : points[0]!.loadKg
}
