/**
 * Reads the logs of one trip that is out or back: the record's own words beside the laws for the same way, bed, burn and body.
 *   pace: moving hours said or recorded / law's hours of that leg · breaks: standing / moving hours · cold: low said, slept warm or cold / limit of the bed as packed
 *   fuel: grams by weighing before and after / law's grams for the water heated · water: litres drunk / law's litres for the hours moved
 *   food: kcal of what was weighed out and weighed back / energy need of the way, less what was eaten out
 * The walker's own factors are taken out of the law's side first: a factor never learns from itself. A cool night lies between and says neither (choice).
 * Food that all went says only *at least so much*, and a resupply was not weighed: both are passed over.
 */
import { bedOf } from '../checks/bed.ts'
import type { Asked } from '../checks/check.ts'
import { energyNeed, isFood } from '../checks/energy-need.ts'
import { energyIn, kcalPerGram } from '../checks/food-energy.ts'
import { burnLaw } from '../checks/fuel.ts'
import { rateOf } from '../checks/water-needs.ts'
import { sleepLimit } from '../laws/sleep-limit.ts'
import { work } from '../figures/figure.ts'
import { USUAL_DENSITY_KCAL_G } from '../laws/food-mass.ts'
import { isUsableLog } from '../laws/pace-factor.ts'
import { supplyLines, type Loadout } from '../loadout/loadout.ts'
import type { Brief, Leg, Trip } from '../trips/brief.ts'
import type { Slept } from '../trips/record.ts'
import { routeOf } from '../trips/route.ts'
import type { Walker } from '../trips/walker.ts'
import type { LearningLog, PassedOver } from './logs.ts'

export interface MetTrip {
  readonly tripId: number
  readonly tripName: string
  readonly walkerId: number | null
  readonly onDay: string
  readonly brief: Brief
  readonly trip: Trip
  readonly walker: Walker
  readonly loadout: Loadout
  readonly debrief: {
    readonly highC: number | null
    readonly foodBeforeMg: number | null
    readonly foodAfterMg: number | null
    readonly foodLeftOut: boolean
  } | null
  readonly legs: readonly {
    readonly id: number
    readonly leg: number
    readonly day: number
    readonly name: string
    readonly movingMin: number | null
    readonly breakMin: number | null
    readonly lengthM: number | null
    readonly climbM: number | null
    readonly descentM: number | null
    readonly drunkMl: number | null
    readonly leftOut: boolean
  }[]
  readonly nights: readonly {
    readonly id: number
    readonly night: number
    readonly lowC: number | null
    readonly slept: Slept
    readonly leftOut: boolean
  }[]
  readonly burns: readonly {
    readonly id: number
    readonly name: string
    readonly beforeMg: number | null
    readonly afterMg: number | null
    readonly heatedMl: number | null
    readonly boils: number | null
    readonly fromC: number | null
    readonly leftOut: boolean
  }[]
}

export function logsOfTrip(met: MetTrip): readonly LearningLog[] {
  const asked = askedOf(met)
  return [...legLogs(met, asked), ...nightLogs(met, asked), ...burnLogs(met, asked), ...foodLogs(met, asked)]
}

/** The trip as the checks ask it, without anything learned. */
function askedOf({ brief, trip, walker, loadout, onDay }: MetTrip): Asked {
  const { bodyMassG, heightMm, bornYear, sex, principles, easyShare, upperShare, breakShare } = walker
  const plain = { bodyMassG, heightMm, bornYear, sex, principles, easyShare, upperShare, breakShare }
  return { loadout, brief, trip, walker: { ...plain, coldOffsetK: 0, paceFactor: 1, waterFactor: 1 }, today: onDay }
}

type Said = Pick<LearningLog, 'kind' | 'of' | 'id' | 'met' | 'law'> & Partial<LearningLog>

function logOf({ tripId, tripName, walkerId, onDay }: MetTrip, leftOut: boolean, said: Said): LearningLog {
  const passedOver: PassedOver | null = leftOut ? 'left-out' : (said.passedOver ?? null)
  return { tripId, tripName, walkerId, onDay, about: '', cold: false, stove: '', ...said, passedOver }
}

function legLogs(met: MetTrip, { brief, walker }: Asked): readonly LearningLog[] {
  const logs: LearningLog[] = []
  for (const one of met.legs) {
    const { id, movingMin, breakMin, drunkMl, leftOut, name } = one
    if (movingMin === null || !(movingMin > 0)) continue
    const planned = brief.legs[one.leg]
    const about = name || planned?.name || `day ${one.day}`
    const movingH = movingMin / 60
    const lawH = lawHours(one, planned)
    if (lawH !== null) {
      const passedOver = isUsableLog({ observedHours: movingH, modelHours: lawH }) ? null : lawH < 0.5 ? 'short-walk' : 'out-of-range'
      logs.push(logOf(met, leftOut, { kind: 'pace', of: 'leg', id, about, met: movingH, law: lawH, passedOver }))
    }
    if (breakMin !== null) logs.push(logOf(met, leftOut, { kind: 'breaks', of: 'leg', id, about, met: breakMin / 60, law: movingH }))
    const highC = met.debrief?.highC ?? brief.days.find((day) => day.day === one.day)?.highC ?? brief.highC
    if (drunkMl !== null && drunkMl > 0 && highC !== null) {
      const law = movingH * rateOf(brief, walker, highC).value
      logs.push(logOf(met, leftOut, { kind: 'water', of: 'leg', id, about, met: drunkMl / 1000, law }))
    }
  }
  return logs
}

