import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { ChoosingFacts } from '../../src-domain/choosing/from-facts.ts'
import { emptyBrief, readBrief } from '../../src-domain/trips/brief.ts'
import { emptyWalker, readWalker } from '../../src-domain/trips/walker.ts'
import { closetAll, traitColumns } from '../store/closet.ts'
import type { Raw, ReadDb } from '../store/handles.ts'
import { openLoadouts } from '../store/loadouts.ts'
import { prepared } from '../store/prepared.ts'
import { allSupplies } from '../store/supplies.ts'
import { allSeasons, allTrips, allWalkers } from '../store/trips.ts'

/** Reads what a choice for a loadout is worked out from: the closet, the loadout, and the brief of its trip or season. */
export async function factsOf(
  db: ReadDb,
  raw: Raw,
  loadoutId: number,
  around: { readonly zone: string; readonly today: string },
): Promise<Outcome<ChoosingFacts>> {
  const opened = await openLoadouts(db, [loadoutId])
  if (!opened.ok) return opened
  const open = opened.value[0]
  if (open === undefined) return fault('row.gone', { table: 'loadout', id: loadoutId })
  const [trips, seasons, walkers, supplies] = await Promise.all([allTrips(db), allSeasons(db), allWalkers(db), allSupplies(db)])
  const trip = trips.find(({ id }) => id === open.tripId)
  const season = seasons.find(({ id }) => id === (trip?.seasonId ?? open.seasonId))
  const walker = walkers.find(({ id }) => id === trip?.walkerId) ?? walkers[0]
  return ok({
    closet: closetAll(raw),
    properties: traitColumns(raw),
    supplies,
    materials: materialsOf(raw),
    name: open.name,
    lines: open.line,
    brief: trip ? readBrief(trip.brief) : season ? readBrief(season.brief) : emptyBrief,
    trip: {
      startsOn: trip?.startsOn ?? null,
      endsOn: trip?.endsOn ?? null,
      zone: trip?.zone ?? around.zone,
      season: season?.kind ?? 'any',
    },
    walker: walker ? readWalker(walker.profile) : emptyWalker,
    today: around.today,
  })
}

const materialsOf = (raw: Raw): ChoosingFacts['materials'] =>
  prepared<{ itemId: number; text: string }>(
    raw,
    `SELECT item_id AS itemId, text FROM item_label WHERE kind = 'material' ORDER BY id`,
  ).all()
