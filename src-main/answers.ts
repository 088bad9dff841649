import type { KitArea, Lane, MassOrigin, Status, Way } from '../src-domain/closet/vocabulary.ts'

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
  /** Trips that are out or back and have it in their chosen loadout. */
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
