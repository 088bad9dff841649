import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statfsSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { fileFolder } from '../../../src-main/files/file-store.ts'
import { programAt, type Tried } from '../program-at.ts'
import { archived, posted } from './archives.ts'
import { png } from './pictures.ts'
import { dumpByUid } from './store-dump.ts'

// A disk of a few MiB of its own, which only root may make; elsewhere these are skipped and say so.
const place = mkdtempSync(join(tmpdir(), 'tarework-disk-'))
const mounted = (): boolean => spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=6m', 'tmpfs', place]).status === 0
const canMount = process.getuid?.() === 0 && process.platform === 'linux' && mounted()
if (canMount) execFileSync('umount', [place])

let tried: Tried
beforeEach(async () => {
  if (!canMount) return
  execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=6m', 'tmpfs', place])
  tried = await programAt(join(place, 'data'))
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
})
afterEach(async () => {
  if (!canMount) return
  await tried.program().close()
  execFileSync('umount', ['-l', place])
})

/** Fills the disk but for so many KiB. */
function leave(kib: number): void {
  const { bavail, bsize } = statfsSync(place)
  writeFileSync(join(place, 'ballast'), Buffer.alloc(Math.max(0, bavail * bsize - kib * 1024)))
}

const send = async (body: Buffer): Promise<{ readonly status: number; readonly code: string }> => {
  const answer = await tried.program().web(new Request('http://x/files', { method: 'POST', body: new Uint8Array(body) }))
  return { status: answer.status, code: ((await answer.json()) as { fault?: { code: string } }).fault?.code ?? '' }
}
const left = (folder: string): readonly string[] => (existsSync(folder) ? readdirSync(folder) : [])

test.skipIf(!canMount)('a photograph that does not fit is refused as such, nothing of it stays, and a smaller one still goes', async () => {
  leave(400)
  expect(await send(Buffer.concat([png(), Buffer.alloc(2 * 1024 ** 2)]))).toEqual({ status: 507, code: 'store.full' })
  expect(left(fileFolder(tried.dataDir))).toEqual([])
  expect((await send(png('small'))).status).toBe(200)
  expect(tried.errors).toEqual([])
})

test.skipIf(!canMount)('an archive that does not fit is refused, going out and coming in, and the closet stays as it was', async () => {
  expect((await send(Buffer.concat([png(), Buffer.alloc(300 * 1024, 7)]))).status).toBe(200)
  const [sha256] = left(fileFolder(tried.dataDir))
  await tried.does('photo.add', { itemId: 1, sha256: sha256!, thumbSha256: sha256!, mime: 'image/png', name: '' })
  const path = await archived(tried)
  const token = await posted(tried.dataDir, readFileSync(path))
  const before = dumpByUid(tried.dataDir)
  rmSync(path)
  leave(100)
  expect((await tried.refuses('archive.write', {})).code).toBe('store.full')
  expect(left(join(tried.dataDir, 'out'))).toEqual([])
  expect((await tried.refuses('archive.take', { token })).code).toBe('store.full')
  expect(dumpByUid(tried.dataDir)).toEqual(before)
  expect(left(fileFolder(tried.dataDir))).toEqual([sha256])
  expect(left(tried.dataDir).filter((name) => name.startsWith('taken-'))).toEqual([])
  rmSync(join(place, 'ballast'))
  expect((await tried.does('archive.take', { token })).items).toBe(1)
  expect(tried.errors).toEqual([])
})

test.skipIf(!canMount)('folders that may not be written say so, and nothing changes', async () => {
  const token = await posted(tried.dataDir, readFileSync(await archived(tried)))
  await tried.does('archive.look', { token })
  const before = dumpByUid(tried.dataDir)
  const folders = [fileFolder(tried.dataDir), join(tried.dataDir, 'out')]
  for (const folder of folders) {
    mkdirSync(folder, { recursive: true })
    execFileSync('mount', ['--bind', folder, folder])
    execFileSync('mount', ['-o', 'remount,ro,bind', folder])
  }
  expect((await send(png())).code).toBe('store.read-only')
  expect((await tried.refuses('archive.write', {})).code).toBe('store.read-only')
  for (const folder of folders) execFileSync('umount', [folder])
  expect(dumpByUid(tried.dataDir)).toEqual(before)
  expect(tried.errors).toEqual([])
})
