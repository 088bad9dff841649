import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { Kysely, sql, SqliteDialect } from 'kysely'
import { Migrator } from 'kysely/migration'
import { describe, expect, test } from 'vitest'
import { migrations } from '../../../migrations/index.ts'
import { listBackups, backupFolder } from '../../../src-main/store/backup.ts'
import { openStore, storeFile, type Store } from '../../../src-main/store/open.ts'
import { setPragmas } from '../../../src-main/store/pragmas.ts'
import { afterTest, programAt, tempFolder } from '../program-at.ts'

const now = () => new Date('2026-09-20T10:00:00.000Z')

async function opened(dataDir: string, more = migrations): Promise<Store> {
  const store = await openStore({ dataDir, now, migrations: more })
  if (!store.ok) throw new Error(JSON.stringify(store.fault))
  afterTest(() => store.value.close())
  return store.value
}

/** A folder with one item in its store, closed. */
async function filled(): Promise<string> {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  await tried.program().close()
  return tried.dataDir
}

describe('connections', () => {
  test('every pragma holds on both connections, read back from each', async () => {
    const store = await opened(tempFolder())
    for (const raw of [store.raw, store.readRaw]) {
      const read = (name: string) => raw.pragma(name, { simple: true })
      expect(read('journal_mode')).toBe('wal')
      expect(read('synchronous')).toBe(2)
      expect(read('foreign_keys')).toBe(1)
      expect(read('busy_timeout')).toBe(3000)
      expect(read('recursive_triggers')).toBe(1)
      expect(read('temp_store')).toBe(2)
    }
  })

  test('a pragma that does not take is an error', () => {
    const raw = new Database(':memory:') // a database in memory cannot have a write-ahead log
    expect(() => setPragmas(raw)).toThrow('pragma journal_mode is memory, wanted wal')
    raw.close()
  })

  test('a Mac also gets fullfsync', () => {
    const raw = new Database(join(tempFolder(), 'a.sqlite'))
    setPragmas(raw, 'darwin')
    expect(raw.pragma('fullfsync', { simple: true })).toBe(1)
    raw.close()
  })

  test('the reading connection cannot write', async () => {
    const store = await opened(tempFolder())
    expect(() => store.readRaw.exec(`INSERT INTO setting VALUES ('a', 'b')`)).toThrow(expect.objectContaining({ code: 'SQLITE_READONLY' }))
  })
})

describe('migrations', () => {
  const later = {
    ...migrations,
    '9990-later': { up: (db: Kysely<unknown>) => sql`ALTER TABLE season ADD COLUMN later TEXT`.execute(db).then(() => undefined) },
  }
  const broken = {
    ...migrations,
    '9990-later': {
      up: async (db: Kysely<unknown>) => {
        await sql`ALTER TABLE season ADD COLUMN later TEXT`.execute(db)
        await sql`SELECT * FROM nowhere`.execute(db)
      },
    },
  }

  test('a store from before the record keeps every row of every table it had', async () => {
    const dataDir = tempFolder()
    const raw = new Database(storeFile(dataDir))
    const db = new Kysely<unknown>({ dialect: new SqliteDialect({ database: raw }) })
    const provider = { getMigrations: () => Promise.resolve({ '0010-closet': migrations['0010-closet']! }) }
    await new Migrator({ db, provider }).migrateToLatest()
    const uid = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
    raw.exec(`INSERT INTO item (id, uid, name, kit_area) VALUES (1, '${uid(1)}', 'Pot', 'kitchen'), (2, '${uid(2)}', 'Tarp', 'shelter')`)
    raw.exec(`INSERT INTO season (id, uid, name) VALUES (1, '${uid(3)}', 'Autumn')`)
    raw.exec(`INSERT INTO trip (id, uid, name, season_id) VALUES (1, '${uid(4)}', 'Ridge', 1)`)
    raw.exec(`INSERT INTO loadout (id, uid, name, trip_id) VALUES (1, '${uid(5)}', 'Light', 1)`)
    raw.exec(`INSERT INTO line (uid, loadout_id, item_id, lane) VALUES ('${uid(6)}', 1, 1, 'in_pack'), ('${uid(7)}', 1, 2, 'in_pack')`)
    raw.exec(
      `INSERT INTO weighing (uid, item_id, weighed_on, readings, mass_mg, u_own_mg, u_gain_mg) VALUES ('${uid(8)}', 1, '2026-09-01', '[126000]', 126000, 650, 0)`,
    )
    const tables = ['item', 'season', 'trip', 'loadout', 'line', 'weighing']
    const rows = (from: Store['raw']) => tables.map((table) => from.prepare(`SELECT * FROM ${table} ORDER BY id`).all() as object[])
    const before = rows(raw)
    await db.destroy()

    const store = await opened(dataDir)
    // New columns may stand beside the old ones; what there was is as it was.
    expect(rows(store.raw)).toEqual(before.map((table) => table.map((row) => expect.objectContaining(row) as object)))
    expect(store.raw.pragma('integrity_check', { simple: true })).toBe('ok')
    expect(store.raw.pragma('foreign_key_check')).toEqual([])
    expect(listBackups(backupFolder(dataDir)).length).toBeGreaterThan(0)
  })

  test('a copy is kept before a migration runs; its steps go, its rows stay', async () => {
    const dataDir = await filled()
    const store = await opened(dataDir, later)
    const backups = listBackups(backupFolder(dataDir))
    expect(backups.map(({ why, sound }) => [why, sound])).toEqual([['migration', true], ['daily', true]]) // prettier-ignore
    expect(store.raw.prepare('SELECT name FROM item').pluck().all()).toEqual(['Pot'])
    expect(store.raw.prepare('SELECT count(*) FROM step').pluck().get()).toBe(0)
    const copy = new Database(join(backupFolder(dataDir), backups[0]!.name), { readonly: true })
    expect(copy.prepare('SELECT count(*) FROM step').pluck().get()).toBe(1)
    copy.close()
  })

  test('the triggers follow a table that a migration changed', async () => {
    const dataDir = await filled()
    const store = await opened(dataDir, later)
    const sqlText = store.raw.prepare(`SELECT sql FROM sqlite_master WHERE name = 'step_season_insert'`).pluck().get()
    expect(sqlText).toContain(`'later', NEW.later`)
  })

  test('a migration that fails changes nothing', async () => {
    const dataDir = await filled()
    const store = await openStore({ dataDir, now, migrations: broken })
    expect(store).toMatchObject({ ok: false, fault: { code: 'store.damaged' } })
    const raw = new Database(storeFile(dataDir), { readonly: true })
    expect(raw.prepare(`SELECT count(*) FROM pragma_table_info('season') WHERE name = 'later'`).pluck().get()).toBe(0)
    expect(raw.prepare('SELECT count(*) FROM step').pluck().get()).toBe(1)
    raw.close()
  })

  test('a file of a later program is refused and left as it is', async () => {
    const dataDir = await filled()
    ;(await opened(dataDir, later)).close()
    const before = readFileSync(storeFile(dataDir))
    const tried = await programAt(dataDir)
    expect((await tried.does('program.state', {})).trouble).toMatchObject({ code: 'store.newer', detail: '9990-later' })
    expect((await tried.refuses('closet.all', {})).code).toBe('store.newer')
    expect(readFileSync(storeFile(dataDir)).equals(before)).toBe(true)
  })
})

