import { randomUUID } from 'node:crypto'
import { mkdir, open, rm, type FileHandle } from 'node:fs/promises'
import { join } from 'node:path'
import { ok, type Outcome } from '../../../src-domain/figures/fault.ts'
import type { ArchiveLook } from '../../answers.ts'
import { fileFolder, settle } from '../file-store.ts'
import { readArchive } from './read.ts'
import { dropBuilt, rebuild } from './rebuild.ts'
import type { ArchivedFile, Manifest } from './shape.ts'

/** Reads an archive through and tells what it holds; nothing is written. */
export async function lookAt(path: string): Promise<Outcome<ArchiveLook>> {
  const read = await readArchive(path, () => null)
  return read.ok ? ok(lookOf(read.value)) : read
}

export function lookOf({ schema, madeAt, files, tables }: Manifest): ArchiveLook {
  const count = (table: string) => tables[table]?.length ?? 0
  return { schema, madeAt, items: count('item'), loadouts: count('loadout'), weighings: count('weighing'), files: files.length }
}

export interface Prepared {
  readonly look: ArchiveLook
  /** A whole database, checked, ready to take the store's place. */
  readonly database: string
  readonly drop: () => void
}

/**
 * Makes ready what an archive holds: its pictures under their names in the file store (one that is not wanted after all is swept), its rows in a
 * database of their own. The store in use is not touched; on a fault nothing stays.
 */
export async function prepareTake(dataDir: string, path: string): Promise<Outcome<Prepared>> {
  const database = join(dataDir, `taken-${randomUUID()}.sqlite`)
  const pictures = await makePictures(dataDir)
  try {
    const read = await readArchive(path, pictures.take)
    if (!read.ok) return read
    const built = await rebuild(database, read.value)
    if (!built.ok) {
      dropBuilt(database)
      return built
    }
    await pictures.settle()
    return ok({ look: lookOf(read.value), database, drop: () => dropBuilt(database) })
  } catch (error) {
    dropBuilt(database)
    throw error
  } finally {
    await pictures.drop()
  }
}

/** Pictures are written as parts and get their names only when the whole archive has been found good. */
async function makePictures(dataDir: string) {
  await mkdir(fileFolder(dataDir), { recursive: true, mode: 0o700 })
  const parts = new Map<string, string>()
  return {
    take: ({ sha256 }: ArchivedFile): WritableStream<Uint8Array> => {
      const part = join(fileFolder(dataDir), `part-${randomUUID()}`)
      parts.set(sha256, part)
      return toFile(part)
    },
    async settle(): Promise<void> {
      for (const [sha256, part] of parts) await settle(dataDir, part, sha256)
      parts.clear()
    },
    async drop(): Promise<void> {
      for (const part of parts.values()) await rm(part, { force: true })
    },
  }
}

function toFile(path: string): WritableStream<Uint8Array> {
  let file: FileHandle
  return new WritableStream({
    async start() {
      file = await open(path, 'wx', 0o600)
    },
    // A sink that fails is not asked to abort: it closes its file itself.
    write: (piece) =>
      file.writeFile(piece).catch(async (error: unknown) => {
        await file.close()
        throw error
      }),
    async close() {
      await file.sync()
      await file.close()
    },
    abort: () => file.close(),
  })
}
