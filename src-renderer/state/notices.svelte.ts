export interface Notice {
  readonly text: string
  readonly kind: 'said' | 'fault'
  readonly key: number
}

const shownMs = 6000

/** What the program says in passing: shown at the foot of the sheet and spoken by the live region. Faults stay until the next word. */
class Notices {
  now = $state.raw<Notice | null>(null)
  #key = 0
  #timer: ReturnType<typeof setTimeout> | undefined

  say(text: string): void {
    this.#show({ text, kind: 'said', key: ++this.#key })
    this.#timer = setTimeout(() => this.clear(), shownMs)
  }

  fault(text: string): void {
    this.#show({ text, kind: 'fault', key: ++this.#key })
  }

  clear(): void {
    this.now = null
  }

  #show(notice: Notice): void {
    clearTimeout(this.#timer)
    this.now = notice
  }
}

export const notices = new Notices()
