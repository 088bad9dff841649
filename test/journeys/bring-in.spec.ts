/** Bringing in on real input: files, pasted cells, what is in the way, and the way back. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Locator, Page } from '@playwright/test'
import type { ClosetColumns } from '../../src-main/contract.ts'
import { startHost } from '../host.ts'
import { cellsOf, things, type Thing } from './messy-sheet.ts'
import { call, expect, expectAccessible, inGrams, openPage, test } from './support.ts'

const folder = join(import.meta.dirname, '../fixtures/sheets')
const fixture = (name: string): string => readFileSync(join(folder, name), 'utf8')

async function toBringIn(page: Page): Promise<void> {
  await inGrams(page)
  await page.evaluate(() => (location.hash = '#/bring-in'))
  await expect(page.getByRole('heading', { name: 'Bring in' })).toBeVisible()
}
const margin = (page: Page): Locator => page.getByRole('complementary', { name: 'If accepted' })
const rowOf = (page: Page, name: RegExp): Locator => page.getByRole('grid').getByRole('row', { name })
const choose = (page: Page, file: string | { name: string; mimeType: string; buffer: Buffer }): Promise<void> =>
  page.locator('input[type=file]').setInputFiles(typeof file === 'string' ? join(folder, file) : file)

/** As a spreadsheet hands cells over: a paste event on whatever has the focus. */
async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((text) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', text)
    ;(document.activeElement ?? document.body).dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    )
  }, text)
}

const sumG = (all: readonly Thing[], lane: Thing['lane']): number =>
  all.filter((one) => one.lane === lane).reduce((sum, one) => sum + (one.pieceG ?? 0) * one.pieces, 0)

test('A file of 200 rows in mixed units: every figure right to the gram, lanes and totals too, one step to undo', async ({
  page,
  program,
}) => {
  const all = things()
  expect(all).toHaveLength(200)
  await toBringIn(page)
  await choose(page, 'messy-200.csv')
  await expect(margin(page)).toContainText('all the same as ours')
  await expect(page.getByText(/messy-200\.csv · 211 rows, comma between columns, first row is headings/)).toBeVisible()
  await expectAccessible(page)
  expect((await program.call('closet.all', {})).id).toEqual([])
  await page.keyboard.press('Control+Enter')
  await expect(page).toHaveURL(/#\/trips\/loadout\/\d+$/)

  const closet = await program.call('closet.all', {})
  expect(closet.id).toHaveLength(200)
  for (const one of all) {
    const row = closet.name.indexOf(one.name)
    expect(closet.pieces[row], one.name).toBe(one.pieces)
    const massMg = closet.massMg[row] ?? null
    expect(massMg === null ? null : Math.round(massMg / 1000), one.name).toBe(one.pieceG === null ? null : Math.round(one.pieceG))
  }
  const [head] = await program.call('loadout.all', {})
  const [open] = await program.call('loadout.open', { ids: [head!.id] })
  for (const lane of ['on_me', 'in_pack'] as const) {
    const mg = open!.line.filter((line) => line.lane === lane).reduce((sum, line) => sum + (closet.massMg[closet.id.indexOf(line.itemId!)] ?? 0) * line.pieces, 0) // prettier-ignore
    expect(Math.round(mg / 1000), lane).toBe(Math.round(sumG(all, lane)))
  }
  await expect(
    page.getByRole('button', { name: new RegExp(`^base weight ${(sumG(all, 'in_pack') / 1000).toFixed(2)}\\skg`) }).last(),
  ).toBeVisible()

  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await program.call('closet.all', {})).id.length).toBe(0)
  expect(await program.call('loadout.all', {})).toEqual([])
  await page.keyboard.press('Shift+Control+z')
  await expect.poll(async () => (await program.call('closet.all', {})).id.length).toBe(200)
  expect((await program.call('loadout.all', {})).map((one) => one.lines)).toEqual([all.filter((one) => one.lane !== 'home').length])
})

