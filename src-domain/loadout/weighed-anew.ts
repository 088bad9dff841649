import type { Figure } from '../figures/figure.ts'
import type { KitItem, Line, Loadout } from './loadout.ts'

/**
 * A loadout as it would be if one piece of an item weighed this: for what a weighing would change before it is kept.
 * The item's mass counts where it is carried and where it is the container of a supply (its empty mass stands in the contents' doubt).
 */
export function withPieceMass(loadout: Loadout, itemUid: string, mass: Figure<'g'>): Loadout {
  const anew = (item: KitItem): KitItem => (item.uid === itemUid ? { ...item, mass, massFrom: 'measured' } : item)
  const line = (one: Line): Line =>
    one.kind === 'item' ? { ...one, item: anew(one.item) } : { ...one, container: one.container === null ? null : anew(one.container) }
  return { ...loadout, lines: loadout.lines.map(line) }
}
