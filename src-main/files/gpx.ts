import { TextDecoder } from 'node:util'
import { SaxesParser, type SaxesTagPlain } from 'saxes'
import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { TrackPoint } from '../../src-domain/trips/track.ts'

/**
 * Reads GPX 1.1 (and 1.0, and files that name no namespace): tracks with their segments, routes, waypoints.
 * As a stream: at most one piece of the file is in memory. No DOCTYPE, so no entities of the file's own; size, depth and length of a text are capped.
 * What is not a place on earth, a decimal comma, broken XML: refused, with the line. An unreadable time or height is optional in GPX and counts as
 * missing, told in `ignored`. Foreign elements and everything under `extensions` are passed over.
 * Source: the GPX 1.1 schema (read in copies); 1.0 differs for us only in its namespace.
 */
export interface Gpx {
  readonly tracks: readonly GpxLine[]
  readonly routes: readonly GpxLine[]
  readonly waypoints: readonly Waypoint[]
  readonly ignored: { readonly times: number; readonly heights: number }
}

export interface GpxLine {
  readonly name: string
  /** One for a route; a track's own. A new segment is a gap in reception. */
  readonly segments: readonly (readonly TrackPoint[])[]
}

export interface Waypoint {
  readonly latDeg: number
  readonly lonDeg: number
  readonly heightM: number | null
  readonly name: string
}

/** Why a file was refused; stands in the fault's facts as `why`, with `line`. */
export type GpxRefusal =
  'doctype' | 'not-xml' | 'not-gpx' | 'encoding' | 'coordinate' | 'decimal-comma' | 'too-deep' | 'text-too-long' | 'no-points'

export const gpxLimits = { bytes: 50 * 1024 * 1024, depth: 64, text: 65_536 } as const

/** Reads a stream of bytes, as a dropped file or an upload gives them. */
export async function readGpx(
  from: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
  maxBytes: number = gpxLimits.bytes,
): Promise<Outcome<Gpx>> {
  const reader = new GpxReader()
  let decoder: TextDecoder | null = null
  let bytes = 0
  try {
    for await (const part of from) {
      bytes += part.length
      if (bytes > maxBytes) return fault('track.too-large', { limit: maxBytes })
      decoder ??= decoderFor(part)
      reader.write(decoder.decode(part, { stream: true }))
    }
    reader.write(decoder?.decode() ?? '')
    return ok(reader.end())
  } catch (error) {
    return refused(error, reader.line)
  }
}

/** Reads a whole file that is already text. */
export function readGpxText(text: string): Outcome<Gpx> {
  const reader = new GpxReader()
  try {
    reader.write(text)
    return ok(reader.end())
  } catch (error) {
    return refused(error, reader.line)
  }
}

class Refused extends Error {
  readonly why: GpxRefusal
  constructor(why: GpxRefusal) {
    super(why)
    this.why = why
  }
}

function refused(error: unknown, line: number): Outcome<never> {
  if (error instanceof Refused) return fault('track.unreadable', { why: error.why, line })
  // A fatal TextDecoder throws a TypeError with this code (WHATWG Encoding, as Node gives it).
  if (error instanceof TypeError && 'code' in error && error.code === 'ERR_ENCODING_INVALID_ENCODED_DATA')
    return fault('track.unreadable', { why: 'encoding', line })
  throw error
}

