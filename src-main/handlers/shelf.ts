import { ok } from '../../src-domain/figures/fault.ts'
import { allThere, ofSupply, setNeeds, setTrait } from '../store/items.ts'
import * as sets from '../store/sets.ts'
import * as supplies from '../store/supplies.ts'
import { changed } from '../store/transactions.ts'
import { addWord, allWords, knownCodes, setWord } from '../store/words.ts'
import type { HandlersOf } from './kinds.ts'

/** Sets, supplies and words. */
export const shelfHandlers: HandlersOf<'set' | 'supply' | 'word'> = {
  'set.all': async (db) => ok(await sets.allSets(db)),

  'set.add': async (db, { name, itemIds }) => {
    const there = await allThere(db, itemIds)
    if (!there.ok) return there
    return changed({ id: await sets.addSet(db, name, itemIds) }, { name, count: new Set(itemIds).size })
  },

  'set.edit': async (db, { id, name }) => {
    const before = await sets.setName(db, id)
    if (!before.ok) return before
    await sets.renameSet(db, id, name)
    return changed(null, { name })
  },

  'set.members': async (db, { id, itemIds }) => {
    const there = await allThere(db, itemIds)
    if (!there.ok) return there
    const name = id === null ? ok('') : await sets.setName(db, id)
    if (!name.ok) return name
    await sets.putInSet(db, id, itemIds)
    return changed(null, { name: name.value, count: new Set(itemIds).size })
  },

  'set.dissolve': async (db, { id }) => {
    const name = await sets.setName(db, id)
    if (!name.ok) return name
    await sets.dissolveSet(db, id)
    return changed(null, { name: name.value })
  },

  'supply.all': async (db) => ok(await supplies.allSupplies(db)),
  'supply.add': async (db, { name, kitArea, unit, ...fields }) =>
    changed({ id: await supplies.addSupply(db, name, kitArea, unit, fields) }, { name }),

  'supply.edit': async (db, { id, ...fields }) => {
    const name = await supplies.supplyName(db, id)
    if (!name.ok) return name
    await supplies.editSupply(db, id, fields)
    return changed(null, { name: fields.name ?? name.value })
  },

  'supply.trait': async (db, { id, trait }) => {
    const name = await supplies.supplyName(db, id)
    if (!name.ok) return name
    const known = await knownCodes(db, 'trait', [trait.code], 'trait.code')
    if (!known.ok) return known
    await setTrait(db, ofSupply(id), trait)
    return changed(null, { name: name.value, trait: trait.code })
  },

  'supply.needs': async (db, { id, needs }) => {
    const name = await supplies.supplyName(db, id)
    if (!name.ok) return name
    const known = await knownCodes(
      db,
      'duty',
      needs.map(({ duty }) => duty),
      'needs',
    )
    if (!known.ok) return known
    await setNeeds(db, ofSupply(id), needs)
    return changed(null, { name: name.value })
  },

  'word.all': async (db) => ok(await allWords(db)),
  'word.set': async (db, word) => {
    const set = await setWord(db, word)
    return set.ok ? changed(null, { label: word.label, kind: word.kind }) : set
  },
  'word.add': async (db, { kind, label, area, unit = '' }) =>
    changed({ code: await addWord(db, { kind, label, area, unit }) }, { label, kind }),
}
