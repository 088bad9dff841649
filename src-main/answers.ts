import type { ChosenSet, LineReason, Proposal } from './choosing/messages.ts'
import type { KitArea, Lane, MassOrigin, Status, Way } from '../src-domain/closet/vocabulary.ts'
import type { LearningLog } from '../src-domain/learning/logs.ts'
import type { PackedFacts } from '../src-domain/loadout/packed.ts'
import type { Comfort, DoorState, Slept, Use, Verdict, VerdictChange } from '../src-domain/trips/record.ts'
import type { Track } from '../src-domain/trips/track.ts'

export type { LearningLog }

/** The shapes that calls answer: plain data, units in the names. */

export interface StepName {
  readonly id: number
  /** The call that made it, e.g. `item.weigh`; worded in the window. */
  readonly code: string
  readonly facts: Readonly<Record<string, string | number>>
  readonly at: string
}

export interface ProgramState {
  readonly version: string
  readonly dataDir: string
  readonly demo: boolean
  readonly host: 'electron' | 'loopback'
  readonly rev: number
  readonly undo: StepName | null
  readonly redo: StepName | null
  readonly lastBackupOn: string | null
  /** Set when the database could not be opened as it was: what happened, and the newest good backup if there is one. */
  readonly trouble: {
    readonly code: 'store.damaged' | 'store.newer' | 'store.read-only' | 'store.full'
    readonly detail: string
    readonly backup: string | null
  } | null
  /** Today as the computer's zone has it (YYYY-MM-DD), and that zone. */
  readonly today: string
  readonly zone: string
}

/** The closet as columns: one plain array per field, all of one length. Lists inside a field are space- or newline-joined as noted. */
export interface ClosetColumns {
  readonly id: readonly number[]
  readonly uid: readonly string[]
  readonly name: readonly string[]
  readonly maker: readonly string[]
  readonly kitArea: readonly KitArea[]
  readonly pieces: readonly number[]
  readonly status: readonly Status[]
  readonly statusSince: readonly (string | null)[]
  readonly lentTo: readonly string[]
  /** Per piece: the latest counted weighing, else the claim, else the estimate, else null. */
  readonly massMg: readonly (number | null)[]
  readonly massFrom: readonly MassOrigin[]
  /** Standard uncertainty per piece of a measured mass: its own, and that of its scale's gain. */
  readonly uOwnMg: readonly number[]
  readonly uGainMg: readonly number[]
  readonly weighingUid: readonly (string | null)[]
  readonly scaleUid: readonly (string | null)[]
  readonly weighedOn: readonly (string | null)[]
  readonly claimedMg: readonly (number | null)[]
  readonly claimedBy: readonly string[]
  readonly estimatedMg: readonly (number | null)[]
  readonly usualLane: readonly Lane[]
  readonly isContainer: readonly boolean[]
  readonly setId: readonly (number | null)[]
  /** Duty codes joined by a space; a shared one ends in `*`. */
  readonly duties: readonly string[]
  /** Joined by a newline. */
  readonly tags: readonly string[]
  readonly seasons: readonly string[]
  readonly note: readonly string[]
  readonly priceMinor: readonly (number | null)[]
  readonly currency: readonly string[]
  readonly cameOn: readonly (string | null)[]
  readonly lastOutOn: readonly (string | null)[]
  /** Trips that are out or back and had it packed. */
  readonly trips: readonly number[]
  readonly photos: readonly number[]
  readonly archived: readonly boolean[]
}

/** Every trait and need, of items and supplies, as columns. */
export interface TraitColumns {
  readonly traits: {
    readonly itemId: readonly (number | null)[]
    readonly supplyId: readonly (number | null)[]
    readonly code: readonly string[]
    readonly number: readonly (number | null)[]
    readonly text: readonly string[]
    readonly origin: readonly ('measured' | 'claimed' | 'estimated')[]
  }
  readonly needs: {
    readonly itemId: readonly (number | null)[]
    readonly supplyId: readonly (number | null)[]
    readonly duty: readonly string[]
    readonly pieces: readonly number[]
    readonly kind: readonly ('shared' | 'reserved')[]
  }
}

