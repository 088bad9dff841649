/**
 * What a choice is made of: things that may go, each in whole numbers, and what is asked of them together.
 *   masses in tenths of a gram, thermal resistance in hundredths of R, volumes in millilitres, loads in tenths of a gram
 * A yes-or-no duty has amount 1. What a threshold asks ("a light that lasts …") is settled before: who does not reach it covers nothing.
 */
export interface Candidate {
  readonly id: string
  /** Of one piece. */
  readonly massDg: number
  readonly pieces: number
  /** Where it may be carried. */
  readonly place: 'pack' | 'me' | 'either'
  readonly usedUp?: boolean
  /** What it occupies when worn. */
  readonly slot?: string
  /** Duty → amount, of one piece. */
  readonly covers: Readonly<Record<string, number>>
  /** Duties of `covers` among which each piece serves one. */
  readonly oneOf?: readonly (readonly string[])[]
  readonly needs: readonly Need[]
  readonly volumeMl?: number
  /** Of a pack: what it holds, and what it carries in comfort. */
  readonly packMl?: number
  readonly packLoadDg?: number
  readonly padR?: number
  /** Of a top: the ground insulation under it that makes the night warm enough; null: none owned does; absent: it is no top. */
  readonly topAsksR?: number | null
  readonly tags?: readonly string[]
}

/** `shared`: must be there, others may use it too. `reserved`: used up by this item, in addition to what is asked. */
export interface Need {
  readonly duty: string
  readonly amount: number
  readonly kind: 'shared' | 'reserved'
  /** As the check of needs deals them: once for all its pieces, and its own pieces may serve. */
  readonly once?: boolean
}

export interface Wanted {
  /** Duty → amount. `duty@moment` asks a duty at one moment; it is given up with the others of the same duty. */
  readonly duties: Readonly<Record<string, number>>
  /** Of one pack a walker, and the like. */
  readonly atMost?: readonly { readonly duty: string; readonly amount: number }[]
  /** Slot → how many may be worn in it. */
  readonly slots?: Readonly<Record<string, number>>
  /** Room and comfortable load that food and water take already; absent: not asked. */
  readonly volumeMl?: number
  readonly loadDg?: number
  /** Least ground insulation; absent: no bed is asked. */
  readonly groundR?: number
  /** At most one of each group goes. */
  readonly exclude?: readonly (readonly string[])[]
  readonly bans?: readonly string[]
  readonly pinIn?: Readonly<Record<string, number>>
  readonly pinOut?: readonly string[]
  /** What a gram worn and a gram used up count against one in the pack (1). Multiples of 1/10. */
  readonly wornFactor?: number
  readonly usedUpFactor?: number
  /** Demands that are given up: their rows are left out. */
  readonly without?: readonly string[]
  /** Rows over candidates by id: cuts, and what a person forbids. */
  readonly also?: readonly AlsoRow[]
  /** What is used up weighs at least this; rows under the id `USED_UP` say how much more with what goes. Absent: nothing of it is chosen here. */
  readonly usedUpDg?: number
}

/** The id under which rows speak of the mass of what is used up, tenths of a gram. */
export const USED_UP = '*used up'

export interface AlsoRow {
  readonly demand: string
  /** `taken`: any piece of it (0 or 1); `pieces`: how many. */
  readonly terms: readonly { readonly id: string; readonly of: 'taken' | 'pieces'; readonly coefficient: number }[]
  readonly low: number
}

/**
 * Ground insulation that a top asks, from the balance of a night.
 *   a/Rtop + b/R ≤ c    →    R = ⌈b/(c − a/Rtop)⌉ in hundredths      null: the top alone is not enough, or `mostR` is less
 * Source: choosing.md 3.4 (exact for any law falling in both; here by arithmetic).
 */
export function groundAskedR(
  topR: number,
  { a, b, c }: { readonly a: number; readonly b: number; readonly c: number },
  mostR: number,
): number | null {
  const left = c - a / (topR / 100)
  if (left <= 0) return null
  // A hair over a whole hundredth is that hundredth: 9/2.25 is 4 and not 4.01.
  const asked = Math.ceil((b / left) * 100 - 1e-9)
  return asked > mostR ? null : asked
}
