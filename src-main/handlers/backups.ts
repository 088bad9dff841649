import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { backupFolder, keepBackup, listBackups } from '../store/backup.ts'
import { dropAside, putInPlace, restorable } from '../store/restore.ts'
import type { Running } from '../running.ts'
import type { Answered, HandlersOf } from './kinds.ts'

export const backupHandlers: HandlersOf<'backup'> = {
  'backup.list': ({ options }) => Promise.resolve(ok(listBackups(backupFolder(options.dataDir)))),

  'backup.now': ({ options, store }) => {
    const open = store()
    if (!open.ok) return Promise.resolve(open)
    return Promise.resolve(ok(keepBackup(open.value.readRaw, backupFolder(options.dataDir), 'hand', options.now())))
  },

  'backup.restore': (running, { name }) => running.alone(() => restore(running, name)),
}

/** The store as it is is kept as a backup first, where it can be read at all; then the chosen one takes its place. */
async function restore(running: Running, name: string): Promise<Answered<null>> {
  const { dataDir, now } = running.options
  const file = restorable(dataDir, name)
  if (!file.ok) return file
  const at = now()
  const kept = keepPresent(running)
  const opened = await running.reopen(() => {
    putInPlace(dataDir, file.value, at)
    return Promise.resolve()
  })
  if (!opened.ok) return opened
  if (kept.ok) dropAside(dataDir, at)
  return { ok: true, value: null, told: running.tellAll() }
}

function keepPresent({ store, options }: Running): Outcome<null> {
  const open = store()
  if (!open.ok) return open
  keepBackup(open.value.readRaw, backupFolder(options.dataDir), 'restore', options.now())
  return ok(null)
}
