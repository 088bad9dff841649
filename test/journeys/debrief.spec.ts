import type { Page } from '@playwright/test'
import { call, expect, expectAccessible, inGrams, test } from './support.ts'

test.use({ demo: true })

/** The demo's trip, out with its chosen loadout; its debrief opened. */
async function openDebrief(page: Page): Promise<number> {
  const { id, tripId } = (await call(page, 'loadout.all', {})).find(({ name }) => name === 'Pole-pitched, autumn')!
  await call(page, 'trip.close', { id: tripId!, loadoutId: id })
  await page.evaluate((to) => (location.hash = to), `#/trips/debrief/${tripId}`)
  await expect(page.getByRole('heading', { name: /^Nothing said yet/ })).toBeVisible()
  return tripId!
}

test('by keyboard alone: used, failed and what to mend, the rest at once, times and a night, kept; all there after a reload', async ({
  page,
}) => {
  await inGrams(page)
  const tripId = await openDebrief(page)
  await page.keyboard.press('ArrowDown')
  for (const word of ['used', 'unused', 'missed', 'failed']) {
    await page.keyboard.press('u')
    await expect(page.getByRole('radio', { name: word, exact: true }).first()).toHaveAttribute('aria-checked', 'true')
  }
  await page.keyboard.press('a')
  await expect.poll(async () => (await call(page, 'record.open', { tripId })).lines[0]).toMatchObject({ use: 'failed', verdict: 'adjust' })
  await page.getByRole('radio', { name: 'mend', exact: true }).click()
  await page.getByRole('button', { name: 'all of these: used, keep' }).click()
  await expect(page.getByRole('heading', { name: /^Used, keep/ })).toBeVisible()
  await page.getByLabel(/: on foot$/).first().fill('5 h 20') // prettier-ignore
  await page.keyboard.press('Enter')
  await page.getByLabel('Night 1: low').fill('-2.5')
  await page.keyboard.press('Enter')
  await page.getByLabel('Night 1: slept').selectOption('cold')
  await page.getByLabel('Something missed').fill('Wind shirt')
  await page.keyboard.press('Enter')
  await expect(page.getByText('stayed at home')).toBeVisible()
  await page.getByRole('button', { name: /^Keep the debrief/ }).click()
  await expect(
    page
      .getByText(/told.*kept/)
      .or(page.getByText(/The debrief is kept/))
      .first(),
  ).toBeVisible()
  await page.reload()
  await expect(page.getByLabel(/: on foot$/).first()).toHaveValue(/5\sh\s20/)
  const record = await call(page, 'record.open', { tripId })
  expect(record.lines[0]).toMatchObject({ use: 'failed', verdict: 'adjust', change: 'mend', said: 'one' })
  expect(record.lines.filter(({ said }) => said === 'rest')).toHaveLength(record.packed.length - 1)
  expect(record.legs).toMatchObject([{ leg: 0, movingMin: 320 }])
  expect(record.nights).toMatchObject([{ night: 1, lowC: -2.5, slept: 'cold' }])
  expect(record.debrief?.keptAt).not.toBeNull()
})

test('past trips: from a loadout less what stayed, and from a pasted list', async ({ page }) => {
  await page.evaluate(() => (location.hash = '#/trips'))
  await page.getByRole('button', { name: 'Add past trips' }).click()
  await page.getByLabel('Name').fill('Lake round')
  await page.getByLabel('Month').fill('2024-06')
  await page.getByLabel('Or paste what went, one a line').fill('Headlamp\nRain jacket\nA tent sold since')
  await expect(page.getByText(/2 of 3 known in the closet; by name alone: A tent sold since/)).toBeVisible()
  await page.getByRole('button', { name: /^Add this trip/ }).click()
  await expect(page.getByText('1 added')).toBeVisible()
  const all = await call(page, 'record.all', {})
  const at = all.trips.name.indexOf('Lake round')
  const taken = all.taken.name.filter((_, row) => all.taken.tripId[row] === all.trips.id[at])
  expect(taken.toSorted()).toEqual(['A tent sold since', 'Headlamp', 'Rain jacket'])
  expect(all.trips.past[at]).toBe(true)
})

for (const colorScheme of ['light', 'dark'] as const)
  test(`accessible in ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme })
    await openDebrief(page)
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('a')
    await expect(page.getByRole('radio', { name: 'swap for' })).toBeVisible()
    await expectAccessible(page)
  })
