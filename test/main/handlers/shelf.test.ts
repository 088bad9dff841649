import { beforeEach, describe, expect, test } from 'vitest'
import { duties, kitAreas, traits } from '../../../src-domain/closet/vocabulary.ts'
import { programAt, type Tried } from '../program-at.ts'

let tried: Tried
beforeEach(async () => {
  tried = await programAt()
})
const item = async (name: string) => (await tried.does('item.add', { name, kitArea: 'kitchen' })).id

describe('sets', () => {
  test('an item is in one at most; joining another leaves the first; an empty set goes', async () => {
    const [a, b] = [await item('Pot'), await item('Mug')]
    const cook = (await tried.does('set.add', { name: 'Cook set', itemIds: [a, b] })).id
    const tea = (await tried.does('set.add', { name: 'Tea set', itemIds: [b] })).id
    expect(await tried.does('set.all', {})).toEqual([{ id: cook, name: 'Cook set', itemIds: [a] }, { id: tea, name: 'Tea set', itemIds: [b] }]) // prettier-ignore
    await tried.does('set.members', { id: tea, itemIds: [a] })
    expect(await tried.does('set.all', {})).toEqual([{ id: tea, name: 'Tea set', itemIds: [a, b] }])
    await tried.does('step.undo', {})
    expect(await tried.does('set.all', {})).toHaveLength(2)
  })

  test('a set whose last member leaves or is removed goes with it', async () => {
    const [a, b] = [await item('Pot'), await item('Mug')]
    const cook = (await tried.does('set.add', { name: 'Cook set', itemIds: [a] })).id
    await tried.does('set.add', { name: 'Tea set', itemIds: [b] })
    await tried.does('item.edit', { id: a, setId: null })
    await tried.does('items.remove', { ids: [b] })
    expect(await tried.does('set.all', {})).toEqual([])
    await tried.does('step.undo', {})
    await tried.does('step.undo', {})
    expect((await tried.does('set.all', {})).map(({ name }) => name)).toEqual(['Cook set', 'Tea set'])
    expect(cook).toBe(1)
  })

  test('renamed, left and dissolved; the closet follows', async () => {
    const [a, b] = [await item('Pot'), await item('Mug')]
    const { id } = await tried.does('set.add', { name: 'Cook set', itemIds: [a, b] })
    await tried.does('set.edit', { id, name: 'Kitchen' })
    await tried.does('set.members', { id: null, itemIds: [b] })
    expect(await tried.does('set.all', {})).toEqual([{ id, name: 'Kitchen', itemIds: [a] }])
    expect(await tried.reply('set.dissolve', { id })).toMatchObject({ ok: true, closet: { id: [a], setId: [null] } })
    expect(await tried.refuses('set.edit', { id, name: 'x' })).toMatchObject({ code: 'row.gone', facts: { table: 'kit_set', id } })
    await tried.does('step.undo', {})
    expect((await tried.does('closet.all', {})).setId).toEqual([id, null])
  })
})

