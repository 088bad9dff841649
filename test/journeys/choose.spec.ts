import type { Page } from '@playwright/test'
import type { InputOf } from '../../src-main/contract.ts'
import { call, expect, expectAccessible, inGrams, test } from './support.ts'

const closet: readonly (readonly [string, InputOf<'item.add'>['kitArea'], number, number, string])[] = [
  ['Two-skin tent', 'shelter', 1164, 1, 'shelter'],
  ['Flat tarp', 'shelter', 268, 1, 'shelter'],
  ['Stakes', 'shelter', 10, 6, 'stake'],
  ['Large pack', 'carry', 1200, 1, 'pack'],
  ['Small pack', 'carry', 436, 1, 'pack'],
  ['Rain jacket', 'clothing', 214, 1, 'rain-shell'],
  ['Camp chair', 'extras', 480, 1, 'seat'],
]

/** A small closet, a trip that asks a few duties of it, and a loadout that is heavier than it must be. */
async function begin(page: Page, asked: readonly string[]): Promise<void> {
  const ids = new Map<string, number>()
  for (const [name, kitArea, massG, pieces, duty] of closet) {
    const duties = [{ duty, shared: false }]
    const { id } = await call(page, 'item.add', { name, kitArea, pieces, weighedMg: massG * 1000, weighedOn: '2026-10-01', duties })
    ids.set(name, id)
  }
  await call(page, 'item.needs', { id: ids.get('Flat tarp')!, needs: [{ duty: 'stake', pieces: 4, kind: 'reserved' }] })
  const brief = JSON.stringify({ asked: asked.map((duty) => ({ duty, as: 'must' })) })
  const trip = await call(page, 'trip.add', { name: 'Skarn hills', brief })
  const loadout = await call(page, 'loadout.add', { name: 'Heavy', tripId: trip.id })
  const heavy = ['Two-skin tent', 'Large pack', 'Rain jacket', 'Camp chair']
  await call(page, 'lines.put', {
    loadoutId: loadout.id,
    lines: heavy.map((name) => ({ itemId: ids.get(name)!, lane: 'in_pack', pieces: 1 })),
  })
  await page.goto(`${new URL(page.url()).origin}/#/trips/loadout/${loadout.id}`)
  await expect(page.getByRole('heading', { name: /In the pack/ })).toBeVisible()
}

// Choices are worked out by the solver: on a busy machine each takes seconds.
test.setTimeout(300_000)

test.beforeEach(async ({ page }) => inGrams(page))

const row = (page: Page, name: string) => page.locator('section.items tbody tr', { has: page.locator('th', { hasText: name }) })

test('propose, ask why, pin, propose again, take some lines, undo', async ({ page }) => {
  await begin(page, ['shelter', 'pack', 'rain-shell'])
  await page.keyboard.press('e')
  await expect(page.getByRole('heading', { name: 'Lightest enough' })).toBeVisible()
  await expect(row(page, 'Flat tarp')).toContainText('comes in')
  await expect(row(page, 'Flat tarp')).toContainText('shelter')
  await expect(row(page, 'Stakes')).toContainText('4 ×')
  await expect(row(page, 'Stakes')).toContainText('needed by Flat tarp')
  await expect(row(page, 'Small pack')).toContainText('comes in')
  for (const name of ['Two-skin tent', 'Large pack', 'Camp chair']) await expect(row(page, name)).toContainText('goes')
  // 268 + 4 × 10 + 436 + 214 g
  await expect(page.getByRole('button', { name: /Pack weight then/ })).toContainText('0.96')
  await expect(page.getByText('Proven the lightest of what you own', { exact: false })).toBeVisible()
  // The only rain jacket; and without the tarp the tent: 1164 − 308 g.
  await expect(row(page, 'Rain jacket')).toContainText('nothing else owned')
  await expect(row(page, 'Flat tarp')).toContainText('+856')
  await expect(page.locator('aside')).toContainText('Shelter')
  await expectAccessible(page)

  await row(page, 'Two-skin tent').getByRole('button', { name: 'pin in: Two-skin tent' }).click()
  await expect(row(page, 'Two-skin tent')).toContainText('pinned')
  await expect(row(page, 'Flat tarp')).toHaveCount(0)
  await page.getByRole('button', { name: 'Two-skin tent in: take the pin off' }).click()
  await expect(row(page, 'Flat tarp')).toContainText('comes in')

  // Two lines of it: the pack for the pack.
  for (const name of ['Flat tarp', 'Stakes', 'Two-skin tent', 'Camp chair']) await row(page, name).getByRole('checkbox').click()
  await page.getByRole('button', { name: 'Take 2 of 6' }).click()
  await expect(page.getByRole('heading', { name: /In the pack/ })).toBeVisible()
  const inPack = page.locator('[data-lane=in_pack]')
  await expect(inPack.locator('[data-line]', { hasText: 'Small pack' })).toBeVisible()
  await expect(inPack.locator('[data-line]', { hasText: 'Large pack' })).toHaveCount(0)
  await expect(inPack.locator('[data-line]', { hasText: 'Two-skin tent' })).toBeVisible()
  await page.keyboard.press('Control+z')
  await expect(inPack.locator('[data-line]', { hasText: 'Large pack' })).toBeVisible()
  await expect(inPack.locator('[data-line]', { hasText: 'Small pack' })).toHaveCount(0)
})

test('what nothing owned can meet is named, and the rest is chosen', async ({ page }) => {
  await begin(page, ['shelter', 'pack', 'helmet'])
  await page.keyboard.press('e')
  await expect(page.getByText('Nothing you own meets every demand of this brief')).toBeVisible()
  await expect(page.getByText('Helmet: nothing serves it')).toBeVisible()
  await expect(row(page, 'Flat tarp')).toContainText('comes in')
  await expectAccessible(page)
  await page.keyboard.press('Escape')
  await expect(page.getByRole('heading', { name: /In the pack/ })).toBeVisible()
})

test('by keys alone: open, allow tight, take all, undo', async ({ page }) => {
  await begin(page, ['shelter', 'pack'])
  await page.keyboard.press('e')
  await expect(row(page, 'Flat tarp')).toContainText('comes in')
  await page.keyboard.press('j')
  await expect(page.getByRole('checkbox', { name: /tight is allowed/ })).toBeChecked()
  await expect(row(page, 'Flat tarp')).toContainText('comes in')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: /In the pack/ })).toBeVisible()
  await expect(page.locator('[data-lane=in_pack] [data-line]', { hasText: 'Flat tarp' })).toBeVisible()
  await page.keyboard.press('Control+z')
  await expect(page.locator('[data-lane=in_pack] [data-line]', { hasText: 'Two-skin tent' })).toBeVisible()
})
