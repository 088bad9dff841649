import type { Page } from '@playwright/test'
import type { InputOf } from '../../src-main/contract.ts'
import { expect, expectAccessible, inGrams, test } from './support.ts'

const closet: readonly (readonly [string, InputOf<'item.add'>['kitArea'], number, number, string])[] = [
  ['Pole-pitched shelter', 'shelter', 514, 1, 'shelter'],
  ['Stakes', 'shelter', 10.5, 8, 'stake'],
  ['Quilt', 'sleep', 618, 1, 'top-insulation'],
  ['Foam mat', 'sleep', 183, 1, 'ground-insulation'],
  ['Frameless pack', 'carry', 436, 1, 'pack'],
  ['Rain jacket', 'clothing', 214, 1, 'rain-shell'],
  ['Trail shoes', 'footwear', 274, 2, 'shoes'],
  ['Squeeze filter', 'water', 68, 1, 'water-treatment'],
]

test.beforeEach(async ({ page, program }) => {
  for (const [name, kitArea, massG, pieces, duty] of closet)
    await program.call('item.add', {
      name,
      kitArea,
      pieces,
      weighedMg: massG * 1000,
      weighedOn: '2026-10-01',
      duties: [{ duty, shared: false }],
      usualLane: duty === 'shoes' ? 'on_me' : 'in_pack',
    })
  await program.call('loadout.add', { name: 'Autumn' })
  await inGrams(page)
  await page.goto(`${new URL(page.url()).origin}/#/trips`)
  await page.getByRole('link', { name: 'Autumn' }).click()
  await expect(page.getByRole('heading', { name: /In the pack/ })).toBeVisible()
})

const onShelf = (page: Page, name: string) => page.locator('.rows [role=option]', { hasText: name })
const inLane = (page: Page, lane: string, name: string) => page.locator(`[data-lane=${lane}] [data-line]`, { hasText: name })
const baseWeight = (page: Page) => page.getByRole('button', { name: /^base weight .* open its working$/ }).last()

async function centre(page: Page, selector: string): Promise<{ x: number; y: number }> {
  const box = await page.locator(selector).first().boundingBox()
  if (!box) throw new Error(`${selector} is not on the page`)
  return { x: box.x + box.width / 2, y: box.y + Math.min(box.height / 2, 30) }
}

test('An item dragged by mouse lands in the lane, and the would-be total is shown before it is dropped', async ({ page, program }) => {
  const from = await onShelf(page, 'Pole-pitched shelter').boundingBox()
  const to = await centre(page, '[data-lane=in_pack]')
  await page.mouse.move(from!.x + 30, from!.y + 8)
  await page.mouse.down()
  await page.mouse.move(from!.x + 60, from!.y + 20, { steps: 3 })
  await page.mouse.move(to.x, to.y, { steps: 5 })
  await expect(page.getByText(/then pack weight 0\.51\skg/)).toBeVisible()
  await page.mouse.up()
  await expect(inLane(page, 'in_pack', 'Pole-pitched shelter')).toBeVisible()
  const [head] = await program.call('loadout.all', {})
  const [open] = await program.call('loadout.open', { ids: [head!.id] })
  expect(open!.line.map((line) => [line.lane, line.pieces])).toEqual([['in_pack', 1]])
})

test('Esc while dragging puts back and changes nothing', async ({ page, program }) => {
  const from = await onShelf(page, 'Quilt').boundingBox()
  const to = await centre(page, '[data-lane=in_pack]')
  await page.mouse.move(from!.x + 30, from!.y + 8)
  await page.mouse.down()
  await page.mouse.move(to.x, to.y, { steps: 6 })
  await page.keyboard.press('Escape')
  await page.mouse.up()
  await expect(onShelf(page, 'Quilt')).toBeVisible()
  expect((await program.call('loadout.all', {}))[0]!.lines).toBe(0)
})

