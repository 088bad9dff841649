import { createHash, randomUUID } from 'node:crypto'
import { existsSync } from 'node:fs'
import { mkdir, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { syncFolderOf } from '../store/backup.ts'
import { pour } from './pour.ts'
import { pictureKind, type PictureKind } from './sniff.ts'

/**
 * Photographs beside the database: `files/<sha256>`, written once, never changed. The name is the content, so a file is checked each time
 * it is read, and the same picture twice is one file.
 */
export interface KeptFile {
  readonly sha256: string
  readonly mime: PictureKind
  readonly bytes: number
}

/** A photograph of 50 megapixels as JPEG is about half of this. */
export const maxPictureBytes = 32 * 1024 * 1024

export const fileFolder = (dataDir: string): string => join(dataDir, 'files')
export const filePath = (dataDir: string, sha256: string): string => join(fileFolder(dataDir), sha256)
export const isSha256 = (name: string): boolean => /^[0-9a-f]{64}$/.test(name)
const isPart = (name: string): boolean => /^part-[0-9a-f-]{36}$/.test(name)

/** Takes a picture in: streamed beside, hashed, synced, then renamed to its hash. */
export async function keepFile(dataDir: string, from: AsyncIterable<Uint8Array>, maxBytes = maxPictureBytes): Promise<Outcome<KeptFile>> {
  await mkdir(fileFolder(dataDir), { recursive: true, mode: 0o700 })
  const part = join(fileFolder(dataDir), `part-${randomUUID()}`)
  const accept = (start: Uint8Array) => (pictureKind(start) === null ? fault('file.not-image').fault : null)
  const poured = await pour(from, part, { maxBytes, accept })
  if (!poured.ok) return poured
  const { sha256, bytes, start } = poured.value
  await settle(dataDir, part, sha256)
  return ok({ sha256, mime: pictureKind(start)!, bytes })
}

/** Gives a complete part its name. Where a file of that name already stands it is replaced: were that one damaged, it is mended so. */
export async function settle(dataDir: string, part: string, sha256: string): Promise<void> {
  const path = filePath(dataDir, sha256)
  await rename(part, path).catch((error: unknown) => dropPart(part, error))
  syncFolderOf(path)
}

async function dropPart(part: string, error: unknown): Promise<never> {
  await rm(part, { force: true })
  throw error
}

/** Reads a kept picture and checks that it still is what its name says. */
export async function readKept(
  dataDir: string,
  sha256: string,
): Promise<Outcome<{ readonly bytes: Buffer<ArrayBuffer>; readonly mime: PictureKind }>> {
  const path = filePath(dataDir, sha256)
  if (!isSha256(sha256) || !existsSync(path)) return fault('row.gone', { table: 'file', key: sha256 })
  const bytes = await readFile(path)
  const mime = pictureKind(bytes)
  if (mime === null || createHash('sha256').update(bytes).digest('hex') !== sha256) return fault('file.unreadable', { name: sha256 })
  return ok({ bytes, mime })
}

/** How long a file that nobody names yet may wait for the call that will: a picture arrives before the row that holds it. */
const waitMs = 60 * 60 * 1000

/** Files that nobody names, and parts that were left behind; both only once they have waited. A file that is not ours is never among them. */
export async function unnamedFiles(dataDir: string, named: ReadonlySet<string>, nowMs: number): Promise<readonly string[]> {
  const folder = fileFolder(dataDir)
  const unnamed: string[] = []
  for (const name of existsSync(folder) ? await readdir(folder) : []) {
    if (!isPart(name) && (!isSha256(name) || named.has(name))) continue
    if (nowMs - (await stat(join(folder, name))).mtimeMs >= waitMs) unnamed.push(name)
  }
  return unnamed
}
