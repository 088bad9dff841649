import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, expect, test } from 'vitest'
import about from '../../../package.json' with { type: 'json' }
import { enter, post } from './asking.ts'

// `npm start` itself: builds if need be, then hosts from the bundle.
const root = resolve(import.meta.dirname, '../../..')
const started: ChildProcess[] = []
afterEach(() => started.splice(0).forEach((child) => child.kill('SIGKILL')))

async function start(...words: readonly string[]): Promise<{ readonly child: ChildProcess; readonly line: string }> {
  const child = spawn(process.execPath, ['src-main/start.ts', ...words], { cwd: root, stdio: ['pipe', 'pipe', 'pipe'] })
  started.push(child)
  let errors = ''
  child.stderr.on('data', (text: Buffer) => (errors += text.toString()))
  const line = await new Promise<string>((settle, fail) => {
    child.stdout.once('data', (text: Buffer) => settle(text.toString()))
    child.once('close', () => fail(new Error(errors)))
  })
  return { child, line }
}

test('one line of JSON stands alone on standard output, and the bundle behind it answers', async () => {
  const dataDir = join(mkdtempSync(join(tmpdir(), 'tarework-start-')), 'data')
  const { child, line } = await start('--no-window', '--data', dataDir, '--port', '0')
  const url = new URL((JSON.parse(line) as { url: string }).url)
  expect(line).toMatch(/^\{[^\n]*\}\n$/)
  const session = await enter(Number(url.port), url.href)
  expect(JSON.parse((await post(Number(url.port), '/api/call/program.state', {}, session)).text)).toMatchObject({
    ok: true,
    value: { dataDir, version: about.version },
  })
  expect(await (await fetch(url)).text()).toContain('<div id="app">')
  child.kill('SIGTERM')
  expect(await new Promise((settle) => child.once('close', settle))).toBe(0)
  expect(existsSync(join(dataDir, 'lock.json'))).toBe(false)
}, 120_000)

test('the bundle asks for nothing that is not installed with the program, and the preload for Electron alone', () => {
  const folder = (name: string) =>
    readdirSync(join(root, 'out', name), { recursive: true, encoding: 'utf8' }).map((file) => join(root, 'out', name, file))
  const asked = (files: readonly string[], form: RegExp) =>
    new Set(files.flatMap((file) => [...readFileSync(file, 'utf8').matchAll(form)].map((found) => found[1]!)))
  const main = asked(
    folder('main').filter((file) => file.endsWith('.js')),
    /^import [^;'"]*["']([^."'][^"']*)["'];?$/gm,
  )
  const packages = [...main].filter((name) => !name.startsWith('node:')).map((name) => name.split('/')[0]!)
  const installed = ['electron', ...Object.keys(about.dependencies)]
  expect(packages.filter((name) => !installed.includes(name))).toEqual([])
  expect(packages).toContain('better-sqlite3')
  expect([
    ...asked(
      folder('preload').filter((file) => file.endsWith('.cjs')),
      /require\(["']([^"']+)["']\)/g,
    ),
  ]).toEqual(['electron'])
})
