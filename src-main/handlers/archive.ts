import { fault, type Outcome } from '../../src-domain/figures/fault.ts'
import type { ArchiveLook } from '../answers.ts'
import { rm } from 'node:fs/promises'
import { inPath } from '../files/boxes.ts'
import { lookAt, prepareTake, type Prepared } from '../files/archive/take.ts'
import { writeArchive } from '../files/archive/write.ts'
import type { Running } from '../running.ts'
import { backupFolder, keepBackup } from '../store/backup.ts'
import { dropAside, putInPlace } from '../store/restore.ts'
import type { Answered, HandlersOf } from './kinds.ts'

/** Everything in one file, out and in. */
export const archiveHandlers: HandlersOf<'archive'> = {
  'archive.write': async ({ options, store }) => {
    const open = store()
    if (!open.ok) return open
    return await writeArchive({ dataDir: options.dataDir, storeFile: open.value.file, program: options.version, now: options.now() })
  },

  'archive.look': async ({ options: { dataDir } }, { token }) => {
    const path = inPath(dataDir, token)
    return path === null ? goneFromInbox(token) : await lookAt(path)
  },

  'archive.take': async (running, { token }) => {
    const { dataDir } = running.options
    const path = inPath(dataDir, token)
    if (path === null) return goneFromInbox(token)
    const prepared = await prepareTake(dataDir, path)
    if (!prepared.ok) return prepared
    const taken = await running.alone(() => replace(running, prepared.value))
    prepared.value.drop()
    if (taken.ok) await rm(path, { force: true })
    return taken
  },
}

const goneFromInbox = (token: string): Outcome<never> => fault('row.gone', { table: 'in', key: token })

/** The store as it is is kept as a backup; then the new database takes its place, whole, by a rename. It has no undo steps. */
async function replace(running: Running, { database, look }: Prepared): Promise<Answered<ArchiveLook>> {
  const { dataDir, now } = running.options
  const open = running.store()
  if (!open.ok) return open
  const at = now()
  keepBackup(open.value.readRaw, backupFolder(dataDir), 'restore', at)
  const opened = await running.reopen(() => {
    putInPlace(dataDir, database, at)
    return Promise.resolve()
  })
  if (!opened.ok) return opened
  dropAside(dataDir, at)
  return { ok: true, value: look, told: running.tellAll() }
}
