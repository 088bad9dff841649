import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { Running } from '../running.ts'
import { inTransaction } from '../store/transactions.ts'
import type { KeptFile } from './file-store.ts'

/** Writes the row that says a file is kept. No undo step: a file is no change of the closet until a row names it. */
export function keepFileRow(running: Running, { sha256, mime, bytes }: KeptFile): Promise<Outcome<null>> {
  return running.alone(async () => {
    const store = running.store()
    if (!store.ok) return store
    const { raw } = store.value
    const put = raw.prepare('INSERT INTO file (sha256, mime, bytes) VALUES (?, ?, ?) ON CONFLICT (sha256) DO NOTHING')
    return await inTransaction(raw, () => {
      put.run(sha256, mime, bytes)
      return ok(null)
    })
  })
}
