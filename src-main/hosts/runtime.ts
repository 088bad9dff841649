import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

type Env = Readonly<Record<string, string | undefined>>

/**
 * The Electron program on this computer, or null. The package `electron` is not imported for it: its index downloads when imported, and throws
 * where there is no network. ELECTRON_OVERRIDE_DIST_PATH names a folder with another copy.
 */
export function findRuntime(root: string, env: Env): string | null {
  const folder = join(root, 'node_modules', 'electron')
  const named = join(folder, 'path.txt')
  const file = existsSync(named) ? readFileSync(named, 'utf8').trim() : usualName(process.platform)
  const path = join(env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(folder, 'dist'), file)
  return existsSync(path) ? path : null
}

function usualName(platform: NodeJS.Platform): string {
  if (platform === 'darwin') return 'Electron.app/Contents/MacOS/Electron'
  return platform === 'win32' ? 'electron.exe' : 'electron'
}

/** Lets the package fetch its runtime, once; true: it is there now. Without a network it gives up in a moment. */
export function fetchRuntime(root: string, say: (line: string) => void): boolean {
  const installer = join(root, 'node_modules', 'electron', 'install.js')
  if (!existsSync(installer)) return false
  say('Fetching the Electron runtime …')
  return spawnSync(process.execPath, [installer], { cwd: root, stdio: 'ignore', timeout: 600_000 }).status === 0
}
