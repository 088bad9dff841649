import type { Lane } from '../closet/vocabulary.ts'
import type { KitItem, Line, Loadout } from './loadout.ts'

/** A loadout as it would be: for totals and checks while something is lifted. Nothing is kept; made-up lines have ids below 0. */

/** With pieces of an item in a lane: more on its line there, else a line at the end. */
export function withLine(loadout: Loadout, item: KitItem, lane: Lane, pieces = 1): Loadout {
  const there = loadout.lines.find((line) => isOf(line, item, lane))
  if (there === undefined) {
    const id = Math.min(0, ...loadout.lines.map((line) => line.id)) - 1
    return { ...loadout, lines: [...loadout.lines, { kind: 'item', id, lane, carriedBy: '', note: '', item, pieces }] }
  }
  const more = (line: Line): Line => (line === there && line.kind === 'item' ? { ...line, pieces: line.pieces + pieces } : line)
  return { ...loadout, lines: loadout.lines.map(more) }
}

export function withoutLines(loadout: Loadout, ids: readonly number[]): Loadout {
  return { ...loadout, lines: loadout.lines.filter((line) => !ids.includes(line.id)) }
}

/** With lines moved to a lane; an item that has a line there already joins it. A supply stays in its lane. */
export function withMove(loadout: Loadout, ids: readonly number[], lane: Lane): Loadout {
  let moved = loadout
  for (const id of ids) {
    const line = moved.lines.find((one) => one.id === id)
    if (line?.kind !== 'item' || line.lane === lane) continue
    const joins = moved.lines.some((one) => isOf(one, line.item, lane))
    moved = joins
      ? withLine(withoutLines(moved, [id]), line.item, lane, line.pieces)
      : { ...moved, lines: moved.lines.map((one) => (one === line ? { ...line, lane } : one)) }
  }
  return moved
}

const isOf = (line: Line, item: KitItem, lane: Lane): boolean => line.kind === 'item' && line.item.uid === item.uid && line.lane === lane
