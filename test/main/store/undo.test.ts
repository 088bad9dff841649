import Database from 'better-sqlite3'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { storeFile } from '../../../src-main/store/open.ts'
import type { Raw } from '../../../src-main/store/handles.ts'
import { undoableTables } from '../../../src-main/store/undoable.ts'
import { oneReading, programAt, watching, type Tried } from '../program-at.ts'
import { dumpOf, idsIn, randomChange, Random, readOnly } from '../random-changes.ts'

const stepId = async (tried: Tried) => (await tried.does('program.state', {})).undo?.id ?? null

/** Runs the changes and keeps what the store looked like before each step that was kept, and at the end. */
async function changeAll(tried: Tried, raw: Raw, seeds: readonly number[]): Promise<string[]> {
  const looks = [dumpOf(raw)]
  let last = await stepId(tried)
  for (const seed of seeds) {
    const change = randomChange(new Random(seed), idsIn(raw))
    const reply = await tried.program().call(change.name, change.input)
    if (!reply.ok) expect(reply.fault.code, JSON.stringify({ change, fault: reply.fault })).not.toBe('program.bug')
    const now = await stepId(tried)
    if (now !== last) looks.push(dumpOf(raw))
    else expect(dumpOf(raw)).toBe(looks.at(-1))
    last = now
  }
  return looks
}

test('any changes are undone one by one to exactly what was, and redone to exactly what is, across restarts', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.integer({ min: 0, max: 2 ** 31 - 1 }), { minLength: 1, maxLength: 40 }),
      fc.boolean(),
      async (seeds, restart) => {
        const tried = await programAt()
        const raw = watching(tried)
        const looks = await changeAll(tried, raw, seeds)
        if (restart) await tried.reopen()
        for (const look of looks.slice(0, -1).reverse()) {
          await tried.does('step.undo', {})
          expect(dumpOf(raw)).toBe(look)
        }
        expect((await tried.refuses('step.undo', {})).code).toBe('undo.nothing')
        if (restart) await tried.reopen()
        for (const look of looks.slice(1)) {
          await tried.does('step.redo', {})
          expect(dumpOf(raw)).toBe(look)
        }
        expect((await tried.refuses('step.redo', {})).code).toBe('undo.nothing')
        expect(tried.errors).toEqual([])
      },
    ),
    { numRuns: 30 },
  )
}, 240_000)

test('an undone row has the same doubles as before, to the last digit', async () => {
  const tried = await programAt()
  const { id } = await tried.does('item.add', { name: 'Bag', kitArea: 'sleep' })
  await fc.assert(
    fc.asyncProperty(fc.double({ noNaN: true, noDefaultInfinity: true }), async (number) => {
      await tried.does('item.trait', { id, trait: { code: 'rated-temperature', number, origin: 'claimed' } })
      await tried.does('item.untrait', { id, code: 'rated-temperature' })
      await tried.does('step.undo', {})
      const [trait] = (await tried.does('item.open', { id })).traits
      expect(trait?.number === number).toBe(true) // SQLite itself keeps no sign of zero
    }),
    { numRuns: 300, examples: [[0.1 + 0.2], [5e-324], [Number.MAX_VALUE], [1 / 3], [2 ** 53 + 2], [-0]] },
  )
}, 120_000)

test('a new change drops what could be redone', async () => {
  const tried = await programAt()
  const { id } = await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  await tried.does('item.edit', { id, note: 'one' })
  await tried.does('step.undo', {})
  const reply = await tried.reply('item.edit', { id, note: 'two' })
  expect(reply).toMatchObject({ ok: true, redo: null, undo: { code: 'item.edit', facts: { name: 'Pot', field: 'note' } } })
  expect((await tried.refuses('step.redo', {})).code).toBe('undo.nothing')
})

test('a change that touches nothing is no step, and keeps what can be redone', async () => {
  const tried = await programAt()
  const { id } = await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  await tried.does('item.edit', { id, note: 'one' })
  await tried.does('step.undo', {})
  const before = await tried.does('program.state', {})
  const reply = await tried.reply('item.edit', { id, name: 'Pot' })
  expect(reply).toMatchObject({ ok: true, rev: before.rev, touched: [], redo: { code: 'item.edit' } })
})

test('undo is refused, naming table and field, when a row is no longer as its step left it', async () => {
  const tried = await programAt()
  const { id } = await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  await tried.does('item.edit', { id, note: 'mine' })
  const other = new Database(storeFile(tried.dataDir))
  other.exec(`UPDATE step_now SET quiet = 1; UPDATE item SET maker = 'elsewhere'; UPDATE step_now SET quiet = 0`)
  other.close()
  const look = dumpOf(watching(tried))
  expect(await tried.refuses('step.undo', {})).toEqual({ code: 'undo.changed-since', facts: { table: 'item', field: 'maker' } })
  expect(dumpOf(watching(tried))).toBe(look)
})

test.each(undoableTables)('a change of %s outside a step is refused by the store itself', async (table) => {
  const tried = await programAt()
  const { id } = await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  await tried.does('item.weigh', oneReading(id, 100))
  const other = new Database(storeFile(tried.dataDir))
  other.pragma('foreign_keys = OFF')
  other.pragma('ignore_check_constraints = ON')
  const columns = other.prepare(`SELECT name, type FROM pragma_table_info('${table}') WHERE name <> 'id'`).all() as {
    name: string
    type: string
  }[]
  const values = columns.map(({ type }) => (type === 'TEXT' ? `'x'` : '1'))
  const insert = `INSERT INTO ${table} (${columns.map(({ name }) => name).join(', ')}) VALUES (${values.join(', ')})`
  expect(() => other.exec(insert)).toThrow(`a change of ${table} outside a step`)
  other.close()
})

test('five hundred steps are kept, the oldest go', async () => {
  const tried = await programAt()
  const { id } = await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen' })
  for (let n = 0; n < 510; n += 1) await tried.does('item.edit', { id, note: `${n}` })
  const steps = await tried.does('step.list', { limit: 500 })
  expect(steps).toHaveLength(500)
  expect(readOnly(storeFile(tried.dataDir), (raw) => raw.prepare('SELECT count(*) FROM step').pluck().get())).toBe(500)
  expect(
    readOnly(storeFile(tried.dataDir), (raw) =>
      raw.prepare('SELECT count(*) FROM step_row WHERE step_id NOT IN (SELECT id FROM step)').pluck().get(),
    ),
  ).toBe(0)
}, 60_000)

test('no more than 64 MiB of steps are kept, but always the newest', async () => {
  const tried = await programAt()
  const { id } = await tried.does('trip.add', { name: 'Hills' })
  const brief = (n: number) => JSON.stringify({ n, text: 'x'.repeat(1_900_000) })
  for (let n = 0; n < 24; n += 1) await tried.does('trip.edit', { id, brief: brief(n) })
  const sizes = readOnly(storeFile(tried.dataDir), (raw) => raw.prepare('SELECT bytes FROM step ORDER BY id').pluck().all()) as number[]
  const total = sizes.reduce((sum, one) => sum + one, 0)
  expect(total).toBeLessThanOrEqual(64 * 1024 * 1024)
  expect(total).toBeGreaterThan(56 * 1024 * 1024)
}, 60_000)
