/** The whole job on real input, in one sitting and over a restart; every figure is held against a sum made here. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Locator, Page } from '@playwright/test'
import type { ClosetColumns } from '../../src-main/contract.ts'
import { startHost } from '../host.ts'
import { things } from './messy-sheet.ts'
import { plugInScale, settle } from './simulated-scale.ts'
import { call, expect, inGrams, openPage, test } from './support.ts'

test.use({ hasTouch: true })

type Lane = 'on_me' | 'in_pack'
interface Line {
  readonly name: string
  readonly lane: Lane
}

/** 1 oz = 28.349523125 g, 1 lb = 16 oz (NIST Handbook 44, appendix C). What the scale shows, and what that is in grams. */
const typed: readonly (readonly [string, number])[] = [
  ['371', 371],
  ['330 g', 330],
  ['3.4 oz', 3.4 * 28.349523125],
  ['0.18kg', 180],
  ['1 lb 3 oz', 19 * 28.349523125],
  ['6 1/4 oz', 6.25 * 28.349523125],
  ['1,164', 1164],
  ['232 grams', 232],
  ['14.5 oz', 14.5 * 28.349523125],
]
/** The tenth comes from the scale: stable, grams, 0x019c = 412 (worked example of the HID report, provisions.md 9.5). */
const steady412 = [4, 2, 0, 0x9c, 1]

const shelfRow = (page: Page, name: string): Locator => page.locator('.rows [role=option]', { hasText: name })
const lineIn = (page: Page, lane: Lane, name: string): Locator => page.locator(`[data-lane=${lane}] [data-line]`, { hasText: name })

async function newLoadout(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Alt+3')
  await page.getByRole('button', { name: 'A loadout', exact: true }).click()
  await page.getByLabel('Name').fill(name)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: /In the pack/ })).toBeVisible()
  await expect(page.getByRole('button', { name: new RegExp(`Loadout ${name}`) })).toBeVisible()
}

/** Narrows the shelf to one thing and says where it lies and where it is to go. */
async function fromTo(page: Page, { name, lane }: Line): Promise<readonly [number, number, number, number]> {
  await page.getByLabel('Search the shelf').fill(name)
  await expect(shelfRow(page, name)).toHaveCount(1)
  const from = await shelfRow(page, name).boundingBox()
  const to = await page.locator(`[data-lane=${lane}]`).first().boundingBox()
  return [from!.x + 30, from!.y + 8, to!.x + to!.width / 2, to!.y + Math.min(to!.height / 2, 30)]
}

async function byMouse(page: Page, line: Line): Promise<void> {
  const [x, y, toX, toY] = await fromTo(page, line)
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 20, y + 10, { steps: 3 })
  await page.mouse.move(toX, toY, { steps: 5 })
  await page.mouse.up()
  await expect(lineIn(page, line.lane, line.name)).toBeVisible()
}

async function byTouch(page: Page, line: Line): Promise<void> {
  const [x, y, toX, toY] = await fromTo(page, line)
  const client = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number) =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] })
  await touch('touchStart', x, y)
  await page.waitForTimeout(350)
  for (let step = 1; step <= 5; step++) await touch('touchMove', x + ((toX - x) * step) / 5, y + ((toY - y) * step) / 5)
  await touch('touchEnd', toX, toY)
  await expect(lineIn(page, line.lane, line.name)).toBeVisible()
}

async function byKeys(page: Page, { name, lane }: Line): Promise<void> {
  await page.keyboard.press('/')
  await page.keyboard.press('Control+a')
  await page.keyboard.type(name)
  await expect(shelfRow(page, name)).toHaveCount(1)
  await page.keyboard.press('Enter')
  await page.keyboard.press('m')
  if (lane === 'on_me') await page.keyboard.press('ArrowLeft')
  await page.keyboard.press('Enter')
  await expect(lineIn(page, lane, name)).toBeVisible()
}

/** What the closet holds by uid, as far as a person would miss it. */
const told = (closet: ClosetColumns) =>
  Object.fromEntries(closet.uid.map((uid, row) => [uid, [closet.name[row], closet.pieces[row], closet.massMg[row], closet.massFrom[row]]]))

async function everything(page: Page) {
  const heads = await call(page, 'loadout.all', {})
  const opens = heads.length === 0 ? [] : await call(page, 'loadout.open', { ids: heads.map((one) => one.id) })
  const lines = opens.map((one) => one.line.map((line) => [line.itemId, line.lane, line.pieces]))
  return { closet: told(await call(page, 'closet.all', {})), names: heads.map((one) => one.name), lines }
}

