import { spawn, type ChildProcess } from 'node:child_process'
import { chmodSync, existsSync, mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { enter, post } from './asking.ts'

const entry = resolve(import.meta.dirname, 'small-host.ts')
const started: ChildProcess[] = []
afterEach(() => started.splice(0).forEach((child) => child.kill('SIGKILL')))

interface Started {
  readonly child: ChildProcess
  readonly line: Promise<string>
  readonly errors: () => string
  readonly ended: Promise<number | null>
}

interface How {
  readonly stdin?: 'pipe' | 'ignore'
  readonly env?: Readonly<Record<string, string>>
}

function start(words: readonly string[], { stdin = 'pipe', env = {} }: How = {}): Started {
  const child = spawn(process.execPath, [entry, ...words], { stdio: [stdin, 'pipe', 'pipe'], env: { ...process.env, ...env } })
  started.push(child)
  let out = ''
  let errors = ''
  child.stderr?.on('data', (text: Buffer) => (errors += text.toString()))
  const line = new Promise<string>((settle, fail) => {
    child.stdout?.on('data', (text: Buffer) => {
      out += text.toString()
      if (out.includes('\n')) settle(out.trimEnd())
    })
    child.on('close', () => fail(new Error(`ended without a line: ${errors}`)))
  })
  line.catch(() => undefined)
  const ended = new Promise<number | null>((settle) => child.on('close', (code) => settle(code)))
  return { child, line, errors: () => errors, ended }
}

const newFolder = (): string => join(mkdtempSync(join(tmpdir(), 'tarework-host-')), 'data')
const urlOf = async (one: Started): Promise<URL> => new URL((JSON.parse(await one.line) as { url: string }).url)
const lockOf = (folder: string) => JSON.parse(readFileSync(join(folder, 'lock.json'), 'utf8')) as { pid: number; port: number; key: string }

test('a host without a window says one line of JSON, answers, and ends on SIGTERM with its lock given back', async () => {
  const folder = newFolder()
  const host = start(['--no-window', '--data', folder, '--port', '0'])
  const url = await urlOf(host)
  expect(await host.line).toMatch(/^\{"url":"http:\/\/127\.0\.0\.1:\d+\/#ticket=[\w-]{43}"\}$/)
  const session = await enter(Number(url.port), url.href)
  expect(JSON.parse((await post(Number(url.port), '/api/call/echo', { a: 1 }, session)).text)).toEqual({ ok: true, value: { a: 1 } })
  const lock = lockOf(folder)
  expect([lock.pid, lock.port]).toEqual([host.child.pid, Number(url.port)])
  expect(statSync(join(folder, 'lock.json')).mode & 0o777).toBe(0o600)
  host.child.kill('SIGTERM')
  expect(await host.ended).toBe(0)
  expect(existsSync(join(folder, 'lock.json'))).toBe(false)
})

test.each(['SIGINT', 'SIGTERM'] as const)('%s lets a running call end', async (signal) => {
  const host = start(['--no-window', '--data', newFolder(), '--port', '0'], { stdin: 'ignore' })
  const url = await urlOf(host)
  const session = await enter(Number(url.port), url.href)
  const slow = post(Number(url.port), '/api/call/slow', {}, session)
  await new Promise((settle) => setTimeout(settle, 100))
  host.child.kill(signal)
  expect(JSON.parse((await slow).text)).toEqual({ ok: true, value: 'done' })
  expect(await host.ended).toBe(0)
})

test('the end of standard input ends it only if that was a pipe', async () => {
  const piped = start(['--no-window', '--data', newFolder(), '--port', '0'])
  await piped.line
  piped.child.stdin?.end()
  expect(await piped.ended).toBe(0)
  const other = start(['--no-window', '--data', newFolder(), '--port', '0'], { stdin: 'ignore' })
  await other.line
  await new Promise((settle) => setTimeout(settle, 500))
  expect(other.child.exitCode).toBeNull()
})

test('a second start gets a fresh ticket from the first and exits 0', async () => {
  const folder = newFolder()
  const first = start(['--no-window', '--data', folder, '--port', '0'])
  const firstUrl = await urlOf(first)
  const second = start(['--no-window', '--data', folder])
  const secondUrl = await urlOf(second)
  expect(await second.ended).toBe(0)
  expect([secondUrl.port, secondUrl.hash === firstUrl.hash]).toEqual([firstUrl.port, false])
  expect(Object.keys(await enter(Number(secondUrl.port), secondUrl.href))).toEqual(['x-session'])
  expect(lockOf(folder).pid).toBe(first.child.pid)
})

test('a killed host leaves a stale lock, and the next start takes it', async () => {
  const folder = newFolder()
  const first = start(['--no-window', '--data', folder, '--port', '0'])
  await first.line
  first.child.kill('SIGKILL')
  await first.ended
  expect(existsSync(join(folder, 'lock.json'))).toBe(true)
  const next = start(['--no-window', '--data', folder, '--port', '0'])
  await next.line
  expect(lockOf(folder).pid).toBe(next.child.pid)
})

test('of four starts at once on a stale lock one becomes the host and the others knock at it', async () => {
  const folder = newFolder()
  const dead = start(['--no-window', '--data', folder, '--port', '0'])
  await dead.line
  dead.child.kill('SIGKILL')
  await dead.ended
  const four = [1, 2, 3, 4].map(() => start(['--no-window', '--data', folder, '--port', '0'], { stdin: 'ignore' }))
  const ports = await Promise.all(four.map(async (one) => (await urlOf(one)).port))
  expect(new Set(ports)).toEqual(new Set([String(lockOf(folder).port)]))
  const ended = await Promise.all(
    four.map((one) => Promise.race([one.ended, new Promise((settle) => setTimeout(() => settle('runs'), 1500))])),
  )
  expect(ended.toSorted()).toEqual([0, 0, 0, 'runs'])
})

test('a holder that is alive and does not answer is named, and its data are left alone', async () => {
  const folder = newFolder()
  const mute = createServer((socket) => socket.on('error', () => undefined).on('data', () => socket.destroy()))
  await new Promise<void>((settle) => mute.listen(0, '127.0.0.1', settle))
  const at = mute.address()
  const port = typeof at === 'object' && at !== null ? at.port : 0
  const first = start(['--no-window', '--data', folder, '--port', '0'])
  await first.line
  writeFileSync(join(folder, 'lock.json'), JSON.stringify({ pid: process.pid, port, key: 'k' }))
  const second = start(['--no-window', '--data', folder])
  expect(await second.ended).toBe(1)
  expect(second.errors()).toContain(`in use by process ${process.pid}`)
  expect(lockOf(folder).port).toBe(port)
  mute.close()
})

test('a lock file that is torn or empty does not keep anyone out', async () => {
  for (const text of ['', '{"pid":1', '[]', 'null']) {
    const folder = newFolder()
    const before = start(['--no-window', '--data', folder, '--port', '0'])
    await before.line
    before.child.kill('SIGKILL')
    await before.ended
    writeFileSync(join(folder, 'lock.json'), text)
    const host = start(['--no-window', '--data', folder, '--port', '0'])
    await host.line
    expect(lockOf(folder).pid).toBe(host.child.pid)
  }
})

test('a host whose window is elsewhere ends when the last event stream has been closed for a while', async () => {
  const host = start(['--window-elsewhere', '--data', newFolder(), '--port', '0'], { env: { SMALL_HOST_WAIT: '0.05' } })
  const url = await urlOf(host)
  const session = await enter(Number(url.port), url.href)
  const open = (): (() => void) => {
    const asked = request({ host: '127.0.0.1', port: url.port, path: '/api/events', headers: session }, (response) =>
      response.on('error', () => undefined).resume(),
    )
    asked.on('error', () => undefined).end()
    return () => asked.destroy()
  }
  const close = open()
  await new Promise((settle) => setTimeout(settle, 5000)) // longer than both waits, scaled: an open window keeps the host
  expect(host.child.exitCode).toBeNull()
  close()
  const again = open() // a reload: the stream comes back before the wait is over
  await new Promise((settle) => setTimeout(settle, 1500))
  expect(host.child.exitCode).toBeNull()
  again()
  expect(await host.ended).toBe(0)
}, 20_000)

test('a window that never comes does not keep its host for ever', async () => {
  const host = start(['--window-elsewhere', '--data', newFolder(), '--port', '0'], { env: { SMALL_HOST_WAIT: '0.01' } })
  await host.line
  expect(await host.ended).toBe(0)
})

test('a host with no browser, or as root, tells the address and stays', async () => {
  const host = start(['--data', newFolder(), '--port', '0'], { env: { TAREWORK_BROWSER: '/nowhere/browser', SMALL_HOST_WAIT: '0.001' } })
  expect(await host.line).toMatch(/^No Chromium .*\nhttp:\/\/127\.0\.0\.1:\d+\/#ticket=/)
  if (process.getuid?.() === 0) {
    const root = start(['--data', newFolder(), '--port', '0'], { env: { TAREWORK_BROWSER: process.execPath, TAREWORK_BROWSER_ARGS: '' } })
    expect(await root.line).toMatch(/^Chromium does not start for the user root with its sandbox on.*\nhttp:/)
  }
  await new Promise((settle) => setTimeout(settle, 500))
  expect(host.child.exitCode).toBeNull()
})

test('the browser is opened on the address with its profile in the data folder', async () => {
  const folder = newFolder()
  const seen = join(mkdtempSync(join(tmpdir(), 'tarework-browser-')), 'seen')
  const browser = `${seen}.sh`
  writeFileSync(browser, `#!/bin/sh\nprintf '%s\\n' "$@" > ${seen}\n`)
  chmodSync(browser, 0o755)
  const env = { TAREWORK_BROWSER: browser, TAREWORK_BROWSER_ARGS: '--no-sandbox --headless' }
  await start(['--data', folder, '--port', '0'], { env }).line
  await expect.poll(() => existsSync(seen) && readFileSync(seen, 'utf8')).toMatch(/^--app=http:\/\/127\.0\.0\.1:\d+\/#ticket=/)
  expect(readFileSync(seen, 'utf8').split('\n')).toEqual(
    expect.arrayContaining([`--user-data-dir=${join(folder, 'window')}`, '--no-sandbox', '--headless']),
  )
})

test('the usual port is tried first and another taken when it is in use', async () => {
  const first = start(['--no-window', '--data', newFolder()], { stdin: 'ignore' })
  const second = start(['--no-window', '--data', newFolder()], { stdin: 'ignore' })
  const ports = [(await urlOf(first)).port, (await urlOf(second)).port]
  expect(ports[0]).not.toBe(ports[1])
})

test('a start that meets an ending host waits for it and takes over', async () => {
  const folder = newFolder()
  const first = start(['--no-window', '--data', folder, '--port', '0'])
  const url = await urlOf(first)
  const slow = post(Number(url.port), '/api/call/slow', { ms: 4000 }, await enter(Number(url.port), url.href))
  await new Promise((settle) => setTimeout(settle, 100))
  first.child.kill('SIGTERM')
  const second = start(['--no-window', '--data', folder, '--port', '0'])
  expect([(await slow).status, await first.ended]).toEqual([200, 0])
  const next = await urlOf(second)
  expect(lockOf(folder)).toMatchObject({ pid: second.child.pid, port: Number(next.port) })
})

test('a mistyped word is refused before any data are touched', async () => {
  const host = start(['--no-window', '--dta', '/tmp/x'])
  expect(await host.ended).not.toBe(0)
  expect(host.errors()).toContain("Unknown option '--dta'")
})
