import type { DoorList } from '../../../src-main/contract.ts'
import { doorNeeds, leaving, type DoorNeed } from '../../../src-domain/checks/door-needs.ts'
import { given, type Figure } from '../../../src-domain/figures/figure.ts'
import { countRows, doorSheet, type DoorCount, type DoorRow, type DoorSheet } from '../../../src-domain/loadout/door.ts'
import { hang, type Hook } from '../../../src-domain/loadout/hook.ts'
import { totalsOf, type Totals } from '../../../src-domain/loadout/totals.ts'
import { unknownScale, weigh } from '../../../src-domain/closet/weighing.ts'
import type { DoorState } from '../../../src-domain/trips/record.ts'
import { openLoadout, type OpenLoadout } from '../../state/loadout.svelte.ts'
import { program } from '../../state/program.svelte.ts'
import { benchScaleOf, scales } from '../../state/scales.svelte.ts'

const nothing: DoorList = { readingMg: null, scaleId: null, withLast: false, lines: [], missedBefore: [] }

/** The door list of one loadout: what was ticked, what is still open, and what the hook says to it. */
export class Door {
  readonly open: OpenLoadout
  list = $state.raw<DoorList>(nothing)
  loaded = $state(false)

  readonly sheet: DoorSheet | null = $derived.by(() =>
    this.open.loadout ? doorSheet(this.open.loadout, this.list.lines, this.list.missedBefore) : null,
  )
  readonly count: DoorCount = $derived(countRows(this.sheet?.rows ?? []))
  /** What leaves: without what is not there and what was called missing. */
  readonly totals: Totals | null = $derived.by(() =>
    this.open.loadout && this.sheet ? totalsOf(leaving(this.open.loadout, this.sheet.rows)) : null,
  )
  readonly needs: readonly DoorNeed[] = $derived.by(() => {
    const { loadout, around } = this.open
    const today = program.state?.today ?? '2000-01-01'
    return loadout && this.sheet ? doorNeeds({ loadout, brief: around.brief, trip: around.trip, walker: around.walker, today }, this.sheet.rows) : [] // prettier-ignore
  })
  readonly scale = $derived(scales.all.find((one) => one.id === this.list.scaleId) ?? null)
  readonly hook: Hook | null = $derived.by(() => {
    const reading = this.reading
    return this.sheet && reading ? hang(this.sheet.rows, reading, this.list.withLast) : null
  })
  readonly reading: Figure<'g'> | null = $derived.by(() => {
    const { readingMg } = this.list
    const weighedOn = program.state?.today ?? '2000-01-01'
    const scale = this.scale === null ? unknownScale : benchScaleOf(this.scale)
    const reading = { readingsMg: [readingMg ?? 0], tareMg: 0, tareKind: 'none' as const, pieces: 1, weighedOn }
    const found = readingMg === null ? null : weigh(reading, scale, 'hook')
    if (!found?.ok) return null
    const shares = { 'weighing:hook': found.value.uOwnMg / 1000, [`scale:${scale.uid}:gain`]: found.value.uGainMg / 1000 }
    return given(found.value.netMg / 1000, 'g', 'measured', shares, `on the hook of ${scale.name}`)
  })

  constructor(loadoutId: number) {
    this.open = openLoadout(loadoutId)
    void this.load()
    if (!scales.loaded) void scales.load()
    program.listen((heard) => {
      if (heard.touched.some(({ table }) => touching.has(table))) void this.load()
    })
  }

  async load(): Promise<void> {
    const answer = await program.ask('door.open', { loadoutId: this.open.id })
    if (answer.ok) this.list = answer.value
    this.loaded = true
  }

  /** Shows the tick at once; a refused one is taken back. */
  async mark(rows: readonly DoorRow[], state: DoorState): Promise<boolean> {
    const before = this.list
    const lineIds = rows.flatMap(({ line }) => (line === null ? [] : [line.id]))
    const own = rows.flatMap(({ ownId }) => (ownId === null ? [] : [ownId]))
    this.list = { ...before, lines: marked(before, lineIds, own, state) }
    const answers = [
      ...(lineIds.length > 0 ? [await program.change('door.tick', { loadoutId: this.open.id, lineIds, state })] : []),
      ...(await Promise.all(own.map((id) => program.change('door.own', { id, state })))),
    ]
    const fine = answers.every(({ ok }) => ok)
    if (!fine) this.list = before
    return fine
  }
}

const touching: ReadonlySet<string> = new Set(['*', 'door', 'door_line', 'line', 'packed', 'debrief_line', 'record'])

function marked({ lines }: DoorList, lineIds: readonly number[], own: readonly number[], state: DoorState): DoorList['lines'] {
  const known = new Set(lines.map(({ lineId }) => lineId))
  const fresh = lineIds
    .filter((id) => !known.has(id))
    .map((lineId, at) => ({ id: -1 - at, lineId, name: '', state, wasMissing: state === 'missing', last: null, note: '' }))
  const hit = (one: DoorList['lines'][number]) => (one.lineId === null ? own.includes(one.id) : lineIds.includes(one.lineId))
  return [...lines.map((one) => (hit(one) ? { ...one, state } : one)), ...fresh]
}

const opened = new Map<number, Door>()
/** The one list of a loadout; it outlives the room, so that coming back shows it at once. */
export function openDoor(loadoutId: number): Door {
  const there = opened.get(loadoutId)
  if (there) return there
  let made: Door | undefined
  $effect.root(() => void (made = new Door(loadoutId)))
  opened.set(loadoutId, made!)
  return made!
}
