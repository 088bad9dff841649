import type { Choices, RowChoice } from '../../../src-domain/closet/bring-in/choices.ts'
import { isTaken, type KnownItem, type Preview, type RowPreview } from '../../../src-domain/closet/bring-in/preview.ts'
import { closet } from '../../state/closet.svelte.ts'
import { notices } from '../../state/notices.svelte.ts'
import { program } from '../../state/program.svelte.ts'
import { counted } from '../../words/closet.ts'
import { sheetFaultWords } from '../../words/bring-in.ts'
import { readCells, type Separator, type SheetCells } from './cells.ts'
import { nextMatter, openMatters } from './matters.ts'
import { Recognising } from './recognising.ts'
import { stagedAtOnce } from './stage.ts'

export interface Source {
  /** The file's name; '' for pasted cells. */
  readonly name: string
  readonly from: string | Blob
}

export interface Work {
  readonly step: 'read' | 'recognise' | 'send' | 'keep'
  /** Of this step, 0 to 1; null: not known before its end. */
  readonly share: number | null
  readonly rows: number
}

/** Shorter waits are not worth a word. */
const shownAfterMs = 300

/** The sheet that is being brought in: its cells, what they would become, what the person said of them. Outlives the room; writes only in `accept`. */
class Bringing {
  source = $state.raw<Source | null>(null)
  sheet = $state.raw<SheetCells | null>(null)
  preview = $state.raw<Preview | null>(null)
  choices = $state.raw<Choices>({})
  loadoutName = $state('')
  /** `season:3`, `trip:7`, or '' for neither. */
  place = $state('')
  /** Why the sheet last offered cannot be read. */
  problem = $state('')
  work = $state.raw<Work | null>(null)
  /** The work lasts long enough to be shown. */
  slow = $state(false)
  /** Row of the preview that has the keys. */
  at = $state(0)

  readonly matters: readonly number[] = $derived(this.preview ? openMatters(this.preview, this.choices) : [])
  readonly row: RowPreview | null = $derived(this.preview?.rows[this.at] ?? null)
  readonly block: number = $derived(this.row?.block ?? 0)
  /** The rows of the block shown are one stretch of the preview's rows. */
  readonly stretch: { readonly from: number; readonly count: number } = $derived.by(() => {
    const blocks = this.preview?.blocks.length ?? 1
    const count = (this.preview?.rows.length ?? 0) / blocks
    return { from: this.block * count, count }
  })
  readonly ready: number = $derived(this.preview ? this.preview.rows.filter((row) => isTaken(row.fate)).length : 0)
  /** Accepting would write something. */
  readonly can: boolean = $derived(
    this.preview !== null && (this.preview.counts.newItems > 0 || (this.preview.asLoadout && this.preview.lines.length > 0)),
  )

  readonly #recognising = new Recognising()
  #settled: Choices = {}
  #reading: AbortController | null = null
  #settling: Promise<boolean> = Promise.resolve(true)
  #running = false
  #again = false
  #timer: ReturnType<typeof setTimeout> | undefined

