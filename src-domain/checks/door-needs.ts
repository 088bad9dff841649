import type { DoorRow } from '../loadout/door.ts'
import { covering, type Loadout } from '../loadout/loadout.ts'
import { isThere } from '../loadout/packed.ts'
import type { Asked, Saying } from './check.ts'
import { countedOf, labelOf, sayingOf } from './counted.ts'

/**
 * Duties and needs at the door, of what is really there: what is wished for, lent away or called missing covers nothing.
 * Those without an item come first, then what was struck with its reason, what is only wanted, and then the others with what covers them. Source: DESIGN.md (choices).
 */
export interface DoorNeed {
  readonly duty: string
  /** Whose need it is; null: asked by the trip. */
  readonly holder: string | null
  readonly state: 'without' | 'struck' | 'met'
  readonly safety: boolean
  /** Only wanted. */
  readonly want: boolean
  readonly pieces: number
  readonly present: number
  /** What covers it: names, who carries it (empty: the walker), and whether it is worn. */
  readonly by: readonly { readonly name: string; readonly who: string; readonly onMe: boolean }[]
  /** What is missing; null: met or struck. */
  readonly saying: Saying | null
  /** Why it was struck; empty: it stands. */
  readonly reason: string
}

/** The loadout as it can leave: without what is not there and what was called missing. */
export function leaving(loadout: Loadout, rows: readonly DoorRow[]): Loadout {
  const missing = new Set(rows.flatMap(({ line, state }) => (line !== null && state === 'missing' ? [line.id] : [])))
  return { ...loadout, lines: loadout.lines.filter((line) => isThere(line) && !missing.has(line.id)) }
}

export function doorNeeds(asked: Asked, rows: readonly DoorRow[]): readonly DoorNeed[] {
  const loadout = leaving(asked.loadout, rows)
  const { asks, asked: pairs, needs } = countedOf({ ...asked, loadout })
  const found = [
    ...pairs.map(({ ask, met }) => needOf(loadout, met, ask.safety, ask.as === 'want')),
    ...needs.filter(({ demand }) => demand.holder !== null).map((met) => needOf(loadout, met, false, false)),
    ...asks.filter(({ struck }) => struck !== null).map((ask) => struckNeed(ask.duty, ask.safety, ask.struck!)),
  ]
  const rank = ({ state, want }: DoorNeed) => ({ without: want ? 2 : 0, struck: 1, met: 3 })[state]
  return found.toSorted((a, b) => rank(a) - rank(b))
}

type Met = ReturnType<typeof countedOf>['needs'][number]

function needOf(loadout: Loadout, found: Met, safety: boolean, want: boolean): DoorNeed {
  const { duty, holder, pieces } = found.demand
  return {
    duty,
    holder: holder?.name ?? null,
    state: found.met ? 'met' : 'without',
    ...{ safety, want },
    pieces,
    present: found.present,
    by: covering(loadout, duty).map((line) => ({ name: line.item.name, who: line.carriedBy, onMe: line.lane === 'on_me' })),
    saying: found.met ? null : sayingOf(found),
    reason: '',
  }
}

const struckNeed = (duty: string, safety: boolean, reason: string): DoorNeed => ({
  ...{ duty, holder: null, safety, want: false, reason, pieces: 1, present: 0, by: [], state: 'struck' },
  saying: { code: 'struck', facts: { duty, label: labelOf(duty), reason } },
})
