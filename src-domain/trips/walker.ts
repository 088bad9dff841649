/** The person who carries it. Kept whole as JSON; what is not said is null and the checks that need it say so. */
export const principles = ['no-down', 'no-throwaways', 'no-open-flame', 'no-animal-fibre', 'no-fluorinated-finish'] as const
export type Principle = (typeof principles)[number]

export interface Walker {
  readonly bodyMassG: number | null
  readonly heightMm: number | null
  readonly bornYear: number | null
  /** For the energy equations; null: none used, the mean of both is. */
  readonly sex: 'female' | 'male' | null
  /** How much warmer than the standard sleeper this one must be kept, K; 0: as the standard. */
  readonly coldOffsetK: number
  /** Own time over the standard time of the walking law; 1: the law as it stands. */
  readonly paceFactor: number
  /** Spread of ln time of the next walk and its degrees of freedom, once learned; absent: as without logs. */
  readonly paceSpread?: number
  readonly paceDof?: number
  /** Share of the time on foot spent standing. */
  readonly breakShare: number
  readonly waterFactor: number
  /** Learned from the record; absent: as before any log. Standard deviations: K, and of ln of the factor. */
  readonly coldSdK?: number
  readonly waterSdLn?: number
  readonly foodFactor?: number
  readonly foodSdLn?: number
  /** Fuel over the law's, by the stove's uid. */
  readonly stoves?: Readonly<Record<string, { readonly factor: number; readonly sdLn: number; readonly burns: number }>>
  /** Kinds (learning/logs.ts) whose typed value stands, whatever the record says. */
  readonly asTyped?: readonly string[]
  readonly principles: readonly Principle[]
  /** Marks on the body, share of body mass; null: the usual 20 and 30 % (15 and 20 % under 18). */
  readonly easyShare: number | null
  readonly upperShare: number | null
}

export const emptyWalker: Walker = {
  bodyMassG: null,
  heightMm: null,
  bornYear: null,
  sex: null,
  coldOffsetK: 0,
  paceFactor: 1,
  breakShare: 0.15,
  waterFactor: 1,
  principles: [],
  easyShare: null,
  upperShare: null,
}

export function readWalker(json: string | null): Walker {
  if (json === null || json === '') return emptyWalker
  return { ...emptyWalker, ...(JSON.parse(json) as Partial<Walker>) }
}
