/** The window's side of the recogniser: ask, follow, cancel. One question at a time; what is asked meanwhile waits for the next. */
import type { Choices } from '../../../src-domain/closet/bring-in/choices.ts'
import type { KnownItem, Preview, RowPreview } from '../../../src-domain/closet/bring-in/preview.ts'
import type { Cells } from '../../../src-domain/closet/bring-in/tidy.ts'
import type { FromRecogniser, ToRecogniser } from './recogniser.ts'
import type { StagedRow } from './stage.ts'

export class Recognising {
  #worker: Worker | null = null
  #cells: Cells = []
  #answer: ((said: FromRecogniser | null) => void) | null = null
  /** What was last recognised. */
  #last: { readonly choices: Choices; readonly closet: readonly KnownItem[] } | null = null
  /** Said while nobody listened yet. */
  readonly #waiting: FromRecogniser[] = []

  take(cells: Cells): void {
    this.cancel()
    this.#cells = cells
    this.#last = null
  }

  /** null: cancelled, or the recogniser broke. */
  async recognise(choices: Choices, closet: readonly KnownItem[], follow: (share: number) => void): Promise<Preview | null> {
    const rows: RowPreview[] = []
    let said = await this.#ask({ kind: 'recognise', choices, closet })
    while (said?.kind === 'rows') {
      for (const row of said.rows) rows.push(row)
      follow(rows.length / said.of)
      said = await this.#next()
    }
    if (said?.kind !== 'recognised') return null
    this.#last = { choices, closet }
    return { ...said.rest, rows }
  }

  /** Plans what was recognised last; answers how many rows are to be staged. */
  async plan(source: string): Promise<number> {
    // A worker that was ended took its preview with it.
    if (this.#worker === null && this.#last) await this.recognise(this.#last.choices, this.#last.closet, () => undefined)
    const said = await this.#ask({ kind: 'plan', source })
    return said?.kind === 'planned' ? said.rows : 0
  }

  async part(from: number): Promise<readonly StagedRow[]> {
    const said = await this.#ask({ kind: 'part', from })
    return said?.kind === 'part' ? said.rows : []
  }

  /** A calculation under way cannot be asked to stop: its worker is ended, and the next one begins with the same sheet. */
  cancel(): void {
    this.#worker?.terminate()
    this.#worker = null
    this.#waiting.length = 0
    this.#answer?.(null)
    this.#answer = null
  }

  #open(): Worker {
    if (this.#worker) return this.#worker
    const worker = new Worker(new URL('./recogniser.ts', import.meta.url), { type: 'module' })
    worker.onmessage = ({ data }: MessageEvent<FromRecogniser>) => this.#heard(data)
    worker.onerror = () => this.cancel()
    this.#worker = worker
    worker.postMessage({ kind: 'sheet', cells: this.#cells } satisfies ToRecogniser)
    return worker
  }

  #heard(said: FromRecogniser): void {
    const answer = this.#answer
    this.#answer = null
    if (answer) answer(said)
    else this.#waiting.push(said)
  }

  #ask(message: ToRecogniser): Promise<FromRecogniser | null> {
    const worker = this.#open()
    this.#waiting.length = 0
    worker.postMessage(message)
    return this.#next()
  }

  #next(): Promise<FromRecogniser | null> {
    const waiting = this.#waiting.shift()
    if (waiting) return Promise.resolve(waiting)
    if (this.#worker === null) return Promise.resolve(null)
    return new Promise((answer) => (this.#answer = answer))
  }
}
