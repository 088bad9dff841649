import { rm } from 'node:fs/promises'
import type { ProgramOptions } from '../program.ts'
import type { Running } from '../running.ts'
import { inTransaction } from '../store/transactions.ts'
import { sweepBoxes } from './boxes.ts'
import { filePath, unnamedFiles } from './file-store.ts'
import { namedAnywhere } from './named.ts'

/** What a sweep needs of the running program. */
export interface Swept extends Pick<Running, 'alone' | 'store'> {
  readonly options: Pick<ProgramOptions, 'dataDir' | 'now'>
}

/**
 * Lets go of photographs that no row, no undo step and no kept backup names, and of archives that waited for a day.
 * Rows go before files: a crash between leaves files without rows, which the next sweep takes. Gives how many files went.
 */
export function sweep(running: Swept): Promise<number> {
  return running.alone(async () => {
    const { dataDir, now } = running.options
    await sweepBoxes(dataDir, now().getTime())
    const store = running.store()
    const named = store.ok ? namedAnywhere(store.value.raw, dataDir) : null
    if (!store.ok || named === null) return 0
    const names = await unnamedFiles(dataDir, named, now().getTime())
    const { raw } = store.value
    const forget = raw.prepare('DELETE FROM file WHERE sha256 = ?')
    const forgotten = await inTransaction(raw, () => {
      for (const name of names) forget.run(name)
      return { ok: true }
    })
    if (!forgotten.ok) return 0
    for (const name of names) await rm(filePath(dataDir, name), { force: true })
    return names.length
  })
}

const firstMs = 60_000
const againMs = 24 * 60 * 60 * 1000

/** Sweeps a minute after the start and once a day; gives the way to stop. */
export function startSweeps(running: Running): () => void {
  const run = (): void => void sweep(running).catch((error: unknown) => running.options.log.error('the sweep of files failed', error))
  const first = setTimeout(run, firstMs)
  const again = setInterval(run, againMs)
  first.unref()
  again.unref()
  return () => {
    clearTimeout(first)
    clearInterval(again)
  }
}
