import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { _electron, expect, test } from '@playwright/test'
import { buildIfStale } from '../../src-main/hosts/building.ts'
import { findRuntime } from '../../src-main/hosts/runtime.ts'

const root = resolve(import.meta.dirname, '../..')
const runtime = findRuntime(root, process.env)

// What the stand-in cannot show: the real sandbox, the scheme, the preload in its own world. Skipped is not passed.
test('The desktop window opens on our scheme, isolated, and keeps what is added', async () => {
  test.skip(runtime === null, 'skipped: no Electron runtime')
  expect(await buildIfStale(root, () => undefined)).toBe(true)
  const dataDir = join(mkdtempSync(join(tmpdir(), 'tarework-electron-')), 'data')
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : []
  const app = await _electron.launch({ executablePath: runtime ?? '', args: [...asRoot, '.', '--data', dataDir], cwd: root })
  try {
    const page = await app.firstWindow()
    await page.waitForLoadState()
    expect(page.url()).toBe('app://tarework/')
    expect(
      await page.evaluate(() => [
        typeof (globalThis as { require?: unknown }).require,
        typeof (globalThis as { process?: unknown }).process,
      ]),
    ).toEqual(['undefined', 'undefined'])
    expect(await page.evaluate(() => Object.keys((globalThis as unknown as { tarework: object }).tarework))).toEqual(['call', 'onChange'])
    const added = await page.evaluate(() => window.tarework?.call('item.add', { name: 'Pot', kitArea: 'kitchen' }))
    expect(added).toMatchObject({ ok: true })
    expect(await page.evaluate(() => window.tarework?.call('closet.all', {}))).toMatchObject({ ok: true, value: { name: ['Pot'] } })
  } finally {
    await app.close()
  }
})
