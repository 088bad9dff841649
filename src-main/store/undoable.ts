import type { Raw } from './handles.ts'
import type { Tables } from './tables.ts'

/**
 * The one list of tables whose every change can be undone. Triggers made from it write each change into `step_row`,
 * so that no handler can forget. Not in it: settings, staged rows, stored files, and the steps themselves.
 */
export const undoableTables = [
  'word',
  'kit_set',
  'item',
  'item_duty',
  'item_label',
  'item_link',
  'item_counter',
  'photo',
  'supply',
  'need',
  'trait_value',
  'scale',
  'check_reading',
  'weighing',
  'season',
  'walker',
  'trip',
  'loadout',
  'line',
  'saved_view',
  'door',
  'door_line',
  'record',
  'away',
  'packed',
  'debrief',
  'debrief_line',
  'trial_question',
  'trial_answer',
  'leg_log',
  'night_log',
  'day_log',
  'burn_log',
  'trip_photo',
] as const satisfies readonly (keyof Tables)[]
export type UndoableTable = (typeof undoableTables)[number]

/** The columns of a table, in their order. */
export function columnsOf(raw: Raw, table: string): readonly string[] {
  return raw
    .prepare<[string], { name: string }>('SELECT name FROM pragma_table_info(?) ORDER BY cid')
    .all(table)
    .map((one) => one.name)
}

/** A whole row as JSON. SQLite writes a REAL with 17 digits there, so that it reads back as the same double (tested). */
export const rowJson = (columns: readonly string[], row: string): string =>
  `json_object(${columns.map((name) => `'${name}', ${row}${name}`).join(', ')})`

/** Makes the undo triggers what the list and the columns say; leaves those that already are. */
export function installTriggers(raw: Raw): void {
  const wanted = new Map(undoableTables.flatMap((table) => triggersOf(table, columnsOf(raw, table))))
  const found = raw.prepare<[], { name: string; sql: string }>(
    `SELECT name, sql FROM sqlite_master WHERE type = 'trigger' AND name LIKE 'step\\_%' ESCAPE '\\'`,
  )
  const stale = found.all().filter((one) => wanted.get(one.name) !== one.sql)
  const held = new Set(
    found
      .all()
      .map((one) => one.name)
      .filter((name) => !stale.some((one) => one.name === name)),
  )
  const missing = [...wanted].filter(([name]) => !held.has(name))
  if (stale.length + missing.length === 0) return
  raw.transaction(() => {
    for (const { name } of stale) raw.exec(`DROP TRIGGER ${name}`)
    for (const [, sql] of missing) raw.exec(sql)
  })()
}

/** The three triggers of a table by name; a list of what was not owned one day says nothing of its items. A change outside an open step aborts, unless `step_now.quiet` says that it is meant to leave no trace. */
function triggersOf(table: UndoableTable, columns: readonly string[]): readonly (readonly [string, string])[] {
  const before = rowJson(columns, 'OLD.')
  const after = rowJson(columns, 'NEW.')
  const differs = columns.map((name) => `OLD.${name} IS NOT NEW.${name}`).join(' OR ')
  const owned = columns.includes('item_id') && table !== 'away'
  const owner = (row: string) => (table === 'item' ? `${row}id` : owned ? `${row}item_id` : 'NULL')
  return [
    trigger(table, 'insert', '', `NEW.uid, NEW.id, ${owner('NEW.')}, NULL, ${after}`),
    trigger(table, 'update', ` AND (${differs})`, `NEW.uid, NEW.id, ${owner('NEW.')}, ${before}, ${after}`),
    trigger(table, 'delete', '', `OLD.uid, OLD.id, ${owner('OLD.')}, ${before}, NULL`),
  ]
}

function trigger(table: string, event: 'insert' | 'update' | 'delete', only: string, values: string): readonly [string, string] {
  const name = `step_${table}_${event}`
  const sql = `CREATE TRIGGER ${name} AFTER ${event.toUpperCase()} ON ${table} WHEN (SELECT quiet FROM step_now) = 0${only} BEGIN
  SELECT RAISE(ABORT, 'a change of ${table} outside a step') WHERE (SELECT step_id FROM step_now) IS NULL;
  INSERT INTO step_row (step_id, tbl, uid, row_id, item_id, before, after) VALUES ((SELECT step_id FROM step_now), '${table}', ${values});
END`
  return [name, sql]
}
