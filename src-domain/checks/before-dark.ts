import { given, work, type Figure, type Law } from '../figures/figure.ts'
import { chanceOfLate, paceFrom } from '../laws/pace-factor.ts'
import { studentQuantile } from '../laws/student-t.ts'
import { lightOfDay, sunFigure, type DayLight } from '../trips/light.ts'
import { hoursOfDay, routeOf, type TimedLeg } from '../trips/route.ts'
import type { Walker } from '../trips/walker.ts'
import { found, notAsked, unknown, type Asked, type Check, type Found } from './check.ts'
import { startMinuteOf } from './energy-need.ts'
import { routeMissing } from './water-needs.ts'

/**
 * In camp before dark: does the walker arrive by last light, each day?
 *   have: start + (1 + b)·T·e^μ, the median arrival · need: civil dusk · enough: sunset less (late end − median)        minutes of the day (unit `clock`), at most
 *   late end − median = (1 + b)·T·e^μ·(e^(t₀.₉·s) − 1), one in ten later · u = s·(1 + b)·T·e^μ
 *   T by the default walking law and the ground, e^μ own pace, s its spread (laws/pace-factor.ts; without logs 0.233 at ν 4)
 * The worst day is shown. Days without legs, and days without a civil dusk (polar day, white night, no twilight at all), are not asked; where the sun
 * does not rise, dusk stands for sunset. No demand on the choice of kit: what would mend it is an earlier start or a shorter day.
 * Source: walking.md 1.4, 5, 7 (priors and break share are choices).
 * Caution: a group goes at the pace of its slowest; valley walls hide the sun early.
 */
export const beforeDark: Check = {
  id: 'before-dark',
  label: 'In camp before dark',
  duties: ['light'],
  withoutBrief: false,
  find(asked) {
    const route = routeOf(asked.brief, asked.walker)
    if (!route.ok) return unknown(routeMissing[route.missing], { leg: route.leg })
    const days = [...new Set(route.legs.map(({ leg }) => leg.day))]
    const findings: Found[] = []
    for (const day of days) {
      const light = lightOfDay(asked.brief, asked.trip, day)
      if (!light.ok) return unknown(light.missing)
      if (light.light.duskMin === null) continue
      findings.push(dayFound(asked, route.legs, day, light.light, route.slowGround))
    }
    if (findings.length === 0) return notAsked('no-civil-dusk')
    return findings.reduce((worst, one) => (isWorse(one, worst) ? one : worst))
  },
}

export interface DayArrival {
  readonly day: number
  readonly startMin: number
  readonly medianMin: number
  /** One in ten is later. */
  readonly lateMin: number
  readonly elapsedHours: number
}

/** When a day's walking starts and ends, with breaks. */
export function arrivalOf(asked: Pick<Asked, 'brief' | 'walker'>, legs: readonly TimedLeg[], day: number): DayArrival {
  const { spread, dof } = paceSpread(asked.walker)
  const startMin = startMinuteOf(asked, day)
  const elapsedHours = (1 + asked.walker.breakShare) * hoursOfDay(legs, day)
  const lateHours = elapsedHours * Math.exp(studentQuantile(0.9, dof) * spread)
  return { day, startMin, medianMin: startMin + 60 * elapsedHours, lateMin: startMin + 60 * lateHours, elapsedHours }
}

/** Spread of ln time of the next walk; as for a walker without logs where it has not been learned. */
export function paceSpread({ paceSpread: spread, paceDof: dof }: Walker): { readonly spread: number; readonly dof: number } {
  return spread === undefined || dof === undefined ? unlearned : { spread, dof }
}

const unlearned = paceFrom([])

const STATE_ORDER = { short: 0, tight: 1, enough: 2 } as const

/** By state, then by the minutes to spare until dusk. */
function isWorse(a: Found, b: Found): boolean {
  const [x, y] = [STATE_ORDER[a.state], STATE_ORDER[b.state]]
  return x === y ? a.need.value - a.have.value < b.need.value - b.have.value : x < y
}

