import { chromium, type Browser, type Page } from '@playwright/test'
import { browserFlags, browserPath } from '../browser.ts'
import { startHost } from '../host.ts'

const size = { width: 1440, height: 900 }

export const openBrowser = (): Promise<Browser> => chromium.launch({ executablePath: browserPath(), args: browserFlags() })
export const newPage = (browser: Browser): Promise<Page> => browser.newPage({ viewport: size })

/** Rows stand in the closet's table. */
export const firstRows = (page: Page): Promise<void> => page.locator('[role=grid] .row').first().waitFor({ timeout: 60_000 })

/** The program's own host on a data folder, its first room, the closet, open in a browser of its own. */
export async function withCloset<T>(dataDir: string, work: (page: Page) => Promise<T>): Promise<T> {
  const host = await startHost({ dataDir })
  try {
    const browser = await openBrowser()
    try {
      const page = await newPage(browser)
      await page.goto(host.url)
      await firstRows(page)
      return await work(page)
    } finally {
      await browser.close()
    }
  } finally {
    await host.stop()
  }
}
