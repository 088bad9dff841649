import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { programAt } from './program-at.ts'

const hour = 60 * 60 * 1000

beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }))
afterEach(() => vi.useRealTimers())

test('a backup is kept soon after the start, and again each day while the program runs', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  const kept = async () => (await tried.does('backup.list', {})).map(({ at, why }) => [why, at])
  const pass = (ms: number) => {
    tried.clock.at = new Date(tried.clock.at.getTime() + ms)
    vi.advanceTimersByTime(ms)
  }
  expect(await kept()).toEqual([])
  pass(10_000)
  expect(await kept()).toEqual([['daily', '2026-09-20T10:00:10.000Z']])
  for (let n = 0; n < 23; n += 1) pass(hour)
  expect(await kept()).toHaveLength(1)
  pass(hour)
  pass(hour)
  expect(await kept()).toHaveLength(2)
})

test('a clock that was set back does not stop the backups, and does not make one every hour', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  vi.advanceTimersByTime(10_000)
  tried.clock.at = new Date('2020-01-01T00:00:00Z')
  vi.advanceTimersByTime(hour)
  expect((await tried.does('backup.list', {})).map(({ at }) => at)).toEqual(['2026-09-20T10:00:00.000Z', '2020-01-01T00:00:00.000Z'])
  vi.advanceTimersByTime(hour)
  expect(await tried.does('backup.list', {})).toHaveLength(2)
})
