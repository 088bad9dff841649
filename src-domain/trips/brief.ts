import type { HeightsFrom } from './track-heights.ts'

/**
 * What a trip (or a season, as its standing brief) asks. Kept whole as JSON; every entry may be missing (null or an empty list):
 * a brief never guesses, a check that misses an entry says which one.
 * Temperatures °C, lengths m, times in minutes of the day or minutes, wind km/h at 10 m, angles in degrees.
 */
export const terrains = ['road', 'track', 'path', 'rough', 'brush', 'bog', 'sand', 'rock', 'snow'] as const
export type Terrain = (typeof terrains)[number]

export const rains = ['none', 'showers', 'wet'] as const
export type RainClass = (typeof rains)[number]

export interface Leg {
  /** 1 for the first day; several legs may share a day. */
  readonly day: number
  readonly name: string
  readonly lengthM: number | null
  readonly climbM: number | null
  readonly descentM: number | null
  readonly terrain: Terrain
  /** Height of the place where the leg ends. */
  readonly endHeightM: number | null
  /** The leg ends at a camp of this day. */
  readonly camp: boolean
}

export interface Day {
  readonly day: number
  /** Minute of the day at which walking starts; null: 08:00 as an estimate. */
  readonly startMinute: number | null
  /** Low and high expected where the forecast holds; null: the trip's. */
  readonly lowC: number | null
  readonly highC: number | null
}

export interface WaterSource {
  /** Along the route from its start. */
  readonly atM: number
  readonly name: string
  readonly sure: 'sure' | 'likely' | 'unsure'
  /** Safe as it comes (a tap); else it is treated. */
  readonly safe: boolean
}

export interface Resupply {
  readonly atM: number
  readonly day: number
  readonly name: string
  readonly what: readonly ('food' | 'fuel' | 'power')[]
}

export interface AskedDuty {
  readonly duty: string
  readonly as: 'must' | 'want'
}

export interface StruckDuty {
  readonly duty: string
  readonly reason: string
}

export const localRules = [
  'valve-only',
  'no-flame',
  'no-wood',
  'no-alcohol',
  'hard-canister',
  'permit',
  'by-air',
  'protected-water',
  'cook-in-shelter',
] as const
export type LocalRule = (typeof localRules)[number]

export interface Meals {
  /** Boils and litres each day; null: not said yet. */
  readonly boilsPerDay: number | null
  readonly litresPerBoil: number | null
  /** Days on which nothing is heated. */
  readonly coldDays: readonly number[]
  /** A hot breakfast is cooked in the coldest hour. */
  readonly hotBreakfast: boolean
  /** Energy eaten out (huts, shops), kcal over the whole trip. */
  readonly eatenOutKcal: number
}

export interface Brief {
  readonly place: { readonly latDeg: number; readonly lonDeg: number } | null
  readonly legs: readonly Leg[]
  readonly days: readonly Day[]
  readonly nightsOut: number | null
  readonly lowC: number | null
  readonly highC: number | null
  /** Height at which low, high and wind hold. */
  readonly forecastHeightM: number | null
  readonly windKmh: number | null
  readonly rain: RainClass | null
  readonly mountains: boolean
  readonly inLee: boolean
  readonly effort: 'easy' | 'moderate' | 'hard'
  readonly sun: 'full' | 'half' | 'shade'
  readonly sitMinutes: number | null
  readonly stopMinutes: number | null
  readonly sources: readonly WaterSource[]
  /** Longest dry stretch typed by the person, when no sources are listed: hours on foot. */
  readonly dryHours: number | null
  readonly dryCamps: number
  readonly resupplies: readonly Resupply[]
  readonly rules: readonly LocalRule[]
  readonly meals: Meals
  readonly headCount: number
  readonly asked: readonly AskedDuty[]
  readonly struck: readonly StruckDuty[]
  /** Heights along the track for the profile: [m from the start, height m], thinned; empty without a track. */
  readonly track: readonly (readonly [number, number])[]
  /** The plan: [lat, lon], thinned. */
  readonly plan: readonly (readonly [number, number])[]
  /** How the track was read, for saying so; null without one. Bands are 2u of climb and descent. */
  readonly trackRead: TrackRead | null
  /** The local date on which the forecast was read, YYYY-MM-DD. */
  readonly forecastOn: string | null
}

export interface TrackRead {
  readonly points: number
  readonly heightsFrom: HeightsFrom
  readonly upBandM: number | null
}

export const emptyBrief: Brief = {
  place: null,
  legs: [],
  days: [],
  nightsOut: null,
  lowC: null,
  highC: null,
  forecastHeightM: null,
  windKmh: null,
  rain: null,
  mountains: false,
  inLee: false,
  effort: 'moderate',
  sun: 'full',
  sitMinutes: null,
  stopMinutes: null,
  sources: [],
  dryHours: null,
  dryCamps: 0,
  resupplies: [],
  rules: [],
  meals: { boilsPerDay: null, litresPerBoil: null, coldDays: [], hotBreakfast: false, eatenOutKcal: 0 },
  headCount: 1,
  asked: [],
  struck: [],
  track: [],
  plan: [],
  trackRead: null,
  forecastOn: null,
}

/** Reads a stored brief; entries of an older or partial document take their empty value. */
export function readBrief(json: string | null): Brief {
  if (json === null || json === '') return emptyBrief
  return { ...emptyBrief, ...(JSON.parse(json) as Partial<Brief>) }
}

/** The trip around the brief that checks also read: dates, zone and who walks. */
export interface Trip {
  readonly startsOn: string | null
  readonly endsOn: string | null
  readonly zone: string
  readonly season: 'spring' | 'summer' | 'autumn' | 'winter' | 'any'
}

const dayMs = 86_400_000

/** Days away, both ends counted; null without both dates. Local dates differ by whole days whatever the zone. */
export function daysOf(trip: Pick<Trip, 'startsOn' | 'endsOn'>): number | null {
  if (trip.startsOn === null || trip.endsOn === null) return null
  const days = Math.round((Date.parse(trip.endsOn) - Date.parse(trip.startsOn)) / dayMs) + 1
  return days >= 1 ? days : null
}

/** Nights out: as typed, else one fewer than the days. */
export function nightsOf(trip: Pick<Trip, 'startsOn' | 'endsOn'>, brief: Brief): number | null {
  if (brief.nightsOut !== null) return brief.nightsOut
  const days = daysOf(trip)
  return days === null ? null : days - 1
}
