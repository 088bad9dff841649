import { ok } from '../../src-domain/figures/fault.ts'
import { gone } from '../store/rows.ts'
import * as settings from '../store/settings.ts'
import { changed } from '../store/transactions.ts'
import type { HandlersOf } from './kinds.ts'

export const settingHandlers: HandlersOf<'setting' | 'view'> = {
  'setting.all': async (db) => ok(await settings.allSettings(db)),
  'setting.set': async (db, { key, value }) => {
    await settings.setSetting(db, key, value)
    return ok(null)
  },

  'view.all': async (db) => ok(await settings.allViews(db)),
  'view.save': async (db, view) => changed({ id: await settings.saveView(db, view) }, { name: view.name }),
  'view.remove': async (db, { id }) => {
    const name = await settings.viewName(db, id)
    if (name === undefined) return gone('saved_view', id)
    await settings.removeView(db, id)
    return changed(null, { name })
  },
}