test('By keys alone: what is in the way is gone through, answered, typed anew, put back, and accepted', async ({ page, program }) => {
  await toBringIn(page)
  await page.keyboard.press('Enter')
  const dialog = page.getByRole('dialog', { name: 'Paste cells' })
  await expect(dialog.getByRole('textbox')).toBeFocused()
  await page.keyboard.insertText(fixture('mixed-per-cell.csv'))
  await page.keyboard.press('Control+Enter')
  await expect(page.getByRole('grid')).toBeFocused()
  await expect(rowOf(page, /Wind shirt/)).toContainText('3.2 oz or 32 oz?')

  await page.keyboard.press('Tab')
  await expect(page.getByRole('button', { name: '3.2 oz, 91 g' })).toBeFocused()
  await page.keyboard.press('Tab')
  await expect(page.getByRole('region', { name: 'Row 14, Phone' })).toBeVisible()
  await page.keyboard.press('Shift+Tab')
  await expect(page.getByRole('button', { name: '3.2 oz, 91 g' })).toBeFocused()
  await page.keyboard.press('ArrowRight')
  await expect(page.getByRole('button', { name: '32 oz, 907 g' })).toBeFocused()
  await page.keyboard.press('ArrowLeft')
  await page.keyboard.press('Enter')
  await expect(rowOf(page, /Wind shirt/)).toContainText('91 g')

  // The answer led on to the phone, whose mass is typed anew.
  await expect(page.getByRole('region', { name: 'Row 14, Phone' })).toBeVisible()
  await page.keyboard.press('F2')
  await page.keyboard.press('Control+a')
  await page.keyboard.type('194')
  await page.keyboard.press('Enter')
  await expect(rowOf(page, /Phone/)).toContainText('194 g')
  await expect(margin(page)).toContainText(/cannot be read\s*0/)

  // The total is put back as if it were a thing, and left out again.
  await page.getByRole('grid').focus()
  for (let n = 0; n < 3; n++) await page.keyboard.press('ArrowUp')
  await expect(page.getByRole('region', { name: /^Row 11/ })).toContainText('A total: left out.')
  await page.keyboard.press(' ')
  await expect(page.getByRole('button', { name: /^Accept 22/ })).toBeVisible()
  await page.keyboard.press(' ')
  await expect(page.getByRole('button', { name: /^Accept 21/ })).toBeVisible()
  await expectAccessible(page)
  await page.keyboard.press('Control+Enter')
  await expect(page).toHaveURL(/#\/closet$/)
  const closet = await program.call('closet.all', {})
  const massOf = (name: string): number => closet.massMg[closet.name.indexOf(name)]!
  // 3.2 oz by NIST SP 811: 3.2 × 28 349.523125 mg = 90 718.47 mg.
  expect([massOf('Wind shirt'), massOf('Phone')]).toEqual([90_718, 194_000])
  expect(closet.name).not.toContain('TOTAL')
})

test('Columns, words and marks are changed by their choosers, and the rows follow', async ({ page, program }) => {
  await toBringIn(page)
  await paste(page, fixture('mark-column.csv'))
  await expect(margin(page)).toContainText('all the same as ours')
  await page.getByRole('button', { name: /^Column “Grams”: Mass in grams/ }).click()
  await page.getByRole('menuitemcheckbox', { name: 'bare numbers are ounces' }).click()
  // 268 oz × 28.349523125 g/oz = 7,597.7 g (NIST SP 811).
  await expect(rowOf(page, /Tarp/)).toContainText('7,598 g')
  await page.getByRole('button', { name: /^Column “Grams”: Mass in ounces/ }).click()
  await page.getByRole('menuitemcheckbox', { name: 'bare numbers are grams' }).click()
  await page.getByRole('button', { name: /^Column “Grams”: Mass in grams/ }).click()
  await page.getByRole('menuitemcheckbox', { name: 'unmarked masses are read from a scale' }).click()
  await expect(rowOf(page, /Tarp/)).toContainText('268 g')
  await expect(rowOf(page, /Tarp/)).not.toContainText('~268')
  await page.getByRole('button', { name: 'Extras is Extras' }).click()
  await page.getByRole('menuitemcheckbox', { name: 'Care', exact: true }).click()
  await page.getByRole('button', { name: 'home is stays at home' }).click()
  await page.getByRole('menuitemcheckbox', { name: 'In the pack' }).click()
  await expect(rowOf(page, /Camp chair/)).toContainText(/Care.*In the pack/)
  await expect(page.getByRole('menu')).toBeHidden()
  await page.keyboard.press('Control+Enter')
  await expect(page).toHaveURL(/#\/trips\/loadout\/\d+$/)
  const closet = await program.call('closet.all', {})
  const row = closet.name.indexOf('Camp chair')
  expect([closet.kitArea[row], closet.massFrom[row], closet.massMg[row]]).toEqual(['care', 'measured', 512_000])
})

test('Things in the closet already are shown, and the person says whether they are the same', async ({ page, program }) => {
  await program.call('item.add', { name: 'Tarp', kitArea: 'shelter', weighedMg: 268_000 })
  await program.call('item.add', { name: 'Quilt', kitArea: 'sleep', weighedMg: 640_000 })
  await program.call('season.add', { name: 'Autumn', kind: 'autumn' })
  await toBringIn(page)
  await paste(page, fixture('mark-column.csv'))
  await expect(rowOf(page, /Tarp/)).toContainText('in the closet already')
  await expect(margin(page)).toContainText(/in the closet already\s*2/)
  // 618 g in the sheet, 640 g in the closet: the base weight differs by that and says so.
  await expect(margin(page)).toContainText(/Quilt: the closet knows its mass\s*\+22\sg/)
  await page.getByRole('grid').focus()
  await page.keyboard.press('Home')
  await page.keyboard.press('Tab')
  await expect(page.getByRole('region', { name: /Quilt$/ }).first()).toContainText('Taken as the same thing')
  await page.getByRole('button', { name: 'Another one' }).first().click()
  await expect(margin(page)).toContainText(/in the closet already\s*1/)
  await expect(margin(page)).toContainText('all the same as ours')
  await page.getByLabel('Its name').fill('Autumn kit')
  await page.getByRole('button', { name: /^Belongs to/ }).click()
  await page.getByRole('menuitemcheckbox', { name: /Autumn/ }).click()
  await page.getByRole('button', { name: /^Accept/ }).click()
  await expect(page).toHaveURL(/#\/trips\/loadout\/\d+$/)
  const closet = await program.call('closet.all', {})
  expect(closet.name.filter((name) => name === 'Tarp')).toHaveLength(1)
  expect(closet.name.filter((name) => name === 'Quilt')).toHaveLength(2)
  const [head] = await program.call('loadout.all', {})
  const [season] = await program.call('season.all', {})
  expect([head!.name, head!.seasonId]).toEqual(['Autumn kit', season!.id])
  const [open] = await program.call('loadout.open', { ids: [head!.id] })
  expect(open!.line.map((line) => line.itemId)).toContain(closet.id[closet.name.indexOf('Tarp')])
})

test('Blocks side by side are taken one by one', async ({ page, program }) => {
  await toBringIn(page)
  await paste(page, fixture('blocks-side-by-side.csv'))
  await expect(page.getByRole('button', { name: /^Accept 11/ })).toBeVisible()
  const blocks = page.getByRole('radiogroup', { name: 'Blocks side by side' })
  await blocks.getByRole('radio').nth(1).click()
  await page.getByLabel('bring this block in').uncheck()
  await expect(page.getByText('the whole block left out')).toBeVisible()
  await page.keyboard.press('Control+Enter')
  await expect(page).toHaveURL(/#\/closet$/)
  const left = (await program.call('closet.all', {})).name
  const sheet = fixture('blocks-side-by-side.csv').split('\n').slice(2, -2).map(cellsOf)
  const inBlock = (at: number): readonly string[] =>
    sheet.map((cells) => (cells[at] ?? '').trim()).filter((name) => name !== '' && name !== 'Total')
  expect([...left].sort()).toEqual([...inBlock(0), ...inBlock(6)].map((name) => name.replace(/ \(\d+\)$/u, '')).sort())
})

test('A file dropped on the sheet is read, and the sheet waits where it was left', async ({ page, program }) => {
  await toBringIn(page)
  const transfer = await page.evaluateHandle((text) => {
    const data = new DataTransfer()
    data.items.add(new File([text], 'kit.csv', { type: 'text/csv' }))
    return data
  }, fixture('grams.csv'))
  await page.dispatchEvent('main', 'dragover', { dataTransfer: transfer })
  await expect(page.getByText('Let go to read the file.')).toBeVisible()
  await page.dispatchEvent('main', 'drop', { dataTransfer: transfer })
  await expect(page.getByText(/^kit\.csv · /)).toBeVisible()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press(' ')
  await expect(page.getByText('left out by you', { exact: true })).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page).toHaveURL(/#\/closet$/)
  await expect(page.getByText('Nothing was written.', { exact: false }).first()).toBeVisible()
  expect((await program.call('closet.all', {})).id).toEqual([])
  await page.keyboard.press('i')
  await expect(page.getByText('left out by you', { exact: true })).toBeVisible()
})

test.describe('what cannot be read', () => {
  const files = [
    ['kit.xlsx', Buffer.from([0x50, 0x4b, 3, 4, 20, 0, 6, 0, 8, 0, 0, 0, 33, 0]), /workbook.*Save it there as CSV/],
    ['kit.pdf', Buffer.from('%PDF-1.7\n%âãÏÓ\n'), /PDF/],
    ['photo.png', Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]), /picture/],
    ['blank.csv', Buffer.from('\r\n  \r\n'), /nothing in that sheet/],
    ['bytes.bin', Buffer.from(Array.from({ length: 4000 }, (_, at) => (at * 7919) % 5)), /no text/],
    ['wide.csv', Buffer.from(Array.from({ length: 300 }, (_, at) => `c${at}`).join(',')), /larger than the 256 columns/],
    ['large.csv', Buffer.alloc(33 * 1024 * 1024, 'a,1\n'), /larger than the 32 MiB/],
  ] as const

  test('Each is explained with the way out, and nothing changes', async ({ page, program }) => {
    await program.call('item.add', { name: 'Tarp', kitArea: 'shelter' })
    await toBringIn(page)
    const before = await program.call('program.state', {})
    for (const [name, buffer, says] of files) {
      await choose(page, { name, mimeType: 'application/octet-stream', buffer })
      await expect(page.getByRole('alert')).toContainText(says)
    }
    await expectAccessible(page)
    // With a sheet on the table it stays there.
    await paste(page, fixture('grams.csv'))
    await expect(margin(page)).toBeVisible()
    await choose(page, { name: 'kit.xlsx', mimeType: 'application/octet-stream', buffer: files[0][1] })
    await expect(page.getByRole('contentinfo')).toContainText('That is a workbook')
    await expect(margin(page)).toBeVisible()
    const after = await program.call('program.state', {})
    expect([after.rev, after.undo]).toEqual([before.rev, before.undo])
    expect((await program.call('closet.all', {})).name).toEqual(['Tarp'])
  })
})

test('20,000 rows: progress is shown, cancelling leaves everything as it was, accepting brings all of them in', async ({
  page,
  program,
}) => {
  test.setTimeout(600_000)
  const [heading, ...rows] = fixture('messy-200.csv').trimEnd().split('\r\n').slice(0, 208)
  const body = rows.filter((row) => row.startsWith('"') && !row.startsWith('""')).slice(0, 190)
  const large = [
    heading,
    ...Array.from({ length: 106 }, (_, n) => body.map((row) => row.replace(/^"([^"]+)"/u, `"$1 ${n}"`))).flat(),
  ].slice(0, 20_001)
  await toBringIn(page)
  await paste(page, large.join('\r\n'))
  await expect(page.getByRole('progressbar')).toBeVisible()
  await page.getByRole('button', { name: /^Cancel/ }).click()
  await expect(page.getByRole('progressbar')).toBeHidden()
  await expect(page.getByText('The spreadsheet you keep today goes here')).toBeVisible()

  await paste(page, large.join('\r\n'))
  await expect(page.getByRole('button', { name: /^Accept/ })).toBeVisible({ timeout: 120_000 })
  await expect(page.getByText(/20,001 rows/).first()).toBeVisible()
  await page.keyboard.press('Control+Enter')
  await page.getByRole('button', { name: /^Cancel/ }).click({ timeout: 60_000 })
  await expect(page.getByRole('progressbar')).toBeHidden({ timeout: 60_000 })
  expect((await program.call('closet.all', {})).id).toEqual([])
  await expect(margin(page)).toBeVisible()

  await page.keyboard.press('Control+Enter')
  await expect(page).toHaveURL(/#\/trips\/loadout\/\d+$/, { timeout: 240_000 })
  expect((await program.call('closet.all', {})).id.length).toBe(20_000)
})

test.describe('our own CSV', () => {
  test.use({ demo: true })

  const told = ({ name, maker, pieces, status, kitArea, massMg, massFrom, duties, note, archived }: ClosetColumns) =>
    name
      .map((_, row) => ({
        name: name[row],
        maker: maker[row],
        pieces: pieces[row],
        status: status[row],
        kitArea: kitArea[row],
        massMg: massMg[row],
        massFrom: massFrom[row],
        duties: duties[row]!.replaceAll('*', '').split(' ').sort().join(' '),
        note: note[row],
        archived: archived[row],
      })) // prettier-ignore
      .filter((one) => !one.archived)
      .sort((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b)))

  test('The closet written out comes back in: into itself as known, into an empty program as it was', async ({ page, program }) => {
    await toBringIn(page)
    const waiting = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Write out the closet' }).click()
    const download = await waiting
    expect(download.suggestedFilename()).toMatch(/^closet-\d{4}-\d\d-\d\d\.csv$/)
    const text = readFileSync(await download.path(), 'utf8')
    const closet = await program.call('closet.all', {})
    expect(text.split('\r\n')[0]).toBe('status,last_weighed_on,kit_area,name,maker,pieces,piece_mass_g,mass_from,band_g,duties,set,note')

    await paste(page, text)
    const still = closet.status.filter((status, row) => !closet.archived[row] && ['owned', 'wished', 'lent'].includes(status)).length
    await expect(margin(page)).toContainText(new RegExp(`in the closet already\\s*${still}`))

    const empty = await startHost()
    const other = await page.context().newPage()
    await openPage(other, empty.url)
    await toBringIn(other)
    await paste(other, text)
    await other.getByLabel('This is also a loadout').uncheck()
    await other.getByRole('button', { name: /^Accept \d+/ }).click()
    await expect(other).toHaveURL(/#\/closet$/)
    expect(told(await call(other, 'closet.all', {}))).toEqual(told(closet))
    await other.close()
    await empty.stop()
  })
})
