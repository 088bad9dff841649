/** The Brief: one filled by keyboard alone from a GPX file to a rail without an unknown; bad files explained; axe in both themes. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Page } from '@playwright/test'
import { call, expect, expectAccessible, inGrams, test } from './support.ts'

test.use({ demo: true })

const ridgeFile = resolve(import.meta.dirname, '../fixtures/tracks/ridge.gpx')
const ridge = readFileSync(ridgeFile, 'utf8')

let tripId: number

test.beforeEach(async ({ page }) => {
  await inGrams(page)
  const kit = (await call(page, 'loadout.all', {})).find((one) => one.name === 'Pole-pitched, autumn')!
  tripId = (await call(page, 'trip.add', { name: 'A ridge by keyboard' })).id
  await call(page, 'loadout.add', { name: 'Ridge kit', tripId, fromId: kit.id })
  await page.goto(`${new URL(page.url()).origin}/#/trips/brief/${tripId}`)
  await expect(page.getByRole('heading', { name: 'A ridge by keyboard' })).toBeVisible()
})

/** The name that the focused element has for who does not see it. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement
    if (!(at instanceof HTMLElement)) return ''
    const label = at.id === '' ? null : document.querySelector(`label[for="${at.id}"]`)
    const around = at.closest('label')
    return (at.getAttribute('aria-label') ?? label?.textContent ?? around?.textContent ?? at.textContent).trim()
  })

/** Tab, on and round, until the element of that name has the keys. */
async function tabTo(page: Page, name: string | RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let step = 0; step < 250; step++) {
    await page.keyboard.press(key)
    const now = await focused(page)
    if (typeof name === 'string' ? now === name : name.test(now)) return
  }
  throw new Error(`Tab never reached ${String(name)}`)
}

async function typeInto(page: Page, label: string, text: string): Promise<void> {
  await tabTo(page, label)
  await page.keyboard.press('Control+a')
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
}

const briefOf = async (page: Page): Promise<Record<string, unknown>> => {
  const trip = (await call(page, 'trip.all', {})).find((one) => one.id === tripId)!
  return JSON.parse(trip.brief) as Record<string, unknown>
}

