import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { KnownItem } from '../../../../src-domain/closet/bring-in/preview.ts'
import { recognise } from '../../../../src-domain/closet/bring-in/recognise.ts'
import { ozMg, previewOf, previewOfText, totalNamed } from './sheets.ts'

// Sums here are worked by hand from the sheets' own figures, noted beside each.

test('the sum in pounds and ounces is ours: 113.8 oz = 7 lb 1.8 oz', async () => {
  const total = totalNamed(await previewOf('pounds-ounces-sections.csv'), 'TOTAL')
  // 18.1+3+3.5 +21.8+6.5 +15.4+1.2 +2.6+3.4+0.6+2·0.4 +19.3+6.2+2·5.7 = 113.8
  expect(total).toMatchObject({ scope: 'all', unit: 'oz', said_mg: ozMg(113.8), agrees: true, explained: [] })
})

test("sixty things in pounds and ounces: base, worn and total weight are the sheet's own", async () => {
  const preview = await previewOf('sixty-pounds-ounces.csv')
  expect(preview.counts).toMatchObject({ newItems: 60, problems: 0 })
  // The script that wrote the sheet summed tenths of an ounce: 255.2, 48.6 and 303.8 oz.
  expect(preview.totals.map(({ label, said_mg, agrees, explained }) => [label, said_mg, agrees, explained.length])).toEqual([
    ['Base weight', ozMg(255.2), true, 0],
    ['Worn weight', ozMg(48.6), true, 0],
    ['Total weight', ozMg(303.8), true, 0],
  ])
})

test('sums named by lanes are compared lane by lane', async () => {
  const preview = await previewOf('mark-column.csv')
  // base 62+268+8·10.5+618+183+436 = 1651; worn 176+158+547+62 = 943; used up 3·145+500+110 = 1045; the chair stays at home
  const found = preview.totals.map(({ label, scope, of, ours_mg, agrees }) => [label, scope, of, ours_mg / 1000, agrees])
  expect(found).toEqual([
    ['Base weight', 'lane', 'in_pack', 1651, true],
    ['Worn weight', 'lane', 'on_me', 943, true],
    ['Consumables', 'lane', 'used_up', 1045, true],
    ['Pack weight', 'pack', '', 2696, true],
    ['Total', 'all', '', 3639, true],
  ])
})

test('a summary beside the table, in another unit, finds its rows', async () => {
  const preview = await previewOf('flags-and-summary.csv')
  expect(preview.totals.map(({ label, scope, agrees }) => [label, scope, agrees])).toEqual([
    ['Kitchen', 'area', true],
    ['Base', 'lane', true],
    ['Worn', 'lane', true],
    ['Consumables', 'lane', true],
    ['Total', 'all', true],
  ])
})

test('a sum per block is taken over its block', async () => {
  const preview = await previewOf('blocks-side-by-side.csv')
  expect(preview.totals.map(({ scope, said_mg, agrees }) => [scope, said_mg, agrees])).toEqual([
    ['block', ozMg(17.35), true],
    ['block', ozMg(36.4), true],
    ['block', ozMg(7.7), true],
  ])
})

test('a line that the sheet leaves out of its sum is named', async () => {
  const preview = await previewOf('totals-rows.csv')
  const kitchen = preview.totals[2]!
  // The sheet says 169 = 95 + 74; the two fuel bottles, 62 g, stand in no sum of it.
  expect(kitchen).toMatchObject({ said_mg: 169_000, ours_mg: 231_000, agrees: false, rest_mg: 0 })
  expect(kitchen.explained.map(({ name, code, delta_mg }) => [name, code, delta_mg])).toEqual([['Fuel bottle', 'not-counted', 62_000]])
  expect(preview.totals.map((total) => total.agrees)).toEqual([true, true, false, false])
})

const known = (id: number, name: string, mass_mg: number | null): KnownItem => ({ id, name, maker: '', pieces: 1, mass_mg })

test('a thing the closet knows by another mass is named with the difference', async () => {
  const preview = await previewOfText('Item,g,qty\nTarp,268,1\nPot,95,1\nTotal,363,', {}, [known(3, 'Tarp', 271_000)])
  const total = totalNamed(preview, 'Total')
  expect(total).toMatchObject({ ours_mg: 366_000, agrees: false, rest_mg: 0 })
  expect(total.explained).toEqual([{ row: '0:1', name: 'Tarp', code: 'closet-mass', delta_mg: 3000 }])
})

