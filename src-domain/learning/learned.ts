/**
 * What a walker's record says of them: own pace, breaks, cold, fuel, water and food, each with how many logs stand behind it, its value and the band in which
 * four of five further logs lie (of cold: four in five that the offset itself lies there).
 *   pace: laws/pace-factor.ts · breaks: laws/break-share.ts · cold: laws/sleeper-offset.ts, from the walker's own word
 *   fuel, by stove, water, food: laws/learned-factor.ts about 1 with these spreads of ln: prior 0.25, 0.30, 0.117; one log 0.15, 0.25, 0.15
 *   (fuel and water: provisions.md 1.4, 2.3; food: the band of the energy law, and the scatter of a trip, a choice)
 *   band of the next log: f·exp(± z·√(sd² + scatter²)), z = Φ⁻¹(0.9)
 * With no log the value is the law's own, exactly. A typed value that the person wants to stand stands.
 */
import { breakBand, breakShareFrom, type BreakLog } from '../laws/break-share.ts'
import { learnedFactor } from '../laws/learned-factor.ts'
import { normalQuantile } from '../laws/normal.ts'
import { paceBand, paceFrom, type WalkLog } from '../laws/pace-factor.ts'
import { sleeperOffset } from '../laws/sleeper-offset.ts'
import type { Walker } from '../trips/walker.ts'
import { counts, learnedKinds, type LearnedKind, type LearningLog } from './logs.ts'

export interface Learned {
  readonly kind: LearnedKind
  /** Of fuel: the stove's uid and name; else empty. */
  readonly stove: string
  readonly about: string
  /** Logs that count. */
  readonly records: number
  /** pace, fuel, water, food: own over the law's · breaks: standing for each hour of moving · cold: K */
  readonly value: number
  /** Before any log. */
  readonly before: number
  readonly band: readonly [low: number, high: number]
  /** Standard deviation of the value's logarithm (of cold: K); of pace and breaks null: their bands are their own. */
  readonly sd: number | null
  readonly spread: number | null
  readonly dof: number | null
  /** All logs of it, passed over or not, oldest first. */
  readonly logs: readonly LearningLog[]
}

const spreads = {
  fuel: { prior: 0.25, log: 0.15 },
  water: { prior: 0.3, log: 0.25 },
  food: { prior: 0.117, log: 0.15 },
} as const

/** Everything learned of one walker: five factors, and one of fuel for each stove with a burn. */
export function learnedOf(logs: readonly LearningLog[], walker: Walker): readonly Learned[] {
  return learnedKinds.flatMap((kind) => {
    const own = logs.filter((log) => log.kind === kind)
    if (kind !== 'fuel') return [learned(kind, own, walker)]
    const stoves = Map.groupBy(own, (log) => log.stove)
    return stoves.size === 0 ? [learned(kind, [], walker)] : [...stoves.values()].map((of) => learned(kind, of, walker))
  })
}

function learned(kind: LearnedKind, logs: readonly LearningLog[], walker: Walker): Learned {
  const used = logs.filter(counts)
  const shared = { kind, records: used.length, logs, stove: logs[0]?.stove ?? '', about: kind === 'fuel' ? (logs.at(-1)?.about ?? '') : '' }
  const none = { sd: null, spread: null, dof: null }
  switch (kind) {
    case 'pace': {
      const pace = paceFrom(used.map(walkLog))
      return { ...shared, ...none, value: pace.factor, before: 1, band: paceBand(pace), spread: pace.spread, dof: pace.dof }
    }
    case 'breaks': {
      const halts = used.map(breakLog)
      return { ...shared, ...none, value: breakShareFrom(halts), before: breakShareFrom([]), band: breakBand(halts) }
    }
    case 'cold': {
      const nights = used.map(({ met, law, cold }) => ({ marginK: met - law, cold }))
      const { meanK, sdK } = sleeperOffset(nights, walker.coldOffsetK)
      const value = nights.length === 0 ? walker.coldOffsetK : meanK
      return { ...shared, ...none, value, before: walker.coldOffsetK, band: [value - Z * sdK, value + Z * sdK], sd: sdK }
    }
    default:
      return { ...shared, ...none, ...factorOf(kind, used), before: 1 }
  }
}

const walkLog = ({ met, law }: LearningLog): WalkLog => ({ observedHours: met, modelHours: law })
const breakLog = ({ met, law }: LearningLog): BreakLog => ({ breakHours: met, movingHours: law })

function factorOf(kind: keyof typeof spreads, used: readonly LearningLog[]): Pick<Learned, 'value' | 'band' | 'sd'> {
  const { prior, log } = spreads[kind]
  const ratios = used.map(({ met, law }) => met / law)
  const { factor, sdLn } = learnedFactor({ factor: 1, sdLn: prior }, log, ratios)
  const reach = Math.exp(Z * Math.hypot(sdLn, log))
  return { value: factor, band: [factor / reach, factor * reach], sd: sdLn }
}

const Z = normalQuantile(0.9)

/** The walker as the checks read them: what the record says in the place of what was typed, unless the person wants the typed value to stand. */
export function withLearned(walker: Walker, all: readonly Learned[]): Walker {
  const rules = all.filter(({ kind, records }) => records > 0 && walker.asTyped?.includes(kind) !== true)
  return rules.reduce<Walker>((now, one) => ({ ...now, ...patchOf(one, now) }), walker)
}

function patchOf({ kind, value, sd, spread, dof, stove, records }: Learned, now: Walker): Partial<Walker> {
  switch (kind) {
    case 'pace':
      return { paceFactor: value, ...(spread === null || dof === null ? {} : { paceSpread: spread, paceDof: dof }) }
    case 'breaks':
      return { breakShare: value }
    case 'cold':
      return { coldOffsetK: value, coldSdK: sd! }
    case 'fuel':
      return { stoves: { ...now.stoves, [stove]: { factor: value, sdLn: sd!, burns: records } } }
    case 'water':
      return { waterFactor: value, waterSdLn: sd! }
    case 'food':
      return { foodFactor: value, foodSdLn: sd! }
  }
}
