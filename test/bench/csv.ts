import Papa from 'papaparse'
import { recognise } from '../../src-domain/closet/bring-in/recognise.ts'
import { readCells } from '../../src-renderer/rooms/bring-in/cells.ts'
import { closetSize, ms, sideBySide, type BenchRow } from './row.ts'
import { sheetOf } from './sheet-of.ts'

const rounds = 5

/**
 * A sheet of 20,000 rows to its preview, against papaparse alone on the same text.
 * Goal 15: reading cells is not recognising them. Papaparse finds where some 120,000 cells end; the preview finds the blocks, columns and units,
 * reads each mass, quantity and note, guesses areas and duties from every name and looks for likes among all names: over ten readings of each cell.
 */
export async function csv(): Promise<BenchRow> {
  const text = sheetOf(closetSize)
  const [ours, alone] = await sideBySide(
    () => preview(text),
    () => Papa.parse<string[]>(text).data.length,
    rounds,
  )
  const about = `preview ${ms(ours)}, papaparse ${ms(alone)}; ${closetSize} rows, medians of ${rounds}`
  return { name: '20,000-row CSV', ratio: ours / alone, goal: 15, about }
}

async function preview(text: string): Promise<void> {
  const read = await readCells(text)
  if (!read?.ok) throw new Error('the sheet could not be read')
  const { counts } = recognise(read.value.cells, {}, [])
  if (counts.newItems < closetSize * 0.9) throw new Error(`only ${counts.newItems} of ${closetSize} things were recognised`)
}
