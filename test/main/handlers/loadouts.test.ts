import * as fc from 'fast-check'
import { beforeEach, describe, expect, test } from 'vitest'
import type { LineRow } from '../../../src-main/contract.ts'
import { programAt, rowOf, type Tried } from '../program-at.ts'

let tried: Tried
let quilt: number
let mat: number
let socks: number
beforeEach(async () => {
  tried = await programAt()
  quilt = (await tried.does('item.add', { name: 'Quilt', kitArea: 'sleep', weighedMg: 620_000 })).id
  mat = (await tried.does('item.add', { name: 'Mat', kitArea: 'sleep', claimedMg: 410_000 })).id
  socks = (await tried.does('item.add', { name: 'Socks', kitArea: 'clothing', pieces: 2 })).id
})

const linesIn = async (id: number): Promise<readonly LineRow[]> => (await tried.does('loadout.open', { ids: [id] }))[0]!.line
const shape = (lines: readonly LineRow[]) => lines.map(({ itemId, lane, pieces }) => [itemId, lane, pieces])

describe('lines', () => {
  test('the same item on me and in the pack are two lines', async () => {
    const { id } = await tried.does('loadout.add', { name: 'Summer' })
    await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: socks, lane: 'on_me' }, { itemId: socks, lane: 'in_pack', pieces: 2 }] }) // prettier-ignore
    expect(shape(await linesIn(id))).toEqual([[socks, 'on_me', 1], [socks, 'in_pack', 2]]) // prettier-ignore
  })

  test('putting a thing where its line stands: the pieces given, or one more', async () => {
    const { id } = await tried.does('loadout.add', { name: 'Summer' })
    const first = await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: socks, lane: 'in_pack' }] })
    expect((await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: socks, lane: 'in_pack' }] })).ids).toEqual(first.ids)
    expect(shape(await linesIn(id))).toEqual([[socks, 'in_pack', 2]])
    await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: socks, lane: 'in_pack', pieces: 5, carriedBy: 'B' }] })
    expect(await linesIn(id)).toMatchObject([{ pieces: 5, carriedBy: 'B' }])
  })

  test('moving onto a line of the same item adds its pieces there', async () => {
    const { id } = await tried.does('loadout.add', { name: 'Summer' })
    const { ids } = await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: socks, lane: 'on_me' }, { itemId: socks, lane: 'in_pack', pieces: 2 }, { itemId: mat, lane: 'in_pack' }] }) // prettier-ignore
    const reply = await tried.reply('lines.move', { ids: [ids[1]!, ids[2]!], lane: 'on_me' })
    expect(reply).toMatchObject({ ok: true, undo: { facts: { count: 2, loadout: 'Summer', lane: 'on_me' } } })
    expect(shape(await linesIn(id))).toEqual([[socks, 'on_me', 3], [mat, 'on_me', 1]]) // prettier-ignore
    await tried.does('step.undo', {})
    expect(shape(await linesIn(id))).toEqual([[socks, 'on_me', 1], [socks, 'in_pack', 2], [mat, 'in_pack', 1]]) // prettier-ignore
  })

  test('no pieces of an item are lost by any moves', async () => {
    const { id } = await tried.does('loadout.add', { name: 'Summer' })
    await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: socks, lane: 'on_me', pieces: 3 }, { itemId: socks, lane: 'in_pack', pieces: 2 }, { itemId: mat, lane: 'in_pack' }] }) // prettier-ignore
    const move = fc.record({
      picks: fc.array(fc.nat(5), { minLength: 1, maxLength: 3 }),
      lane: fc.constantFrom('on_me', 'in_pack', 'used_up'),
    })
    await fc.assert(
      fc.asyncProperty(move, async ({ picks, lane }) => {
        const lines = await linesIn(id)
        await tried.does('lines.move', { ids: picks.map((pick) => lines[pick % lines.length]!.id), lane: lane })
        const total = (itemId: number, all: readonly LineRow[]) =>
          all.filter((line) => line.itemId === itemId).reduce((sum, { pieces }) => sum + pieces, 0)
        expect([total(socks, await linesIn(id)), total(mat, await linesIn(id))]).toEqual([5, 1])
      }),
      { numRuns: 30 },
    )
  })

  test('one that is gone refuses the whole call', async () => {
    const { id } = await tried.does('loadout.add', { name: 'Summer' })
    const { ids } = await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: mat, lane: 'in_pack' }] })
    expect(await tried.refuses('lines.move', { ids: [...ids, 99], lane: 'on_me' })).toEqual({
      code: 'row.gone',
      facts: { table: 'line', id: 99 },
    })
    expect(await tried.refuses('lines.put', { loadoutId: id, lines: [{ itemId: quilt, lane: 'on_me' }, { itemId: 99, lane: 'on_me' }] })).toMatchObject({ facts: { table: 'item', id: 99 } }) // prettier-ignore
    expect(await tried.refuses('lines.put', { loadoutId: id, lines: [{ lane: 'on_me' }] })).toMatchObject({
      code: 'input.invalid',
      facts: { field: 'lines.0.itemId' },
    })
    expect(shape(await linesIn(id))).toEqual([[mat, 'in_pack', 1]])
  })

  test('a line edited onto another of its key is refused as taken', async () => {
    const { id } = await tried.does('loadout.add', { name: 'Summer' })
    const { ids } = await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: socks, lane: 'on_me' }, { itemId: socks, lane: 'in_pack' }] }) // prettier-ignore
    expect((await tried.refuses('line.edit', { id: ids[0]!, lane: 'in_pack' })).code).toBe('row.taken')
  })
})

