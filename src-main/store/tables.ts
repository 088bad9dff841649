import type { Generated } from 'kysely'
import type { Lane, Status, Way } from '../../src-domain/closet/vocabulary.ts'
import type { Comfort, DoorState, Slept, Use, Verdict, VerdictChange } from '../../src-domain/trips/record.ts'

/** The store's tables as `migrations/` leave them. 0/1 columns are numbers; JSON documents are text. */
export interface Tables {
  setting: { key: string; value: string }
  word: Row & {
    kind: 'area' | 'duty' | 'trait'
    code: string
    label: string
    hidden: Generated<number>
    own: Generated<number>
    area: Generated<string>
    unit: Generated<string>
  }
  kit_set: Row & { name: string }
  item: Row & ItemColumns
  item_duty: Row & { item_id: number; duty: string; shared: Generated<number> }
  item_label: Row & { item_id: number; kind: 'tag' | 'material' | 'season'; text: string }
  item_link: Row & { item_id: number; url: string; label: Generated<string> }
  item_counter: Row & {
    item_id: number
    code: string
    amount: number
    origin: Generated<string>
    note: Generated<string>
    noted_on: string | null
  }
  file: { sha256: string; mime: string; bytes: number }
  photo: Row & { item_id: number; sha256: string; thumb_sha256: string; mime: string; name: Generated<string>; sort: Generated<number> }
  supply: Row & {
    name: string
    kit_area: string
    unit: 'g' | 'ml' | 'piece'
    mg_per_unit: number
    mass_from: Generated<'measured' | 'claimed' | 'estimated'>
    rule: string | null
    note: Generated<string>
    archived: Generated<number>
  }
  need: Row & {
    item_id: number | null
    supply_id: number | null
    duty: string
    pieces: Generated<number>
    kind: Generated<'shared' | 'reserved'>
  }
  trait_value: Row & {
    item_id: number | null
    supply_id: number | null
    code: string
    number: number | null
    text: Generated<string>
    typed: Generated<string>
    typed_unit: Generated<string>
    origin: Generated<'measured' | 'claimed' | 'estimated'>
    source: Generated<string>
    noted_on: string | null
  }
  scale: Row & {
    name: string
    step_mg: number
    capacity_mg: number
    kind: Generated<'typed' | 'usb'>
    device: Generated<string>
    note: Generated<string>
    archived: Generated<number>
  }
  check_reading: Row & {
    scale_id: number
    read_on: string
    nominal_mg: number
    mpe_mg: Generated<number>
    mass_class: Generated<string>
    readings: string
  }
  weighing: Row & {
    item_id: number
    scale_id: number | null
    weighed_on: string
    weighed_minute: number | null
    readings: string
    tare_mg: Generated<number>
    tare_kind: Generated<'none' | 'button' | 'reading'>
    pieces: Generated<number>
    mass_mg: number
    u_own_mg: number
    u_gain_mg: number
    damp: Generated<number>
    dirty: Generated<number>
    incomplete: Generated<number>
    entered: Generated<'typed' | 'usb' | 'brought'>
    note: Generated<string>
  }
  season: Row & {
    name: string
    kind: Generated<'spring' | 'summer' | 'autumn' | 'winter' | 'any'>
    brief: string | null
    sort: Generated<number>
  }
  walker: Row & { name: string; profile: string }
  trip: Row & {
    name: string
    season_id: number | null
    walker_id: number | null
    starts_on: string | null
    ends_on: string | null
    zone: Generated<string>
    state: Generated<'planned' | 'out' | 'back'>
    brief: Generated<string>
    note: Generated<string>
  }
  loadout: Row & {
    name: string
    season_id: number | null
    trip_id: number | null
    parent_id: number | null
    base: string | null
    chosen: Generated<number>
    note: Generated<string>
    sort: Generated<number>
  }
  line: Row & {
    loadout_id: number
    item_id: number | null
    supply_id: number | null
    lane: Lane
    pieces: Generated<number>
    amount_milli: number | null
    amount_from: Generated<'brief' | 'typed' | 'weighed'>
    rule: string | null
    container_id: number | null
    carried_by: Generated<string>
    note: Generated<string>
    sort: Generated<number>
  }
  saved_view: Row & { room: string; name: string; state: string }
  door: Row & { loadout_id: number; reading_mg: number | null; scale_id: number | null; with_last: Generated<number> }
  door_line: Row & {
    loadout_id: number
    line_id: number | null
    name: Generated<string>
    state: Generated<DoorState>
    was_missing: Generated<number>
    last: number | null
    note: Generated<string>
  }
  record: Row & {
    trip_id: number
    past: Generated<number>
    month: string | null
    closed_at: string
    loadout_name: Generated<string>
    brief: Generated<string>
    walker: Generated<string>
    season: Generated<'spring' | 'summer' | 'autumn' | 'winter' | 'any'>
    starts_on: string | null
    ends_on: string | null
    zone: Generated<string>
    newest_item_id: number | null
  }
  away: Row & { trip_id: number; item_id: number; status: Exclude<Status, 'owned'> }
  packed: Row & PackedColumns
  debrief: Row & {
    trip_id: number
    low_c: number | null
    high_c: number | null
    wind_kmh: number | null
    rain: Generated<'' | 'none' | 'showers' | 'wet'>
    rain_hours: number | null
    nights: number | null
    length_m: number | null
    food_before_mg: number | null
    food_after_mg: number | null
    food_left_out: Generated<number>
    kept_at: string | null
    note: Generated<string>
  }
  debrief_line: Row & {
    trip_id: number
    packed_id: number | null
    item_id: number | null
    name: Generated<string>
    use: Generated<Use>
    said: Generated<'one' | 'rest'>
    verdict: Generated<Verdict>
    change: Generated<VerdictChange>
    only_when: Generated<string>
    what: Generated<string>
    to_item_id: number | null
    amount_milli: number | null
    low_c: number | null
    wind_kmh: number | null
    rain_hours: number | null
    nights: number | null
    length_m: number | null
    note: Generated<string>
  }
  trial_question: Row & { item_id: number; text: string; settled: Generated<number> }
  trial_answer: Row & { question_id: number; trip_id: number; text: string }
  leg_log: Row & {
    trip_id: number
    leg: number
    day: number
    name: Generated<string>
    started_minute: number | null
    moving_min: number | null
    break_min: number | null
    length_m: number | null
    climb_m: number | null
    descent_m: number | null
    drunk_ml: number | null
    left_ml: number | null
    origin: Generated<'typed' | 'track'>
    left_out: Generated<number>
    note: Generated<string>
  }
  night_log: Row & {
    trip_id: number
    night: number
    low_c: number | null
    slept: Generated<Slept>
    woke_minute: number | null
    left_out: Generated<number>
    note: Generated<string>
  }
  day_log: Row & {
    trip_id: number
    day: number
    shoulders: Generated<Comfort>
    feet: Generated<Comfort>
    hungry: Generated<'' | 'no' | 'yes'>
    left_out: Generated<number>
    note: Generated<string>
  }
  burn_log: Row & {
    trip_id: number
    packed_id: number | null
    name: Generated<string>
    before_mg: number | null
    after_mg: number | null
    heated_ml: number | null
    boils: number | null
    from_c: number | null
    left_out: Generated<number>
    note: Generated<string>
  }
  trip_photo: Row & {
    trip_id: number
    packed_id: number | null
    sha256: string
    thumb_sha256: string
    mime: string
    name: Generated<string>
    sort: Generated<number>
  }
  stage: { batch: string; n: number; row: string }
  step: { id: Generated<number>; code: string; facts: string; at: string; undone_at: string | null; bytes: Generated<number> }
  step_row: {
    id: Generated<number>
    step_id: number
    tbl: string
    uid: string
    row_id: number
    item_id: number | null
    before: string | null
    after: string | null
  }
  step_now: { id: number; step_id: number | null; quiet: number }
}