export interface WeighingRow {
  readonly id: number
  readonly uid: string
  readonly itemId: number
  readonly itemName: string
  readonly scaleId: number | null
  readonly scaleName: string | null
  readonly weighedOn: string
  readonly weighedMinute: number | null
  readonly readingsMg: readonly number[]
  readonly tareMg: number
  readonly tareKind: 'none' | 'button' | 'reading'
  readonly pieces: number
  readonly massMg: number
  readonly uOwnMg: number
  readonly uGainMg: number
  readonly damp: boolean
  readonly dirty: boolean
  readonly incomplete: boolean
  readonly entered: 'typed' | 'usb' | 'brought'
  readonly note: string
}

export interface TraitRow {
  readonly code: string
  readonly number: number | null
  readonly text: string
  readonly typed: string
  readonly typedUnit: string
  readonly origin: 'measured' | 'claimed' | 'estimated'
  readonly source: string
  readonly notedOn: string | null
}

export interface NeedRow {
  readonly duty: string
  readonly pieces: number
  readonly kind: 'shared' | 'reserved'
}

/** One item, whole. */
export interface ItemDetail {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly maker: string
  readonly kitArea: KitArea
  readonly pieces: number
  readonly status: Status
  readonly statusSince: string | null
  readonly lentTo: string
  readonly claimedMg: number | null
  readonly claimedBy: string
  readonly estimatedMg: number | null
  readonly usualLane: Lane
  readonly isContainer: boolean
  readonly setId: number | null
  readonly serial: string
  readonly came: Way
  readonly cameOn: string | null
  readonly cameFrom: string
  readonly priceMinor: number | null
  readonly currency: string
  readonly soldMinor: number | null
  readonly note: string
  readonly lifeNote: string
  readonly lastOutOn: string | null
  readonly archived: boolean
  readonly duties: readonly { readonly duty: string; readonly shared: boolean }[]
  readonly tags: readonly string[]
  readonly materials: readonly string[]
  readonly seasons: readonly string[]
  readonly links: readonly { readonly url: string; readonly label: string }[]
  readonly traits: readonly TraitRow[]
  readonly needs: readonly NeedRow[]
  readonly counters: readonly {
    readonly code: string
    readonly amount: number
    readonly origin: string
    readonly note: string
    readonly notedOn: string | null
  }[]
  readonly photos: readonly {
    readonly id: number
    readonly sha256: string
    readonly thumbSha256: string
    readonly mime: string
    readonly name: string
  }[]
  readonly weighings: readonly WeighingRow[]
  readonly loadouts: readonly {
    readonly id: number
    readonly name: string
    readonly tripName: string | null
    readonly startsOn: string | null
    readonly state: 'planned' | 'out' | 'back' | null
  }[]
  /** What was done to it, newest first, as far as the undo history reaches. */
  readonly history: readonly StepName[]
}

export interface KitSet {
  readonly id: number
  readonly name: string
  readonly itemIds: readonly number[]
}

export interface CheckReading {
  readonly id: number
  readonly readOn: string
  readonly nominalMg: number
  readonly mpeMg: number
  readonly massClass: string
  readonly readingsMg: readonly number[]
}

export interface ScaleRow {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly stepMg: number
  readonly capacityMg: number
  readonly kind: 'typed' | 'usb'
  readonly device: string
  readonly note: string
  readonly archived: boolean
  /** Newest first. */
  readonly checks: readonly CheckReading[]
}

export interface Rule {
  readonly per: 'day' | 'night' | 'litre' | 'boil' | 'trip' | 'stretch'
  readonly amountMilli: number
}

export interface SupplyRow {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly kitArea: KitArea
  readonly unit: 'g' | 'ml' | 'piece'
  readonly mgPerUnit: number
  readonly massFrom: 'measured' | 'claimed' | 'estimated'
  readonly rule: Rule | null
  readonly note: string
  readonly archived: boolean
}