describe('supplies', () => {
  test('a typed amount rules until it is cleared, then the brief does', async () => {
    const { id } = await tried.does('loadout.add', { name: 'Summer' })
    const rule = { per: 'day', amountMilli: 800_000 } as const
    const food = await tried.does('supply.add', { name: 'Food', kitArea: 'food', unit: 'g', rule })
    const { ids } = await tried.does('lines.put', { loadoutId: id, lines: [{ supplyId: food.id, lane: 'used_up', rule }] })
    expect(await linesIn(id)).toMatchObject([{ amountFrom: 'brief', amountMilli: null, rule }])
    await tried.does('line.edit', { id: ids[0]!, amountMilli: 2_500_000 })
    expect(await linesIn(id)).toMatchObject([{ amountFrom: 'typed', amountMilli: 2_500_000, rule }])
    await tried.does('line.edit', { id: ids[0]!, amountMilli: null })
    expect(await linesIn(id)).toMatchObject([{ amountFrom: 'brief', amountMilli: null, rule }])
    expect(await tried.does('supply.all', {})).toMatchObject([{ name: 'Food', mgPerUnit: 1000, rule }])
  })

  test('one line for each container', async () => {
    const { id } = await tried.does('loadout.add', { name: 'Summer' })
    const fuel = (await tried.does('supply.add', { name: 'Fuel', kitArea: 'kitchen', unit: 'g' })).id
    const can = (await tried.does('item.add', { name: 'Can', kitArea: 'kitchen', isContainer: true })).id
    const put = (more: object) => tried.does('lines.put', { loadoutId: id, lines: [{ supplyId: fuel, lane: 'used_up', ...more }] })
    const one = await put({ amountMilli: 100_000, containerId: can })
    const two = await put({ amountMilli: 50_000 })
    expect(await put({ amountMilli: 60_000 })).toEqual(two)
    expect(await put({ amountMilli: 90_000, containerId: can })).toEqual(one)
    expect((await linesIn(id)).map(({ amountMilli, pieces }) => [amountMilli, pieces])).toEqual([[90_000, 1], [60_000, 1]]) // prettier-ignore
  })
})

