/**
 * `npm run bench`: how fast the program is beside what could not be faster, or beside a screen's frame, as ratios taken side by side in one run.
 * `npm run bench -- csv gpx` runs only the rows whose name holds one of the words. Never an assertion: beyond a goal is printed, not failed,
 * since another machine or another load moves every time. A row that could not be measured at all ends the run with 1.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { buildIfStale } from '../../src-main/hosts/building.ts'
import { fillCloset } from './closet-of.ts'
import { coldStart } from './cold-start.ts'
import { csv } from './csv.ts'
import { drop } from './drop.ts'
import { gpx } from './gpx.ts'
import { keyPress } from './key-press.ts'
import { letGo } from './let-go.ts'
import { recompute } from './recompute.ts'
import { closetSize, type BenchRow, type Place } from './row.ts'
import { scroll } from './scroll.ts'
import { storeQuery } from './store-query.ts'

const all: Readonly<Record<string, (place: Place) => Promise<BenchRow>>> = {
  'store query': storeQuery,
  'key press to painted rows': keyPress,
  'scroll frame times': scroll,
  'drop to updated totals': drop,
  'cold start to first rows': coldStart,
  '20,000-row CSV': csv,
  'full recomputation': recompute,
  'let-go ranking': letGo,
  '100,000-point GPX': gpx,
}
const onCloset: ReadonlySet<unknown> = new Set([storeQuery, keyPress, scroll, coldStart])

async function main(words: readonly string[]): Promise<void> {
  const chosen = Object.entries(all).filter(
    ([name]) => words.length === 0 || words.some((word) => name.toLowerCase().includes(word.toLowerCase())),
  )
  const dataDir = mkdtempSync(join(tmpdir(), 'tarework-bench-'))
  try {
    if (chosen.some(([, measure]) => onCloset.has(measure))) await prepare(dataDir)
    let beyond = 0
    for (const [name, measure] of chosen) if (await isBeyond(name, () => measure({ dataDir }))) beyond += 1
    console.log(`bench: ${chosen.length} rows, ${beyond} beyond goal`)
  } finally {
    rmSync(dataDir, { recursive: true, force: true })
  }
}

/** The host that the browser rows start is the built one. */
async function prepare(dataDir: string): Promise<void> {
  const say = (line: string) => void process.stderr.write(`${line}\n`)
  if (!(await buildIfStale(resolve(import.meta.dirname, '../..'), say))) throw new Error('the build failed')
  say(`Filling a closet with ${closetSize} items …`)
  await fillCloset(dataDir, closetSize)
}

async function isBeyond(name: string, measure: () => Promise<BenchRow>): Promise<boolean> {
  try {
    const row = await measure()
    console.log(`bench ${row.name}: ratio ${row.ratio.toFixed(2)} (goal ≤ ${row.goal})`)
    console.log(`    ${row.about}`)
    return row.ratio > row.goal
  } catch (error) {
    console.log(`bench ${name}: not measured: ${error instanceof Error ? error.message : String(error)}`)
    process.exitCode = 1
    return true
  }
}

await main(process.argv.slice(2))
