import { randomUUID } from 'node:crypto'
import { existsSync } from 'node:fs'
import { mkdir, readdir, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { pour } from './pour.ts'
import { looksZipped } from './sniff.ts'

/** Archives on their way: what a window sent waits in `in/<token>` until it is taken, what was made waits in `out/<name>` until it is fetched. */
export const inFolder = (dataDir: string): string => join(dataDir, 'in')
export const outFolder = (dataDir: string): string => join(dataDir, 'out')

/** Just under what a ZIP without the 64-bit extension can hold. */
export const maxArchiveBytes = 4 * 1024 ** 3 - 64 * 1024

const isToken = (name: string): boolean => /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(name)
/** A plain file name: nothing that a path, a shell or another system would read anything into. */
export const isOutName = (name: string): boolean => /^[A-Za-z0-9][A-Za-z0-9 ._-]{0,119}$/.test(name) && !name.endsWith('.part')

/** Where a sent archive waits; null: the token is none of ours or its file is gone. */
export function inPath(dataDir: string, token: string): string | null {
  const path = join(inFolder(dataDir), token)
  return isToken(token) && existsSync(path) ? path : null
}

/** Takes an archive in. What does not even begin like one is refused at its first bytes. */
export async function takeIn(
  dataDir: string,
  from: AsyncIterable<Uint8Array>,
  maxBytes = maxArchiveBytes,
): Promise<Outcome<{ readonly token: string }>> {
  await mkdir(inFolder(dataDir), { recursive: true, mode: 0o700 })
  const token = randomUUID()
  const part = join(inFolder(dataDir), `${token}.part`)
  const accept = (start: Uint8Array) => (looksZipped(start) ? null : fault('archive.unreadable', { detail: 'it is no ZIP file' }).fault)
  const poured = await pour(from, part, { maxBytes, accept })
  if (!poured.ok) return poured
  await rename(part, join(inFolder(dataDir), token))
  return ok({ token })
}

const keptMs = 24 * 60 * 60 * 1000

/** Removes what waited for a day in either box. */
export async function sweepBoxes(dataDir: string, nowMs: number): Promise<void> {
  for (const folder of [inFolder(dataDir), outFolder(dataDir)]) {
    for (const name of existsSync(folder) ? await readdir(folder) : []) {
      const path = join(folder, name)
      if (nowMs - (await stat(path)).mtimeMs > keptMs) await rm(path, { force: true })
    }
  }
}
