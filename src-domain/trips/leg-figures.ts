/**
 * What follows from the legs, as figures that open: hours on foot of one leg and of all of them, and litres heated on a day.
 *   hours = T(length, climb, descent)·N·f        T walking law without breaks, N ground, f own pace (trips/route.ts does the same for all legs)
 *   litres = boils·litres a boil, nothing on a cold day
 */
import { given, total, work, type Figure, type Law } from '../figures/figure.ts'
import { timeFactorOf } from '../laws/ground-pace.ts'
import { piecesOfLeg, walkingHours } from '../laws/walking-time.ts'
import type { Leg, Meals } from './brief.ts'
import type { Walker } from './walker.ts'

const takes = { lengthM: 'm', climbM: 'm', descentM: 'm', ground: '1', pace: '1' } as const

const onFoot = {
  name: 'Hours on foot',
  formula: 'T(length, climb, descent)·N·f',
  source: { cite: 'the walking law of Campbell, ground factors, own pace', known: 'read' },
  takes,
  unit: 'h',
  leavesOut: 'breaks',
  compute: ({ lengthM, climbM, descentM, ground, pace }) =>
    walkingHours('campbell', piecesOfLeg(lengthM, climbM, descentM)) * ground * pace,
} as const satisfies Law<typeof takes, 'h'>

/** null: length, climb or descent is not said. */
export function onFootOf(leg: Leg, { paceFactor }: Pick<Walker, 'paceFactor'>): Figure<'h'> | null {
  if (leg.lengthM === null || leg.climbM === null || leg.descentM === null) return null
  return work(onFoot, {
    lengthM: given(leg.lengthM, 'm', 'given', {}, 'length of the leg'),
    climbM: given(leg.climbM, 'm', 'given', {}, 'its climb'),
    descentM: given(leg.descentM, 'm', 'given', {}, 'its descent'),
    ground: given(timeFactorOf(leg.terrain), '1', 'constant', {}, 'time on this ground over time on a path'),
    pace: given(paceFactor, '1', 'estimated', {}, 'own pace'),
  })
}

/** null: one of the legs has no hours. */
export function onFootOfAll(legs: readonly Leg[], walker: Pick<Walker, 'paceFactor'>): Figure<'h'> | null {
  const parts = legs.map((leg, i) => ({ name: leg.name === '' ? `leg ${i + 1}` : leg.name, figure: onFootOf(leg, walker) }))
  const known = parts.flatMap(({ name, figure }) => (figure === null ? [] : [{ name, figure }]))
  return known.length === 0 || known.length < parts.length ? null : total('Hours on foot', 'h', known)
}

const heats = {
  name: 'Litres heated in a day',
  formula: 'boils·litres a boil',
  source: { cite: 'the brief', known: 'choice' },
  takes: { boils: '1', litres: 'l' },
  unit: 'l',
  compute: ({ boils, litres }) => boils * litres,
} as const satisfies Law<{ boils: '1'; litres: 'l' }, 'l'>

/** null: boils or litres are not said. */
export function heatedOn({ boilsPerDay, litresPerBoil, coldDays }: Meals, day: number): Figure<'l'> | null {
  if (boilsPerDay === null || (boilsPerDay > 0 && litresPerBoil === null)) return null
  return work(heats, {
    boils: given(coldDays.includes(day) ? 0 : boilsPerDay, '1', 'given', {}, coldDays.includes(day) ? 'a cold day' : 'boils a day'),
    litres: given(litresPerBoil ?? 0, 'l', 'given', {}, 'litres a boil'),
  })
}

export function heatedOver(meals: Meals, days: number): Figure<'l'> | null {
  const parts = Array.from({ length: days }, (_, i) => ({ name: `day ${i + 1}`, figure: heatedOn(meals, i + 1) }))
  const known = parts.flatMap(({ name, figure }) => (figure === null ? [] : [{ name, figure }]))
  return known.length === 0 || known.length < days ? null : total('Litres to heat', 'l', known)
}