export interface WordRow {
  readonly kind: 'area' | 'duty' | 'trait'
  readonly code: string
  readonly label: string
  readonly hidden: boolean
  readonly own: boolean
  readonly area: string
  readonly unit: string
}

export interface SeasonRow {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly kind: 'spring' | 'summer' | 'autumn' | 'winter' | 'any'
  readonly brief: string | null
}

export interface WalkerRow {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly profile: string
}

export interface TripRow {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly seasonId: number | null
  readonly walkerId: number | null
  readonly startsOn: string | null
  readonly endsOn: string | null
  readonly zone: string
  readonly state: 'planned' | 'out' | 'back'
  readonly brief: string
  readonly note: string
  /** Added afterwards, without a brief: only what went is known, and its month. */
  readonly past: boolean
  /** YYYY-MM of a past trip. */
  readonly month: string | null
  /** Of a trip that is out or back: the person was done with its debrief on this day; null: not yet. */
  readonly keptAt: string | null
}

/** The door list of a loadout, as far as it is not plain to see from its lines. */
export interface DoorList {
  readonly readingMg: number | null
  readonly scaleId: number | null
  /** The last things were in the pack when it hung. */
  readonly withLast: boolean
  readonly lines: readonly {
    readonly id: number
    /** null: a last thing of the person's own words. */
    readonly lineId: number | null
    readonly name: string
    readonly state: DoorState
    readonly wasMissing: boolean
    /** null: as the rule says. */
    readonly last: boolean | null
    readonly note: string
  }[]
  /** What was missed or nearly missed on earlier trips, newest first. */
  readonly missedBefore: readonly {
    readonly itemId: number
    readonly tripName: string
    readonly startsOn: string | null
    readonly month: string | null
    /** missed: wanted on the way and not there · found: missing at the door and then found. */
    readonly how: 'missed' | 'found'
    readonly note: string
  }[]
}

export interface PackedRow extends PackedFacts {
  readonly door: DoorState
  readonly wasMissing: boolean
  readonly corrected: boolean
}

/** Where a verdict held; null: as the whole trip was. */
export interface HeldIn {
  readonly lowC: number | null
  readonly windKmh: number | null
  readonly rainHours: number | null
  readonly nights: number | null
  readonly lengthM: number | null
}

export interface DebriefLine extends HeldIn {
  readonly id: number
  /** null: it was not packed; then `itemId` names a thing that stayed at home, or only `name` is known. */
  readonly packedId: number | null
  readonly itemId: number | null
  readonly name: string
  readonly use: Use
  /** one: said of this line · rest: said at once of all that were left. */
  readonly said: 'one' | 'rest'
  readonly verdict: Verdict
  readonly change: VerdictChange
  readonly onlyWhen: string
  readonly what: string
  readonly toItemId: number | null
  readonly amountMilli: number | null
  readonly note: string
}

export interface DebriefHead {
  readonly lowC: number | null
  readonly highC: number | null
  readonly windKmh: number | null
  readonly rain: '' | 'none' | 'showers' | 'wet'
  readonly rainHours: number | null
  readonly nights: number | null
  readonly lengthM: number | null
  readonly foodBeforeMg: number | null
  readonly foodAfterMg: number | null
  readonly foodLeftOut: boolean
  readonly keptAt: string | null
  readonly note: string
}

export interface LegLog {
  readonly id: number
  /** Its place in the brief as it was, from 0. */
  readonly leg: number
  readonly day: number
  readonly name: string
  readonly startedMinute: number | null
  readonly movingMin: number | null
  readonly breakMin: number | null
  /** As the track had them; null: those of the brief. */
  readonly lengthM: number | null
  readonly climbM: number | null
  readonly descentM: number | null
  readonly drunkMl: number | null
  readonly leftMl: number | null
  readonly origin: 'typed' | 'track'
  /** Learning passes it over. */
  readonly leftOut: boolean
  readonly note: string
}

export interface NightLog {
  readonly id: number
  /** 1: the night after the first day. */
  readonly night: number
  readonly lowC: number | null
  readonly slept: Slept
  readonly wokeMinute: number | null
  readonly leftOut: boolean
  readonly note: string
}

