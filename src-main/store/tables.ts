import type { Generated } from 'kysely'
import type { Lane, Status, Way } from '../../src-domain/closet/vocabulary.ts'

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
