/**
 * From a file or pasted text to cells: bytes → text (which encoding) → cells (which separator), in batches with progress and cancel.
 * Plain TypeScript without the DOM beyond what Node also has, so that it is tested as it runs. A file too large is refused before it is read.
 */
import Papa from 'papaparse'
import type { Outcome } from '../../../src-domain/figures/fault.ts'
import { fault, ok } from '../../../src-domain/figures/fault.ts'

export type Separator = ',' | ';' | '\t' | '|'
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252'

export interface CellWarning {
  readonly code: 'unclosed-quote' | 'stray-quote'
  /** Row from 1; 0 where the reader could not say. */
  readonly row: number
}

export interface SheetCells {
  readonly cells: readonly (readonly string[])[]
  readonly separator: Separator
  readonly encoding: Encoding
  readonly warnings: readonly CellWarning[]
}

export interface ReadingOfCells {
  /** Rows read so far, and the share of the text behind them, 0 to 1. */
  readonly onProgress?: (rows: number, share: number) => void
  readonly signal?: AbortSignal
  readonly separator?: Separator
  /** Largest file taken, in bytes. */
  readonly mostBytes?: number
  /** Characters handed to the reader at a time. */
  readonly pieceSize?: number
}

/** 32 MiB: more than 100,000 rows of an ordinary sheet. */
export const mostBytes = 32 * 1024 * 1024
export const mostRows = 100_000
export const mostColumns = 256

/** Reads a file, bytes or pasted text; null when the signal fires. Nothing of the file is kept after a fault. */
export async function readCells(from: string | Uint8Array | Blob, options: ReadingOfCells = {}): Promise<Outcome<SheetCells> | null> {
  const limit = options.mostBytes ?? mostBytes
  const size = typeof from === 'string' ? from.length : from instanceof Blob ? from.size : from.byteLength
  if (size > limit) return fault('file.too-large', { bytes: size, limit: `${Math.floor(limit / 1024 / 1024)} MiB` })
  const decoded = typeof from === 'string' ? ok({ text: withoutMark(from), encoding: 'utf-8' as const }) : textOf(await bytesOf(from))
  if (!decoded.ok) return decoded
  const { text, encoding } = decoded.value
  if (text.trim() === '') return fault('sheet.empty')
  const parsed = await parse(text, options.separator ?? separatorOf(text), options)
  return parsed?.ok ? ok({ ...parsed.value, encoding }) : parsed
}

const bytesOf = async (from: Uint8Array | Blob): Promise<Uint8Array> =>
  from instanceof Blob ? new Uint8Array(await from.arrayBuffer()) : from

const withoutMark = (text: string): string => (text.startsWith('\uFEFF') ? text.slice(1) : text)

/** Byte order marks first, then UTF-16 by its zero bytes, then UTF-8 if it holds, else Windows-1252 (which has every byte). */
export function textOf(bytes: Uint8Array): Outcome<{ readonly text: string; readonly encoding: Encoding }> {
  const kind = foreign(bytes)
  if (kind) return fault('sheet.unreadable', { why: kind })
  const encoding = encodingOf(bytes)
  if (!encoding) return fault('sheet.unreadable', { why: 'binary' })
  return ok({ text: withoutMark(new TextDecoder(encoding).decode(bytes)), encoding })
}

function encodingOf(bytes: Uint8Array): Encoding | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le'
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be'
  const head = bytes.subarray(0, 4096)
  const zeros = [0, 0]
  for (const [at, byte] of head.entries()) if (byte === 0) zeros[at % 2] = zeros[at % 2]! + 1
  const half = head.length / 2
  if (zeros[1]! > half * 0.4 && zeros[0]! < half * 0.1) return 'utf-16le'
  if (zeros[0]! > half * 0.4 && zeros[1]! < half * 0.1) return 'utf-16be'
  if (zeros[0]! + zeros[1]! > half * 0.1) return undefined
  return isUtf8(bytes) ? 'utf-8' : 'windows-1252'
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return true
  } catch {
    return false
  }
}

/** Files that are no text, by their first bytes: a workbook is named, so that the window can say "save it as CSV". */
function foreign(bytes: Uint8Array): string | undefined {
  const starts = (...head: readonly number[]): boolean => head.every((byte, at) => bytes[at] === byte)
  if (starts(0x50, 0x4b, 0x03, 0x04) || starts(0xd0, 0xcf, 0x11, 0xe0)) return 'workbook'
  if (starts(0x25, 0x50, 0x44, 0x46)) return 'pdf'
  if (starts(0x89, 0x50, 0x4e, 0x47) || starts(0xff, 0xd8, 0xff)) return 'picture'
  return undefined
}

