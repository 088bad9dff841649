import type { Raw } from './handles.ts'

/** A pragma, the value that is set and the value that must be read back. */
type Setting = readonly [name: string, value: string, expected: string | number]

const wal: Setting = ['journal_mode', 'WAL', 'wal']
/** FULL must be set after WAL and on every connection: the build's own default for WAL files is NORMAL, which may lose the last commits. */
const settings: readonly Setting[] = [
  ['synchronous', 'FULL', 2],
  ['foreign_keys', 'ON', 1],
  ['busy_timeout', '3000', 3000],
  // A statement with triggers keeps a journal of its own; in a temporary file it costs more than the statement (20,000 rows: 7.1 s against 2.1 s).
  ['temp_store', 'MEMORY', 2],
  // REPLACE deletes silently unless triggers recurse; the undo triggers must see every delete.
  ['recursive_triggers', 'ON', 1],
]
const forMac: Setting = ['fullfsync', 'ON', 1]

/** Sets what every connection must hold and reads each back; a pragma that did not take is an error. */
export function setPragmas(raw: Raw, platform: NodeJS.Platform = process.platform): void {
  const wanted = [wal, ...settings, ...(platform === 'darwin' ? [forMac] : [])]
  for (const [name, value, expected] of wanted) {
    raw.pragma(`${name} = ${value}`)
    const held = raw.pragma(name, { simple: true })
    if (held !== expected) throw new Error(`pragma ${name} is ${String(held)}, wanted ${String(expected)}`)
  }
}
