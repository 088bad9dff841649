/**
 * The profile's numbers as figures that open: by day, by leg and for the whole way, with the light.
 *   on foot = (1 + b)·moving · mean load = Σ (load at both ends of a part)/2 · its hours / all hours · time to spare = dusk − arrival
 * Nothing is worked out here that `profileOf` or a law does not work out: this is the same sum with its parts kept.
 */
import { arrivalFigure, lateFigure } from '../checks/before-dark.ts'
import type { Asked } from '../checks/check.ts'
import { bodyOf, legEnergy } from '../checks/energy-need.ts'
import { given, total, work, type Figure, type Given, type Law } from '../figures/figure.ts'
import type { Brief } from '../trips/brief.ts'
import { sunFigure, type LightFound } from '../trips/light.ts'
import type { TimedLeg } from '../trips/route.ts'
import { lineMass } from './mass.ts'
import { carriedAlong, type Carried, type Profile, type ProfileDay, type ProfilePoint, type Side } from './profile.ts'

export interface LightFigures {
  readonly set: Figure<'clock'> | null
  /** Last light: the end of civil dusk. */
  readonly dusk: Figure<'clock'> | null
}

/** What days, legs and the whole way have in common. */
export interface WayFigures {
  readonly length: Figure<'m'>
  readonly climb: Figure<'m'>
  readonly descent: Figure<'m'>
  readonly moving: Figure<'h'>
  /** With breaks. */
  readonly onFoot: Figure<'h'>
}

export interface PartFigures extends WayFigures {
  readonly loadStart: Figure<'kg'>
  readonly loadEnd: Figure<'kg'>
  readonly waterStart: Figure<'l'>
  readonly waterEnd: Figure<'l'>
  /** A whole day's, or the walking alone of a leg; null: the body is not known. */
  readonly energy: Figure<'kcal'> | null
  readonly start: Figure<'clock'>
  readonly arrival: Figure<'clock'>
  readonly late: Figure<'clock'>
  readonly light: LightFigures | null
  /** Last light less the median arrival; null: no light is known, or there is no dusk. */
  readonly spare: Figure<'min'> | null
}

export interface ProfileFigures {
  readonly days: readonly PartFigures[]
  readonly legs: readonly PartFigures[]
  readonly whole: WayFigures & { readonly energy: Figure<'kcal'> | null }
  readonly meanLoad: Figure<'kg'>
  readonly carried: Carried
}

export function profileFigures(asked: Asked, profile: Profile): ProfileFigures {
  const carried = carriedAlong(asked)
  if (carried === null) throw new Error('a profile without a way')
  const timed = profile.legs.map(({ leg }) => leg)
  const days = profile.days.map((day) => dayFigures(asked, carried, timed, day))
  const energies = days.flatMap(({ energy }, i) => (energy === null ? [] : [{ name: `day ${profile.days[i]!.day}`, figure: energy }]))
  return {
    days,
    legs: timed.map((leg, i) =>
      legFigures(
        asked,
        carried,
        timed,
        i,
        profile.days.find(({ day }) => day === leg.leg.day)!,
      ),
    ),
    whole: { ...wayFigures(asked, timed), energy: energies.length === 0 ? null : total('energy on the days walked', 'kcal', energies) },
    meanLoad: meanLoad(carried, profile.points),
    carried,
  }
}

function dayFigures(asked: Asked, carried: Carried, timed: readonly TimedLeg[], day: ProfileDay): PartFigures {
  const own = timed.filter(({ leg }) => leg.day === day.day)
  return {
    ...wayFigures(asked, own),
    ...carriedFigures(carried, own[0]!.fromM, own.at(-1)!.toM),
    energy: day.energy,
    ...arrivalFigures(asked, day, day.movingHours),
  }
}

function legFigures(asked: Asked, carried: Carried, timed: readonly TimedLeg[], at: number, day: ProfileDay): PartFigures {
  const leg = timed[at]!
  const own = timed.filter((one, i) => one.leg.day === leg.leg.day && i <= at)
  return {
    ...wayFigures(asked, [leg]),
    ...carriedFigures(carried, leg.fromM, leg.toM),
    energy: walkingFigure(asked, carried, leg),
    ...arrivalFigures(
      asked,
      day,
      own.reduce((sum, { hours }) => sum + hours, 0),
    ),
  }
}

function wayFigures({ brief, walker }: Asked, timed: readonly TimedLeg[]): WayFigures {
  const sum = <U extends string>(
    name: string,
    unit: U,
    of: (leg: TimedLeg) => number,
    from: string,
    origin: 'given' | 'worked' = 'given',
  ) =>
    total(
      name,
      unit,
      timed.map((leg) => ({ name: legName(brief, leg), figure: given(of(leg), unit, origin, {}, from) })),
    )
  const moving = sum('moving', 'h', ({ hours }) => hours, 'walking law, ground and own pace, without breaks', 'worked')
  return {
    length: sum('distance', 'm', ({ leg }) => leg.lengthM ?? 0, 'brief'),
    climb: sum('climb', 'm', ({ leg }) => leg.climbM ?? 0, 'brief'),
    descent: sum('descent', 'm', ({ leg }) => leg.descentM ?? 0, 'brief'),
    moving,
    onFoot: work(withBreaks, {
      movingH: moving,
      breakShare: given(walker.breakShare, '1', 'estimated', {}, 'breaks for each hour of moving'),
    }),
  }
}

