import { mkdir } from 'node:fs/promises'
import { fstatSync } from 'node:fs'
import type { Log, Program, ProgramOptions } from '../program.ts'
import type { HostArguments } from './arguments.ts'
import { showWindow } from './browser.ts'
import { makeEnding, type Ending } from './ending.ts'
import { address } from './guard.ts'
import { printWithBrowser } from './print-pdf.ts'
import { giveLock, isStale, knock, readLock, takeLock, type Lock } from './lock.ts'
import { startServer, type DoorServer } from './server.ts'
import { secret } from './tickets.ts'
import { version } from './version.ts'

/** What the loopback host is made of; the entry gives the real parts, tests their own. */
export interface HostParts {
  readonly open: (options: ProgramOptions) => Promise<Program>
  /** Fills an empty demo closet. */
  readonly fillDemo: (program: Program) => Promise<void>
  readonly openDemo: () => Promise<string>
  readonly pageRoot: string
  readonly log: Log
  readonly say: (line: string) => void
  /** Shortens the waits before ending, for tests. */
  readonly waitScale?: number
}

/** Runs until it is told to end; gives the process's exit code. */
export async function runHost(told: HostArguments, parts: HostParts): Promise<number> {
  await mkdir(told.dataDir, { recursive: true, mode: 0o700 })
  const before = await tryFirstHost(told, parts)
  if (before.kind === 'done') return before.code
  return await becomeHost(told, parts, before.stale)
}

type Before = { readonly kind: 'done'; readonly code: number } | { readonly kind: 'free'; readonly stale: Lock | null }

/** If another host holds the data, its window is opened and this start is done. */
async function tryFirstHost(told: HostArguments, parts: HostParts): Promise<Before> {
  const lock = await readLock(told.dataDir)
  if (lock === null) return { kind: 'free', stale: null }
  const door = await knock(lock)
  if (door.kind === 'opened') {
    if (door.ticket === '') parts.say('Tarework is already open; its window is in front now.')
    else present(`http://${address}:${lock.port}/#ticket=${door.ticket}`, told, parts)
    return { kind: 'done', code: 0 }
  }
  if (isStale(lock, door)) return { kind: 'free', stale: lock }
  parts.log.error(`The data in ${told.dataDir} are in use by process ${lock.pid}, which does not answer. End it, then start again.`)
  return { kind: 'done', code: 1 }
}

async function becomeHost(told: HostArguments, parts: HostParts, stale: Lock | null): Promise<number> {
  const stopped = Promise.withResolvers<string>()
  const ending = told.window === 'none' ? null : makeEnding(() => stopped.resolve('the last window closed'), parts.waitScale)
  const key = secret()
  const onWindows = (open: number): void => ending?.windows(open)
  const server = await startServer({ port: told.port, key, pageRoot: parts.pageRoot, log: parts.log, nowMs: Date.now, onWindows })
  const lock: Lock = { pid: process.pid, port: server.port, key }
  const taken = await takeLock(told.dataDir, lock, stale)
  if (!taken.ok) {
    await server.close()
    return await runHost(told, parts)
  }
  listenForEnd(told, (why) => stopped.resolve(why))
  return await holding(told, parts, server, lock, ending, stopped.promise)
}

/** From lock to lock given back: whatever happens between, the folder is left free. */
async function holding(
  told: HostArguments,
  parts: HostParts,
  server: DoorServer,
  lock: Lock,
  ending: Ending | null,
  stopped: Promise<string>,
): Promise<number> {
  try {
    const program = await openProgramFor(told, parts, server)
    server.serve(program)
    parts.log.info(`listening on ${address}:${server.port}, data in ${told.dataDir}`)
    ending?.expect()
    const shown = present(server.newUrl(), told, parts)
    if (!shown) ending?.keep()
    parts.log.info(`ending: ${await stopped}`)
    await server.stop()
    await program.close()
    return 0
  } finally {
    await giveLock(told.dataDir, lock)
    await server.close()
  }
}

async function openProgramFor(told: HostArguments, parts: HostParts, server: DoorServer): Promise<Program> {
  const program = await parts.open({
    dataDir: told.dataDir,
    host: 'loopback',
    version,
    log: parts.log,
    now: () => new Date(),
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    demo: told.demo,
    openDemo: parts.openDemo,
    printPdf: (page, file) => printWithBrowser(`${server.newUrl()}&go=${page}`, file),
  })
  if (told.demo) await parts.fillDemo(program)
  return program
}

/** Opens a window on the address or tells it; true: a window is on its way. */
function present(url: string, told: HostArguments, parts: HostParts): boolean {
  if (told.window !== 'open') {
    parts.say(JSON.stringify({ url }))
    return told.window === 'elsewhere'
  }
  const shown = showWindow(url, told.dataDir, (code) => {
    if (code !== 0) parts.say(`The browser did not start. Open this address within a minute: ${url}`)
  })
  if (shown.ok) parts.say('Tarework is open in a browser window of its own.')
  else parts.say(`${reasons[shown.why]} Open this address within a minute:\n${url}`)
  return shown.ok
}

const reasons = {
  'no-browser': 'No Chromium or browser of its kind was found on this computer.',
  root: 'Chromium does not start for the user root with its sandbox on, and Tarework does not switch that off.',
} as const

/** SIGTERM and SIGINT end it; without a window also the end of standard input, if that was a pipe at start (whoever held it is gone). */
function listenForEnd(told: HostArguments, end: (why: string) => void): void {
  process.once('SIGTERM', () => end('SIGTERM'))
  process.once('SIGINT', () => end('SIGINT'))
  if (told.window !== 'none' || !stdinIsPipe()) return
  process.stdin.on('end', () => end('standard input closed'))
  process.stdin.on('error', () => end('standard input broke'))
  process.stdin.resume()
}

function stdinIsPipe(): boolean {
  try {
    const kind = fstatSync(0)
    return kind.isFIFO() || kind.isSocket()
  } catch {
    return false
  }
}