/**
 * The separator under which most of the first rows have equally many cells, and of those the one that gives more cells; where two are
 * even, the semicolon before the comma, which may be a decimal mark. (Papaparse's own finding takes the comma in `Tarp;268,5`.)
 */
export function separatorOf(text: string): Separator {
  const head = text.slice(0, 64 * 1024)
  const even = separators.map((separator) => ({ separator, ...evenness(head, separator) }))
  return even.reduce((best, one) => (one.share > best.share || (one.share === best.share && one.cells > best.cells) ? one : best)).separator
}
const separators = ['\t', ';', ',', '|'] as const

/** The commonest number of cells above one, and the share of the first rows that have it. */
function evenness(head: string, delimiter: Separator): { readonly cells: number; readonly share: number } {
  const rows = Papa.parse<string[]>(head, { delimiter, preview: 60, skipEmptyLines: true }).data
  const times = new Map<number, number>()
  for (const { length } of rows) if (length > 1) times.set(length, (times.get(length) ?? 0) + 1)
  const [cells, count] = [...times].reduce((best, one) => (one[1] > best[1] ? one : best), [0, 0])
  return { cells, share: rows.length === 0 ? 0 : count / rows.length }
}

/** Text is handed to the reader a piece at a time, about 5,000 rows; between two the window may draw and the person may cancel. */
const pieceSize = 256 * 1024

/** What stays of papaparse's reader of one piece of text; its own streaming cannot be paused without reading a piece twice. */
interface PieceReader {
  parse(text: string, baseIndex: number, ignoreLastRow: boolean): Papa.ParseResult<string[]>
}

async function parse(typed: string, separator: Separator, options: ReadingOfCells): Promise<Outcome<Omit<SheetCells, 'encoding'>> | null> {
  const { text, newline } = withOneLineEnd(typed)
  const cells: string[][] = []
  const warnings: CellWarning[] = []
  let rest = ''
  const step = options.pieceSize ?? pieceSize
  for (let at = 0; at < text.length; at += step) {
    if (options.signal?.aborted) return null
    const piece = rest + text.slice(at, at + step)
    const isLast = at + step >= text.length
    const { data, errors, meta } = reader(separator, newline).parse(piece, 0, !isLast)
    const refused = tooLarge(cells.length, data)
    if (refused) return refused
    warnings.push(...errors.flatMap((error) => warningOf(error, cells.length)))
    for (const row of isLast ? withoutLastEmpty(data) : data) cells.push(row)
    rest = isLast ? '' : piece.slice(meta.cursor)
    options.onProgress?.(cells.length, Math.min(1, (at + step) / text.length))
    if (!isLast) await aMoment()
  }
  return ok({ cells, separator, warnings })
}

const reader = (delimiter: Separator, newline: LineEnd): PieceReader =>
  new (Papa as unknown as { Parser: new (config: object) => PieceReader }).Parser({ delimiter, newline, quoteChar: '"' })

const aMoment = (): Promise<void> => new Promise((go) => setTimeout(go, 0))

type LineEnd = '\r\n' | '\n' | '\r'

/** The reader takes one kind of line end. Where several stand outside quotes they are made one; inside quotes nothing is touched. */
function withOneLineEnd(text: string): { readonly text: string; readonly newline: LineEnd } {
  const quotedOrEnd = /"[^"]*(?:"|$)|\r\n|\n|\r/gu
  const ends = new Set<string>()
  for (const [found] of text.matchAll(quotedOrEnd)) if (!found.startsWith('"')) ends.add(found)
  const [only = '\n'] = ends
  if (ends.size <= 1) return { text, newline: only as LineEnd }
  return { text: text.replace(quotedOrEnd, (found) => (found.startsWith('"') ? found : '\n')), newline: '\n' }
}

function tooLarge(sofar: number, data: readonly (readonly string[])[]): ReturnType<typeof fault> | undefined {
  if (sofar + data.length > mostRows) return fault('file.too-large', { limit: `${mostRows} rows` })
  return data.some((row) => row.length > mostColumns) ? fault('file.too-large', { limit: `${mostColumns} columns` }) : undefined
}

function warningOf(error: Papa.ParseError, before: number): readonly CellWarning[] {
  if (error.code !== 'MissingQuotes' && error.code !== 'InvalidQuotes') return []
  return [{ code: error.code === 'MissingQuotes' ? 'unclosed-quote' : 'stray-quote', row: before + (error.row ?? -1) + 1 }]
}

/** The line end of the last row is no row of its own. */
function withoutLastEmpty(cells: string[][]): string[][] {
  const last = cells.at(-1)
  return last?.length === 1 && last[0] === '' ? cells.slice(0, -1) : cells
}