test('a row left out and a row that waits are named', async () => {
  const preview = await previewOfText('Item;g\nTarp;268.5\nPot;95.5\nWind shirt;3,2 oz\nTotal;454.7', { rows: { '0:2': { take: false } } })
  const total = totalNamed(preview, 'Total')
  expect(total.explained.map(({ name, code, delta_mg }) => [name, code, delta_mg])).toEqual([
    ['Pot', 'left-out', -95_500],
    ['Wind shirt', 'waiting', -ozMg(3.2)],
  ])
  expect(Math.abs(total.rest_mg)).toBeLessThanOrEqual(total.within_mg)
})

test('masses are of the line where only so the sum comes out', async () => {
  const text = 'Item,g,qty\nStakes,84,8\nTarp,268,1\nGuylines,40,4'
  const line = await previewOfText(`${text}\nTotal,392,`)
  expect([line.massIs, line.massIsBecause.code]).toEqual(['line', 'by-total'])
  expect(line.rows[1]!.masses[0]!.piece_mg).toBe(10_500)
  const piece = await previewOfText(`${text}\nTotal,1100,`)
  expect([piece.massIs, piece.massIsBecause.code]).toEqual(['piece', 'by-total'])
  expect(piece.rows[1]!.masses[0]!.piece_mg).toBe(84_000)
  const unsaid = await previewOfText(text)
  expect([unsaid.massIs, unsaid.massIsBecause.code]).toEqual(['piece', 'by-default'])
})

test('cells with words that a spreadsheet cannot add are named when that makes the difference', async () => {
  // 268 + 95 + 56 = 419; the cells in ounces are text to a spreadsheet.
  const total = totalNamed(
    await previewOfText('Item,Weight\nTarp,268\nPot,95\nHeadlamp,56\nQuilt,21.8 oz\nMat,12.4 oz\nTotal,419'),
    'Total',
  )
  expect(total.explained.map(({ name, code, delta_mg }) => [name, code, delta_mg])).toEqual([
    ['Quilt', 'not-a-number', ozMg(21.8)],
    ['Mat', 'not-a-number', ozMg(12.4)],
  ])
  expect(total.rest_mg).toBe(0)
})

test('pieces that the sheet counts once are named', async () => {
  // Sum of the cells once: 30 + 268 + 95 = 393 for the kitchen's "Total"; the person says that masses are of one piece.
  const total = totalNamed(await previewOfText('Item,g,qty\nStakes,30,8\nTarp,268,1\nPot,95,1\nTotal,393,', { massIs: 'piece' }), 'Total')
  expect(total.explained).toEqual([{ row: '0:1', name: 'Stakes', code: 'counted-once', delta_mg: 210_000 }])
})

test('where two answers fit, none is named', async () => {
  const total = totalNamed(await previewOfText('Item,g\nTarp,268\nPot,95\nPan,95\nTotal,363'), 'Total')
  expect(total).toMatchObject({ agrees: false, explained: [], rest_mg: 95_000 })
})

test('ours less the sheet is always what the named lines say and a rest', () => {
  const name = fc.constantFrom('Tarp', 'Pot', 'Quilt', 'Stakes (8)', 'Mat', 'Spoon')
  const mass = fc.oneof(fc.integer({ min: 1, max: 900 }).map(String), fc.constantFrom('3,2 oz', '12.5 oz', '', '-4', '1 lb 2 oz', '95 g'))
  const row = fc.tuple(name, mass, fc.constantFrom('', '1', '3', '0'), fc.constantFrom('', 'worn', 'packed', 'home'))
  const closet = fc.array(fc.record({ id: fc.nat(9), name, maker: fc.constant(''), pieces: fc.constant(1), mass_mg: fc.option(fc.nat(900_000), { nil: null }) }), { maxLength: 4 }) // prettier-ignore
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 12 }), fc.integer({ min: 1, max: 4000 }), closet, (rows, sum, items) => {
      const cells = [['Item', 'Weight', 'Qty', 'Where'], ...rows.map((one) => [...one]), ['Total', String(sum), '', '']]
      const preview = recognise(cells, {}, items)
      for (const total of preview.totals) {
        const named = total.explained.reduce((all, one) => all + one.delta_mg, 0)
        expect(total.ours_mg - total.said_mg).toBe(named + total.rest_mg)
        if (total.agrees) expect(Math.abs(total.ours_mg - total.said_mg)).toBeLessThanOrEqual(total.within_mg)
      }
    }),
    { numRuns: 500 },
  )
})
