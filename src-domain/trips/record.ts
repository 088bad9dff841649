/**
 * The words in which a trip is told afterwards (DESIGN.md, Words we use). Codes are kept; the window words them.
 * Unknown is the state of whatever nobody said: it is never filled in.
 */
export const uses = ['unknown', 'used', 'unused', 'missed', 'failed'] as const
export type Use = (typeof uses)[number]

/** Empty: no verdict yet. */
export const verdicts = ['', 'keep', 'adjust', 'drop'] as const
export type Verdict = (typeof verdicts)[number]

/** What a verdict asks to change: the ways of an adjust, or the reasons of a drop. */
export const adjustments = ['add', 'swap', 'amount', 'mend'] as const
export const dropReasons = ['weight', 'function', 'comfort', 'waste'] as const
export const verdictChanges = ['', ...adjustments, ...dropReasons] as const
export type VerdictChange = (typeof verdictChanges)[number]

/** Whether a change belongs to its verdict; keep and no verdict change nothing. */
export function fitsVerdict(verdict: Verdict, change: VerdictChange): boolean {
  if (change === '') return true
  const fits: readonly string[] = verdict === 'adjust' ? adjustments : verdict === 'drop' ? dropReasons : []
  return fits.includes(change)
}

/** How the load sat, or the feet felt, on a day. Empty: not said. */
export const comforts = ['', 'fresh', 'tired', 'sore'] as const
export type Comfort = (typeof comforts)[number]

export const sleeps = ['unknown', 'warm', 'cool', 'cold'] as const
export type Slept = (typeof sleeps)[number]

/** On the door list: confirmed, still open, or found not to be there. */
export const doorStates = ['open', 'packed', 'missing'] as const
export type DoorState = (typeof doorStates)[number]
