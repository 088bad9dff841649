/** Changing the list of legs: whatever is done, days are counted 1, 2, 3 … in the order of the legs, none left out. */
import type { Brief, Day, Leg } from './brief.ts'

export const newLeg = (day: number, camp: boolean): Leg => ({
  day,
  name: '',
  lengthM: null,
  climbM: null,
  descentM: null,
  terrain: 'path',
  endHeightM: null,
  camp,
})

type Legs = readonly Leg[]

/** Days closed up: a leg begins a new day where it did before. */
export function closedUp(legs: Legs): Legs {
  let day = 0
  let before: number | null = null
  return legs.map((leg) => {
    if (leg.day !== before) day++
    before = leg.day
    return leg.day === day ? leg : { ...leg, day }
  })
}

/** A day more at the end; the last leg so far then ends in a camp. */
export function withNewDay(legs: Legs): Legs {
  const last = legs.at(-1)
  if (last === undefined) return [newLeg(1, false)]
  return [...legs.slice(0, -1), { ...last, camp: true }, newLeg(last.day + 1, false)]
}

/** The leg is parted in two of the same day; what is known of it stays with the first. */
export function withSplit(legs: Legs, at: number): Legs {
  const leg = legs[at]
  if (leg === undefined) return legs
  return [...legs.slice(0, at), { ...leg, camp: false }, newLeg(leg.day, leg.camp), ...legs.slice(at + 1)]
}

export const without = (legs: Legs, at: number): Legs => closedUp(legs.filter((_, i) => i !== at))

/** Changes places with its neighbour; the days stay where they are, so that a leg moved over a night changes its day. */
export function moved(legs: Legs, at: number, by: -1 | 1): Legs {
  const [one, other] = [legs[at], legs[at + by]]
  if (one === undefined || other === undefined) return legs
  const next = [...legs]
  next[at] = { ...other, day: one.day, camp: one.camp }
  next[at + by] = { ...one, day: other.day, camp: other.camp }
  return next
}

/** From this leg on it is a day later, or it joins the day of the leg before it. */
export function dayBegins(legs: Legs, at: number, begins: boolean): Legs {
  const before = legs[at - 1]
  if (before === undefined || begins === (legs[at]!.day !== before.day)) return legs
  const by = begins ? 1 : before.day - legs[at]!.day
  return legs.map((leg, i) => (i >= at ? { ...leg, day: leg.day + by } : i === at - 1 ? { ...leg, camp: begins } : leg))
}

/** What is said of a day, changed; a day of which nothing is said is not kept. */
export function withDay(days: Brief['days'], day: number, patch: Partial<Omit<Day, 'day'>>): Brief['days'] {
  const old = days.find((one) => one.day === day) ?? { day, startMinute: null, lowC: null, highC: null }
  const next = { ...old, ...patch }
  const isEmpty = next.startMinute === null && next.lowC === null && next.highC === null
  return [...days.filter((one) => one.day !== day), ...(isEmpty ? [] : [next])].sort((a, b) => a.day - b.day)
}
