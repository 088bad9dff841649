import * as v from 'valibot'
import { expect, test } from 'vitest'
import { accept } from '../../../../src-domain/closet/bring-in/accept.ts'
import { contract } from '../../../../src-main/contract.ts'
import { stagedRows } from '../../../../src-renderer/rooms/bring-in/stage.ts'
import { previewOf } from '../../../domain/closet/bring-in/sheets.ts'
import { programAt } from '../../../main/program-at.ts'

const sheets = [
  'mark-column.csv',
  'claimed-and-measured.csv',
  'grams.csv',
  'mixed-per-cell.csv',
  'pounds-ounces-sections.csv',
  'semicolon-decimal-comma.csv',
  'messy-200.csv',
]

test.each(sheets)('%s is staged as the contract takes it', async (name) => {
  const rows = stagedRows(accept(await previewOf(name, { currency: 'EUR' })), name)
  const staged = v.safeParse(contract['bringIn.stage'].input, { batch: crypto.randomUUID(), from: 0, rows })
  expect(staged.issues).toBeUndefined()
})

test('sheet to store: items, pieces and lanes arrive, one thing in two lanes is one item', async () => {
  const tried = await programAt()
  const batch = crypto.randomUUID()
  const rows = stagedRows(accept(await previewOf('mark-column.csv')), 'kit.csv')
  await tried.does('bringIn.stage', { batch, from: 0, rows: [...rows] })
  const made = await tried.does('bringIn.accept', {
    batch,
    rows: rows.length,
    loadout: { name: 'Three days', seasonId: null, tripId: null },
  })
  expect(made).toMatchObject({ items: 13, lines: 13 })
  const all = await tried.does('closet.all', {})
  expect(all.name.filter((name) => name === 'Merino socks').length).toBe(1)
  const [opened] = await tried.does('loadout.open', { ids: [made.loadoutId!] })
  const massOf = (id: number | null): number => all.massMg[all.id.indexOf(id!)] ?? 0
  const sum = (lane: string): number =>
    opened!.line.filter((line) => line.lane === lane).reduce((mg, line) => mg + massOf(line.itemId) * line.pieces, 0)
  // By hand from the sheet: 1651 g in the pack, 943 g on me, 1045 g used up.
  expect([sum('in_pack'), sum('on_me'), sum('used_up')]).toEqual([1_651_000, 943_000, 1_045_000])
})
