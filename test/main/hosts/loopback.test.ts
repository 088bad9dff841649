import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { enter, post } from './asking.ts'

// The real host, unbuilt, around the real program.
const entry = resolve(import.meta.dirname, '../../../src-main/hosts/loopback.ts')
const started: ChildProcess[] = []
afterEach(() => started.splice(0).forEach((child) => child.kill('SIGKILL')))

function start(dataDir: string): Promise<URL> {
  const child = spawn(process.execPath, [entry, '--no-window', '--data', dataDir, '--port', '0'], { stdio: ['pipe', 'pipe', 'inherit'] })
  started.push(child)
  return new Promise((settle, fail) => {
    child.stdout.once('data', (line: Buffer) => settle(new URL((JSON.parse(line.toString()) as { url: string }).url)))
    child.once('close', () => fail(new Error('ended without a line')))
  })
}

async function call(url: URL, session: Readonly<Record<string, string>>, name: string, input: unknown = {}): Promise<unknown> {
  return JSON.parse((await post(Number(url.port), `/api/call/${name}`, input, session)).text) as unknown
}

test('the real program answers, keeps a change, and keeps its data to their owner', async () => {
  const dataDir = join(mkdtempSync(join(tmpdir(), 'tarework-real-')), 'data')
  const url = await start(dataDir)
  const session = await enter(Number(url.port), url.href)
  expect(await call(url, session, 'program.state')).toMatchObject({
    ok: true,
    value: { host: 'loopback', demo: false, trouble: null, dataDir },
  })
  expect(await call(url, session, 'item.add', { name: 'Pot', kitArea: 'kitchen' })).toMatchObject({ ok: true })
  expect(await call(url, session, 'closet.all')).toMatchObject({ ok: true, value: { name: ['Pot'] } })
  expect(readFileSync(join(dataDir, 'logs', 'tarework.log'), 'utf8')).toContain('listening on 127.0.0.1')
})

test('the demo opens as a host of its own beside the data, which stay empty', async () => {
  const dataDir = join(mkdtempSync(join(tmpdir(), 'tarework-real-')), 'data')
  const url = await start(dataDir)
  const session = await enter(Number(url.port), url.href)
  const opened = (await call(url, session, 'demo.open')) as { value: { url: string } }
  const demoUrl = new URL(opened.value.url)
  const demoSession = await enter(Number(demoUrl.port), demoUrl.href)
  const lock = JSON.parse(readFileSync(join(`${dataDir}-demo`, 'lock.json'), 'utf8')) as { pid: number }
  try {
    expect(await call(demoUrl, demoSession, 'program.state')).toMatchObject({ ok: true, value: { demo: true, dataDir: `${dataDir}-demo` } })
    expect(((await call(demoUrl, demoSession, 'closet.all')) as { value: { id: number[] } }).value.id).toHaveLength(58)
    expect(((await call(url, session, 'closet.all')) as { value: { id: number[] } }).value.id).toHaveLength(0)
    const again = (await call(url, session, 'demo.open')) as { value: { url: string } }
    expect(new URL(again.value.url).port).toBe(demoUrl.port) // the demo that runs already opens another window
  } finally {
    process.kill(lock.pid, 'SIGTERM')
  }
  await expect.poll(() => existsSync(join(`${dataDir}-demo`, 'lock.json'))).toBe(false)
})