test('Brought in, weighed, loaded out, compared, undone, redone, closed and opened again', async ({ page, program }) => {
  test.setTimeout(240_000)
  const all = things()
  expect(all).toHaveLength(200)
  const dataDir = mkdtempSync(join(tmpdir(), 'tarework-whole-'))
  const first = await startHost({ dataDir })
  expect(program.host.url).not.toBe(first.url)
  await openPage(page, first.url)
  await inGrams(page)

  // 1. The sheet in; it makes the closet alone.
  await page.keyboard.press('i')
  await page.locator('input[type=file]').setInputFiles(join(import.meta.dirname, '../fixtures/sheets/messy-200.csv'))
  await page.getByLabel('This is also a loadout').uncheck()
  await page.getByRole('button', { name: /^Accept 200/ }).click()
  await expect(page).toHaveURL(/#\/closet$/)
  const grams = new Map(all.map((one) => [one.name, one.pieceG]))
  const pieces = new Map(all.map((one) => [one.name, one.pieces]))

  // 2. Ten weighings, the last from the scale itself.
  await page.keyboard.press('Alt+2')
  await plugInScale(page)
  const bench = page.getByRole('region', { name: 'Bench' })
  const heading = bench.getByRole('heading', { level: 2 })
  const weighed = new Set<string>()
  const keep = (name: string, netG: number): void => {
    weighed.add(name)
    grams.set(name, netG / pieces.get(name)!)
  }
  for (const [text, netG] of typed) {
    const name = (await heading.textContent()) ?? ''
    await page.keyboard.type(text)
    await page.keyboard.press('Enter')
    await expect(heading).not.toHaveText(name)
    keep(name, netG)
  }
  await bench.getByRole('button', { name: 'connect a USB scale' }).click()
  await expect(page.getByRole('dialog')).toBeVisible()
  await page.keyboard.press('Enter') // its name, as the scale gives it
  await expect(page.getByRole('dialog')).toBeHidden()
  await settle(page, [4, 2, 0, 1, 0]) // the first report after opening may be an old one
  const tenth = (await heading.textContent()) ?? ''
  await settle(page, steady412)
  await expect(page.getByRole('button', { name: /^Reading 412 g/ })).toBeVisible()
  await page.keyboard.press('Enter')
  await expect(page.getByText('10 kept this session')).toBeVisible()
  keep(tenth, 412)
  expect(weighed.size).toBe(10)

  // 3. Four loadouts: two by mouse, one by a finger, one by keys; each has a weighed thing and one known by the sheet alone.
  const known = all.filter((one) => one.pieceG !== null && !weighed.has(one.name)).map((one) => one.name)
  const measured = [...weighed]
  const lanesOf = (from: number): readonly Line[] =>
    [...measured.slice(from, from + 2), ...known.slice(from * 20, from * 20 + 3)].map((name, at) => ({
      name,
      lane: at % 3 === 1 ? 'on_me' : 'in_pack',
    }))
  const ways = [byMouse, byMouse, byTouch, byKeys]
  const loadouts = ['Spring', 'Summer', 'Autumn', 'Winter'].map((name, at) => ({ name, lines: lanesOf(at * 2), put: ways[at]! }))
  for (const { name, lines, put } of loadouts) {
    await newLoadout(page, name)
    for (const line of lines) await put(page, line)
  }

  // 4. Compared; every total is the sum made here, to the gram.
  await page.keyboard.press('l')
  await page.getByRole('menuitem', { name: 'Compare', exact: true }).click()
  const gramsOf = (lines: readonly Line[]): number => lines.reduce((sum, { name }) => sum + grams.get(name)! * pieces.get(name)!, 0)
  const expectSums = async (): Promise<void> => {
    const closet = await call(page, 'closet.all', {})
    for (const [name, pieceG] of grams) {
      const massMg = closet.massMg[closet.name.indexOf(name)] ?? null
      expect(massMg === null ? null : Math.round(massMg / 1000), name).toBe(pieceG === null ? null : Math.round(pieceG))
    }
    for (const { lines } of loadouts)
      await expect(page.locator('main')).toContainText(new RegExp(`${(gramsOf(lines) / 1000).toFixed(2)}\\skg`))
  }
  await expect(page.getByRole('heading', { name: 'Compare' })).toBeVisible()
  await expectSums()

  // 5. All of it undone, step by step, and redone.
  const done = await everything(page)
  expect(done.names).toHaveLength(4)
  // One accepted sheet, the scale's name, ten weighings, four loadouts, and a drop for every line.
  const steps = 1 + 1 + 10 + loadouts.reduce((sum, { lines }) => sum + 1 + lines.length, 0)
  await page.keyboard.press('Alt+1')
  const pressUntil = async (keys: string, side: 'undo' | 'redo'): Promise<number> => {
    for (let pressed = 0; ; pressed++) {
      const { rev, [side]: next } = await call(page, 'program.state', {})
      if (next === null) return pressed
      await page.keyboard.press(keys)
      await expect.poll(async () => (await call(page, 'program.state', {})).rev).toBeGreaterThan(rev)
    }
  }
  expect(await pressUntil('Control+z', 'undo')).toBe(steps)
  await expect(
    page
      .getByText('Nothing in the closet yet')
      .or(page.getByRole('button', { name: /^Add an item/ }))
      .first(),
  ).toBeVisible()
  expect(await everything(page)).toEqual({ closet: {}, names: [], lines: [] })
  expect(await pressUntil('Shift+Control+z', 'redo')).toBe(steps)
  expect(await everything(page)).toEqual(done)

  // 6. Closed and opened again: the same, on the disk and on the screen.
  await page.goto('about:blank')
  await first.stop()
  const second = await startHost({ dataDir })
  await openPage(page, second.url)
  expect(await everything(page)).toEqual(done)
  const ids = (await call(page, 'loadout.all', {})).map((one) => one.id)
  await page.evaluate((parts) => (location.hash = `#/compare/${parts}`), ids.join('/'))
  await expect(page.getByRole('heading', { name: 'Compare' })).toBeVisible()
  await expectSums()
  await page.goto('about:blank')
  await second.stop()
  rmSync(dataDir, { recursive: true, force: true })
})