/** UTF-16 by its mark, else what the declaration names, else UTF-8. */
function decoderFor(start: Uint8Array): TextDecoder {
  if (start[0] === 0xff && start[1] === 0xfe) return new TextDecoder('utf-16le', { fatal: true })
  if (start[0] === 0xfe && start[1] === 0xff) return new TextDecoder('utf-16be', { fatal: true })
  const head = String.fromCharCode(...start.subarray(0, 200))
  const label = /^\S{0,3}\s*<\?xml[^>]*\bencoding\s*=\s*["']([A-Za-z0-9._-]+)["']/.exec(head)?.[1] ?? 'utf-8'
  try {
    return new TextDecoder(label, { fatal: true })
  } catch {
    throw new Refused('encoding')
  }
}

type PointKind = 'wpt' | 'rtept' | 'trkpt'

interface OpenLine {
  name: string
  readonly segments: TrackPoint[][]
}

const namespaces: ReadonlySet<string> = new Set(['http://www.topografix.com/GPX/1/1', 'http://www.topografix.com/GPX/1/0'])
const pointKinds: ReadonlySet<string> = new Set(['wpt', 'rtept', 'trkpt'])
const readTexts: ReadonlySet<string> = new Set(['ele', 'time', 'name'])

class GpxReader {
  readonly #parser = new SaxesParser({ xmlns: false })
  readonly #path: string[] = []
  readonly #tracks: OpenLine[] = []
  readonly #routes: OpenLine[] = []
  readonly #waypoints: Waypoint[] = []
  readonly #ignored = { times: 0, heights: 0 }
  /** Depth at which a foreign element or `extensions` began; everything below is passed over. */
  #passedFrom = Infinity
  #prefix = ''
  // The open point, field by field: one object a point less in the tracks that have 100,000 of them.
  #kind: PointKind | null = null
  #latDeg = 0
  #lonDeg = 0
  #heightM: number | null = null
  #atMs: number | null = null
  #name = ''
  #text: string | null = null

  constructor() {
    const parser = this.#parser
    parser.on('doctype', () => refuse('doctype'))
    parser.on('error', () => refuse('not-xml'))
    parser.on('opentag', (tag) => this.#open(tag))
    parser.on('closetag', (tag) => this.#close(tag))
    parser.on('text', (text) => this.#add(text))
    parser.on('cdata', (text) => this.#add(text))
  }

  get line(): number {
    return this.#parser.line
  }

  write(text: string): void {
    if (text !== '') this.#parser.write(text)
  }

  end(): Gpx {
    this.#parser.close()
    const found = { tracks: this.#tracks, routes: this.#routes, waypoints: this.#waypoints, ignored: this.#ignored }
    const holdsPoints = [...found.tracks, ...found.routes].some((line) => line.segments.some((segment) => segment.length > 0))
    if (!holdsPoints && found.waypoints.length === 0) refuse('no-points')
    return found
  }

  #open(tag: SaxesTagPlain): void {
    const path = this.#path
    if (path.length >= gpxLimits.depth) refuse('too-deep')
    if (path.length === 0) this.#root(tag)
    const local = this.#local(tag.name)
    const parent = path.at(-1) ?? ''
    path.push(local ?? tag.name)
    if (path.length > this.#passedFrom) return
    if (local === null || local === 'extensions') this.#passedFrom = path.length
    else if (pointKinds.has(local)) this.#openPoint(local as PointKind, tag.attributes)
    else if (local === 'trk' && parent === 'gpx') this.#tracks.push({ name: '', segments: [] })
    else if (local === 'rte' && parent === 'gpx') this.#routes.push({ name: '', segments: [[]] })
    else if (local === 'trkseg' && parent === 'trk') this.#tracks.at(-1)!.segments.push([])
    if (readTexts.has(local ?? '')) this.#text = ''
  }

  #root(tag: SaxesTagPlain): void {
    const at = tag.name.indexOf(':')
    this.#prefix = tag.name.slice(0, at + 1)
    const space = tag.attributes[at < 0 ? 'xmlns' : `xmlns:${tag.name.slice(0, at)}`]
    if (tag.name.slice(at + 1) !== 'gpx' || (space !== undefined && space !== '' && !namespaces.has(space))) refuse('not-gpx')
  }

  /** The element's own name if it is of the root's vocabulary. */
  #local(name: string): string | null {
    if (this.#prefix === '') return name.includes(':') ? null : name
    return name.startsWith(this.#prefix) ? name.slice(this.#prefix.length) : null
  }

  #openPoint(kind: PointKind, attributes: Readonly<Record<string, string>>): void {
    this.#kind = kind
    this.#latDeg = coordinate(attributes['lat'], 90)
    const lonDeg = coordinate(attributes['lon'], 180)
    this.#lonDeg = lonDeg === 180 ? -180 : lonDeg
    this.#heightM = null
    this.#atMs = null
    this.#name = ''
  }

  #add(text: string): void {
    if (text.length > gpxLimits.text) refuse('text-too-long')
    if (this.#text === null) return
    this.#text += text
    if (this.#text.length > gpxLimits.text) refuse('text-too-long')
  }

  #close(tag: SaxesTagPlain): void {
    const path = this.#path
    const depth = path.length
    path.pop()
    if (depth >= this.#passedFrom) {
      if (depth === this.#passedFrom) this.#passedFrom = Infinity
      this.#text = null
      return
    }
    const local = this.#local(tag.name)!
    if (this.#text !== null && readTexts.has(local)) this.#keepText(local, path.at(-1) ?? '', this.#text.trim())
    if (this.#kind !== null && this.#kind === local) this.#keepPoint()
  }

  #keepText(local: string, parent: string, text: string): void {
    this.#text = null
    if (this.#kind !== null && this.#kind === parent) {
      if (local === 'name') this.#name = text
      else if (local === 'ele') this.#heightM = this.#height(text)
      else this.#atMs = this.#time(text)
    } else if (local === 'name' && parent === 'trk') this.#tracks.at(-1)!.name = text
    else if (local === 'name' && parent === 'rte') this.#routes.at(-1)!.name = text
  }

  #keepPoint(): void {
    const latDeg = this.#latDeg
    const lonDeg = this.#lonDeg
    const heightM = this.#heightM
    if (this.#kind === 'wpt') this.#waypoints.push({ latDeg, lonDeg, heightM, name: this.#name })
    else this.#lines().at(-1)?.segments.at(-1)?.push({ latDeg, lonDeg, heightM, atMs: this.#atMs })
    this.#kind = null
  }

  #lines(): readonly OpenLine[] {
    return this.#kind === 'trkpt' ? this.#tracks : this.#routes
  }

  #height(text: string): number | null {
    if (text === '') return null
    if (decimalComma.test(text)) refuse('decimal-comma')
    const heightM = decimal.test(text) ? Number(text) : Number.NaN
    if (Math.abs(heightM) <= HIGHEST_M) return heightM
    this.#ignored.heights++
    return null
  }

  #time(text: string): number | null {
    if (text === '') return null
    // A time without a zone is UTC, as the schema says of all of them.
    const atMs = !isoTime.test(text) ? Number.NaN : Date.parse(hasZone.test(text) ? text : `${text}Z`)
    if (Number.isFinite(atMs)) return atMs
    this.#ignored.times++
    return null
  }
}

const decimal = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?$/
const decimalComma = /^[+-]?\d+,\d+$/
const isoTime = /^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:?\d\d)?$/
const hasZone = /(?:Z|[+-]\d\d:?\d\d)$/
/** Beyond it a height is a fault of the device, not a place. */
const HIGHEST_M = 20_000

function coordinate(text: string | undefined, limit: number): number {
  const trimmed = text === undefined ? '' : text.trim()
  if (decimalComma.test(trimmed)) refuse('decimal-comma')
  const deg = decimal.test(trimmed) ? Number(trimmed) : Number.NaN
  if (!(Math.abs(deg) <= limit)) refuse('coordinate')
  return deg
}

function refuse(why: GpxRefusal): never {
  throw new Refused(why)
}
