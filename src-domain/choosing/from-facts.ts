import { filledByBrief } from '../checks/by-brief.ts'
import { gather, indexKit, type ClosetFacts, type LineFacts, type PropertyFacts, type SupplyFacts } from '../loadout/gather.ts'
import type { Lane } from '../closet/vocabulary.ts'
import type { Brief, Trip } from '../trips/brief.ts'
import type { Principle, Walker } from '../trips/walker.ts'
import type { Choosing } from './trip-choice.ts'

/** What a choice is worked out from, as plain rows that pass to the solver's thread. */
export interface ChoosingFacts {
  readonly closet: ClosetFacts & { readonly usualLane: readonly Lane[]; readonly archived: readonly boolean[] }
  readonly properties: PropertyFacts
  readonly supplies: readonly SupplyFacts[]
  readonly materials: readonly { readonly itemId: number; readonly text: string }[]
  readonly name: string
  readonly lines: readonly LineFacts[]
  readonly brief: Brief
  readonly trip: Trip
  readonly walker: Walker
  readonly today: string
}

/** What the person asks of the choice. Items by their uid. */
export interface ChoosingOptions {
  readonly principles: readonly Principle[]
  readonly pinIn: readonly string[]
  readonly pinOut: readonly string[]
  readonly wants: boolean
  readonly notShort: boolean
  readonly wornFactor: number
  readonly banned: Choosing['banned']
}

export function choosingFrom(facts: ChoosingFacts, options: ChoosingOptions): Choosing {
  const { closet, properties, supplies, brief, trip, walker, today } = facts
  const index = indexKit(closet, properties, supplies)
  const { loadout } = gather(index, facts.name, facts.lines)
  const materials = Map.groupBy(facts.materials, ({ itemId }) => itemId)
  const inside = new Set(facts.lines.map(({ itemId }) => itemId))
  const rows = closet.id
    .map((id, row) => ({ id, row }))
    .filter(({ id, row }) => !closet.archived[row] && (closet.status[row] === 'owned' || inside.has(id)))
  return {
    ...options,
    asked: filledByBrief({ loadout, brief, trip, walker, today }),
    closet: rows.map(({ id, row }) => ({
      item: index.item(id)!,
      usualLane: closet.usualLane[row]!,
      materials: (materials.get(id) ?? []).map(({ text }) => text),
    })),
  }
}
