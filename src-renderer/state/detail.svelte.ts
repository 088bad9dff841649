import type { ItemDetail } from '../../src-main/contract.ts'
import { program } from './program.svelte.ts'

/** The one item the drawer shows, whole; asked again whenever something of it may have changed. */
class Detail {
  item = $state.raw<ItemDetail | null>(null)
  #id: number | null = null

  constructor() {
    program.listen(() => void this.#ask())
  }

  async open(id: number): Promise<void> {
    this.#id = id
    await this.#ask()
  }

  close(): void {
    this.#id = null
    this.item = null
  }

  async #ask(): Promise<void> {
    const id = this.#id
    if (id === null) return
    const answer = await program.ask('item.open', { id })
    if (this.#id !== id) return // another was opened meanwhile
    this.item = answer.ok ? answer.value : null
  }
}

export const detail = new Detail()