interface Row {
  id: Generated<number>
  uid: string
}

interface ItemColumns {
  name: string
  maker: Generated<string>
  kit_area: string
  pieces: Generated<number>
  status: Generated<Status>
  status_since: string | null
  lent_to: Generated<string>
  claimed_mg: number | null
  claimed_by: Generated<string>
  estimated_mg: number | null
  usual_lane: Generated<Lane>
  is_container: Generated<number>
  set_id: number | null
  serial: Generated<string>
  came: Generated<Way>
  came_on: string | null
  came_from: Generated<string>
  price_minor: number | null
  currency: Generated<string>
  sold_minor: number | null
  note: Generated<string>
  life_note: Generated<string>
  last_out_on: string | null
  archived: Generated<number>
}

interface PackedColumns {
  trip_id: number
  item_id: number | null
  supply_id: number | null
  container_id: number | null
  name: string
  kit_area: string
  lane: Lane
  pieces: Generated<number>
  owned_pieces: Generated<number>
  amount_milli: number | null
  amount_from: Generated<'brief' | 'typed' | 'weighed'>
  rule: string | null
  unit: Generated<'' | 'g' | 'ml' | 'piece'>
  mass_mg: number | null
  mass_from: Generated<'measured' | 'claimed' | 'estimated' | 'none'>
  shares: Generated<string>
  mass_about: Generated<string>
  duties: Generated<string>
  needs: Generated<string>
  traits: Generated<string>
  is_container: Generated<number>
  status: Generated<'owned' | 'lent'>
  carried_by: Generated<string>
  note: Generated<string>
  door: Generated<DoorState>
  was_missing: Generated<number>
  corrected: Generated<number>
  sort: Generated<number>
}