describe('descent', () => {
  const keyOf = async (itemId: number, lane: string) => `${String(rowOf(await tried.does('closet.all', {}), itemId).uid)}:${lane}`

  async function parentAndChild(): Promise<{ parent: number; child: number; at: readonly number[] }> {
    const parent = (await tried.does('loadout.add', { name: 'Summer' })).id
    const { ids } = await tried.does('lines.put', { loadoutId: parent, lines: [{ itemId: quilt, lane: 'in_pack' }, { itemId: socks, lane: 'in_pack', pieces: 2 }] }) // prettier-ignore
    const child = (await tried.does('loadout.add', { name: 'Autumn', fromId: parent, descend: true })).id
    return { parent, child, at: ids }
  }

  test('copies the lines, keeps the link and the parent’s lines as they were', async () => {
    const { parent, child } = await parentAndChild()
    const [opened] = await tried.does('loadout.open', { ids: [child] })
    expect(opened).toMatchObject({ parentId: parent, lines: 2 })
    expect(shape(opened!.line)).toEqual([[quilt, 'in_pack', 1], [socks, 'in_pack', 2]]) // prettier-ignore
    expect(opened!.base).toMatchObject([
      { key: await keyOf(quilt, 'in_pack'), pieces: 1, containerUid: null, supplyUid: null },
      { key: await keyOf(socks, 'in_pack'), pieces: 2 },
    ])
  })

  test('a plain copy has no link', async () => {
    const { parent } = await parentAndChild()
    const { id } = await tried.does('loadout.add', { name: 'Copy', fromId: parent })
    expect((await tried.does('loadout.open', { ids: [id] }))[0]).toMatchObject({ parentId: null, base: null, lines: 2 })
  })

  test('nothing flows by itself; taking applies the lines chosen and renews the base for them alone', async () => {
    const { parent, child, at } = await parentAndChild()
    await tried.does('line.edit', { id: at[1]!, pieces: 4 })
    await tried.does('lines.move', { ids: [at[0]!], lane: 'on_me' })
    await tried.does('lines.put', { loadoutId: parent, lines: [{ itemId: mat, lane: 'in_pack' }] })
    expect(shape(await linesIn(child))).toEqual([[quilt, 'in_pack', 1], [socks, 'in_pack', 2]]) // prettier-ignore
    const keys = [await keyOf(quilt, 'in_pack'), await keyOf(quilt, 'on_me'), await keyOf(mat, 'in_pack'), 'unknown:in_pack']
    expect(await tried.does('loadout.take', { id: child, keys })).toEqual({ count: 3 })
    expect(shape(await linesIn(child))).toEqual([[socks, 'in_pack', 2], [quilt, 'on_me', 1], [mat, 'in_pack', 1]]) // prettier-ignore
    const [opened] = await tried.does('loadout.open', { ids: [child] })
    const base = new Map(opened!.base!.map((line) => [line.key, line.pieces]))
    expect(base).toEqual(new Map([[await keyOf(socks, 'in_pack'), 2], [await keyOf(quilt, 'on_me'), 1], [await keyOf(mat, 'in_pack'), 1]])) // prettier-ignore
    await tried.does('step.undo', {})
    expect(shape(await linesIn(child))).toEqual([[quilt, 'in_pack', 1], [socks, 'in_pack', 2]]) // prettier-ignore
  })

  test('taking leaves the child’s own notes', async () => {
    const { parent, child, at } = await parentAndChild()
    const [line] = await linesIn(child)
    await tried.does('line.edit', { id: line!.id, note: 'mine' })
    await tried.does('line.edit', { id: at[0]!, pieces: 2, note: 'theirs' })
    await tried.does('loadout.take', { id: child, keys: [await keyOf(quilt, 'in_pack')] })
    expect((await linesIn(child))[0]).toMatchObject({ pieces: 2, note: 'mine' })
    expect(parent).not.toBe(child)
  })

  test('no loadout descends from itself, however far round', async () => {
    const { parent, child } = await parentAndChild()
    const grandchild = (await tried.does('loadout.add', { name: 'Winter', fromId: child, descend: true })).id
    for (const parentId of [parent, child, grandchild])
      expect((await tried.refuses('loadout.edit', { id: parent, parentId })).code).toBe('loadout.cycle')
    await tried.does('loadout.edit', { id: grandchild, parentId: parent })
    expect((await tried.does('loadout.open', { ids: [grandchild] }))[0]!.base).toHaveLength(2)
  })

  test('a parent that is deleted, alone or with its trip, leaves the child whole and without the link', async () => {
    const { parent, child } = await parentAndChild()
    const trip = (await tried.does('trip.add', { name: 'Hills' })).id
    await tried.does('loadout.edit', { id: parent, tripId: trip })
    await tried.does('trip.remove', { id: trip })
    expect((await tried.does('loadout.open', { ids: [child] }))[0]).toMatchObject({ parentId: null, base: null, lines: 2 })
    expect(await tried.refuses('loadout.take', { id: child, keys: ['x'] })).toMatchObject({ code: 'input.missing' })
    await tried.does('step.undo', {})
    expect((await tried.does('loadout.open', { ids: [child] }))[0]).toMatchObject({ parentId: parent })
  })
})

