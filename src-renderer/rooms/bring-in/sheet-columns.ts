/** The columns of the preview: the sheet's own, what its masses are read as, and what it says in another way than by a column. */
import type { BlockPreview, ColumnPreview } from '../../../src-domain/closet/bring-in/preview.ts'
import type { Role } from '../../../src-domain/closet/bring-in/choices.ts'

export type ShownColumn =
  | { readonly kind: 'sheet'; readonly of: ColumnPreview; readonly spans: number }
  /** What is in the way of a row, else the sheet's note on it, where it has such a column. */
  | { readonly kind: 'way'; readonly of: ColumnPreview | null }
  /** `read`: masses as read; `area`, `lane`: from section rows, names or marks. */
  | { readonly kind: 'read' | 'area' | 'lane' }

const massRoles: readonly Role[] = ['mass', 'pounds', 'ounces']

/** What a row is told by; the others may step back where the sheet is narrow. */
const telling: readonly Role[] = ['item', 'area', 'mass', 'pounds', 'ounces', 'pieces', 'mark', 'price', 'note']
export const stepsBack = ({ role, because }: ColumnPreview): boolean => !telling.includes(role) && because.code !== 'nothing-in-it'

/** Columns with nothing in them are not shown; the last one of notes goes to the end, where it shares its place. */
export function shownColumns(block: BlockPreview, asLoadout: boolean, narrow = false): readonly ShownColumn[] {
  const columns = block.columns.filter((one) => one.because.code !== 'nothing-in-it' && !(narrow && stepsBack(one)))
  const has = (role: Role): boolean => columns.some((one) => one.role === role)
  const lastMass = columns.findLast((one) => massRoles.includes(one.role)) ?? columns.findLast((one) => one.role === 'line_mass')
  const note = columns.findLast((one) => one.role === 'note') ?? columns.findLast((one) => one.role === 'ignored') ?? null
  const shown: ShownColumn[] = []
  for (const of of columns) {
    if (of === note) continue
    shown.push({ kind: 'sheet', of, spans: of === lastMass ? 2 : 1 })
    if (of === lastMass) shown.push({ kind: 'read' })
    if (of.role === 'item' && !has('area')) shown.push({ kind: 'area' })
  }
  if (!lastMass) shown.push({ kind: 'read' })
  if (asLoadout && !has('mark')) shown.push({ kind: 'lane' })
  return [...shown, { kind: 'way', of: note }]
}

/** Least width and share of what is left, px and fr. */
type Width = readonly [least: number, share: number]
const byRole: Readonly<Partial<Record<Role, Width>>> = {
  item: [132, 1.6],
  area: [112, 1.1],
  mass: [112, 0.3],
  line_mass: [92, 0],
  pounds: [82, 0],
  ounces: [82, 0],
  pieces: [70, 0],
  price: [76, 0],
  note: [104, 1],
  mark: [96, 1.2],
  unit: [72, 0],
}
const byKind: Readonly<Record<'read' | 'area' | 'lane' | 'way', Width>> = { read: [80, 0], area: [92, 0.4], lane: [76, 0], way: [148, 1.2] }
const other: Width = [104, 0.3]
/** The same where the sheet is narrow. */
const narrowByRole: Readonly<Partial<Record<Role, Width>>> = {
  item: [108, 1],
  area: [78, 0.6],
  mass: [74, 0],
  pounds: [64, 0],
  ounces: [50, 0],
  pieces: [60, 0],
  price: [60, 0],
  mark: [76, 0.4],
}
const narrowByKind: typeof byKind = { read: [76, 0], area: [78, 0.3], lane: [66, 0], way: [100, 1.8] }
/** Between columns, px. */
export const columnGap = (narrow: boolean): number => (narrow ? 8 : 10)
/** Of the row's number, with as many digits as the last row has. */
const rowNumberWidth = (rows: number): number => 12 + 8 * Math.max(3, String(rows).length)
/** After the last column. */
const endPx = 14

function widthOf(column: ShownColumn, narrow: boolean): Width {
  if (column.kind !== 'sheet') return (narrow ? narrowByKind : byKind)[column.kind]
  return (narrow ? narrowByRole[column.of.role] : undefined) ?? byRole[column.of.role] ?? other
}

/** The grid's columns, and the least width they need together. */
export function layout(
  columns: readonly ShownColumn[],
  rows: number,
  narrow = false,
): { readonly template: string; readonly leastPx: number } {
  const widths = columns.map((column) => widthOf(column, narrow))
  const template = [
    `${rowNumberWidth(rows)}px`,
    ...widths.map(([least, share]) => (share === 0 ? `${least}px` : `minmax(${least}px, ${share}fr)`)),
  ].join(' ')
  return { template, leastPx: widths.reduce((sum, [least]) => sum + least + columnGap(narrow), rowNumberWidth(rows) + endPx) }
}

const figures: readonly Role[] = ['mass', 'line_mass', 'pounds', 'ounces', 'pieces', 'price']
export const isFigure = (role: Role): boolean => figures.includes(role)