  async open(source: Source, separator?: Separator): Promise<void> {
    this.#stop()
    const reading = new AbortController()
    this.#reading = reading
    this.#work({ step: 'read', share: 0, rows: 0 })
    const read = await readCells(source.from, {
      signal: reading.signal,
      onProgress: (rows, share) => this.#work({ step: 'read', share, rows }),
      ...(separator === undefined ? {} : { separator }),
    })
    if (reading !== this.#reading) return
    this.#reading = null
    this.#work(null)
    this.problem = read?.ok === false ? sheetFaultWords(read.fault) : ''
    if (read?.ok) await this.#take(source, read.value)
    else if (this.problem !== '' && this.preview) notices.fault(this.problem)
  }

  async #take(source: Source, sheet: SheetCells): Promise<void> {
    const before = { source: this.source, sheet: this.sheet, choices: this.#settled, at: this.at }
    this.source = source
    this.sheet = sheet
    this.choices = {}
    this.#recognising.take(sheet.cells)
    if (!(await this.#recognise())) {
      // Cancelled: what was there before stays.
      Object.assign(this, before)
      this.#recognising.take(before.sheet?.cells ?? [])
      return
    }
    this.loadoutName = nameOf(source, sheet, this.preview)
    this.place = ''
    this.at = this.matters[0] ?? Math.max(0, this.preview?.rows.findIndex((row) => row.fate !== 'left_out') ?? 0)
  }

  choose(part: Partial<Choices>): void {
    this.choices = { ...this.choices, ...part }
    void this.#recognise()
  }

  chooseRow(key: string, part: RowChoice | null): void {
    const { [key]: before, ...others } = this.choices.rows ?? {}
    this.choose({ rows: part === null ? others : { ...others, [key]: { ...before, ...part } } })
  }

  /** Leaves a row out, or puts a row back that was left out. */
  toggle(row: RowPreview): void {
    this.chooseRow(row.key, { take: row.fate === 'left_out' })
  }

  /** The closet changed beside us: known things are known by its words and masses. */
  closetChanged(): void {
    if (this.preview && this.work === null) void this.#recognise()
  }

  #recognise(): Promise<boolean> {
    this.#again = this.#running
    if (this.#running) return Promise.resolve(false)
    this.#running = true
    this.#settling = this.#untilSettled()
    return this.#settling
  }

  async #untilSettled(): Promise<boolean> {
    let made: Preview | null
    do {
      this.#again = false
      const asked = this.choices
      this.#work({ step: 'recognise', share: null, rows: this.sheet?.cells.length ?? 0 })
      made = await this.#recognising.recognise(asked, knownItems(), (share) => this.#work({ step: 'recognise', share, rows: this.sheet?.cells.length ?? 0 })) // prettier-ignore
      if (made === null) break
      this.preview = made
      this.#settled = asked
    } while (this.#again)
    this.choices = this.#settled
    this.#running = false
    this.#work(null)
    return made !== null
  }

  /** Ends what is going on; nothing was written by it. */
  cancel(): void {
    this.#stop()
    this.#work(null)
  }

  #stop(): void {
    this.#reading?.abort()
    this.#reading = null
    this.#recognising.cancel()
  }

  /** Writes what is shown, in one step to undo. Answers the new loadout's id, null for the closet only, undefined when nothing was written. */
  async accept(): Promise<number | null | undefined> {
    // An answer just given counts: what is being recognised is waited for.
    await this.#settling
    if (!this.preview || !this.can || this.work) return undefined
    const batch = crypto.randomUUID()
    const sending = new AbortController()
    this.#reading = sending
    const rows = await this.#send(batch, sending.signal)
    if (rows === null) {
      await program.tryChange('bringIn.drop', { batch })
      this.#work(null)
      return undefined
    }
    this.#work({ step: 'keep', share: null, rows })
    const loadout = this.preview.asLoadout ? { name: this.loadoutName.trim() || 'Brought in', ...placeOf(this.place) } : null
    const answer = await program.change('bringIn.accept', { batch, rows, loadout })
    this.#work(null)
    this.#reading = null
    if (!answer.ok) {
      await program.tryChange('bringIn.drop', { batch })
      return undefined
    }
    const { items, lines, loadoutId } = answer.value
    notices.say(
      `Brought in ${counted(items, 'item', 'items')}${loadoutId === null ? '' : ` and a loadout of ${counted(lines, 'line', 'lines')}`}. Ctrl+Z takes it all back.`,
    )
    this.clear()
    return loadoutId
  }

  /** Stages in parts; null: cancelled or refused. */
  async #send(batch: string, signal: AbortSignal): Promise<number | null> {
    this.#work({ step: 'send', share: 0, rows: 0 })
    const rows = await this.#recognising.plan(this.source?.name ?? '')
    for (let from = 0; from < rows; from += stagedAtOnce) {
      const part = await this.#recognising.part(from)
      if (signal.aborted || part.length === 0) return null
      const answer = await program.change('bringIn.stage', { batch, from, rows: [...part] })
      if (!answer.ok || signal.aborted) return null
      this.#work({ step: 'send', share: Math.min(1, (from + stagedAtOnce) / rows), rows: from + part.length })
    }
    return rows === 0 ? null : rows
  }

  clear(): void {
    this.#stop()
    this.source = null
    this.sheet = null
    this.preview = null
    this.choices = {}
    this.#settled = {}
    this.problem = ''
    this.at = 0
  }

  move(by: number): void {
    const { from, count } = this.stretch
    this.at = Math.min(from + count - 1, Math.max(from, this.at + by))
  }

  /** The next open matter after a row, or the one before it; -1: none. */
  next(by: 1 | -1 = 1): number {
    return nextMatter(this.matters, this.at, by)
  }

  #work(work: Work | null): void {
    if (work === null || this.work === null) {
      clearTimeout(this.#timer)
      this.slow = false
      if (work) this.#timer = setTimeout(() => (this.slow = true), shownAfterMs)
    }
    this.work = work
  }
}

/** Things one has or had a wish for; what was sold, retired or lost is no longer in the closet. */
function knownItems(): readonly KnownItem[] {
  const { id, name, maker, pieces, massMg, status, archived } = closet.columns
  return id.flatMap((one, row) =>
    archived[row] || !['owned', 'wished', 'lent'].includes(status[row]!)
      ? []
      : [{ id: one, name: name[row]!, maker: maker[row]!, pieces: pieces[row]!, mass_mg: massMg[row] ?? null }],
  )
}

function placeOf(place: string): { readonly seasonId: number | null; readonly tripId: number | null } {
  const [kind, id] = place.split(':')
  return { seasonId: kind === 'season' ? Number(id) : null, tripId: kind === 'trip' ? Number(id) : null }
}

/** A title that stands alone above the headings names the loadout; else the file does. */
function nameOf(source: Source, sheet: SheetCells, preview: Preview | null): string {
  const title = preview?.rows.find((row) => row.leftOut?.code === 'above-heading')
  const cells = (title ? (sheet.cells[title.row] ?? []) : []).filter((cell) => cell.trim() !== '')
  if (cells.length === 1) return cells[0]!.trim().slice(0, 100)
  return source.name.replace(/\.[a-z]{2,4}$/iu, '').slice(0, 100) || 'Brought in'
}

export const bringing = new Bringing()
