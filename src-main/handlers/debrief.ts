import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import * as debrief from '../store/debrief.ts'
import type { ReadDb } from '../store/handles.ts'
import { itemHead } from '../store/items.ts'
import * as logs from '../store/logs.ts'
import { packedHead } from '../store/packed.ts'
import { addPast } from '../store/past.ts'
import { frozenTrip, packedIsOf } from '../store/record.ts'
import { gone, invalid } from '../store/rows.ts'
import { changed } from '../store/transactions.ts'
import * as trials from '../store/trials.ts'
import { addTripPhoto, removeTripPhoto, tripOfPhoto } from '../store/trip-photos.ts'
import { nameIn } from '../store/trips.ts'
import type { Around, HandlersOf } from './kinds.ts'

/** Only a trip that is out or back can be told of. A packed line that is named must be its own. */
async function tripFor(
  db: ReadDb,
  { raw }: Around,
  { tripId, packedId }: { readonly tripId: number; readonly packedId?: number | null | undefined },
): Promise<Outcome<string>> {
  const trip = await frozenTrip(db, tripId)
  if (!trip.ok) return trip
  return typeof packedId === 'number' && !packedIsOf(raw, tripId, packedId) ? gone('packed', packedId) : trip
}

async function tripNameOf(db: ReadDb, tripId: Outcome<number>): Promise<Outcome<string>> {
  return tripId.ok ? nameIn(db, 'trip', tripId.value) : tripId
}

export const debriefHandlers: HandlersOf<'debrief' | 'trial' | 'past'> = {
  'debrief.trip': async (db, { tripId, ...fields }, around) => {
    const trip = await tripFor(db, around, { tripId })
    if (!trip.ok) return trip
    await debrief.tellTrip(db, tripId, fields)
    return changed(null, { name: trip.value })
  },

  'debrief.keep': async (db, { tripId, kept }, around) => {
    const trip = await tripFor(db, around, { tripId })
    if (!trip.ok) return trip
    await debrief.tellTrip(db, tripId, { keptAt: kept ? around.today : null })
    return changed(null, { name: trip.value })
  },

  'debrief.line': async (db, { packedId, ...said }) => {
    const head = await packedHead(db, packedId)
    if (!head.ok) return head
    const to = await debrief.sayOfPacked(db, head.value.tripId, packedId, said)
    return to.ok ? changed({ toItemId: to.value }, { name: head.value.name }) : to
  },

  'debrief.rest': async (db, { tripId, use, verdict }, around) => {
    const trip = await tripFor(db, around, { tripId })
    if (!trip.ok) return trip
    const count = await debrief.sayOfRest(db, tripId, use, verdict)
    return changed({ count }, { name: trip.value, count })
  },

  'debrief.missed': async (db, { tripId, itemId = null, name }, around) => {
    const trip = await tripFor(db, around, { tripId })
    if (!trip.ok) return trip
    const item = itemId === null ? null : await itemHead(db, itemId)
    if (item?.ok === false) return item
    if (item === null && name === undefined) return invalid('name', 'a thing has an item or a name')
    const called = item?.value.name ?? name ?? ''
    return changed({ id: await debrief.addMissed(db, tripId, itemId, called) }, { name: called })
  },

  'debrief.missing': async (db, { id, ...said }) => {
    const head = await debrief.saidHead(db, id)
    if (!head.ok) return head
    if (head.value.packedId !== null) return invalid('id', 'it was packed')
    const to = await debrief.sayOf(db, id, said)
    return to.ok ? changed({ toItemId: to.value }, { name: head.value.name }) : to
  },

  'debrief.unsay': async (db, { id }) => {
    const head = await debrief.saidHead(db, id)
    if (!head.ok) return head
    await debrief.unsay(db, id)
    return changed(null, { name: head.value.name })
  },

  'debrief.leg': async (db, log, around) => {
    const trip = await tripFor(db, around, log)
    return trip.ok ? changed({ id: await logs.putLog(db, 'leg', log) }, { name: trip.value }) : trip
  },
  'debrief.night': async (db, log, around) => {
    const trip = await tripFor(db, around, log)
    return trip.ok ? changed({ id: await logs.putLog(db, 'night', log) }, { name: trip.value }) : trip
  },
  'debrief.day': async (db, log, around) => {
    const trip = await tripFor(db, around, log)
    return trip.ok ? changed({ id: await logs.putLog(db, 'day', log) }, { name: trip.value }) : trip
  },
  'debrief.burn': async (db, log, around) => {
    const trip = await tripFor(db, around, log)
    if (!trip.ok) return trip
    const id = await logs.putBurn(db, log)
    return id.ok ? changed({ id: id.value }, { name: trip.value }) : id
  },

  'debrief.unlog': async (db, { kind, id }) => {
    const trip = await tripNameOf(db, await logs.logTrip(db, kind, id))
    if (!trip.ok) return trip
    await logs.removeLog(db, kind, id)
    return changed(null, { name: trip.value, kind })
  },
  'debrief.leaveOut': async (db, { kind, id, leftOut }) => {
    const trip = await tripNameOf(db, await logs.logTrip(db, kind, id))
    if (!trip.ok) return trip
    await logs.leaveLogOut(db, kind, id, leftOut)
    return changed(null, { name: trip.value, kind })
  },

  'debrief.photo': async (db, photo, around) => {
    const trip = await tripFor(db, around, photo)
    if (!trip.ok) return trip
    const id = await addTripPhoto(db, photo)
    return id.ok ? changed({ id: id.value }, { name: trip.value }) : id
  },
  'debrief.unphoto': async (db, { id }) => {
    const trip = await tripNameOf(db, await tripOfPhoto(db, id))
    if (!trip.ok) return trip
    await removeTripPhoto(db, id)
    return changed(null, { name: trip.value })
  },

  'trial.of': async (db, { itemId }) => ok(await trials.questionsOf(db, itemId)),
  'trial.ask': async (db, { itemId, text }) => {
    const item = await itemHead(db, itemId)
    return item.ok ? changed({ id: await trials.addQuestion(db, itemId, text) }, { name: item.value.name }) : item
  },
  'trial.edit': async (db, { id, ...fields }) => {
    const head = await trials.questionHead(db, id)
    if (!head.ok) return head
    await trials.editQuestion(db, id, fields)
    return changed(null, { name: head.value.itemName })
  },
  'trial.remove': async (db, { id }) => {
    const head = await trials.questionHead(db, id)
    if (!head.ok) return head
    await trials.removeQuestion(db, id)
    return changed(null, { name: head.value.itemName })
  },
  'trial.answer': async (db, { id, tripId, text }, around) => {
    const head = await trials.questionHead(db, id)
    if (!head.ok) return head
    const trip = await tripFor(db, around, { tripId })
    if (!trip.ok) return trip
    await trials.answerQuestion(db, id, tripId, text)
    return changed(null, { name: head.value.itemName })
  },

  'past.add': async (db, { trips }, around) => {
    const ids: number[] = []
    for (const [at, trip] of trips.entries()) {
      const walker = typeof trip.walkerId === 'number' ? await nameIn(db, 'walker', trip.walkerId) : null
      if (walker?.ok === false) return walker
      const added = await addPast(db, around, trip)
      if (!added.ok) return { ok: false, fault: { code: added.fault.code, facts: { ...added.fault.facts, at } } }
      ids.push(added.value)
    }
    return changed({ ids }, trips.length === 1 ? { name: trips[0]!.name, count: 1 } : { count: trips.length })
  },
}
