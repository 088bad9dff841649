import type { Fault } from '../../src-domain/figures/fault.ts'
import type { MarkLane, Role, SheetMassFrom } from '../../src-domain/closet/bring-in/choices.ts'
import type {
  ColumnPreview,
  ExplainCode,
  LeftOutCode,
  Match,
  MatchCode,
  NoteCode,
  Preview,
  ProblemCode,
  ReasonCode,
  Told,
  TotalComparison,
} from '../../src-domain/closet/bring-in/preview.ts'
import { counted, laneWeights, laneWords } from './closet.ts'
import { faultWords } from './faults.ts'

type Facts = Told['facts']
/** A mass in mg as the window shows it now. */
export type Weigh = (mg: number) => string
const quoted = (facts: Facts, name = 'text'): string => `“${String(facts[name] ?? '')}”`
const number = (facts: Facts, name: string): number => Number(facts[name] ?? 0)

export const roleWords: Readonly<Record<Role, string>> = {
  item: 'Item',
  area: 'Kit area',
  maker: 'Maker',
  mass: 'Mass',
  unit: 'Unit of the mass',
  line_mass: 'Mass × pieces',
  pounds: 'Pounds',
  ounces: 'Ounces',
  pieces: 'Pieces',
  mark: 'Where it goes',
  price: 'Price',
  note: 'Note',
  from: 'Where its mass is from',
  status: 'Status',
  tags: 'Tags',
  duties: 'Duties',
  set: 'Set',
  link: 'Link',
  weighed_on: 'Weighed on',
  ignored: 'not brought in',
}

export const laneChoices: Readonly<Record<MarkLane, string>> = { ...laneWords, home: 'stays at home', none: 'says nothing' }
export const massFromWords: Readonly<Record<SheetMassFrom, string>> = {
  measured: 'read from a scale',
  claimed: 'a maker’s word',
  estimated: 'a guess',
}
export const separatorWords = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'upright bar' } as const

/** What stands in the way, short, in the row itself. */
const short: Readonly<Record<ProblemCode, (f: Facts) => string>> = {
  'mass-unreadable': () => 'cannot be read',
  'mass-ambiguous': (f) => (f['second'] === undefined ? 'can be read two ways' : `${String(f['first'])} or ${String(f['second'])}?`),
  'mass-below-zero': () => 'below zero',
  'mass-too-large': () => 'too large',
  'name-missing': () => 'no name',
  'name-too-long': () => 'name too long',
  'pieces-unreadable': () => 'how many?',
}
export const problemShort = (told: Told<ProblemCode>): string => short[told.code](told.facts)

const problems: Readonly<Record<ProblemCode, (f: Facts) => string>> = {
  'mass-unreadable': (f) => `${quoted(f)} cannot be read as a mass. Type it as it should be, or leave the row out.`,
  'mass-ambiguous': (f) =>
    f['second'] === undefined
      ? `${quoted(f)} can be read more than one way.`
      : `${quoted(f)} is ${String(f['first'])}, or ${String(f['second'])} with a stray mark. The other rows do not settle it.`,
  'mass-below-zero': (f) => `${quoted(f)} is below zero. A mass cannot be.`,
  'mass-too-large': (f) => `${quoted(f)} is more than anything one carries.`,
  'name-missing': () => 'A row with figures but without a name. Name it, or leave it out.',
  'name-too-long': (f) => `A name holds ${String(f['most'])} characters at most. Shorten it.`,
  'pieces-unreadable': (f) => `${quoted(f)} cannot be read as a number of pieces.`,
}
export const problemWords = (told: Told<ProblemCode>): string => problems[told.code](told.facts)

const notes: Readonly<Record<NoteCode, (f: Facts, weigh: Weigh) => string>> = {
  'mass-missing': () => 'no mass: to be weighed',
  'mass-zero': () => 'mass 0: to be weighed',
  'count-from-name': (f) => `${String(f['pieces'])} pieces, from its name`,
  'mass-of-all-pieces': (f) => `one of ${String(f['pieces'])} weighs its share`,
  'line-differs': (f, weigh) => `its row says ${weigh(number(f, 'line_mg'))} for all, pieces make ${weigh(number(f, 'ours_mg'))}`,
  'price-unreadable': (f) => `price ${quoted(f)} not read`,
  'currency-missing': () => 'price in which money?',
  'status-unread': (f) => `status ${quoted(f)} not known`,
  'mark-unread': () => 'mark not known',
  'duty-unread': (f) => `duty ${quoted(f)} not known`,
  'date-unread': (f) => `date ${quoted(f)} not read`,
  'stays-home': () => 'stays at home',
  'text-cut': () => 'a text was too long and is cut',
}
export const noteWords = (told: Told<NoteCode>, weigh: Weigh): string => notes[told.code](told.facts, weigh)

const leftOut: Readonly<Record<LeftOutCode, string>> = {
  blank: 'blank: left out',
  'above-heading': 'a title: left out',
  heading: 'the headings',
  'heading-again': 'the headings again: left out',
  area: 'names its rows',
  total: 'a total: left out',
  remark: 'a remark: left out',
  'by-choice': 'left out by you',
  'block-left-out': 'its block is left out',
}
export const leftOutWords = (told: Told<LeftOutCode>): string => leftOut[told.code]