export interface DayLog {
  readonly id: number
  readonly day: number
  /** How the load sat. */
  readonly shoulders: Comfort
  readonly feet: Comfort
  readonly hungry: '' | 'no' | 'yes'
  readonly leftOut: boolean
  readonly note: string
}

/** Fuel weighed before and after, container and all. */
export interface BurnLog {
  readonly id: number
  readonly packedId: number | null
  readonly name: string
  readonly beforeMg: number | null
  readonly afterMg: number | null
  readonly heatedMl: number | null
  readonly boils: number | null
  /** Water as it came; null: not said. */
  readonly fromC: number | null
  readonly leftOut: boolean
  readonly note: string
}

export interface TripPhoto {
  readonly id: number
  readonly packedId: number | null
  readonly sha256: string
  readonly thumbSha256: string
  readonly mime: string
  readonly name: string
}

export interface TrialQuestion {
  readonly id: number
  readonly itemId: number
  readonly text: string
  readonly settled: boolean
  /** What each trip said to it, oldest first. */
  readonly answers: readonly { readonly tripId: number; readonly text: string }[]
}

/** A trip that is out or back, whole: as it was when the door list was closed, and what was said since. */
export interface TripRecord {
  readonly tripId: number
  readonly past: boolean
  readonly month: string | null
  readonly closedAt: string
  readonly loadoutName: string
  /** Brief and walker as they were, as JSON. */
  readonly brief: string
  readonly walker: string
  readonly season: SeasonRow['kind']
  readonly startsOn: string | null
  readonly endsOn: string | null
  readonly zone: string
  readonly packed: readonly PackedRow[]
  /** null: nothing was said of the whole trip yet. */
  readonly debrief: DebriefHead | null
  readonly lines: readonly DebriefLine[]
  readonly legs: readonly LegLog[]
  readonly nights: readonly NightLog[]
  readonly days: readonly DayLog[]
  readonly burns: readonly BurnLog[]
  readonly photos: readonly TripPhoto[]
  /** Of the items that were packed: open ones, and those that this trip answered. */
  readonly questions: readonly TrialQuestion[]
}

/** Counters (used about … before, last care, own life) and how each item came and went. */
export interface CareColumns {
  readonly counters: {
    readonly itemId: readonly number[]
    readonly code: readonly string[]
    readonly amount: readonly number[]
    readonly notedOn: readonly (string | null)[]
  }
  readonly items: {
    readonly id: readonly number[]
    readonly came: readonly Way[]
    readonly soldMinor: readonly (number | null)[]
    /** The day of its first weighing. */
    readonly firstWeighedOn: readonly (string | null)[]
    /** How the newest weighing was marked, if it was: kept, but not the item's mass. */
    readonly lastMark: readonly ('' | 'damp' | 'dirty')[]
  }
}

/**
 * Every trip that is out or back, as columns: one plain array per field, all arrays of one part of one length. For learning, wear and letting go.
 *
 * Item i was taken on trip t when a row of `taken` names both; it was used when that row says `used` or `failed`; `unknown` says nothing at all.
 * What an item's status was when t froze: the row of `away` that names both; else `owned` when i ≤ `trips.newestItemId`; a later item was not there yet
 * unless it came before (`cameOn` of the closet). A trip that was added afterwards (`past`) has no rows of `away`: there the closet's dates decide.
 * It was fit for t when its status was owned, one of its duties stands in `trips.asked`, and its season tags, if any, name the trip's season.
 */
