import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import type { BackupRow } from '../answers.ts'
import type { Raw } from './handles.ts'

/**
 * Copies of the database. Each is made by VACUUM INTO under a name that is not yet a backup's, synced, checked and only then renamed;
 * an older one goes only after that. Files (photographs) are not in it: they lie beside and are never changed.
 */
export type Why = BackupRow['why']

/** How many of each kind are kept: ten days' worth, ten by hand, and three each of those made before a migration and before a restore. */
const keptOf: Readonly<Record<Why, number>> = { daily: 10, hand: 10, migration: 3, restore: 3 }
const pattern = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)(\d{3})Z-(daily|hand|migration|restore)\.sqlite$/

export const backupFolder = (dataDir: string): string => join(dataDir, 'backups')

/** Keeps a verified copy of the database behind `source` and lets older ones of its kind go. */
export function keepBackup(source: Raw, folder: string, why: Why, at: Date): BackupRow {
  mkdirSync(folder, { recursive: true })
  const name = freeName(folder, why, at)
  const part = join(folder, `${name}.part`)
  try {
    rmSync(part, { force: true })
    copyInto(source, part)
    syncPath(part)
    const complaint = complaintOf(part, false)
    if (complaint !== null) throw new Error(`the copy fails its check: ${complaint}`)
    renameSync(part, join(folder, name))
    syncPath(folder)
  } catch (error) {
    rmSync(part, { force: true })
    throw error
  }
  dropOlder(folder, why, name)
  return rowOf(folder, name, true)
}

/** Through a connection of its own: VACUUM cannot run on one that a question holds in a transaction. */
function copyInto(source: Raw, part: string): void {
  const own = new Database(source.name, { readonly: true, fileMustExist: true })
  try {
    own.prepare('VACUUM INTO ?').run(part)
  } finally {
    own.close()
  }
}

/** A name that sorts by time; two in the same millisecond get the next free one. */
function freeName(folder: string, why: Why, at: Date): string {
  const stamp = (ms: number) => new Date(ms).toISOString().replaceAll(/[-:.]/g, '')
  let ms = at.getTime()
  while (existsSync(join(folder, `${stamp(ms)}-${why}.sqlite`))) ms += 1
  return `${stamp(ms)}-${why}.sqlite`
}

/** Every backup, newest first, each with whether its check passes now. */
export function listBackups(folder: string): readonly BackupRow[] {
  return namesIn(folder).map((name) => rowOf(folder, name, isSound(join(folder, name))))
}

/** The newest backup that passes its check. */
export function newestSound(folder: string): string | null {
  return namesIn(folder).find((name) => isSound(join(folder, name))) ?? null
}

/** When the newest backup was made, by its name; null where there is none. */
export function newestAt(folder: string): string | null {
  const name = namesIn(folder)[0]
  return name === undefined ? null : timeOf(name)
}

/** When the backups of a kind were made, newest first. */
export const timesOf = (folder: string, why: Why): readonly string[] =>
  namesIn(folder)
    .filter((name) => whyOf(name) === why)
    .map(timeOf)

function namesIn(folder: string): readonly string[] {
  if (!existsSync(folder)) return []
  return readdirSync(folder)
    .filter((name) => pattern.test(name))
    .sort()
    .reverse()
}

const whyOf = (name: string): Why => pattern.exec(name)![8] as Why
function timeOf(name: string): string {
  const [, year, month, day, hour, minute, second, ms] = pattern.exec(name)!
  return `${year}-${month}-${day}T${hour}:${minute}:${second}.${ms}Z`
}

function rowOf(folder: string, name: string, sound: boolean): BackupRow {
  return { name, at: timeOf(name), bytes: statSync(join(folder, name)).size, why: whyOf(name), sound }
}

/** The copy just made stays whatever its date says: the clock may have been set back. */
function dropOlder(folder: string, why: Why, justMade: string): void {
  const others = namesIn(folder).filter((name) => whyOf(name) === why && name !== justMade)
  for (const name of others.slice(keptOf[why] - 1)) rmSync(join(folder, name), { force: true })
}

const looked = new Map<string, boolean>()

/** A backup's check is done once for a file of this name, size and time. */
function isSound(file: string): boolean {
  const { size, mtimeMs } = statSync(file)
  const key = `${file} ${size} ${mtimeMs}`
  const known = looked.get(key)
  if (known !== undefined) return known
  const sound = complaintOf(file) === null
  looked.set(key, sound)
  return sound
}

/**
 * What `PRAGMA integrity_check` says of a database file; null when all is well. Nothing is written either way, but SQLite reads no CHECK
 * constraints off a file that it opens for reading only: a copy just made is looked at with the right to write.
 */
export function complaintOf(file: string, readonly = true): string | null {
  let raw: Raw | undefined
  try {
    raw = new Database(file, { readonly, fileMustExist: true })
    const answer = raw.pragma('integrity_check(3)', { simple: true })
    return answer === 'ok' ? null : String(answer)
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  } finally {
    raw?.close()
  }
}

/** Brings a file or a folder to the disk. Windows cannot sync a folder, and needs no such thing after a rename. */
export function syncPath(path: string): void {
  if (process.platform === 'win32' && statSync(path).isDirectory()) return
  const handle = openSync(path, 'r')
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}

export const syncFolderOf = (file: string): void => syncPath(dirname(file))
