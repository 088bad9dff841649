export const rooms = ['closet', 'scale', 'trips', 'compare', 'refit', 'letgo', 'walker', 'settings', 'bring-in', 'print'] as const
export type RoomName = (typeof rooms)[number]

const isRoom = (name: string): name is RoomName => (rooms as readonly string[]).includes(name)

/** Where the window stands: a room and the ids behind it, kept in the address so that Back and a reload return there. */
class Route {
  room = $state<RoomName>('closet')
  parts = $state.raw<readonly string[]>([])
  /** Rooms with unsaved or half-done work may hold the window: they answer false to stay. */
  leaving: (() => boolean) | null = null

  start(): void {
    this.#read()
    addEventListener('hashchange', () => this.#read())
  }

  go(room: RoomName, ...parts: readonly (string | number)[]): void {
    if (this.leaving && !this.leaving()) return
    const hash = `#/${[room, ...parts].join('/')}`
    if (hash !== location.hash) location.hash = hash
    else this.#read()
  }

  #read(): void {
    const [room = 'closet', ...parts] = location.hash.replace(/^#\/?/, '').split('/').filter(Boolean)
    this.room = isRoom(room) ? room : 'closet'
    this.parts = parts
  }
}

export const route = new Route()
