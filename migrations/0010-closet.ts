import { sql, type Kysely } from 'kysely'

/**
 * The closet, the bench, loadouts, seasons and trips.
 * Masses are integer milligrams per piece; amounts of supplies are thousandths of the supply's unit; money is minor units with a currency.
 * Dates are local dates (YYYY-MM-DD). Documents that are edited whole (brief, walker, rule, base) are JSON text.
 */
const id = 'id INTEGER PRIMARY KEY, uid TEXT NOT NULL UNIQUE'
const flag = (name: string) => `${name} INTEGER NOT NULL DEFAULT 0 CHECK (${name} IN (0, 1))`
const word = (name: string) => `${name} TEXT NOT NULL DEFAULT ''`
const day = (name: string) => `${name} TEXT CHECK (${name} IS NULL OR ${name} GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')`
const owner = `
  item_id INTEGER REFERENCES item (id) ON DELETE CASCADE DEFERRABLE INITIALLY IMMEDIATE,
  supply_id INTEGER REFERENCES supply (id) ON DELETE CASCADE DEFERRABLE INITIALLY IMMEDIATE`
const oneOwner = 'CHECK ((item_id IS NULL) <> (supply_id IS NULL))'
const ofItem = 'item_id INTEGER NOT NULL REFERENCES item (id) ON DELETE CASCADE'

