import type { ProgramState } from '../../src-main/contract.ts'
import type { BackupRow } from '../../src-main/contract.ts'

export const whyWords: Readonly<Record<BackupRow['why'], string>> = {
  daily: 'of the day',
  hand: 'by hand',
  migration: 'before an update',
  restore: 'before a restore',
}

export const bytesWords = (bytes: number): string =>
  bytes < 1_000_000 ? `${Math.max(1, Math.round(bytes / 1000))} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`

const moment = (zone: string) =>
  new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit', timeZone: zone })
/** `25 Nov 2026, 09:20`, in the zone the program works in. */
export const momentWords = (at: string, zone = 'UTC'): string => moment(zone).format(new Date(at))

type Trouble = NonNullable<ProgramState['trouble']>
/** What happened to the store, and what stays safe. */
export const troubleWords: Readonly<Record<Trouble['code'], { readonly title: string; readonly what: string }>> = {
  'store.damaged': {
    title: 'The data cannot be read',
    what: 'The database is damaged. It was left exactly as it is and nothing is written to it. A restore moves it aside, it does not overwrite it.',
  },
  'store.newer': {
    title: 'The data are newer than this program',
    what: 'A newer version of Tarework wrote them. Start that version again, or bring this one up to date. Nothing was changed.',
  },
  'store.read-only': {
    title: 'The data folder cannot be written',
    what: 'Check who may write in it, or whether its disk is mounted for reading only, then start Tarework again. Nothing was changed.',
  },
  'store.full': {
    title: 'The disk is full',
    what: 'There is no room to open the database safely. Free some space, then start Tarework again. Nothing was changed.',
  },
}

/** What is in the program besides its own code, and under which licence. */
export const licences: readonly (readonly [string, string])[] = [
  ['Source Sans 3, the type', 'SIL Open Font Licence 1.1'],
  ['SQLite', 'public domain'],
  ['better-sqlite3, kysely', 'MIT'],
  ['HiGHS', 'MIT'],
  ['Svelte, bits-ui, chart.js', 'MIT'],
  ['valibot, papaparse, temporal-polyfill', 'MIT'],
  ['geographiclib-geodesic, astronomy-engine, jstat', 'MIT'],
  ['fflate, electron-log, Electron', 'MIT'],
  ['saxes', 'ISC'],
]
