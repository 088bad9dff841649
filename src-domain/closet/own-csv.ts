/**
 * Our own CSV, written and read (DESIGN.md, CSV of ours): UTF-8, one header as written, grams only.
 * Safe to open in a spreadsheet: a text that a spreadsheet would take for a formula gets an apostrophe before it, and so does one that
 * already begins with apostrophes before such a sign; our reader takes exactly one off again. Numbers stand unquoted and unguarded.
 * Quoting after RFC 4180, section 2: a field with a comma, a quote or a line end stands in quotes, a quote inside is doubled, lines end in CRLF.
 */
import type { Outcome } from '../figures/fault.ts'
import { fault, ok } from '../figures/fault.ts'
import type { KitArea, Lane, MassOrigin, Status } from './vocabulary.ts'
import { isKitArea, lanes, massOrigins, statuses } from './vocabulary.ts'

export interface OwnRow {
  readonly kitArea: KitArea
  readonly name: string
  readonly maker: string
  readonly pieces: number
  /** Of one piece; null: not known. */
  readonly pieceMass_mg: number | null
  readonly massFrom: MassOrigin
  /** 2u of one piece; null: not known. */
  readonly band_mg: number | null
  readonly duties: readonly string[]
  readonly set: string
  readonly note: string
}
export interface OwnLine extends OwnRow {
  readonly lane: Lane
}
export interface OwnItem extends OwnRow {
  readonly status: Status
  readonly lastWeighedOn: string | null
}

const common = ['kit_area', 'name', 'maker', 'pieces', 'piece_mass_g', 'mass_from', 'band_g', 'duties', 'set', 'note']
export const loadoutHeader: readonly string[] = ['lane', ...common]
export const closetHeader: readonly string[] = ['status', 'last_weighed_on', ...common]

export const writeLoadoutCsv = (lines: readonly OwnLine[]): string =>
  csvText(loadoutHeader, lines.map((line) => [line.lane, ...commonFields(line)])) // prettier-ignore

export const writeClosetCsv = (items: readonly OwnItem[]): string =>
  csvText(closetHeader, items.map((item) => [item.status, item.lastWeighedOn ?? '', ...commonFields(item)])) // prettier-ignore

/** Which of our two files these cells are, by their header alone. */
export function ownKind(cells: readonly (readonly string[])[]): 'loadout' | 'closet' | null {
  const header = cells[0]?.join(',')
  if (header === loadoutHeader.join(',')) return 'loadout'
  return header === closetHeader.join(',') ? 'closet' : null
}

export function readLoadoutCsv(cells: readonly (readonly string[])[]): Outcome<readonly OwnLine[]> {
  return readOwn(cells, 'loadout', ([lane = '', ...rest]) => {
    const row = readCommon(rest)
    return row && isLane(lane) ? { lane, ...row } : undefined
  })
}

export function readClosetCsv(cells: readonly (readonly string[])[]): Outcome<readonly OwnItem[]> {
  return readOwn(cells, 'closet', ([status = '', weighedOn = '', ...rest]) => {
    const row = readCommon(rest)
    const lastWeighedOn = weighedOn === '' ? null : weighedOn
    return row && isStatus(status) && isDay(lastWeighedOn) ? { status, lastWeighedOn, ...row } : undefined
  })
}

const dangerous = /^'*[\s\u0000]*[=+\-@\t\r\n＝＋－＠]/u

/** The text as a spreadsheet takes it for text. */
export const guarded = (text: string): string => (dangerous.test(text) ? `'${text}` : text)

/** Takes the guard off again: `unguarded(guarded(text))` is `text`, whatever it is. */
export const unguarded = (text: string): string => (text.startsWith("'") && dangerous.test(text) ? text.slice(1) : text)

/** Grams with as many of three decimals as the milligrams need: 10500 → "10.5". Exact, by digits. */
export function gramsText(mg: number): string {
  const digits = String(Math.abs(mg)).padStart(4, '0')
  const part = digits.slice(-3).replace(/0+$/u, '')
  return (mg < 0 ? '-' : '') + digits.slice(0, -3) + (part === '' ? '' : `.${part}`)
}

type Field = string | { readonly number: string }

function commonFields(row: OwnRow): readonly Field[] {
  return [
    row.kitArea,
    row.name,
    row.maker,
    { number: String(row.pieces) },
    { number: row.pieceMass_mg === null ? '' : gramsText(row.pieceMass_mg) },
    row.massFrom,
    { number: row.band_mg === null ? '' : gramsText(row.band_mg) },
    row.duties.join(' '),
    row.set,
    row.note,
  ]
}

/** A whole CSV of texts (guarded, quoted where needed) and numbers (as they are). */
function csvText(header: readonly string[], rows: readonly (readonly Field[])[]): string {
  return [header, ...rows].map((row) => `${row.map(fieldText).join(',')}\r\n`).join('')
}

function fieldText(field: Field): string {
  if (typeof field !== 'string') return field.number
  const text = guarded(field)
  return /[",\r\n;\t]|^\s|\s$|^\uFEFF/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

function readOwn<T>(
  cells: readonly (readonly string[])[],
  kind: 'loadout' | 'closet',
  read: (fields: readonly string[]) => T | undefined,
): Outcome<readonly T[]> {
  if (ownKind(cells) !== kind) return fault('sheet.unreadable', { why: 'header', line: 1 })
  const found: T[] = []
  for (const [at, cell] of cells.entries()) {
    if (at === 0 || (cell.length <= 1 && (cell[0] ?? '') === '')) continue
    const one = cell.length === cells[0]!.length ? read(cell.map(unguarded)) : undefined
    if (!one) return fault('sheet.unreadable', { why: 'row', line: at + 1 })
    found.push(one)
  }
  return ok(found)
}

function readCommon(fields: readonly string[]): OwnRow | undefined {
  const [area = '', name = '', maker = '', count = '', mass = '', from = '', band = '', duties = '', set = '', note = ''] = fields
  const pieceMass = readGrams(mass)
  const bandMg = readGrams(band)
  if (!isKitArea(area) || !isOrigin(from) || !/^[1-9]\d{0,5}$/u.test(count) || pieceMass === undefined || bandMg === undefined)
    return undefined
  const listed = duties === '' ? [] : duties.split(' ')
  return {
    kitArea: area,
    name,
    maker,
    pieces: Number(count),
    pieceMass_mg: pieceMass,
    massFrom: from,
    band_mg: bandMg,
    duties: listed,
    set,
    note,
  }
}

/** "10.5" → 10500; "" → null; anything else → undefined. By digits, so that nothing is rounded. */
function readGrams(text: string): number | null | undefined {
  if (text === '') return null
  const found = /^(\d{1,9})(?:\.(\d{1,3}))?$/u.exec(text)
  return found ? Number(found[1]) * 1000 + Number((found[2] ?? '').padEnd(3, '0')) : undefined
}

const isLane = (text: string): text is Lane => (lanes as readonly string[]).includes(text)
const isStatus = (text: string): text is Status => (statuses as readonly string[]).includes(text)
const isOrigin = (text: string): text is MassOrigin => (massOrigins as readonly string[]).includes(text)
const isDay = (text: string | null): boolean => text === null || /^\d{4}-\d{2}-\d{2}$/u.test(text)
