import { describe, expect, test } from 'vitest'
import { oneReading, programAt, rowOf, type Tried } from '../program-at.ts'

const pot = { name: 'Pot', kitArea: 'kitchen' } as const
const row = async (tried: Tried, id: number) => rowOf(await tried.does('closet.all', {}), id)

describe('adding', () => {
  test('a name and a kit area are enough', async () => {
    const tried = await programAt()
    const { id } = await tried.does('item.add', pot)
    expect(await row(tried, id)).toMatchObject({
      name: 'Pot',
      kitArea: 'kitchen',
      pieces: 1,
      status: 'owned',
      massMg: null,
      massFrom: 'none',
      usualLane: 'in_pack',
    })
  })

  test('everything that can be given is kept', async () => {
    const tried = await programAt()
    const given = {
      name: 'Bag',
      kitArea: 'sleep',
      maker: 'Own',
      pieces: 2,
      status: 'lent',
      statusSince: '2026-01-02',
      lentTo: 'A. Friend',
      claimedMg: 900_000,
      claimedBy: 'label',
      estimatedMg: 950_000,
      usualLane: 'in_pack',
      isContainer: true,
      serial: 'S1',
      came: 'gift',
      cameOn: '2020-02-29',
      cameFrom: 'aunt',
      priceMinor: 12_000,
      currency: 'EUR',
      soldMinor: 0,
      note: 'n',
      lifeNote: 'l',
      lastOutOn: '2026-05-01',
      archived: true,
    } as const
    const { id } = await tried.does('item.add', {
      ...given,
      duties: [{ duty: 'top-insulation', shared: true }],
      tags: ['warm', 'old'],
      materials: ['down'],
    })
    const detail = await tried.does('item.open', { id })
    expect(detail).toMatchObject({
      ...given,
      duties: [{ duty: 'top-insulation', shared: true }],
      tags: ['warm', 'old'],
      materials: ['down'],
    })
    expect(await row(tried, id)).toMatchObject({
      duties: 'top-insulation*',
      tags: 'warm\nold',
      massFrom: 'claimed',
      massMg: 900_000,
      archived: true,
    })
  })

  test('a mass typed with it is a weighing of that day on an unknown scale', async () => {
    const tried = await programAt()
    const { id } = await tried.does('item.add', { ...pot, weighedMg: 96_000, weighedOn: '2026-08-01', claimedMg: 90_000 })
    // One reading of a 1 g scale, zero shown, s 0.5 g: √(1/12 + 0.25) = 0.57735 g; gain ±0.3 %: 0.003/√3 × 96 g = 0.16628 g (JCGM 100, provisions.md 9.1).
    const kept = await row(tried, id)
    expect(kept).toMatchObject({ massMg: 96_000, massFrom: 'measured', weighedOn: '2026-08-01', scaleUid: null })
    expect(kept.uOwnMg).toBeCloseTo(577.35, 1)
    expect(kept.uGainMg).toBeCloseTo(166.28, 1)
    expect((await tried.does('item.open', { id })).weighings).toMatchObject([{ readingsMg: [96_000], entered: 'typed', pieces: 1 }])
    expect((await tried.refuses('item.add', { ...pot, weighedMg: 0 })).code).toBe('weighing.no-reading')
  })

  test('what it refers to must be there', async () => {
    const tried = await programAt()
    expect(await tried.refuses('item.add', { ...pot, setId: 9 })).toEqual({ code: 'row.gone', facts: { table: 'kit_set', id: 9 } })
    expect(await tried.refuses('item.add', { ...pot, duties: [{ duty: 'no-such', shared: false }] })).toMatchObject({
      code: 'input.invalid',
      facts: { field: 'duties' },
    })
    expect((await tried.does('closet.all', {})).id).toEqual([])
  })

  test('a name that SQLite would read as empty is refused, not a bug', async () => {
    const tried = await programAt()
    expect((await tried.refuses('item.add', { name: '\u0000x', kitArea: 'sleep' })).code).toBe('input.invalid')
    expect(tried.errors).toEqual([])
  })
})

