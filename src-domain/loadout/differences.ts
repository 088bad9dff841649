import type { KitArea, Lane } from '../closet/vocabulary.ts'
import { kitAreas } from '../closet/vocabulary.ts'
import type { RuleFacts } from './gather.ts'
import type { Line, Loadout } from './loadout.ts'
import { areaOf, keyOf, nameOf } from './mass.ts'
import { netOf, type Net } from './net.ts'
import { weighed } from './totals.ts'

/**
 * Descent: what differs between a loadout and the one it descends from, both as they are now, line by line; the parent's lines as they
 * were when the child was made (`base`) say which side moved. Nothing flows by itself: lines are taken by key.
 */
export interface LineState {
  /** `<item or supply uid>:<lane>[:<container uid>]` */
  readonly key: string
  readonly itemUid: string | null
  readonly supplyUid: string | null
  readonly lane: Lane
  readonly pieces: number
  /** null where the amount follows the brief. */
  readonly amountMilli: number | null
  readonly amountFrom: 'brief' | 'typed' | 'weighed'
  readonly rule: RuleFacts | null
  readonly containerUid: string | null
  readonly carriedBy: string
}

export type DifferingField = 'there' | 'pieces' | 'amount' | 'rule' | 'carried-by'

export interface Difference {
  readonly key: string
  readonly name: string
  readonly area: KitArea
  readonly lane: Lane
  readonly parent: LineState | null
  readonly child: LineState | null
  readonly fields: readonly DifferingField[]
  /** Which side is no longer as base has it; `unknown` without a base. */
  readonly moved: 'parent' | 'child' | 'both' | 'unknown'
  /** The lane that the same thing is in on the other side, where it only changed lanes. */
  readonly otherLane: Lane | null
  /** child − parent. */
  readonly mass: Net
}

export const statesOf = (loadout: Loadout): readonly LineState[] => loadout.lines.map(stateOf)

export function stateOf(line: Line): LineState {
  const common = { key: keyOf(line), lane: line.lane, carriedBy: line.carriedBy }
  if (line.kind === 'item') {
    const { item, pieces } = line
    return { ...common, itemUid: item.uid, supplyUid: null, pieces, amountMilli: null, amountFrom: 'typed', rule: null, containerUid: null }
  }
  const { supply, container, amountFrom, rule, amount } = line
  return {
    ...common,
    itemUid: null,
    supplyUid: supply.uid,
    pieces: 1,
    amountMilli: amountFrom === 'brief' || amount === null ? null : Math.round(amount * 1000),
    amountFrom,
    rule: rule === null ? null : { per: rule.per, amountMilli: Math.round(rule.amount * 1000) },
    containerUid: container?.uid ?? null,
  }
}

/** Lines that differ, by kit area, lane and name. */
export function differencesOf(parent: Loadout, child: Loadout, base: readonly LineState[] | null): readonly Difference[] {
  const [before, after] = [byKey(parent), byKey(child)]
  const was = base === null ? null : new Map(base.map((state) => [state.key, state]))
  const keys = [...new Set([...before.keys(), ...after.keys()])]
  const found = keys.flatMap((key) => {
    const [from, to] = [before.get(key), after.get(key)]
    const fields = differing(from && stateOf(from), to && stateOf(to))
    return fields.length === 0 ? [] : [differenceOf(key, from, to, fields, was)]
  })
  return withLanes(found).sort(inOrder)
}

/** Keys that taking the parent's side would bring up to date: those where the parent moved. */
export const takeable = (differences: readonly Difference[]): readonly string[] =>
  differences.filter(({ moved }) => moved === 'parent' || moved === 'both').map(({ key }) => key)

export interface Taken {
  /** The child's lines after it. */
  readonly child: readonly LineState[]
  readonly base: readonly LineState[]
  /** What has to be done to the child's lines. */
  readonly put: readonly LineState[]
  readonly removed: readonly string[]
}

/** Takes the parent's side of the lines named by key, its absence too, and renews base for them. */
export function take(
  parent: readonly LineState[],
  child: readonly LineState[],
  base: readonly LineState[] | null,
  keys: readonly string[],
): Taken {
  const wanted = new Set(keys)
  const put = parent.filter(({ key }) => wanted.has(key))
  const given = new Set(put.map(({ key }) => key))
  const kept = (states: readonly LineState[]) => states.filter(({ key }) => !wanted.has(key))
  return {
    child: [...kept(child), ...put],
    base: [...kept(base ?? []), ...put],
    put,
    removed: child.map(({ key }) => key).filter((key) => wanted.has(key) && !given.has(key)),
  }
}

const byKey = ({ lines }: Loadout): ReadonlyMap<string, Line> => new Map(lines.map((line) => [keyOf(line), line]))

function differing(a: LineState | undefined, b: LineState | undefined): readonly DifferingField[] {
  if (a === undefined || b === undefined) return a === b ? [] : ['there']
  const fields: DifferingField[] = []
  if (a.pieces !== b.pieces) fields.push('pieces')
  if (a.amountFrom !== b.amountFrom || a.amountMilli !== b.amountMilli) fields.push('amount')
  if (a.rule?.per !== b.rule?.per || a.rule?.amountMilli !== b.rule?.amountMilli) fields.push('rule')
  if (a.carriedBy !== b.carriedBy) fields.push('carried-by')
  return fields
}

function differenceOf(
  key: string,
  from: Line | undefined,
  to: Line | undefined,
  fields: readonly DifferingField[],
  was: ReadonlyMap<string, LineState> | null,
): Difference {
  const line = (from ?? to)!
  const [parent, child] = [from && stateOf(from), to && stateOf(to)]
  const lines = (one: Line | undefined) => (one === undefined ? [] : [weighed(one)])
  return {
    key,
    name: nameOf(line),
    area: areaOf(line),
    lane: line.lane,
    parent: parent ?? null,
    child: child ?? null,
    fields,
    moved: was === null ? 'unknown' : movedOf(parent, child, was.get(key)),
    otherLane: null,
    mass: netOf(nameOf(line), lines(from), lines(to)),
  }
}

/** They differ, so at least one of them is no longer as base has it. */
function movedOf(parent: LineState | undefined, child: LineState | undefined, base: LineState | undefined): Difference['moved'] {
  if (differing(base, parent).length === 0) return 'child'
  return differing(base, child).length === 0 ? 'parent' : 'both'
}

/** An item on one side alone in one lane, and on the other alone in another, only changed lanes. */
function withLanes(differences: readonly Difference[]): Difference[] {
  const alone = new Map<string, Difference[]>()
  for (const one of differences) {
    const uid = (one.parent ?? one.child)!.itemUid
    if (uid !== null && one.fields[0] === 'there') alone.set(uid, [...(alone.get(uid) ?? []), one])
  }
  return differences.map((one) => {
    const pair = alone.get((one.parent ?? one.child)!.itemUid ?? '') ?? []
    const other = pair.find((each) => each !== one)
    const isMove = pair.length === 2 && other !== undefined && pair.includes(one) && (one.parent === null) !== (other.parent === null)
    return isMove ? { ...one, otherLane: other.lane } : one
  })
}

const inOrder = (a: Difference, b: Difference): number =>
  kitAreas.indexOf(a.area) - kitAreas.indexOf(b.area) || compare(a.lane, b.lane) || compare(a.name, b.name) || compare(a.key, b.key)

/** By code points: the same everywhere. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
