import { rmSync } from 'node:fs'
import Database from 'better-sqlite3'
import { Migrator } from 'kysely/migration'
import { migrations as ours } from '../../../migrations/index.ts'
import { fault, ok, type Outcome } from '../../../src-domain/figures/fault.ts'
import { complaintOf } from '../../store/backup.ts'
import { storeFault } from '../../store/faults.ts'
import { kyselyOver, type Raw } from '../../store/handles.ts'
import { setPragmas } from '../../store/pragmas.ts'
import { isJson } from '../../store/rows.ts'
import { archivedColumns, archivedTables, documentColumns, type ArchivedRow, type Column, type Manifest } from './shape.ts'

/**
 * Builds a new database file from a manifest: a store of the archive's own schema, its rows in one transaction, then the migrations that came
 * since. The store in use is not touched; what the tables refuse is a fault of the archive.
 */
export async function rebuild(file: string, manifest: Manifest): Promise<Outcome<null>> {
  const raw = new Database(file)
  try {
    setPragmas(raw)
    const built = await build(raw, manifest)
    if (!built.ok) return built
    raw.pragma('wal_checkpoint(TRUNCATE)')
    raw.pragma('journal_mode = DELETE')
  } finally {
    raw.close()
  }
  const complaint = complaintOf(file)
  return complaint === null ? ok(null) : unreadable(complaint)
}

const unreadable = (detail: string): Outcome<never> => fault('archive.unreadable', { detail: detail.slice(0, 300) })

async function build(raw: Raw, manifest: Manifest): Promise<Outcome<null>> {
  const names = Object.keys(ours).sort()
  const has = names.slice(0, manifest.migrations.length)
  if (has.length === 0 || has.some((name, i) => name !== manifest.migrations[i]))
    return unreadable('its migrations are in no order of ours')
  const begun = await migrateTo(raw, has.at(-1)!)
  if (!begun.ok) return begun
  const filled = fill(raw, manifest)
  return filled.ok ? await migrateTo(raw, names.at(-1)!) : filled
}

async function migrateTo(raw: Raw, name: string): Promise<Outcome<null>> {
  const migrator = new Migrator({ db: kyselyOver(raw), provider: { getMigrations: () => Promise.resolve({ ...ours }) } })
  const { error } = await migrator.migrateTo(name)
  if (error === undefined) return ok(null)
  const expected = storeFault(error)
  if (expected?.code === 'store.full' || expected?.code === 'store.read-only') return { ok: false, fault: expected }
  return unreadable(`migration ${name}: ${error instanceof Error ? error.message : JSON.stringify(error)}`)
}

function fill(raw: Raw, manifest: Manifest): Outcome<null> {
  const tables = archivedTables(raw)
  const foreign = Object.keys(manifest.tables).find((name) => !tables.includes(name))
  if (foreign !== undefined) return unreadable(`there is no table ${foreign}`)
  try {
    raw.exec('BEGIN')
    raw.pragma('defer_foreign_keys = ON')
    insertAll(raw, manifest, tables)
    raw.exec('COMMIT')
    return ok(null)
  } catch (error) {
    if (raw.inTransaction) raw.exec('ROLLBACK')
    return refusedBy(error)
  }
}

/** Whatever a constraint says against a row is said against the archive; a full disk is not. */
function refusedBy(error: unknown): Outcome<null> {
  const message = error instanceof Error ? error.message : JSON.stringify(error)
  if (error instanceof Misfit) return unreadable(message)
  if (error instanceof Database.SqliteError && /^SQLITE_(CONSTRAINT|MISMATCH|TOOBIG)/.test(error.code)) return unreadable(message)
  const expected = storeFault(error)
  if (expected === null) throw error
  return { ok: false, fault: expected }
}

class Misfit extends Error {}

/** uid → number of each table's rows; the rows are numbered anew, in the order in which they stand. */
type Numbers = ReadonlyMap<string, ReadonlyMap<string, number>>

function insertAll(raw: Raw, manifest: Manifest, tables: readonly string[]): void {
  const numbers: Numbers = new Map(tables.map((table) => [table, numbered(table, manifest.tables[table] ?? [])]))
  for (const table of tables) insertTable(raw, table, manifest.tables[table] ?? [], numbers)
  const file = raw.prepare('INSERT INTO file (sha256, mime, bytes) VALUES (?, ?, ?)')
  for (const { sha256, mime, bytes } of manifest.files) file.run(sha256, mime, bytes)
  for (const table of ['photo', 'trip_photo'].filter((name) => tables.includes(name))) {
    const homeless = raw.prepare<[], { n: number }>(
      `SELECT count(*) AS n FROM ${table} WHERE sha256 NOT IN (SELECT sha256 FROM file) OR thumb_sha256 NOT IN (SELECT sha256 FROM file)`,
    )
    if (homeless.get()!.n > 0) throw new Misfit('a photograph names a file that is not there')
  }
}

const uidForm = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

function numbered(table: string, rows: readonly ArchivedRow[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>()
  for (const [i, { uid }] of rows.entries()) {
    if (uid === undefined) continue
    if (typeof uid !== 'string' || !uidForm.test(uid)) throw new Misfit(`${table}: a row without a proper uid`)
    numbers.set(uid, i + 1)
  }
  return numbers
}

function insertTable(raw: Raw, table: string, rows: readonly ArchivedRow[], numbers: Numbers): void {
  const columns = archivedColumns(raw, table)
  const hasUid = columns.some(({ name }) => name === 'uid')
  const names = [...(hasUid ? ['id'] : []), ...columns.map(({ name }) => name)]
  raw.exec(`DELETE FROM "${table}"`)
  const insert = raw.prepare(
    `INSERT INTO "${table}" (${names.map((name) => `"${name}"`).join(', ')}) VALUES (${names.map(() => '?').join(', ')})`,
  )
  for (const [i, row] of rows.entries()) {
    if (Object.keys(row).length !== columns.length) throw new Misfit(`${table}: row ${i + 1} has other fields than its table`)
    insert.run(...(hasUid ? [i + 1] : []), ...columns.map((column) => valueOf(table, row, column, numbers)))
  }
}

function valueOf(table: string, row: ArchivedRow, { name, as, refers }: Column, numbers: Numbers): string | number | null {
  const value = row[as]
  if (value === undefined) throw new Misfit(`${table}: a row without ${as}`)
  if (value === null) return null
  if (documentColumns.has(`${table}.${name}`) && (typeof value !== 'string' || !isJson(value)))
    throw new Misfit(`${table}.${name}: no JSON`)
  if (refers === null) return value
  const number = typeof value === 'string' ? numbers.get(refers)?.get(value) : undefined
  if (number === undefined) throw new Misfit(`${table}.${as} names no row of ${refers}`)
  return number
}

/** Drops a file that was built, with what SQLite keeps beside it. */
export function dropBuilt(file: string): void {
  for (const ending of ['', '-wal', '-shm', '-journal']) rmSync(file + ending, { force: true })
}
