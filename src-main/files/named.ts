import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { backupFolder } from '../store/backup.ts'
import type { Raw } from '../store/handles.ts'

const hasTable = (raw: Raw, table: string): boolean =>
  raw.prepare(`SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = ?`).get(table) !== undefined

/** Every hash that a row or an undo step of this database names; a backup may be of a time before trips had photographs. */
function namesSql(raw: Raw): string {
  const tables = ['photo', 'trip_photo'].filter((table) => hasTable(raw, table))
  const parts = tables.flatMap((table) => [
    ...['sha256', 'thumb_sha256'].map((column) => `SELECT ${column} AS name FROM ${table}`),
    ...['sha256', 'thumb_sha256'].flatMap((column) =>
      ['before', 'after'].map(
        (when) => `SELECT json_extract(${when}, '$.${column}') AS name FROM step_row WHERE tbl = '${table}' AND ${when} IS NOT NULL`,
      ),
    ),
  ])
  return parts.join(' UNION ')
}

export const namedIn = (raw: Raw): readonly string[] =>
  raw
    .prepare<[], { name: string }>(namesSql(raw))
    .all()
    .map(({ name }) => name)

/** What the open store and every kept backup name; null where a backup cannot be read, for then nobody knows what it needs. */
export function namedAnywhere(raw: Raw, dataDir: string): ReadonlySet<string> | null {
  const named = new Set(namedIn(raw))
  const folder = backupFolder(dataDir)
  const backups = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.sqlite')) : []
  for (const backup of backups) {
    const names = namedInFile(join(folder, backup))
    if (names === null) return null
    for (const name of names) named.add(name)
  }
  return named
}

function namedInFile(path: string): readonly string[] | null {
  let raw: Raw | undefined
  try {
    raw = new Database(path, { readonly: true, fileMustExist: true })
    return namedIn(raw)
  } catch {
    return null
  } finally {
    raw?.close()
  }
}
