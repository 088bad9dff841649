import { spawnSync } from 'node:child_process'
import { closeSync, mkdirSync, openSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** What a build is made of; the tests and the documents are not. */
const sources = ['src-domain', 'src-main', 'src-renderer', 'migrations', 'electron.vite.config.ts', 'package.json']
const stamp = (root: string): string => join(root, 'out', 'built')

/** Builds what is missing or older than its sources. Two starts at once: one builds, the other waits. False: the build failed. */
export async function buildIfStale(root: string, say: (line: string) => void): Promise<boolean> {
  if (!isStale(root)) return true
  const done = await claim(root)
  try {
    if (!isStale(root)) return true
    say('Building Tarework …')
    return build(root)
  } finally {
    done()
  }
}

/** The stamp carries the time at which its build began: a source saved during a build makes it stale again. */
export function isStale(root: string): boolean {
  const built = changedMs(stamp(root))
  return built === 0 || sources.some((name) => newestMs(join(root, name)) > built)
}

const changedMs = (path: string): number => statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0

function newestMs(path: string): number {
  const seen = statSync(path, { throwIfNoEntry: false })
  if (seen === undefined) return 0
  if (!seen.isDirectory()) return seen.mtimeMs
  return Math.max(0, ...readdirSync(path).map((name) => newestMs(join(path, name))))
}

/** What the build says goes to standard error: standard output belongs to the host's one line. */
function build(root: string): boolean {
  const began = stamp(root) + '.begun'
  writeFileSync(began, '')
  const tool = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js')
  const run = spawnSync(process.execPath, [tool, 'build', '--logLevel', 'warn'], { cwd: root, stdio: ['ignore', 2, 2] })
  if (run.status === 0) takeTime(began, stamp(root))
  rmSync(began, { force: true })
  return run.status === 0
}

function takeTime(from: string, to: string): void {
  const { mtime } = statSync(from)
  writeFileSync(to, '')
  utimesSync(to, mtime, mtime)
}

/** Holds `out/building` while it works; one older than five minutes was left by a start that was killed. */
async function claim(root: string): Promise<() => void> {
  mkdirSync(join(root, 'out'), { recursive: true })
  const path = join(root, 'out', 'building')
  for (;;) {
    try {
      closeSync(openSync(path, 'wx'))
      return () => rmSync(path, { force: true })
    } catch {
      if (Date.now() - changedMs(path) > 300_000) rmSync(path, { force: true })
      await new Promise((settle) => setTimeout(settle, 200))
    }
  }
}
