import { createRequire } from 'node:module'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { accept } from '../../../../src-domain/closet/bring-in/accept.ts'
import type { KnownItem } from '../../../../src-domain/closet/bring-in/preview.ts'
import { recognise } from '../../../../src-domain/closet/bring-in/recognise.ts'
import type { OwnItem, OwnLine } from '../../../../src-domain/closet/own-csv.ts'
import { writeClosetCsv, writeLoadoutCsv } from '../../../../src-domain/closet/own-csv.ts'
import { cellsOf, ozMg, previewOf, previewOfText } from './sheets.ts'

test('one paste gives closet and loadout', async () => {
  const plan = accept(await previewOf('mark-column.csv', { loadoutName: 'Three days' }))
  expect(plan.items.length).toBe(13)
  const socks = plan.items.find((item) => item.name === 'Merino socks')
  expect(socks).toMatchObject({
    pieces: 2,
    mass_mg: 62_000,
    origin: 'claimed',
    claimed_mg: 62_000,
    measured_mg: null,
    kitArea: 'footwear',
    duties: ['socks'],
  })
  expect(plan.loadout?.name).toBe('Three days')
  expect(plan.loadout?.lines.filter((line) => line.newItem === socks?.row).map(({ lane, pieces }) => [lane, pieces])).toEqual([
    ['on_me', 1],
    ['in_pack', 1],
  ])
  // Summed from the sheet by hand: 1651 in the pack, 943 on me, 1045 used up.
  const mass = new Map(plan.items.map((item) => [item.row, item.mass_mg!]))
  const sum = (lane: string): number =>
    plan.loadout!.lines.filter((line) => line.lane === lane).reduce((all, line) => all + mass.get(line.newItem!)! * line.pieces, 0)
  expect([sum('in_pack'), sum('on_me'), sum('used_up')]).toEqual([1_651_000, 943_000, 1_045_000])
})

test('what the closet has is matched, not made again; what waits is not brought in', async () => {
  const closet: readonly KnownItem[] = [{ id: 41, name: 'Tarp', maker: '', pieces: 1, mass_mg: 271_000 }]
  const plan = accept(
    await previewOfText('Item,g,qty,where\nTarp,268,1,packed\nPot,"3,2 oz",1,packed\nMug,"-4",1,packed\nSpoon,10.5,2,worn', {}, closet),
  )
  expect(plan.items.map((item) => item.name)).toEqual(['Spoon'])
  expect(plan.matches).toEqual([{ row: '0:1', itemId: 41 }])
  expect(plan.waiting).toEqual(['0:2', '0:3'])
  expect(plan.loadout?.lines).toEqual([
    { newItem: null, itemId: 41, lane: 'in_pack', pieces: 1 },
    { newItem: '0:4', itemId: null, lane: 'on_me', pieces: 2 },
  ])
})

test('a sheet without quantity and mark makes no loadout unless asked', async () => {
  expect(accept(await previewOf('grams.csv')).loadout).toBeNull()
  expect(accept(await previewOf('grams.csv', { asLoadout: true })).loadout?.lines.length).toBe(15)
})

test('claimed and measured, price, note, tags and state come with the item', async () => {
  const plan = accept(await previewOf('claimed-and-measured.csv'))
  expect(plan.items[0]).toMatchObject({ name: 'Ridge tent', maker: 'Northshed', measured_mg: 1_297_000, claimed_mg: 1_250_000, mass_mg: 1_297_000, origin: 'measured', tags: ['3-season'], duties: ['shelter'] }) // prettier-ignore
  const grams = accept(await previewOf('grams.csv', { currency: 'EUR' }))
  expect(grams.items[1]).toMatchObject({ name: 'Stakes', pieces: 6, mass_mg: 10_500, priceMinor: 1250, currency: 'EUR' })
  expect(grams.items[0]).toMatchObject({ links: ['https://example.org/tarp'], kitArea: 'shelter' })
  const messy = accept(await previewOf('mixed-per-cell.csv'))
  expect(messy.items.find((item) => item.name === 'Pot 750')).toMatchObject({
    mass_mg: null,
    origin: 'none',
    note: 'no lid',
    priceMinor: 3800,
  })
  expect(messy.items.find((item) => item.name === 'Down quilt 0C')?.mass_mg).toBe(ozMg(21.8))
})

