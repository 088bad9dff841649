import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { withAmounts } from '../../../src-domain/loadout/amounts.ts'
import { gather, indexKit } from '../../../src-domain/loadout/gather.ts'
import { totalsOf, type Totals } from '../../../src-domain/loadout/totals.ts'
import { readBrief } from '../../../src-domain/trips/brief.ts'
import type { Call, InputOf, LoadoutHead, OutputOf, TripRow } from '../../../src-main/contract.ts'
import { datesFor, fillDemo } from '../../../src-main/files/demo/fill.ts'
import { openProgram, type Program } from '../../../src-main/program.ts'
import { silentLog } from '../hosts/small-program.ts'

let program: Program
let trip: TripRow
let loadouts: readonly LoadoutHead[]

beforeAll(async () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'tarework-demo-'))
  const now = () => new Date('2025-10-08T12:00:00Z')
  program = await openProgram({
    dataDir,
    host: 'loopback',
    version: '0',
    log: silentLog,
    now,
    zone: 'UTC',
    demo: true,
    openDemo: () => Promise.resolve(null),
  })
  await fillDemo(program)
  trip = (await call('trip.all', {}))[0]!
  loadouts = await call('loadout.all', {})
}, 60_000)
afterAll(() => program.close())

async function call<K extends Call>(name: K, input: InputOf<K>): Promise<OutputOf<K>> {
  const reply = await program.call(name, input)
  if (!reply.ok) throw new Error(JSON.stringify(reply.fault))
  return reply.value as OutputOf<K>
}

async function totals(name: string): Promise<Totals> {
  const { id } = loadouts.find((one) => one.name === name)!
  const [open] = await call('loadout.open', { ids: [id] })
  const index = indexKit(await call('closet.all', {}), await call('closet.traits', {}), await call('supply.all', {}))
  const { loadout, lost } = gather(index, name, open!.line)
  expect(lost).toEqual([])
  return totalsOf(withAmounts(loadout, { brief: readBrief(trip.brief), trip }))
}

// Sums of the drawings look/loadout.html and look/compare.html, added there by hand from their own lines, in grams.
test.each([
  ['Pole-pitched, autumn', 1418, 4308, 2944],
  ['Two-skin tent', 1418, 5290, 2944],
  ['Tarp and bivouac bag', 1418, 3320, 2844],
])('%s weighs what the drawings say', async (name, wornG, baseG, consumablesG) => {
  const { worn, base, consumables, pack } = await totals(name)
  expect([worn, base, consumables].map((sum) => sum.massMg)).toEqual([wornG * 1000, baseG * 1000, consumablesG * 1000])
  expect(pack.withoutMass).toEqual([])
})

test('the closet of the drawings: 47 owned, of them 41 measured, 4 claimed and 2 estimated, and 11 wished for', async () => {
  const { status, massFrom } = await call('closet.all', {})
  const owned = massFrom.filter((_, i) => status[i] === 'owned')
  const count = (from: string) => owned.filter((one) => one === from).length
  expect([owned.length, count('measured'), count('claimed'), count('estimated')]).toEqual([47, 41, 4, 2])
  expect(status.filter((one) => one === 'wished')).toHaveLength(11)
})

test('three seasons, four loadouts, two of which descend, and weighings over three years', async () => {
  expect((await call('season.all', {})).map(({ name }) => name)).toEqual(['Summer', 'Autumn', 'Early spring'])
  expect(loadouts.map(({ name, parentId, chosen }) => [name, parentId !== null, chosen])).toEqual([
    ['Pole-pitched, autumn', false, true],
    ['Two-skin tent', true, false],
    ['Tarp and bivouac bag', true, false],
    ['Summer ridge', false, false],
  ])
  const { id, name } = await call('closet.all', {})
  const { weighings } = await call('item.open', { id: id[name.indexOf('Down quilt, 0 °C comfort')]! })
  expect(weighings.map(({ weighedOn, massMg }) => [weighedOn, massMg])).toEqual(
    expect.arrayContaining([
      ['2025-10-08', 618_000],
      ['2023-03-04', 612_000],
    ]),
  )
  expect(weighings).toHaveLength(6)
})

test('filled again it stays as it is', async () => {
  const before = await call('closet.all', {})
  await fillDemo(program)
  expect(await call('closet.all', {})).toEqual(before)
})

test.each([
  ['2025-10-08', '2025-10-08', '2025-10-09'],
  ['2025-10-09', '2025-10-08', '2026-10-09'],
  ['2026-07-01', '2025-10-08', '2026-10-09'],
  ['2026-11-25', '2026-10-08', '2027-10-09'],
])('on %s the last bench day was %s and the trip begins on %s', (today, bench, start) => {
  const { moved, ahead } = datesFor(today)
  expect([moved('2025-10-08'), ahead('2025-10-09')]).toEqual([bench, start])
})
