import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { contentSecurityPolicy } from '../../../src-main/hosts/page.ts'
import { knock, readLock, takeLock } from '../../../src-main/hosts/lock.ts'
import { startServer } from '../../../src-main/hosts/server.ts'
import { wire, type WireParts } from '../../../src-main/hosts/wire.ts'
import '../../../src-main/preload.ts'
import { app, BrowserWindow, fake } from '../../fakes/electron.ts'
import { heard, silentLog, smallProgram, type SmallProgram } from './small-program.ts'

// The real wiring and the real preload against the strict stand-in; what that cannot show stands in its own docstring.
let dataDir: string
let parts: WireParts
let program: SmallProgram

interface World {
  readonly call: (name: string, input: unknown) => Promise<unknown>
  readonly onChange: (listener: (...args: unknown[]) => void) => () => void
}

beforeEach(() => {
  fake.reset()
  dataDir = join(mkdtempSync(join(tmpdir(), 'tarework-wire-')), 'data')
  const pageRoot = join(dataDir, '..', 'page')
  mkdirSync(pageRoot)
  writeFileSync(join(pageRoot, 'index.html'), '<!doctype html><title>page</title>')
  writeFileSync(join(pageRoot, '..', 'outside.html'), 'secret')
  program = smallProgram()
  const open = () => Promise.resolve(program)
  parts = {
    dataDir,
    demo: false,
    open,
    fillDemo: () => Promise.resolve(),
    openDemo: () => Promise.resolve(null),
    pageRoot,
    preload: '/preload/index.cjs',
    log: silentLog,
  }
})
afterEach(async () => {
  await quit()
})

/** Starts the host as Electron would: everything before the first wait, then ready. */
async function start(): Promise<BrowserWindow> {
  const wired = wire(parts)
  fake.becomeReady()
  await wired
  return BrowserWindow.getAllWindows()[0]!
}

/** What the page sees: the preload ran when this file was loaded, as it runs before a page. */
const world = (): World => fake.world.get('tarework') as unknown as World

async function quit(): Promise<void> {
  if (fake.state.protocols.size === 0) return
  app.quit()
  await expect.poll(() => fake.state.calls.includes('quit')).toBe(true)
}

test('what must precede ready does: sandbox, one scheme without bypassing the policy, the profile beside the data', async () => {
  const wired = wire(parts)
  expect(fake.state.calls).toEqual(['app.enableSandbox', 'protocol.registerSchemesAsPrivileged', 'app.setPath'])
  expect(fake.state.schemes).toEqual([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ])
  expect(fake.state.paths.get('userData')).toBe(join(dataDir, 'window'))
  fake.becomeReady()
  await wired
})

test('the window is sandboxed, isolated, without Node, and shows our page when it is ready', async () => {
  const window = await start()
  expect(window.options['webPreferences']).toEqual({
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    webviewTag: false,
    preload: '/preload/index.cjs',
  })
  expect([window.options['show'], window.loaded, window.shown]).toEqual([false, ['app://tarework/'], 1])
})

test('a second instance shows the first one’s window and ends', async () => {
  fake.state.single = false
  await start()
  expect([fake.state.calls.at(-1), BrowserWindow.getAllWindows()]).toEqual(['quit', []])
  fake.reset()
  const window = await start()
  window.minimize()
  app.emit('second-instance')
  expect([window.isMinimized(), window.shown]).toEqual([false, 2])
})

test('the page gets two functions and nothing else, and a call reaches the program and comes back', async () => {
  await start()
  const page = world()
  expect(Object.keys(page)).toEqual(['call', 'onChange'])
  expect(await page.call('echo', { text: 'één', list: [1, null] })).toEqual({ ok: true, value: { text: 'één', list: [1, null] } })
  expect(await page.call('__proto__', {})).toMatchObject({ ok: false, fault: { code: 'program.unknown-call' } })
  await expect(page.call('echo', { f: () => 1 })).rejects.toThrow(/could not be cloned/)
})

test.each([
  ['a foreign page', { origin: 'https://evil.example', parent: null }],
  ['a file', { origin: 'file://', parent: null }],
  ['a frame inside our page', { origin: 'app://tarework', parent: { origin: 'app://tarework', parent: null } }],
  ['another host of our scheme', { origin: 'app://other', parent: null }],
  ['a frame that is gone', null],
])('%s is refused', async (_who, frame) => {
  await start()
  const page = world()
  fake.state.frame = frame
  await expect(page.call('echo', {})).rejects.toThrow(/refused/)
  await expect(page.call(7 as unknown as string, {})).rejects.toThrow(/refused/)
})