describe('a damaged file', () => {
  /** Overwrites the middle of every page but the first: the header still reads, the rows do not. */
  function spoil(file: string): Buffer {
    const bytes = readFileSync(file)
    for (let at = 4096; at < bytes.length; at += 4096) bytes.fill(0x5a, at, at + 2048)
    writeFileSync(file, bytes)
    return bytes
  }

  test('is never written to: the program says what happened and offers the newest good backup, which restores', async () => {
    const dataDir = await filled()
    const name = listBackups(backupFolder(dataDir))[0]!.name
    const bytes = spoil(storeFile(dataDir))
    const tried = await programAt(dataDir)
    expect((await tried.does('program.state', {})).trouble).toMatchObject({ code: 'store.damaged', backup: name })
    expect((await tried.refuses('item.add', { name: 'Pan', kitArea: 'kitchen' })).code).toBe('store.damaged')
    expect(readFileSync(storeFile(dataDir)).equals(bytes)).toBe(true)
    await tried.does('backup.restore', { name })
    expect((await tried.does('program.state', {})).trouble).toBeNull()
    expect((await tried.does('closet.all', {})).name).toEqual(['Pot'])
    const aside = readdirSync(dataDir).filter((one) => one.startsWith('replaced-'))
    expect(aside).toHaveLength(1)
    expect(readFileSync(join(dataDir, aside[0]!)).equals(bytes)).toBe(true)
  })

  test('that goes bad while the program runs is noticed, and not written to again', async () => {
    const tried = await programAt()
    for (let n = 0; n < 200; n += 1) await tried.does('item.add', { name: `Item ${n}`, kitArea: 'extras', note: 'x'.repeat(10_000) })
    const { name } = await tried.does('backup.now', {})
    await tried.reopen()
    await tried.does('item.edit', { id: 1, note: 'in the log, not yet in the file' })
    const bytes = spoil(storeFile(tried.dataDir))
    expect((await tried.refuses('closet.all', {})).code).toBe('store.damaged')
    expect((await tried.does('program.state', {})).trouble).toMatchObject({ code: 'store.damaged', backup: name })
    expect((await tried.refuses('item.add', { name: 'Pan', kitArea: 'kitchen' })).code).toBe('store.damaged')
    expect(readFileSync(storeFile(tried.dataDir)).equals(bytes)).toBe(true)
    await tried.does('backup.restore', { name })
    expect((await tried.does('closet.all', {})).id).toHaveLength(200)
  })

  test('a spoiled backup is not offered, and cannot be restored', async () => {
    const dataDir = await filled()
    const name = listBackups(backupFolder(dataDir))[0]!.name
    spoil(join(backupFolder(dataDir), name))
    spoil(storeFile(dataDir))
    const tried = await programAt(dataDir)
    expect((await tried.does('program.state', {})).trouble).toMatchObject({ code: 'store.damaged', backup: null })
    expect((await tried.refuses('backup.restore', { name })).code).toBe('store.damaged')
    expect((await tried.does('backup.list', {}))[0]).toMatchObject({ name, sound: false })
  })

  test.each([
    ['text', Buffer.from('these are not the pages you are looking for, and they go on for a while '.repeat(100))],
    ['half a header', Buffer.from('SQLite format 3\u0000')],
    ['noise', Buffer.from(Array.from({ length: 9000 }, (_, n) => (n * 7919) % 251))],
  ])('a file of %s is trouble, and is left as it is', async (_name, bytes) => {
    const dataDir = tempFolder()
    writeFileSync(storeFile(dataDir), bytes)
    const tried = await programAt(dataDir)
    expect((await tried.does('program.state', {})).trouble?.code).toBe('store.damaged')
    await tried.program().close()
    expect(readFileSync(storeFile(dataDir)).equals(bytes)).toBe(true)
  })

  test('a database of another program is not taken for ours', async () => {
    const dataDir = tempFolder()
    const other = new Database(storeFile(dataDir))
    other.exec('CREATE TABLE theirs (a)')
    other.close()
    const tried = await programAt(dataDir)
    expect((await tried.does('program.state', {})).trouble?.code).toBe('store.damaged')
  })

  test('an empty file beside backups is trouble; without any it is a new store', async () => {
    const dataDir = await filled()
    writeFileSync(storeFile(dataDir), '')
    expect((await (await programAt(dataDir)).does('program.state', {})).trouble?.code).toBe('store.damaged')
    const fresh = tempFolder()
    writeFileSync(storeFile(fresh), '')
    expect((await (await programAt(fresh)).does('program.state', {})).trouble).toBeNull()
  })
})

