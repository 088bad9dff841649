/** One row decided: what it would bring in, or why it is left out or waits. */
import { guessDuties } from '../guess-duties.ts'
import type { Lane } from '../vocabulary.ts'
import type { AreaWords } from './areas.ts'
import type { FieldReader } from './cell-fields.ts'
import type { MarkLane, SheetMassFrom } from './choices.ts'
import type { MassCell, MassReader } from './mass-cell.ts'
import type { RowPieces } from './pieces.ts'
import { piecesOf } from './pieces.ts'
import type { BlockPlan } from './plan-block.ts'
import { massFromOfWord, plainWord, tick } from './plain-words.ts'
import type { NoteCode, ProblemCode, RowMass, RowPreview, Told } from './preview.ts'
import type { RawRow, SheetMass } from './raw-rows.ts'
import { originOf } from './raw-rows.ts'
import { laneByMarks, markKey } from './marks.ts'

export interface RowContext {
  readonly plan: BlockPlan
  readonly reader: MassReader
  readonly fields: FieldReader
  readonly areas: AreaWords
  readonly marks: ReadonlyMap<string, MarkLane>
  readonly massIs: 'piece' | 'line'
  /** The cells as they came, for notes that keep their lines. */
  readonly cells: readonly (readonly string[])[]
}

const longestName = 300

export function makeRow(raw: RawRow, context: RowContext): RowPreview {
  if (raw.kind !== 'item' || raw.choice.take === false) return leftOut(raw)
  const notes: Told<NoteCode>[] = []
  const tell = (code: NoteCode, facts: Told['facts'] = {}): void => void notes.push({ code, facts })
  const name = (raw.choice.name ?? raw.name).trim()
  const pieces = piecesOf(raw, context.massIs)
  const mass = raw.choice.mass === undefined ? raw.mass : context.reader.one(raw.choice.mass, unitOf(context.plan))
  const problem = problemOf(raw, name, mass, pieces)
  if (problem === null) tellOfMass(raw, mass, pieces, context, tell)
  const lane = laneOf(raw, pieces, context)
  if (lane.isUnread) tell('mark-unread')
  if (lane.lane === null) tell('stays-home')
  const { area, from: areaFrom } = context.areas.areaOf(raw)
  const saidDuties = context.fields.duties(raw.cells, tell)
  const dutiesSaid = context.plan.column('duties') !== null
  return {
    ...identity(raw),
    fate: problem === null ? 'new' : 'problem',
    leftOut: null,
    problem,
    notes,
    readings: mass.kind === 'problem' ? mass.readings : [],
    name: name.slice(0, longestName),
    maker: context.fields.text(raw.cells, 'maker', tell),
    area,
    areaFrom,
    pieces: pieces.pieces,
    masses: problem === null ? massesOf(raw, mass, pieces, context) : [],
    price: context.fields.price(raw.cells, tell),
    note: context.fields.note(context.cells[raw.row] ?? [], tell),
    tags: context.fields.tags(raw.cells),
    links: context.fields.links(raw.cells),
    // A sheet with a column of duties says with an empty cell that there is none.
    duties: dutiesSaid ? saidDuties : guessDuties(name),
    dutiesFrom: dutiesSaid ? 'sheet' : 'name',
    set: context.fields.text(raw.cells, 'set', tell),
    status: context.fields.status(raw.cells, tell),
    weighedOn: context.fields.weighedOn(raw.cells, tell),
    lane: lane.lane,
    match: null,
  }
}

const identity = ({ key, block, row, areaWord }: RawRow): Pick<RowPreview, 'key' | 'block' | 'row' | 'areaWord'> => ({
  key,
  block,
  row,
  areaWord,
})

function leftOut(raw: RawRow): RowPreview {
  const code = raw.kind === 'item' ? 'by-choice' : raw.kind
  return {
    ...identity(raw),
    fate: 'left_out',
    leftOut: { code, facts: raw.label === '' ? {} : { label: raw.label } },
    problem: null,
    notes: [],
    readings: [],
    name: raw.name.slice(0, longestName),
    maker: '',
    area: 'extras',
    areaFrom: 'none',
    pieces: 1,
    masses: [],
    price: null,
    note: '',
    tags: [],
    links: [],
    duties: [],
    dutiesFrom: 'name',
    set: '',
    status: 'owned',
    weighedOn: null,
    lane: null,
    match: null,
  }
}

const unitOf = (plan: BlockPlan): NonNullable<BlockPlan['columns'][number]['unit']> =>
  plan.columnsOf('mass')[0]?.unit ?? plan.columnsOf('ounces')[0]?.unit ?? 'g'