test('By keys alone: lift, choose the lane, drop, change pieces, take out, undo', async ({ page }) => {
  await page.getByRole('listbox', { name: /^On the shelf/ }).focus()
  await page.keyboard.press('Home')
  await page.keyboard.press('m')
  await page.keyboard.press('ArrowLeft')
  await page.keyboard.press('Enter')
  await expect(page.locator('[data-lane=on_me] [data-line]')).toHaveCount(1)
  await page.getByRole('listbox', { name: /^On the shelf/ }).focus()
  for (let n = 0; n < 7; n++) await page.keyboard.press('Enter')
  await expect(page.locator('.rows [role=option]')).toHaveCount(0)
  // 514 is on me if it was lifted first; the sum over both lanes is the same whatever came first.
  const inPack = closet.reduce((sum, [, , massG, pieces]) => sum + massG * pieces, 0)
  await expect(page.getByRole('button', { name: new RegExp(`^Skin-out weight ${(inPack / 1000).toFixed(2)}\\skg`) })).toBeVisible()
  await inLane(page, 'in_pack', 'Stakes').focus()
  await page.keyboard.press('q')
  await page.keyboard.press('Control+a')
  await page.keyboard.type('6')
  await page.keyboard.press('Enter')
  await expect(inLane(page, 'in_pack', 'Stakes')).toContainText('6 × 10.5')
  await inLane(page, 'in_pack', 'Stakes').focus()
  await page.keyboard.press('Delete')
  await expect(inLane(page, 'in_pack', 'Stakes')).toHaveCount(0)
  await page.keyboard.press('Control+z')
  await expect(inLane(page, 'in_pack', 'Stakes')).toContainText('6 × 10.5')
})

test('A lane total opens to its parts, each with its source', async ({ page }) => {
  await page.getByRole('listbox', { name: /^On the shelf/ }).focus()
  await page.keyboard.press('Home')
  for (let n = 0; n < 3; n++) await page.keyboard.press('Enter')
  await baseWeight(page).click()
  const working = page.getByRole('dialog', { name: /^Working of base weight/ })
  await expect(working).toContainText('Pole-pitched shelter')
  await expect(working).toContainText('JCGM 100')
  await page.keyboard.press('Escape')
  await expect(working).toBeHidden()
})

test('A derived loadout shows what differs from its parent, one key away, and takes it back', async ({ page, program }) => {
  await page.getByRole('listbox', { name: /^On the shelf/ }).focus()
  for (let n = 0; n < 4; n++) await page.keyboard.press('Enter')
  await expect(page.locator('[data-lane=in_pack] [data-line]')).toHaveCount(4)
  await page.keyboard.press('l')
  await page.getByRole('menuitem', { name: /Derive another/ }).click()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: /Loadout Autumn, derived/ })).toBeVisible()
  await page.locator('[data-lane=in_pack] [data-line]').first().focus()
  await page.keyboard.press('Delete')
  await expect(page.locator('[data-lane=in_pack] [data-line]')).toHaveCount(3)
  await page.keyboard.press('v')
  const dialog = page.getByRole('dialog', { name: /Differences from Autumn/ })
  await expect(dialog.getByRole('row')).toHaveCount(2)
  await dialog.getByRole('checkbox').check()
  await dialog.getByRole('button', { name: /Take 1/ }).click()
  await expect(dialog).toContainText('Nothing differs')
  await page.keyboard.press('Escape')
  await expect(page.locator('[data-lane=in_pack] [data-line]')).toHaveCount(4)
  expect((await program.call('loadout.all', {})).map((one) => one.lines)).toEqual([4, 4])
})

test('The loadout is accessible with lines in it', async ({ page }) => {
  await page.getByRole('listbox', { name: /^On the shelf/ }).focus()
  for (let n = 0; n < 5; n++) await page.keyboard.press('Enter')
  await expect(page.locator('[data-lane=in_pack] [data-line]')).not.toHaveCount(0)
  await expectAccessible(page)
})

test.describe('by touch', () => {
  test.use({ hasTouch: true })
  test('A hold of a finger lifts; a quick move scrolls', async ({ page, program }) => {
    const client = await page.context().newCDPSession(page)
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number) =>
      client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] })
    const from = await onShelf(page, 'Foam mat').boundingBox()
    const to = await centre(page, '[data-lane=in_pack]')
    await touch('touchStart', from!.x + 40, from!.y + 8)
    await page.waitForTimeout(350)
    await touch('touchMove', from!.x + 60, from!.y + 10)
    for (let step = 1; step <= 5; step++)
      await touch('touchMove', from!.x + ((to.x - from!.x) * step) / 5, from!.y + ((to.y - from!.y) * step) / 5)
    await touch('touchEnd', to.x, to.y)
    await expect(inLane(page, 'in_pack', 'Foam mat')).toBeVisible()
    expect((await program.call('loadout.all', {}))[0]!.lines).toBe(1)
    const other = await onShelf(page, 'Quilt').boundingBox()
    await touch('touchStart', other!.x + 40, other!.y + 8)
    await touch('touchMove', to.x, to.y)
    await touch('touchEnd', to.x, to.y)
    await expect(onShelf(page, 'Quilt')).toBeVisible()
  })
})
