import { expect, test } from 'vitest'
import type { ChoiceState, InputOf } from '../../../src-main/contract.ts'
import { fillDemo } from '../../../src-main/files/demo/fill.ts'
import { programAt, type Tried } from '../program-at.ts'

const asks: Omit<InputOf<'choice.start'>, 'loadoutId'> = {
  principles: [],
  pinIn: [],
  pinOut: [],
  wants: true,
  notShort: true,
  wornFactor: 0,
}

async function until(tried: Tried, ticket: number, isThere: (state: ChoiceState) => boolean): Promise<ChoiceState> {
  for (;;) {
    const state = await tried.does('choice.state', { ticket })
    if (state === null) throw new Error('another request took its place')
    if (state.stage === 'failed') throw new Error(state.why)
    if (isThere(state)) return state
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
}

async function demo(): Promise<{ readonly tried: Tried; readonly loadoutId: number }> {
  const tried = await programAt()
  await fillDemo(tried.program())
  const head = (await tried.does('loadout.all', {})).find(({ name }) => name === 'Pole-pitched, autumn')
  return { tried, loadoutId: head!.id }
}

test('a choice is worked out in its own thread, part by part, and taken and undone as one step', async () => {
  const { tried, loadoutId } = await demo()
  const { ticket } = await tried.does('choice.start', { loadoutId, ...asks })
  const early = await until(tried, ticket, ({ proposal }) => proposal !== null)
  const { chosen } = early.proposal!
  // Every demand met, or it says what has to give way.
  expect(early.proposal!.givenUp.length === 0).toBe(early.proposal!.kind === 'found')
  expect(chosen!.proven).toBe(true)
  const done = await until(tried, ticket, ({ stage }) => stage === 'done')
  expect(done.prices.length).toBeGreaterThan(3)
  for (const { dg } of done.prices) expect(dg ?? 0).toBeGreaterThanOrEqual(0)
  const chosenLines = chosen!.lines.filter(({ stays }) => stays === null)
  expect(done.reasons).toHaveLength(chosenLines.length)
  for (const { without } of done.reasons) expect(without).not.toBeNull()
  for (const { countedDg } of done.next) expect(countedDg).toBeGreaterThanOrEqual(chosen!.countedDg)

  const before = (await tried.does('loadout.open', { ids: [loadoutId] }))[0]!.line
  const keep = (itemId: number | null, lane: string) => chosen!.lines.some((line) => line.itemId === itemId && line.lane === lane)
  const removeIds = before
    .filter(({ itemId, lane, carriedBy }) => itemId !== null && carriedBy === '' && !keep(itemId, lane))
    .map(({ id }) => id)
  await tried.does('choice.take', { loadoutId, put: chosenLines.map(({ itemId, lane, pieces }) => ({ itemId, lane, pieces })), removeIds })
  const after = (await tried.does('loadout.open', { ids: [loadoutId] }))[0]!.line
  for (const { itemId, lane, pieces } of chosen!.lines) expect(after).toContainEqual(expect.objectContaining({ itemId, lane, pieces }))
  await tried.does('step.undo', {})
  expect((await tried.does('loadout.open', { ids: [loadoutId] }))[0]!.line).toEqual(before)
}, 240_000)

test('a second request replaces the first, and stopping forgets it', async () => {
  const { tried, loadoutId } = await demo()
  const first = await tried.does('choice.start', { loadoutId, ...asks })
  const second = await tried.does('choice.start', { loadoutId, ...asks, notShort: false })
  expect(await tried.does('choice.state', { ticket: first.ticket })).toBeNull()
  expect(await tried.does('choice.state', { ticket: second.ticket })).not.toBeNull()
  await tried.does('choice.stop', {})
  expect(await tried.does('choice.state', { ticket: second.ticket })).toBeNull()
}, 240_000)

test('a choice for a loadout that is gone is refused, and an empty one changes nothing', async () => {
  const { tried, loadoutId } = await demo()
  expect((await tried.refuses('choice.start', { loadoutId: 9999, ...asks })).code).toBe('row.gone')
  expect((await tried.refuses('choice.take', { loadoutId, put: [], removeIds: [] })).code).toBe('input.missing')
})