test('From a GPX file to a full rail, by keyboard alone', async ({ page }) => {
  test.setTimeout(120_000)
  // The track: dialog, file, its waypoints, days.
  await page.keyboard.press('i')
  await expect(page.getByRole('dialog', { name: 'Bring in a track' })).toBeVisible()
  await tabTo(page, 'A GPX file', 'Shift+Tab')
  const chooser = page.waitForEvent('filechooser')
  await page.keyboard.press('Enter')
  await (await chooser).setFiles(ridgeFile)
  await expect(page.getByRole('table', { name: 'Waypoints' })).toBeVisible()
  await expect(page.getByRole('checkbox', { name: 'Flat <camp> is a camp' })).toBeChecked()
  await expect(page.getByRole('checkbox', { name: 'Spring & trough is water' })).toBeChecked()
  await tabTo(page, /^Take 2 days$/)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('table', { name: 'Legs' })).toBeVisible()
  await expect(page.getByLabel('Name of leg 1')).toHaveValue('to Flat <camp>')
  await expect(page.getByRole('img', { name: /^Heights along the way/ })).toBeVisible()
  await expect(page.getByRole('img', { name: /^Plan of the way/ })).toBeVisible()
  const brief = await briefOf(page)
  expect(brief['place']).toEqual({ latDeg: 45, lonDeg: 7 })
  expect((brief['legs'] as { lengthM: number }[]).length).toBe(2)

  // Every field by its name, in the order of the sheet.
  await typeInto(page, 'Start of day 1', '8.30')
  await typeInto(page, 'Start of day 2', '9')
  await tabTo(page, 'How sure source 1 is')
  await page.keyboard.type('sure')
  await typeInto(page, 'First day', '9 Oct 2026')
  await typeInto(page, 'Last day', '10 October 2026')
  await typeInto(page, 'Time zone', 'Europe/Rome')
  // The step before is acknowledged before steps are counted.
  await expect.poll(async () => (await call(page, 'trip.all', {})).map(({ zone }) => zone)).toContain('Europe/Rome')
  const before = (await call(page, 'step.list', { limit: 500 })).length
  await typeInto(page, 'Expected low', '1 °C')
  await expect.poll(async () => (await briefOf(page))['lowC']).toBe(1)
  expect((await call(page, 'step.list', { limit: 500 })).length, 'one field is one step').toBe(before + 1)
  await typeInto(page, 'Expected high', '11')
  await typeInto(page, 'Wind', '20 mph')
  await typeInto(page, 'Height the forecast holds at', '900')
  await tabTo(page, /^none$|^showers$/)
  await page.keyboard.press('ArrowRight')
  await typeInto(page, 'Sitting in camp', '30')
  await typeInto(page, 'A stop on the way', '10 min')
  await typeInto(page, 'Boils a day', '2')
  await typeInto(page, 'Litres a boil', '0.6')
  await tabTo(page, /^only stoves with a valve$/)
  await page.keyboard.press('Space')
  await tabTo(page, 'Who walks')
  await page.keyboard.type('Walker')
  await typeInto(page, 'Head count', '2')

  // 20 mph is 32.18688 km/h: a mile is 1.609344 km (NIST Handbook 44, appendix C).
  await expect.poll(async () => (await briefOf(page))['headCount']).toBe(2)
  const filled = await briefOf(page)
  expect(filled['windKmh']).toBeCloseTo(32.18688, 6)
  expect(filled).toMatchObject({ highC: 11, forecastHeightM: 900, sitMinutes: 30, stopMinutes: 10, rules: ['valve-only'] })
  expect(filled['rain']).not.toBeNull()
  expect(filled['days']).toMatchObject([{ startMinute: 510 }, { startMinute: 540 }])

  // A number opens with W and closes with Esc.
  await tabTo(page, /^Low of night 1 at the camp .* open its working$/)
  await page.keyboard.press('w')
  await expect(page.getByRole('dialog', { name: /^Working of Low of night 1/ })).toContainText('6.5')
  await page.keyboard.press('Escape')

  // No check waits any more, here or in the rail.
  await expect(page.getByText('No check waits for anything.')).toBeVisible()
  await tabTo(page, /^Read by\s*Ridge kit$/)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: /In the pack/ })).toBeVisible()
  const states = page.locator('[data-check]')
  await expect(states.first()).toBeVisible()
  expect(await states.count()).toBeGreaterThan(15)
  await expect(page.locator('[data-check][data-state=unknown]')).toHaveCount(0)
})

const bad: readonly (readonly [string, string, RegExp])[] = [
  ['cut off', ridge.slice(0, 6000), /line \d+.*stops being XML/],
  ['an entity bomb', '<!DOCTYPE gpx [<!ENTITY a "aaaa">]><gpx/>', /document type/],
  ['not XML at all', 'km;m 1;2', /line 1.*stops being XML/],
  ['another XML', '<kml/>', /no GPX/],
  ['a decimal comma', ridge.replace('lat="45.0002297"', 'lat="45,0002297"'), /line 10.*decimal comma/],
  ['a place off the earth', ridge.replace('lat="45.0002297"', 'lat="95.0"'), /line 10.*latitude and longitude/],
  ['no way in it', '<gpx version="1.1"><wpt lat="1" lon="2"/></gpx>', /no track and no route/],
]

