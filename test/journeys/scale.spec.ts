import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startHost } from '../host.ts'
import { call, expect, expectAccessible, inGrams, openPage, test } from './support.ts'
import { plugInScale, report, settle } from './simulated-scale.ts'

const bench = 'Bench'

test('With nothing in the closet nothing waits, and it says so', async ({ page }) => {
  await page.keyboard.press('Alt+2')
  await expect(page.getByText('Nothing waits to be weighed.')).toBeVisible()
  await expectAccessible(page)
})

test.describe('at the bench of the demo closet', () => {
  test.use({ demo: true })
  test.beforeEach(async ({ page, program }) => {
    expect(program.host.url).toContain('127.0.0.1')
    await inGrams(page)
    await page.keyboard.press('Alt+2')
    await expect(page.getByRole('region', { name: bench }).getByRole('heading', { level: 2 })).toBeVisible()
  })

  test('Ten things are weighed by keys alone, and undo takes them back one by one', async ({ page, program }) => {
    // lb and oz exactly: 0.45359237 kg and its sixteenth (NIST Handbook 44, appendix C); mg rounded half away from zero.
    const ozMg = 28_349.523125
    const typed: readonly (readonly [string, number])[] = [
      ['371', 371_000],
      ['330 g', 330_000],
      ['3.4 oz', 3.4 * ozMg],
      ['0.18kg', 180_000],
      ['1 lb 3 oz', 19 * ozMg],
      ['6 1/4 oz', 6.25 * ozMg],
      ['1,164', 1_164_000],
      ['232 grams', 232_000],
      ['268', 268_000],
      ['14.5 oz', 14.5 * ozMg],
    ]
    const before = await program.call('closet.all', {})
    const heading = page.getByRole('region', { name: bench }).getByRole('heading', { level: 2 })
    const kept: (readonly [string, number])[] = []
    for (const [text, netMg] of typed) {
      const name = (await heading.textContent()) ?? ''
      await page.keyboard.type(text)
      await page.keyboard.press('Enter')
      await expect(heading).not.toHaveText(name)
      // A reading is kept in whole milligrams (provisions.md 9.4), then shared by the pieces.
      kept.push([name, Math.round(Math.round(netMg) / before.pieces[before.name.indexOf(name)]!)])
    }
    const after = await program.call('closet.all', {})
    expect(kept.map(([name]) => [name, after.massMg[after.name.indexOf(name)]])).toEqual(kept)
    expect(new Set(kept.map(([name]) => name)).size).toBe(10)
    await expect(page.getByText('10 kept this session')).toBeVisible()
    for (let n = 0; n < 10; n++) {
      await page.keyboard.press('Control+z')
      await expect(page.getByText(`${9 - n} kept this session`)).toBeVisible()
    }
    const undone = await program.call('closet.all', {})
    expect(undone.massMg).toEqual(before.massMg)
    await page.keyboard.press('Shift+Control+z')
    await expect(page.getByText('1 kept this session')).toBeVisible()
  })

  test('A USB scale feeds the bench: steady is offered, Enter keeps it, and it is not offered twice', async ({ page, program }) => {
    await plugInScale(page)
    const region = page.getByRole('region', { name: bench })
    const name = (await region.getByRole('heading', { level: 2 }).textContent()) ?? ''
    await region.getByRole('button', { name: 'connect a USB scale' }).click()
    await report(page, [2, 2, 0, 0, 0])
    await report(page, [3, 2, 0, 150, 0])
    await expect(region.getByText('moving')).toBeVisible()
    await page.keyboard.press('Enter')
    await expect(page.getByText(/No reading yet/).first()).toBeVisible()
    // 4 stable, 2 grams, 10^0, 0x019c: 412 g (worked example of the HID point-of-sale report, provisions.md 9.5).
    await settle(page, [4, 2, 0, 0x9c, 1])
    await expect(region.getByText('steady', { exact: true })).toBeVisible()
    await expect(page.getByRole('button', { name: /^Reading 412 g/ })).toBeVisible()
    await page.keyboard.press('Enter')
    await expect(region.getByText('kept: take it off')).toBeVisible()
    const all = await program.call('closet.all', {})
    const row = all.name.indexOf(name)
    expect(all.massMg[row]).toBe(Math.round(412_000 / all.pieces[row]!))
    await settle(page, [4, 2, 0, 0x9c, 1])
    await page.keyboard.press('Enter')
    await expect(page.getByText('1 kept this session')).toBeVisible()
    const item = await program.call('item.open', { id: all.id[row]! })
    expect(item.weighings.filter((one) => one.readingsMg[0] === 412_000).map((one) => one.entered)).toEqual(['usb'])
    // A scale's own words for what it cannot weigh.
    await report(page, [6, 2, 0, 0xff, 0xff])
    await expect(region.getByText(/over its limit/)).toBeVisible()
    await page.evaluate(() => (window as unknown as { unplug: () => void }).unplug())
    await expect(region.getByRole('button', { name: 'connect a USB scale' })).toBeVisible()
  })

  test('A scale that was allowed before is there again at the next start', async ({ page }) => {
    await plugInScale(page, { known: true })
    await expect(page.getByRole('region', { name: bench }).getByText('waiting for the scale')).toBeVisible()
    await settle(page, [4, 2, 0, 1, 0]) // the first report after opening may be an old one
    await settle(page, [4, 0x0b, 0xff, 0x91, 0]) // 14.5 oz
    await expect(page.getByRole('button', { name: /^Reading 411 g/ })).toBeVisible()
  })

  test('A check mass records the drift, corrects what follows, and can be taken back', async ({ page, program }) => {
    await page.getByRole('button', { name: 'Check masses' }).click()
    await page.keyboard.type('180')
    await page.keyboard.press('Enter')
    await expect(page.getByRole('alert')).toContainText('more than a scale drifts')
    await page.keyboard.press('Control+a')
    await page.keyboard.type('499')
    await expect(page.getByText(/multiplied by 1\.00200/)).toBeVisible()
    await page.keyboard.press('Enter')
    await expect(page.getByRole('row', { name: /499 g/ })).toContainText('−0.2 %')
    await expectAccessible(page)
    await page.getByRole('button', { name: 'Done' }).click()
    await expect(page.getByText('checked today: 500 g reads 499 g').first()).toBeVisible()
    const name = (await page.getByRole('region', { name: bench }).getByRole('heading', { level: 2 }).textContent()) ?? ''
    await page.keyboard.type('371')
    await page.keyboard.press('Enter')
    await expect(page.getByText('1 kept this session')).toBeVisible()
    const all = await program.call('closet.all', {})
    // Readings are corrected by m_ref/R_ref (provisions.md 9.1): 371 × 500/499.
    expect(all.massMg[all.name.indexOf(name)]).toBe(Math.round((371_000 * 500) / 499))
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+z')
    await expect(page.getByText(/checked 8 Oct/).first()).toBeVisible()
  })

  test('Tare, repeats and pieces make one weighing; what is damp is kept but is not the mass', async ({ page, program }) => {
    const before = await program.call('closet.all', {})
    const stakes = before.id[before.name.indexOf('Stakes')]!
    const owned = before.pieces[before.name.indexOf('Stakes')]!
    await page.evaluate((id) => (location.hash = `#/scale/${id}`), stakes)
    const heading = page.getByRole('region', { name: bench }).getByRole('heading', { level: 2 })
    await expect(heading).toHaveText('Stakes')
    await page.keyboard.press('t')
    await page.keyboard.type('12')
    await page.keyboard.press('Enter')
    await expect(page.getByText('Tare 12 g')).toHaveCount(2)
    for (const reading of ['96', '97']) {
      await page.keyboard.type(reading)
      await page.getByRole('button', { name: 'Again' }).click()
    }
    await page.keyboard.type('98')
    await expect(page.getByText('on the plate, mean of 3')).toBeVisible()
    await page.keyboard.press('Enter')
    await expect(heading).not.toHaveText('Stakes')
    const item = await program.call('item.open', { id: stakes })
    // (96 + 97 + 98)/3 − 12 = 85 g, by the pieces owned.
    expect(item.weighings[0]).toMatchObject({
      readingsMg: [96_000, 97_000, 98_000],
      tareMg: 12_000,
      tareKind: 'reading',
      pieces: owned,
      massMg: 85_000 / owned,
    })

    await page.evaluate((id) => (location.hash = `#/scale/${id}`), stakes)
    await page.evaluate((id) => (location.hash = `#/scale/${id}/`), stakes)
    await expect(heading).toHaveText('Stakes')
    await page.keyboard.type('120')
    await page.keyboard.press('Escape')
    await page.keyboard.type('120')
    await page.getByRole('button', { name: 'damp', exact: true }).click()
    await expect(page.getByText(/of water against/)).toBeVisible()
    await page.getByRole('button', { name: /Keep and next/ }).click()
    await expect(heading).not.toHaveText('Stakes')
    const after = await program.call('item.open', { id: stakes })
    expect(after.weighings[0]).toMatchObject({ damp: true })
    const all = await program.call('closet.all', {})
    expect(all.massMg[all.name.indexOf('Stakes')]).toBe(85_000 / owned)
    await page.getByRole('button', { name: 'Take back Stakes' }).first().click()
    await expect(page.getByText('1 kept this session')).toBeVisible()
  })

  test('Pieces are counted by weight where that is sure, and asked for where it is not', async ({ page }) => {
    await page.keyboard.type('96')
    await page.keyboard.press('Tab')
    await page.keyboard.press('q')
    const dialog = page.getByRole('dialog', { name: 'Pieces on the plate' })
    await dialog.getByLabel('The sample reads').fill('120')
    await expect(dialog.getByText('8 pieces')).toBeVisible()
    await dialog.getByLabel('The sample reads').fill('4')
    await expect(dialog.getByText(/not sure/)).toBeVisible()
    await dialog.getByLabel('The sample reads').fill('120')
    await dialog.getByRole('button', { name: 'take it' }).click()
    await dialog.getByRole('button', { name: /So many/ }).click()
    await expect(page.getByRole('row', { name: /pieces/ })).toContainText(/8\s×\s12/)
  })

  test('A filled container keeps its contents as a weighed amount, and its own mass stays', async ({ page, program }) => {
    const all = await program.call('closet.all', {})
    const row = all.name.indexOf('Fuel canister, empty')
    expect(all.isContainer[row]).toBe(true)
    await page.evaluate((id) => (location.hash = `#/scale/${id}`), all.id[row]!)
    await expect(page.getByRole('region', { name: bench }).getByRole('heading', { level: 2 })).toHaveText('Fuel canister, empty')
    await page.getByRole('radio', { name: 'filled' }).click()
    await page.keyboard.type('180')
    await page.keyboard.press('Tab')
    const contentsMg = 180_000 - all.massMg[row]!
    await expect(page.getByText(new RegExp(`${Math.round(contentsMg / 1000)}\\sg`)).first()).toBeVisible()
    await page.getByRole('button', { name: /Keep and next/ }).click()
    await expect(page.getByText(/kept as weighed/).first()).toBeVisible()
    const planned = await program.call('loadout.planned', {})
    const open = await program.call('loadout.open', { ids: [...new Set(planned.map((one) => one.loadoutId))] })
    const lines = open.flatMap((one) => one.line).filter((line) => line.containerId === all.id[row] && line.amountFrom === 'weighed')
    // Gas: one unit is one gram, so thousandths of the unit are milligrams.
    expect(lines.map((line) => line.amountMilli)).toContain(contentsMg)
    expect((await program.call('closet.all', {})).massMg[row]).toBe(all.massMg[row])
    await page.keyboard.press('Control+z')
    await expect(page.getByText(/^Undone/).first()).toBeVisible()
  })

  test('A weighing says what it would change, warns of what cannot be, and opens to its working', async ({ page }) => {
    await page.evaluate(() => (location.hash = '#/scale'))
    const region = page.getByRole('region', { name: bench })
    await page.keyboard.type('371')
    await expect(region.getByText(/the base weight of Pole-pitched, autumn reads/)).toBeVisible()
    await page.keyboard.press('Tab')
    await page.locator('body').press('w')
    await expect(page.getByRole('dialog', { name: 'Working of Reading' })).toContainText('JCGM 100')
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    await page.keyboard.type('3,2 oz')
    await region.getByRole('button', { name: '3.2 oz' }).click()
    await expect(page.getByRole('button', { name: /^Reading 91 g/ }).or(page.getByLabel('Reading', { exact: true }))).toBeVisible()
    await page.keyboard.press('Escape')
    await page.keyboard.type('9 kg')
    await expect(region.getByText(/more than this scale carries/)).toBeVisible()
    await page.keyboard.press('Enter')
    await expect(page.getByText('0 kept this session')).toBeVisible()
    await page.keyboard.press('Escape')
    await page.keyboard.type('12 g')
    await expect(region.getByText(/a finer scale would say more/)).toBeVisible()
    await page.keyboard.press('Escape')
    const first = await region.getByRole('heading', { level: 2 }).textContent()
    await page.keyboard.press('ArrowDown')
    await expect(region.getByRole('heading', { level: 2 })).not.toHaveText(first ?? '')
    await page.keyboard.press('ArrowUp')
    await expect(region.getByRole('heading', { level: 2 })).toHaveText(first ?? '')
  })

  test('The queue prints as rows with an empty box, and is typed in row by row as one step', async ({ page, program }) => {
    await page.evaluate(() => {
      window.print = () => void dispatchEvent(new Event('beforeprint'))
    })
    await page.keyboard.press('Control+p')
    await page.emulateMedia({ media: 'print' })
    const paper = page.locator('.paper')
    await expect(paper.getByRole('heading', { name: 'To be weighed' })).toBeVisible()
    const names = await paper.locator('tbody tr td:nth-child(2)').allTextContents()
    expect(names.length).toBeGreaterThan(10)
    await page.emulateMedia({ media: 'screen' })
    await page.evaluate(() => dispatchEvent(new Event('afterprint')))

    await page.getByRole('button', { name: 'type in rows' }).click()
    await expect(page.getByRole('radio', { name: /as printed/ })).toBeChecked()
    await page.keyboard.type('360')
    await page.keyboard.press('Enter')
    await page.keyboard.type('abc')
    await page.keyboard.press('Control+Enter')
    await expect(page.getByRole('alert')).toContainText('cannot be read yet')
    await page.keyboard.press('Control+a')
    await page.keyboard.type('320')
    await page.keyboard.press('Enter')
    await page.keyboard.type('0.1 kg')
    await expectAccessible(page)
    await page.keyboard.press('Control+Enter')
    await expect(page.getByText('3 kept this session')).toBeVisible()
    const all = await program.call('closet.all', {})
    const each = (name: string) => (all.massMg[all.name.indexOf(name)] ?? 0) * all.pieces[all.name.indexOf(name)]!
    expect(names.slice(0, 3).map(each)).toEqual([360_000, 320_000, 100_000])
    await page.keyboard.press('Control+z')
    await expect(page.getByText('0 kept this session')).toBeVisible()
  })

  test('A scale is added and put away; the bench is clean for every reader, in paper and at night', async ({ page, program }) => {
    await page.getByRole('button', { name: 'Scales' }).click()
    await page.getByRole('menuitem', { name: 'Add a scale…' }).click()
    await page.keyboard.type('Letter scale')
    await page.getByLabel('Steps').fill('0.1 g')
    await page.getByLabel('Carries up to').fill('500 g')
    await page.keyboard.press('Enter')
    await expect(page.getByText(/Letter scale by hand, 0\.1\sg steps, to 0\.5\skg/).first()).toBeVisible()
    const added = (await program.call('scale.all', {})).at(-1)
    expect(added).toMatchObject({ name: 'Letter scale', stepMg: 100, capacityMg: 500_000 })
    await page.keyboard.type('96.4')
    await expectAccessible(page)
    await page.emulateMedia({ colorScheme: 'dark' })
    await expectAccessible(page)
  })
})

