import { existsSync, mkdirSync, renameSync, statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { Migrator, type Migration } from 'kysely/migration'
import { migrations as ours } from '../../migrations/index.ts'
import { fault, ok, type Fault, type Outcome } from '../../src-domain/figures/fault.ts'
import { backupFolder, keepBackup, newestAt, syncFolderOf } from './backup.ts'
import { storeFault } from './faults.ts'
import { kyselyOver, type Raw, type ReadDb, type WriteDb } from './handles.ts'
import { setPragmas } from './pragmas.ts'
import { forgetSteps } from './undo.ts'
import { inTransaction } from './transactions.ts'
import { installTriggers } from './undoable.ts'

/** The open database: one connection that writes, one that only reads. */
export interface Store {
  readonly file: string
  /** The writing connection, for transactions.ts and for prepared statements inside a transaction. */
  readonly raw: Raw
  readonly readRaw: Raw
  readonly write: WriteDb
  readonly read: ReadDb
  readonly close: () => void
  /** Closes without bringing the log into a file that is damaged: a reading connection that is the last to go cannot. */
  readonly leave: () => void
}

export interface Place {
  readonly dataDir: string
  readonly now: () => Date
  /** The migrations to bring the file to; tests give others. */
  readonly migrations?: Readonly<Record<string, Migration>>
}

export const storeFile = (dataDir: string): string => join(dataDir, 'tarework.sqlite')
/** A restored file that was complete when the program stopped before it took its place. */
export const restoredFile = (dataDir: string): string => join(dataDir, 'tarework.restored.sqlite')

/**
 * Opens the store, bringing it to the newest schema. Nothing is written before a read-only look has found the file sound and of a schema
 * that this program knows; a file that fails stays exactly as it was.
 */
export async function openStore(place: Place): Promise<Outcome<Store>> {
  try {
    mkdirSync(place.dataDir, { recursive: true })
    finishRestore(place.dataDir)
    const looked = look(place)
    if (!looked.ok) return looked
    return await openSound(place, looked.value)
  } catch (error) {
    const expected = storeFault(error)
    if (expected) return fault(expected.code, expected.facts)
    throw error
  }
}

function finishRestore(dataDir: string): void {
  if (existsSync(storeFile(dataDir)) || !existsSync(restoredFile(dataDir))) return
  renameSync(restoredFile(dataDir), storeFile(dataDir))
  syncFolderOf(storeFile(dataDir))
}

/** How far the file is: the names of the migrations that it has, none where it is new. */
function look({ dataDir, migrations = ours }: Place): Outcome<readonly string[]> {
  const file = storeFile(dataDir)
  if (!existsSync(file)) return ok([])
  if (statSync(file).size === 0)
    return newestAt(backupFolder(dataDir)) === null ? ok([]) : fault('store.damaged', { detail: 'the file is empty' })
  const raw = new Database(file, { readonly: true, fileMustExist: true })
  try {
    return lookInto(raw, migrations)
  } finally {
    raw.close()
  }
}

function lookInto(raw: Raw, migrations: Readonly<Record<string, Migration>>): Outcome<readonly string[]> {
  const answer = raw.pragma('quick_check(1)', { simple: true })
  if (answer !== 'ok') return fault('store.damaged', { detail: String(answer) })
  const names = migrationsIn(raw)
  if (names === null) return fault('store.damaged', { detail: 'the file is not one of this program' })
  const unknown = names.find((name) => !Object.hasOwn(migrations, name))
  return unknown === undefined ? ok(names) : fault('store.newer', { detail: unknown })
}

/** The migrations that a file has had; null where it holds tables but is none of ours. */
export function migrationsIn(raw: Raw): readonly string[] | null {
  const tables = raw.prepare<[], { name: string }>(`SELECT name FROM sqlite_master WHERE type = 'table'`).all()
  if (tables.length === 0) return []
  if (!tables.some(({ name }) => name === 'kysely_migration')) return null
  return raw
    .prepare<[], { name: string }>('SELECT name FROM kysely_migration ORDER BY name')
    .all()
    .map(({ name }) => name)
}

async function openSound(place: Place, had: readonly string[]): Promise<Outcome<Store>> {
  const { dataDir, migrations = ours } = place
  const file = storeFile(dataDir)
  const raw = new Database(file)
  try {
    setPragmas(raw)
    const moved = await migrate(raw, place, migrations, had)
    if (moved) return closing(raw, moved)
    installTriggers(raw)
    // Without WHERE, SQLite rewrites the table's pages even when it is empty.
    raw.exec('DELETE FROM stage WHERE batch IS NOT NULL')
    return ok(storeOver(file, raw))
  } catch (error) {
    raw.close()
    throw error
  }
}

function closing(raw: Raw, { code, facts }: Fault): Outcome<Store> {
  raw.close()
  return fault(code, facts)
}

function storeOver(file: string, raw: Raw): Store {
  const readRaw = new Database(file, { readonly: true, fileMustExist: true })
  setPragmas(readRaw)
  const close = () => {
    readRaw.close()
    raw.close()
  }
  const leave = () => {
    raw.close()
    readRaw.close()
  }
  return { file, raw, readRaw, write: kyselyOver(raw), read: kyselyOver(readRaw), close, leave }
}

/**
 * Runs what is pending, all in one transaction (Kysely gives SQLite none). A copy of a file that had something in it is kept first;
 * its steps no longer fit and go.
 */
async function migrate(
  raw: Raw,
  place: Place,
  migrations: Readonly<Record<string, Migration>>,
  had: readonly string[],
): Promise<Fault | null> {
  if (had.length === Object.keys(migrations).length) return null
  if (had.length > 0) keepBackup(raw, backupFolder(place.dataDir), 'migration', place.now())
  const moved = await inTransaction<Outcome<null>>(raw, async () => {
    const { error } = await migratorOver(raw, migrations).migrateToLatest()
    if (error !== undefined) return storeFaultOf(error)
    if (had.length > 0) forgetSteps(raw)
    return ok(null)
  })
  return moved.ok ? null : moved.fault
}

const migratorOver = (raw: Raw, migrations: Readonly<Record<string, Migration>>): Migrator =>
  new Migrator({ db: kyselyOver(raw), provider: { getMigrations: () => Promise.resolve({ ...migrations }) } })

function storeFaultOf(error: unknown): Outcome<never> {
  const expected = storeFault(error)
  if (expected) return fault(expected.code, expected.facts)
  return fault('store.damaged', { detail: `migration: ${error instanceof Error ? error.message : String(error)}` })
}
