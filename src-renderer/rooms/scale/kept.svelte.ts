import type { WeighingRow } from '../../../src-main/contract.ts'
import { nowHere } from '../../state/clock.ts'
import { program } from '../../state/program.svelte.ts'

/** The weighings made at the bench on this day, in the order they were kept; asked anew whenever one may have come or gone. */
class Kept {
  rows = $state.raw<readonly WeighingRow[]>([])
  #wanted = false

  constructor() {
    program.listen((heard) => {
      if (this.#wanted && heard.touched.some((one) => one.table === '*' || one.table === 'weighing' || one.table === 'item'))
        void this.load()
    })
  }

  async load(): Promise<void> {
    this.#wanted = true
    const answer = await program.ask('weighing.day', { day: nowHere().day })
    // What came with a sheet or with a new item was never on the plate: it has no minute.
    if (answer.ok) this.rows = answer.value.filter((one) => one.weighedMinute !== null)
  }
}

export const kept = new Kept()
