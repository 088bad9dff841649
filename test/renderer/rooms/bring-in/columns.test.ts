import { expect, test } from 'vitest'
import { layout, shownColumns, type ShownColumn } from '../../../../src-renderer/rooms/bring-in/sheet-columns.ts'
import { nextMatter, openMatters } from '../../../../src-renderer/rooms/bring-in/matters.ts'
import { previewOf } from '../../../domain/closet/bring-in/sheets.ts'

const named = (columns: readonly ShownColumn[]): readonly string[] =>
  columns.map((one) => (one.kind === 'sheet' ? one.of.role : one.kind === 'way' ? `way ${one.of?.role ?? ''}`.trim() : one.kind))

test('A column of notes shares its place with what is in the way; masses are followed by what they are read as', async () => {
  const { blocks } = await previewOf('mixed-per-cell.csv')
  expect(named(shownColumns(blocks[0]!, false))).toEqual(['item', 'area', 'mass', 'read', 'price', 'way note'])
})

test('What no column says stands in a column of ours: areas of section rows, lanes without marks', async () => {
  const { blocks } = await previewOf('pounds-ounces-sections.csv')
  expect(named(shownColumns(blocks[0]!, true))).toEqual(['item', 'area', 'pieces', 'pounds', 'ounces', 'read', 'lane', 'way note'])
  expect(named(shownColumns((await previewOf('mark-column.csv')).blocks[0]!, true))).toEqual(['item', 'area', 'mass', 'read', 'pieces', 'mark', 'way']) // prettier-ignore
})

test('Every column has a place in the grid, and a narrow sheet needs less of it', async () => {
  const { blocks } = await previewOf('totals-rows.csv')
  const [wide, narrow] = [false, true].map((is) => shownColumns(blocks[0]!, true, is)) as [readonly ShownColumn[], readonly ShownColumn[]]
  expect(narrow.length).toBeLessThan(wide.length)
  expect(layout(wide, 20).template.match(/minmax|px(?= |$)/gu)!.length).toBeGreaterThanOrEqual(wide.length + 1)
  expect(layout(narrow, 20, true).leastPx).toBeLessThan(layout(wide, 20).leastPx)
  expect(layout(wide, 20_000).leastPx).toBeGreaterThan(layout(wide, 20).leastPx)
})

test('What waits: rows that cannot be read, and things like one in the closet until the person has said', async () => {
  const closet = [
    { id: 1, name: 'Down quilt 0C', maker: '', pieces: 1, mass_mg: 640_000 },
    { id: 2, name: 'Rain jacket', maker: '', pieces: 1, mass_mg: 214_000 },
  ]
  const preview = await previewOf('mixed-per-cell.csv', {}, closet)
  const names = (matters: readonly number[]): readonly string[] => matters.map((at) => preview.rows[at]!.name)
  // The jacket has the same name and mass: that is certain.
  expect(names(openMatters(preview, {}))).toEqual(['Down quilt 0C', 'Wind shirt', 'Phone'])
  const quilt = preview.rows.find((row) => row.name === 'Down quilt 0C')!
  expect(names(openMatters(preview, { rows: { [quilt.key]: { same: 'another' } } }))).toEqual(['Wind shirt', 'Phone'])
  expect([nextMatter([3, 7], 3, 1), nextMatter([3, 7], 7, 1), nextMatter([3, 7], 7, -1), nextMatter([], 0, 1)]).toEqual([7, -1, 3, -1])
})
