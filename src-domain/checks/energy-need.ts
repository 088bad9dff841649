import { constant, given, total, work, type Figure, type Given, type Law } from '../figures/figure.ts'
import { partsBetween } from '../loadout/amounts.ts'
import { amountAt } from '../loadout/moments.ts'
import type { Line, SupplyLine } from '../loadout/loadout.ts'
import { isCarriedByAnother, lineMass } from '../loadout/mass.ts'
import { dayEnergy } from '../laws/day-energy.ts'
import { USUAL_DENSITY_KCAL_G } from '../laws/food-mass.ts'
import { timeFactorOf } from '../laws/ground-pace.ts'
import { henry } from '../laws/henry.ts'
import { KCAL_J, kcalOf, wattsOfDay } from '../laws/kcal.ts'
import { lcda2022, type Walking } from '../laws/lcda-2022.ts'
import { foodDays } from '../laws/meals-counted.ts'
import { mifflin } from '../laws/mifflin.ts'
import { percentOf } from '../laws/slope.ts'
import { grounds } from '../laws/terrain.ts'
import { campbellHours, piecesOfLeg, slopeOf } from '../laws/walking-time.ts'
import type { Leg } from '../trips/brief.ts'
import { USUAL_START_MINUTE } from '../trips/dark-hours.ts'
import { routeOf } from '../trips/route.ts'
import type { Asked } from './check.ts'
import { daysCount } from './fuel.ts'
import { routeMissing, type Missing } from './water-needs.ts'

/**
 * What a walker's body asks on each day of a brief, as `food-energy` and the profile both read it.
 *   E = share·(walking + 1.5·RMR·(24 − 8 − moving)/24 + RMR·8/24)        kcal; share: the day's meals eaten out, a full day 1
 *   walking: power of the load at the middle of the day on each leg's up and down piece, at that piece's own pace (laws/lcda-2022.ts)
 * The load counts what is worn, and food as the full need of the stretch at 4.2 kcal/g: the need never reads the food that is carried.
 * Resting rate: Mifflin-St Jeor from 19 years, Henry under. Defaults: start 08:00; a last day without legs eats every meal.
 * Source: walking.md 2, 4 (choices named there); u of each day is its 15 % at 80 %, in common for all days.
 */
export interface DayNeed {
  /** 1 for the first. */
  readonly day: number
  /** Meals eaten out, of a full day's. */
  readonly share: number
  readonly movingHours: number
  /** Mean load on the body, worn included, kg. */
  readonly loadKg: number
  /** A full day's, whatever is eaten out of it. */
  readonly whole: Figure<'kcal'>
  /** What is to be carried for it. */
  readonly asked: Figure<'kcal'>
}

export interface Body {
  readonly bodyKg: number
  readonly ageYears: number
  readonly rest: Figure<'kcal/day'>
}

export type EnergyNeed = { readonly ok: true; readonly body: Body; readonly days: readonly DayNeed[] } | Missing

export function energyNeed(asked: Asked): EnergyNeed {
  const body = bodyOf(asked)
  if (!body.ok) return body
  const route = routeOf(asked.brief, asked.walker)
  if (!route.ok) return { ok: false, missing: routeMissing[route.missing], facts: { leg: route.leg } }
  const count = daysCount(asked.brief, asked.trip)
  if (count === null) return { ok: false, missing: 'dates' }
  const shares = sharesOf(asked, count)
  const loads = loadsOf(asked, body.body, count, shares)
  const days = loads.map((loadKg, i) => dayNeed(asked, body.body, i + 1, loadKg, shares[i]!))
  return { ok: true, body: body.body, days }
}

/** Body, age and resting rate; names what is not said. */
export function bodyOf({ walker, trip, today }: Asked): { readonly ok: true; readonly body: Body } | Missing {
  const { bodyMassG, heightMm, bornYear, sex } = walker
  if (bodyMassG === null) return { ok: false, missing: 'body-mass' }
  if (heightMm === null) return { ok: false, missing: 'body-height' }
  if (bornYear === null) return { ok: false, missing: 'age' }
  const ageYears = ageOn(trip.startsOn ?? today, bornYear)
  const bodyKg = given(bodyMassG / 1000, 'kg', 'given', {}, 'body mass')
  const years = given(ageYears, 'years', 'given', {}, 'age')
  const rest =
    ageYears < 19
      ? work(henry(sex), { bodyKg, heightM: given(heightMm / 1000, 'm', 'given', {}, 'height'), ageYears: years })
      : work(mifflin(sex), { bodyKg, heightCm: given(heightMm / 10, 'cm', 'given', {}, 'height'), ageYears: years })
  return { ok: true, body: { bodyKg: bodyKg.value, ageYears, rest } }
}

