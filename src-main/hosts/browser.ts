import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Names under which systems install a browser that can show one page as a window of its own (`--app`). */
const onPath = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge', 'chrome']
const onMac = ['Chromium', 'Google Chrome', 'Microsoft Edge'].map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`)
const onWindows = [
  'Chromium\\Application\\chrome.exe',
  'Google\\Chrome\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
]

type Env = Readonly<Record<string, string | undefined>>

/** The browser named by TAREWORK_BROWSER, else the first found; null: none. */
export function findBrowser(platform: NodeJS.Platform, env: Env, exists: (path: string) => boolean = existsSync): string | null {
  const named = env['TAREWORK_BROWSER']
  if (named !== undefined && named !== '') return exists(named) ? named : null
  return placesToLook(platform, env).find(exists) ?? null
}

function placesToLook(platform: NodeJS.Platform, env: Env): readonly string[] {
  if (platform === 'darwin') return onMac
  if (platform === 'win32') {
    const roots = [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']].filter((root) => root !== undefined)
    return roots.flatMap((root) => onWindows.map((path) => join(root, path)))
  }
  const folders = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '')
  return onPath.flatMap((name) => folders.map((folder) => join(folder, name)))
}

type WhyNot = 'no-browser' | 'root'
export type Shown = { readonly ok: true } | { readonly ok: false; readonly why: WhyNot }

export type Startable =
  { readonly ok: true; readonly path: string; readonly own: readonly string[] } | { readonly ok: false; readonly why: WhyNot }

/**
 * The browser that may be started, and what the person's own setting adds to its command line.
 * As root Chromium will not start with its sandbox on, and the sandbox is not ours to switch off.
 */
export function browserToStart(): Startable {
  const own = (process.env['TAREWORK_BROWSER_ARGS'] ?? '').split(' ').filter((flag) => flag !== '')
  const path = findBrowser(process.platform, process.env)
  if (path === null) return { ok: false, why: 'no-browser' }
  return process.getuid?.() === 0 && !own.includes('--no-sandbox') ? { ok: false, why: 'root' } : { ok: true, path, own }
}

/**
 * Opens a window on the address. Its profile lives in the data folder: what a page stores and which scale it may read belong to a profile.
 * Where no browser may be started the person opens the address instead.
 */
export function showWindow(url: string, dataDir: string, onGone: (code: number | null) => void): Shown {
  const browser = browserToStart()
  if (!browser.ok) return browser
  const profile = `--user-data-dir=${join(dataDir, 'window')}`
  const child = spawn(browser.path, [`--app=${url}`, profile, '--no-first-run', '--no-default-browser-check', ...browser.own], {
    stdio: 'ignore',
    detached: true,
  })
  child.once('error', () => onGone(null))
  child.once('exit', onGone)
  child.unref()
  return { ok: true }
}
