import type { TripRecord } from '../../../src-main/contract.ts'
import { daysTold, debriefSheet } from '../../../src-domain/trips/debrief-sheet.ts'
import { daysOf, nightsOf, readBrief } from '../../../src-domain/trips/brief.ts'
import { program } from '../../state/program.svelte.ts'

/** One trip that is out or back, and what was said of it; asked anew when touched. */
export class Debrief {
  readonly tripId: number
  record = $state.raw<TripRecord | null>(null)
  loaded = $state(false)

  readonly brief = $derived(readBrief(this.record?.brief ?? null))
  readonly sheet = $derived(debriefSheet(this.record?.packed ?? [], this.record?.lines ?? []))
  readonly days = $derived(
    daysTold({
      days: this.record ? daysOf(this.record) : null,
      legs: this.brief.legs,
      nights: this.record?.debrief?.nights ?? (this.record ? nightsOf(this.record, this.brief) : null),
    }),
  )

  constructor(tripId: number) {
    this.tripId = tripId
    void this.load()
    program.listen((heard) => {
      if (heard.touched.some(({ table }) => touching.has(table))) void this.load()
    })
  }

  async load(): Promise<void> {
    const answer = await program.ask('record.open', { tripId: this.tripId })
    this.record = answer.ok ? answer.value : null
    this.loaded = true
  }
}

const touching: ReadonlySet<string> = new Set(
  '* record packed debrief debrief_line leg_log night_log day_log burn_log trip_photo trial_question trial_answer'.split(' '),
)

const opened = new Map<number, Debrief>()
export function openDebrief(tripId: number): Debrief {
  const there = opened.get(tripId)
  if (there) return there
  let made: Debrief | undefined
  $effect.root(() => void (made = new Debrief(tripId)))
  opened.set(tripId, made!)
  return made!
}