describe('editing', () => {
  test('a new status without a day holds since today; with a day since then; the same status changes nothing', async () => {
    const tried = await programAt()
    const { id } = await tried.does('item.add', pot)
    await tried.does('item.edit', { id, status: 'lent', lentTo: 'B' })
    expect(await row(tried, id)).toMatchObject({ status: 'lent', lentTo: 'B', statusSince: '2026-09-20' })
    await tried.does('item.edit', { id, status: 'sold', statusSince: '2026-01-01' })
    expect(await row(tried, id)).toMatchObject({ statusSince: '2026-01-01' })
    await tried.does('item.edit', { id, status: 'sold' })
    expect(await row(tried, id)).toMatchObject({ statusSince: '2026-01-01' })
  })

  test('what is left out stays, null clears', async () => {
    const tried = await programAt()
    const { id } = await tried.does('item.add', { ...pot, claimedMg: 5, note: 'n' })
    await tried.does('item.edit', { id, claimedMg: null })
    expect(await row(tried, id)).toMatchObject({ claimedMg: null, note: 'n', massFrom: 'none' })
  })

  test('one that is gone is refused by every call', async () => {
    const tried = await programAt()
    const gone = { code: 'row.gone', facts: { table: 'item', id: 7 } }
    expect(await tried.refuses('item.edit', { id: 7, name: 'x' })).toEqual(gone)
    expect(await tried.refuses('item.open', { id: 7 })).toEqual(gone)
    expect(await tried.refuses('item.duties', { id: 7, duties: [] })).toEqual(gone)
    expect(await tried.refuses('item.weigh', oneReading(7, 1))).toEqual(gone)
    expect(await tried.refuses('items.edit', { ids: [7], archived: true })).toEqual(gone)
    expect(await tried.refuses('items.remove', { ids: [7] })).toEqual(gone)
    expect(await tried.refuses('set.add', { name: 'S', itemIds: [7] })).toEqual(gone)
  })

  test('duties, needs, labels, links, traits and counters become exactly what is given', async () => {
    const tried = await programAt()
    const { id } = await tried.does('item.add', { ...pot, duties: [{ duty: 'pot', shared: false }] })
    await tried.does('item.duties', { id, duties: [{ duty: 'stove', shared: true }, { duty: 'pot', shared: true }] }) // prettier-ignore
    await tried.does('item.needs', { id, needs: [{ duty: 'windscreen', pieces: 1, kind: 'shared' }, { duty: 'stake', pieces: 3, kind: 'reserved' }] }) // prettier-ignore
    await tried.does('item.needs', { id, needs: [{ duty: 'stake', pieces: 2, kind: 'reserved' }] })
    await tried.does('item.labels', { id, kind: 'season', texts: ['winter', 'winter'] })
    await tried.does('item.links', { id, links: [{ url: 'https://example.org/a', label: 'a' }] })
    await tried.does('item.trait', {
      id,
      trait: { code: 'efficiency', number: 0.1 + 0.2, origin: 'measured', typed: '30', typedUnit: '%' },
    })
    await tried.does('item.trait', { id, trait: { code: 'valve', number: null, text: 'yes', origin: 'claimed' } })
    await tried.does('item.untrait', { id, code: 'valve' })
    await tried.does('item.counter', { id, code: 'nights', amount: 40, note: 'about', notedOn: null })
    await tried.does('item.counter', { id, code: 'nights', amount: 41.5, note: '', notedOn: '2026-09-01' })
    const detail = await tried.does('item.open', { id })
    expect(detail.duties).toEqual([{ duty: 'pot', shared: true }, { duty: 'stove', shared: true }]) // prettier-ignore
    expect(detail.needs).toEqual([{ duty: 'stake', pieces: 2, kind: 'reserved' }])
    expect(detail.seasons).toEqual(['winter'])
    expect(detail.links).toEqual([{ url: 'https://example.org/a', label: 'a' }])
    expect(detail.traits).toMatchObject([
      { code: 'efficiency', number: 0.30000000000000004, typed: '30', typedUnit: '%', origin: 'measured' },
    ])
    expect(detail.counters).toEqual([{ code: 'nights', amount: 41.5, origin: 'estimated', note: '', notedOn: '2026-09-01' }])
    expect(await tried.refuses('item.untrait', { id, code: 'valve' })).toMatchObject({ code: 'row.gone' })
    await tried.does('item.counter', { id, code: 'nights', amount: null, note: '', notedOn: null })
    expect((await tried.does('item.open', { id })).counters).toEqual([])
    expect(await tried.does('closet.traits', {})).toMatchObject({
      traits: { itemId: [id], code: ['efficiency'] },
      needs: { itemId: [id], duty: ['stake'], pieces: [2] },
    })
  })

  test('its history tells the steps that touched it and no others', async () => {
    const tried = await programAt()
    const { id } = await tried.does('item.add', pot)
    await tried.does('item.add', { name: 'Pan', kitArea: 'kitchen' })
    await tried.does('item.labels', { id, kind: 'tag', texts: ['a'] })
    await tried.does('item.weigh', oneReading(id, 96))
    await tried.does('step.undo', {})
    expect((await tried.does('item.open', { id })).history.map(({ code }) => code)).toEqual(['item.labels', 'item.add'])
  })
})

