import Database from 'better-sqlite3'
import { storeFile } from '../../../src-main/store/open.ts'

/**
 * The store as text that knows no numbers: every row of every table of the person's, references given by the uid they lead to.
 * Written out here, apart from the archive's own reading of the schema, so that the two can disagree.
 */
const references: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  word: {},
  kit_set: {},
  item: { set_id: 'kit_set' },
  item_duty: { item_id: 'item' },
  item_label: { item_id: 'item' },
  item_link: { item_id: 'item' },
  item_counter: { item_id: 'item' },
  photo: { item_id: 'item' },
  supply: {},
  need: { item_id: 'item', supply_id: 'supply' },
  trait_value: { item_id: 'item', supply_id: 'supply' },
  scale: {},
  check_reading: { scale_id: 'scale' },
  weighing: { item_id: 'item', scale_id: 'scale' },
  season: {},
  walker: {},
  trip: { season_id: 'season', walker_id: 'walker' },
  loadout: { season_id: 'season', trip_id: 'trip', parent_id: 'loadout' },
  line: { loadout_id: 'loadout', item_id: 'item', supply_id: 'supply', container_id: 'item' },
  saved_view: {},
  door: { loadout_id: 'loadout', scale_id: 'scale' },
  door_line: { loadout_id: 'loadout', line_id: 'line' },
  record: { trip_id: 'trip', newest_item_id: 'item' },
  away: { trip_id: 'trip', item_id: 'item' },
  packed: { trip_id: 'trip', item_id: 'item', supply_id: 'supply', container_id: 'item' },
  debrief: { trip_id: 'trip' },
  debrief_line: { trip_id: 'trip', packed_id: 'packed', item_id: 'item', to_item_id: 'item' },
  trial_question: { item_id: 'item' },
  trial_answer: { question_id: 'trial_question', trip_id: 'trip' },
  leg_log: { trip_id: 'trip' },
  night_log: { trip_id: 'trip' },
  day_log: { trip_id: 'trip' },
  burn_log: { trip_id: 'trip', packed_id: 'packed' },
  trip_photo: { trip_id: 'trip', packed_id: 'packed' },
  setting: {},
  file: {},
}

export const dumpedTables: readonly string[] = Object.keys(references)

/** Rows in the order in which they came to be; that too must come back. */
export function dumpByUid(dataDir: string): Readonly<Record<string, readonly unknown[]>> {
  const raw = new Database(storeFile(dataDir), { readonly: true })
  try {
    return Object.fromEntries(Object.entries(references).map(([table, refs]) => [table, rowsOf(raw, table, refs)]))
  } finally {
    raw.close()
  }
}

function rowsOf(raw: Database.Database, table: string, refs: Readonly<Record<string, string>>): readonly unknown[] {
  const order = table === 'file' ? 'sha256' : 'rowid'
  const rows = raw.prepare<[], Record<string, unknown>>(`SELECT * FROM ${table} ORDER BY ${order}`).all()
  return rows.map((row) => {
    delete row['id']
    for (const [column, to] of Object.entries(refs))
      if (row[column] !== null) row[column] = raw.prepare(`SELECT uid FROM ${to} WHERE id = ?`).pluck().get(row[column])
    return row
  })
}
