import Database from 'better-sqlite3'
import { kitAreas, lanes, statuses, duties, traits } from '../../src-domain/closet/vocabulary.ts'
import { comforts, sleeps, uses } from '../../src-domain/trips/record.ts'
import type { Call, Contract, InputOf } from '../../src-main/contract.ts'
import { undoableTables, type UndoableTable } from '../../src-main/store/undoable.ts'

/** Random changes through the contract: one maker for each call of kind `change`, so that a new one without a maker does not compile. */
type ChangeCall = { [K in Call]: Contract[K]['kind'] extends 'change' ? K : never }[Call]

export interface Change {
  readonly name: ChangeCall
  readonly input: unknown
}

/** The same numbers for the same seed (mulberry32, a public-domain generator). */
export class Random {
  #state: number
  constructor(seed: number) {
    this.#state = seed >>> 0
  }
  real(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0
    let t = this.#state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  below(n: number): number {
    return Math.floor(this.real() * n)
  }
  of<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!
  }
  some<T>(list: readonly T[], most: number): T[] {
    return Array.from({ length: 1 + this.below(most) }, () => this.of(list))
  }
  yes(): boolean {
    return this.real() < 0.5
  }
}

export type Ids = Readonly<Record<UndoableTable, readonly number[]>> & {
  /** Loadouts that descend, and the keys that their lines and those of others have. */
  readonly child: readonly number[]
  readonly keys: readonly string[]
  /** Trips that have a record. */
  readonly frozen: readonly number[]
  /** Lines with their loadouts. */
  readonly ofLine: readonly (readonly [line: number, loadout: number])[]
}

const keysSql = `SELECT ifnull(item.uid, supply.uid) || ':' || line.lane || ifnull(':' || can.uid, '') FROM line LEFT JOIN item ON item.id = line.item_id
  LEFT JOIN supply ON supply.id = line.supply_id LEFT JOIN item can ON can.id = line.container_id ORDER BY line.id`

export function idsIn(raw: Database.Database): Ids {
  const list = (sql: string): unknown => raw.prepare(sql).pluck().all()
  const tables: Record<string, unknown> = Object.fromEntries(
    undoableTables.map((table) => [table, list(`SELECT id FROM ${table} ORDER BY id`)]),
  )
  return {
    ...tables,
    child: list('SELECT id FROM loadout WHERE parent_id IS NOT NULL ORDER BY id'),
    keys: list(keysSql),
    frozen: list('SELECT trip_id FROM record ORDER BY id'),
    ofLine: raw.prepare('SELECT id, loadout_id FROM line ORDER BY id').raw().all(),
  } as unknown as Ids
}

/** Every undoable row as JSON text, REALs to their last digit: equal dumps are equal stores. */
export function dumpOf(raw: Database.Database): string {
  return JSON.stringify(undoableTables.map((table) => [table, raw.prepare(`SELECT * FROM ${table} ORDER BY id`).all()]))
}

export function readOnly<T>(file: string, work: (raw: Database.Database) => T): T {
  const raw = new Database(file, { readonly: true })
  try {
    return work(raw)
  } finally {
    raw.close()
  }
}

const words = ['Quilt', 'Pot', 'Tarp', 'Zelt ä', '羽毛', "O'Hare", '"quoted"', '-- drop', 'a\u0000b', '🏔️', ' \t x']
const word = (r: Random) => `${r.of(words)} ${r.below(30)}`
const days = ['2024-02-29', '2025-06-01', '2026-09-20']
const mg = (r: Random) => r.below(3_000_000)
const duty = (r: Random) => r.of(duties).code
const trait = (r: Random) => ({
  code: r.of(traits).code,
  number: r.yes() ? null : (r.real() - 0.5) * 10 ** r.below(12),
  origin: 'claimed' as const,
  text: word(r),
})
const needs = (r: Random) =>
  [...new Set(r.some(duties, 3).map(({ code }) => code))].map((code) => ({
    duty: code,
    pieces: 1 + r.below(4),
    kind: r.of(['shared', 'reserved'] as const),
  }))
