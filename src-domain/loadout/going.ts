import { traitText, type ItemLine, type KitItem, type Loadout } from './loadout.ts'

/**
 * Items that really go: owned or wished for, and what is lent out only where another carries it. Sold, retired and lost things serve nothing.
 * An item counts once, however many lanes it is in, with its pieces together and never more of them than there are.
 */
export interface Going {
  readonly item: KitItem
  readonly pieces: number
  /** All of it is worn while walking. */
  readonly worn: boolean
}

export function goingItems(loadout: Loadout): readonly Going[] {
  const found = new Map<string, Going>()
  for (const line of loadout.lines) {
    if (line.kind !== 'item' || !goes(line)) continue
    const before = found.get(line.item.uid)
    const pieces = Math.min(line.item.pieces, (before?.pieces ?? 0) + line.pieces)
    found.set(line.item.uid, { item: line.item, pieces, worn: (before?.worn ?? true) && line.lane === 'on_me' })
  }
  return [...found.values()]
}

const goes = ({ item, carriedBy }: ItemLine): boolean =>
  item.status === 'owned' || item.status === 'wished' || (item.status === 'lent' && carriedBy !== '')

export const serves = (item: KitItem, ...duties: readonly string[]): boolean => item.duties.some((one) => duties.includes(one.duty))

export const goingFor = (going: readonly Going[], ...duties: readonly string[]): readonly Going[] =>
  going.filter(({ item }) => serves(item, ...duties))

/** Items of which a choice trait says this. */
export const goingOf = (going: readonly Going[], trait: string, word: string): readonly Going[] =>
  going.filter(({ item }) => traitText(item, trait) === word)