test('a restore that was cut short before the file took its place is finished at the next opening', async () => {
  const dataDir = await filled()
  const bytes = readFileSync(storeFile(dataDir))
  const other = tempFolder()
  writeFileSync(join(other, 'tarework.restored.sqlite'), bytes)
  const tried = await programAt(other)
  expect((await tried.does('closet.all', {})).name).toEqual(['Pot'])
  expect(existsSync(join(other, 'tarework.restored.sqlite'))).toBe(false)
})

/** A small file system of its own, where this machine lets us have one. */
function mounted(size: string): string | null {
  const folder = tempFolder()
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs', folder], { stdio: 'ignore' })
  } catch {
    return null
  }
  afterTest(() => void execFileSync('umount', ['-l', folder], { stdio: 'ignore' }))
  return folder
}

const probe = mounted('1m') !== null

describe.skipIf(!probe)('a disk of its own (needs the right to mount)', () => {
  test('a full disk refuses the change, loses nothing, and takes changes again when there is room', async () => {
    const dataDir = mounted('2m')!
    const tried = await programAt(dataDir)
    const kept: string[] = []
    let fault: { code: string } | null = null
    for (let n = 0; n < 400 && fault === null; n += 1) {
      const reply = await tried.reply('item.add', { name: `Item ${n}`, kitArea: 'extras', note: 'x'.repeat(15_000) })
      if (reply.ok) kept.push(`Item ${n}`)
      else fault = reply.fault
    }
    expect(fault?.code).toBe('store.full')
    expect((await tried.does('closet.all', {})).name).toEqual(kept)
    expect(tried.errors).toEqual([])
    execFileSync('mount', ['-o', 'remount,size=20m', dataDir])
    await tried.does('item.add', { name: 'After', kitArea: 'extras' })
    await tried.reopen()
    expect((await tried.does('closet.all', {})).name).toEqual([...kept, 'After'])
  })

  test('a folder that cannot be written is trouble that says so, for an old store and for a new one', async () => {
    const dataDir = mounted('20m')!
    const first = await programAt(dataDir)
    await first.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
    await first.program().close()
    execFileSync('mount', ['-o', 'remount,ro', dataDir])
    const tried = await programAt(dataDir)
    expect((await tried.does('program.state', {})).trouble?.code).toBe('store.read-only')
    expect((await tried.refuses('closet.all', {})).code).toBe('store.read-only')
    const fresh = await programAt(join(dataDir, 'new'))
    expect((await fresh.does('program.state', {})).trouble?.code).toBe('store.read-only')
    expect(tried.errors).toEqual([])
  })

  test('a disk too full to open a store is trouble that says so', async () => {
    const dataDir = mounted('2m')!
    mkdirSync(join(dataDir, 'data'))
    writeFileSync(join(dataDir, 'ballast'), Buffer.alloc(2 * 1024 * 1024 - 64 * 1024))
    const tried = await programAt(join(dataDir, 'data'))
    expect((await tried.does('program.state', {})).trouble?.code).toBe('store.full')
  })
})