const brief = (r: Random) => JSON.stringify({ note: word(r), low: r.real() })
const rule = (r: Random) => (r.yes() ? null : { per: r.of(['day', 'night', 'trip'] as const), amountMilli: r.below(500_000) })

const newItem = (r: Random): InputOf<'item.add'> => ({
  name: word(r),
  kitArea: r.of(kitAreas),
  pieces: 1 + r.below(8),
  claimedMg: r.yes() ? mg(r) : null,
  duties: r.some(duties, 3).map(({ code }) => ({ duty: code, shared: r.yes() })),
  tags: r.some(words, 3).map((text) => `${text}.`),
  ...(r.yes() ? { weighedMg: mg(r) } : {}),
})

const weighing = (r: Random, itemId: number, ids: Ids): InputOf<'item.weigh'> => ({
  itemId,
  scaleId: ids.scale.length > 0 && r.yes() ? r.of(ids.scale) : null,
  weighedOn: r.of(days),
  readingsMg: r.some([100_000, 101_000, 250_500], 4),
  tareMg: r.below(1000),
  tareKind: r.of(['none', 'button', 'reading'] as const),
  pieces: 1 + r.below(8),
  damp: r.yes(),
  dirty: false,
  incomplete: false,
  entered: 'typed',
})

type Maker<K extends ChangeCall> = (r: Random, ids: Ids) => InputOf<K> | null
const has = <K extends ChangeCall>(table: UndoableTable, make: (r: Random, id: number, ids: Ids) => InputOf<K> | null): Maker<K> =>
  (r, ids) => (ids[table].length === 0 ? null : make(r, r.of(ids[table]), ids)) // prettier-ignore
const orNull = (r: Random, list: readonly number[]) => (list.length === 0 || r.yes() ? null : r.of(list))

const line = (r: Random, ids: Ids) => ({
  ...(ids.supply.length > 0 && r.below(4) === 0 ? { supplyId: r.of(ids.supply), amountMilli: r.below(9000) } : { itemId: r.of(ids.item) }),
  lane: r.of(lanes),
  ...(r.yes() ? { pieces: 1 + r.below(4) } : {}),
})

/** Of trips that have a record; now and then of one that has none, to be refused. */
const frozen =
  <K extends ChangeCall>(make: (r: Random, tripId: number, ids: Ids) => InputOf<K> | null): Maker<K> =>
  (r, ids) => {
    const from = ids.frozen.length > 0 && r.below(8) > 0 ? ids.frozen : ids.trip
    return from.length === 0 ? null : make(r, r.of(from), ids)
  }

function doorLines(r: Random, ids: Ids) {
  const loadoutId = r.of(ids.ofLine)[1]
  const own = ids.ofLine.filter(([, of]) => of === loadoutId).map(([lineId]) => lineId)
  return { loadoutId, lineIds: r.some(own, 5) }
}

const said = (r: Random, ids: Ids) => ({
  use: r.of(uses),
  ...r.of([
    { verdict: '' },
    { verdict: 'keep', onlyWhen: word(r) },
    { verdict: 'adjust', change: 'mend' },
    { verdict: 'adjust', change: 'swap', toItemId: orNull(r, ids.item) },
    { verdict: 'adjust', change: 'add', wish: { name: word(r), kitArea: r.of(kitAreas) } },
    { verdict: 'drop', change: 'weight' },
  ] as const),
  note: word(r),
})

