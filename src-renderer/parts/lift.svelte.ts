import { lanes, type Lane } from '../../src-domain/closet/vocabulary.ts'

/** What is lifted: items from the shelf, or lines already in a lane. */
export interface Lifted {
  readonly from: 'shelf' | 'lane'
  readonly ids: readonly number[]
  readonly label: string
  /** Where it would land if dropped at once. */
  readonly usual: Lane
}

interface Wiring {
  /** What lies under the pointer or has the keys; null: nothing to lift there. `alone`: without the rest of its set. */
  readonly liftAt: (element: Element, alone: boolean) => Lifted | null
  readonly drop: (lifted: Lifted, lane: Lane) => void
  readonly say: (text: string) => void
}

const startPx = 5
const holdMs = 200
const edgePx = 40

/**
 * Lifting and dropping by mouse, touch and keys. Mouse: after 5 px. Touch: after a hold of 200 ms; movement before that scrolls.
 * The pointer is captured by the container, since a row of a virtual list may leave the page while it is carried.
 */
export class Lift {
  now = $state.raw<Lifted | null>(null)
  over = $state<Lane | null>(null)
  byKeys = $state(false)
  x = $state(0)
  y = $state(0)
  readonly #wiring: Wiring
  #container: HTMLElement | null = null
  #pending: {
    readonly id: number
    readonly x: number
    readonly y: number
    readonly lifted: Lifted
    timer: ReturnType<typeof setTimeout> | null
  } | null = null
  #scroll = 0

  constructor(wiring: Wiring) {
    this.#wiring = wiring
  }

  /** Attach to the element around shelf and lanes: `{@attach lift.around}`. */
  readonly around = (container: HTMLElement): (() => void) => {
    this.#container = container
    const options = { passive: false } as const
    const listeners: readonly [string, EventListener, AddEventListenerOptions?][] = [
      ['pointerdown', (event) => this.#down(event as PointerEvent)],
      ['pointermove', (event) => this.#move(event as PointerEvent)],
      ['pointerup', (event) => this.#up(event as PointerEvent)],
      ['pointercancel', () => this.putBack()],
      // While something is carried the page must not scroll under the finger; before that it must.
      ['touchmove', (event) => this.now && !this.byKeys && event.preventDefault(), options],
      ['contextmenu', (event) => (this.now || this.#pending?.timer) && event.preventDefault()],
    ]
    for (const [name, listener, how] of listeners) container.addEventListener(name, listener, how)
    return () => {
      for (const [name, listener, how] of listeners) container.removeEventListener(name, listener, how)
      this.putBack()
    }
  }

  /** `M`: lifts what has the keys. */
  liftByKeys(element: Element, alone = false): void {
    const lifted = this.#wiring.liftAt(element, alone)
    if (!lifted) return
    this.byKeys = true
    this.#begin(lifted, lifted.usual)
    this.#wiring.say(`${lifted.label} lifted. Arrows choose the lane, Enter drops, Esc puts back. ${laneName(lifted.usual)}.`)
  }

  /** Answers whether the key was for the lifted thing. */
  key(event: KeyboardEvent): boolean {
    if (!this.now) return false
    const at = lanes.indexOf(this.over ?? this.now.usual)
    if (event.key === 'ArrowRight' || event.key === 'ArrowDown') this.#choose(Math.min(lanes.length - 1, at + 1))
    else if (event.key === 'ArrowLeft' || event.key === 'ArrowUp') this.#choose(Math.max(0, at - 1))
    else if (event.key === 'Enter' || event.key === ' ') this.dropHere()
    else if (event.key === 'Escape') this.putBack()
    else return false
    return true
  }

  dropHere(): void {
    const { now, over } = this
    this.#end()
    if (!now || !over) return
    this.#wiring.drop(now, over)
    this.#wiring.say(`${now.label} dropped in ${laneName(over)}.`)
  }

  putBack(): void {
    if (this.now) this.#wiring.say(`${this.now.label} put back.`)
    this.#end()
  }

  #choose(at: number): void {
    this.over = lanes[at]!
    this.#wiring.say(laneName(this.over))
  }

  #begin(lifted: Lifted, over: Lane | null): void {
    this.now = lifted
    this.over = over
  }

  #end(): void {
    if (this.#pending?.timer) clearTimeout(this.#pending.timer)
    if (this.#pending && this.#container?.hasPointerCapture(this.#pending.id)) this.#container.releasePointerCapture(this.#pending.id)
    cancelAnimationFrame(this.#scroll)
    this.#scroll = 0
    this.#pending = null
    this.now = null
    this.over = null
    this.byKeys = false
  }

  #down(event: PointerEvent): void {
    if (
      event.button !== 0 ||
      this.now ||
      !(event.target instanceof Element) ||
      event.target.closest('button:not([data-lift]), input, select, a, textarea, [popover]')
    )
      return
    const row = event.target.closest('[data-lift]')
    const lifted = row && this.#wiring.liftAt(row, event.altKey)
    if (!lifted) return
    this.#pending = { id: event.pointerId, x: event.clientX, y: event.clientY, lifted, timer: null }
    if (event.pointerType === 'touch') this.#pending.timer = setTimeout(() => this.#carry(), holdMs)
  }

  #carry(): void {
    if (!this.#pending) return
    this.#pending.timer = null
    this.x = this.#pending.x
    this.y = this.#pending.y
    this.#begin(this.#pending.lifted, null)
    this.#container?.setPointerCapture(this.#pending.id)
    if ('vibrate' in navigator) navigator.vibrate(10)
  }

  #move(event: PointerEvent): void {
    const pending = this.#pending
    if (pending?.id !== event.pointerId) return
    const far = Math.hypot(event.clientX - pending.x, event.clientY - pending.y) >= startPx
    if (!this.now) {
      if (!far) return
      if (event.pointerType === 'touch') {
        this.#end()
        return
      } // moved before the hold: it is a scroll
      this.#carry()
    }
    this.x = event.clientX
    this.y = event.clientY
    this.over = this.#laneAt(event.clientX, event.clientY)
    this.#scrollAtEdge()
  }

  #up(event: PointerEvent): void {
    if (this.#pending?.id !== event.pointerId) return
    if (!this.now) {
      this.#end()
      return
    }
    this.over = this.#laneAt(event.clientX, event.clientY)
    if (this.over) this.dropHere()
    else this.putBack()
  }

  #laneAt(x: number, y: number): Lane | null {
    const lane = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-lane]')?.dataset['lane']
    return lanes.find((one) => one === lane) ?? null
  }

  /** Near the upper or lower edge of a scroller the lanes come to the carried thing. */
  #scrollAtEdge(): void {
    if (this.#scroll !== 0) return
    const step = () => {
      this.#scroll = 0
      const scroller = document.elementFromPoint(this.x, this.y)?.closest<HTMLElement>('[data-scrolls]')
      if (!this.now || this.byKeys || !scroller) return
      const box = scroller.getBoundingClientRect()
      const by = this.y < box.top + edgePx ? -10 : this.y > box.bottom - edgePx ? 10 : 0
      if (by === 0) return
      scroller.scrollTop += by
      this.over = this.#laneAt(this.x, this.y)
      this.#scroll = requestAnimationFrame(step)
    }
    this.#scroll = requestAnimationFrame(step)
  }
}

const names: Readonly<Record<Lane, string>> = { on_me: 'On me', in_pack: 'In the pack', used_up: 'Used up' }
const laneName = (lane: Lane): string => names[lane]
