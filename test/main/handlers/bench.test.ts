import { beforeEach, describe, expect, test } from 'vitest'
import { oneReading, programAt, rowOf, watching, type Tried } from '../program-at.ts'
import Database from 'better-sqlite3'
import { storeFile } from '../../../src-main/store/open.ts'

let tried: Tried
let pot: number
beforeEach(async () => {
  tried = await programAt()
  pot = (await tried.does('item.add', { name: 'Pot', kitArea: 'kitchen', claimedMg: 400_000 })).id
})

const gramScale = () => tried.does('scale.add', { name: 'Kitchen', stepMg: 1000, capacityMg: 5_000_000, kind: 'typed' })
const row = async () => rowOf(await tried.does('closet.all', {}), pot)

describe('a weighing', () => {
  // provisions.md 9.1, check table (JCGM 100:2008): d 1 g, tared, s 0.5 g, one reading of 412 g → u 0.9622 g unchecked, 0.6982 g after a 1 kg M1 check.
  test('has the doubt of the published check table, without and with a check mass', async () => {
    const scale = await gramScale()
    const unchecked = await tried.does('item.weigh', oneReading(pot, 412, { scaleId: scale.id }))
    expect(unchecked.massMg).toBe(412_000)
    const first = await row()
    expect(Math.hypot(Number(first.uOwnMg), Number(first.uGainMg)) / 1000).toBeCloseTo(0.9622, 3)
    await tried.does('scale.check', {
      scaleId: scale.id,
      readOn: '2026-09-20',
      nominalMg: 1_000_000,
      mpeMg: 50,
      massClass: 'M1',
      readingsMg: [1_000_000],
    })
    await tried.does('item.weigh', oneReading(pot, 412, { scaleId: scale.id }))
    const second = await row()
    expect(Math.hypot(Number(second.uOwnMg), Number(second.uGainMg)) / 1000).toBeCloseTo(0.6982, 3)
  })

  test('is corrected by the check mass of its scale', async () => {
    const scale = await gramScale()
    await tried.does('scale.check', {
      scaleId: scale.id,
      readOn: '2026-09-01',
      nominalMg: 1_000_000,
      mpeMg: 50,
      massClass: 'M1',
      readingsMg: [1_010_000],
    })
    expect((await tried.does('item.weigh', oneReading(pot, 505, { scaleId: scale.id }))).massMg).toBe(500_000)
  })

  test('of several pieces gives the mass of one, and that of repeats their mean', async () => {
    const kept = await tried.does(
      'item.weigh',
      oneReading(pot, 0, { readingsMg: [96_000, 97_000, 98_000], pieces: 8, tareMg: 1000, tareKind: 'reading' }),
    )
    expect(kept.massMg).toBe(12_000)
  })

  test('latest by day rules, of one day the one kept last; damp, dirty and incomplete ones never', async () => {
    await tried.does('item.weigh', oneReading(pot, 410, { weighedOn: '2026-09-10' }))
    await tried.does('item.weigh', oneReading(pot, 400, { weighedOn: '2026-08-01' }))
    expect((await row()).massMg).toBe(410_000)
    await tried.does('item.weigh', oneReading(pot, 411, { weighedOn: '2026-09-10' }))
    expect((await row()).massMg).toBe(411_000)
    for (const mark of ['damp', 'dirty', 'incomplete']) await tried.does('item.weigh', oneReading(pot, 500, { [mark]: true }))
    expect(await row()).toMatchObject({ massMg: 411_000, massFrom: 'measured', weighedOn: '2026-09-10' })
  })

  test('marked damp afterwards, or removed, is no longer the mass', async () => {
    const { weighingId } = await tried.does('item.weigh', oneReading(pot, 412))
    const reply = await tried.reply('weighing.mark', { id: weighingId, damp: true, dirty: false, incomplete: false, note: 'rain' })
    expect(reply).toMatchObject({ ok: true, closet: { id: [pot], massFrom: ['claimed'], massMg: [400_000] } })
    await tried.does('step.undo', {})
    expect((await row()).massMg).toBe(412_000)
    await tried.does('weighing.remove', { id: weighingId })
    expect((await row()).massFrom).toBe('claimed')
    expect(await tried.refuses('weighing.remove', { id: weighingId })).toMatchObject({ code: 'row.gone', facts: { table: 'weighing' } })
  })

  test('beyond the scale, below nothing, or of nothing is refused and kept nowhere', async () => {
    const scale = await gramScale()
    expect((await tried.refuses('item.weigh', oneReading(pot, 5001, { scaleId: scale.id }))).code).toBe('weighing.over-capacity')
    expect((await tried.refuses('item.weigh', oneReading(pot, -5))).code).toBe('weighing.negative')
    expect((await tried.refuses('item.weigh', oneReading(pot, 0))).code).toBe('weighing.no-reading')
    expect(await tried.refuses('item.weigh', oneReading(pot, 5, { scaleId: 99 }))).toMatchObject({
      code: 'row.gone',
      facts: { table: 'scale' },
    })
    expect((await tried.does('item.open', { id: pot })).weighings).toEqual([])
  })

  test('a printed queue typed in row by row is one step, and one bad row refuses it all, naming the row', async () => {
    const pan = (await tried.does('item.add', { name: 'Pan', kitArea: 'kitchen' })).id
    expect(await tried.refuses('items.weigh', { weighings: [oneReading(pot, 1), oneReading(pan, -1)] })).toMatchObject({
      code: 'weighing.negative',
      facts: { at: 1 },
    })
    expect(await tried.does('items.weigh', { weighings: [oneReading(pot, 410), oneReading(pan, 300)] })).toEqual({ count: 2 })
    expect((await tried.does('weighing.day', { day: '2026-09-20' })).map(({ itemName, massMg }) => [itemName, massMg])).toEqual([['Pot', 410_000], ['Pan', 300_000]]) // prettier-ignore
    await tried.does('step.undo', {})
    expect(await tried.does('weighing.day', { day: '2026-09-20' })).toEqual([])
  })
})

