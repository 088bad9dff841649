import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import {
  BlobWriter,
  TextReader,
  Uint8ArrayReader,
  Uint8ArrayWriter,
  ZipReader,
  ZipWriter,
  type FileEntry,
} from '@zip.js/zip.js/index-native.js'
import type { Outcome } from '../../../src-domain/figures/fault.ts'
import type { Tried } from '../program-at.ts'
import { takeIn } from '../../../src-main/files/boxes.ts'
import type { Manifest } from '../../../src-main/files/archive/shape.ts'

/** Archives taken apart and put together anew, for tests that spoil one. */
export interface Parts {
  readonly manifest: Manifest
  readonly files: ReadonlyMap<string, Uint8Array>
}

export async function partsOf(path: string): Promise<Parts> {
  const zip = new ZipReader(new Uint8ArrayReader(readFileSync(path)))
  const entries = (await zip.getEntries()) as FileEntry[]
  const bytes = new Map(await Promise.all(entries.map(async (one) => [one.filename, await one.getData(new Uint8ArrayWriter())] as const)))
  const manifest = JSON.parse(new TextDecoder().decode(bytes.get('tarework.json'))) as Manifest
  bytes.delete('tarework.json')
  return { manifest, files: bytes }
}

export type Entries = readonly (readonly [name: string, content: string | Uint8Array])[]

/** A ZIP of any entries, in memory. */
export async function zipOf(entries: Entries, level = 0): Promise<Buffer> {
  const zip = new ZipWriter(new BlobWriter('application/zip'), { level })
  for (const [name, content] of entries)
    await zip.add(name, typeof content === 'string' ? new TextReader(content) : new Uint8ArrayReader(content))
  return Buffer.from(await (await zip.close()).arrayBuffer())
}

export const put = ({ manifest, files }: Parts): Promise<Buffer> => zipOf([['tarework.json', JSON.stringify(manifest)], ...files])

/** Posts bytes into the inbox. */
export async function posted(dataDir: string, bytes: Buffer): Promise<string> {
  const done: Outcome<{ readonly token: string }> = await takeIn(dataDir, pieces(bytes))
  if (!done.ok) throw new Error(done.fault.code)
  return done.value.token
}

async function* pieces(bytes: Buffer): AsyncIterable<Uint8Array> {
  for (let at = 0; at < bytes.length; at += 65_536) yield await Promise.resolve(bytes.subarray(at, at + 65_536))
}

/** Writes an archive and gives its path. */
export async function archived(tried: Tried): Promise<string> {
  const { name } = await tried.does('archive.write', {})
  const path = join(tried.dataDir, 'out', name)
  if (!existsSync(path)) throw new Error(`${path} is not there`)
  return path
}