const statements: readonly string[] = [
  `CREATE TABLE setting (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT`,
  `CREATE TABLE word (${id}, kind TEXT NOT NULL CHECK (kind IN ('area', 'duty', 'trait')), code TEXT NOT NULL, label TEXT NOT NULL,
     ${flag('hidden')}, ${flag('own')}, ${word('area')}, ${word('unit')}, UNIQUE (kind, code)) STRICT`,
  `CREATE TABLE kit_set (${id}, name TEXT NOT NULL) STRICT`,
  `CREATE TABLE item (${id},
     name TEXT NOT NULL CHECK (length(trim(name)) > 0), ${word('maker')}, kit_area TEXT NOT NULL,
     pieces INTEGER NOT NULL DEFAULT 1 CHECK (pieces >= 1),
     status TEXT NOT NULL DEFAULT 'owned' CHECK (status IN ('owned', 'wished', 'lent', 'sold', 'retired', 'lost')), ${day('status_since')}, ${word('lent_to')},
     claimed_mg INTEGER CHECK (claimed_mg >= 0), ${word('claimed_by')}, estimated_mg INTEGER CHECK (estimated_mg >= 0),
     usual_lane TEXT NOT NULL DEFAULT 'in_pack' CHECK (usual_lane IN ('on_me', 'in_pack', 'used_up')), ${flag('is_container')},
     set_id INTEGER REFERENCES kit_set (id) ON DELETE SET NULL,
     ${word('serial')}, came TEXT NOT NULL DEFAULT 'bought' CHECK (came IN ('bought', 'made', 'gift', 'trial')), ${day('came_on')}, ${word('came_from')},
     price_minor INTEGER CHECK (price_minor >= 0), ${word('currency')}, sold_minor INTEGER CHECK (sold_minor >= 0),
     ${word('note')}, ${word('life_note')}, ${day('last_out_on')}, ${flag('archived')}) STRICT`,
  `CREATE INDEX item_set ON item (set_id)`,
  `CREATE TABLE item_duty (${id}, ${ofItem}, duty TEXT NOT NULL, ${flag('shared')}, UNIQUE (item_id, duty)) STRICT`,
  `CREATE TABLE item_label (${id}, ${ofItem}, kind TEXT NOT NULL CHECK (kind IN ('tag', 'material', 'season')), text TEXT NOT NULL, UNIQUE (item_id, kind, text)) STRICT`,
  `CREATE TABLE item_link (${id}, ${ofItem}, url TEXT NOT NULL, ${word('label')}) STRICT`,
  `CREATE INDEX item_link_item ON item_link (item_id)`,
  `CREATE TABLE item_counter (${id}, ${ofItem}, code TEXT NOT NULL, amount REAL NOT NULL CHECK (amount >= 0), origin TEXT NOT NULL DEFAULT 'estimated',
     ${word('note')}, ${day('noted_on')}, UNIQUE (item_id, code, origin)) STRICT`,
  `CREATE TABLE file (sha256 TEXT PRIMARY KEY, mime TEXT NOT NULL, bytes INTEGER NOT NULL) STRICT`,
  `CREATE TABLE photo (${id}, ${ofItem}, sha256 TEXT NOT NULL, thumb_sha256 TEXT NOT NULL, mime TEXT NOT NULL, ${word('name')}, sort INTEGER NOT NULL DEFAULT 0) STRICT`,
  `CREATE INDEX photo_item ON photo (item_id)`,
  `CREATE TABLE supply (${id}, name TEXT NOT NULL CHECK (length(trim(name)) > 0), kit_area TEXT NOT NULL, unit TEXT NOT NULL CHECK (unit IN ('g', 'ml', 'piece')),
     mg_per_unit INTEGER NOT NULL CHECK (mg_per_unit >= 0), mass_from TEXT NOT NULL DEFAULT 'claimed' CHECK (mass_from IN ('measured', 'claimed', 'estimated')),
     rule TEXT, ${word('note')}, ${flag('archived')}) STRICT`,
  `CREATE TABLE need (${id}, ${owner}, duty TEXT NOT NULL, pieces INTEGER NOT NULL DEFAULT 1 CHECK (pieces >= 1),
     kind TEXT NOT NULL DEFAULT 'shared' CHECK (kind IN ('shared', 'reserved')), ${oneOwner}) STRICT`,
  `CREATE UNIQUE INDEX need_item ON need (item_id, duty) WHERE item_id IS NOT NULL`,
  `CREATE UNIQUE INDEX need_supply ON need (supply_id, duty) WHERE supply_id IS NOT NULL`,
  `CREATE TABLE trait_value (${id}, ${owner}, code TEXT NOT NULL, number REAL, ${word('text')}, ${word('typed')}, ${word('typed_unit')},
     origin TEXT NOT NULL DEFAULT 'claimed' CHECK (origin IN ('measured', 'claimed', 'estimated')), ${word('source')}, ${day('noted_on')}, ${oneOwner}) STRICT`,
  `CREATE UNIQUE INDEX trait_item ON trait_value (item_id, code) WHERE item_id IS NOT NULL`,
  `CREATE UNIQUE INDEX trait_supply ON trait_value (supply_id, code) WHERE supply_id IS NOT NULL`,
  `CREATE TABLE scale (${id}, name TEXT NOT NULL, step_mg INTEGER NOT NULL CHECK (step_mg > 0), capacity_mg INTEGER NOT NULL CHECK (capacity_mg > 0),
     kind TEXT NOT NULL DEFAULT 'typed' CHECK (kind IN ('typed', 'usb')), ${word('device')}, ${word('note')}, ${flag('archived')}) STRICT`,
  `CREATE TABLE check_reading (${id}, scale_id INTEGER NOT NULL REFERENCES scale (id) ON DELETE CASCADE, ${day('read_on')}, nominal_mg INTEGER NOT NULL CHECK (nominal_mg > 0),
     mpe_mg INTEGER NOT NULL DEFAULT 0, ${word('mass_class')}, readings TEXT NOT NULL) STRICT`,
  `CREATE INDEX check_reading_scale ON check_reading (scale_id)`,
  // mass_mg, u_own_mg and u_gain_mg are per piece, as worked out when the reading was kept; the reading itself stands beside them.
  `CREATE TABLE weighing (${id}, ${ofItem}, scale_id INTEGER REFERENCES scale (id) ON DELETE SET NULL, weighed_on TEXT NOT NULL CHECK (weighed_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
     weighed_minute INTEGER, readings TEXT NOT NULL, tare_mg INTEGER NOT NULL DEFAULT 0, tare_kind TEXT NOT NULL DEFAULT 'none' CHECK (tare_kind IN ('none', 'button', 'reading')),
     pieces INTEGER NOT NULL DEFAULT 1 CHECK (pieces >= 1), mass_mg INTEGER NOT NULL CHECK (mass_mg >= 0), u_own_mg REAL NOT NULL, u_gain_mg REAL NOT NULL,
     ${flag('damp')}, ${flag('dirty')}, ${flag('incomplete')}, entered TEXT NOT NULL DEFAULT 'typed' CHECK (entered IN ('typed', 'usb', 'brought')), ${word('note')}) STRICT`,
  `CREATE INDEX weighing_item ON weighing (item_id, weighed_on, id)`,
  `CREATE INDEX weighing_day ON weighing (weighed_on)`,
  `CREATE TABLE season (${id}, name TEXT NOT NULL, kind TEXT NOT NULL DEFAULT 'any' CHECK (kind IN ('spring', 'summer', 'autumn', 'winter', 'any')), brief TEXT, sort INTEGER NOT NULL DEFAULT 0) STRICT`,
  `CREATE TABLE walker (${id}, name TEXT NOT NULL, profile TEXT NOT NULL) STRICT`,
  `CREATE TABLE trip (${id}, name TEXT NOT NULL CHECK (length(trim(name)) > 0), season_id INTEGER REFERENCES season (id) ON DELETE SET NULL, walker_id INTEGER REFERENCES walker (id) ON DELETE SET NULL,
     ${day('starts_on')}, ${day('ends_on')}, ${word('zone')}, state TEXT NOT NULL DEFAULT 'planned' CHECK (state IN ('planned', 'out', 'back')), brief TEXT NOT NULL DEFAULT '{}', ${word('note')}) STRICT`,
  `CREATE TABLE loadout (${id}, name TEXT NOT NULL CHECK (length(trim(name)) > 0), season_id INTEGER REFERENCES season (id) ON DELETE SET NULL,
     trip_id INTEGER REFERENCES trip (id) ON DELETE CASCADE, parent_id INTEGER REFERENCES loadout (id) ON DELETE SET NULL, base TEXT,
     ${flag('chosen')}, ${word('note')}, sort INTEGER NOT NULL DEFAULT 0) STRICT`,
  `CREATE INDEX loadout_trip ON loadout (trip_id)`,
  `CREATE INDEX loadout_parent ON loadout (parent_id)`,
  `CREATE TABLE line (${id}, loadout_id INTEGER NOT NULL REFERENCES loadout (id) ON DELETE CASCADE,
     item_id INTEGER REFERENCES item (id), supply_id INTEGER REFERENCES supply (id),
     lane TEXT NOT NULL CHECK (lane IN ('on_me', 'in_pack', 'used_up')), pieces INTEGER NOT NULL DEFAULT 1 CHECK (pieces >= 1),
     amount_milli INTEGER CHECK (amount_milli >= 0), amount_from TEXT NOT NULL DEFAULT 'typed' CHECK (amount_from IN ('brief', 'typed', 'weighed')), rule TEXT,
     container_id INTEGER REFERENCES item (id), ${word('carried_by')}, ${word('note')}, sort INTEGER NOT NULL DEFAULT 0, ${oneOwner}) STRICT`,
  `CREATE UNIQUE INDEX line_item ON line (loadout_id, item_id, lane) WHERE item_id IS NOT NULL`,
  `CREATE UNIQUE INDEX line_supply ON line (loadout_id, supply_id, ifnull(container_id, 0)) WHERE supply_id IS NOT NULL`,
  `CREATE INDEX line_of_item ON line (item_id)`,
  // Without these two, every item and scale that goes is looked for in all lines and weighings, row by row.
  `CREATE INDEX line_container ON line (container_id) WHERE container_id IS NOT NULL`,
  `CREATE INDEX weighing_scale ON weighing (scale_id) WHERE scale_id IS NOT NULL`,
  `CREATE TABLE saved_view (${id}, room TEXT NOT NULL, name TEXT NOT NULL, state TEXT NOT NULL, UNIQUE (room, name)) STRICT`,
  `CREATE TABLE stage (batch TEXT NOT NULL, n INTEGER NOT NULL, row TEXT NOT NULL, PRIMARY KEY (batch, n)) STRICT`,
  // Undo is data: src-main/store/undo.ts makes the triggers that fill these, from its one list of undoable tables.
  `CREATE TABLE step (id INTEGER PRIMARY KEY, code TEXT NOT NULL, facts TEXT NOT NULL, at TEXT NOT NULL, undone_at TEXT, bytes INTEGER NOT NULL DEFAULT 0) STRICT`,
  // row_id and item_id say without opening the JSON what a step touched and whose closet row that changes.
  `CREATE TABLE step_row (id INTEGER PRIMARY KEY, step_id INTEGER NOT NULL REFERENCES step (id) ON DELETE CASCADE, tbl TEXT NOT NULL, uid TEXT NOT NULL, row_id INTEGER NOT NULL, item_id INTEGER,
     before TEXT, after TEXT) STRICT`,
  `CREATE INDEX step_row_step ON step_row (step_id)`,
  `CREATE INDEX step_row_item ON step_row (item_id) WHERE item_id IS NOT NULL`,
  `CREATE TABLE step_now (id INTEGER PRIMARY KEY CHECK (id = 1), step_id INTEGER, ${flag('quiet')}) STRICT`,
  `INSERT INTO step_now (id, step_id, quiet) VALUES (1, NULL, 0)`,
]

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db)
}
