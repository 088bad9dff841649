import type { FileHandle } from 'node:fs/promises'
import * as zip from '@zip.js/zip.js/index-native.js'
import { fault, type Fault } from '../../../src-domain/figures/fault.ts'

/**
 * ZIP by one library, both ways: zip.js. It reads from the central directory, checks each CRC and refuses archives that two readers
 * could understand differently. (Tried with 1 GB in 256 stored entries: a streaming reader that looks for the end of each entry in the data
 * lost 4 MB of it without a word.)
 */
zip.configure({ useWebWorkers: false })

/** The most that is read in one piece; a central directory larger than this is no archive of ours. */
const maxPieceBytes = 32 * 1024 * 1024

/** Reads an archive from a file at any place, without holding it. */
class HandleReader extends zip.Reader<FileHandle> {
  readonly #file: FileHandle
  constructor(file: FileHandle) {
    super(file)
    this.#file = file
  }
  override async init(): Promise<void> {
    await super.init?.()
    this.size = (await this.#file.stat()).size
  }
  override async readUint8Array(at: number, length: number): Promise<Uint8Array<ArrayBuffer>> {
    if (length > maxPieceBytes) throw new Error(zip.ERR_BAD_FORMAT)
    const piece = new Uint8Array(length)
    const { bytesRead } = await this.#file.read(piece, 0, length, at)
    return piece.subarray(0, bytesRead)
  }
}

export const openZip = (file: FileHandle): zip.ZipReader<FileHandle> =>
  new zip.ZipReader(new HandleReader(file), { strictness: 'strict', checkSignature: true, checkOverlappingEntry: true })

/** Stored, not deflated, unless said: photographs do not shrink. Every archive has the same times inside, so that the same closet is the same file. */
export const makeZip = (to: WritableStream<Uint8Array>, at: Date): zip.ZipWriter<unknown> =>
  new zip.ZipWriter(to, { level: 0, lastModDate: at, extendedTimestamp: false, useUnicodeFileNames: true })

const cutShort: ReadonlySet<string> = new Set([
  zip.ERR_EOCDR_NOT_FOUND,
  zip.ERR_CENTRAL_DIRECTORY_NOT_FOUND,
  zip.ERR_LOCAL_FILE_HEADER_NOT_FOUND,
  zip.ERR_ENTRY_DATA_OUT_OF_BOUNDS,
  zip.ERR_EOCDR_LOCATOR_ZIP64_NOT_FOUND,
])
const spoiled: ReadonlySet<string> = new Set([zip.ERR_INVALID_CRC32, zip.ERR_INVALID_UNCOMPRESSED_SIZE, zip.ERR_INVALID_COMPRESSED_DATA])

/** What a failure of reading means to the person: it was cut off, it was changed, or it is none of ours. */
export function zipFault(error: unknown): Fault {
  const message = error instanceof Error ? error.message : String(error)
  if (cutShort.has(message)) return fault('archive.truncated').fault
  if (spoiled.has(message)) return fault('archive.mismatch', { name: '' }).fault
  return fault('archive.unreadable', { detail: message }).fault
}

/** Is this an error that zip.js means the archive by (and not a bug or a full disk)? */
export const isZipError = (error: unknown): boolean => error instanceof Error && zipMessages.has(error.message)

const zipMessages: ReadonlySet<string> = new Set(
  Object.entries(zip).flatMap(([name, value]) => (name.startsWith('ERR_') && typeof value === 'string' ? [value] : [])),
)
