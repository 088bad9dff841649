import { ok } from '../../src-domain/figures/fault.ts'
import { careColumns } from '../store/care.ts'
import { learningLogs } from '../store/learning.ts'
import type { HandlersOf } from './kinds.ts'

export const learningHandlers: HandlersOf<'learning' | 'care'> = {
  'care.all': (_db, _input, { raw }) => Promise.resolve(ok(careColumns(raw))),
  'learning.logs': async (db, _input, { raw }) => ok(await learningLogs(db, raw)),
}
