/** The sums that a sheet states itself: what each says, in which unit, and over which rows. */
import type { MassUnit } from '../../figures/units.ts'
import type { KitArea, Lane } from '../vocabulary.ts'
import { isKitArea } from '../vocabulary.ts'
import type { MassReader } from './mass-cell.ts'
import { piecesOf } from './pieces.ts'
import type { BlockPlan } from './plan-block.ts'
import { areaOfWord, plainWord } from './plain-words.ts'
import type { TotalComparison } from './preview.ts'
import type { RawRow } from './raw-rows.ts'
import { laneOfHeading } from './raw-rows.ts'

/** An item row as a total may count it. */
export interface CountedRow {
  readonly raw: RawRow
  readonly area: KitArea
  readonly lane: Lane | null
}

export interface SheetTotal {
  readonly raw: RawRow
  readonly label: string
  readonly scope: TotalComparison['scope']
  readonly of: string
  readonly unit: MassUnit
  readonly said_mg: number
  readonly step_mg: number
  readonly rows: readonly CountedRow[]
}

/** A sheet with more sums than this is compared by its first ones. */
const mostTotals = 100

export function sheetTotals(
  raws: readonly RawRow[],
  plans: readonly BlockPlan[],
  counted: readonly CountedRow[],
  massIs: 'piece' | 'line',
  reader: MassReader,
): readonly SheetTotal[] {
  const stated = raws.filter((raw) => raw.kind === 'total' || raw.kind === 'area').slice(0, mostTotals * 4)
  const totals: SheetTotal[] = []
  let before = -1
  for (const raw of stated) {
    const byLane = laneTotals(raw, plans[raw.block]!, counted, massIs, reader)
    if (byLane.length > 0) totals.push(...byLane)
    const figures = byLane.length > 0 ? [] : figuresOf(raw, plans[raw.block]!, reader)
    if (figures.length === 0 || totals.length >= mostTotals) continue
    if (totals.at(-1)?.raw.block !== raw.block) before = -1
    const best = bestReading(figures, scopesOf(raw, counted, before), massIs)
    if (best) totals.push({ raw, label: raw.label, ...best })
    if (raw.kind === 'total') before = raw.row
  }
  return totals
}

/** "Totals 1505, 723, 545" below columns called base, worn and consumables: one sum for each. */
function laneTotals(
  raw: RawRow,
  plan: BlockPlan,
  counted: readonly CountedRow[],
  massIs: 'piece' | 'line',
  reader: MassReader,
): readonly SheetTotal[] {
  const columns = plan.columnsOf('mass').filter((one) => laneOfHeading(one.heading) !== null)
  if (columns.length < 2) return []
  return columns.flatMap(({ column, unit, heading }): SheetTotal[] => {
    const lane = laneOfHeading(heading)!
    const rows = counted.filter((one) => one.raw.block === raw.block && one.lane === lane)
    const best = bestReading(readFigure(raw.cells[column] ?? '', unit ?? 'g', reader), [{ scope: 'lane', of: lane, rows }], massIs)
    return best && rows.length > 0 ? [{ raw, label: `${raw.label} ${heading}`, ...best }] : []
  })
}

interface Figure {
  readonly unit: MassUnit
  readonly said_mg: number
  readonly step_mg: number
}

/** What the total's row says: a unit in the cell is believed; a bare figure may be in any common unit, for totals often are in larger ones. */
function figuresOf(raw: RawRow, plan: BlockPlan, reader: MassReader): readonly Figure[] {
  const at = (column: number): string => raw.cells[column] ?? ''
  const [pounds, ounces] = [plan.columnsOf('pounds')[0], plan.columnsOf('ounces')[0]]
  if (pounds && ounces) {
    const pair = reader.poundsAndOunces(at(pounds.column), at(ounces.column))
    if (pair.kind === 'mass') return [{ unit: 'oz', said_mg: pair.mg, step_mg: pair.step_mg }]
  }
  const columns = [...plan.columnsOf('line_mass'), ...plan.columnsOf('mass')]
  for (const { column, unit } of columns) {
    const read = readFigure(at(column), unit ?? 'g', reader)
    if (read.length > 0) return read
  }
  return raw.kind === 'total' ? elsewhere(raw, plan, columns[0]?.unit ?? 'g', reader) : []
}

function readFigure(text: string, unit: MassUnit, reader: MassReader): readonly Figure[] {
  const first = reader.one(text, unit)
  if (first.kind !== 'mass') return []
  if (first.unitInCell) return [{ unit: first.unit, said_mg: first.mg, step_mg: first.step_mg }]
  const others: readonly MassUnit[] = ['g', 'kg', 'oz', 'lb']
  return [unit, ...others.filter((one) => one !== unit)].flatMap((one): Figure[] => {
    const cell = reader.one(text, one)
    return cell.kind === 'mass' ? [{ unit: one, said_mg: cell.mg, step_mg: cell.step_mg }] : []
  })
}

