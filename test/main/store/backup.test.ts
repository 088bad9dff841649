import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { backupFolder, keepBackup, listBackups } from '../../../src-main/store/backup.ts'
import { storeFile } from '../../../src-main/store/open.ts'
import { programAt, tempFolder } from '../program-at.ts'
import { dumpOf, readOnly } from '../random-changes.ts'

const day = 24 * 60 * 60 * 1000
const whys = async (tried: Awaited<ReturnType<typeof programAt>>) => (await tried.does('backup.list', {})).map(({ why }) => why)

test('a backup by hand is a sound copy that holds every row', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen', weighedMg: 96_000 })
  const row = await tried.does('backup.now', {})
  expect(row).toMatchObject({ why: 'hand', sound: true, at: '2026-09-20T10:00:00.000Z' })
  const copy = join(backupFolder(tried.dataDir), row.name)
  expect(readOnly(copy, dumpOf)).toBe(readOnly(storeFile(tried.dataDir), dumpOf))
  expect(readdirSync(backupFolder(tried.dataDir))).toEqual([row.name])
  expect((await tried.does('program.state', {})).lastBackupOn).toBe('2026-09-20T10:00:00.000Z')
})

test('restoring takes everything back to the copy, undo history and all, and keeps what was replaced as a backup', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  const { name } = await tried.does('backup.now', {})
  const then = readOnly(storeFile(tried.dataDir), dumpOf)
  await tried.does('item.add', { name: 'Pan', kitArea: 'kitchen' })
  const heard: unknown[] = []
  tried.program().onHeard((what) => heard.push(what))
  const reply = await tried.reply('backup.restore', { name })
  expect(reply).toMatchObject({ ok: true, touched: [{ table: '*', ids: [] }], undo: { facts: { name: 'Pot' } } })
  expect(heard).toHaveLength(1)
  expect(readOnly(storeFile(tried.dataDir), dumpOf)).toBe(then)
  const backups = await tried.does('backup.list', {})
  expect(backups.map(({ why }) => why)).toEqual(['restore', 'hand'])
  expect(readdirSync(tried.dataDir).filter((one) => one.startsWith('replaced-'))).toEqual([])
  // The restore itself can be taken back by restoring what it replaced.
  await tried.does('backup.restore', { name: backups[0]!.name })
  expect((await tried.does('closet.all', {})).name).toEqual(['Pot', 'Pan'])
})

test('backups are kept while questions are answered and changes are made', async () => {
  const tried = await programAt()
  const { id } = await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  const replies = Array.from({ length: 40 }, (_, n) => [
    tried.reply('item.open', { id }),
    tried.reply('item.edit', { id, note: `${n}` }),
    ...(n % 8 === 0 ? [tried.reply('backup.now', {})] : []),
  ])
  for (const reply of await Promise.all(replies.flat())) expect(reply.ok).toBe(true)
  expect(tried.errors).toEqual([])
})

test('a name that is no backup is refused and changes nothing', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  writeFileSync(join(tried.dataDir, 'x.sqlite'), 'x')
  for (const name of ['20260920T100000000Z-daily.sqlite', '..', 'x.sqlite', 'tarework.sqlite']) {
    expect((await tried.refuses('backup.restore', { name })).code).toBe('backup.none')
  }
  expect((await tried.refuses('backup.restore', { name: '../x.sqlite' })).code).toBe('input.invalid')
  expect((await tried.does('closet.all', {})).name).toEqual(['Pot'])
})

test('one backup a day is kept when the program ends, ten of them, and none of an empty store', async () => {
  const tried = await programAt()
  await tried.reopen()
  expect(await whys(tried)).toEqual([])
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  await tried.reopen()
  await tried.reopen()
  expect(await whys(tried)).toEqual(['daily'])
  for (let n = 0; n < 12; n += 1) {
    tried.clock.at = new Date(tried.clock.at.getTime() + day)
    await tried.reopen()
  }
  const backups = await tried.does('backup.list', {})
  expect(backups).toHaveLength(10)
  expect(backups[0]!.at).toBe('2026-10-02T10:00:00.000Z')
  expect(backups.every(({ sound }) => sound)).toBe(true)
})

test('backups by hand do not push out the daily ones', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  await tried.reopen()
  for (let n = 0; n < 12; n += 1) await tried.does('backup.now', {})
  expect((await whys(tried)).filter((why) => why === 'hand')).toHaveLength(10)
  expect((await whys(tried)).filter((why) => why === 'daily')).toHaveLength(1)
})

test('a copy that fails its check is not kept, and no older one goes for it', () => {
  const folder = tempFolder()
  const source = new Database(join(folder, 'a.sqlite'))
  source.exec(`CREATE TABLE t (a INTEGER); INSERT INTO t VALUES (1)`)
  for (let n = 0; n < 10; n += 1) keepBackup(source, join(folder, 'backups'), 'daily', new Date(n * day))
  const before = readdirSync(join(folder, 'backups'))
  // A check constraint written into the schema after the row: the copy is made, and integrity_check complains of it.
  source.unsafeMode()
  source.pragma('writable_schema = ON')
  source.exec(`UPDATE sqlite_master SET sql = 'CREATE TABLE t (a INTEGER CHECK (a > 5))' WHERE name = 't'`)
  source.close()
  const again = new Database(join(folder, 'a.sqlite'))
  expect(() => keepBackup(again, join(folder, 'backups'), 'daily', new Date(10 * day))).toThrow()
  again.close()
  expect(readdirSync(join(folder, 'backups'))).toEqual(before)
})

test('a folder for backups that cannot be made is a warning, not the end of the program', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  writeFileSync(backupFolder(tried.dataDir), 'a file where the folder should be')
  await tried.reopen()
  expect(tried.warnings[0]).toContain('no backup could be kept')
  expect((await tried.does('closet.all', {})).name).toEqual(['Pot'])
})

test('a backup that was cut short while it was written is not listed', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  mkdirSync(backupFolder(tried.dataDir))
  writeFileSync(join(backupFolder(tried.dataDir), '20260920T100000000Z-daily.sqlite.part'), 'half')
  expect(await tried.does('backup.list', {})).toEqual([])
  expect(listBackups(backupFolder(tempFolder()))).toEqual([])
  await tried.does('backup.now', {})
  expect(existsSync(join(backupFolder(tried.dataDir), '20260920T100000000Z-hand.sqlite'))).toBe(true)
})
