import { learnedOf, type Learned } from '../src-domain/learning/learned.ts'
import type { LearnedKind, LearningLog } from '../src-domain/learning/logs.ts'
import { emptyWalker } from '../src-domain/trips/walker.ts'

/**
 * How honest the bands are: invented walkers, each with a truth of their own and days that scatter about it, are learned from n logs; then one more day is lived.
 * The share of those days inside the 80 % band (for cold: of truths inside) is the coverage. The same seeds give the same walkers on every machine.
 * Truths are drawn from what the science notes say of walkers; days from what they say of days. Halts come at random and last six to twelve minutes.
 */
export interface Coverage {
  readonly kind: LearnedKind
  readonly logs: number
  readonly seed: number
  readonly walkers: number
  /** Share held, 0 to 1. */
  readonly held: number
}

export const logCounts = [0, 1, 2, 3, 5, 10, 20] as const
export const walkersEach = 2000

/** mulberry32 (public domain, common practice) and Box–Muller. */
function chanceOf(seed: number) {
  let state = seed >>> 0
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  const between = (low: number, high: number): number => low + (high - low) * uniform()
  return { uniform, normal, between }
}
type Chance = ReturnType<typeof chanceOf>

interface Lived {
  readonly met: number
  readonly law: number
  readonly cold?: boolean
}
interface Invented {
  readonly day: () => Lived
  /** Whether the band of what was learned holds a further day (or the truth). */
  readonly isHeld: (learned: Learned) => boolean
}

const within = (value: number, [low, high]: readonly [number, number]): boolean => value >= low && value <= high

/** A factor on the law: ln truth ~ N(0, prior²), each day about it with its own scatter. */
function factorWalker({ normal, between }: Chance, prior: number, scatter: number, lawFrom: number, lawTo: number): Invented {
  const ln = prior * normal()
  const day = (): Lived => {
    const law = between(lawFrom, lawTo)
    return { met: law * Math.exp(ln + scatter * normal()), law }
  }
  return {
    day,
    isHeld: ({ band }) => {
      const { met, law } = day()
      return within(met / law, band)
    },
  }
}

const HALT_LOW_H = 0.1
const HALT_HIGH_H = 0.2
const NEXT_DAY_H = 6

/** Halts an hour by a gamma of shape 10 and mean 1 (ten halts in ten hours, the estimator's own prior), as a sum of exponentials. */
function haltWalker({ uniform, between }: Chance): Invented {
  const perHour = Array.from({ length: 10 }, () => -Math.log(1 - uniform()) / 10).reduce((sum, one) => sum + one, 0)
  const halts = (hours: number): number => {
    let [at, sum] = [-Math.log(1 - uniform()) / perHour, 0]
    while (at < hours) {
      sum += between(HALT_LOW_H, HALT_HIGH_H)
      at -= Math.log(1 - uniform()) / perHour
    }
    return sum
  }
  const day = (): Lived => {
    const law = between(3, 8)
    return { met: halts(law), law }
  }
  return { day, isHeld: ({ band }) => within(halts(NEXT_DAY_H) / NEXT_DAY_H, band) }
}

/** A sleeper of offset δ ~ N(0, 3²) K: cold on a night when δ and its own 2.5 K exceed low − limit. */
function sleeper({ normal, between }: Chance): Invented {
  const offsetK = 3 * normal()
  const day = (): Lived => {
    const law = between(-8, 4)
    const met = law + between(-6, 8)
    return { met, law, cold: offsetK + 2.5 * normal() > met - law }
  }
  return { day, isHeld: ({ band }) => within(offsetK, band) }
}

const walkers: Readonly<Record<LearnedKind, (chance: Chance) => Invented>> = {
  pace: (chance) => factorWalker(chance, 0.2, 0.12, 2, 8),
  breaks: haltWalker,
  cold: sleeper,
  fuel: (chance) => factorWalker(chance, 0.25, 0.15, 20, 120),
  water: (chance) => factorWalker(chance, 0.3, 0.25, 1, 4),
  food: (chance) => factorWalker(chance, 0.117, 0.15, 5000, 20_000),
}

const logOf = (kind: LearnedKind, { met, law, cold = false }: Lived, id: number): LearningLog => ({
  ...{ kind, id, met, law, cold, of: 'leg', tripId: id, tripName: '', walkerId: null, onDay: '2026-06-01', about: '', stove: '' },
  passedOver: null,
})

function coverageOf(kind: LearnedKind, logs: number, seed: number): Coverage {
  const chance = chanceOf(seed)
  let held = 0
  for (let i = 0; i < walkersEach; i++) {
    const one = walkers[kind](chance)
    const days = Array.from({ length: logs }, (_, at) => logOf(kind, one.day(), at))
    const learned = learnedOf(days, emptyWalker).find((each) => each.kind === kind)!
    if (one.isHeld(learned)) held += 1
  }
  return { kind, logs, seed, walkers: walkersEach, held: held / walkersEach }
}

export function coverages(): readonly Coverage[] {
  return (Object.keys(walkers) as LearnedKind[]).flatMap((kind, k) =>
    logCounts.map((logs, n) => coverageOf(kind, logs, 1000 * (k + 1) + n)),
  )
}

/** The issue's own limits: wide when little is known. */
export const isHonest = ({ logs, held }: Coverage): boolean => (logs < 3 ? held >= 0.75 && held <= 0.9 : held >= 0.75 && held <= 0.85)