test('changes reach the page without Electron’s event object, until it stops listening', async () => {
  await start()
  const page = world()
  const seen: unknown[][] = []
  const stop = page.onChange((...args) => seen.push(args))
  program.tell(heard(1))
  stop()
  program.tell(heard(2))
  expect(seen).toEqual([[heard(1)]])
})

test('the page is served with the policy and nothing outside its folder', async () => {
  await start()
  const page = await fake.fetch('app://tarework/')
  expect([page.status, await page.text()]).toEqual([200, '<!doctype html><title>page</title>'])
  expect([page.headers.get('content-security-policy'), page.headers.get('x-content-type-options')]).toEqual([
    contentSecurityPolicy,
    'nosniff',
  ])
  const outside = [
    'app://tarework/..%2foutside.html',
    'app://tarework/%2e%2e/outside.html',
    'app://tarework/a/..%5c..%5coutside.html',
    'app://other/',
    'app://tarework/api/call/echo',
    'app://tarework/nothing.html',
  ]
  for (const url of outside) expect([url, (await fake.fetch(url)).status]).toEqual([url, 404])
  expect((await fake.fetch('app://tarework/', { method: 'POST' })).status).toBe(405)
})

test('files, inbox and outbox go to the program and come back with the policy', async () => {
  await start()
  const sent = await fake.fetch('app://tarework/files', { method: 'POST', body: new Uint8Array(1000) })
  expect([sent.status, sent.headers.get('content-type'), sent.headers.get('content-security-policy')]).toEqual([
    200,
    'image/png',
    contentSecurityPolicy,
  ])
  expect(program.handed.get('/files')).toBe(1000)
})

test('every permission is refused; only a scale may be looked for, and only by our page', async () => {
  await start()
  const { session } = fake
  for (const permission of ['media', 'geolocation', 'notifications', 'hid', 'clipboard-read', 'openExternal', 'fullscreen']) {
    let answer: boolean | undefined
    session.request({}, permission, (yes) => (answer = yes))
    expect([permission, answer]).toEqual([permission, false])
    expect([permission, session.check({}, permission, 'app://tarework/')]).toEqual([permission, permission === 'hid'])
    expect(session.check({}, permission, 'https://evil.example')).toBe(false)
  }
})

const scale = { deviceId: 'a', name: 'Kitchen scale', vendorId: 7, productId: 9, serialNumber: 's' }

async function choose(frame: unknown, deviceList: unknown[]): Promise<unknown[]> {
  const event = fake.emitted()
  const answer = await new Promise<unknown[]>((settle) =>
    fake.session.emit('select-hid-device', event, { deviceList, frame }, (...args: unknown[]) => settle(args)),
  )
  expect(event.prevented()).toBe(true)
  return answer
}

test('the person chooses the scale in our own words, and it is remembered', async () => {
  await start()
  const grant = () => fake.session.device({ deviceType: 'hid', origin: 'app://tarework', device: scale })
  expect(grant()).toBe(false)
  fake.state.answer = 0
  expect(await choose({ origin: 'app://tarework' }, [scale])).toEqual(['a'])
  expect(fake.state.messages).toMatchObject([
    { message: 'Which scale shall feed the bench?', buttons: ['Kitchen scale', 'Cancel'], cancelId: 1 },
  ])
  expect(grant()).toBe(true)
  expect(fake.session.device({ deviceType: 'usb', origin: 'app://tarework', device: scale })).toBe(false)
  expect(fake.session.device({ deviceType: 'hid', origin: 'https://evil.example', device: scale })).toBe(false)
  expect(fake.session.device({ deviceType: 'hid', origin: 'app://tarework', device: { ...scale, productId: 10 } })).toBe(false)
})

test('no scale is given when the person cancels, none is there, or a foreign frame asks', async () => {
  await start()
  fake.state.answer = 1
  expect(await choose({ origin: 'app://tarework' }, [scale])).toEqual([])
  fake.state.answer = 0
  expect(await choose({ origin: 'app://tarework' }, [])).toEqual([])
  expect(await choose({ origin: 'https://evil.example' }, [scale])).toEqual([])
  expect(await choose(null, [scale])).toEqual([])
})

test('navigation stays at home, links go to the person’s browser only by https', async () => {
  const { webContents } = await start()
  const stays = (url: string, kind: string): boolean => {
    const event = { ...fake.emitted(), url }
    webContents.emit(kind, event)
    return event.prevented()
  }
  for (const kind of ['will-navigate', 'will-redirect']) {
    expect(stays('app://tarework/', kind)).toBe(false)
    for (const url of ['https://evil.example/', 'file:///etc/passwd', 'app://other/', 'javascript:alert(1)', 'not a url'])
      expect([url, stays(url, kind)]).toEqual([url, true])
  }
  const webview = fake.emitted()
  webContents.emit('will-attach-webview', webview)
  expect(webview.prevented()).toBe(true)
  for (const url of ['https://example.org/a', 'http://example.org/', 'file:///etc/passwd', 'smb://x/y', 'calc.exe'])
    expect(webContents.windowOpen({ url })).toEqual({ action: 'deny' })
  expect(fake.state.opened).toEqual(['https://example.org/a'])
})

