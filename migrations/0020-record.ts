import { sql, type Kysely } from 'kysely'

/**
 * The record of a trip: the door list, what was packed and under which brief, and the debrief.
 * Temperatures are °C, lengths m, water ml, times minutes; a time of the day is its minute. Masses are integer milligrams, per piece or per unit of a supply.
 * What nobody said is NULL, `unknown` or empty: never a guess.
 */
const id = 'id INTEGER PRIMARY KEY, uid TEXT NOT NULL UNIQUE'
const flag = (name: string) => `${name} INTEGER NOT NULL DEFAULT 0 CHECK (${name} IN (0, 1))`
const word = (name: string) => `${name} TEXT NOT NULL DEFAULT ''`
const day = (name: string) => `${name} TEXT CHECK (${name} IS NULL OR ${name} GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')`
const oneOf = (name: string, codes: readonly string[], first = codes[0]!) =>
  `${name} TEXT NOT NULL DEFAULT '${first}' CHECK (${name} IN (${codes.map((code) => `'${code}'`).join(', ')}))`
const least0 = (name: string, type = 'INTEGER') => `${name} ${type} CHECK (${name} >= 0)`
const ofTrip = 'trip_id INTEGER NOT NULL REFERENCES trip (id) ON DELETE CASCADE'
const ofLoadout = 'loadout_id INTEGER NOT NULL REFERENCES loadout (id) ON DELETE CASCADE'

