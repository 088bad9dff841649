import { createHash } from 'node:crypto'
import { open, rm, type FileHandle } from 'node:fs/promises'
import { fault, ok, type Fault, type Outcome } from '../../src-domain/figures/fault.ts'
import { syncFolderOf } from '../store/backup.ts'

export interface Poured {
  readonly sha256: string
  readonly bytes: number
  /** The first bytes, for telling what it is. */
  readonly start: Uint8Array
}

export interface PourLimits {
  readonly maxBytes: number
  /** Looks at the first bytes; a fault ends it before more is written. */
  readonly accept: (start: Uint8Array) => Fault | null
}

const startBytes = 12

/**
 * Writes a stream to a new file, hashing on the way; at most one piece is in memory. Synced to the disk before it answers.
 * Refused, cut off or failed: nothing of it stays.
 */
export async function pour(from: AsyncIterable<Uint8Array>, path: string, limits: PourLimits): Promise<Outcome<Poured>> {
  const file = await open(path, 'wx', 0o600)
  let kept = false
  try {
    const poured = await fill(file, from, limits)
    if (poured.ok) await file.sync()
    kept = poured.ok
    return poured
  } finally {
    await file.close()
    if (!kept) await rm(path, { force: true })
    else syncFolderOf(path)
  }
}

async function fill(file: FileHandle, from: AsyncIterable<Uint8Array>, { maxBytes, accept }: PourLimits): Promise<Outcome<Poured>> {
  const hash = createHash('sha256')
  let start = new Uint8Array()
  let bytes = 0
  for await (const part of from) {
    bytes += part.length
    if (bytes > maxBytes) return fault('file.too-large', { limit: maxBytes })
    const known = start.length
    if (known < startBytes) start = joined(start, part.subarray(0, startBytes - known))
    if (known < startBytes && start.length === startBytes) {
      const refused = accept(start)
      if (refused !== null) return { ok: false, fault: refused }
    }
    hash.update(part)
    await file.writeFile(part)
  }
  const refused = start.length < startBytes ? accept(start) : null
  return refused === null ? ok({ sha256: hash.digest('hex'), bytes, start }) : { ok: false, fault: refused }
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(a.length + b.length)
  both.set(a)
  both.set(b, a.length)
  return both
}
