import type { Raw } from '../../store/handles.ts'
import { archivedColumns, archivedTables, archiveFormat, archiveSchemaNumber, type ArchivedFile, type Column } from './shape.ts'

export interface ManifestHead {
  readonly madeAt: string
  readonly program: string
  readonly files: readonly ArchivedFile[]
}

/** `tarework.json` piece by piece, so that a large closet is never whole in memory. `raw` must see one state of the store throughout. */
export function* manifestText(raw: Raw, { madeAt, program, files }: ManifestHead): Generator<string> {
  const migrations = raw
    .prepare<[], { name: string }>('SELECT name FROM kysely_migration ORDER BY name')
    .all()
    .map(({ name }) => name)
  const head = { format: archiveFormat, schema: archiveSchemaNumber, madeAt, program, migrations, files }
  yield `${JSON.stringify(head, null, 1).slice(0, -2)},\n "tables": {`
  let comma = ''
  for (const table of archivedTables(raw)) {
    yield `${comma}\n  ${JSON.stringify(table)}: [`
    yield* rowsText(raw, table)
    yield ']'
    comma = ','
  }
  yield '\n }\n}\n'
}

function* rowsText(raw: Raw, table: string): Generator<string> {
  let comma = ''
  for (const row of raw.prepare<[], Record<string, unknown>>(selectSql(table, archivedColumns(raw, table))).iterate()) {
    yield `${comma}\n   ${JSON.stringify(row)}`
    comma = ','
  }
}

/** Rows in the order in which they came to be; what they refer to by its uid. */
function selectSql(table: string, columns: readonly Column[]): string {
  const fields = columns.map(({ name, as, refers }) =>
    refers === null
      ? `"${table}"."${name}" AS "${as}"`
      : `(SELECT referred.uid FROM "${refers}" AS referred WHERE referred.id = "${table}"."${name}") AS "${as}"`,
  )
  return `SELECT ${fields.join(', ')} FROM "${table}" ORDER BY "${table}".rowid`
}
