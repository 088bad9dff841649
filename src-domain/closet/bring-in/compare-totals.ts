/**
 * The sheet's own sums against ours, line by line. Ours less the sheet's is the sum of what each named line explains and a rest:
 *   ours − said = Σ delta + rest
 * First what is certain (rows left out, rows that wait, things the closet knows by another mass), then the one reason of the usual ones
 * that makes the rest vanish: pieces counted once, cells with words that a spreadsheet's sum skips, one or two rows not counted or counted twice.
 */
import type { OurMasses } from './lines.ts'
import { piecesOf } from './pieces.ts'
import type { ExplainCode, Explanation, RowPreview, TotalComparison } from './preview.ts'
import { isTaken } from './preview.ts'
import type { CountedRow, SheetTotal } from './sheet-totals.ts'
import { cellMass, sheetMass } from './sheet-totals.ts'

export function compareTotal(
  total: SheetTotal,
  rows: ReadonlyMap<string, RowPreview>,
  ours: OurMasses,
  massIs: 'piece' | 'line',
): TotalComparison {
  const lines = total.rows.map((counted) => lineOf(counted, rows, ours, massIs))
  const ours_mg = lines.reduce((sum, line) => sum + line.ours_mg, 0)
  const within_mg = Math.ceil(total.step_mg / 2 + lines.length)
  const certain = lines.flatMap((line) => certainly(line, within_mg / Math.max(1, lines.length)))
  const open = ours_mg - total.said_mg - sumOf(certain)
  const found = Math.abs(open) <= within_mg ? [] : whatMakes(open, lines, within_mg)
  const explained = [...certain, ...found]
  const { raw, label, scope, of, unit, said_mg } = total
  return {
    row: raw.key,
    label,
    scope,
    of,
    unit,
    said_mg,
    ours_mg,
    within_mg,
    cellsMay_mg: Math.round(2 * Math.sqrt(lines.reduce((sum, line) => sum + (line.step_mg * line.times) ** 2 / 12, 0))),
    agrees: Math.abs(ours_mg - said_mg) <= within_mg,
    explained,
    rest_mg: ours_mg - said_mg - sumOf(explained),
  }
}

interface Line {
  readonly row: string
  readonly name: string
  readonly preview: RowPreview
  readonly ours_mg: number
  /** What the sheet counts, if it counts rightly. */
  readonly sheet_mg: number
  readonly cell_mg: number
  readonly step_mg: number
  readonly times: number
  /** Its cell holds words beside the figure. */
  readonly hasWords: boolean
}

function lineOf({ raw }: CountedRow, rows: ReadonlyMap<string, RowPreview>, ours: OurMasses, massIs: 'piece' | 'line'): Line {
  const preview = rows.get(raw.key)!
  return {
    row: raw.key,
    name: preview.name,
    preview,
    ours_mg: preview.lane === null ? 0 : ours.of(preview),
    sheet_mg: sheetMass(raw, massIs),
    cell_mg: cellMass(raw),
    step_mg: raw.mass.kind === 'mass' ? raw.mass.step_mg : 0,
    times: piecesOf(raw, massIs).times,
    hasWords: raw.mass.kind === 'problem' || (raw.mass.kind === 'mass' && raw.mass.unitInCell),
  }
}

const sumOf = (all: readonly Explanation[]): number => all.reduce((sum, one) => sum + one.delta_mg, 0)
const explain = ({ row, name }: Line, code: ExplainCode, delta_mg: number): Explanation => ({ row, name, code, delta_mg })

/** What we do otherwise than the sheet, known for certain. Rounding of a piece's mass to milligrams is none. */
function certainly(line: Line, slack: number): readonly Explanation[] {
  const delta = line.ours_mg - line.sheet_mg
  if (Math.abs(delta) <= Math.max(slack, line.preview.pieces)) return []
  return [explain(line, certainCode(line.preview), delta)]
}

function certainCode(preview: RowPreview): ExplainCode {
  if (preview.fate === 'problem') return 'waiting'
  if (!isTaken(preview.fate)) return 'left-out'
  if (preview.lane === null) return 'no-lane'
  return preview.fate === 'known' ? 'closet-mass' : 'own-line'
}

/** The first of the usual reasons whose lines sum to what is open; nothing when none does. */
function whatMakes(open: number, lines: readonly Line[], within: number): readonly Explanation[] {
  const once = lines.filter((line) => line.times > 1).map((line) => explain(line, 'counted-once', line.sheet_mg - line.cell_mg))
  const words = lines.filter((line) => line.hasWords && line.sheet_mg > 0).map((line) => explain(line, 'not-a-number', line.sheet_mg))
  const onceAndWords = [...once.filter((one) => !words.some((other) => other.row === one.row)), ...words]
  const makes = (all: readonly Explanation[]): boolean => all.length > 0 && Math.abs(sumOf(all) - open) <= within
  return [once, words, onceAndWords, otherReading(open, lines, within), oneOrTwo(open, lines, within)].find(makes) ?? []
}

/** A row that waits, its cell read the second way. */
function otherReading(open: number, lines: readonly Line[], within: number): readonly Explanation[] {
  for (const line of lines) {
    for (const reading of line.preview.readings.slice(1)) {
      const delta = line.cell_mg * line.times - reading.mg * line.times
      if (Math.abs(delta - open) <= within) return [explain(line, 'waiting', delta)]
    }
  }
  return []
}

/**
 * One row, else two, that the sheet leaves out of its sum (open above zero), or one that it counts twice (below). Only where a single
 * answer fits: among many rows some two always come near, and a guess between them would name the wrong ones.
 */
function oneOrTwo(open: number, lines: readonly Line[], within: number): readonly Explanation[] {
  const code: ExplainCode = open > 0 ? 'not-counted' : 'counted-twice'
  const size = Math.abs(open)
  const signed = (line: Line): Explanation => explain(line, code, open > 0 ? line.sheet_mg : -line.sheet_mg)
  const may = lines.filter((line) => line.sheet_mg > within && line.sheet_mg <= size + within)
  const ones = may.filter((line) => Math.abs(line.sheet_mg - size) <= within)
  if (ones.length > 0 || open < 0 || may.length > 400) return ones.length === 1 ? [signed(ones[0]!)] : []
  const pairs = may.flatMap((first, at) => may.slice(at + 1).filter((line) => Math.abs(first.sheet_mg + line.sheet_mg - size) <= within).map((line) => [first, line] as const)) // prettier-ignore
  return pairs.length === 1 ? pairs[0]!.map(signed) : []
}
