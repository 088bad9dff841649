/** What the README says first: one command prints one line, and the program opens at it. */
import { spawn } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { expect, test } from '@playwright/test'
import { startHost } from '../host.ts'
import { openPage } from './support.ts'

test('npm start without a window prints where it listens, and ends when asked', async ({ page }) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'tarework-start-'))
  const child = spawn('npm', ['start', '--silent', '--', '--no-window', '--data', dataDir, '--port', '0'], {
    cwd: resolve(import.meta.dirname, '../..'),
    stdio: ['pipe', 'pipe', 'ignore'],
  })
  const ended = new Promise<number | null>((done) => child.once('exit', done))
  try {
    let text = ''
    child.stdout.setEncoding('utf8').on('data', (more: string) => (text += more))
    await expect.poll(() => text, { timeout: 60_000 }).toContain('\n')
    const lines = text.trimEnd().split('\n')
    expect(lines, 'one line, and nothing beside it').toHaveLength(1)
    const { url } = JSON.parse(lines[0]!) as { url: string }
    expect(new URL(url).hostname).toBe('127.0.0.1')

    await openPage(page, url)
    await expect(page.getByRole('heading', { name: 'Closet' })).toBeVisible()
    expect(readdirSync(dataDir)).toContain('tarework.sqlite')
    // The ticket opens one window: a second look at the same address gets none.
    const other = await page.context().newPage()
    await other.goto(url)
    await expect(other.getByText('This window has no key to the program')).toBeVisible()
    await other.close()
    await page.goto('about:blank')
  } finally {
    // The end of what was a pipe at the start ends the host, through npm and all.
    child.stdin.end()
    expect(await ended).toBe(0)
    rmSync(dataDir, { recursive: true, force: true })
  }
})

test('A window that outlives its program says so, and is not taken for the next one', async ({ page }) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'tarework-again-'))
  const first = await startHost({ dataDir })
  await openPage(page, first.url)
  await first.stop()
  await expect(page.getByText('The program stopped answering')).toBeVisible()
  const second = await startHost({ dataDir, port: Number(new URL(first.url).port) })
  await expect(page.getByText('This window has no key to the program')).toBeVisible()
  await page.goto('about:blank')
  await second.stop()
  rmSync(dataDir, { recursive: true, force: true })
})
