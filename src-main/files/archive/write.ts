import { createReadStream, existsSync, statSync } from 'node:fs'
import { mkdir, open, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import Database from 'better-sqlite3'
import { fault, ok, type Outcome } from '../../../src-domain/figures/fault.ts'
import type { ArchiveMade } from '../../answers.ts'
import { syncFolderOf } from '../../store/backup.ts'
import type { Raw } from '../../store/handles.ts'
import { maxArchiveBytes, outFolder } from '../boxes.ts'
import { filePath } from '../file-store.ts'
import { toWeb } from '../streams.ts'
import { manifestText } from './manifest-text.ts'
import { fileEntry, manifestName, type ArchivedFile } from './shape.ts'
import { makeZip } from './zip.ts'

export interface ToArchive {
  readonly dataDir: string
  /** The store's file; a connection of its own reads one state of it while others go on writing. */
  readonly storeFile: string
  readonly program: string
  readonly now: Date
}

/** Writes everything that is the person's into the outbox: beside, synced, then named. */
export async function writeArchive({ dataDir, storeFile, program, now }: ToArchive): Promise<Outcome<ArchiveMade>> {
  const raw = new Database(storeFile, { readonly: true, fileMustExist: true })
  try {
    raw.exec('BEGIN')
    const files = filesOf(raw)
    const missing = files.find(({ sha256, bytes }) => sizeOf(dataDir, sha256) !== bytes)
    if (missing !== undefined) return fault('file.unreadable', { name: missing.sha256 })
    if (files.reduce((sum, { bytes }) => sum + bytes, 0) > maxArchiveBytes / 2)
      return fault('file.too-large', { limit: maxArchiveBytes / 2 })
    return await put(dataDir, nameFor(now), now, raw, { madeAt: now.toISOString(), program, files })
  } finally {
    raw.close()
  }
}

const nameFor = (now: Date): string => `tarework-${now.toISOString().slice(0, 19).replaceAll(':', '').replace('T', '-')}.tarework`

/** Files that a photograph names; others are on their way out. */
function filesOf(raw: Raw): readonly ArchivedFile[] {
  const named =
    'SELECT sha256 FROM photo UNION SELECT thumb_sha256 FROM photo UNION SELECT sha256 FROM trip_photo UNION SELECT thumb_sha256 FROM trip_photo'
  return raw.prepare<[], ArchivedFile>(`SELECT sha256, mime, bytes FROM file WHERE sha256 IN (${named}) ORDER BY sha256`).all()
}

function sizeOf(dataDir: string, sha256: string): number | null {
  const path = filePath(dataDir, sha256)
  return existsSync(path) ? statSync(path).size : null
}

type Head = Parameters<typeof manifestText>[1]

async function put(dataDir: string, name: string, now: Date, raw: Raw, head: Head): Promise<Outcome<ArchiveMade>> {
  await mkdir(outFolder(dataDir), { recursive: true, mode: 0o700 })
  const path = join(outFolder(dataDir), name)
  const part = `${path}.part`
  try {
    const bytes = await fill(part, dataDir, now, raw, head)
    await rename(part, path)
    syncFolderOf(path)
    return ok({ name, bytes, url: `/out/${name}` })
  } catch (error) {
    await rm(part, { force: true })
    throw error
  }
}

async function fill(part: string, dataDir: string, now: Date, raw: Raw, head: Head): Promise<number> {
  const file = await open(part, 'w', 0o600)
  try {
    const zip = makeZip(new WritableStream<Uint8Array>({ write: (piece) => file.writeFile(piece) }), now)
    await zip.add(manifestName, toWeb(Readable.from(encoded(manifestText(raw, head)))), { level: 6 })
    for (const { sha256 } of head.files) await zip.add(fileEntry(sha256), toWeb(createReadStream(filePath(dataDir, sha256))))
    await zip.close()
    await file.sync()
    return (await file.stat()).size
  } finally {
    await file.close()
  }
}

const pieceChars = 65_536

/** Small texts joined to pieces that are worth a write. */
function* encoded(texts: Iterable<string>): Generator<Uint8Array> {
  const encoder = new TextEncoder()
  let waiting = ''
  for (const text of texts) {
    waiting += text
    if (waiting.length < pieceChars) continue
    yield encoder.encode(waiting)
    waiting = ''
  }
  if (waiting !== '') yield encoder.encode(waiting)
}
