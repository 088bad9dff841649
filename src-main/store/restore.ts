import { copyFileSync, existsSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { migrations } from '../../migrations/index.ts'
import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { backupFolder, complaintOf, listBackups, syncFolderOf, syncPath } from './backup.ts'
import { migrationsIn, restoredFile, storeFile } from './open.ts'

/** A backup that may take the store's place: listed, sound, and of a schema that this program knows. */
export function restorable(dataDir: string, name: string): Outcome<string> {
  const folder = backupFolder(dataDir)
  if (!listBackups(folder).some((row) => row.name === name)) return fault('backup.none', { name })
  const file = join(folder, name)
  const complaint = complaintOf(file)
  if (complaint !== null) return fault('store.damaged', { detail: complaint, name })
  const newer = newerThanOurs(file)
  return newer === undefined ? ok(file) : fault('store.newer', { detail: newer })
}

function newerThanOurs(file: string): string | undefined {
  const raw = new Database(file, { readonly: true, fileMustExist: true })
  try {
    return (migrationsIn(raw) ?? []).find((name) => !Object.hasOwn(migrations, name))
  } finally {
    raw.close()
  }
}

/**
 * Puts a copy of a backup in the store's place. The store must be closed. The copy is whole and synced under its waiting name before the
 * store's own file is touched; what stood there is moved aside, never overwritten, and a stop in between is finished at the next opening.
 */
export function putInPlace(dataDir: string, backup: string, at: Date): void {
  const part = `${restoredFile(dataDir)}.part`
  rmSync(part, { force: true })
  copyFileSync(backup, part)
  syncPath(part)
  renameSync(part, restoredFile(dataDir))
  syncFolderOf(part)
  moveAside(dataDir, at)
  renameSync(restoredFile(dataDir), storeFile(dataDir))
  syncFolderOf(part)
}

/**
 * The replaced file with its log, under the moment's name. A sound store has a backup of kind `restore` too; a damaged one only this.
 * The shared index goes: SQLite makes it anew from the log.
 */
function moveAside(dataDir: string, at: Date): void {
  const stamp = at.toISOString().replaceAll(/[-:.]/g, '')
  rmSync(`${storeFile(dataDir)}-shm`, { force: true })
  // The main file goes last: without its log beside it, it would read as an older state.
  for (const ending of ['-wal', '']) {
    const file = storeFile(dataDir) + ending
    if (!existsSync(file)) continue
    if (ending === '-wal' && statSync(file).size === 0) rmSync(file)
    else renameSync(file, join(dataDir, `replaced-${stamp}.sqlite${ending}`))
  }
}

/** Drops the file that a restore moved aside, once the store has opened from the backup and what it replaced is itself kept as a backup. */
export function dropAside(dataDir: string, at: Date): void {
  const stamp = at.toISOString().replaceAll(/[-:.]/g, '')
  for (const ending of ['', '-wal']) rmSync(join(dataDir, `replaced-${stamp}.sqlite${ending}`), { force: true })
}