export interface RecordColumns {
  /** Oldest first. */
  readonly trips: {
    readonly id: readonly number[]
    readonly uid: readonly string[]
    readonly name: readonly string[]
    readonly state: readonly ('out' | 'back')[]
    readonly past: readonly boolean[]
    /** The day it stands at in time: its first; of a past trip the 15th of its month; else the day it was closed. */
    readonly onDay: readonly string[]
    readonly startsOn: readonly (string | null)[]
    readonly endsOn: readonly (string | null)[]
    readonly month: readonly (string | null)[]
    readonly season: readonly SeasonRow['kind'][]
    readonly walkerId: readonly (number | null)[]
    /** As JSON, as they were. */
    readonly brief: readonly string[]
    readonly walker: readonly string[]
    /** Duties that the trip asked and nobody struck, codes joined by a space. */
    readonly asked: readonly string[]
    /** What was met, as the debrief says; null where nobody said. Nights fall back on the brief's, length on its legs', low on the lowest night's. */
    readonly nights: readonly (number | null)[]
    readonly lengthM: readonly (number | null)[]
    readonly lowC: readonly (number | null)[]
    readonly highC: readonly (number | null)[]
    readonly windKmh: readonly (number | null)[]
    readonly rain: readonly ('' | 'none' | 'showers' | 'wet')[]
    readonly rainHours: readonly (number | null)[]
    /** The lowest air temperature that the brief expected. */
    readonly expectedLowC: readonly (number | null)[]
    readonly foodBeforeMg: readonly (number | null)[]
    readonly foodAfterMg: readonly (number | null)[]
    readonly foodLeftOut: readonly boolean[]
    /** The debrief was kept. */
    readonly kept: readonly boolean[]
    /** The newest item when it froze; null: not known. */
    readonly newestItemId: readonly (number | null)[]
  }
  /** Every packed line, supplies too. */
  readonly taken: {
    readonly tripId: readonly number[]
    readonly packedId: readonly number[]
    readonly itemId: readonly (number | null)[]
    readonly supplyId: readonly (number | null)[]
    readonly name: readonly string[]
    readonly lane: readonly Lane[]
    readonly pieces: readonly number[]
    readonly amountMilli: readonly (number | null)[]
    readonly massMg: readonly (number | null)[]
    readonly carriedBy: readonly string[]
    /** unknown: nobody said. */
    readonly use: readonly Use[]
    readonly said: readonly ('one' | 'rest' | '')[]
    readonly verdict: readonly Verdict[]
    readonly change: readonly VerdictChange[]
    readonly onlyWhen: readonly string[]
    readonly what: readonly string[]
    readonly toItemId: readonly (number | null)[]
  }
  /** Things that were missed on the way and had stayed at home; item null: never owned, only its name is known. */
  readonly missed: {
    readonly tripId: readonly number[]
    readonly itemId: readonly (number | null)[]
    readonly name: readonly string[]
    readonly verdict: readonly Verdict[]
    readonly change: readonly VerdictChange[]
    readonly toItemId: readonly (number | null)[]
  }
  readonly away: {
    readonly tripId: readonly number[]
    readonly itemId: readonly number[]
    readonly status: readonly Exclude<Status, 'owned'>[]
  }
  readonly legs: {
    readonly id: readonly number[]
    readonly tripId: readonly number[]
    readonly leg: readonly number[]
    readonly day: readonly number[]
    readonly movingMin: readonly (number | null)[]
    readonly breakMin: readonly (number | null)[]
    /** As the track had them; null: those of the brief. */
    readonly lengthM: readonly (number | null)[]
    readonly climbM: readonly (number | null)[]
    readonly descentM: readonly (number | null)[]
    readonly drunkMl: readonly (number | null)[]
    readonly leftMl: readonly (number | null)[]
    readonly origin: readonly ('typed' | 'track')[]
    readonly leftOut: readonly boolean[]
  }
  readonly nights: {
    readonly id: readonly number[]
    readonly tripId: readonly number[]
    readonly night: readonly number[]
    readonly lowC: readonly (number | null)[]
    readonly slept: readonly Slept[]
    readonly leftOut: readonly boolean[]
  }
  readonly days: {
    readonly id: readonly number[]
    readonly tripId: readonly number[]
    readonly day: readonly number[]
    readonly shoulders: readonly Comfort[]
    readonly feet: readonly Comfort[]
    readonly hungry: readonly ('' | 'no' | 'yes')[]
    readonly leftOut: readonly boolean[]
  }
  readonly burns: {
    readonly id: readonly number[]
    readonly tripId: readonly number[]
    readonly packedId: readonly (number | null)[]
    readonly beforeMg: readonly (number | null)[]
    readonly afterMg: readonly (number | null)[]
    readonly heatedMl: readonly (number | null)[]
    readonly boils: readonly (number | null)[]
    readonly fromC: readonly (number | null)[]
    readonly leftOut: readonly boolean[]
  }
}

