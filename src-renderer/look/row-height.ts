/** The height of a row as the tokens have it: taller where the pointer is coarse. */
export function rowHeight(token: '--row' | '--row-lane'): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).getPropertyValue(token)) || 32
}
