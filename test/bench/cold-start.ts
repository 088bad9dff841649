import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { startHost } from '../host.ts'
import { median, ms, timeMs, type BenchRow, type Place } from './row.ts'
import { firstRows, newPage, openBrowser } from './window.ts'

const rounds = 3

/**
 * A fresh browser's window to the first rows of 20,000 items, against an empty page in a fresh window of the same browser, in turn.
 * Goal 20: an empty page is loaded in some tens of milliseconds, and one second is about how long a person's thought goes on undisturbed
 * (R. B. Miller 1968, from memory). In it lie the program's code, the closet's columns (some megabytes, sifted and sorted) and the first drawing.
 */
export async function coldStart({ dataDir }: Place): Promise<BenchRow> {
  const empty = await emptyServer()
  const times: [number[], number[]] = [[], []]
  for (let round = 0; round < rounds; round++) {
    times[0].push(await toFirstRows(dataDir))
    times[1].push(await inFreshBrowser(`http://127.0.0.1:${(empty.address() as AddressInfo).port}/`, false))
  }
  empty.close()
  const [rows, bare] = times.map(median) as [number, number]
  const about = `first rows ${ms(rows)}, an empty page ${ms(bare)}; medians of ${rounds}`
  return { name: 'cold start to first rows', ratio: rows / bare, goal: 20, about }
}

async function toFirstRows(dataDir: string): Promise<number> {
  const host = await startHost({ dataDir })
  try {
    return await inFreshBrowser(host.url, true)
  } finally {
    await host.stop()
  }
}

async function inFreshBrowser(url: string, rows: boolean): Promise<number> {
  const browser = await openBrowser()
  try {
    const page = await newPage(browser)
    return await timeMs(async () => {
      await page.goto(url, { waitUntil: rows ? 'commit' : 'load' })
      if (rows) await firstRows(page)
    })
  } finally {
    await browser.close()
  }
}

function emptyServer(): Promise<Server> {
  const server = createServer((_, answer) => answer.setHeader('content-type', 'text/html').end('<!doctype html><title>Empty</title>'))
  return new Promise((ready) => server.listen(0, '127.0.0.1', () => ready(server)))
}
