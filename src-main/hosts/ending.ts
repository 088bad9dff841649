/** How long a host outlives its last window: a reload is not the end. */
const afterLastMs = 15_000
/** How long it waits for a window that was promised: its ticket is dead by then. */
const forFirstMs = 75_000

export interface Ending {
  /** A ticket went out: a window is on its way. */
  readonly expect: () => void
  /** So many windows listen now. */
  readonly windows: (open: number) => void
  /** No window could be opened: wait for the person, however long. */
  readonly keep: () => void
}

/** Ends the host when nobody looks any more. `scale` shortens the waits in tests. */
export function makeEnding(end: () => void, scale = 1): Ending {
  let timer: NodeJS.Timeout | undefined
  let dueMs = 0
  const endIn = (ms: number): void => {
    // A window on its way keeps the longer wait, whatever closes meanwhile.
    dueMs = Math.max(dueMs, Date.now() + ms * scale)
    clearTimeout(timer)
    timer = setTimeout(end, dueMs - Date.now())
  }
  return {
    expect: () => endIn(forFirstMs),
    windows(open) {
      clearTimeout(timer)
      dueMs = 0
      if (open === 0) endIn(afterLastMs)
    },
    keep: () => clearTimeout(timer),
  }
}