describe('many at once', () => {
  test('fields, tags and duties of many items are one step', async () => {
    const tried = await programAt()
    const ids: number[] = []
    for (const tags of [['a'], ['a', 'b'], []]) ids.push((await tried.does('item.add', { ...pot, tags })).id)
    await tried.does('items.edit', {
      ids,
      kitArea: 'extras',
      status: 'retired',
      addTags: ['b', 'c'],
      removeTags: ['a'],
      addDuties: ['pot'],
      removeDuties: ['stove'],
    })
    const all = await tried.does('closet.all', {})
    expect(all.tags).toEqual(['b\nc', 'b\nc', 'b\nc'])
    expect(all.duties).toEqual(['pot', 'pot', 'pot'])
    expect(all.statusSince).toEqual(['2026-09-20', '2026-09-20', '2026-09-20'])
    expect(all.kitArea).toEqual(['extras', 'extras', 'extras'])
    await tried.does('step.undo', {})
    expect((await tried.does('closet.all', {})).tags).toEqual(['a', 'a\nb', ''])
  })

  test('more items than a statement has variables', async () => {
    const tried = await programAt()
    const batch = crypto.randomUUID()
    const rows = Array.from({ length: 500 }, (_, n) => ({
      itemId: null,
      item: { name: `Item ${n}`, kitArea: 'extras' as const },
      line: null,
    }))
    for (let from = 0; from < 40_000; from += 500) await tried.does('bringIn.stage', { batch, from, rows })
    await tried.does('bringIn.accept', { batch, rows: 40_000, loadout: null })
    const { id } = await tried.does('closet.all', {})
    await tried.does('items.edit', { ids: [...id], archived: true, addTags: ['all'], addDuties: ['seat'] })
    const all = await tried.does('closet.rows', { ids: [...id] })
    expect(all.id).toHaveLength(40_000)
    expect(new Set(all.tags)).toEqual(new Set(['all']))
  }, 120_000)

  test('what nothing refers to is deleted, what a weighing or a line refers to is archived', async () => {
    const tried = await programAt()
    const [free, weighed, lined, holding] = [
      await tried.does('item.add', pot),
      await tried.does('item.add', pot),
      await tried.does('item.add', pot),
      await tried.does('item.add', { ...pot, isContainer: true }),
    ]
    await tried.does('item.weigh', oneReading(weighed.id, 96))
    const loadout = await tried.does('loadout.add', { name: 'Summer' })
    const fuel = await tried.does('supply.add', { name: 'Fuel', kitArea: 'kitchen', unit: 'g' })
    await tried.does('lines.put', { loadoutId: loadout.id, lines: [{ itemId: lined.id, lane: 'in_pack' }, { supplyId: fuel.id, containerId: holding.id, lane: 'used_up' }] }) // prettier-ignore
    const ids = [free.id, weighed.id, lined.id, holding.id]
    expect(await tried.does('items.remove', { ids })).toEqual({ deleted: 1, archived: 3 })
    const all = await tried.does('closet.all', {})
    expect(all.id).toEqual([weighed.id, lined.id, holding.id])
    expect(all.archived).toEqual([true, true, true])
    const reply = await tried.reply('step.undo', {})
    expect(reply).toMatchObject({ ok: true, closet: { id: ids, archived: [false, false, false, false] } })
  })
})

test('a duplicate has what its kind has, and not what belongs to the one thing', async () => {
  const tried = await programAt()
  const { id } = await tried.does('item.add', {
    ...pot,
    serial: 'S',
    pieces: 3,
    tags: ['a'],
    duties: [{ duty: 'pot', shared: true }],
    weighedMg: 96_000,
    status: 'lent',
    lentTo: 'C',
  })
  await tried.does('item.trait', { id, trait: { code: 'pot-metal', number: null, text: 'titanium', origin: 'claimed' } })
  await tried.does('set.add', { name: 'Cook set', itemIds: [id] })
  const copy = await tried.does('item.duplicate', { id })
  const detail = await tried.does('item.open', { id: copy.id })
  expect(detail).toMatchObject({
    name: 'Pot',
    serial: '',
    pieces: 3,
    tags: ['a'],
    duties: [{ duty: 'pot', shared: true }],
    status: 'owned',
    lentTo: '',
    setId: null,
    weighings: [],
  })
  expect(detail.traits).toMatchObject([{ code: 'pot-metal', text: 'titanium' }])
  expect(await row(tried, copy.id)).toMatchObject({ massMg: 96_000, massFrom: 'estimated' })
})