const legName = (brief: Brief, { leg }: TimedLeg): string => leg.name || `leg ${brief.legs.indexOf(leg) + 1}`

const withBreaks = {
  name: 'Hours on foot, with breaks',
  formula: '(1 + b)·T',
  source: { cite: 'own breaks for each hour of moving', known: 'choice' },
  takes: { movingH: 'h', breakShare: '1' },
  unit: 'h',
  compute: ({ movingH, breakShare }) => (1 + breakShare) * movingH,
} as const satisfies Law<{ movingH: 'h'; breakShare: '1' }, 'h'>

function carriedFigures({ load, water }: Carried, fromM: number, toM: number) {
  return {
    loadStart: load(fromM, 'after'),
    loadEnd: load(toM, 'before'),
    waterStart: water(fromM, 'after'),
    waterEnd: water(toM, 'before'),
  }
}

/** At the leg's mean load, what is worn included. */
function walkingFigure(asked: Asked, { load }: Carried, { leg, fromM, toM }: TimedLeg): Figure<'kcal'> | null {
  const body = bodyOf(asked)
  if (!body.ok) return null
  const worn = asked.loadout.lines.reduce((sum, line) => sum + (line.lane === 'on_me' ? (lineMass(line)?.value ?? 0) / 1000 : 0), 0)
  const meanKg = (load(fromM, 'after').value + load(toM, 'before').value) / 2 + worn
  return legEnergy(leg, asked.walker.paceFactor, meanKg, body.body)
}

function arrivalFigures(asked: Asked, { day, light }: ProfileDay, movingH: number) {
  const arrival = arrivalFigure(asked, day, movingH)
  const { figure: start } = arrival.working!.given.find(({ name }) => name === 'startMin')!
  const figures = asked.brief.place === null ? null : lightFigures(light, asked.brief.place)
  const dusk = figures?.dusk ?? null
  return {
    start: start as Figure<'clock'>,
    arrival,
    late: lateFigure(asked, day, movingH),
    light: figures,
    spare: dusk === null ? null : work(timeToSpare, { dusk, arrival }),
  }
}

const timeToSpare = {
  name: 'Time to spare until last light',
  formula: 'dusk − arrival',
  source: { cite: 'civil dusk less the median arrival', known: 'choice' },
  takes: { dusk: 'clock', arrival: 'clock' },
  unit: 'min',
  compute: ({ dusk, arrival }) => dusk - arrival,
} as const satisfies Law<{ dusk: 'clock'; arrival: 'clock' }, 'min'>

function lightFigures(found: LightFound, place: NonNullable<Brief['place']>): LightFigures | null {
  if (!found.ok) return null
  const { setMin, duskMin } = found.light
  const figure = (name: string, minute: number | null) => (minute === null ? null : sunFigure(name, minute, place))
  return { set: figure('Sunset', setMin), dusk: figure('Last light, civil dusk', duskMin) }
}

/** Before or after, of a point of the profile: the first of two at one place is before. */
export function sideOf(points: readonly ProfilePoint[], at: number): Side {
  if (at === 0 || points[at - 1]!.atM === points[at]!.atM) return 'after'
  return 'before'
}

/** The loads of all points, each weighed by the hours on both its sides, which is the mean of a line that is straight between them. */
function meanLoad({ load }: Carried, points: readonly ProfilePoint[]): Figure<'kg'> {
  const hours = points.at(-1)!.hours
  const loads = points.map(({ atM }, i) => load(atM, sideOf(points, i)))
  const weights = points.map(({ hours: at }, i) => ((points[i + 1]?.hours ?? at) - (points[i - 1]?.hours ?? at)) / 2 / hours)
  if (!(hours > 0)) return loads[0]!
  const shares: Record<string, number> = {}
  for (const [i, { shares: own }] of loads.entries())
    for (const [leaf, share] of Object.entries(own)) shares[leaf] = (shares[leaf] ?? 0) + weights[i]! * share
  const value = loads.reduce((sum, one, i) => sum + weights[i]! * one.value, 0)
  return {
    ...given(value, 'kg', 'worked', shares),
    working: {
      name: 'Mean load over the moving hours',
      formula: 'Σ load·hours on both its sides/2 ÷ all hours',
      source: { cite: 'trapezoid rule, exact for straight lines', known: 'memory' },
      cautions: [],
      given: loads.map((figure, i): Given => ({ name: `at ${(points[i]!.atM / 1000).toFixed(1)} km`, figure })),
    },
  }
}