/** Whole years by the year alone: a birthday is not asked. */
export const ageOn = (isoDate: string, bornYear: number): number => Math.max(0, Number(isoDate.slice(0, 4)) - bornYear)

export interface LegPart {
  readonly hours: number
  readonly powerW: number
  readonly state: Walking
}

/** A leg's climb and descent with the pace and power of each, at a load. */
export function legParts(leg: Leg, paceFactor: number, loadKg: number, { bodyKg, rest }: Body): readonly LegPart[] {
  const pieces = piecesOfLeg(leg.lengthM ?? 0, leg.climbM ?? 0, leg.descentM ?? 0)
  return pieces
    .filter(({ lengthM }) => lengthM > 0)
    .map((piece) => {
      const hours = campbellHours(piece) * timeFactorOf(leg.terrain) * paceFactor
      const state: Walking = {
        bodyKg,
        loadKg,
        speedMs: piece.lengthM / hours / 3600,
        gradePercent: percentOf(slopeOf(piece)),
        terrain: grounds[leg.terrain].energyFactor,
        restWPerKg: wattsOfDay(rest.value) / bodyKg,
      }
      return { hours, powerW: lcda2022.compute(state), state }
    })
}

/** Minute of the day at which a day's walking starts; 08:00 where it is not said. */
export const startMinuteOf = ({ brief }: Pick<Asked, 'brief'>, day: number): number =>
  brief.days.find((one) => one.day === day)?.startMinute ?? USUAL_START_MINUTE

const SLEEP_H = 8
const ROUNDS = 3

const legsOn = ({ brief }: Asked, day: number): readonly Leg[] => brief.legs.filter((leg) => leg.day === day)

function movingHours(asked: Asked, day: number): number {
  const route = routeOf({ legs: legsOn(asked, day) }, asked.walker)
  return route.ok ? route.legs.reduce((sum, leg) => sum + leg.hours, 0) : 0
}

function sharesOf(asked: Asked, count: number): readonly number[] {
  const hours = movingHours(asked, count)
  const end = hours === 0 ? 24 * 60 : startMinuteOf(asked, count) + 60 * hours * (1 + asked.walker.breakShare)
  return foodDays(count, startMinuteOf(asked, 1), end)
}

/** Mean load of each day, kg: rounds of need → food carried for it → need, until the food's own weight is in. */
function loadsOf(asked: Asked, body: Body, count: number, shares: readonly number[]): readonly number[] {
  const others = Array.from({ length: count }, (_, i) => othersKg(asked, i + 0.5))
  const ends = foodStops(asked, count)
  let loads = others
  for (let round = 0; round < ROUNDS; round++) {
    const energies = loads.map((loadKg, i) => shares[i]! * plainDay(asked, body, i + 1, loadKg))
    loads = others.map((kg, i) => kg + foodKg(energies, i, ends))
  }
  return loads
}

/** What is on the body without food, kg, at a moment. */
function othersKg(asked: Asked, day: number): number {
  const entries = { brief: asked.brief, trip: asked.trip }
  return asked.loadout.lines.reduce((sum, line) => sum + (isFood(line) ? 0 : massKg(line, day, entries)), 0)
}

function massKg(line: Line, day: number, entries: Pick<Asked, 'brief' | 'trip'>): number {
  if (isCarriedByAnother(line)) return 0
  if (line.kind === 'item') return (lineMass(line)?.value ?? 0) / 1000
  return ((amountAt(line, day, entries) ?? 0) * line.supply.massGPerUnit) / 1000
}

/** Food still to be eaten at the middle of day i (from 0) until the next resupply, kg. */
function foodKg(energies: readonly number[], i: number, ends: readonly number[]): number {
  const end = ends.find((at) => at > i) ?? energies.length
  let kcal = energies[i]! * Math.min(0.5, end - i)
  for (let day = i + 1; day < end; day++) kcal += energies[day]! * Math.min(1, end - day)
  return kcal / USUAL_DENSITY_KCAL_G / 1000
}

/** Days walked when food is renewed. */
function foodStops({ brief, trip }: Asked, count: number): readonly number[] {
  return partsBetween('food', { brief, trip })
    .map(({ toDay }) => toDay)
    .filter((at) => at <= count)
}

/** kcal of a whole day at a load, without figures: for the rounds above. */
function plainDay(asked: Asked, body: Body, day: number, loadKg: number): number {
  const parts = legsOn(asked, day).flatMap((leg) => legParts(leg, asked.walker.paceFactor, loadKg, body))
  const moving = parts.reduce((sum, { hours }) => sum + hours, 0)
  const walkingKcal = parts.reduce((sum, { hours, powerW }) => sum + kcalOf(powerW, hours), 0)
  return dayEnergy.compute({ walkingKcal, restKcalDay: body.rest.value, ...resting(moving) })
}

