/**
 * `npm run screenshots`: every room of the demo closet, light and dark, at 1100, 1440 and 1600 px, into out/screenshots;
 * `npm run screenshots -- --readme` also renews the picture in the README.
 */
import { copyFileSync, mkdirSync } from 'node:fs'
import { resolve } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { browserFlags, browserPath } from './browser.ts'
import { startHost } from './host.ts'

const out = resolve(import.meta.dirname, '../out/screenshots')
const widths = [1100, 1440, 1600] as const
const themes = ['light', 'dark'] as const

/** Where to go and what to open before the picture is taken. */
const sheets: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  closet: async (page) => {
    await go(page, '#/closet')
    await page.getByText('Down quilt, 0 °C comfort').first().dblclick()
    await page.waitForTimeout(300)
  },
  scale: (page) => go(page, '#/scale'),
  trips: (page) => go(page, '#/trips'),
  loadout: async (page) => {
    await go(page, '#/trips')
    await page.getByRole('link', { name: 'Pole-pitched, autumn' }).first().click()
    await page.waitForTimeout(400)
  },
  brief: async (page) => {
    await go(page, '#/trips')
    await page.getByRole('link', { name: 'Pole-pitched, autumn' }).first().click()
    await page.getByRole('link', { name: 'Brief', exact: true }).click()
    await page.waitForTimeout(300)
  },
  profile: async (page) => {
    await go(page, '#/trips')
    await page.getByRole('link', { name: 'Pole-pitched, autumn' }).first().click()
    await page.getByRole('link', { name: 'Profile' }).click()
    await page.waitForTimeout(300)
  },
  choose: async (page) => {
    await go(page, '#/trips')
    await page.getByRole('link', { name: 'Pole-pitched, autumn' }).first().click()
    await page.waitForTimeout(400)
    await go(page, page.url().split('/').at(-1)!.replace(/^/u, '#/trips/choose/'))
    await page.waitForTimeout(8000)
  },
  door: async (page) => {
    await go(page, '#/trips')
    await page.getByRole('link', { name: 'Pole-pitched, autumn' }).first().click()
    await page.getByRole('link', { name: 'Door', exact: true }).click()
    await page.waitForTimeout(300)
  },
  debrief: async (page) => {
    await go(page, '#/trips')
    const back = page.locator('a[href^="#/trips/debrief/"]').last()
    await back.click()
    await page.waitForTimeout(300)
  },
  letgo: (page) => go(page, '#/letgo'),
  refit: (page) => go(page, '#/refit'),
  compare: async (page) => {
    await go(page, '#/trips')
    const hrefs = await page
      .locator('a[href^="#/trips/loadout/"]')
      .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))
    const ids = [...new Set(hrefs.map((href) => href.split('/').at(-1)))].slice(0, 3)
    await go(page, `#/compare/${ids.join('/')}`)
  },
  'bring-in-empty': (page) => go(page, '#/bring-in'),
  'bring-in': async (page) => {
    await go(page, '#/bring-in')
    await page.locator('input[type=file]').setInputFiles(resolve(import.meta.dirname, 'fixtures/sheets/messy-200.csv'))
    await page.getByRole('complementary', { name: 'If accepted' }).waitFor()
  },
  walker: (page) => go(page, '#/walker'),
  settings: (page) => go(page, '#/settings'),
  keys: async (page) => {
    await go(page, '#/closet')
    await page.keyboard.press('?')
    await page.waitForTimeout(200)
  },
}

async function go(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => (location.hash = to), hash)
  await page.waitForTimeout(400)
}

async function main(): Promise<void> {
  mkdirSync(out, { recursive: true })
  const host = await startHost({ demo: true })
  const browser = await chromium.launch({ executablePath: browserPath(), args: browserFlags() })
  const context = await browser.newContext({ locale: 'en-GB', viewport: { width: 1440, height: 900 } })
  const page = await context.newPage()
  const said: string[] = []
  page.on('console', (message) => message.type() === 'error' && said.push(message.text()))
  page.on('pageerror', (error) => said.push(error.message))
  await page.goto(host.url)
  await page.waitForSelector('.rail')
  await page.waitForTimeout(800)
  const only = process.argv.slice(2).filter((word) => !word.startsWith('--'))
  for (const [name, open] of Object.entries(sheets)) {
    if (only.length > 0 && !only.includes(name)) continue
    for (const width of widths) {
      await page.setViewportSize({ width, height: 900 })
      await open(page)
      for (const theme of themes) {
        await page.emulateMedia({ colorScheme: theme })
        await page.waitForTimeout(100)
        await page.screenshot({ path: resolve(out, `${name}-${theme}-${width}.png`) })
      }
      await page.keyboard.press('Escape')
    }
  }
  if (process.argv.includes('--readme'))
    copyFileSync(resolve(out, 'loadout-light-1440.png'), resolve(import.meta.dirname, '../screenshot.png'))
  await browser.close()
  await host.stop()
  for (const line of said) console.log(`console: ${line}`)
  console.log(`screenshots: ${out}`)
  if (said.length > 0) process.exitCode = 1
}

await main()