const statements: readonly string[] = [
  // The hook's reading of a packed pack; one list a loadout.
  `CREATE TABLE door (${id}, ${ofLoadout}, ${least0('reading_mg')}, scale_id INTEGER REFERENCES scale (id) ON DELETE SET NULL, ${flag('with_last')}, UNIQUE (loadout_id)) STRICT`,
  `CREATE INDEX door_scale ON door (scale_id) WHERE scale_id IS NOT NULL`,
  // A line of the loadout as it stands at the door, or (without a line) a last thing of the person's own words. last: NULL as the rule says.
  `CREATE TABLE door_line (${id}, ${ofLoadout}, line_id INTEGER REFERENCES line (id) ON DELETE CASCADE, ${word('name')},
     ${oneOf('state', ['open', 'packed', 'missing'])}, ${flag('was_missing')}, last INTEGER CHECK (last IN (0, 1)), ${word('note')}, UNIQUE (line_id)) STRICT`,
  `CREATE INDEX door_line_loadout ON door_line (loadout_id)`,
  // One for each trip that is out or back: everything around the packed lines as it was when the door list was closed.
  `CREATE TABLE record (${id}, ${ofTrip}, ${flag('past')}, month TEXT CHECK (month IS NULL OR month GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]'),
     closed_at TEXT NOT NULL, ${word('loadout_name')}, brief TEXT NOT NULL DEFAULT '{}', walker TEXT NOT NULL DEFAULT '{}',
     ${oneOf('season', ['any', 'spring', 'summer', 'autumn', 'winter'])}, ${day('starts_on')}, ${day('ends_on')}, ${word('zone')},
     newest_item_id INTEGER REFERENCES item (id) ON DELETE SET NULL, UNIQUE (trip_id)) STRICT`,
  `CREATE INDEX record_newest ON record (newest_item_id) WHERE newest_item_id IS NOT NULL`,
  // Items that were not simply owned when the trip froze; all others of that time were.
  `CREATE TABLE away (${id}, ${ofTrip}, item_id INTEGER NOT NULL REFERENCES item (id) ON DELETE CASCADE,
     status TEXT NOT NULL CHECK (status IN ('wished', 'lent', 'sold', 'retired', 'lost')), UNIQUE (trip_id, item_id)) STRICT`,
  `CREATE INDEX away_item ON away (item_id)`,
  // mass_mg: of one piece, or of one unit of a supply; shares: leaf → g of the standard uncertainty. duties: codes joined by a space, a shared one ends in *.
  `CREATE TABLE packed (${id}, ${ofTrip}, item_id INTEGER REFERENCES item (id), supply_id INTEGER REFERENCES supply (id), container_id INTEGER REFERENCES item (id),
     name TEXT NOT NULL CHECK (length(trim(name)) > 0), kit_area TEXT NOT NULL, lane TEXT NOT NULL CHECK (lane IN ('on_me', 'in_pack', 'used_up')),
     pieces INTEGER NOT NULL DEFAULT 1 CHECK (pieces >= 1), owned_pieces INTEGER NOT NULL DEFAULT 1 CHECK (owned_pieces >= 1),
     ${least0('amount_milli')}, ${oneOf('amount_from', ['typed', 'brief', 'weighed'])}, rule TEXT, ${oneOf('unit', ['', 'g', 'ml', 'piece'])},
     ${least0('mass_mg')}, ${oneOf('mass_from', ['none', 'measured', 'claimed', 'estimated'])}, shares TEXT NOT NULL DEFAULT '{}', ${word('mass_about')},
     ${word('duties')}, needs TEXT NOT NULL DEFAULT '[]', traits TEXT NOT NULL DEFAULT '[]', ${flag('is_container')}, ${oneOf('status', ['owned', 'lent'])},
     ${word('carried_by')}, ${word('note')}, ${oneOf('door', ['open', 'packed'])}, ${flag('was_missing')}, ${flag('corrected')}, sort INTEGER NOT NULL DEFAULT 0,
     CHECK (item_id IS NULL OR supply_id IS NULL)) STRICT`,
  `CREATE INDEX packed_trip ON packed (trip_id)`,
  `CREATE INDEX packed_item ON packed (item_id) WHERE item_id IS NOT NULL`,
  `CREATE INDEX packed_supply ON packed (supply_id) WHERE supply_id IS NOT NULL`,
  `CREATE INDEX packed_container ON packed (container_id) WHERE container_id IS NOT NULL`,
  // What the whole trip was like. kept_at: the person was done with it.
  `CREATE TABLE debrief (${id}, ${ofTrip}, low_c REAL, high_c REAL, ${least0('wind_kmh', 'REAL')}, ${oneOf('rain', ['', 'none', 'showers', 'wet'])},
     ${least0('rain_hours', 'REAL')}, ${least0('nights')}, ${least0('length_m', 'REAL')}, ${least0('food_before_mg')}, ${least0('food_after_mg')}, ${flag('food_left_out')},
     kept_at TEXT, ${word('note')}, UNIQUE (trip_id)) STRICT`,
  // Of a packed line; without one, of a thing that stayed at home (item) or was never owned (name). said: by the person one by one, or with the rest at once.
  `CREATE TABLE debrief_line (${id}, ${ofTrip}, packed_id INTEGER REFERENCES packed (id) ON DELETE CASCADE, item_id INTEGER REFERENCES item (id) ON DELETE SET NULL, ${word('name')},
     ${oneOf('use', ['unknown', 'used', 'unused', 'missed', 'failed'])}, ${oneOf('said', ['one', 'rest'])}, ${oneOf('verdict', ['', 'keep', 'adjust', 'drop'])},
     ${oneOf('change', ['', 'add', 'swap', 'amount', 'mend', 'weight', 'function', 'comfort', 'waste'])}, ${word('only_when')}, ${word('what')},
     to_item_id INTEGER REFERENCES item (id) ON DELETE SET NULL, ${least0('amount_milli')}, low_c REAL, ${least0('wind_kmh', 'REAL')}, ${least0('rain_hours', 'REAL')},
     ${least0('nights')}, ${least0('length_m', 'REAL')}, ${word('note')}, UNIQUE (packed_id)) STRICT`,
  `CREATE INDEX debrief_line_trip ON debrief_line (trip_id)`,
  `CREATE INDEX debrief_line_item ON debrief_line (item_id) WHERE item_id IS NOT NULL`,
  `CREATE INDEX debrief_line_to ON debrief_line (to_item_id) WHERE to_item_id IS NOT NULL`,
  // What is to be found out about an item on trial, and what each trip said to it.
  `CREATE TABLE trial_question (${id}, item_id INTEGER NOT NULL REFERENCES item (id) ON DELETE CASCADE, text TEXT NOT NULL CHECK (length(trim(text)) > 0), ${flag('settled')}) STRICT`,
  `CREATE INDEX trial_question_item ON trial_question (item_id)`,
  `CREATE TABLE trial_answer (${id}, question_id INTEGER NOT NULL REFERENCES trial_question (id) ON DELETE CASCADE, ${ofTrip}, text TEXT NOT NULL, UNIQUE (question_id, trip_id)) STRICT`,
  `CREATE INDEX trial_answer_trip ON trial_answer (trip_id)`,
  // leg: its place in the brief as it was, from 0. left_out: learning passes it over.
  `CREATE TABLE leg_log (${id}, ${ofTrip}, leg INTEGER NOT NULL CHECK (leg >= 0), day INTEGER NOT NULL CHECK (day >= 1), ${word('name')}, ${least0('started_minute')},
     ${least0('moving_min', 'REAL')}, ${least0('break_min', 'REAL')}, ${least0('length_m', 'REAL')}, ${least0('climb_m', 'REAL')}, ${least0('descent_m', 'REAL')},
     ${least0('drunk_ml')}, ${least0('left_ml')}, ${oneOf('origin', ['typed', 'track'])}, ${flag('left_out')}, ${word('note')}, UNIQUE (trip_id, leg)) STRICT`,
  `CREATE TABLE night_log (${id}, ${ofTrip}, night INTEGER NOT NULL CHECK (night >= 1), low_c REAL, ${oneOf('slept', ['unknown', 'warm', 'cool', 'cold'])},
     woke_minute INTEGER CHECK (woke_minute BETWEEN 0 AND 1439), ${flag('left_out')}, ${word('note')}, UNIQUE (trip_id, night)) STRICT`,
  `CREATE TABLE day_log (${id}, ${ofTrip}, day INTEGER NOT NULL CHECK (day >= 1), ${oneOf('shoulders', ['', 'fresh', 'tired', 'sore'])}, ${oneOf('feet', ['', 'fresh', 'tired', 'sore'])},
     ${oneOf('hungry', ['', 'no', 'yes'])}, ${flag('left_out')}, ${word('note')}, UNIQUE (trip_id, day)) STRICT`,
  `CREATE TABLE burn_log (${id}, ${ofTrip}, packed_id INTEGER REFERENCES packed (id) ON DELETE SET NULL, ${word('name')}, ${least0('before_mg')}, ${least0('after_mg')},
     ${least0('heated_ml')}, ${least0('boils', 'REAL')}, from_c REAL, ${flag('left_out')}, ${word('note')}) STRICT`,
  `CREATE INDEX burn_log_trip ON burn_log (trip_id)`,
  `CREATE INDEX burn_log_packed ON burn_log (packed_id) WHERE packed_id IS NOT NULL`,
  `CREATE TABLE trip_photo (${id}, ${ofTrip}, packed_id INTEGER REFERENCES packed (id) ON DELETE SET NULL, sha256 TEXT NOT NULL, thumb_sha256 TEXT NOT NULL, mime TEXT NOT NULL,
     ${word('name')}, sort INTEGER NOT NULL DEFAULT 0) STRICT`,
  `CREATE INDEX trip_photo_trip ON trip_photo (trip_id)`,
  `CREATE INDEX trip_photo_packed ON trip_photo (packed_id) WHERE packed_id IS NOT NULL`,
  // Only what has a record is out or back. Trips of before have none, and nobody knows any more what was packed: the program asks again when their day has passed.
  `UPDATE step_now SET quiet = 1`,
  `UPDATE trip SET state = 'planned' WHERE state <> 'planned'`,
  `UPDATE step_now SET quiet = 0`,
]

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db)
}
