import * as fc from 'fast-check'
import * as v from 'valibot'
import { describe, expect, test } from 'vitest'
import { contract, type Call, type Heard } from '../../src-main/contract.ts'
import type { Handlers } from '../../src-main/handlers/kinds.ts'
import { handlers } from '../../src-main/handlers/index.ts'
import { without } from '../../src-main/store/rows.ts'
import { storeFile } from '../../src-main/store/open.ts'
import { programAt, watching } from './program-at.ts'
import { dumpOf, readOnly } from './random-changes.ts'

const calls = Object.keys(contract) as Call[]

describe('names', () => {
  test.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', '', 'item', 'item.', 'item.add ', 'ITEM.ADD'])(
    '%j is no call',
    async (name) => {
      const tried = await programAt()
      expect(await tried.refuses(name, {})).toEqual({ code: 'program.unknown-call', facts: { name } })
    },
  )

  test('a name that is no text is no call', async () => {
    const tried = await programAt()
    for (const name of [null, undefined, 3, {}, ['item.add']]) {
      const reply = await tried.program().call(name as never, {})
      expect(reply).toMatchObject({ ok: false, fault: { code: 'program.unknown-call' } })
    }
  })
})

test('every row of the contract has a handler, and no handler is without a row', () => {
  expect(Object.keys(handlers).sort()).toEqual([...calls].sort())
})

test('a row without a handler does not compile', () => {
  const others = without(handlers, 'item.add')
  // @ts-expect-error: item.add is missing
  const incomplete: Handlers = others
  expect(incomplete).not.toHaveProperty('item.add')
})

test('a wrong input names the field that is wrong', async () => {
  const tried = await programAt()
  expect(await tried.refuses('item.add', { name: 'Pot', kitArea: 'nowhere' })).toMatchObject({
    code: 'input.invalid',
    facts: { field: 'kitArea' },
  })
  const lines = [{ itemId: 1, lane: 'in_pack' }, { itemId: 1, lane: 'in_pack', pieces: 0 }] // prettier-ignore
  expect(await tried.refuses('lines.put', { loadoutId: 1, lines })).toMatchObject({
    code: 'input.invalid',
    facts: { field: 'lines.1.pieces' },
  })
  expect(await tried.refuses('item.add', { name: 'Pot', kitArea: 'kitchen', more: 1 })).toMatchObject({ facts: { field: 'more' } })
  expect(await tried.refuses('item.weigh', null)).toMatchObject({ code: 'input.invalid', facts: { field: '' } })
  expect(await tried.refuses('item.edit', { id: 1, cameOn: '2026-02-31' })).toMatchObject({
    code: 'input.invalid',
    facts: { field: 'cameOn' },
  })
})

describe('hostile inputs', () => {
  // Numbers that are likely ids and codes, so that some inputs get past the first check.
  const leaf = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom(1, 2, 0, -1, 'item', 'sleep', 'in_pack', '2026-01-01', undefined, Number.NaN, 1e308),
  )
  const keys = fc.constantFrom(
    'id',
    'ids',
    'itemId',
    'name',
    'kitArea',
    'lane',
    'lines',
    'texts',
    'kind',
    'duties',
    'key',
    'value',
    '__proto__',
    'constructor',
  )
  const input = fc.oneof(
    leaf,
    fc.dictionary(keys, leaf),
    fc.array(leaf),
    fc.constant(() => 1),
    fc.bigInt(),
    fc.constant(Symbol('x')),
  )

  test('change nothing when they do not fit, and never throw', async () => {
    const tried = await programAt()
    await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen', duties: [{ duty: 'pot', shared: false }] })
    await tried.does('loadout.add', { name: 'Summer' })
    // Calls that move files or windows are tried where their handlers are.
    const tryable = calls.filter((name) => !/^(archive|demo|backup)\./.test(name))
    const raw = watching(tried)
    const dump = () => dumpOf(raw) + JSON.stringify(raw.prepare('SELECT * FROM setting').all())
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...tryable), input, async (name, given) => {
        const before = dump()
        const reply = await tried.program().call(name, given)
        if (reply.ok) return
        expect(reply.fault.code).not.toBe('program.bug')
        expect(dump()).toBe(before)
        if (!v.safeParse(contract[name].input, given).success) expect(reply.fault.code).toBe('input.invalid')
      }),
      { numRuns: 1500 },
    )
    expect(tried.errors).toEqual([])
  }, 120_000)

  test('every call refuses an input that is no object', async () => {
    const tried = await programAt()
    for (const name of calls) expect((await tried.refuses(name, 'text')).code).toBe('input.invalid')
  })
})