test.describe('settings', () => {
  test.use({ demo: true })

  test('Units change at once, everywhere, and stay; theme and letter keys too', async ({ page }) => {
    await inGrams(page)
    await page.goto(`${new URL(page.url()).origin}/#/settings`)
    await page.getByRole('radio', { name: '14.5 oz, 9 lb 8.0 oz' }).click()
    await page.getByRole('radio', { name: 'night' }).click()
    await page.getByRole('radiogroup', { name: 'Letter keys' }).getByRole('radio', { name: 'off' }).click()
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark')
    await expectAccessible(page)
    await page.keyboard.press('Alt+1')
    // 618 g is 21.8 oz (NIST SP 811: 28.349523 g an ounce).
    await expect(page.getByRole('row', { name: /Down quilt, 0/ })).toContainText('21.8 oz')
    await page.keyboard.press('n')
    await expect(page.getByRole('dialog')).toBeHidden()
    await page.reload()
    await expect(page.getByRole('row', { name: /Down quilt, 0/ })).toContainText('21.8 oz')
    await page.keyboard.press('Alt+2')
    await page.keyboard.type('7')
    await expect(page.getByLabel('Reading', { exact: true })).toHaveValue('7')
  })

  test('Words are renamed, hidden and added, and each is a step by its name', async ({ page, program }) => {
    await page.goto(`${new URL(page.url()).origin}/#/settings/words`)
    await page.getByLabel('Extras, your word').fill('Odds and ends')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Hide head rest' }).click()
    await expect(page.getByRole('button', { name: 'Show head rest' })).toBeVisible()
    await page.getByRole('button', { name: 'add an own one' }).first().click()
    await page.keyboard.type('camera')
    await page.keyboard.press('Enter')
    await expect(page.getByLabel('camera, your word')).toBeVisible()
    await expectAccessible(page)
    const words = await program.call('word.all', {})
    expect(words.find((one) => one.kind === 'area' && one.code === 'extras')?.label).toBe('Odds and ends')
    expect(words.find((one) => one.label === 'camera')).toMatchObject({ kind: 'duty', own: true, code: 'own-camera' })
    await page.getByRole('link', { name: 'History' }).click()
    await expect(page.getByRole('row', { name: /Add the word camera/ })).toBeVisible()
    await expectAccessible(page)
    for (let n = 0; n < 3; n++) await page.getByRole('button', { name: /^Undo .*Ctrl/ }).click()
    await expect(page.getByRole('row', { name: /word/ })).toHaveCount(0)
    await page.getByRole('link', { name: 'Words' }).click()
    await expect(page.getByLabel('Extras, your word')).toHaveValue('Extras')
  })

  test('A backup is made and restored after it is said what happens', async ({ page, program }) => {
    await page.goto(`${new URL(page.url()).origin}/#/settings`)
    await page.getByRole('button', { name: 'Back up', exact: true }).click()
    await expect(page.getByRole('row', { name: /by hand/ })).toBeVisible()
    const before = await program.call('closet.all', {})
    await program.call('item.add', { name: 'Not for long', kitArea: 'extras' })
    await page
      .getByRole('row', { name: /by hand/ })
      .getByRole('button')
      .click()
    await expect(page.getByRole('dialog')).toContainText('What stands now is kept first')
    await page.getByRole('button', { name: 'Restore it' }).click()
    await expect(page.getByRole('dialog')).toBeHidden()
    await expect(page.getByRole('row', { name: /before a restore/ })).toBeVisible()
    expect((await program.call('closet.all', {})).name).toEqual(before.name)
    await page.keyboard.press('Alt+1')
    await expect(page.getByText('Not for long')).toHaveCount(0)
  })

  test('Everything goes out into one archive and comes back whole', async ({ page, program }) => {
    await page.goto(`${new URL(page.url()).origin}/#/settings`)
    const before = await program.call('closet.all', {})
    const coming = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Write one' }).click()
    const download = await coming
    expect(download.suggestedFilename()).toMatch(/\.tarework$/)
    const bytes = readFileSync(await download.path())
    await program.call('items.remove', { ids: before.id.slice(0, 20) })
    await page
      .getByLabel('Archive to take in')
      .setInputFiles({ name: 'cut.tarework', mimeType: 'application/zip', buffer: bytes.subarray(0, bytes.length / 2) })
    await expect(page.getByRole('alert')).toBeVisible()
    await page.getByLabel('Archive to take in').setInputFiles({ name: 'all.tarework', mimeType: 'application/zip', buffer: bytes })
    await expect(page.getByRole('row', { name: /^items/ })).toContainText(String(before.id.length))
    await page.getByRole('button', { name: 'Take it in' }).click()
    await expect(page.getByRole('dialog')).toBeHidden()
    const after = await program.call('closet.all', {})
    expect({ ...after, id: [], setId: [] }).toEqual({ ...before, id: [], setId: [] })
  })
})