export interface LoadoutHead {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly seasonId: number | null
  readonly tripId: number | null
  readonly parentId: number | null
  readonly chosen: boolean
  readonly note: string
  readonly lines: number
}

export interface LineRow {
  readonly id: number
  readonly uid: string
  readonly loadoutId: number
  readonly itemId: number | null
  readonly supplyId: number | null
  readonly lane: Lane
  readonly pieces: number
  readonly amountMilli: number | null
  readonly amountFrom: 'brief' | 'typed' | 'weighed'
  readonly rule: Rule | null
  readonly containerId: number | null
  readonly carriedBy: string
  readonly note: string
  readonly sort: number
}

/** A parent's line as it was when the child was made; `key` is `<item or supply uid>:<lane>[:<container uid>]`. */
export interface BaseLine {
  readonly key: string
  readonly itemUid: string | null
  readonly supplyUid: string | null
  readonly lane: Lane
  readonly pieces: number
  readonly amountMilli: number | null
  readonly amountFrom: 'brief' | 'typed' | 'weighed'
  readonly rule: Rule | null
  readonly containerUid: string | null
  readonly carriedBy: string
}

export interface LoadoutOpen extends LoadoutHead {
  readonly line: readonly LineRow[]
  readonly base: readonly BaseLine[] | null
}

export interface PlannedLine {
  readonly loadoutId: number
  readonly loadoutName: string
  readonly tripId: number
  readonly startsOn: string | null
  readonly endsOn: string | null
  readonly itemId: number
  readonly pieces: number
  readonly carriedBy: string
}

/** A choice as far as it has been worked out. */
export interface ChoiceState {
  readonly stage: 'solving' | 'explaining' | 'done' | 'failed'
  /** Until the proposal, ms. */
  readonly tookMs: number
  readonly proposal: Proposal | null
  readonly reasons: readonly LineReason[]
  /** Tenths of a gram; null: could not be settled. */
  readonly prices: readonly { readonly name: string; readonly dg: number | null }[]
  readonly next: readonly ChosenSet[]
  readonly why: string
}
export type { ChosenSet, Proposal } from './choosing/messages.ts'
export type ReasonedLine = LineReason

export interface SavedView {
  readonly id: number
  readonly room: string
  readonly name: string
  readonly state: string
}

export interface BackupRow {
  readonly name: string
  readonly at: string
  readonly bytes: number
  /** Why it was made: daily, by hand, before a migration, before a restore. */
  readonly why: 'daily' | 'hand' | 'migration' | 'restore'
  readonly sound: boolean
}

export interface ArchiveMade {
  readonly name: string
  readonly bytes: number
  readonly url: string
}

export interface ArchiveLook {
  readonly schema: number
  readonly madeAt: string
  readonly items: number
  readonly loadouts: number
  readonly weighings: number
  readonly files: number
}

/** A line of a track file, read: what `Track` of src-domain/trips/track.ts holds, its points as [m along, lat, lon, height or null, segment]. */
export interface TrackLine extends Pick<Track, 'lengthM' | 'gapM' | 'climb' | 'counts'> {
  readonly kind: 'track' | 'route'
  readonly name: string
  readonly points: readonly (readonly [number, number, number, number | null, number])[]
}

/** What a track file holds (POST /track/<where its heights come from>). */
export interface TrackFound {
  readonly lines: readonly TrackLine[]
  readonly waypoints: readonly {
    readonly latDeg: number
    readonly lonDeg: number
    readonly heightM: number | null
    readonly name: string
  }[]
  /** Times and heights that could not be read and count as missing. */
  readonly ignored: { readonly times: number; readonly heights: number }
}
