/** Rows matched to the closet and among themselves: known things, and more pieces of an earlier row's thing. */
import { nameWords } from '../name-words.ts'
import type { ClosetIndex } from './alike.ts'
import type { Choices } from './choices.ts'
import { said } from './choices.ts'
import type { Match, RowPreview } from './preview.ts'

export function matchRows(rows: readonly RowPreview[], closet: ClosetIndex, choices: Choices): readonly RowPreview[] {
  const earlier = new Map<string, RowPreview[]>()
  return rows.map((row) => {
    if (row.fate !== 'new') return row
    const choice = said(choices.rows, row.key)?.same
    const known = inCloset(row, closet, choice)
    if (known?.same) return { ...row, fate: 'known', match: known }
    const again = inSheet(row, earlier, choice)
    if (again?.same) return { ...row, fate: 'again', match: again }
    const key = nameKey(row)
    const like = earlier.get(key)
    if (!like) earlier.set(key, [row])
    else if (like.length < mostLike) like.push(row)
    const match = known ?? again
    return match ? { ...row, match } : row
  })
}

/** Of things with one name only the first so many are compared. */
const mostLike = 200

const massOf = (row: RowPreview): number | null => row.masses[0]?.piece_mg ?? null

function inCloset(row: RowPreview, closet: ClosetIndex, choice: 'same' | 'another' | undefined): Match | null {
  const found = closet.find(row.name, row.maker, massOf(row))
  if (!found) return null
  const facts = { name: found.item.name, ...(found.item.mass_mg === null ? {} : { mass_mg: found.item.mass_mg }) }
  const same = choice === undefined ? found.same : choice === 'same'
  return { of: 'closet', id: found.item.id, row: '', name: found.item.name, why: { code: found.code, facts }, same }
}

const nameKey = (row: RowPreview): string => `${nameWords(row.name).join(' ') || row.name}|${nameWords(row.maker).join(' ')}`

/** The same words from the same maker, in the same status: with the same mass (or none in both) it is another piece of that thing. */
function inSheet(
  row: RowPreview,
  earlier: ReadonlyMap<string, readonly RowPreview[]>,
  choice: 'same' | 'another' | undefined,
): Match | null {
  const like = (earlier.get(nameKey(row)) ?? []).filter((one) => one.status === row.status)
  const alike = like.find((one) => isSameMass(massOf(one), massOf(row)))
  const found = alike ?? like[0]
  if (!found) return null
  const code = alike ? 'same-name-and-mass' : 'same-name-other-mass'
  const same = choice === undefined ? alike !== undefined : choice === 'same'
  return { of: 'sheet', id: 0, row: found.key, name: found.name, why: { code, facts: { row: found.row + 1, name: found.name } }, same }
}

const isSameMass = (a: number | null, b: number | null): boolean =>
  a === null || b === null ? a === b : Math.abs(a - b) <= Math.max(500, b * 0.005)
