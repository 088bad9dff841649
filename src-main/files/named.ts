import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { backupFolder } from '../store/backup.ts'
import type { Raw } from '../store/handles.ts'

/** Every hash that a row or an undo step of this database names. */
const namesSql = `
  SELECT sha256 AS name FROM photo UNION SELECT thumb_sha256 FROM photo
  UNION SELECT json_extract(before, '$.sha256') FROM step_row WHERE tbl = 'photo' AND before IS NOT NULL
  UNION SELECT json_extract(before, '$.thumb_sha256') FROM step_row WHERE tbl = 'photo' AND before IS NOT NULL
  UNION SELECT json_extract(after, '$.sha256') FROM step_row WHERE tbl = 'photo' AND after IS NOT NULL
  UNION SELECT json_extract(after, '$.thumb_sha256') FROM step_row WHERE tbl = 'photo' AND after IS NOT NULL`

export const namedIn = (raw: Raw): readonly string[] =>
  raw
    .prepare<[], { name: string }>(namesSql)
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
