/**
 * The packed pack on the hook against the sum of what was confirmed.
 *   d = reading − list      band 2u, u of d with shares netted leaf by leaf: the gain of one scale behind both cancels
 *   inside the band: nothing is missing that weighs more than 2u − d · lighter, heavier: lines that would explain it, each one such that without it
 *   (or with it) the rest is inside its own band again; pieces of a line one by one; two lines together only where no single one does
 *   a confirmed line whose mass is not known: the difference says nothing
 * The scale cannot say that all is there: what weighs less than the band may be missing. Source: provisions.md 9; LOOK.md, Door (choices).
 */
import { band, difference, total, type Figure } from '../figures/figure.ts'
import type { DoorRow } from './door.ts'
import { isCarriedByAnother, lineMass, piecesOf } from './mass.ts'

export interface Explained {
  readonly rows: readonly { readonly row: DoorRow; readonly pieces: number }[]
  /** g, all of them together. */
  readonly mass: Figure<'g'>
}

export interface Hook {
  readonly list: Figure<'g'>
  readonly difference: Figure<'g'>
  /** 2u of the difference, g. */
  readonly bandG: number
  readonly says: 'inside' | 'lighter' | 'heavier' | 'unknown'
  /** Inside the band: the most that could be missing and not be seen, g. */
  readonly hiddenG: number
  readonly explained: readonly Explained[]
  /** Confirmed lines whose mass is not known. */
  readonly withoutMass: readonly string[]
}

/** What hangs on the hook: what was confirmed and is in the pack, with what is put in last or without. */
export const onHook = (row: DoorRow, withLast: boolean): boolean =>
  isInPack(row) && row.state === 'packed' && (withLast || row.last === null)

const isInPack = ({ line }: DoorRow): boolean => line !== null && line.lane !== 'on_me' && !isCarriedByAnother(line)

export function hang(rows: readonly DoorRow[], reading: Figure<'g'>, withLast: boolean): Hook {
  const inside = rows.filter((row) => onHook(row, withLast))
  const outside = rows.filter((row) => isInPack(row) && !onHook(row, withLast))
  const withoutMass = inside.filter(({ line }) => lineMass(line!) === null).map(({ name }) => name)
  const list = listOf(inside)
  const d = apart(reading, list)
  const bandG = band(d)
  const says = withoutMass.length > 0 ? 'unknown' : Math.abs(d.value) <= bandG ? 'inside' : d.value < 0 ? 'lighter' : 'heavier'
  const explained = says === 'lighter' ? explain(inside, reading, list, -1) : says === 'heavier' ? explain(outside, reading, list, 1) : []
  return { list, difference: d, bandG, says, hiddenG: says === 'inside' ? bandG - d.value : 0, explained, withoutMass }
}

const listOf = (rows: readonly DoorRow[]): Figure<'g'> =>
  total(
    'the list',
    'g',
    rows.flatMap(({ name, line }) => {
      const mass = lineMass(line!)
      return mass === null ? [] : [{ name, figure: mass }]
    }),
  )

const apart = (reading: Figure<'g'>, list: Figure<'g'>): Figure<'g'> =>
  difference('reading − list', { name: 'on the hook', figure: reading }, { name: 'the list', figure: list })

type Part = Explained['rows'][number] & { readonly mass: Figure<'g'> }

/** Most explanations that are worth reading. */
const MOST = 6

/** `sign` −1: something confirmed is not in it; 1: something not confirmed is. */
function explain(rows: readonly DoorRow[], reading: Figure<'g'>, list: Figure<'g'>, sign: -1 | 1): readonly Explained[] {
  const fits = (parts: readonly Part[]) => fitOf(parts, reading, list, sign)
  const parts = rows.flatMap(partsOf)
  const single = parts.map((part) => [part])
  const found = best(single, fits)
  if (found.length > 0) return found
  const whole = parts.filter(({ row: { line }, pieces }) => line?.kind !== 'item' || pieces === line.pieces)
  const pairs = whole.flatMap((one, at) => whole.slice(at + 1).map((other) => [one, other]))
  return best(pairs, fits)
}

/** How many of its own bands the rest would be off; above 1 it explains nothing. */
function fitOf(parts: readonly Part[], reading: Figure<'g'>, list: Figure<'g'>, sign: -1 | 1): number {
  const together = total('these', 'g', parts.map(({ row, mass }) => ({ name: row.name, figure: mass }))) // prettier-ignore
  const with_ =
    sign === 1
      ? total('list', 'g', [{ name: 'the list', figure: list }, { name: 'these', figure: together }]) // prettier-ignore
      : difference('list', { name: 'the list', figure: list }, { name: 'these', figure: together })
  const rest = apart(reading, with_)
  const off = Math.abs(rest.value)
  return off === 0 ? 0 : off / band(rest)
}

function best(many: readonly (readonly Part[])[], fits: (parts: readonly Part[]) => number): readonly Explained[] {
  return many
    .map((parts) => ({ parts, fit: fits(parts) }))
    .filter(({ fit }) => fit <= 1)
    .sort((a, b) => a.fit - b.fit)
    .slice(0, MOST)
    .map(({ parts }) => ({
      rows: parts.map(({ row, pieces }) => ({ row, pieces })),
      mass: total('these', 'g', parts.map(({ row, mass }) => ({ name: row.name, figure: mass }))), // prettier-ignore
    }))
}

/** One, two … all pieces of a line; a supply whole. */
function partsOf(row: DoorRow): readonly Part[] {
  const line = row.line!
  const whole = lineMass(line)
  if (whole === null || whole.value === 0) return []
  if (line.kind === 'supply' || line.item.mass === null) return [{ row, pieces: 1, mass: whole }]
  const piece = line.item.mass
  return Array.from({ length: line.pieces }, (_, at) => ({ row, pieces: at + 1, mass: piecesOf(piece, at + 1) }))
}
