/** The load along the way: drawn, walked along by keys, opened, and read as a table. */
import { expect, expectAccessible, inGrams, test } from './support.ts'

test.describe('on the demo trip', () => {
  test.use({ demo: true })
  test.beforeEach(async ({ page, program }) => {
    expect(program.host.url).toContain('127.0.0.1')
    await inGrams(page)
    await page.keyboard.press('Alt+3')
    await page.getByRole('link', { name: 'Pole-pitched, autumn' }).click()
    await page.getByRole('link', { name: 'Profile' }).click()
    await expect(page.getByRole('heading', { name: /Load on the shoulders/ })).toBeVisible()
  })

  test('It falls by what is eaten and drunk, and ends at what is not used up', async ({ page, program }) => {
    // Summed here from the store: what lies in the pack and is the walker's own, in grams.
    const [head] = (await program.call('loadout.all', {})).filter((one) => one.name === 'Pole-pitched, autumn')
    const [open] = await program.call('loadout.open', { ids: [head!.id] })
    const closet = await program.call('closet.all', {})
    const baseMg = open!.line
      .filter((line) => line.lane === 'in_pack' && line.itemId !== null && line.carriedBy === '')
      .reduce((sum, line) => sum + closet.massMg[closet.id.indexOf(line.itemId!)]! * line.pieces, 0)
    const place = page.getByRole('slider', { name: 'Place along the way' })
    await expect(place).toContainText(`base weight ${(baseMg / 1e6).toFixed(2)}\u00a0kg`)
    await place.focus()
    const loads: number[] = []
    const read = async (): Promise<number> => Number(/: ([\d.]+)\skg/.exec((await place.getAttribute('aria-valuetext')) ?? '')?.[1])
    await page.keyboard.press('Home')
    const last = Number(await place.getAttribute('aria-valuemax'))
    for (let at = 0; at <= last; at++) {
      loads.push(await read())
      await page.keyboard.press('ArrowRight')
    }
    expect(Math.max(...loads)).toBeGreaterThan(Math.min(...loads))
    // Nothing is lighter than the base weight, and between two sources the load only falls.
    expect(Math.min(...loads)).toBeGreaterThanOrEqual(Math.floor(baseMg / 1e4) / 100)
    expect(loads[1]).toBeLessThan(loads[0] ?? 0)
    expect(await place.getAttribute('aria-valuetext')).toMatch(/^62\skm/)

    // Distance and climb of the whole trip are the sums of its legs in the brief.
    const trip = (await program.call('trip.all', {})).find((one) => one.name === 'Skarn hills, the long ridge')
    const legs = (JSON.parse(trip!.brief) as { legs: { lengthM: number; climbM: number }[] }).legs
    const climbM = legs.reduce((sum, leg) => sum + leg.climbM, 0)
    await expect(page.getByRole('row', { name: /^climb/ })).toContainText(`${climbM.toLocaleString('en-GB')}\u00a0m`)
  })

  test('A figure opens to its working, the drawing reads as a table, and every reader can', async ({ page }) => {
    await expectAccessible(page)
    await page.getByRole('button', { name: /^Energy used on day 2/ }).focus()
    await page.keyboard.press('w')
    const working = page.getByRole('dialog', { name: /^Working of Energy used on day 2/ })
    await expect(working).toContainText('kcal')
    await expect(working).toContainText('Source')
    await page.keyboard.press('Escape')
    await page.keyboard.press('t')
    const table = page.getByRole('table', { name: 'Load along the way' })
    await expect(table.getByRole('row')).not.toHaveCount(0)
    await expect(table.getByRole('row', { name: /^62/ })).toBeVisible()
    await page.emulateMedia({ colorScheme: 'dark' })
    await expectAccessible(page)
    await page.keyboard.press('t')
    await expectAccessible(page)
  })
})

test('A loadout without a trip says what is needed first', async ({ page, program }) => {
  const { id } = await program.call('loadout.add', { name: 'Bare' })
  await page.evaluate((to) => (location.hash = `#/trips/profile/${to}`), id)
  await expect(page.getByText('It needs a trip with a brief')).toBeVisible()
  await expectAccessible(page)
})
