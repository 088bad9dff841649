import { spawn } from 'node:child_process'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { buildIfStale } from './hosts/building.ts'
import { fetchRuntime, findRuntime } from './hosts/runtime.ts'

/**
 * `npm start`: builds if need be, then opens the Electron window; where its runtime cannot be had, the loopback host and the machine's browser.
 * `--no-window` starts the loopback host alone, which prints its one line; everything else said here goes to standard error.
 */
const root = resolve(import.meta.dirname, '..')
const words = process.argv.slice(2)
const say = (line: string): void => void process.stderr.write(`${line}\n`)
const isRoot = process.getuid?.() === 0

if (!(await buildIfStale(root, say))) {
  say('The build failed; what it says stands above.')
  process.exit(1)
}
const wantsWindow = !words.includes('--no-window') && !words.includes('--window-elsewhere')
const runtime = wantsWindow ? electron() : null
if (runtime === null) await import(pathToFileURL(join(root, 'out', 'main', 'loopback.js')).href)
else openElectron(runtime)

/** The runtime that can be used, or null and one line that says why not. */
function electron(): string | null {
  if (isRoot) {
    say('The Electron window does not open for the user root (its sandbox would be off): using the browser of this computer.')
    return null
  }
  const found = findRuntime(root, process.env) ?? (fetchRuntime(root, say) ? findRuntime(root, process.env) : null)
  if (found === null) say('The Electron runtime is not installed and could not be fetched: using the browser of this computer.')
  return found
}

function openElectron(path: string): void {
  // Were this one set, Electron would start as plain Node, without a window.
  const env = { ...process.env, ELECTRON_RUN_AS_NODE: undefined }
  const child = spawn(path, ['.', ...words], { cwd: root, stdio: 'inherit', env })
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.on(signal, () => child.kill(signal))
  child.on('error', (error) => {
    say(`The Electron window did not open: ${error.message}`)
    process.exitCode = 1
  })
  child.on('exit', (code) => (process.exitCode = code ?? 1))
}