test('scales are kept with their checks, newest first', async () => {
  const { id } = await gramScale()
  const check = { scaleId: id, nominalMg: 500_000, mpeMg: 25, massClass: 'M1', readingsMg: [500_000, 499_000] }
  await tried.does('scale.check', { ...check, readOn: '2026-01-01' })
  const last = await tried.does('scale.check', { ...check, readOn: '2026-02-01' })
  await tried.does('scale.edit', { id, name: 'Bench', archived: true })
  const [scale] = await tried.does('scale.all', {})
  expect(scale).toMatchObject({ name: 'Bench', archived: true, stepMg: 1000, checks: [{ readOn: '2026-02-01', readingsMg: [500_000, 499_000] }, { readOn: '2026-01-01' }] }) // prettier-ignore
  await tried.does('scale.uncheck', { id: last.id })
  expect((await tried.does('scale.all', {}))[0]!.checks).toHaveLength(1)
  expect(await tried.refuses('scale.uncheck', { id: last.id })).toMatchObject({ code: 'row.gone' })
})

describe('photographs', () => {
  const hash = (letter: string) => letter.repeat(64)

  /** Rows of stored files, as the way in writes them. */
  function stored(...letters: string[]): void {
    const raw = new Database(storeFile(tried.dataDir))
    for (const letter of letters) raw.prepare('INSERT INTO file VALUES (?, ?, ?)').run(hash(letter), 'image/webp', 10)
    raw.close()
  }
  const photo = (letter: string) => ({
    itemId: pot,
    sha256: hash(letter),
    thumbSha256: hash('f'),
    mime: 'image/webp',
    name: `${letter}.webp`,
  })

  test('are added behind one another, put in order, removed and brought back', async () => {
    stored('a', 'b', 'f')
    const a = await tried.does('photo.add', photo('a'))
    const b = await tried.does('photo.add', photo('b'))
    const names = async () => (await tried.does('item.open', { id: pot })).photos.map(({ name }) => name)
    expect(await names()).toEqual(['a.webp', 'b.webp'])
    await tried.does('photo.order', { itemId: pot, ids: [b.id, a.id] })
    expect(await names()).toEqual(['b.webp', 'a.webp'])
    expect(await tried.reply('photo.remove', { id: b.id })).toMatchObject({ ok: true, closet: { id: [pot], photos: [1] } })
    await tried.does('step.undo', {})
    expect(await names()).toEqual(['b.webp', 'a.webp'])
  })

  test('need their stored file, and belong to their item', async () => {
    expect(await tried.refuses('photo.add', photo('a'))).toMatchObject({ code: 'row.gone', facts: { table: 'file' } })
    stored('a', 'f')
    const { id } = await tried.does('photo.add', photo('a'))
    const other = (await tried.does('item.add', { name: 'Pan', kitArea: 'kitchen' })).id
    expect(await tried.refuses('photo.order', { itemId: other, ids: [id] })).toMatchObject({ code: 'row.gone', facts: { table: 'photo' } })
    expect(watching(tried).prepare('SELECT count(*) FROM photo').pluck().get()).toBe(1)
  })
})