test('Bad files say why, where, and the way out; a good one after them is read', async ({ page }) => {
  await page.keyboard.press('i')
  for (const [name, text, says] of bad) {
    await page.getByLabel('or its text, pasted').fill(text)
    await page.getByRole('button', { name: 'Read it' }).click()
    await expect(page.getByRole('alert'), name).toHaveText(says)
  }
  await page.getByLabel('or its text, pasted').fill(ridge)
  await page.getByRole('button', { name: 'Read it' }).click()
  await expect(page.getByRole('button', { name: 'Take 2 days' })).toBeVisible()
  await expectAccessible(page)
  await page.getByLabel('or equal days').fill('3')
  await expect(page.getByRole('button', { name: 'Take 4 days' })).toBeVisible()
  await page.getByLabel('Camps at, along the way').fill('99')
  await expect(page.getByText('Camps: 99 is not inside the way.')).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)
})

test('A dropped file opens the same dialog; a wrong figure names its field and the fix', async ({ page }) => {
  await page.evaluate((text) => {
    const data = new DataTransfer()
    data.items.add(new File([text], 'ridge.gpx'))
    const at = document.querySelector('.way')!
    for (const type of ['dragover', 'drop']) at.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }))
  }, ridge)
  await page.getByRole('button', { name: 'Take 2 days' }).click()
  await expect(page.getByRole('table', { name: 'Legs' })).toBeVisible()
  await expect(page.getByRole('dialog')).toBeHidden()
  await expect(page.getByLabel('Length of leg 1')).toHaveValue(/km$/)
  await page.getByLabel('Length of leg 1').fill('far')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('alert')).toHaveText(/^Length of leg 1: “far” cannot be read\. Write a length, such as/)
  await page.keyboard.press('Escape')

  // Legs are moved and removed by keyboard; one step each.
  const names = () => page.getByLabel(/^Name of leg/).evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))
  await page.getByLabel('Name of leg 2').fill('the last')
  await page.keyboard.press('Enter')
  await page.getByLabel('Name of leg 2').focus()
  await page.keyboard.press('Alt+ArrowUp')
  await expect.poll(names).toEqual(['the last', 'to Flat <camp>'])
  await page.keyboard.press('Alt+Delete')
  await expect.poll(names).toEqual(['to Flat <camp>'])
  await page.evaluate(() => (document.activeElement as HTMLElement).blur())
  await page.keyboard.press('Control+z')
  await expect.poll(names).toEqual(['the last', 'to Flat <camp>'])

  // The height line reads as a table too.
  await page.getByRole('button', { name: 'as a table' }).click()
  await expect(page.getByRole('table', { name: 'Heights along the way' })).toBeVisible()
})

test('Striking a safety duty asks for a reason', async ({ page }) => {
  await call(page, 'trip.edit', { id: tripId, startsOn: '2026-10-09', endsOn: '2026-10-11' })
  const strike = page
    .locator('.as li', { hasText: 'safety' })
    .first()
    .getByRole('button', { name: /^Strike/ })
  await strike.click()
  await page.getByRole('button', { name: 'Strike it' }).click()
  await expect(page.getByText('Say why: a safety duty is not struck without a reason.')).toBeVisible()
  await page.getByLabel('Why it stays home').fill('the other carries it')
  await page.keyboard.press('Enter')
  await expect(page.getByText('struck: “the other carries it”')).toBeVisible()
})

test('Empty and full, of a trip and of a season, axe finds nothing in either theme', async ({ page }) => {
  test.setTimeout(360_000)
  const season = (await call(page, 'season.all', {}))[0]!
  const full = (await call(page, 'trip.all', {})).find((one) => one.name.startsWith('Skarn'))!
  for (const hash of [`#/trips/brief/${tripId}`, `#/trips/brief/${full.id}`, `#/trips/season/${season.id}`]) {
    await page.evaluate((to) => (location.hash = to), hash)
    await expect(page.getByRole('heading', { name: 'Forecast' })).toBeVisible()
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      await expectAccessible(page)
    }
  }
  await page.getByLabel('Expected low').fill('-3')
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await call(page, 'season.all', {}))[0]!.brief).toContain('"lowC":-3')
})
