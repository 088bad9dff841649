import type { Raw } from '../../store/handles.ts'

/**
 * The archive: a ZIP with `tarework.json` and one `files/<sha256>` for each photograph, nothing else.
 * `tarework.json` holds every table that is the person's, row by row, in the order in which rows came to be. Rows know each other by `uid`
 * alone: the store's own numbers stay at home. src-main/files/archive-schema.json describes it in full.
 */
export const archiveFormat = 'tarework-archive'
/** Raised when the form around the tables changes. What the tables hold is told by `migrations`. */
export const archiveSchemaNumber = 1
export const manifestName = 'tarework.json'
export const fileEntry = (sha256: string): string => `files/${sha256}`

/** What a manifest may weigh unpacked: five times a closet of 20,000 things with 100,000 weighings. */
export const maxManifestBytes = 128 * 1024 * 1024

export interface ArchivedFile {
  readonly sha256: string
  readonly mime: string
  readonly bytes: number
}

export type Cell = string | number | null
export type ArchivedRow = Readonly<Record<string, Cell>>

export interface Manifest {
  readonly format: typeof archiveFormat
  readonly schema: number
  readonly madeAt: string
  readonly program: string
  /** Migrations of the store that it was made from, in order: which columns the tables have. */
  readonly migrations: readonly string[]
  readonly files: readonly ArchivedFile[]
  readonly tables: Readonly<Record<string, readonly ArchivedRow[]>>
}

/** Tables that are not the person's: staged rows, undo, and the list of files, which the archive makes anew. */
const leftOut: ReadonlySet<string> = new Set(['file', 'stage', 'step', 'step_row', 'step_now', 'kysely_migration', 'kysely_migration_lock'])

/** The tables that go into an archive, by name; found in the store itself, so that none can be forgotten. */
export function archivedTables(raw: Raw): readonly string[] {
  const all = raw
    .prepare<[], { name: string }>(`SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`)
    .all()
  return all.map(({ name }) => name).filter((name) => !leftOut.has(name))
}

export interface Column {
  /** In the store. */
  readonly name: string
  /** In the archive: `item_id` is written as `item_uid`. */
  readonly as: string
  readonly type: string
  readonly notNull: boolean
  /** The table whose row it names; null: a plain value. */
  readonly refers: string | null
}

/** The columns of a table as the archive has them: the row's own number left out. */
export function archivedColumns(raw: Raw, table: string): readonly Column[] {
  const refers = new Map(
    raw
      .prepare<[string], { from: string; table: string }>('SELECT "from", "table" FROM pragma_foreign_key_list(?)')
      .all(table)
      .map((key) => [key.from, key.table] as const),
  )
  return raw
    .prepare<[string], { name: string; type: string; notnull: number }>(
      'SELECT name, type, "notnull" FROM pragma_table_info(?) ORDER BY cid',
    )
    .all(table)
    .filter(({ name }) => name !== 'id')
    .map(({ name, type, notnull }) => {
      const to = refers.get(name) ?? null
      return { name, as: to === null ? name : name.replace(/_id$/, '_uid'), type, notNull: notnull === 1, refers: to }
    })
}

/** Columns that hold a document as JSON text: what is brought in must read as JSON, or a window would stumble over it. */
export const documentColumns: ReadonlySet<string> = new Set([
  'supply.rule',
  'line.rule',
  'season.brief',
  'trip.brief',
  'walker.profile',
  'loadout.base',
  'weighing.readings',
  'check_reading.readings',
  'saved_view.state',
  'setting.value',
  'record.brief',
  'record.walker',
  'packed.rule',
  'packed.shares',
  'packed.needs',
  'packed.traits',
])