/** The law's moving hours of a leg as it was walked; null: its way is not known. */
function lawHours(walked: MetTrip['legs'][number], planned: Leg | undefined): number | null {
  const { lengthM, climbM, descentM } = walked
  const unplanned: Leg = { day: 1, name: '', terrain: 'path', endHeightM: null, camp: false, lengthM: null, climbM: null, descentM: null }
  const leg: Leg = planned ?? unplanned
  const as = { lengthM: lengthM ?? leg.lengthM, climbM: climbM ?? leg.climbM, descentM: descentM ?? leg.descentM }
  const route = routeOf({ legs: [{ ...leg, ...as }] }, { paceFactor: 1 })
  return route.ok && route.legs[0]!.hours > 0 ? route.legs[0]!.hours : null
}

function nightLogs(met: MetTrip, asked: Asked): readonly LearningLog[] {
  const told = met.nights.filter(({ lowC, slept }) => lowC !== null && slept !== 'unknown')
  if (told.length === 0) return []
  const bed = bedOf(asked)
  if (!bed.ok) return []
  const limitC = work(sleepLimit, bed.value.figures).value
  if (!Number.isFinite(limitC)) return []
  return told.map(({ id, night, lowC, slept, leftOut }) =>
    logOf(met, leftOut, {
      ...{ kind: 'cold', of: 'night', id, about: String(night), met: lowC!, law: limitC, cold: slept === 'cold' },
      passedOver: slept === 'cool' ? 'between' : null,
    }),
  )
}

function burnLogs(met: MetTrip, asked: Asked): readonly LearningLog[] {
  const logs: LearningLog[] = []
  for (const { id, name, beforeMg, afterMg, heatedMl, boils, fromC, leftOut } of met.burns) {
    if (beforeMg === null || afterMg === null || heatedMl === null || heatedMl <= 0 || beforeMg <= afterMg) continue
    const law = burnLaw(asked, { litres: heatedMl / 1000, boils, fromC })
    if (law === null) continue
    const burnedG = (beforeMg - afterMg) / 1000
    const isWild = burnedG > WILD * law.grams || burnedG * WILD < law.grams
    logs.push(
      logOf(met, leftOut, {
        ...{ kind: 'fuel', of: 'burn', id, about: name || law.stove.name, met: burnedG, law: law.grams, stove: law.stove.uid },
        passedOver: isWild ? 'out-of-range' : null,
      }),
    )
  }
  return logs
}

/** Beyond four times, or under a quarter of, what the law says, something else was weighed (choice). */
const WILD = 4

function foodLogs(met: MetTrip, asked: Asked): readonly LearningLog[] {
  const { foodBeforeMg: before, foodAfterMg: after, foodLeftOut } = met.debrief ?? noFood
  if (before === null || after === null || before <= after) return []
  const need = energyNeed(asked)
  if (!need.ok) return []
  const law = energyIn(asked, need.days, { fromDay: 0, toDay: need.days.length }).value
  const kcal = ((before - after) / 1000) * densityOf(met.loadout)
  if (!(law > 0)) return []
  const isRenewed = asked.brief.resupplies.some(({ what }) => what.includes('food'))
  const passedOver = isRenewed
    ? 'resupplied'
    : after === 0
      ? 'nothing-left'
      : kcal > WILD * law || kcal * WILD < law
        ? 'out-of-range'
        : null
  return [logOf(met, foodLeftOut, { kind: 'food', of: 'trip', id: met.tripId, met: kcal, law, passedOver })]
}

const noFood = { foodBeforeMg: null, foodAfterMg: null, foodLeftOut: false }

/** kcal a gram of the food as packed; without amounts the plain mean of what was there. */
function densityOf(loadout: Loadout): number {
  const food = supplyLines(loadout).filter(isFood)
  const weights = food.map((line) => (line.amount ?? 0) * line.supply.massGPerUnit)
  const all = weights.reduce((sum, one) => sum + one, 0)
  if (all > 0) return food.reduce((sum, line, i) => sum + weights[i]! * kcalPerGram(line), 0) / all
  return food.length === 0 ? USUAL_DENSITY_KCAL_G : food.reduce((sum, line) => sum + kcalPerGram(line), 0) / food.length
}
