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
    // What came with a sheet was never on this plate.
    if (answer.ok) this.rows = answer.value.filter((one) => one.entered !== 'brought')
  }
}

export const kept = new Kept()
