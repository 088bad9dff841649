import { createHash } from 'node:crypto'
import { mkdirSync, mkdtempSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { OutputOf, Call, InputOf } from '../../../src-main/contract.ts'
import { fileFolder, filePath } from '../../../src-main/files/file-store.ts'
import { startServer, type DoorServer } from '../../../src-main/hosts/server.ts'
import { sweep } from '../../../src-main/files/sweep.ts'
import { openStore } from '../../../src-main/store/open.ts'
import { openProgram, type Program } from '../../../src-main/program.ts'
import { ask, enter } from '../hosts/asking.ts'
import { silentLog } from '../hosts/small-program.ts'
import { jpeg, png, webp } from './pictures.ts'

// The whole way: a socket, the loopback host, the real program and its store.
let dataDir: string
let program: Program
let server: DoorServer
let session: Readonly<Record<string, string>>
let now: Date

beforeEach(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'tarework-web-'))
  now = new Date()
  const openDemo = () => Promise.resolve(null)
  program = await openProgram({
    dataDir,
    host: 'loopback',
    version: '0',
    log: silentLog,
    now: () => now,
    zone: 'Europe/Paris',
    demo: false,
    openDemo,
  })
  server = await startServer({ port: 0, key: 'k', pageRoot: null, log: silentLog, nowMs: Date.now, onWindows: () => undefined })
  server.serve(program)
  session = await enter(server.port, server.newUrl())
})
afterEach(async () => {
  await server.stop()
  await program.close()
  await server.close()
})

const sha = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')
const send = (path: string, body: Buffer) => ask(server.port, path, { method: 'POST', headers: session, body })
const get = (path: string) => ask(server.port, path, { headers: session })
async function call<K extends Call>(name: K, input: InputOf<K>): Promise<OutputOf<K>> {
  const reply = await program.call(name, input)
  if (!reply.ok) throw new Error(JSON.stringify(reply.fault))
  return reply.value as OutputOf<K>
}

test('a photograph is sent, tied to an item, and shown', async () => {
  const { id } = await call('item.add', { name: 'Pot', kitArea: 'kitchen' })
  const [whole, thumb] = [jpeg('whole'), webp('thumb')]
  expect(JSON.parse((await send('/files', whole)).text)).toEqual({
    ok: true,
    value: { sha256: sha(whole), mime: 'image/jpeg', bytes: whole.length },
  })
  await send('/files', thumb)
  await call('photo.add', { itemId: id, sha256: sha(whole), thumbSha256: sha(thumb), mime: 'image/jpeg', name: 'pot.jpg' })
  const shown = await get(`/files/${sha(whole)}`)
  expect([shown.status, shown.headers['content-type'], shown.headers['x-content-type-options']]).toEqual([200, 'image/jpeg', 'nosniff'])
  expect(Buffer.from(shown.text)).toEqual(Buffer.from(whole.toString('utf8')))
  const { photos } = await call('item.open', { id })
  expect(photos).toMatchObject([{ sha256: sha(whole), thumbSha256: sha(thumb), mime: 'image/jpeg', name: 'pot.jpg' }])
})

test('what is no picture is 415, what is not there 404, and a path that climbs is nothing', async () => {
  expect((await send('/files', Buffer.from('<svg onload="alert(1)"/>'))).status).toBe(415)
  expect((await send('/in', Buffer.from('not a zip at all'))).status).toBe(415)
  for (const path of [
    `/files/${'a'.repeat(64)}`,
    '/files/..%2ftarework.sqlite',
    '/out/..%2ftarework.sqlite',
    '/out/.hidden',
    '/out/x.part',
    '/files/a/b',
    '/files',
    '/out',
  ])
    expect([path, (await get(path)).status]).toEqual([path, 404])
})

test('what lies in the outbox is handed out to be saved', async () => {
  mkdirSync(join(dataDir, 'out'))
  writeFileSync(join(dataDir, 'out', 'closet 2026.tarework'), 'PK')
  const { status, headers, text } = await get('/out/closet%202026.tarework')
  expect([status, text, headers['content-disposition']]).toEqual([200, 'PK', 'attachment; filename="closet 2026.tarework"'])
})

/** Posts a gigabyte without ever holding it; stops when the host answers or hangs up. */
function sendGigabyte(path: string, start: Buffer): Promise<{ readonly status: number; readonly sentBytes: number }> {
  return new Promise((settle) => {
    const piece = Buffer.alloc(1024 * 1024)
    let sentBytes = 0
    let status = 0
    const asked = request(
      { host: '127.0.0.1', port: server.port, path, method: 'POST', headers: { ...session, 'transfer-encoding': 'chunked' } },
      (response) => {
        status = response.statusCode ?? 0
        response.resume().on('end', () => asked.destroy())
      },
    )
    const more = (): void => {
      if (status !== 0 || asked.destroyed || sentBytes >= 1024 ** 3) return void asked.end()
      sentBytes += piece.length
      asked.write(sentBytes === piece.length ? Buffer.concat([start, piece]) : piece, () => more())
    }
    asked.on('error', () => undefined)
    asked.on('close', () => settle({ status, sentBytes }))
    more()
  })
}

test('a gigabyte of zeros is refused early, memory stays bounded and nothing is left', async () => {
  const before = process.memoryUsage.rss()
  let most = before
  const watch = setInterval(() => (most = Math.max(most, process.memoryUsage.rss())), 20)
  const plain = await sendGigabyte('/files', Buffer.alloc(16))
  const dressed = await sendGigabyte('/files', png())
  const archive = await sendGigabyte('/in', Buffer.alloc(16))
  clearInterval(watch)
  expect([plain.status, dressed.status, archive.status]).toEqual([415, 413, 415])
  expect(Math.max(plain.sentBytes, archive.sentBytes)).toBeLessThan(64 * 1024 ** 2)
  // Sender and host share this process: its own pieces and the socket's buffers are counted too.
  expect(most - before).toBeLessThan(300 * 1024 ** 2)
  expect([...readdirSync(fileFolder(dataDir)), ...readdirSync(join(dataDir, 'in'))]).toEqual([])
  expect((await get(`/files/${'a'.repeat(64)}`)).status).toBe(404) // the host still answers
}, 60_000)

test('the sweep keeps what a row, an undo step or a backup names, and lets go of the rest', async () => {
  const { id } = await call('item.add', { name: 'Pot', kitArea: 'kitchen' })
  const [shown, undone, backed, loose] = [png('shown'), png('undone'), png('backed'), png('loose')]
  for (const one of [shown, undone, backed, loose]) await send('/files', one)
  const add = (one: Buffer) => call('photo.add', { itemId: id, sha256: sha(one), thumbSha256: sha(one), mime: 'image/png', name: '' })
  const backedPhoto = await add(backed)
  await call('backup.now', {})
  await call('photo.remove', { id: backedPhoto.id })
  await add(shown)
  await call('photo.remove', { id: (await add(undone)).id })
  const old = new Date(now.getTime() - 2 * 3600_000)
  for (const name of readdirSync(fileFolder(dataDir))) utimesSync(join(fileFolder(dataDir), name), old, old)
  const store = await openStore({ dataDir, now: () => now })
  const swept = await sweep({ options: { dataDir, now: () => now }, alone: (work) => work(), store: () => store })
  if (store.ok) store.value.close()
  expect(swept).toBe(1)
  expect(readdirSync(fileFolder(dataDir)).toSorted()).toEqual([shown, undone, backed].map(sha).toSorted())
  expect(statSync(filePath(dataDir, sha(undone))).isFile()).toBe(true)
})
