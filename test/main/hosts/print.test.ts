import { existsSync, mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { printWithBrowser } from '../../../src-main/hosts/print-pdf.ts'
import { printInWindow } from '../../../src-main/hosts/print-window.ts'
import { pdfName } from '../../../src-main/handlers/print.ts'
import { BrowserWindow, fake } from '../../fakes/electron.ts'
import { programAt } from '../program-at.ts'

let file: string
beforeEach(() => {
  fake.reset()
  file = join(mkdtempSync(join(tmpdir(), 'tarework-print-test-')), 'page.pdf')
})
afterEach(() => {
  vi.unstubAllEnvs()
  vi.useRealTimers()
})

test('Electron prints in a window that is never shown, fenced like the others, and destroys it', async () => {
  fake.becomeReady()
  const seen: BrowserWindow[] = []
  const printing = printInWindow('/print/door/3', file, '/preload/index.cjs')
  seen.push(...BrowserWindow.getAllWindows())
  expect(await printing).toEqual({ ok: true, value: null })
  expect(seen[0]!.options).toEqual({ show: false, webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, webviewTag: false, preload: '/preload/index.cjs' } }) // prettier-ignore
  expect([seen[0]!.loaded, seen[0]!.shown]).toEqual([['app://tarework/#/print/door/3'], 0])
  expect(BrowserWindow.getAllWindows()).toEqual([])
  expect(readFileSync(file, 'utf8')).toMatch(/^%PDF-/)
})

test('a page that never says that it is filled is given up, and nothing is written', async () => {
  fake.becomeReady()
  fake.state.title = 'Tarework'
  vi.useFakeTimers()
  const printing = printInWindow('/print/door/3', file, '/preload/index.cjs')
  await vi.advanceTimersByTimeAsync(70_000)
  expect(await printing).toMatchObject({ ok: false, fault: { code: 'print.failed' } })
  expect(existsSync(file)).toBe(false)
  expect(BrowserWindow.getAllWindows()).toEqual([])
})

test('without a browser on the computer the loopback host says so', async () => {
  vi.stubEnv('TAREWORK_BROWSER', '/nowhere/chromium')
  expect(await printWithBrowser('http://127.0.0.1/', file)).toMatchObject({ ok: false, fault: { code: 'print.no-browser' } })
})

test('a browser that fails, or writes what is no PDF, is told of', async () => {
  vi.stubEnv('TAREWORK_BROWSER', '/bin/false')
  vi.stubEnv('TAREWORK_BROWSER_ARGS', '--no-sandbox')
  expect(await printWithBrowser('http://127.0.0.1/', file)).toMatchObject({ ok: false, fault: { code: 'print.failed' } })
  vi.stubEnv('TAREWORK_BROWSER', '/bin/true')
  expect(await printWithBrowser('http://127.0.0.1/', file)).toMatchObject({ ok: false, fault: { code: 'print.failed' } })
  expect(existsSync(file)).toBe(false)
})

test('a host without a way to print says so; names become plain file names', async () => {
  const tried = await programAt()
  expect((await tried.refuses('print.pdf', { page: 'door', id: 1, name: 'Door' })).code).toBe('print.no-browser')
  expect(pdfName('door list Skarn hills, the long ridge')).toBe('door-list-skarn-hills-the-long-ridge.pdf')
  expect([pdfName('../../etc/passwd'), pdfName('羽毛'), pdfName('.')]).toEqual(['etc-passwd.pdf', 'print.pdf', 'print.pdf'])
})
