import { frameMs, ms, quantile, type BenchRow, type Place } from './row.ts'
import { withCloset } from './window.ts'

const jumps = 120
/** Over two screens of rows, so that no row of the last frame can be used again. */
const jumpPx = 2400

/** Frame times while the closet's 20,000 rows are scrolled by leaps, one each frame; all rows in view are new in each. */
export async function scroll({ dataDir }: Place): Promise<BenchRow> {
  const times = await withCloset(dataDir, async (page) => {
    await page.waitForTimeout(1000)
    return await page.evaluate(leap, { jumps, jumpPx })
  })
  const p95 = quantile(times, 0.95)
  const about = `p95 ${ms(p95)}, median ${ms(quantile(times, 0.5))}, a frame ${ms(frameMs)}; ${jumps} leaps of ${jumpPx} px`
  return { name: 'scroll frame times', ratio: p95 / frameMs, goal: 1.5, about }
}

/** Runs in the page. */
async function leap({ jumps, jumpPx }: { readonly jumps: number; readonly jumpPx: number }): Promise<readonly number[]> {
  const grid = document.querySelector('[role=grid]')
  if (grid === null || grid.scrollHeight < jumps * jumpPx) throw new Error('the closet is too short to scroll')
  const frame = () => new Promise<number>((seen) => requestAnimationFrame(seen))
  const times: number[] = []
  let last = await frame()
  for (let n = 0; n < jumps; n++) {
    grid.scrollTop += jumpPx
    const at = await frame()
    times.push(at - last)
    last = at
  }
  return times
}
