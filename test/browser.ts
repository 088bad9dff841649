import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chromium } from '@playwright/test'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome']

/** The Chromium that the tests drive: named by CHROMIUM, on the path, or Playwright's own; undefined where there is none. */
export function findBrowser(): string | undefined {
  const named = process.env['CHROMIUM']
  if (named) return named
  for (const name of names) {
    try {
      return execFileSync('which', [name], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim()
    } catch {
      // not on the path: try the next name
    }
  }
  const own = chromium.executablePath()
  return existsSync(own) ? own : undefined
}

/** As findBrowser, but a missing browser is an error that names the way out. */
export function browserPath(): string {
  const found = findBrowser()
  if (!found)
    throw new Error(
      'No Chromium found. Install one (Debian: apt-get install chromium; elsewhere: npx playwright install chromium) or name it in CHROMIUM.',
    )
  return found
}

/** Flags for test browsers only: no background traffic, and no sandbox where Chromium refuses one (as root). */
export function browserFlags(): string[] {
  const flags = ['--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']
  return process.getuid?.() === 0 ? [...flags, '--no-sandbox'] : flags
}