function dayFound(asked: Asked, legs: readonly TimedLeg[], day: number, light: DayLight, slowGround: boolean): Found {
  const place = asked.brief.place!
  const arrival = arrivalOf(asked, legs, day)
  const { spread, dof } = paceSpread(asked.walker)
  const u = 60 * arrival.elapsedHours * spread
  const sunsetMin = light.setMin ?? light.duskMin!
  const sunset = sunFigure(light.sun === 'stays-down' ? 'Civil dusk, for the sunset there is not' : 'Sunset', sunsetMin, place)
  const chance = chanceOfLate((sunsetMin - arrival.startMin) / 60, legsHours(asked, legs, day), asked.walker.breakShare, {
    mu: Math.log(asked.walker.paceFactor),
    spread,
    dof,
  })
  const late = given(arrival.lateMin - arrival.medianMin, 'min', 'worked', {}, 'late end less median')
  return found({
    have: arrivalFigure(asked, day, hoursOfDay(legs, day)),
    need: sunFigure('Civil dusk', light.duskMin!, place),
    enough: work(lastSafe, { sunset, late }),
    wants: 'at most',
    u,
    saying: [
      { code: 'arrival', facts: { day, arrivalMin: arrival.medianMin, lateMin: arrival.lateMin, sunsetMin, duskMin: light.duskMin! } },
      { code: 'chance-after-sunset', facts: { percent: 100 * chance } },
    ],
    cautions: [
      'A group goes at the pace of its slowest; valley walls hide the sun early.',
      ...(slowGround ? ['On sand and snow the pace is that of equal effort: a consequence of the power law, not a measurement.'] : []),
    ],
  })
}

/** Hours by the law alone, own pace taken out. */
const legsHours = ({ walker }: Asked, legs: readonly TimedLeg[], day: number): number => hoursOfDay(legs, day) / walker.paceFactor

/** When this walker is there after `movingH` hours of a day's moving, breaks among them; its doubt is that of the pace. */
export function arrivalFigure({ brief, walker }: Pick<Asked, 'brief' | 'walker'>, day: number, movingH: number): Figure<'clock'> {
  const isSaid = brief.days.find((one) => one.day === day)?.startMinute != null
  const figure = work(medianArrival, {
    startMin: given(startMinuteOf({ brief }, day), 'clock', isSaid ? 'given' : 'estimated', {}, 'start of the day'),
    movingH: given(movingH / walker.paceFactor, 'h', 'worked', {}, 'the walking law on the day’s legs'),
    pace: given(walker.paceFactor, '1', 'estimated', {}, 'own pace'),
    breakShare: given(walker.breakShare, '1', 'estimated', {}, 'breaks for each hour of moving'),
  })
  return { ...figure, shares: { 'walker:pace': 60 * (1 + walker.breakShare) * movingH * paceSpread(walker).spread } }
}

/** The late end of that: one in ten is later. */
export function lateFigure(asked: Pick<Asked, 'brief' | 'walker'>, day: number, movingH: number): Figure<'clock'> {
  const { spread, dof } = paceSpread(asked.walker)
  return work(lateArrival, {
    startMin: given(startMinuteOf(asked, day), 'clock', 'given', {}, 'start of the day'),
    onFootH: given((1 + asked.walker.breakShare) * movingH, 'h', 'worked', {}, 'on foot, with breaks'),
    spread: given(spread, '1', 'estimated', {}, 'spread of ln time of the next walk'),
    quantile: given(studentQuantile(0.9, dof), '1', 'constant', {}, `Student’s t at nine in ten, ${dof} degrees of freedom`),
  })
}

const lateArrival = {
  name: 'Late end of the arrival, one in ten later',
  formula: 'start + 60·onFoot·e^(t₀.₉·s)',
  source: { cite: 'walking law, own pace and breaks; spread of repeated walks', known: 'choice' },
  takes: { startMin: 'clock', onFootH: 'h', spread: '1', quantile: '1' },
  unit: 'clock',
  compute: ({ startMin, onFootH, spread, quantile }) => startMin + 60 * onFootH * Math.exp(quantile * spread),
} as const satisfies Law<{ startMin: 'clock'; onFootH: 'h'; spread: '1'; quantile: '1' }, 'clock'>

const medianArrival = {
  name: 'Median arrival',
  formula: 'start + 60·(1 + b)·T·e^μ',
  source: { cite: 'walking law, own pace and breaks', known: 'choice' },
  takes: { startMin: 'clock', movingH: 'h', pace: '1', breakShare: '1' },
  unit: 'clock',
  compute: ({ startMin, movingH, pace, breakShare }) => startMin + 60 * (1 + breakShare) * movingH * pace,
} as const satisfies Law<{ startMin: 'clock'; movingH: 'h'; pace: '1'; breakShare: '1' }, 'clock'>

const lastSafe = {
  name: 'Arrive by',
  formula: 'sunset − (late end − median)',
  source: { cite: 'the late end of nine walks in ten falls before sunset', known: 'choice' },
  takes: { sunset: 'clock', late: 'min' },
  unit: 'clock',
  compute: ({ sunset, late }) => sunset - late,
} as const satisfies Law<{ sunset: 'clock'; late: 'min' }, 'clock'>
