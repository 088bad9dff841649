/** The Profile's figures on the demo trip, each held against a sum made here from what the contract answers; every number opened. */
import type { Page } from '@playwright/test'
import type { LineRow } from '../../src-main/contract.ts'
import { call, expect, expectAccessible, inGrams, test } from './support.ts'

test.use({ demo: true })

const name = 'Pole-pitched, autumn'
/** What the demo says: 642 g of food a day, 1.5 L on the driest stretch, 100 g of gas and 60 g of paper over four days, a food box after two. */
const foodPerDayG = 642
const waterG = 1500
const otherG = 100 + 60

async function linesOf(page: Page): Promise<readonly LineRow[]> {
  const head = (await call(page, 'loadout.all', {})).find((one) => one.name === name)
  const [open] = await call(page, 'loadout.open', { ids: [head!.id] })
  return open!.line
}

/** Everything in the pack that another does not carry, g. */
async function baseG(page: Page): Promise<number> {
  const closet = await call(page, 'closet.all', {})
  const massMg = new Map(closet.id.map((id, row) => [id, closet.massMg[row]!]))
  return (await linesOf(page))
    .filter((line) => line.lane === 'in_pack' && line.itemId !== null && line.carriedBy === '')
    .reduce((sum, line) => sum + (massMg.get(line.itemId!)! * line.pieces) / 1000, 0)
}

/**
 * The trip without a source of water, and the water typed (by the brief it would be none, as no stretch is posed):
 * then all of it is carried everywhere, and the sums are simple.
 */
async function withoutSources(page: Page): Promise<void> {
  const water = (await call(page, 'supply.all', {})).find((one) => one.name === 'Water')!
  const line = (await linesOf(page)).find((one) => one.supplyId === water.id)!
  await call(page, 'line.edit', { id: line.id, amountFrom: 'typed', amountMilli: waterG * 1000 })
  const trip = (await call(page, 'trip.all', {})).find((one) => one.name.startsWith('Skarn'))!
  await call(page, 'trip.edit', { id: trip.id, brief: JSON.stringify({ ...JSON.parse(trip.brief), sources: [] }) })
}

const cell = (page: Page, row: string, day: number) => page.locator(`tr[data-row=${row}] td`).nth(day - 1)
const numberIn = async (page: Page, row: string, day: number): Promise<number> =>
  Number(((await cell(page, row, day).textContent()) ?? '').replace(/[^0-9.]/g, ''))

async function openProfile(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/trips`)
  await page.getByRole('link', { name }).first().click()
  await page.getByRole('link', { name: 'Profile' }).click()
  await expect(page.getByRole('heading', { name: /Load on the shoulders/ })).toBeVisible()
}

test('The load starts at pack weight, falls by what is used, and jumps at the food box', async ({ page }) => {
  await inGrams(page)
  await withoutSources(page)
  await openProfile(page)
  const base = await baseG(page)
  const usedG = foodPerDayG + otherG / 4
  const start = base + 2 * foodPerDayG + otherG + waterG
  const kg = (g: number) => expect.closeTo(g / 1000, 2)
  expect(await numberIn(page, 'loadStart', 1)).toEqual(kg(start))
  expect(await numberIn(page, 'loadEnd', 1)).toEqual(kg(start - usedG))
  expect(await numberIn(page, 'loadEnd', 2)).toEqual(kg(start - 2 * usedG))
  expect(await numberIn(page, 'loadStart', 3)).toEqual(kg(start - 2 * usedG + 2 * foodPerDayG))
  expect(await numberIn(page, 'loadEnd', 4)).toEqual(kg(base + waterG))
  await page.getByRole('link', { name: 'Loadout', exact: true }).click()
  await expect(page.getByRole('button', { name: new RegExp(`^Pack weight ${(start / 1000).toFixed(2)}\\skg`) })).toBeVisible()
})

test('Every number of a day opens, the load along the way by keys; legs as a table; all of it accessible', async ({ page }) => {
  test.setTimeout(240_000)
  await inGrams(page)
  await openProfile(page)
  // The demo's legs: 16, 18, 15 and 13 km.
  for (const [at, km] of [16, 18, 15, 13, 62].entries()) expect(await numberIn(page, 'length', at + 1)).toBe(km)
  for (const row of ['length', 'climb', 'onFoot', 'energy', 'loadEnd', 'waterStart', 'arrival', 'late', 'set', 'dusk', 'spare']) {
    await cell(page, row, 1).getByRole('button').click()
    await expect(page.locator('.pop:popover-open')).toContainText('Source')
    await page.keyboard.press('Escape')
  }
  const way = page.getByRole('slider', { name: 'Place along the way' })
  await way.focus()
  await page.keyboard.press('Home')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('w')
  const working = page.getByRole('dialog', { name: /^Working of Load at 7\.0\skm/ })
  await expect(working).toBeVisible()
  await page.keyboard.press('Escape')
  await expectAccessible(page)
  await page.keyboard.press('t')
  await expect(page.getByRole('table', { name: 'Leg by leg' }).getByRole('row')).toHaveCount(5)
  await page.emulateMedia({ colorScheme: 'dark' })
  await expectAccessible(page)
})
