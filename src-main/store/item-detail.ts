import type { KitArea } from '../../src-domain/closet/vocabulary.ts'
import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { ItemDetail } from '../answers.ts'
import type { ReadDb } from './handles.ts'
import { gone } from './rows.ts'
import { stepsOfItem } from './steps.ts'
import { weighingsOf } from './weighings.ts'

/** One item, whole. */
export async function itemDetail(db: ReadDb, id: number): Promise<Outcome<ItemDetail>> {
  const row = await db.selectFrom('item').selectAll().where('id', '=', id).executeTakeFirst()
  if (!row) return gone('item', id)
  const fields = {
    id,
    uid: row.uid,
    name: row.name,
    maker: row.maker,
    kitArea: row.kit_area as KitArea,
    pieces: row.pieces,
    status: row.status,
    statusSince: row.status_since,
    lentTo: row.lent_to,
    claimedMg: row.claimed_mg,
    claimedBy: row.claimed_by,
    estimatedMg: row.estimated_mg,
    usualLane: row.usual_lane,
    isContainer: row.is_container === 1,
    setId: row.set_id,
    serial: row.serial,
    came: row.came,
    cameOn: row.came_on,
    cameFrom: row.came_from,
    priceMinor: row.price_minor,
    currency: row.currency,
    soldMinor: row.sold_minor,
    note: row.note,
    lifeNote: row.life_note,
    lastOutOn: row.last_out_on,
    archived: row.archived === 1,
  }
  return ok({
    ...fields,
    ...(await parts(db, id)),
    weighings: await weighingsOf(db, id),
    loadouts: await loadoutsWith(db, id),
    history: await stepsOfItem(db, id),
  })
}

async function parts(db: ReadDb, id: number) {
  const duties = await db.selectFrom('item_duty').select(['duty', 'shared']).where('item_id', '=', id).orderBy('id').execute()
  const labels = await db.selectFrom('item_label').select(['kind', 'text']).where('item_id', '=', id).orderBy('id').execute()
  const of = (kind: 'tag' | 'material' | 'season') => labels.filter((label) => label.kind === kind).map(({ text }) => text)
  return {
    duties: duties.map(({ duty, shared }) => ({ duty, shared: shared === 1 })),
    tags: of('tag'),
    materials: of('material'),
    seasons: of('season'),
    links: await db.selectFrom('item_link').select(['url', 'label']).where('item_id', '=', id).orderBy('id').execute(),
    traits: await db
      .selectFrom('trait_value')
      .select(['code', 'number', 'text', 'typed', 'typed_unit as typedUnit', 'origin', 'source', 'noted_on as notedOn'])
      .where('item_id', '=', id)
      .orderBy('id')
      .execute(),
    needs: await db.selectFrom('need').select(['duty', 'pieces', 'kind']).where('item_id', '=', id).orderBy('id').execute(),
    counters: await db
      .selectFrom('item_counter')
      .select(['code', 'amount', 'origin', 'note', 'noted_on as notedOn'])
      .where('item_id', '=', id)
      .orderBy('id')
      .execute(),
    photos: await db
      .selectFrom('photo')
      .select(['id', 'sha256', 'thumb_sha256 as thumbSha256', 'mime', 'name'])
      .where('item_id', '=', id)
      .orderBy('sort')
      .orderBy('id')
      .execute(),
  }
}

async function loadoutsWith(db: ReadDb, itemId: number): Promise<ItemDetail['loadouts']> {
  return db
    .selectFrom('loadout')
    .leftJoin('trip', 'trip.id', 'loadout.trip_id')
    .select(['loadout.id', 'loadout.name', 'trip.name as tripName', 'trip.starts_on as startsOn', 'trip.state'])
    .where('loadout.id', 'in', (eb) =>
      eb
        .selectFrom('line')
        .select('loadout_id')
        .where((or) => or.or([or('item_id', '=', itemId), or('container_id', '=', itemId)])),
    )
    .orderBy('loadout.id', 'desc')
    .execute()
}
