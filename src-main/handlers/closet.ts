import { ok } from '../../src-domain/figures/fault.ts'
import { closetAll, closetRows, traitColumns } from '../store/closet.ts'
import type { HandlersOf } from './kinds.ts'

export const closetHandlers: HandlersOf<'closet'> = {
  'closet.all': (_db, _input, { raw }) => Promise.resolve(ok(closetAll(raw))),
  'closet.rows': (_db, { ids }, { raw }) => Promise.resolve(ok(closetRows(raw, ids))),
  'closet.traits': (_db, _input, { raw }) => Promise.resolve(ok(traitColumns(raw))),
}