function dayNeed(asked: Asked, body: Body, day: number, loadKg: number, share: number): DayNeed {
  const parts = legsOn(asked, day).flatMap((leg) =>
    legParts(leg, asked.walker.paceFactor, loadKg, body).map((part): Given & { readonly hours: number } => ({
      name: leg.name || `day ${day}`,
      figure: partEnergy(part, loadKg),
      hours: part.hours,
    })),
  )
  const moving = parts.reduce((sum, { hours }) => sum + hours, 0)
  const { upH, sleepH } = resting(moving)
  const whole = work(dayEnergy, {
    walkingKcal: total('walking', 'kcal', parts),
    restKcalDay: body.rest,
    upH: given(upH, 'h', 'estimated', {}, 'breaks and camp: what is left of the day'),
    sleepH: given(sleepH, 'h', 'estimated', {}, 'sleep'),
  })
  const asking = work(shareOfDay, { whole, share: given(share, '1', 'estimated', {}, 'meals eaten out') })
  return { day, share, movingHours: moving, loadKg, whole, asked: ownAppetite(asking, asked.walker) }
}

/** The need by this walker's own record: what they ate over the law's, with the doubt that is left of it instead of the law's. */
function ownAppetite(plain: Figure<'kcal'>, { foodFactor, foodSdLn }: Asked['walker']): Figure<'kcal'> {
  if (foodFactor === undefined || foodSdLn === undefined) return plain
  const factor = given(foodFactor, '1', 'estimated', { 'walker:food': foodFactor * foodSdLn }, 'eaten over the law’s, own record')
  return work(byOwnRecord, { law: { ...plain, shares: {} }, factor })
}

const byOwnRecord = {
  name: 'Energy asked, by own record',
  formula: 'E·f',
  source: { cite: "conjugate update of the law by the walker's weighed food, standard statistics", known: 'memory' },
  takes: { law: 'kcal', factor: '1' },
  unit: 'kcal',
  compute: ({ law, factor }) => law * factor,
} as const satisfies Law<{ law: 'kcal'; factor: '1' }, 'kcal'>

/** Sleep gives way only when the walking leaves less than eight hours. */
function resting(moving: number): { readonly upH: number; readonly sleepH: number } {
  const left = Math.max(0, 24 - moving)
  const sleepH = Math.min(SLEEP_H, left)
  return { sleepH, upH: left - sleepH }
}

/** Energy of the walking of one leg at a load, rest included. */
export function legEnergy(leg: Leg, paceFactor: number, loadKg: number, body: Body): Figure<'kcal'> {
  const parts = legParts(leg, paceFactor, loadKg, body).map((part): Given => ({
    name: part.state.gradePercent < 0 ? 'going down' : 'going up or level',
    figure: partEnergy(part, loadKg, 'mean load of the leg, worn included'),
  }))
  return total('walking', 'kcal', parts)
}

function partEnergy({ hours, state }: LegPart, loadKg: number, of = 'mean load of the day, worn included'): Figure<'kcal'> {
  const powerW = work(lcda2022, {
    bodyKg: given(state.bodyKg, 'kg', 'given', {}, 'body mass'),
    loadKg: given(loadKg, 'kg', 'worked', {}, of),
    speedMs: given(state.speedMs, 'm/s', 'worked', {}, 'own pace'),
    gradePercent: given(state.gradePercent, '%', 'worked', {}, 'slope'),
    terrain: constant(state.terrain, '1', 'ground'),
    restWPerKg: given(state.restWPerKg, 'W/kg', 'worked', {}, 'resting rate'),
  })
  return work(energyOfPower, { powerW, hours: given(hours, 'h', 'worked', {}, 'hours of moving') })
}

const energyOfPower = {
  name: 'Energy of a part of the way',
  formula: 'kcal = W·h·3600/4184',
  source: { cite: `1 kcal = ${KCAL_J} J`, known: 'memory' },
  takes: { powerW: 'W', hours: 'h' },
  unit: 'kcal',
  compute: ({ powerW, hours }) => kcalOf(powerW, hours),
} as const satisfies Law<{ powerW: 'W'; hours: 'h' }, 'kcal'>

const shareOfDay = {
  name: 'Energy asked of the food of a day',
  formula: 'share·E',
  source: { cite: 'meals counted by their share of a day (provisions.md 3)', known: 'choice' },
  takes: { whole: 'kcal', share: '1' },
  unit: 'kcal',
  compute: ({ whole, share }) => whole * share,
} as const satisfies Law<{ whole: 'kcal'; share: '1' }, 'kcal'>

/** Something that is eaten. */
export const isFood = (line: Line): line is SupplyLine => line.kind === 'supply' && line.supply.kitArea === 'food'
