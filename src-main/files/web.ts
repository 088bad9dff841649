import { createReadStream, existsSync, statSync } from 'node:fs'
import { extname, join } from 'node:path'
import { fault, type Fault, type FaultCode, type Outcome } from '../../src-domain/figures/fault.ts'
import { storeFault } from '../store/faults.ts'
import { isOutName, outFolder, takeIn } from './boxes.ts'
import { toWeb } from './streams.ts'
import { keepFile, readKept, type KeptFile } from './file-store.ts'
import { isHeightsFrom, readTrackFile } from './track.ts'

export interface WebParts {
  readonly dataDir: string
  /** Writes the row that says a file is kept; before it is acknowledged. */
  readonly keepRow: (file: KeptFile) => Promise<Outcome<null>>
}

/**
 * What is too large for a call, the same for both hosts:
 *   POST /files  a picture → { ok, value: { sha256, mime, bytes } }        GET /files/<sha256>  the picture, checked
 *   POST /in     an archive → { ok, value: { token } }                     GET /out/<name>      what `archive.write` made
 *   POST /track/<where heights come from>  a GPX file → { ok, value: TrackFound } or why it cannot be read; nothing is kept
 * The host has checked who asks.
 */
export function makeWeb(parts: WebParts): (request: Request) => Promise<Response> {
  return async (request) => {
    try {
      return await route(parts, request)
    } catch (error) {
      const expected = storeFault(error)
      if (expected === null) throw error
      return refused(expected)
    }
  }
}

async function route(parts: WebParts, request: Request): Promise<Response> {
  const [box = '', name, ...more] = new URL(request.url).pathname.slice(1).split('/')
  if (more.length > 0) return refused(fault('row.gone').fault)
  if (request.method === 'POST' && name === undefined && box === 'files') return said(await keepPicture(parts, bodyOf(request)))
  if (request.method === 'POST' && name === undefined && box === 'in') return said(await takeIn(parts.dataDir, bodyOf(request)))
  if (request.method === 'POST' && box === 'track' && isHeightsFrom(name)) return Response.json(await readTrackFile(bodyOf(request), name))
  if (request.method === 'GET' && name !== undefined && box === 'files') return await picture(parts.dataDir, name)
  if (request.method === 'GET' && name !== undefined && box === 'out') return outgoing(parts.dataDir, name)
  return refused(fault('row.gone').fault)
}

async function keepPicture({ dataDir, keepRow }: WebParts, from: AsyncIterable<Uint8Array>): Promise<Outcome<KeptFile>> {
  const kept = await keepFile(dataDir, from)
  if (!kept.ok) return kept
  const row = await keepRow(kept.value)
  return row.ok ? kept : row
}

async function* bodyOf(request: Request): AsyncIterable<Uint8Array> {
  if (request.body !== null) yield* request.body
}

/** A picture never changes under its name, so it may be kept by the browser for good. */
async function picture(dataDir: string, sha256: string): Promise<Response> {
  const kept = await readKept(dataDir, sha256)
  if (!kept.ok) return refused(kept.fault)
  const headers = { 'content-type': kept.value.mime, 'cache-control': 'private, max-age=31536000, immutable' }
  return new Response(kept.value.bytes, { headers })
}

const outTypes: Readonly<Record<string, string>> = { '.tarework': 'application/zip', '.pdf': 'application/pdf' }

function outgoing(dataDir: string, encoded: string): Response {
  const name = decoded(encoded)
  const path = name === null ? '' : join(outFolder(dataDir), name)
  if (name === null || !existsSync(path)) return refused(fault('row.gone', { table: 'out' }).fault)
  const headers = {
    'content-type': outTypes[extname(name)] ?? 'application/octet-stream',
    'content-length': String(statSync(path).size),
    'content-disposition': `attachment; filename="${name}"`,
    'cache-control': 'no-store',
  }
  return new Response(toWeb(createReadStream(path)), { headers })
}

function decoded(name: string): string | null {
  try {
    const plain = decodeURIComponent(name)
    return isOutName(plain) ? plain : null
  } catch {
    return null
  }
}

const said = (outcome: Outcome<unknown>): Response => (outcome.ok ? Response.json(outcome) : refused(outcome.fault))

const statuses: Readonly<Partial<Record<FaultCode, number>>> = {
  'row.gone': 404,
  'file.too-large': 413,
  'file.not-image': 415,
  'archive.unreadable': 415,
  'store.full': 507,
}

const refused = (what: Fault): Response => Response.json({ ok: false, fault: what }, { status: statuses[what.code] ?? 500 })
