import type { Page } from '@playwright/test'
import { median, ms, quantile, type BenchRow, type Place } from './row.ts'
import { withCloset } from './window.ts'

/** One letter each, typed into the empty search; each leaves other rows than all. */
const letters = ['q', 'j', 'v', 'b', 'w', 'x', 'y', 'k', 'f', 'p'] as const
const rounds = 3
/** Three frames of 60 Hz: one in which the key arrives, one to sift 20,000 items, one to paint. */
const goalMs = 50

interface Watched {
  benchPress?: Promise<number>
}

/** From the keydown of one letter in the closet's search to the frame after the one that paints the changed rows, with 20,000 items. */
export async function keyPress({ dataDir }: Place): Promise<BenchRow> {
  const times = await withCloset(dataDir, async (page) => {
    await page.keyboard.press('/')
    await pressed(page, 'q')
    const found: number[] = []
    for (let round = 0; round < rounds; round++) for (const letter of letters) found.push(await pressed(page, letter))
    return found
  })
  const took = median(times)
  const about = `${ms(took)} against ${ms(goalMs)}, three frames; p95 ${ms(quantile(times, 0.95))}, ${times.length} presses`
  return { name: 'key press to painted rows', ratio: took / goalMs, goal: 1, about }
}

async function pressed(page: Page, letter: string): Promise<number> {
  await page.evaluate(watch)
  await page.keyboard.press(letter)
  const took = await page.evaluate(() => (window as Watched).benchPress!)
  await page.keyboard.press('Backspace')
  await page.waitForTimeout(100)
  return took
}

/** Runs in the page: the change of rows is seen as the change of their count, two frames on is after its painting. */
function watch(): void {
  const state = (): string | null => document.querySelector('[role=grid]')?.getAttribute('aria-rowcount') ?? null
  const before = state()
  let started = 0
  window.addEventListener('keydown', () => (started = performance.now()), { capture: true, once: true })
  const seen = new Promise<number>((found, failed) => {
    setTimeout(() => failed(new Error('the rows did not change within ten seconds')), 10_000)
    const observer = new MutationObserver(() => {
      if (started === 0 || state() === before) return
      observer.disconnect()
      requestAnimationFrame(() => requestAnimationFrame(() => found(performance.now() - started)))
    })
    observer.observe(document.body, { subtree: true, childList: true, attributes: true, attributeFilter: ['aria-rowcount'] })
  })
  ;(window as Watched).benchPress = seen
}
