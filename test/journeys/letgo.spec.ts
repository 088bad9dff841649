import type { Page } from '@playwright/test'
import type { InputOf } from '../../src-main/contract.ts'
import { expect, expectAccessible, inGrams, test } from './support.ts'

type Program = { readonly call: <K extends 'item.add' | 'past.add' | 'trip.add' | 'loadout.add' | 'lines.put' | 'trip.close' | 'record.open' | 'debrief.line' | 'debrief.trip' | 'item.open'>(name: K, input: InputOf<K>) => Promise<never> } // prettier-ignore

const things: readonly (readonly [
  name: string,
  kitArea: InputOf<'item.add'>['kitArea'],
  grams: number,
  duty: string,
  priceMinor: number | null,
])[] = [
  ['Steel bottle', 'water', 212, 'water-vessel', 2500],
  ['Soft bottle', 'water', 76, 'water-vessel', 1200],
  ['Paperback', 'extras', 180, 'reading', null],
  ['E-reader', 'extras', 155, 'reading', 9000],
  ['First aid', 'care', 126, 'first-aid', null],
  ['Trail shoes', 'footwear', 566, 'shoes', 12_000],
]

/** Ten past trips with the soft bottle, then eight that were packed and told of: shoes of 120 km each, a book never opened. */
async function recordOf(program: Program): Promise<readonly number[]> {
  const ids: number[] = []
  for (const [name, kitArea, grams, duty, priceMinor] of things) {
    const added = (await program.call('item.add', {
      ...{ name, kitArea, weighedMg: grams * 1000, weighedOn: '2022-02-01', duties: [{ duty, shared: false }] },
      ...{ cameOn: '2022-01-15', usualLane: duty === 'shoes' ? 'on_me' : 'in_pack' },
      ...(priceMinor === null ? {} : { priceMinor, currency: 'EUR' }),
    })) as { id: number }
    ids.push(added.id)
  }
  const months = Array.from({ length: 10 }, (_, i) => `2023-${String(i + 2).padStart(2, '0')}`)
  await program.call('past.add', { trips: months.map((month) => ({ name: `Past ${month}`, month, nights: 2, itemIds: [ids[1]!] })) })
  for (let n = 0; n < 8; n++) await toldTrip(program, n, ids)
  return ids
}

async function toldTrip(program: Program, n: number, ids: readonly number[]): Promise<void> {
  const day = (at: number) => `2025-0${n + 1}-1${at}`
  const { id: tripId } = (await program.call('trip.add', { name: `Told ${n + 1}`, startsOn: day(0), endsOn: day(2), brief: JSON.stringify({ nightsOut: 2, lowC: 5 }) })) as { id: number } // prettier-ignore
  const { id: loadoutId } = (await program.call('loadout.add', { name: 'Kit', tripId })) as { id: number }
  const lines = [1, 2, 4, 5].map((at) => ({ itemId: ids[at]!, lane: at === 5 ? ('on_me' as const) : ('in_pack' as const) }))
  await program.call('lines.put', { loadoutId, lines })
  await program.call('trip.close', { id: tripId, loadoutId })
  const { packed } = (await program.call('record.open', { tripId })) as { packed: readonly { id: number; name: string }[] }
  for (const { id, name } of packed)
    await program.call('debrief.line', {
      packedId: id,
      use: name === 'Paperback' || name === 'First aid' ? 'unused' : 'used',
      ...(name === 'Paperback' && n > 5 ? { verdict: 'drop' as const, change: 'weight' as const } : {}),
    })
  await program.call('debrief.trip', { tripId, lengthM: 120_000, nights: 2 })
}

const open = async (page: Page) => {
  await inGrams(page)
  await page.goto(`${new URL(page.url()).origin}/#/letgo`)
}
const list = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

test('With too little record the sheet says what is missing and leads to the past trips', async ({ page }) => {
  await open(page)
  await expect(page.getByText(/Too little record: five trips first/)).toBeVisible()
  await expectAccessible(page)
  await page.getByRole('button', { name: /To the Trips/ }).click()
  await expect(page.getByRole('heading', { name: 'Trips', level: 1 })).toBeVisible()
})

test('What stayed home and what was carried for nothing is offered, by keyboard alone: kept, sold, and taken back', async ({
  page,
  program,
}) => {
  const ids = await recordOf(program as never)
  await open(page)
  const home = list(page, 'Stayed home')
  // Two nights ask for water each time: 0 of 18. I(0.10; 0.5, 18.5) = 0.9501 by a statistics package.
  await expect(home.locator('li', { hasText: 'Steel bottle' })).toContainText('0 of 18')
  await expect(home.getByRole('button', { name: /Sure of under 1 trip in 10, Steel bottle 95 %/ })).toBeVisible()
  await expect(home).toContainText('Soft bottle does its work and weighs 136 g less.')
  const carried = list(page, 'Carried for nothing')
  await expect(carried.locator('li', { hasText: 'Paperback' })).toContainText('0 of 8')
  await expect(carried).toContainText('Verdict drop: weight, on 2 trips.')
  await expect(list(page, 'Worn out').locator('li', { hasText: 'Trail shoes' })).toContainText('120 %')
  await expect(list(page, 'Kept for safety')).toContainText('carried on 8, never used: that is its work')

  await page.keyboard.press('ArrowDown')
  await expect(page.getByRole('button', { name: 'Sell Steel bottle' })).toBeFocused()
  await page.keyboard.press('w')
  await expect(page.getByRole('dialog', { name: /Working of Sure of under/ })).toContainText('I(0.10; ½ + k, ½ + n − k)')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Sell Steel bottle' }).focus()
  await page.keyboard.press('k')
  await expect(list(page, 'Seldom used')).toContainText('You keep it.')
  await page.keyboard.press('Control+z')
  await expect(page.getByRole('button', { name: 'Sell Steel bottle' })).toBeVisible()

  await page.getByRole('button', { name: 'Sell Steel bottle' }).focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('dialog', { name: 'Let go of Steel bottle' })).toContainText('212 g on my scale')
  await page.getByRole('textbox', { name: 'For' }).fill('12')
  await page.keyboard.press('Enter')
  await expect(list(page, 'Let go before')).toContainText('sold for €')
  expect(await program.call('item.open', { id: ids[0]! })).toMatchObject({ status: 'sold', soldMinor: 1200 })
  await page.keyboard.press('Control+z')
  await expect(page.getByRole('button', { name: 'Sell Steel bottle' })).toBeVisible()
})

for (const theme of ['light', 'dark'] as const)
  test(`The sheet is whole and accessible at three widths, ${theme}`, async ({ page, program }) => {
    await recordOf(program as never)
    await program.call('setting.set', { key: 'theme', value: JSON.stringify(theme) })
    await open(page)
    await expect(list(page, 'Worn out')).toBeVisible()
    for (const width of [1100, 1440, 1600]) {
      await page.setViewportSize({ width, height: 900 })
      await expectAccessible(page)
      const sheet = page.getByRole('region', { name: 'What the record says' })
      expect(await sheet.evaluate((one) => one.scrollWidth - one.clientWidth), `no sideways scrolling at ${width}`).toBeLessThanOrEqual(0)
      if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/letgo-${theme}-${width}.png` })
    }
  })