function problemOf(raw: RawRow, name: string, mass: MassCell, pieces: RowPieces): Told<ProblemCode> | null {
  if (name === '') return { code: 'name-missing', facts: {} }
  if (name.length > longestName) return { code: 'name-too-long', facts: { most: longestName } }
  if (!pieces.isReadable) return { code: 'pieces-unreadable', facts: { text: raw.piecesText.slice(0, 80) } }
  if (mass.kind === 'problem') return mass.problem
  return null
}

function tellOfMass(
  raw: RawRow,
  mass: MassCell,
  pieces: RowPieces,
  context: RowContext,
  tell: (code: NoteCode, facts?: Told['facts']) => void,
): void {
  const fromLine = mass.kind === 'none' && raw.lineMass.kind === 'mass'
  if (mass.kind === 'none' && !fromLine) tell('mass-missing')
  if (mass.kind === 'zero') tell('mass-zero')
  if (raw.countInName !== null) tell('count-from-name', { pieces: raw.countInName })
  if (mass.kind !== 'mass') return
  if (pieces.inCell > 1) tell('mass-of-all-pieces', { pieces: pieces.inCell })
  if (raw.lineMass.kind === 'mass' && raw.choice.mass === undefined) {
    const ours = (mass.mg / pieces.inCell) * pieces.pieces
    const slack = Math.max(raw.lineMass.step_mg / 2, (mass.step_mg / 2) * pieces.pieces, ours * 0.01, 1000)
    if (Math.abs(ours - raw.lineMass.mg) > slack) tell('line-differs', { line_mg: raw.lineMass.mg, ours_mg: Math.round(ours) })
  }
}

/** All masses the row says, of one piece each, the foremost first and each origin once. */
function massesOf(raw: RawRow, chosen: MassCell, pieces: RowPieces, context: RowContext): readonly RowMass[] {
  const told = fromColumn(raw, context.plan)
  const all = raw.choice.mass === undefined ? raw.masses : [{ cell: chosen, from: raw.masses[0]?.from ?? 'claimed', lane: null } as const]
  const found = all.flatMap((one): RowMass[] => pieceMass(one, told, pieces.inCell))
  if (found.length === 0 && raw.lineMass.kind === 'mass' && raw.choice.mass === undefined) {
    found.push({ piece_mg: Math.round(raw.lineMass.mg / pieces.pieces), origin: told ?? raw.lineMass.origin ?? 'claimed' })
  }
  const order: readonly SheetMassFrom[] = ['measured', 'claimed', 'estimated']
  return order.flatMap((origin) => found.filter((one) => one.origin === origin).slice(0, 1))
}

function pieceMass(one: SheetMass, told: SheetMassFrom | undefined, inCell: number): RowMass[] {
  if (one.cell.kind !== 'mass') return []
  const origin = one.cell.origin ?? told ?? originOf(one)
  return [{ piece_mg: Math.max(1, Math.round(one.cell.mg / inCell)), origin }]
}

/** What the sheet's own column of sources says of this row. */
function fromColumn(raw: RawRow, plan: BlockPlan): SheetMassFrom | undefined {
  const [column] = plan.columnsOf('from')
  if (!column) return undefined
  const text = raw.cells[column.column] ?? ''
  const word = massFromOfWord(text)
  if (word) return word
  const heading = massFromOfWord(column.heading)
  const ticked = tick(text)
  if (heading === undefined || ticked === undefined) return undefined
  return ticked ? heading : heading === 'measured' ? 'claimed' : 'measured'
}

function laneOf(raw: RawRow, pieces: RowPieces, { plan, marks }: RowContext): { readonly lane: Lane | null; readonly isUnread: boolean } {
  const keys = plan.columnsOf('mark').map((one) => markKey(raw, one.column))
  const byMarks = laneByMarks(keys.map((key) => marks.get(key) ?? 'none'))
  const isUnread = keys.some((key) => marks.get(key) === undefined)
  const lane =
    raw.choice.lane ??
    (pieces.staysHome ? 'home' : byMarks !== 'none' ? byMarks : (laneOfMass(raw) ?? raw.sectionLane ?? laneOfAreaWord(raw)))
  return { lane: lane === 'home' ? null : lane === 'none' ? 'in_pack' : lane, isUnread }
}

/** The lane above the column that holds its mass. */
const laneOfMass = (raw: RawRow): Lane | undefined =>
  raw.masses.find((one) => one.cell.kind !== 'none' && one.lane !== null)?.lane ?? undefined

/** An area column may say "worn" where other rows name an area. */
function laneOfAreaWord(raw: RawRow): Lane | 'none' {
  const word = plainWord(raw.areaWord)
  if (/^(?:worn|wearing|on me|on body)\b/u.test(word) || /\bworn$/u.test(word)) return 'on_me'
  return /^(?:consumables?|used up)\b/u.test(word) ? 'used_up' : 'none'
}
