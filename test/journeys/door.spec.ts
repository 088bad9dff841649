import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { browserPath } from '../browser.ts'
import { startHost } from '../host.ts'
import { call, expect, expectAccessible, inGrams, openPage, test } from './support.ts'

// The host makes PDFs with the browser that these tests drive.
process.env['TAREWORK_BROWSER'] = browserPath()
if (process.getuid?.() === 0) process.env['TAREWORK_BROWSER_ARGS'] = '--no-sandbox'

test.use({ demo: true })

/** The demo trip's chosen loadout, its list opened. */
async function openDoor(page: Page): Promise<{ readonly id: number; readonly tripId: number }> {
  const heads = await call(page, 'loadout.all', {})
  const { id, tripId } = heads.find(({ name }) => name === 'Pole-pitched, autumn')!
  await page.evaluate((to) => (location.hash = to), `#/trips/door/${id}`)
  await expect(page.getByRole('heading', { name: /^Door list/ }).first()).toBeVisible()
  return { id, tripId: tripId! }
}
const box = (page: Page, name: string | RegExp) => page.getByRole('checkbox', { name }).first()
const confirmed = (page: Page, n: number) => expect(page.getByText(new RegExp(`^${n} of 31 confirmed`)).first()).toBeVisible()

test('by keyboard alone: one key a line, missing, left open, the pack on the hook, closed, and undone', async ({ page }) => {
  await inGrams(page)
  const { tripId } = await openDoor(page)
  // What was forgotten on an earlier trip has the keys first; here the list is gone through from its top.
  await expect(box(page, /^Map and compass/)).toBeFocused()
  await box(page, /^Single-skin shelter/).focus()
  await page.keyboard.press(' ')
  await expect(box(page, /^Single-skin shelter/)).toBeChecked()
  await expect(box(page, /^Stakes/)).toBeFocused()
  await page.keyboard.press('o')
  await expect(box(page, /^Down quilt/)).toBeFocused()
  await page.keyboard.press('Delete')
  await expect(box(page, 'Down quilt, 0 °C comfort, missing')).not.toBeChecked()
  // A duty without an item is called out at once.
  await expect(page.getByRole('region', { name: 'Needs' })).toContainText('top insulation')
  await expect(page.getByRole('heading', { name: /^Without an item/ })).toBeVisible()
  // What is only wished for is never asked, and named as not ready.
  await expect(page.getByRole('checkbox', { name: /^Groundsheet/ })).toHaveCount(0)
  await expect(page.getByRole('region', { name: 'Not ready' })).toContainText('Groundsheet, thin film')
  // To the end, and round to the one that was left open.
  for (let n = 1; n < 30; n++) {
    await confirmed(page, n)
    await page.keyboard.press(' ')
  }
  await confirmed(page, 30)
  // Without the quilt the list is 3,863 − 58 (kilt) − 46 (groundsheet) + 68 + 68 + 60 (all confirmed) − 618 g, and a rain jacket short of it 214 g less.
  await page.keyboard.press('h')
  await page.getByLabel('The scale reads').fill('3123')
  await page.keyboard.press('Enter')
  await expect(page.getByText(/214\sg under the list’s 3.34\skg/)).toBeVisible()
  await expect(page.getByText(/^Rain jacket, 214\sg$/)).toBeVisible()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('dialog', { name: 'Close the door list' })).toContainText(
    '1 missing line stays at home: Down quilt, 0 °C comfort',
  )
  await page.keyboard.press('Enter')
  await expect(page.getByText('The trip is out: what was packed stands as it was.')).toBeVisible()
  const record = await call(page, 'record.open', { tripId })
  expect(record.packed).toHaveLength(30)
  expect(record.packed.map(({ name }) => name)).not.toContain('Down quilt, 0 °C comfort')
  await page.keyboard.press('Control+z')
  await expect(page.getByText('what was packed stands')).toHaveCount(0)
  expect((await call(page, 'trip.all', {})).find(({ id }) => id === tripId)?.state).toBe('planned')
})

