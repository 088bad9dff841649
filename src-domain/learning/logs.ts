/**
 * What a trip says of its walker: one log for each leg, night, burn or weighed food, what was met beside what the law says for the same.
 * Only what the person said, weighed or recorded is a log. A default, a forecast or an amount by the brief never is one: it may stand on the law's side,
 * where the check itself would take it, never on the side of what was met.
 */
export const learnedKinds = ['pace', 'breaks', 'cold', 'fuel', 'water', 'food'] as const
export type LearnedKind = (typeof learnedKinds)[number]

/** Why a log says nothing: shown beside it. */
export type PassedOver = 'left-out' | 'out-of-range' | 'between' | 'nothing-left' | 'resupplied' | 'short-walk'

export interface LearningLog {
  readonly kind: LearnedKind
  /** The row of the record that holds it, and its id (of a trip: the trip's). */
  readonly of: 'leg' | 'night' | 'burn' | 'trip'
  readonly id: number
  readonly tripId: number
  readonly tripName: string
  readonly walkerId: number | null
  readonly onDay: string
  /** Leg, stove or food; a night's number. */
  readonly about: string
  /** pace: moving h · breaks: standing h · cold: low of the night °C · fuel: g burned · water: l drunk · food: kcal eaten */
  readonly met: number
  /** The law's for the same; breaks: moving h; cold: the coldest night the bed held by the sum, °C. */
  readonly law: number
  /** Of a night. */
  readonly cold: boolean
  /** Of a burn: the stove's own code (uid). */
  readonly stove: string
  /** null: it counts. */
  readonly passedOver: PassedOver | null
}

export const counts = (log: LearningLog): boolean => log.passedOver === null
