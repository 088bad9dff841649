import { benchQueue, type QueueGroup, type QueueItem } from '../../../src-domain/closet/bench-queue.ts'
import { parseMass } from '../../../src-domain/closet/quantity.ts'
import { weigh, type TareKind } from '../../../src-domain/closet/weighing.ts'
import { closet } from '../../state/closet.svelte.ts'
import { nowHere, yearBefore } from '../../state/clock.ts'
import { hidScale } from '../../state/hid.svelte.ts'
import { kit } from '../../state/kit.svelte.ts'
import { program } from '../../state/program.svelte.ts'
import { scales } from '../../state/scales.svelte.ts'
import { massUnit } from '../../state/units.svelte.ts'

export interface Tare {
  readonly kind: TareKind
  readonly massMg: number
  /** The same bowl or sack for the things that follow. */
  readonly stays: boolean
}
export const noTare: Tare = { kind: 'none', massMg: 0, stays: false }

export interface Marks {
  readonly damp: boolean
  readonly dirty: boolean
  readonly incomplete: boolean
}
const noMarks: Marks = { damp: false, dirty: false, incomplete: false }

/** What the closet knows of the item on the plate. */
export interface OnPlate {
  readonly id: number
  readonly uid: string
  readonly name: string
  readonly pieces: number
  readonly isContainer: boolean
  readonly row: number
}

export const queueItemAt = (row: number): QueueItem => {
  const c = closet.columns
  return {
    id: c.id[row]!,
    uid: c.uid[row]!,
    name: c.name[row]!,
    status: c.status[row]!,
    archived: c.archived[row]!,
    pieces: c.pieces[row]!,
    massMg: c.massMg[row] ?? null,
    massFrom: c.massFrom[row]!,
    uOwnMg: c.uOwnMg[row]!,
    uGainMg: c.uGainMg[row]!,
    weighingUid: c.weighingUid[row] ?? null,
    scaleUid: c.scaleUid[row] ?? null,
    weighedOn: c.weighedOn[row] ?? null,
    claimedMg: c.claimedMg[row] ?? null,
    claimedBy: c.claimedBy[row]!,
  }
}

/**
 * The bench: whose turn it is, what stands on the plate, and what that would be as a weighing. Nothing is kept until it is said.
 * A typed reading goes before what a USB scale says, until it is cleared or kept.
 */
class Bench {
  currentId = $state<number | null>(null)
  /** Asked for by name (from the closet, a search, the drawer): stands before the queue. */
  askedId = $state<number | null>(null)
  typed = $state('')
  /** Repeats of this weighing taken before the one now on the plate. */
  repeats = $state.raw<readonly number[]>([])
  #repeatedByUsb = $state(false)
  tare = $state.raw<Tare>(noTare)
  /** null: as many as are owned. */
  piecesTyped = $state<number | null>(null)
  marks = $state.raw<Marks>(noMarks)
  /** A container with something in it: what is kept is its contents. */
  filled = $state(false)
  busy = $state(false)

  /** Empty until closet and loadouts are there: the queue must not turn under a hand that already types. */
  readonly groups: readonly QueueGroup[] = $derived.by(() => {
    void closet.version
    if (!closet.loaded || !kit.loaded) return []
    const items = closet.columns.id.map((_, row) => queueItemAt(row))
    return benchQueue(items, kit.planned, yearBefore(program.state?.today ?? nowHere().day))
  })
  readonly order: readonly number[] = $derived.by(() => {
    const queued = this.groups.flatMap((group) => group.entries.map((entry) => entry.id))
    return this.askedId === null ? queued : [this.askedId, ...queued.filter((id) => id !== this.askedId)]
  })
  /** Whose turn it is. A queue that changes meanwhile does not change it: a reading never slips to another thing. */
  readonly item: OnPlate | null = $derived.by(() => {
    void closet.version
    const row = this.currentId === null ? undefined : closet.rowOf(this.currentId)
    if (row === undefined) return null
    const c = closet.columns
    return { id: c.id[row]!, uid: c.uid[row]!, name: c.name[row]!, pieces: c.pieces[row]!, isContainer: c.isContainer[row]!, row }
  })

