import { settings } from '../state/settings.svelte.ts'

export type KeyMap = Readonly<Record<string, (event: KeyboardEvent) => void>>

/** `n`, `ArrowDown`, `Ctrl+z`, `Shift+Ctrl+z`, `Shift+w`; a printable character that needs Shift to be typed (`?`) stands for itself. */
export function keyName(event: KeyboardEvent): string {
  const letter = event.key.length === 1 ? event.key.toLowerCase() : event.key
  const shifted = event.shiftKey && (event.key.length > 1 || /[a-z]/i.test(event.key))
  return `${shifted ? 'Shift+' : ''}${event.ctrlKey || event.metaKey ? 'Ctrl+' : ''}${event.altKey ? 'Alt+' : ''}${letter}`
}

const writes = 'input:not([type=checkbox]):not([type=radio]):not([type=button]), textarea, select, [contenteditable]'

export const inField = (target: EventTarget | null): boolean => target instanceof Element && target.closest(writes) !== null
const inDialog = (target: EventTarget | null): boolean => target instanceof Element && target.closest('dialog, [role=menu]') !== null
const isLetter = (name: string): boolean => /^(Shift\+)?[^A-Z+\s]$/.test(name)

/**
 * Keys of a room, from the window. Letters act only when no field has the focus, and can be switched off; keys with Ctrl or Alt act
 * everywhere but where a dialog is open. Use as `$effect(() => listenKeys(map))`.
 */
export function listenKeys(map: KeyMap): () => void {
  const listener = (event: KeyboardEvent) => {
    const name = keyName(event)
    const act = map[name]
    if (!act || event.defaultPrevented || event.isComposing) return
    if (name === 'Escape' && document.querySelector(':popover-open')) return // the browser closes the working
    if (document.querySelector('dialog[open]') || inDialog(event.target)) return
    if (inField(event.target) && !/^Alt\+|Ctrl\+Enter$/.test(name)) return // undo, select all and paste belong to the field
    if (isLetter(name) && !settings.letterKeys && name !== '?' && name !== '/') return
    event.preventDefault()
    act(event)
  }
  addEventListener('keydown', listener)
  return () => removeEventListener('keydown', listener)
}
