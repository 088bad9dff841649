import type { Running } from './running.ts'
import { backupFolder, keepBackup, timesOf } from './store/backup.ts'
import type { Store } from './store/open.ts'

type Due = Pick<Running, 'options' | 'store'>

const dayMs = 24 * 60 * 60 * 1000
/** The first backup waits until the window has its first rows; then it is looked at every hour whether a day has passed. */
const firstBackupMs = 5000
const lookMs = 60 * 60 * 1000

/** A backup soon after the start where the newest is a day old, and again each day while running. */
export function startBackups(running: Due): () => void {
  const first = setTimeout(() => backUpIfDue(running), firstBackupMs)
  const again = setInterval(() => backUpIfDue(running), lookMs)
  first.unref()
  again.unref()
  return () => {
    clearTimeout(first)
    clearInterval(again)
    backUpIfDue(running)
  }
}

function backUpIfDue({ options, store }: Due): void {
  const open = store()
  if (!open.ok || isEmptyStore(open.value)) return
  const folder = backupFolder(options.dataDir)
  try {
    // One dated ahead of the clock is from before it was set back, and no reason to wait.
    const isRecent = (at: string) => Math.abs(options.now().getTime() - Date.parse(at)) < dayMs
    if (timesOf(folder, 'daily').some(isRecent)) return
    keepBackup(open.value.readRaw, folder, 'daily', options.now())
  } catch (error) {
    options.log.warn(`no backup could be kept: ${error instanceof Error ? error.message : String(error)}`)
  }
}

/** An empty store is no state to go back to, and its copies would push out those that are. */
function isEmptyStore({ readRaw }: Store): boolean {
  return (
    readRaw
      .prepare('SELECT 1 FROM item UNION ALL SELECT 1 FROM loadout UNION ALL SELECT 1 FROM supply UNION ALL SELECT 1 FROM trip LIMIT 1')
      .get() === undefined
  )
}
