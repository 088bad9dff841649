import { ok } from '../../src-domain/figures/fault.ts'
import * as bringIn from '../store/bring-in.ts'
import { addLoadout } from '../store/loadouts.ts'
import { changed } from '../store/transactions.ts'
import { knownCodes } from '../store/words.ts'
import type { HandlersOf } from './kinds.ts'
import { placeThere } from './loadouts.ts'

export const bringInHandlers: HandlersOf<'bringIn'> = {
  'bringIn.stage': (_db, { batch, from, rows }, { raw }) => Promise.resolve(ok({ staged: bringIn.stageRows(raw, batch, from, rows) })),

  'bringIn.drop': (_db, { batch }, { raw }) => {
    bringIn.dropStaged(raw, batch)
    return Promise.resolve(ok(null))
  },

  /** One short transaction and one undo step for the whole sheet; on any fault nothing is changed and the staged rows stay. */
  'bringIn.accept': async (db, { batch, rows: sent, loadout }, { raw, today }) => {
    const staged = bringIn.allStaged(raw, batch, sent)
    if (!staged.ok) return staged
    const rows = bringIn.stagedRows(raw, batch)
    const known = await knownCodes(db, 'duty', bringIn.dutiesOf(rows), 'rows')
    if (!known.ok) return known
    const place = loadout === null ? ok(null) : await placeThere(db, loadout)
    if (!place.ok) return place
    const loadoutId = loadout === null ? null : await addLoadout(db, loadout)
    const made = bringIn.makeOf(raw, rows, loadoutId, today)
    if (!made.ok) return made
    bringIn.dropStaged(raw, batch)
    return changed({ ...made.value, loadoutId }, { count: made.value.items, lines: made.value.lines, name: loadout?.name ?? '' })
  },
}