test('A walker keeps each field as it is left, says what cannot be, and is one of several', async ({ page, program }) => {
  await inGrams(page)
  await page.goto(`${new URL(page.url()).origin}/#/walker`)
  await expect(page.getByText('Nobody is named yet.')).toBeVisible()
  await expectAccessible(page)
  await page.keyboard.press('n')
  await page.getByLabel('Body mass').fill('58')
  await page.keyboard.press('Tab')
  await expect(page.getByLabel('Body mass')).toHaveValue(/^58\skg$/)
  await page.getByLabel('Height').fill('5\'6"')
  await page.keyboard.press('Tab')
  await expect(page.getByLabel('Height')).toHaveValue(/^168\scm$/)
  await page.getByLabel('Born in').fill('90')
  await page.keyboard.press('Tab')
  await expect(page.getByRole('alert')).toHaveText('A year in four digits.')
  await page.getByLabel('Born in').fill('1990')
  await page.keyboard.press('Tab')
  await page.getByRole('textbox', { name: 'Pace' }).fill('1.2')
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'no down' }).click()
  // LOOK.md: for 58 kg the marks are 11.6 and 17.4 kg.
  await expect(page.getByRole('button', { name: /^Easy mark 11\.6 kg/ })).toBeVisible()
  await expect(page.getByRole('button', { name: /^Upper mark 17\.4 kg/ })).toBeVisible()
  await expectAccessible(page)
  await expect(page.getByRole('button', { name: 'no down' })).toHaveAttribute('aria-pressed', 'true')
  const [me] = await program.call('walker.all', {})
  expect(JSON.parse(me!.profile)).toMatchObject({
    bodyMassG: 58_000,
    heightMm: 1676,
    bornYear: 1990,
    paceFactor: 1.2,
    principles: ['no-down'],
  })
  await page.getByRole('button', { name: /Add a walker/ }).click()
  await expect(page.getByRole('navigation', { name: 'Walkers' }).getByRole('link')).toHaveCount(2)
  await page.getByRole('button', { name: /^remove Walker 2/ }).click()
  await page.keyboard.press('Control+z')
  await expect(page.getByRole('navigation', { name: 'Walkers' }).getByRole('link')).toHaveCount(2)
})

test('A damaged database is named, left as it is, and the newest good backup takes its place', async ({ page }) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'tarework-damaged-'))
  const first = await startHost({ dataDir })
  await openPage(page, first.url)
  await call(page, 'item.add', { name: 'Rain jacket', kitArea: 'clothing' })
  await call(page, 'backup.now', {})
  await page.goto('about:blank')
  await first.stop()
  const file = join(dataDir, 'tarework.sqlite')
  writeFileSync(file, 'this is no database '.repeat(400))

  const second = await startHost({ dataDir })
  await page.goto(second.url)
  await expect(page.getByRole('heading', { name: 'The data cannot be read' })).toBeVisible()
  await expectAccessible(page)
  expect(readFileSync(file, 'utf8')).toContain('this is no database')
  await page
    .getByRole('button', { name: /^Restore the backup of/ })
    .first()
    .click()
  await expect(page.getByRole('row', { name: /Rain jacket/ })).toBeVisible()
  await page.goto('about:blank')
  await second.stop()
  rmSync(dataDir, { recursive: true, force: true })
})
