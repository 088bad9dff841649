import { link, mkdir, open, readFile, rm, stat } from 'node:fs/promises'
import { request } from 'node:http'
import { join } from 'node:path'
import { address } from './guard.ts'
import { secret } from './tickets.ts'

/** What the lock file tells a second start: who holds the data, where to knock, and the key that opens. Readable by its owner alone. */
export interface Lock {
  readonly pid: number
  readonly port: number
  readonly key: string
}

/**
 * What knocking at the holder's door gave. `opened` with ticket '': the holder shows its own window; `busy`: it is starting or ending;
 * `silent`: no answer, or not from a host of ours; `closed`: nobody listens there.
 */
export type Door = { readonly kind: 'opened'; readonly ticket: string } | { readonly kind: 'busy' | 'silent' | 'closed' }

export type Taken = { readonly ok: true } | { readonly ok: false; readonly by: Lock }

const lockPath = (dataDir: string): string => join(dataDir, 'lock.json')
const guardPath = (dataDir: string): string => join(dataDir, 'lock.guard')

export async function readLock(dataDir: string): Promise<Lock | null> {
  const text = await readFile(lockPath(dataDir), 'utf8').catch(() => null)
  return text === null ? null : parseLock(text)
}

/** A lock that cannot be read holds nothing: it is written whole before it gets its name, so no host of ours left it. */
function parseLock(text: string): Lock | null {
  try {
    const { pid, port, key } = JSON.parse(text) as Partial<Lock>
    return typeof pid === 'number' && typeof port === 'number' && typeof key === 'string' ? { pid, port, key } : null
  } catch {
    return null
  }
}

/**
 * Takes the data folder for this host. The file is written beside and linked into place, so it appears whole or not at all,
 * and only one of several starts gets it. `stale` is the lock found dead before; it is removed only if it is still the same.
 */
export async function takeLock(dataDir: string, mine: Lock, stale: Lock | null): Promise<Taken> {
  await mkdir(dataDir, { recursive: true, mode: 0o700 })
  return await alone(dataDir, async () => {
    const there = await readLock(dataDir)
    if (there !== null && there.key !== stale?.key) return { ok: false, by: there }
    await rm(lockPath(dataDir), { force: true })
    const draft = join(dataDir, `lock.${secret().slice(0, 8)}`)
    const file = await open(draft, 'wx', 0o600)
    await file.writeFile(JSON.stringify(mine)).finally(() => file.close())
    await link(draft, lockPath(dataDir)).finally(() => rm(draft, { force: true }))
    return { ok: true }
  })
}

/** Gives the folder back, if it is still ours. */
export async function giveLock(dataDir: string, mine: Lock): Promise<void> {
  const there = await readLock(dataDir)
  if (there?.key === mine.key) await rm(lockPath(dataDir), { force: true })
}

/** Looking at the old lock and putting the new one happen under a guard file that lives for milliseconds; an old one is a dead start's. */
async function alone<T>(dataDir: string, work: () => Promise<T>): Promise<T> {
  const guard = guardPath(dataDir)
  for (;;) {
    const file = await open(guard, 'wx', 0o600).catch((error: unknown) => ifExists(error))
    if (file !== null) {
      await file.close()
      return await work().finally(() => rm(guard, { force: true }))
    }
    const seen = await stat(guard).catch(() => null)
    if (seen !== null && Date.now() - seen.mtimeMs > 10_000) await rm(guard, { force: true })
    await new Promise((settle) => setTimeout(settle, 20))
  }
}

function ifExists(error: unknown): null {
  if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return null
  throw error
}

/** Is nobody behind this lock? A host listens before it takes the lock and until it has given it back. */
export const isStale = (lock: Lock, door: Door): boolean => door.kind === 'closed' || (door.kind !== 'opened' && !isAlive(lock.pid))

function isAlive(pid: number): boolean {
  if (pid === process.pid) return false
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

/** Shows the key at the holder's door, again and again while it is starting or ending. */
export async function knock(lock: Lock, patienceMs = 30_000): Promise<Door> {
  const until = Date.now() + patienceMs
  for (;;) {
    const door = await knockOnce(lock, 5_000)
    if (door.kind !== 'busy' || Date.now() > until) return door
    await new Promise((settle) => setTimeout(settle, 200))
  }
}

function knockOnce(lock: Lock, waitMs: number): Promise<Door> {
  return new Promise((settle) => {
    const text = JSON.stringify({ key: lock.key })
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(text) }
    const asked = request({ host: address, port: lock.port, path: '/api/door', method: 'POST', headers, timeout: waitMs }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (part: Buffer) => parts.push(part))
      response.on('end', () => settle(opened(response.statusCode, Buffer.concat(parts).toString('utf8'))))
    })
    asked.on('timeout', () => asked.destroy(new Error('no answer')))
    asked.on('error', (error) => settle({ kind: 'code' in error && error.code === 'ECONNREFUSED' ? 'closed' : 'silent' }))
    asked.end(text)
  })
}

function opened(status: number | undefined, text: string): Door {
  if (status !== 200) return { kind: status === 503 ? 'busy' : 'silent' }
  try {
    const { ticket } = JSON.parse(text) as { readonly ticket?: unknown }
    return typeof ticket === 'string' ? { kind: 'opened', ticket } : { kind: 'silent' }
  } catch {
    return { kind: 'silent' }
  }
}