/** Before the name of the thing it resembles, and after it. */
const matches: Readonly<Record<MatchCode, (here: string, there: string) => readonly [string, string]>> = {
  'same-name-and-mass': (here) => [`The same name and the same ${here} as`, ''],
  'same-name': () => ['The same name as', '; one of the two has no mass'],
  'same-name-other-mass': (here, there) => ['The same name as', `, ${there} there and ${here} here`],
  'name-in-part-and-mass': (here) => [`Same name in part and the same ${here} as`, ''],
}
export const matchWords = (match: Match, here: string, there: string): readonly [string, string] => matches[match.why.code](here, there)

export const matchShort = (match: Match): string =>
  match.of === 'closet'
    ? match.same
      ? 'in the closet already'
      : 'like one in the closet'
    : match.same
      ? `more of row ${number(match.why.facts, 'row')}`
      : `like row ${number(match.why.facts, 'row')}`

const reasons: Readonly<Record<ReasonCode, (f: Facts) => string>> = {
  'by-person': () => 'as you said',
  'by-heading': (f) => (f['heading'] === undefined ? 'by its heading' : `by its heading ${quoted(f, 'heading')}`),
  'by-cells': () => 'by its cells',
  'by-range': (f) =>
    `because ${String(f['inside'])} of ${counted(number(f, 'of'), 'bare number lies', 'bare numbers lie')} between ${number(f, 'low').toLocaleString('en-GB')} and ${number(f, 'high').toLocaleString('en-GB')}`,
  'by-total': () => 'because then the sheet’s own totals come out',
  'by-arithmetic': () => 'because the columns then agree',
  'by-contrast': (f) => `because ${counted(number(f, 'marked'), 'other is', 'others are')} marked as the maker’s`,
  'by-default': () => 'for want of a sign',
  'same-as-column': (f) => `the same as ${quoted(f, 'heading')} in another unit`,
  'row-numbers': () => 'row numbers',
  'nothing-in-it': () => 'nothing in it',
  'not-understood': () => 'not understood',
}
export const reasonWords = (told: Told<ReasonCode>): string => reasons[told.code](told.facts)

const unitNames = { g: 'grams', kg: 'kilograms', oz: 'ounces', lb: 'pounds', mg: 'milligrams', t: 'tonnes' } as const
export const unitName = (unit: string): string => (unitNames as Readonly<Record<string, string>>)[unit] ?? unit

/** What a column is read as, for its chooser. */
export function columnWords(column: ColumnPreview): string {
  if (column.role === 'mark') return 'Goes'
  const role = roleWords[column.role]
  if (column.role !== 'mass') return role
  const bare =
    column.unitBecause?.code === 'by-range' || column.unitBecause?.code === 'by-heading' || column.unitBecause?.code === 'by-person'
  if (column.unitsInCells) return bare ? `${role}, unit read from each cell` : `${role}, unit in each cell`
  return column.unit === null ? role : `${role} in ${unitName(column.unit)}`
}

const explains: Readonly<Record<ExplainCode, string>> = {
  'left-out': 'left out here',
  waiting: 'waits for you',
  'closet-mass': 'the closet knows its mass',
  'own-line': 'read otherwise than the sheet counts it',
  'counted-once': 'the sheet counts one piece',
  'not-a-number': 'the sheet’s sum skips a cell with words',
  'not-counted': 'not in the sheet’s sum',
  'counted-twice': 'twice in the sheet’s sum',
  'no-lane': 'stays at home',
}
export const explainWords = (code: ExplainCode): string => explains[code]

/** What a total of the sheet is the sum of. */
export function scopeWords(total: TotalComparison, area: (code: string) => string): string {
  if (total.scope === 'lane') return laneWeights[total.of as keyof typeof laneWeights]
  if (total.scope === 'area') return area(total.of)
  return { all: 'all rows', block: 'all rows of the block', section: total.of === '' ? 'the rows above it' : `the rows under ${total.of}`, pack: 'pack weight' }[total.scope] // prettier-ignore
}

/** The rule of the sheet in one sentence: what its bare numbers are and what its marks make of them. */
export function readingWords(preview: Preview): string {
  const mass = preview.blocks.flatMap((block) => block.columns).find((column) => column.unitBecause !== null && column.role === 'mass')
  const said: string[] = []
  if (mass?.unit && mass.unitBecause) said.push(`A bare number is ${unitName(mass.unit)}, ${reasonWords(mass.unitBecause)}.`)
  if (mass?.massFromBecause?.code === 'by-contrast') said.push('“mfr” makes a claim, “~” an estimate.')
  if (preview.rows.some((row) => row.pieces > 1))
    said.push(`A mass is of ${preview.massIs === 'piece' ? 'one piece' : 'all pieces of its row'}, ${reasonWords(preview.massIsBecause)}.`)
  return said.join(' ')
}

const foreign: Readonly<Record<string, string>> = {
  workbook: 'That is a workbook of a spreadsheet program. Save it there as CSV, or copy its cells and paste them here.',
  pdf: 'That is a PDF. Bring in the spreadsheet it was made from, as CSV.',
  picture: 'That is a picture. Bring in the spreadsheet itself, as CSV.',
  binary: 'That is no text. Save the sheet as CSV, or copy its cells and paste them here.',
}
/** Why a sheet cannot be brought in, and the way out. */
export const sheetFaultWords = (fault: Fault): string =>
  (fault.code === 'sheet.unreadable' ? foreign[String(fault.facts['why'] ?? '')] : undefined) ?? faultWords(fault)