describe('trips', () => {
  test('the first loadout of a trip is its chosen one, and a trip has one at most', async () => {
    const trip = (await tried.does('trip.add', { name: 'Hills', startsOn: '2026-10-01' })).id
    const one = (await tried.does('loadout.add', { name: 'A', tripId: trip })).id
    const two = (await tried.does('loadout.add', { name: 'B', tripId: trip })).id
    const chosen = async () => (await tried.does('loadout.all', {})).filter((head) => head.chosen).map(({ id }) => id)
    expect(await chosen()).toEqual([one])
    await tried.does('loadout.edit', { id: two, chosen: true })
    expect(await chosen()).toEqual([two])
    const free = (await tried.does('loadout.add', { name: 'C' })).id
    await tried.does('loadout.edit', { id: free, tripId: trip })
    expect(await chosen()).toEqual([two])
  })

  test('an item counts the trips that are out or back and had it packed from the chosen loadout', async () => {
    const trip = (await tried.does('trip.add', { name: 'Hills' })).id
    const one = (await tried.does('loadout.add', { name: 'A', tripId: trip })).id
    const two = (await tried.does('loadout.add', { name: 'B', tripId: trip })).id
    await tried.does('lines.put', { loadoutId: one, lines: [{ itemId: socks, lane: 'on_me' }, { itemId: socks, lane: 'in_pack' }] }) // prettier-ignore
    await tried.does('lines.put', { loadoutId: two, lines: [{ itemId: mat, lane: 'in_pack' }] })
    const trips = async () => (await tried.does('closet.rows', { ids: [mat, socks] })).trips
    expect(await trips()).toEqual([0, 0])
    const reply = await tried.reply('trip.edit', { id: trip, state: 'out' })
    expect(reply).toMatchObject({ ok: true, closet: { id: [socks], trips: [1] } })
    // The trip is frozen: choosing another loadout afterwards changes nothing of what was packed.
    await tried.does('loadout.edit', { id: two, chosen: true })
    expect(await trips()).toEqual([0, 1])
    await tried.does('step.undo', {})
    expect(await tried.reply('step.undo', {})).toMatchObject({ ok: true, closet: { id: [socks], trips: [0] } })
    await tried.does('step.redo', {})
    expect(await tried.reply('trip.remove', { id: trip })).toMatchObject({ ok: true, closet: { id: [mat, socks], trips: [0, 0] } })
  })

  test('planned lines are those of trips that are planned or out', async () => {
    const plan = async (state: 'planned' | 'out' | 'back') => {
      const tripId = (await tried.does('trip.add', { name: state, state, startsOn: '2026-10-01', endsOn: '2026-10-03' })).id
      const id = (await tried.does('loadout.add', { name: state, tripId })).id
      await tried.does('lines.put', { loadoutId: id, lines: [{ itemId: quilt, lane: 'in_pack' }] })
    }
    for (const state of ['planned', 'out', 'back'] as const) await plan(state)
    expect((await tried.does('loadout.planned', {})).map(({ loadoutName }) => loadoutName)).toEqual(['planned', 'out'])
  })

  test('seasons, walkers and trips are kept, changed and let go; what they hang on is checked', async () => {
    const season = (await tried.does('season.add', { name: 'Winter', kind: 'winter', brief: '{"low":-5}' })).id
    const walker = (await tried.does('walker.add', { name: 'Me', profile: '{"bodyMassG":70000}' })).id
    const trip = (
      await tried.does('trip.add', { name: 'Hills', seasonId: season, walkerId: walker, startsOn: '2026-12-01', zone: 'Europe/Oslo' })
    ).id
    await tried.does('season.edit', { id: season, name: 'Deep winter', brief: null })
    await tried.does('walker.edit', { id: walker, profile: '{}' })
    expect(await tried.does('season.all', {})).toMatchObject([{ name: 'Deep winter', kind: 'winter', brief: null }])
    expect(await tried.does('trip.all', {})).toMatchObject([
      { id: trip, seasonId: season, walkerId: walker, brief: '{}', zone: 'Europe/Oslo', state: 'planned' },
    ])
    expect(await tried.refuses('trip.edit', { id: trip, seasonId: 99 })).toMatchObject({ code: 'row.gone', facts: { table: 'season' } })
    expect(await tried.refuses('trip.edit', { id: trip, brief: 'no json' })).toMatchObject({
      code: 'input.invalid',
      facts: { field: 'brief' },
    })
    await tried.does('season.remove', { id: season })
    await tried.does('walker.remove', { id: walker })
    expect(await tried.does('trip.all', {})).toMatchObject([{ seasonId: null, walkerId: null }])
    await tried.does('step.undo', {})
    await tried.does('step.undo', {})
    expect(await tried.does('trip.all', {})).toMatchObject([{ seasonId: season, walkerId: walker }])
  })
})
