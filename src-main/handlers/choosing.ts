import { ok, fault } from '../../src-domain/figures/fault.ts'
import { choiceState, startChoice, stopChoice } from '../choosing/chooser.ts'
import { factsOf } from '../choosing/facts.ts'
import * as lines from '../store/lines.ts'
import * as loadouts from '../store/loadouts.ts'
import { changed } from '../store/transactions.ts'
import type { HandlersOf } from './kinds.ts'

/** The lightest enough: started on what the store holds now, looked at while it is worked out, taken as one step. */
export const choosingHandlers: HandlersOf<'choice'> = {
  'choice.start': async (db, { loadoutId, ...options }, { raw, today }) => {
    const facts = await factsOf(db, raw, loadoutId, { zone: '', today })
    if (!facts.ok) return facts
    return ok({ ticket: startChoice({ facts: facts.value, options: { ...options, banned: [] } }) })
  },
  'choice.state': (_, { ticket }) => Promise.resolve(ok(choiceState(ticket))),
  'choice.stop': () => {
    stopChoice()
    return Promise.resolve(ok(null))
  },
  'choice.take': async (db, { loadoutId, put, removeIds }) => {
    const loadout = await loadouts.loadoutRow(db, loadoutId)
    if (!loadout.ok) return loadout
    if (removeIds.length > 0) {
      const heads = await lines.lineHeads(db, removeIds)
      if (!heads.ok) return heads
      await lines.removeLines(db, removeIds)
    }
    for (const [at, line] of put.entries()) {
      const done = await lines.putLine(db, loadoutId, line, at)
      if (!done.ok) return done
    }
    const count = put.length + removeIds.length
    return count === 0 ? fault('input.missing', { field: 'put' }) : changed({ count }, { name: loadout.value.name, count })
  },
}