describe('a reply', () => {
  test('tells a change with its rows, the closet rows of the items it touched, and what can be undone', async () => {
    const tried = await programAt()
    const { rev } = await tried.does('program.state', {})
    const reply = await tried.reply('item.add', { name: 'Pot', kitArea: 'kitchen', tags: ['old'] })
    expect(reply).toMatchObject({
      ok: true,
      value: { id: 1 },
      rev: rev + 1,
      touched: [{ table: 'item', ids: [1] }, { table: 'item_label', ids: [1] }], // prettier-ignore
      closet: { id: [1], name: ['Pot'], tags: ['old'] },
      undo: { code: 'item.add', facts: { name: 'Pot' } },
      redo: null,
    })
  })

  test('of a question carries its answer alone', async () => {
    const tried = await programAt()
    expect(Object.keys(await tried.reply('set.all', {}))).toEqual(['ok', 'value'])
  })

  test('holds only what JSON carries', async () => {
    const tried = await programAt()
    const reply = await tried.reply('item.add', { name: 'Pot', kitArea: 'kitchen', weighedMg: 96_000 })
    expect(JSON.parse(JSON.stringify(reply))).toEqual(reply)
  })
})

describe('listeners', () => {
  test('hear each acknowledged change once, in order without a gap, and not refused ones', async () => {
    const tried = await programAt()
    const heard: Heard[] = []
    const stop = tried.program().onHeard((what) => heard.push(what))
    await Promise.all(Array.from({ length: 20 }, (_, n) => tried.does('item.add', { name: `Pot ${n}`, kitArea: 'kitchen' })))
    await tried.refuses('item.edit', { id: 99, name: 'x' })
    await tried.does('setting.set', { key: 'units', value: '"g"' })
    await tried.does('bringIn.drop', { batch: crypto.randomUUID() })
    stop()
    await tried.does('item.duplicate', { id: 1 })
    expect(heard).toHaveLength(21)
    heard.slice(1).forEach((what, at) => expect(what.rev).toBe(heard[at]!.rev + 1))
    expect(heard.at(-1)!.touched).toEqual([{ table: 'setting', ids: [] }])
  })

  test('that throw harm nobody', async () => {
    const tried = await programAt()
    tried.program().onHeard(() => {
      throw new Error('mine')
    })
    expect((await tried.reply('item.add', { name: 'Pot', kitArea: 'kitchen' })).ok).toBe(true)
    expect(tried.errors[0]).toContain('a listener failed')
  })
})

test('a count from before a restart is never taken for the next of it', async () => {
  const tried = await programAt()
  for (let n = 0; n < 5; n += 1) await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  const { rev } = await tried.does('program.state', {})
  tried.clock.at = new Date(tried.clock.at.getTime() + 60_000)
  await tried.reopen()
  expect((await tried.does('program.state', {})).rev).toBeGreaterThan(rev + 1)
})

test('a bug is told as one, logged once, and takes its change back', async () => {
  const tried = await programAt()
  await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  const before = readOnly(storeFile(tried.dataDir), dumpOf)
  // A clock that stops working half way is the nearest thing to a bug that a caller can cause.
  const working = tried.clock.at
  tried.clock.at = new Date(Number.NaN)
  expect((await tried.refuses('item.edit', { id: 1, status: 'lost' })).code).toBe('program.bug')
  tried.clock.at = working
  expect(tried.errors).toHaveLength(1)
  expect(tried.errors[0]).toContain('the call item.edit failed')
  expect(readOnly(storeFile(tried.dataDir), dumpOf)).toBe(before)
  await tried.does('item.edit', { id: 1, status: 'lost' })
})

test('today is the day of the computer’s zone, not of Greenwich', async () => {
  const tried = await programAt()
  tried.clock.at = new Date('2026-09-20T22:30:00Z') // 00:30 in Berlin (UTC+2 in summer: IANA time zone database)
  expect(await tried.does('program.state', {})).toMatchObject({ today: '2026-09-21', zone: 'Europe/Berlin' })
})

test('a program that is closed says so', async () => {
  const tried = await programAt()
  await tried.program().close()
  expect((await tried.refuses('item.add', { name: 'Pot', kitArea: 'kitchen' })).code).toBe('store.in-use')
})
