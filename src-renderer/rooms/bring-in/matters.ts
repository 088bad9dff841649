/** What waits for the person in a sheet: rows that cannot be read, and things that may be in the closet already but not for certain. */
import type { Choices } from '../../../src-domain/closet/bring-in/choices.ts'
import { said } from '../../../src-domain/closet/bring-in/choices.ts'
import type { Preview, RowPreview } from '../../../src-domain/closet/bring-in/preview.ts'

/** Rows of the preview, in its order. */
export const openMatters = (preview: Preview, choices: Choices): readonly number[] =>
  preview.rows.flatMap((row, at) => (row.fate === 'problem' || isDoubtful(row, choices) ? [at] : []))

/** Like one in the closet by name or mass but not by both, and nothing was said of it. */
export const isDoubtful = ({ key, match }: RowPreview, choices: Choices): boolean =>
  match?.of === 'closet' &&
  (match.why.code === 'same-name-other-mass' || match.why.code === 'name-in-part-and-mass') &&
  said(choices.rows, key)?.same === undefined

/** The matter after a row (by 1) or before it (by −1); -1: none. */
export function nextMatter(matters: readonly number[], at: number, by: 1 | -1): number {
  return (by === 1 ? matters.find((one) => one > at) : matters.findLast((one) => one < at)) ?? -1
}