test.describe('in the hand', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true })
  test('by touch: confirm, missing, a tap on a line, a reading, and out', async ({ page }) => {
    await inGrams(page)
    const { tripId } = await openDoor(page)
    await expect(page.getByRole('navigation', { name: 'Rooms' })).toBeHidden()
    // What was forgotten on an earlier trip comes first.
    await page.getByRole('button', { name: 'Confirm' }).tap()
    await expect(box(page, /^Map and compass/)).toBeChecked()
    await page.getByRole('button', { name: 'Confirm' }).tap()
    await expect(box(page, /^Single-skin shelter/)).toBeChecked()
    await page.getByRole('button', { name: 'Missing' }).tap()
    await expect(box(page, /^Stakes, missing/)).toBeVisible()
    await box(page, /^Headlamp/).tap()
    await expect(box(page, /^Headlamp/)).toBeChecked()
    const size = (await page.getByRole('button', { name: 'Confirm' }).boundingBox())!
    expect(size.height).toBeGreaterThanOrEqual(48)
    expect((await box(page, /^Headlamp/).boundingBox())!.height).toBeGreaterThanOrEqual(48)
    for (let n = 3; n < 30; n++) {
      await expect(page.getByText(`${n} of 31 confirmed`).first()).toBeVisible()
      await page.getByRole('button', { name: 'Confirm' }).tap()
    }
    await page.getByRole('button', { name: 'Type a reading' }).tap()
    await page.getByLabel('The scale reads').fill('3900 g')
    await page.getByRole('button', { name: 'Hold it against the list' }).tap()
    await expect(page.getByText('on the hook').first()).toBeVisible()
    await page.getByRole('button', { name: 'Go', exact: true }).tap()
    await page.getByRole('dialog').getByRole('button', { name: /^Go/ }).tap()
    await expect(page.getByText('what was packed stands')).toBeVisible()
    expect((await call(page, 'record.open', { tripId })).packed.map(({ name }) => name)).not.toContain('Stakes')
  })
})

test('a half-packed list is there after a power cut, and what was missing then is asked first the next time', async ({ page }) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'tarework-door-'))
  const first = await startHost({ dataDir, demo: true })
  await openPage(page, first.url)
  await openDoor(page)
  await box(page, /^Single-skin shelter/).focus()
  await page.keyboard.press(' ')
  await confirmed(page, 1)
  await page.keyboard.press('Delete')
  await expect(box(page, /^Stakes, missing/)).toBeVisible()
  await page.goto('about:blank')
  first.process.kill('SIGKILL')
  await new Promise((done) => first.process.once('exit', done))
  const second = await startHost({ dataDir, demo: true })
  await openPage(page, second.url)
  const { id, tripId } = await openDoor(page)
  await confirmed(page, 1)
  await box(page, /^Stakes, missing/).click()
  await confirmed(page, 2)
  await call(page, 'trip.close', { id: tripId, loadoutId: id })
  const next = await call(page, 'loadout.add', { name: 'The next one', fromId: id })
  await page.evaluate((to) => (location.hash = to), `#/trips/door/${next.id}`)
  await expect(page.getByRole('heading', { name: /forgotten before/ })).toBeVisible()
  await expect(page.getByRole('list', { name: 'Forgotten before' })).toContainText(/Stakes.*nearly forgotten/)
  await page.goto('about:blank')
  await second.stop()
  rmSync(dataDir, { recursive: true, force: true })
})

const hasPdftotext = spawnSync('pdftotext', ['-v']).error === undefined

test('as a PDF: one page, every line with its box, what is not ready named as such', async ({ page }) => {
  await inGrams(page)
  const { id } = await openDoor(page)
  await page.keyboard.press(' ')
  await confirmed(page, 1)
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: 'As a PDF' }).click()
  const path = await (await waiting).path()
  expect(statSync(path).size).toBeGreaterThan(10_000)
  const bytes = readFileSync(path, 'latin1')
  expect(bytes.startsWith('%PDF-')).toBe(true)
  expect(bytes.match(/\/Type\s*\/Page\b/g)).toHaveLength(1)
  test.skip(!hasPdftotext, 'no pdftotext on this computer: the text of the PDF is not looked at')
  const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })
  const [open] = await call(page, 'loadout.open', { ids: [id] })
  const closet = await call(page, 'closet.all', {})
  const nameOf = (itemId: number) => closet.name[closet.id.indexOf(itemId)]!
  const names = open!.line.flatMap(({ itemId }) => (itemId === null ? [] : [nameOf(itemId)]))
  for (const name of names) expect(text).toContain(name)
  for (const words of [
    'Door list: Skarn hills, the long ridge',
    '1 of 31 confirmed',
    'Carried by Mira',
    'Last, at the door',
    'off the charger',
    '✓',
  ])
    expect(text).toContain(words)
  expect(text).toMatch(/Groundsheet, thin film\s+wished for/)
  expect(text.split('\f').filter((one) => one.trim() !== '')).toHaveLength(1)
})

test.describe('accessible', () => {
  for (const colorScheme of ['light', 'dark'] as const)
    test(`in ${colorScheme}, on a desk and in the hand, and with its dialogs`, async ({ page }) => {
      await page.emulateMedia({ colorScheme })
      await openDoor(page)
      await page.keyboard.press(' ')
      await page.keyboard.press('Delete')
      await expectAccessible(page)
      await page.keyboard.press('h')
      await expectAccessible(page)
      await page.getByLabel('The scale reads').fill('4 kg')
      await page.keyboard.press('Enter')
      await expect(page.getByText(/the list/).first()).toBeVisible()
      await page.setViewportSize({ width: 390, height: 844 })
      await expectAccessible(page)
    })
})
