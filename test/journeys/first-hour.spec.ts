/** The stopwatch journey: from an empty program to the answer of a question, by as few actions as a person would bear. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Locator, Page } from '@playwright/test'
import { expect, expectAccessible, test } from './support.ts'

const sheet = readFileSync(join(import.meta.dirname, '../fixtures/sheets/sixty-pounds-ounces.csv'), 'utf8')
/** Not in the words but in its numbers. */
const mostActions = 25

/** Counts what a hand does: a key or chord, a text typed, a click. Looking costs nothing. */
class Hand {
  actions = 0
  readonly #page: Page
  constructor(page: Page) {
    this.#page = page
  }
  async press(key: string): Promise<void> {
    this.actions++
    await this.#page.keyboard.press(key)
  }
  async type(text: string): Promise<void> {
    this.actions++
    await this.#page.keyboard.type(text)
  }
  async click(target: Locator): Promise<void> {
    this.actions++
    await target.click()
  }
}

/** The sheet summed by hand here: pounds and ounces of each thing times how many, in tenths of an ounce. */
function sums(): { readonly things: number; readonly baseTenthsOz: number; readonly wornTenthsOz: number } {
  let [section, things, base, worn] = ['', 0, 0, 0]
  for (const line of sheet.split('\n').slice(2)) {
    const [name = '', many = '', pounds = '', ounces = ''] = line.split(',')
    if (many === '' && ounces === '') section = name
    if (many === '') continue
    const tenths = Number(many) * (Number(pounds) * 160 + Math.round(Number(ounces) * 10))
    things++
    if (section === 'WORN') worn += tenths
    else base += tenths
  }
  return { things, baseTenthsOz: base, wornTenthsOz: worn }
}
const poundsAndOunces = (tenths: number): string => `${Math.floor(tenths / 160)} lb ${((tenths % 160) / 10).toFixed(1)} oz`
/** 1 oz = 28.349523125 g (NIST SP 811, appendix B.8). */
const mgOf = (tenths: number): number => (tenths * 28_349.523125) / 10

test.use({ locale: 'en-US', permissions: ['clipboard-read', 'clipboard-write'] })

test('From nothing to the difference a shelter makes', async ({ page, program }) => {
  const hand = new Hand(page)
  const { things, baseTenthsOz, wornTenthsOz } = sums()
  expect(things).toBe(60)
  await page.evaluate((text) => navigator.clipboard.writeText(text), sheet)

  // The sheet in, by two keys; its own totals are held against ours before anything is written.
  await hand.press('i')
  await expect(page.getByRole('heading', { name: 'Bring in' })).toBeVisible()
  await hand.press('Control+v')
  const margin = page.getByRole('complementary', { name: 'If accepted' })
  await expect(margin).toContainText('new items')
  await expect(margin.getByRole('button', { name: /^Accept 60/ })).toBeVisible()
  await expect(margin.getByRole('row', { name: `Base weight ${poundsAndOunces(baseTenthsOz)} same` })).toBeVisible()
  await expect(margin.getByRole('row', { name: `Worn weight ${poundsAndOunces(wornTenthsOz)} same` })).toBeVisible()
  await expectAccessible(page)
  expect((await program.call('closet.all', {})).id).toEqual([])
  await hand.press('Control+Enter')

  // Closet and loadout at once; base weight is the sheet's.
  const base = poundsAndOunces(baseTenthsOz).replaceAll(' ', '\\s')
  await expect(page.getByRole('button', { name: new RegExp(`^base weight ${base}`) }).last()).toBeVisible()
  const closet = await program.call('closet.all', {})
  expect(closet.id).toHaveLength(60)
  const [head] = await program.call('loadout.all', {})
  const [open] = await program.call('loadout.open', { ids: [head!.id] })
  const sumMg = (lane: string): number =>
    open!.line
      .filter((line) => line.lane === lane)
      .reduce((sum, line) => sum + closet.massMg[closet.id.indexOf(line.itemId!)]! * line.pieces, 0)
  // To the gram: each of at most 60 lines is rounded to a milligram a piece.
  expect(Math.abs(sumMg('in_pack') - mgOf(baseTenthsOz))).toBeLessThan(500)
  expect(Math.abs(sumMg('on_me') - mgOf(wornTenthsOz))).toBeLessThan(500)
  expect(head!.name).toBe('My kit')

  // Another shelter comes into the closet.
  await hand.press('Alt+1')
  await expect(page.getByRole('heading', { name: 'Closet' })).toBeVisible()
  await hand.press('n')
  await expect(page.getByRole('dialog', { name: 'Add an item' })).toBeVisible()
  await hand.type('Flat tarp')
  await hand.press('Tab')
  await hand.type('9.5 oz')
  await hand.press('Enter')
  await expect(page.getByRole('dialog')).toBeHidden()

  // A copy of the loadout, the shelter swapped in it.
  await hand.press('Alt+3')
  await hand.click(page.getByRole('link', { name: 'My kit' }))
  await hand.press('l')
  await hand.click(page.getByRole('menuitem', { name: /^Copy this one/ }))
  await hand.press('Enter')
  await expect(page.getByRole('button', { name: /Loadout My kit, copy/ })).toBeVisible()
  await hand.click(page.locator('[data-lane=in_pack] [data-line]', { hasText: 'Single-skin shelter' }))
  await hand.press('Delete')
  const shelf = page.locator('.rows [role=option]')
  await expect(shelf).toHaveCount(2)
  await expect(page.locator('[data-line]:focus')).toContainText('Inner tent')
  await hand.press('/')
  await hand.type('tarp')
  await hand.press('Enter')
  await hand.press('Enter')
  await expect(page.locator('[data-lane=in_pack] [data-line]', { hasText: 'Flat tarp' })).toBeVisible()

  // The two side by side: the difference is the one the two shelters make, 9.5 oz less 18.1 oz.
  await hand.press('l')
  await hand.click(page.getByRole('menuitem', { name: 'Compare', exact: true }))
  await expect(page.getByRole('heading', { name: 'Compare' })).toBeVisible()
  await expect(page.getByText('Flat tarp').first()).toBeVisible()
  await expect(page.locator('main')).toContainText(/8\.6\soz/)

  expect(hand.actions, 'actions from the empty program to the difference').toBeLessThanOrEqual(mostActions)
  test.info().annotations.push({ type: 'actions', description: String(hand.actions) })
})
