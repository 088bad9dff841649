import { mkdtempSync, mkdirSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { maxCallBytes } from '../../../src-main/hosts/body.ts'
import { contentSecurityPolicy } from '../../../src-main/hosts/page.ts'
import { startServer, type DoorServer } from '../../../src-main/hosts/server.ts'
import { ask, enter, post, ticketOf } from './asking.ts'
import { heard, silentLog, smallProgram, type SmallProgram } from './small-program.ts'

const pageRoot = mkdtempSync(join(tmpdir(), 'tarework-page-'))
mkdirSync(join(pageRoot, 'assets'))
writeFileSync(join(pageRoot, 'index.html'), '<!doctype html><title>page</title>')
writeFileSync(join(pageRoot, 'assets', 'a-1234.js'), 'export {}')
writeFileSync(join(pageRoot, '..', 'tarework-outside.js'), 'secret')

let server: DoorServer
let program: SmallProgram
let windows: number[]
let clockMs: number

beforeEach(async () => {
  windows = []
  clockMs = 0
  program = smallProgram()
  const onWindows = (open: number) => windows.push(open)
  server = await startServer({ port: 0, key: 'the key', pageRoot, log: silentLog, nowMs: () => clockMs, onWindows })
  server.serve(program)
})
afterEach(() => server.close())

test('a ticket opens a session once, and only within a minute', async () => {
  const ticket = ticketOf(server.newUrl())
  expect((await post(server.port, '/api/session', { ticket })).status).toBe(200)
  expect((await post(server.port, '/api/session', { ticket })).status).toBe(401)
  const late = ticketOf(server.newUrl())
  clockMs = 60_001
  expect((await post(server.port, '/api/session', { ticket: late })).status).toBe(401)
})

test('the ticket stands in the fragment, which a browser never sends', () => {
  const url = new URL(server.newUrl())
  expect([url.origin, url.pathname, url.search]).toEqual([`http://127.0.0.1:${server.port}`, '/', ''])
})

test('a call is carried to the program and its reply back', async () => {
  const session = await enter(server.port, server.newUrl())
  const input = { text: 'één 🎒', list: [1, null, { deep: true }] }
  const reply = await post(server.port, '/api/call/echo', input, session)
  expect(JSON.parse(reply.text)).toEqual({ ok: true, value: input })
  const unknown = await post(server.port, '/api/call/__proto__', {}, session)
  expect(JSON.parse(unknown.text)).toEqual({ ok: false, fault: { code: 'program.unknown-call', facts: { name: '__proto__' } } })
})

test.each(['/api/call/echo', '/api/events', '/files/abc', '/in', '/out/x', '/files', '/out'])(
  'without a session %s is refused',
  async (path) => {
    expect((await ask(server.port, path)).status).toBe(401)
    expect((await post(server.port, path, {}, { 'x-session': 'guessed' })).status).toBe(401)
    expect(program.handed.size).toBe(0)
  },
)

test('another Host is 421, whatever is asked: a name that resolves here is not us', async () => {
  for (const host of [`localhost:${server.port}`, 'tarework.example', '127.0.0.1', `127.0.0.1:${server.port + 1}`])
    for (const path of ['/', '/api/session', '/api/door']) expect((await ask(server.port, path, { headers: { host } })).status).toBe(421)
})

test('a foreign Origin is 403, also a null one, also with a session', async () => {
  const session = await enter(server.port, server.newUrl())
  for (const origin of ['http://evil.example', 'null', `http://127.0.0.1:${server.port + 1}`, `https://127.0.0.1:${server.port}`])
    expect((await post(server.port, '/api/call/echo', {}, { ...session, origin })).status).toBe(403)
  const own = { ...session, origin: `http://127.0.0.1:${server.port}` }
  expect((await post(server.port, '/api/call/echo', {}, own)).status).toBe(200)
})

test('a request that a foreign page caused is 403 by sec-fetch-site', async () => {
  const session = await enter(server.port, server.newUrl())
  for (const site of ['cross-site', 'same-site', 'none']) {
    expect((await post(server.port, '/api/call/echo', {}, { ...session, 'sec-fetch-site': site })).status).toBe(403)
    expect((await ask(server.port, '/files/abc', { headers: { ...session, 'sec-fetch-site': site } })).status).toBe(403)
  }
  expect((await ask(server.port, '/', { headers: { 'sec-fetch-site': 'none' } })).status).toBe(200)
})

test('the page is served with the policy, and nothing outside its folder', async () => {
  const page = await ask(server.port, '/')
  expect(page.text).toContain('<title>page</title>')
  expect(page.headers['content-security-policy']).toBe(contentSecurityPolicy)
  expect(page.headers['x-content-type-options']).toBe('nosniff')
  expect((await ask(server.port, '/assets/a-1234.js')).headers['content-type']).toBe('text/javascript; charset=utf-8')
  const outside = [
    '/../tarework-outside.js',
    '/..%2ftarework-outside.js',
    '/%2e%2e/tarework-outside.js',
    '/assets/..%5c..%5ctarework-outside.js',
    '/%252e%252e/x.js',
    '/a%00.js',
    '/%',
    '//etc/passwd',
    '/assets',
    '/nothing.js',
  ]
  for (const path of outside) expect([path, (await ask(server.port, path)).status]).toEqual([path, 404])
})

test('no path at all reads a file outside the page', async () => {
  const parts = fc.array(fc.constantFrom('..', '.', '%2e%2e', '%2f', '\\', '%5c', '/', 'assets', 'tarework-outside.js', '%00'), {
    maxLength: 8,
  })
  await fc.assert(
    fc.asyncProperty(parts, async (some) => {
      const answer = await ask(server.port, `/${some.join('/')}`)
      expect(answer.text).not.toContain('secret')
    }),
    { numRuns: 200 },
  )
})

test('every answer carries the policy, refusals too', async () => {
  for (const path of ['/', '/nothing', '/api/call/echo'])
    expect((await ask(server.port, path)).headers['content-security-policy']).toBe(contentSecurityPolicy)
})

test('a body over the cap is 413, whether it says its length or not, and is not kept', async () => {
  const session = await enter(server.port, server.newUrl())
  const headers = { 'content-type': 'application/json', ...session }
  const body = Buffer.alloc(maxCallBytes + 1, 0x20)
  const told = await ask(server.port, '/api/call/echo', { method: 'POST', headers, body })
  expect([told.status, JSON.parse(told.text)]).toEqual([413, { ok: false, fault: { code: 'file.too-large', facts: {} } }])
  const untold = await ask(server.port, '/api/call/echo', { method: 'POST', headers: { ...headers, 'transfer-encoding': 'chunked' }, body })
  expect(untold.status).toBe(413)
  expect((await post(server.port, '/api/session', { ticket: 'x'.repeat(5000) })).status).toBe(413)
})

test('what is not JSON is said so', async () => {
  const session = await enter(server.port, server.newUrl())
  const json = { 'content-type': 'application/json', ...session }
  expect((await ask(server.port, '/api/call/echo', { method: 'POST', headers: json, body: '{"a":' })).status).toBe(400)
  const form = { 'content-type': 'text/plain', ...session }
  expect((await ask(server.port, '/api/call/echo', { method: 'POST', headers: form, body: '{}' })).status).toBe(415)
  expect((await ask(server.port, '/api/call/echo', { headers: session })).status).toBe(405)
})

test('files, inbox and outbox go to the program with their body', async () => {
  const session = await enter(server.port, server.newUrl())
  const answer = await ask(server.port, '/files', { method: 'POST', headers: session, body: Buffer.alloc(100_000, 7) })
  expect([answer.status, answer.text, answer.headers['content-type']]).toEqual([200, 'a file', 'image/png'])
  expect(program.handed.get('/files')).toBe(100_000)
  expect((await ask(server.port, '/out/x.tarework', { headers: session })).status).toBe(200)
})

test('changes reach every window as lines, and the host counts its windows', async () => {
  const session = await enter(server.port, server.newUrl())
  const lines: string[] = []
  const asked = request({ host: '127.0.0.1', port: server.port, path: '/api/events', headers: session }, (response) => {
    response.setEncoding('utf8').on('data', (text: string) => lines.push(...text.split('\n')))
    response.on('error', () => undefined)
  })
  asked.on('error', () => undefined)
  asked.end()
  await expect.poll(() => windows).toEqual([1])
  program.tell(heard(1))
  program.tell(heard(2))
  await expect.poll(() => lines.filter((line) => line !== '').map((line) => JSON.parse(line) as unknown)).toEqual([heard(1), heard(2)])
  asked.destroy()
  await expect.poll(() => windows).toEqual([1, 0])
})

test('the key opens the door to a second start, a wrong one does not', async () => {
  expect((await post(server.port, '/api/door', { key: 'guess' })).status).toBe(401)
  expect((await post(server.port, '/api/door', {})).status).toBe(400)
  const { ticket } = JSON.parse((await post(server.port, '/api/door', { key: 'the key' })).text) as { ticket: string }
  expect((await post(server.port, '/api/session', { ticket })).status).toBe(200)
})

test('a host that ends lets running calls end and takes no new ones', async () => {
  const session = await enter(server.port, server.newUrl())
  const slow = post(server.port, '/api/call/slow', {}, session)
  await new Promise((settle) => setTimeout(settle, 100))
  await server.stop()
  expect(JSON.parse((await slow).text)).toEqual({ ok: true, value: 'done' })
  expect((await post(server.port, '/api/call/echo', {}, session)).status).toBe(503)
  expect((await post(server.port, '/api/door', { key: 'the key' })).status).toBe(503)
})

test('nobody outside this machine can connect', async () => {
  const other = Object.values(networkInterfaces())
    .flat()
    .find((one) => one?.family === 'IPv4' && !one.internal)
  if (other === undefined) return
  await expect(fetch(`http://${other.address}:${server.port}/`)).rejects.toThrow()
})
