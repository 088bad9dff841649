/** The invented sheets of test/fixtures/sheets, read as the program reads a file. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Choices } from '../../../../src-domain/closet/bring-in/choices.ts'
import type { KnownItem, Preview, RowPreview, TotalComparison } from '../../../../src-domain/closet/bring-in/preview.ts'
import { recognise } from '../../../../src-domain/closet/bring-in/recognise.ts'
import type { Cells } from '../../../../src-domain/closet/bring-in/tidy.ts'
import { readCells } from '../../../../src-renderer/rooms/bring-in/cells.ts'

const folder = join(import.meta.dirname, '../../../fixtures/sheets')

export const fixtureText = (name: string): string => readFileSync(join(folder, name), 'utf8')

export async function cellsOf(text: string): Promise<Cells> {
  const read = await readCells(text)
  if (!read?.ok) throw new Error(JSON.stringify(read))
  return read.value.cells
}

export async function previewOf(name: string, choices: Choices = {}, closet: readonly KnownItem[] = []): Promise<Preview> {
  return recognise(await cellsOf(fixtureText(name)), choices, closet)
}

export async function previewOfText(text: string, choices: Choices = {}, closet: readonly KnownItem[] = []): Promise<Preview> {
  return recognise(await cellsOf(text.trim().replace(/^ +/gmu, '')), choices, closet)
}

export function rowNamed(preview: Preview, name: string): RowPreview {
  const found = preview.rows.find((row) => row.name === name && row.fate !== 'left_out')
  if (!found) throw new Error(`no row named ${name}`)
  return found
}

export function totalNamed(preview: Preview, label: string): TotalComparison {
  const found = preview.totals.find((total) => total.label === label)
  if (!found) throw new Error(`no total named ${label}`)
  return found
}

export const rolesOf = (preview: Preview, block = 0): readonly string[] => preview.blocks[block]!.columns.map((column) => column.role)

/** mg of one piece, by name. */
export const massesOf = (preview: Preview): Readonly<Record<string, number | null>> =>
  Object.fromEntries(preview.rows.filter((row) => row.fate !== 'left_out').map((row) => [row.name, row.masses[0]?.piece_mg ?? null]))

/** Avoirdupois ounces in mg: 1 oz = 28.349523125 g exactly (NIST SP 811, appendix B). */
export const ozMg = (ounces: number): number => Math.round(ounces * 28_349.523125)