describe('words', () => {
  test('every fixed code has one, in the order of the trade', async () => {
    const words = await tried.does('word.all', {})
    const of = (kind: string) => words.filter((word) => word.kind === kind).map(({ code }) => code)
    expect(of('area')).toEqual([...kitAreas])
    expect(of('duty')).toEqual(duties.map(({ code }) => code))
    expect(of('trait')).toEqual(traits.map(({ code }) => code))
  })

  test('a word may be changed and hidden; its code stays', async () => {
    await tried.does('word.set', { kind: 'area', code: 'light_power', label: 'Light', hidden: true })
    await tried.does('word.set', { kind: 'area', code: 'light_power', label: 'Lights', hidden: true })
    const words = await tried.does('word.all', {})
    expect(words.filter(({ code }) => code === 'light_power')).toEqual([{ kind: 'area', code: 'light_power', label: 'Lights', hidden: true, own: false, area: 'light_power', unit: '' }]) // prettier-ignore
    expect(await tried.refuses('word.set', { kind: 'duty', code: 'no-such', label: 'x', hidden: false })).toMatchObject({
      code: 'row.gone',
    })
  })

  test('own duties and traits get a code that no fixed one has, and can then be used', async () => {
    const one = await tried.does('word.add', { kind: 'duty', label: 'Pot rest', area: 'kitchen' })
    const two = await tried.does('word.add', { kind: 'duty', label: 'pot REST!', area: 'kitchen' })
    const kanji = await tried.does('word.add', { kind: 'duty', label: '鍋', area: 'kitchen' })
    expect([one.code, two.code, kanji.code]).toEqual(['own-pot-rest', 'own-pot-rest-2', 'own'])
    await tried.does('word.add', { kind: 'trait', label: 'Loft', area: 'sleep', unit: 'cm' })
    const id = await item('Pot')
    await tried.does('item.duties', { id, duties: [{ duty: one.code, shared: false }, { duty: kanji.code, shared: false }] }) // prettier-ignore
    await tried.does('item.trait', { id, trait: { code: 'own-loft', number: 6, origin: 'measured' } })
    expect(await tried.refuses('item.trait', { id, trait: { code: 'own-other', number: 6, origin: 'measured' } })).toMatchObject({ code: 'input.invalid', facts: { field: 'trait.code' } }) // prettier-ignore
    expect((await tried.does('word.all', {})).filter(({ own }) => own)).toHaveLength(4)
  })
})

test('supplies are kept with their rule, traits and needs', async () => {
  const { id } = await tried.does('supply.add', {
    name: 'Gas',
    kitArea: 'kitchen',
    unit: 'g',
    rule: { per: 'boil', amountMilli: 9000 },
    massFrom: 'measured',
  })
  await tried.does('supply.trait', { id, trait: { code: 'heat-value', number: 46.1, origin: 'claimed', source: 'maker' } })
  await tried.does('supply.needs', { id, needs: [{ duty: 'fuel-holder', pieces: 1, kind: 'shared' }] })
  await tried.does('supply.edit', { id, name: 'Gas mix', mgPerUnit: 1000, rule: null, archived: true })
  expect(await tried.does('supply.all', {})).toMatchObject([
    { name: 'Gas mix', unit: 'g', mgPerUnit: 1000, rule: null, archived: true, massFrom: 'measured' },
  ])
  expect(await tried.does('closet.traits', {})).toEqual({
    traits: { itemId: [null], supplyId: [id], code: ['heat-value'], number: [46.1], text: [''], origin: ['claimed'] },
    needs: { itemId: [null], supplyId: [id], duty: ['fuel-holder'], pieces: [1], kind: ['shared'] },
  })
  expect(await tried.refuses('supply.edit', { id: 99, name: 'x' })).toMatchObject({ code: 'row.gone', facts: { table: 'supply' } })
})

test('a saved view is kept under its name, replaced by the same name, and removed', async () => {
  const one = await tried.does('view.save', { room: 'closet', name: 'Wet', state: '{"q":1}' })
  const two = await tried.does('view.save', { room: 'closet', name: 'Wet', state: '{"q":2}' })
  expect(two).toEqual(one)
  expect(await tried.does('view.all', {})).toEqual([{ id: one.id, room: 'closet', name: 'Wet', state: '{"q":2}' }])
  await tried.does('view.remove', { id: one.id })
  expect(await tried.refuses('view.remove', { id: one.id })).toMatchObject({ code: 'row.gone' })
})

test('settings are kept across restarts and are no steps', async () => {
  await tried.does('setting.set', { key: 'units.mass', value: '"g"' })
  await tried.does('setting.set', { key: 'units.mass', value: '"oz"' })
  await tried.reopen()
  expect(await tried.does('setting.all', {})).toEqual({ 'units.mass': '"oz"' })
  expect(await tried.does('step.list', { limit: 10 })).toEqual([])
})
