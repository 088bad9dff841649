import { describe, expect, test } from 'vitest'
import type { InputOf } from '../../../src-main/contract.ts'
import { programAt, rowOf, watching } from '../program-at.ts'
import { dumpOf } from '../random-changes.ts'

type Row = InputOf<'bringIn.stage'>['rows'][number]
const newRow = (name: string, more: Partial<NonNullable<Row['item']>> = {}, line: Row['line'] = null): Row => ({
  itemId: null,
  item: { name, kitArea: 'extras', ...more },
  line,
})
const batch = () => crypto.randomUUID()

describe('a sheet', () => {
  test('is nothing until accepted, one step when it is, and one undo takes all of it back', async () => {
    const tried = await programAt()
    const own = (await tried.does('item.add', { name: 'Quilt', kitArea: 'sleep' })).id
    const before = dumpOf(watching(tried))
    const id = batch()
    const rows: Row[] = [
      newRow(
        'Tarp',
        { weighedMg: 301_000, weighedOn: '2026-01-01', duties: [{ duty: 'shelter', shared: false }], tags: ['sheet'] },
        { lane: 'in_pack', pieces: 1 },
      ),
      newRow('Stakes', { claimedMg: 10_500, pieces: 8 }, { lane: 'in_pack', pieces: 8 }),
      { itemId: own, item: null, line: { lane: 'in_pack', pieces: 1 } },
      newRow('Left at home'),
      { itemId: own, item: null, line: { lane: 'in_pack', pieces: 2 } },
    ]
    expect(await tried.does('bringIn.stage', { batch: id, from: 0, rows: rows.slice(0, 3) })).toEqual({ staged: 3 })
    expect(await tried.does('bringIn.stage', { batch: id, from: 3, rows: rows.slice(3) })).toEqual({ staged: 5 })
    expect(dumpOf(watching(tried))).toBe(before)
    const reply = await tried.reply('bringIn.accept', {
      batch: id,
      rows: 5,
      loadout: { name: 'From the sheet', seasonId: null, tripId: null },
    })
    expect(reply).toMatchObject({
      ok: true,
      value: { items: 3, lines: 4 },
      undo: { code: 'bringIn.accept', facts: { count: 3, name: 'From the sheet' } },
    })
    const all = await tried.does('closet.all', {})
    expect(all.name).toEqual(['Quilt', 'Tarp', 'Stakes', 'Left at home'])
    expect(rowOf(all, 2)).toMatchObject({
      massMg: 301_000,
      massFrom: 'measured',
      duties: 'shelter',
      tags: 'sheet',
      weighedOn: '2026-01-01',
    })
    const [head] = await tried.does('loadout.all', {})
    const [opened] = await tried.does('loadout.open', { ids: [head!.id] })
    expect(opened!.line.map(({ itemId, pieces }) => [itemId, pieces])).toEqual([[2, 1], [3, 8], [own, 3]]) // prettier-ignore
    await tried.does('step.undo', {})
    expect(dumpOf(watching(tried))).toBe(before)
  })

  test('brings sets by their names and links with their items; undo takes the sets back too', async () => {
    const tried = await programAt()
    const pot = (await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })).id
    await tried.does('set.add', { name: 'Cook set', itemIds: [pot] })
    const before = dumpOf(watching(tried))
    const id = batch()
    const rows: Row[] = [
      { ...newRow('Stove'), set: 'Cook set', links: [{ url: 'https://example.org/stove', label: '' }] },
      { ...newRow('Fly'), set: 'Tent' },
      { ...newRow('Inner'), set: 'Tent' },
    ]
    await tried.does('bringIn.stage', { batch: id, from: 0, rows })
    await tried.does('bringIn.accept', { batch: id, rows: 3, loadout: null })
    const sets = await tried.does('set.all', {})
    expect(sets.map(({ name, itemIds }) => [name, itemIds.length])).toEqual([['Cook set', 2], ['Tent', 2]]) // prettier-ignore
    const stove = await tried.does('item.open', { id: sets[0]!.itemIds[1]! })
    expect(stove.links).toMatchObject([{ url: 'https://example.org/stove' }])
    await tried.does('step.undo', {})
    expect(dumpOf(watching(tried))).toBe(before)
  })

  test('that did not arrive whole is refused', async () => {
    const tried = await programAt()
    const id = batch()
    await tried.does('bringIn.stage', { batch: id, from: 0, rows: [newRow('A')] })
    expect(await tried.refuses('bringIn.accept', { batch: id, rows: 2, loadout: null })).toEqual({
      code: 'input.missing',
      facts: { field: 'rows', staged: 1, sent: 2 },
    })
    expect((await tried.does('closet.all', {})).id).toEqual([])
  })

  test('sent twice in part is staged once', async () => {
    const tried = await programAt()
    const id = batch()
    await tried.does('bringIn.stage', { batch: id, from: 0, rows: [newRow('A'), newRow('B')] })
    expect(await tried.does('bringIn.stage', { batch: id, from: 1, rows: [newRow('C')] })).toEqual({ staged: 2 })
    await tried.does('bringIn.accept', { batch: id, rows: 2, loadout: null })
    expect((await tried.does('closet.all', {})).name).toEqual(['A', 'C'])
  })

  test.each<[string, Row[], string, object]>([
    ['a row that is neither new nor owned', [newRow('A'), { itemId: null, item: null, line: null }], 'input.invalid', { row: 1 }],
    ['an item that is gone', [newRow('A'), { itemId: 99, item: null, line: null }], 'row.gone', { table: 'item', id: 99, row: 1 }],
    ['an unknown duty', [newRow('A'), newRow('B', { duties: [{ duty: 'nonsense', shared: false }] })], 'input.invalid', { field: 'rows' }],
    ['a mass of nothing', [newRow('A'), newRow('B', { weighedMg: 0 })], 'weighing.no-reading', { row: 1 }],
  ])('with %s is refused whole, and stays staged', async (_name, rows, code, facts) => {
    const tried = await programAt()
    const id = batch()
    await tried.does('bringIn.stage', { batch: id, from: 0, rows })
    expect(
      await tried.refuses('bringIn.accept', { batch: id, rows: 2, loadout: { name: 'L', seasonId: null, tripId: null } }),
    ).toMatchObject({ code, facts })
    expect((await tried.does('closet.all', {})).id).toEqual([])
    expect(await tried.does('loadout.all', {})).toEqual([])
    expect(await tried.does('bringIn.stage', { batch: id, from: 0, rows: [] })).toEqual({ staged: 2 })
  })

  test('that was dropped, or left staged when the program ended, is gone', async () => {
    const tried = await programAt()
    const [one, two] = [batch(), batch()]
    for (const id of [one, two]) await tried.does('bringIn.stage', { batch: id, from: 0, rows: [newRow('A')] })
    await tried.does('bringIn.drop', { batch: one })
    await tried.reopen()
    expect(watching(tried).prepare('SELECT count(*) FROM stage').pluck().get()).toBe(0)
  })

  test('of 20,000 rows comes in, and goes again by one undo', async () => {
    const tried = await programAt()
    const id = batch()
    for (let from = 0; from < 20_000; from += 500) {
      const rows = Array.from({ length: 500 }, (_, n) =>
        newRow(`Thing ${from + n}`, { weighedMg: 1000 + n, tags: ['sheet'] }, { lane: 'in_pack', pieces: 1 }),
      )
      await tried.does('bringIn.stage', { batch: id, from, rows })
    }
    const loadout = { name: 'Everything', seasonId: null, tripId: null }
    expect(await tried.does('bringIn.accept', { batch: id, rows: 20_000, loadout })).toMatchObject({ items: 20_000, lines: 20_000 })
    expect((await tried.does('closet.all', {})).massMg.reduce<number>((sum, mg) => sum + (mg ?? 0), 0)).toBe(
      40 * (500 * 1000 + (499 * 500) / 2),
    )
    await tried.does('step.undo', {})
    expect((await tried.does('closet.all', {})).id).toEqual([])
    await tried.does('step.redo', {})
    expect((await tried.does('closet.all', {})).id).toHaveLength(20_000)
  }, 240_000)
})