export const makers: { readonly [K in ChangeCall]: Maker<K> } = {
  'item.add': newItem,
  'item.edit': has('item', (r, id, ids) => ({
    id,
    name: word(r),
    note: word(r),
    status: r.of(statuses),
    setId: orNull(r, ids.kit_set),
    isContainer: r.yes(),
  })),
  'item.duplicate': has('item', (_r, id) => ({ id })),
  'item.duties': has('item', (r, id) => ({ id, duties: r.yes() ? [] : [{ duty: duty(r), shared: r.yes() }] })),
  'item.needs': has('item', (r, id) => ({ id, needs: needs(r) })),
  'item.labels': has('item', (r, id) => ({ id, kind: r.of(['tag', 'material', 'season'] as const), texts: [r.of(words)] })),
  'item.links': has('item', (r, id) => ({ id, links: [{ url: 'https://example.org/', label: word(r) }] })),
  'item.trait': has('item', (r, id) => ({ id, trait: trait(r) })),
  'item.untrait': has('item', (r, id) => ({ id, code: r.of(traits).code })),
  'item.counter': has('item', (r, id) => ({ id, code: 'nights', amount: r.yes() ? null : r.real() * 1000, note: '', notedOn: null })),
  'item.weigh': has('item', (r, id, ids) => weighing(r, id, ids)),
  'items.weigh': has('item', (r, _id, ids) => ({ weighings: r.some(ids.item, 3).map((one) => weighing(r, one, ids)) })),
  'items.edit': has('item', (r, _id, ids) => ({
    ids: r.some(ids.item, 5),
    kitArea: r.of(kitAreas),
    status: r.of(statuses),
    addTags: [r.of(words)],
    removeTags: [r.of(words)],
    addDuties: [duty(r)],
    removeDuties: [duty(r)],
  })),
  'items.remove': has('item', (r, _id, ids) => ({ ids: r.some(ids.item, 2) })),
  'photo.add': () => null, // needs stored files: bench.test.ts
  'photo.remove': has('photo', (_r, id) => ({ id })),
  'photo.order': () => null,
  'weighing.remove': has('weighing', (_r, id) => ({ id })),
  'weighing.mark': has('weighing', (r, id) => ({ id, damp: r.yes(), dirty: r.yes(), incomplete: r.yes(), note: word(r) })),
  'set.add': has('item', (r, _id, ids) => ({ name: word(r), itemIds: r.some(ids.item, 3) })),
  'set.edit': has('kit_set', (r, id) => ({ id, name: word(r) })),
  'set.members': has('item', (r, _id, ids) => ({ id: orNull(r, ids.kit_set), itemIds: r.some(ids.item, 3) })),
  'set.dissolve': has('kit_set', (_r, id) => ({ id })),
  'scale.add': (r) => ({ name: word(r), stepMg: 100, capacityMg: 5_000_000, kind: 'typed' }),
  'scale.edit': has('scale', (r, id) => ({ id, name: word(r), archived: r.yes() })),
  'scale.check': has('scale', (r, scaleId) => ({
    scaleId,
    readOn: r.of(days),
    nominalMg: 1_000_000,
    mpeMg: 50,
    massClass: 'M1',
    readingsMg: [999_000 + r.below(2000)],
  })),
  'scale.uncheck': has('check_reading', (_r, id) => ({ id })),
  'supply.add': (r) => ({ name: word(r), kitArea: 'food', unit: r.of(['g', 'ml', 'piece'] as const), rule: rule(r) }),
  'supply.edit': has('supply', (r, id) => ({ id, name: word(r), rule: rule(r), archived: r.yes() })),
  'supply.trait': has('supply', (r, id) => ({ id, trait: trait(r) })),
  'supply.needs': has('supply', (r, id) => ({ id, needs: needs(r) })),
  'word.set': (r) => ({ kind: 'duty', code: duty(r), label: word(r), hidden: r.yes() }),
  'word.add': (r) => ({ kind: r.of(['duty', 'trait'] as const), label: word(r), area: r.of(kitAreas) }),
  'season.add': (r) => ({ name: word(r), kind: 'winter', brief: brief(r) }),
  'season.edit': has('season', (r, id) => ({ id, name: word(r), brief: r.yes() ? null : brief(r) })),
  'season.remove': has('season', (_r, id) => ({ id })),
  'walker.add': (r) => ({ name: word(r), profile: brief(r) }),
  'walker.edit': has('walker', (r, id) => ({ id, profile: brief(r) })),
  'walker.remove': has('walker', (_r, id) => ({ id })),
  'trip.add': (r, ids) => ({ name: word(r), seasonId: orNull(r, ids.season), walkerId: orNull(r, ids.walker), startsOn: r.of(days) }),
  'trip.edit': has('trip', (r, id, ids) => ({
    id,
    state: r.of(['planned', 'out', 'back'] as const),
    seasonId: orNull(r, ids.season),
    brief: brief(r),
  })),
  'trip.remove': has('trip', (_r, id) => ({ id })),
  'loadout.add': (r, ids) => ({
    name: word(r),
    seasonId: orNull(r, ids.season),
    tripId: orNull(r, ids.trip),
    ...(ids.loadout.length > 0 && r.yes() ? { fromId: r.of(ids.loadout), descend: r.yes() } : {}),
  }),
  'loadout.edit': has('loadout', (r, id, ids) => ({
    id,
    name: word(r),
    parentId: orNull(r, ids.loadout),
    tripId: orNull(r, ids.trip),
    chosen: r.yes(),
  })),
  'loadout.remove': has('loadout', (_r, id) => ({ id })),
  'lines.put': has('loadout', (r, loadoutId, ids) =>
    ids.item.length === 0 ? null : { loadoutId, lines: Array.from({ length: 1 + r.below(5) }, () => line(r, ids)) },
  ),
  'choice.take': has('loadout', (r, loadoutId, ids) =>
    ids.item.length === 0
      ? null
      : {
          loadoutId,
          put: [{ itemId: r.of(ids.item), lane: r.of(lanes), pieces: 1 + r.below(4) }],
          removeIds: ids.line.length === 0 ? [] : r.some(ids.line, 2),
        },
  ),
  'lines.move': has('line', (r, _id, ids) => ({ ids: r.some(ids.line, 4), lane: r.of(lanes) })),
  'lines.remove': has('line', (r, _id, ids) => ({ ids: r.some(ids.line, 3) })),
  'lines.copy': has('line', (r, _id, ids) => ({ ids: r.some(ids.line, 5), toLoadoutId: r.of(ids.loadout) })),
  'line.edit': has('line', (r, id) => ({ id, pieces: 1 + r.below(9), carriedBy: word(r), amountMilli: r.yes() ? null : r.below(9000) })),
  'loadout.take': (r, ids) => (ids.child.length === 0 || ids.keys.length === 0 ? null : { id: r.of(ids.child), keys: r.some(ids.keys, 8) }),
  'trip.close': has('loadout', (r, loadoutId, ids) => (ids.trip.length === 0 ? null : { id: r.of(ids.trip), loadoutId })),
  'door.tick': (r, ids) => (ids.ofLine.length === 0 ? null : { ...doorLines(r, ids), state: r.of(['open', 'packed', 'missing'] as const) }),
  'door.place': has('line', (r, lineId) => ({ lineId, last: r.yes() ? null : r.yes(), ...(r.yes() ? { note: word(r) } : {}) })),
  'door.add': has('loadout', (r, loadoutId) => ({ loadoutId, name: word(r) })),
  'door.own': has('door_line', (r, id) => ({ id, state: r.of(['open', 'packed'] as const) })),
  'door.remove': has('door_line', (_r, id) => ({ id })),
  'door.weigh': has('loadout', (r, loadoutId, ids) => ({
    loadoutId,
    readingMg: r.yes() ? mg(r) : null,
    scaleId: orNull(r, ids.scale),
    withLast: r.yes(),
  })),
  'packed.correct': has('packed', (r, id) => ({ id, pieces: 1 + r.below(5), massMg: r.yes() ? null : mg(r), note: word(r) })),
  'packed.add': frozen((r, tripId, ids) => ({
    tripId,
    lane: r.of(lanes),
    ...(ids.item.length > 0 && r.yes() ? { itemId: r.of(ids.item) } : { name: word(r) }),
  })),
  'packed.remove': has('packed', (_r, id) => ({ id })),
  'debrief.trip': frozen((r, tripId) => ({
    tripId,
    lowC: r.yes() ? null : r.real() * 40 - 30,
    rain: r.of(['', 'none', 'wet'] as const),
    foodBeforeMg: mg(r),
    note: word(r),
  })),
  'debrief.keep': frozen((r, tripId) => ({ tripId, kept: r.yes() })),
  'debrief.line': has('packed', (r, packedId, ids) => ({ packedId, ...said(r, ids) })),
  'debrief.rest': frozen((r, tripId) => ({ tripId, use: r.of(uses), verdict: r.of(['', 'keep'] as const) })),
  'debrief.missed': frozen((r, tripId, ids) => ({ tripId, itemId: orNull(r, ids.item), name: word(r) })),
  'debrief.missing': has('debrief_line', (r, id, ids) => ({ id, ...said(r, ids) })),
  'debrief.unsay': has('debrief_line', (_r, id) => ({ id })),
  'debrief.leg': frozen((r, tripId) => ({
    tripId,
    leg: r.below(4),
    day: 1 + r.below(3),
    movingMin: r.real() * 600,
    drunkMl: r.below(3000),
  })),
  'debrief.night': frozen((r, tripId) => ({ tripId, night: 1 + r.below(3), lowC: r.real() * 20 - 10, slept: r.of(sleeps) })),
  'debrief.day': frozen((r, tripId) => ({ tripId, day: 1 + r.below(3), shoulders: r.of(comforts), hungry: r.of(['', 'yes'] as const) })),
  'debrief.burn': frozen((r, tripId, ids) => ({
    tripId,
    ...(ids.burn_log.length > 0 && r.yes() ? { id: r.of(ids.burn_log) } : {}),
    packedId: orNull(r, ids.packed),
    beforeMg: mg(r),
    heatedMl: r.below(9000),
  })),
  'debrief.unlog': has('leg_log', (_r, id) => ({ kind: 'leg', id })),
  'debrief.leaveOut': has('night_log', (r, id) => ({ kind: 'night', id, leftOut: r.yes() })),
  'debrief.photo': () => null, // needs stored files: record.test.ts
  'debrief.unphoto': has('trip_photo', (_r, id) => ({ id })),
  'trial.ask': has('item', (r, itemId) => ({ itemId, text: word(r) })),
  'trial.edit': has('trial_question', (r, id) => ({ id, settled: r.yes() })),
  'trial.remove': has('trial_question', (_r, id) => ({ id })),
  'trial.answer': has('trial_question', (r, id, ids) =>
    ids.frozen.length === 0 ? null : { id, tripId: r.of(ids.frozen), text: r.yes() ? '' : word(r) },
  ),
  'past.add': (r, ids) => ({
    trips: [
      {
        name: word(r),
        month: r.of(['2019-07', '2024-02']),
        nights: r.yes() ? null : r.below(9),
        seasonId: orNull(r, ids.season),
        loadoutId: orNull(r, ids.loadout),
        stayedIds: ids.item.length > 0 ? r.some(ids.item, 2) : [],
        itemIds: ids.item.length > 0 ? r.some(ids.item, 4) : [],
        names: [word(r)],
      },
    ],
  }),
  'bringIn.accept': () => null, // needs staged rows: bring-in.test.ts
  'view.save': (r) => ({ room: 'closet', name: r.of(['a', 'b']), state: brief(r) }),
  'view.remove': has('saved_view', (_r, id) => ({ id })),
}

const names = Object.keys(makers) as ChangeCall[]

/** A change that fits what is there; every store has one, since an item can always be added. */
export function randomChange(r: Random, ids: Ids): Change {
  const name = r.of(names)
  const input = makers[name](r, ids)
  return input === null ? { name: 'item.add', input: newItem(r) } : { name, input }
}
