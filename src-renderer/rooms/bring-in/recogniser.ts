/**
 * The worker that recognises a sheet: a pure calculation of seconds for 20,000 rows, kept off the window so that it goes on drawing and can be
 * cancelled (the window ends the worker). Rows go over in parts: one message of all of them would stop the window while it unpacks.
 */
import { accept } from '../../../src-domain/closet/bring-in/accept.ts'
import { recognise } from '../../../src-domain/closet/bring-in/recognise.ts'
import type { Choices } from '../../../src-domain/closet/bring-in/choices.ts'
import type { KnownItem, Preview, RowPreview } from '../../../src-domain/closet/bring-in/preview.ts'
import type { Cells } from '../../../src-domain/closet/bring-in/tidy.ts'
import { stagedAtOnce, stagedRows, type StagedRow } from './stage.ts'

export type ToRecogniser =
  | { readonly kind: 'sheet'; readonly cells: Cells }
  | { readonly kind: 'recognise'; readonly choices: Choices; readonly closet: readonly KnownItem[] }
  | { readonly kind: 'plan'; readonly source: string }
  | { readonly kind: 'part'; readonly from: number }

export type FromRecogniser =
  | { readonly kind: 'rows'; readonly rows: readonly RowPreview[]; readonly of: number }
  | { readonly kind: 'recognised'; readonly rest: Omit<Preview, 'rows'> }
  | { readonly kind: 'planned'; readonly rows: number }
  | { readonly kind: 'part'; readonly rows: readonly StagedRow[] }

/** What this side uses of a worker's global scope; the window's own types do not know it. */
const port = self as unknown as { postMessage: (message: FromRecogniser) => void; onmessage: (event: MessageEvent<ToRecogniser>) => void }

const rowsAtOnce = 1000
let cells: Cells = []
let preview: Preview | null = null
let staged: readonly StagedRow[] = []

port.onmessage = ({ data }) => {
  if (data.kind === 'sheet') cells = data.cells
  else if (data.kind === 'recognise') send(recognise(cells, data.choices, data.closet))
  else if (data.kind === 'plan') {
    staged = preview === null ? [] : stagedRows(accept(preview), data.source)
    port.postMessage({ kind: 'planned', rows: staged.length })
  } else port.postMessage({ kind: 'part', rows: staged.slice(data.from, data.from + stagedAtOnce) })
}

function send(made: Preview): void {
  preview = made
  const { rows, ...rest } = made
  for (let from = 0; from < rows.length; from += rowsAtOnce)
    port.postMessage({ kind: 'rows', rows: rows.slice(from, from + rowsAtOnce), of: rows.length })
  port.postMessage({ kind: 'recognised', rest })
}
