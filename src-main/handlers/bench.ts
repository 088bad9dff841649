import { ok } from '../../src-domain/figures/fault.ts'
import { itemHead } from '../store/items.ts'
import * as photos from '../store/photos.ts'
import * as scales from '../store/scales.ts'
import { changed } from '../store/transactions.ts'
import * as weighings from '../store/weighings.ts'
import type { HandlersOf } from './kinds.ts'

/** Weighings, scales and their check masses, photographs. */
export const benchHandlers: HandlersOf<'weighing' | 'scale' | 'photo'> = {
  'weighing.day': async (db, { day }) => ok(await weighings.weighingsOn(db, day)),

  'weighing.remove': async (db, { id }) => {
    const head = await weighings.weighingHead(db, id)
    if (!head.ok) return head
    await weighings.removeWeighing(db, id)
    return changed(null, { name: head.value.itemName, massMg: head.value.massMg })
  },

  'weighing.mark': async (db, { id, ...marks }) => {
    const head = await weighings.weighingHead(db, id)
    if (!head.ok) return head
    await weighings.markWeighing(db, id, marks)
    return changed(null, { name: head.value.itemName })
  },

  'scale.all': async (db) => ok(await scales.allScales(db)),
  'scale.add': async (db, scale) => changed({ id: await scales.addScale(db, scale) }, { name: scale.name }),

  'scale.edit': async (db, { id, ...fields }) => {
    const name = await scales.scaleName(db, id)
    if (!name.ok) return name
    await scales.editScale(db, id, fields)
    return changed(null, { name: fields.name ?? name.value })
  },

  'scale.check': async (db, check) => {
    const name = await scales.scaleName(db, check.scaleId)
    if (!name.ok) return name
    return changed({ id: await scales.addCheck(db, check) }, { name: name.value })
  },

  'scale.uncheck': async (db, { id }) => {
    const name = await scales.checkScale(db, id)
    if (!name.ok) return name
    await scales.removeCheck(db, id)
    return changed(null, { name: name.value })
  },

  'photo.add': async (db, photo) => {
    const head = await itemHead(db, photo.itemId)
    if (!head.ok) return head
    const added = await photos.addPhoto(db, photo)
    return added.ok ? changed({ id: added.value }, { name: head.value.name }) : added
  },

  'photo.remove': async (db, { id }) => {
    const photo = await photos.photoOf(db, id)
    if (!photo.ok) return photo
    await photos.removePhoto(db, id)
    return changed(null, { name: photo.value.itemName })
  },

  'photo.order': async (db, { itemId, ids }) => {
    const head = await itemHead(db, itemId)
    if (!head.ok) return head
    const ordered = await photos.orderPhotos(db, itemId, ids)
    return ordered.ok ? changed(null, { name: head.value.name }) : ordered
  },
}
