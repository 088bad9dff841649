import { ok } from '../../src-domain/figures/fault.ts'
import { knownCodes } from '../store/words.ts'
import * as packed from '../store/packed.ts'
import { frozenTrip, openRecord, recordColumns } from '../store/record.ts'
import { changed } from '../store/transactions.ts'
import type { HandlersOf } from './kinds.ts'

const codesOf = (duties: readonly { readonly duty: string }[] = []): readonly string[] => duties.map(({ duty }) => duty)

export const recordHandlers: HandlersOf<'record' | 'packed'> = {
  'record.open': (db, { tripId }) => openRecord(db, tripId),
  'record.all': async (db, _input, { raw }) => ok(await recordColumns(db, raw)),

  'packed.correct': async (db, { id, ...fields }) => {
    const head = await packed.packedHead(db, id)
    if (!head.ok) return head
    const known = await knownCodes(db, 'duty', codesOf(fields.duties), 'duties')
    if (!known.ok) return known
    await packed.correctPacked(db, head.value, fields)
    return changed(null, { name: fields.name ?? head.value.name })
  },

  'packed.add': async (db, added, { raw }) => {
    const trip = await frozenTrip(db, added.tripId)
    if (!trip.ok) return trip
    const known = await knownCodes(db, 'duty', codesOf(added.duties), 'duties')
    if (!known.ok) return known
    const id = await packed.addPacked(db, raw, added)
    if (!id.ok) return id
    const head = await packed.packedHead(db, id.value)
    return head.ok ? changed({ id: id.value }, { name: head.value.name, trip: trip.value }) : head
  },

  'packed.remove': async (db, { id }) => {
    const head = await packed.packedHead(db, id)
    if (!head.ok) return head
    await packed.removePacked(db, id)
    return changed(null, { name: head.value.name })
  },
}