  readonly read = $derived(this.typed.trim() === '' ? null : parseMass(this.typed, { unit: massUnit() }))
  /** What lies on the plate now, as far as it may be kept. */
  readonly presentMg: number | null = $derived(this.read ? (this.read.ok ? this.read.value.massMg : null) : hidScale.steadiness.steadyMg)
  readonly readings: readonly number[] = $derived(this.presentMg === null ? this.repeats : [...this.repeats, this.presentMg])
  readonly pieces = $derived(this.piecesTyped ?? this.item?.pieces ?? 1)
  readonly entered: 'typed' | 'usb' = $derived(
    this.read === null && (hidScale.steadiness.steadyMg !== null || this.#repeatedByUsb) ? 'usb' : 'typed',
  )
  readonly day = $derived(program.state?.today ?? nowHere().day)

  /** This weighing worked out, or why it is none; null: no reading yet. */
  readonly weighed = $derived.by(() => {
    if (this.readings.length === 0) return null
    return weigh({ ...this.#reading(), weighedOn: this.day }, scales.bench)
  })

  #reading() {
    const { kind, massMg } = this.tare
    return { readingsMg: this.readings, tareMg: massMg, tareKind: kind, pieces: this.pieces, ...this.marks }
  }

  /** Gives the first of the queue its turn where nothing has it, or what had it is gone. */
  settle(): void {
    if (this.item === null && (this.order[0] ?? null) !== this.currentId) this.turnTo(this.order[0] ?? null)
  }

  /** Puts an item on the plate with nothing read yet. */
  turnTo(id: number | null): void {
    this.currentId = id
    this.clear()
  }

  ask(id: number): void {
    if (closet.rowOf(id) === undefined) return
    this.askedId = id
    this.turnTo(id)
  }

  clear(): void {
    this.typed = ''
    this.repeats = []
    this.#repeatedByUsb = false
    this.piecesTyped = null
    this.marks = noMarks
    this.filled = false
    if (!this.tare.stays) this.tare = noTare
  }

  /** The one `by` places on in the queue, going round. */
  neighbour(by: number, order = this.order): number | null {
    if (order.length === 0) return null
    const at = this.item ? order.indexOf(this.item.id) : -1
    return order[(at + by + order.length) % order.length] ?? null
  }

  step(by: number): void {
    const to = this.neighbour(by)
    if (to !== null) this.turnTo(to)
  }

  /** Takes the reading on the plate as one of several of this weighing. */
  again(): boolean {
    if (this.presentMg === null) return false
    this.repeats = this.readings
    if (this.typed === '') {
      this.#repeatedByUsb = true
      hidScale.take()
    }
    this.typed = ''
    return true
  }

  dropRepeat(at: number): void {
    this.repeats = this.repeats.filter((_, one) => one !== at)
  }

  /** Keeps this weighing and turns to the next of the queue as it stood. */
  async keep(): Promise<boolean> {
    const item = this.item
    if (!item || this.busy || this.weighed?.ok !== true) return false
    this.busy = true
    const next = this.#next(item.id)
    const { day, minute } = nowHere()
    const answer = await program.change('item.weigh', {
      itemId: item.id,
      scaleId: scales.current?.id ?? null,
      weighedOn: day,
      weighedMinute: minute,
      ...this.#reading(),
      readingsMg: [...this.readings],
      entered: this.entered,
    })
    this.busy = false
    if (!answer.ok) return false
    if (this.entered === 'usb') hidScale.take()
    if (this.askedId === item.id) this.askedId = null
    this.turnTo(next)
    return true
  }

  /** Turns to the next without a weighing: its contents were kept. */
  next(): void {
    if (this.item) this.turnTo(this.#next(this.item.id))
  }

  /** After the last of the queue the first again; null where this was the only one. */
  #next(id: number): number | null {
    const others = this.order.filter((one) => one !== id)
    const at = this.order.indexOf(id)
    return others[at < 0 ? 0 : at % Math.max(1, others.length)] ?? null
  }
}

export const bench = new Bench()
