import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { copyFile, mkdtemp, readFile, rename, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { browserToStart } from './browser.ts'

/** A page that is not on paper by then never will be. */
const longestMs = 60_000

/**
 * Prints a page of ours with a Chromium without a window: `--headless --print-to-pdf`. Its profile is a folder of its own that goes when it is done,
 * since the window's profile is in use. The virtual time lets the page ask for all it shows before it is put on paper.
 */
export async function printWithBrowser(url: string, file: string): Promise<Outcome<null>> {
  const browser = browserToStart()
  if (!browser.ok) return fault('print.no-browser', { why: browser.why })
  const folder = await mkdtemp(join(tmpdir(), 'tarework-print-'))
  try {
    const made = join(folder, 'page.pdf')
    const words = [
      '--headless',
      '--disable-gpu',
      '--no-first-run',
      '--no-pdf-header-footer',
      '--virtual-time-budget=10000',
      `--user-data-dir=${join(folder, 'profile')}`,
      `--print-to-pdf=${made}`,
      ...browser.own,
      url,
    ]
    const code = await ran(browser.path, words)
    if (code !== 0 || !existsSync(made) || !(await isPdf(made))) return fault('print.failed', { code: String(code) })
    await moved(made, file)
    return ok(null)
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5 })
  }
}

function ran(path: string, words: readonly string[]): Promise<number | null> {
  return new Promise((settle) => {
    const child = spawn(path, words, { stdio: 'ignore' })
    const timer = setTimeout(() => child.kill('SIGKILL'), longestMs)
    const end = (code: number | null): void => {
      clearTimeout(timer)
      settle(code)
    }
    child.once('error', () => end(null))
    child.once('exit', end)
  })
}

export const startsAsPdf = (bytes: Uint8Array): boolean => String.fromCharCode(...bytes.subarray(0, 5)) === '%PDF-'
const isPdf = async (path: string): Promise<boolean> => startsAsPdf(await readFile(path))

/** The folder for passing things and the data folder may lie on two disks. */
async function moved(from: string, to: string): Promise<void> {
  await rename(from, to).catch(() => copyFile(from, to))
}
