import { createHash } from 'node:crypto'
import { open } from 'node:fs/promises'
import { TextDecoder } from 'node:util'
import type { Entry, FileEntry, ZipReader } from '@zip.js/zip.js/index-native.js'
import * as v from 'valibot'
import { migrations as ours } from '../../../migrations/index.ts'
import { fault, ok, type Fault, type Outcome } from '../../../src-domain/figures/fault.ts'
import { isSha256, maxPictureBytes } from '../file-store.ts'
import { archiveFormat, archiveSchemaNumber, fileEntry, manifestName, maxManifestBytes, type ArchivedFile, type Manifest } from './shape.ts'
import { isZipError, openZip, zipFault } from './zip.ts'

/** Where the pictures of an archive go while it is read: to the disk, or nowhere when it is only looked at. */
export type Take = (file: ArchivedFile) => WritableStream<Uint8Array> | null

/**
 * Reads an archive through: the manifest, then every picture against its hash and size. Anything amiss is a fault, and it is looked for in this
 * order: not a ZIP, cut off, of a newer version, an entry that does not belong, something missing or changed.
 */
export async function readArchive(path: string, take: Take): Promise<Outcome<Manifest>> {
  const file = await open(path, 'r')
  try {
    return await readThrough(openZip(file), take)
  } catch (error) {
    if (error instanceof Refused) return { ok: false, fault: error.fault }
    if (isZipError(error)) return { ok: false, fault: zipFault(error) }
    throw error
  } finally {
    await file.close()
  }
}

/** Carries a fault out of a stream, which knows only errors. */
class Refused extends Error {
  readonly fault: Fault
  constructor(refused: Fault) {
    super(refused.code)
    this.fault = refused
  }
}
const refuse = (...what: Parameters<typeof fault>): never => {
  throw new Refused(fault(...what).fault)
}

async function readThrough(zip: ZipReader<unknown>, take: Take): Promise<Outcome<Manifest>> {
  const entries = await entriesOf(zip)
  const first = entries.get(manifestName) ?? refuse('archive.unreadable', { detail: `it holds no ${manifestName}` })
  const manifest = parseManifest(await textOf(first))
  const wanted = new Map(manifest.files.map((one) => [fileEntry(one.sha256), one]))
  for (const name of entries.keys())
    if (name !== manifestName && !wanted.has(name)) refuse('archive.foreign-entry', { name: name.slice(0, 200) })
  for (const [name, picture] of wanted) {
    const entry = entries.get(name) ?? refuse('archive.mismatch', { name })
    await readPicture(entry, picture, take(picture))
  }
  return ok(manifest)
}

/** More entries than a closet can have photographs: no archive of ours. */
const maxEntries = 200_000

async function entriesOf(zip: ZipReader<unknown>): Promise<ReadonlyMap<string, FileEntry>> {
  const entries = new Map<string, FileEntry>()
  for await (const entry of zip.getEntriesGenerator()) {
    if (entries.size >= maxEntries) refuse('archive.unreadable', { detail: 'too many entries' })
    if (!isPlain(entry) || entries.has(entry.filename)) return refuse('archive.foreign-entry', { name: entry.filename.slice(0, 200) })
    entries.set(entry.filename, entry)
  }
  return entries
}

const isPlain = (entry: Entry): entry is FileEntry => !entry.directory && !entry.encrypted

/** Unpacked at most to its cap, whatever the entry says of itself: a bomb ends there. */
async function textOf(entry: FileEntry): Promise<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true })
  const parts: string[] = []
  await readCapped(entry, maxManifestBytes, (piece) => parts.push(decoded(decoder, piece)))
  parts.push(decoded(decoder))
  return parts.join('')
}

function decoded(decoder: TextDecoder, piece?: Uint8Array): string {
  try {
    return piece === undefined ? decoder.decode() : decoder.decode(piece, { stream: true })
  } catch {
    return refuse('archive.unreadable', { detail: `${manifestName} is no text` })
  }
}

async function readCapped(entry: FileEntry, maxBytes: number, each: (piece: Uint8Array) => unknown): Promise<number> {
  let bytes = 0
  // What a sink throws does not always come out of the library as it went in.
  let thrown: unknown
  const write = async (piece: Uint8Array): Promise<void> => {
    bytes += piece.length
    if (bytes > maxBytes) refuse('file.too-large', { limit: maxBytes, name: entry.filename })
    await each(piece)
  }
  const cap = new WritableStream<Uint8Array>({
    write: (piece) =>
      write(piece).catch((error: unknown) => {
        thrown ??= error
        throw error
      }),
  })
  await entry.getData(cap).catch((error: unknown) => {
    throw thrown ?? error
  })
  return bytes
}

async function readPicture(entry: FileEntry, { sha256, bytes }: ArchivedFile, to: WritableStream<Uint8Array> | null): Promise<void> {
  const hash = createHash('sha256')
  const writer = to?.getWriter()
  try {
    const read = await readCapped(entry, bytes, (piece) => {
      hash.update(piece)
      return writer?.write(piece)
    })
    if (read !== bytes || hash.digest('hex') !== sha256) refuse('archive.mismatch', { name: entry.filename })
    await writer?.close()
  } catch (error) {
    await writer?.abort(error).catch(() => undefined)
    // More bytes than the manifest allows is the same finding as other bytes.
    if (error instanceof Refused && error.fault.code === 'file.too-large') refuse('archive.mismatch', { name: entry.filename })
    throw error
  }
}

const cell = v.union([v.string(), v.pipe(v.number(), v.finite()), v.null()])
const manifestInput = v.strictObject({
  format: v.literal(archiveFormat),
  schema: v.literal(archiveSchemaNumber),
  madeAt: v.pipe(v.string(), v.isoTimestamp()),
  program: v.pipe(v.string(), v.maxLength(100)),
  migrations: v.array(v.pipe(v.string(), v.maxLength(100))),
  files: v.array(
    v.strictObject({
      sha256: v.pipe(v.string(), v.check(isSha256)),
      mime: v.picklist(['image/png', 'image/jpeg', 'image/webp']),
      bytes: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(maxPictureBytes)),
    }),
  ),
  tables: v.record(v.string(), v.array(v.record(v.string(), cell))),
})

/** Its version is looked at before its form: a newer one may have any. */
export function parseManifest(text: string): Manifest {
  const value = jsonOf(text)
  const { schema, migrations } = value as { readonly schema?: unknown; readonly migrations?: unknown }
  if (typeof schema === 'number' && schema > archiveSchemaNumber) refuse('archive.newer', { schema })
  const unknown = Array.isArray(migrations)
    ? (migrations as unknown[]).find((name) => typeof name === 'string' && !Object.hasOwn(ours, name))
    : undefined
  if (typeof unknown === 'string') refuse('archive.newer', { schema: unknown.slice(0, 100) })
  const checked = v.safeParse(manifestInput, value)
  if (!checked.success)
    return refuse('archive.unreadable', { detail: `${v.getDotPath(checked.issues[0]) ?? ''}: ${checked.issues[0].message}`.slice(0, 300) })
  if (new Set(checked.output.files.map(({ sha256 }) => sha256)).size < checked.output.files.length)
    refuse('archive.unreadable', { detail: 'a file is listed twice' })
  return checked.output
}

function jsonOf(text: string): object {
  try {
    const value: unknown = JSON.parse(text)
    if (typeof value === 'object' && value !== null) return value
  } catch {
    // said below
  }
  return refuse('archive.unreadable', { detail: `${manifestName} is no JSON` })
}