/** "Total: 4.3 kg" in one cell, or a figure in another column. */
function elsewhere(raw: RawRow, plan: BlockPlan, unit: MassUnit, reader: MassReader): readonly Figure[] {
  const pieces = plan.columnsOf('pieces')[0]?.column
  const price = plan.columnsOf('price')[0]?.column
  for (let column = plan.left; column < plan.right; column += 1) {
    const text = raw.cells[column] ?? ''
    if (column === pieces || column === price || !/\d/u.test(text)) continue
    const read = readFigure(/[^:=]*[:=] ?(.+)$/u.exec(text)?.[1] ?? text, unit, reader)
    if (read.length > 0) return read
  }
  return []
}

interface Scope {
  readonly scope: TotalComparison['scope']
  readonly of: string
  readonly rows: readonly CountedRow[]
}

/** The rows it may be meant to sum, the likelier first. */
function scopesOf(raw: RawRow, counted: readonly CountedRow[], before: number): readonly Scope[] {
  const inBlock = counted.filter((one) => one.raw.block === raw.block)
  const section: Scope = {
    scope: 'section',
    of: raw.areaWord,
    rows: inBlock.filter((one) => one.raw.section === raw.section && (raw.kind === 'area' || one.raw.row < raw.row)),
  }
  if (raw.kind === 'area') return [section]
  const group: Scope = { scope: 'section', of: '', rows: inBlock.filter((one) => one.raw.row > before && one.raw.row < raw.row) }
  const block: Scope = { scope: 'block', of: '', rows: inBlock }
  const all: Scope = { scope: 'all', of: '', rows: counted }
  const taken: Scope = { scope: 'all', of: '', rows: counted.filter((one) => one.lane !== null) }
  const named = namedScopes(raw.label, counted)
  const plain = /\bsub/iu.test(raw.label) ? [section, group, block, taken, all] : [taken, all, block, section, group]
  return [...named, ...(named.length > 0 && named[0]!.scope !== 'area' ? [] : plain)].filter((scope) => scope.rows.length > 0)
}

function namedScopes(label: string, counted: readonly CountedRow[]): readonly Scope[] {
  const plain = plainWord(label)
  const ofLane = (lane: Lane): Scope => ({ scope: 'lane', of: lane, rows: counted.filter((one) => one.lane === lane) })
  if (/\b(?:skin out|everything|full|all)\b/u.test(plain))
    return [
      { scope: 'all', of: '', rows: counted.filter((one) => one.lane !== null) },
      { scope: 'all', of: '', rows: counted },
    ]
  if (/\bbase\b/u.test(plain)) return [ofLane('in_pack')]
  if (/\b(?:worn|on me)\b/u.test(plain)) return [ofLane('on_me')]
  if (/\b(?:consumables?|used up)\b/u.test(plain)) return [ofLane('used_up')]
  if (/\b(?:pack|packed|carried)\b/u.test(plain))
    return [{ scope: 'pack', of: '', rows: counted.filter((one) => one.lane === 'in_pack' || one.lane === 'used_up') }, ofLane('in_pack')]
  const rest = plain.replace(/\b(?:sub ?totals?|totals?|sum|weight|mass|for|of|g|oz|kg|lbs?|grams|ounces)\b/gu, ' ').trim()
  const area = rest === '' ? undefined : areaOfWord(rest)
  if (area === undefined || !isKitArea(area)) return []
  const byWord = counted.filter((one) => plainWord(one.raw.areaWord) === plainWord(rest))
  return [{ scope: 'area', of: area, rows: byWord.length > 0 ? byWord : counted.filter((one) => one.area === area) }]
}

/** The reading and scope nearest to what the sheet's own cells sum to. */
function bestReading(figures: readonly Figure[], scopes: readonly Scope[], massIs: 'piece' | 'line'): (Figure & Scope) | undefined {
  let best: { readonly found: Figure & Scope; readonly off: number } | undefined
  for (const scope of scopes) {
    const sum = scope.rows.reduce((total, one) => total + sheetMass(one.raw, massIs), 0)
    for (const figure of figures) {
      const off = sum > 0 ? Math.abs(Math.log(sum / figure.said_mg)) : 99
      if (!best || off < best.off - 1e-6) best = { found: { ...figure, ...scope }, off }
    }
  }
  return best?.found
}

/** What the sheet itself counts for a row: its cell, as often as its pieces say; of a doubtful cell the first reading. */
export function sheetMass(raw: RawRow, massIs: 'piece' | 'line'): number {
  if (raw.lineMass.kind === 'mass') return raw.lineMass.mg
  return cellMass(raw) * piecesOf(raw, massIs).times
}

export function cellMass(raw: RawRow): number {
  if (raw.mass.kind === 'mass') return raw.mass.mg
  return raw.mass.kind === 'problem' ? (raw.mass.readings[0]?.mg ?? 0) : 0
}
