import { itemDetail } from '../store/item-detail.ts'
import * as items from '../store/items.ts'
import { insertNewItem } from '../store/new-items.ts'
import { setName } from '../store/sets.ts'
import { changed } from '../store/transactions.ts'
import { keepWeighing } from '../store/weighings.ts'
import { knownCodes } from '../store/words.ts'
import type { HandlersOf } from './kinds.ts'

/** The one field of an edit, for the name of its step; several have no name of their own. */
function fieldOf(fields: object): { readonly field?: string } {
  const given = Object.entries(fields).filter(([, value]) => value !== undefined)
  return given.length === 1 ? { field: given[0]![0] } : {}
}

const codesOf = (duties: readonly { readonly duty: string }[] = []): readonly string[] => duties.map(({ duty }) => duty)

export const itemHandlers: HandlersOf<'item' | 'items'> = {
  'item.open': (db, { id }) => itemDetail(db, id),

  'item.add': async (db, item, { raw, today }) => {
    const known = await knownCodes(db, 'duty', codesOf(item.duties), 'duties')
    if (!known.ok) return known
    const set = typeof item.setId === 'number' ? await setName(db, item.setId) : null
    if (set?.ok === false) return set
    const id = insertNewItem(raw, item, today, 'typed')
    return id.ok ? changed({ id: id.value }, { name: item.name }) : id
  },

  'item.edit': async (db, { id, ...fields }, { today }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    const set = typeof fields.setId === 'number' ? await setName(db, fields.setId) : null
    if (set?.ok === false) return set
    await items.editItem(db, head.value, fields, today)
    return changed(null, { name: fields.name ?? head.value.name, ...fieldOf(fields) })
  },

  'item.duplicate': async (db, { id }, { raw }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    return changed({ id: await items.duplicateItem(db, raw, id) }, { name: head.value.name })
  },

  'item.duties': async (db, { id, duties }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    const known = await knownCodes(db, 'duty', codesOf(duties), 'duties')
    if (!known.ok) return known
    await items.setDuties(db, id, duties)
    return changed(null, { name: head.value.name })
  },

  'item.needs': async (db, { id, needs }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    const known = await knownCodes(db, 'duty', codesOf(needs), 'needs')
    if (!known.ok) return known
    await items.setNeeds(db, items.ofItem(id), needs)
    return changed(null, { name: head.value.name })
  },

  'item.labels': async (db, { id, kind, texts }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    await items.setLabels(db, id, kind, texts)
    return changed(null, { name: head.value.name, kind })
  },

  'item.links': async (db, { id, links }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    await items.setLinks(db, id, links)
    return changed(null, { name: head.value.name })
  },

  'item.trait': async (db, { id, trait }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    const known = await knownCodes(db, 'trait', [trait.code], 'trait.code')
    if (!known.ok) return known
    await items.setTrait(db, items.ofItem(id), trait)
    return changed(null, { name: head.value.name, trait: trait.code })
  },

  'item.untrait': async (db, { id, code }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    const removed = await items.removeTrait(db, id, code)
    return removed.ok ? changed(null, { name: head.value.name, trait: code }) : removed
  },

  'item.counter': async (db, { id, ...counter }) => {
    const head = await items.itemHead(db, id)
    if (!head.ok) return head
    await items.setCounter(db, id, counter)
    return changed(null, { name: head.value.name, counter: counter.code })
  },

  'item.weigh': async (db, weighing) => {
    const head = await items.itemHead(db, weighing.itemId)
    if (!head.ok) return head
    const kept = await keepWeighing(db, weighing)
    return kept.ok ? changed(kept.value, { name: head.value.name, massMg: kept.value.massMg }) : kept
  },

  'items.weigh': async (db, { weighings }) => {
    const there = await items.allThere(
      db,
      weighings.map(({ itemId }) => itemId),
    )
    if (!there.ok) return there
    for (const [at, weighing] of weighings.entries()) {
      const kept = await keepWeighing(db, weighing)
      if (!kept.ok) return { ok: false, fault: { code: kept.fault.code, facts: { ...kept.fault.facts, at } } }
    }
    return changed({ count: weighings.length }, { count: weighings.length })
  },

  'items.edit': async (db, { ids, addTags, removeTags, addDuties, removeDuties, ...fields }, { today }) => {
    const there = await items.allThere(db, ids)
    if (!there.ok) return there
    const known = await knownCodes(db, 'duty', addDuties ?? [], 'addDuties')
    if (!known.ok) return known
    await items.editItems(db, ids, fields, today)
    await items.removeLabels(db, ids, 'tag', removeTags ?? [])
    await items.addLabels(db, ids, 'tag', addTags ?? [])
    await items.removeDuties(db, ids, removeDuties ?? [])
    await items.addDuties(db, ids, addDuties ?? [])
    return changed(null, { count: new Set(ids).size, ...fieldOf({ ...fields, addTags, removeTags, addDuties, removeDuties }) })
  },

  'items.remove': async (db, { ids }) => {
    const there = await items.allThere(db, ids)
    if (!there.ok) return there
    const head = await items.itemHead(db, ids[0]!)
    const removed = await items.removeItems(db, ids)
    return changed(removed, { count: new Set(ids).size, ...(head.ok ? { name: head.value.name } : {}) })
  },
}