interface Item {
  readonly label?: string
  readonly submenu?: readonly Item[]
  readonly click?: () => void
}

test('the menus speak our words and do what they say', async () => {
  await start()
  const menu = fake.state.menu as readonly Item[]
  const items = menu.flatMap(({ submenu = [] }) => submenu)
  items.find(({ label }) => label === 'Print …')?.click?.()
  items.find(({ label }) => label === 'Show the data folder')?.click?.()
  expect([fake.state.calls.includes('print'), fake.state.opened]).toEqual([true, [dataDir]])
  expect(items.every(({ label }, i) => label !== undefined || 'type' in items[i]! || 'role' in items[i]!)).toBe(true)
})

test('the window comes back where it was left, unless that screen is gone', async () => {
  const window = await start()
  window.bounds = { x: 300, y: 200, width: 1000, height: 700 }
  window.close()
  await expect.poll(() => fake.state.calls.includes('quit')).toBe(true)
  fake.reset()
  expect((await start()).options).toMatchObject({ x: 300, y: 200, width: 1000, height: 700 })
  await quit()
  fake.reset()
  fake.state.screens = [{ workArea: { x: -3000, y: 0, width: 1000, height: 1000 } }]
  expect((await start()).options).toMatchObject({ width: 1000, height: 700 })
  expect(BrowserWindow.getAllWindows()[0]!.options['x']).toBeUndefined()
})

test.each(['', '{', '{"bounds":{"x":"a"}}', '[]', 'null'])('a window file that reads %j is no hindrance', async (text) => {
  mkdirSync(dataDir, { recursive: true })
  writeFileSync(join(dataDir, 'window.json'), text)
  expect((await start()).options).toMatchObject({ width: 1440, height: 900 })
})

test('the last window’s closing ends the program: writes done, lock given back', async () => {
  const window = await start()
  expect(existsSync(join(dataDir, 'lock.json'))).toBe(true)
  window.close()
  await expect.poll(() => fake.state.calls.filter((call) => call.startsWith('quit'))).toEqual(['quit put off', 'quit'])
  expect([program.closed(), existsSync(join(dataDir, 'lock.json'))]).toEqual([true, false])
})

test('a second start of any host that shows the key brings the window to the front', async () => {
  const window = await start()
  const lock = (await readLock(dataDir))!
  expect(await knock(lock)).toEqual({ kind: 'opened', ticket: '' })
  expect(window.shown).toBe(2)
  expect(await knock({ ...lock, key: 'guess' })).toEqual({ kind: 'silent' })
  expect(window.shown).toBe(2)
})

test('data that a loopback host holds are opened in its browser window, not twice', async () => {
  const seen = join(mkdtempSync(join(tmpdir(), 'tarework-browser-')), 'seen')
  writeFileSync(`${seen}.sh`, `#!/bin/sh\necho "$1" > ${seen}\n`)
  chmodSync(`${seen}.sh`, 0o755)
  vi.stubEnv('TAREWORK_BROWSER', `${seen}.sh`)
  vi.stubEnv('TAREWORK_BROWSER_ARGS', '--no-sandbox')
  const other = await startServer({ port: 0, key: 'k', pageRoot: null, log: silentLog, nowMs: Date.now, onWindows: () => undefined })
  other.serve(smallProgram())
  await takeLock(dataDir, { pid: process.pid, port: other.port, key: 'k' }, null)
  await start()
  await expect
    .poll(() => existsSync(seen) && readFileSync(seen, 'utf8'))
    .toMatch(new RegExp(`^--app=http://127.0.0.1:${other.port}/#ticket=`))
  expect([fake.state.calls.at(-1), BrowserWindow.getAllWindows()]).toEqual(['quit', []])
  await other.close()
  vi.unstubAllEnvs()
})

test('a stale lock is taken', async () => {
  await takeLock(dataDir, { pid: 2 ** 22 - 1, port: 1, key: 'k' }, null)
  await start()
  expect((await readLock(dataDir))?.pid).toBe(process.pid)
})

test('the demo says so in its title and is filled before it is shown', async () => {
  const filled: unknown[] = []
  parts = { ...parts, demo: true, fillDemo: (one) => Promise.resolve(void filled.push(one)) }
  expect((await start()).options['title']).toBe('Tarework, the demo closet')
  expect(filled).toEqual([program])
})