const common = {
  maker: 'Northshed',
  massFrom: 'measured',
  band_mg: 1200,
  duties: ['shelter'],
  set: 'Tarp set',
  note: 'two\nlines, "quoted"',
} as const
const line: OwnLine = { ...common, lane: 'on_me', kitArea: 'light_power', name: '=Tarp', pieces: 2, pieceMass_mg: 268_125 }

test('our own CSV comes back through the same door, guard and all', async () => {
  const loadout = accept(
    recognise(
      await cellsOf(
        writeLoadoutCsv([line, { ...line, lane: 'used_up', name: 'Gas', kitArea: 'kitchen', massFrom: 'claimed', duties: [] }]),
      ),
      {},
      [],
    ),
  )
  expect(loadout.items[0]).toMatchObject({ name: '=Tarp', maker: 'Northshed', kitArea: 'light_power', pieces: 2, mass_mg: 268_125, origin: 'measured', duties: ['shelter'], set: 'Tarp set', note: 'two\nlines, "quoted"' }) // prettier-ignore
  expect(loadout.items[1]).toMatchObject({ name: 'Gas', origin: 'claimed' })
  expect(loadout.loadout?.lines.map(({ lane, pieces }) => [lane, pieces])).toEqual([
    ['on_me', 2],
    ['used_up', 2],
  ])
  const item: OwnItem = {
    ...common,
    kitArea: 'care',
    name: 'Wash bag',
    pieces: 1,
    pieceMass_mg: 95_000,
    status: 'lent',
    lastWeighedOn: '2025-10-08',
  }
  const closet = accept(
    recognise(await cellsOf(writeClosetCsv([item, { ...item, name: 'Towel', status: 'wished', lastWeighedOn: null }])), {}, []),
  )
  expect(closet.items[0]).toMatchObject({
    name: 'Wash bag',
    kitArea: 'care',
    status: 'lent',
    weighedOn: '2025-10-08',
    mass_mg: 95_000,
    origin: 'measured',
  })
  expect(closet.items[1]).toMatchObject({ name: 'Towel', status: 'wished', weighedOn: null })
})

test('every naughty string may be a name, a note or a mass', () => {
  const naughty = createRequire(import.meta.url)('big-list-of-naughty-strings') as readonly string[]
  for (const column of [0, 1, 2, 3, 4]) {
    const cells = [['Item', 'g', 'Note', 'Qty', 'Where'], ...naughty.map((text, at) => [`Thing ${at}`, '95', 'plain', '1', 'worn'].map((plain, at2) => (at2 === column ? text : plain)))] // prettier-ignore
    const preview = recognise(cells, {}, [])
    expect(preview.rows.length).toBe(cells.length)
    const plan = accept(preview)
    for (const item of plan.items)
      expect(item.name.length > 0 && item.name.length <= 300 && item.pieces >= 1 && item.pieces <= 100_000).toBe(true)
  }
})

test('each line names an item of the plan or of the closet, once a lane; each item comes from one row', () => {
  const cell = fc.constantFrom('Tarp', 'Stakes (8)', 'Pot', '268', '95', '', '3', 'worn', 'packed', 'home', 'Total', 'Shelter', '1 lb 2 oz')
  const closet: readonly KnownItem[] = [{ id: 5, name: 'Tarp', maker: '', pieces: 1, mass_mg: 268_000 }]
  fc.assert(
    fc.property(fc.array(fc.array(cell, { minLength: 4, maxLength: 4 }), { maxLength: 12 }), (rows) => {
      const plan = accept(recognise([['Item', 'Weight', 'Qty', 'Where'], ...rows], { asLoadout: true }, closet))
      const made = new Set(plan.items.map((item) => item.row))
      expect(made.size).toBe(plan.items.length)
      const keys = plan.loadout!.lines.map((one) => `${one.newItem} ${one.itemId} ${one.lane}`)
      expect(new Set(keys).size).toBe(keys.length)
      for (const one of plan.loadout!.lines)
        expect(one.newItem === null ? one.itemId === 5 : made.has(one.newItem) && one.itemId === null).toBe(true)
    }),
    { numRuns: 300 },
  )
})
