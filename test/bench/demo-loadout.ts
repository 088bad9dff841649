import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Lane } from '../../src-domain/closet/vocabulary.ts'
import { indexKit, type KitIndex, type LineFacts } from '../../src-domain/loadout/gather.ts'
import { readBrief, type Brief, type Trip } from '../../src-domain/trips/brief.ts'
import { readWalker, type Walker } from '../../src-domain/trips/walker.ts'
import { fillDemo } from '../../src-main/files/demo/fill.ts'
import type { Program } from '../../src-main/program.ts'
import { does, programIn } from './closet-of.ts'

/** The demo's trip and a loadout of it grown to any number of lines: things with traits, so that every check has something to reckon with. */
export interface Grown {
  readonly index: KitIndex
  readonly lines: readonly LineFacts[]
  readonly brief: Brief
  readonly trip: Trip
  readonly walker: Walker
  readonly today: string
}

export async function grownTo(entries: number): Promise<Grown> {
  const dataDir = mkdtempSync(join(tmpdir(), 'tarework-bench-'))
  const program = await programIn(dataDir)
  try {
    await fillDemo(program)
    return await grow(program, entries)
  } finally {
    await program.close()
    rmSync(dataDir, { recursive: true, force: true })
  }
}

async function grow(program: Program, entries: number): Promise<Grown> {
  const [trip] = await does(program, 'trip.all', {})
  const head = (await does(program, 'loadout.all', {})).find(({ tripId }) => tripId === trip!.id)!
  const [open] = await does(program, 'loadout.open', { ids: [head.id] })
  const copies = await duplicates(program, entries - open!.line.length)
  const index = indexKit(
    await does(program, 'closet.all', {}),
    await does(program, 'closet.traits', {}),
    await does(program, 'supply.all', {}),
  )
  const walkers = await does(program, 'walker.all', {})
  const walker = walkers.find(({ id }) => id === trip!.walkerId) ?? walkers[0]
  const { today } = await does(program, 'program.state', {})
  const { startsOn, endsOn, zone } = trip!
  return {
    index,
    lines: [...open!.line, ...copies.map(lineOf)],
    brief: readBrief(trip!.brief),
    trip: { startsOn, endsOn, zone, season: 'autumn' },
    walker: readWalker(walker?.profile ?? null),
    today,
  }
}

/** Copies of the closet's own things in turn, each an item of its own with its duties, needs and traits. */
async function duplicates(program: Program, count: number): Promise<readonly number[]> {
  const { id } = await does(program, 'closet.all', {})
  const made: number[] = []
  for (let n = 0; n < count; n++) made.push((await does(program, 'item.duplicate', { id: id[n % id.length]! })).id)
  return made
}

const lanes: readonly Lane[] = ['in_pack', 'in_pack', 'on_me']
const firstCopy = 100_000

const lineOf = (itemId: number, n: number): LineFacts => ({
  id: firstCopy + n,
  sort: firstCopy + n,
  itemId,
  supplyId: null,
  lane: lanes[n % lanes.length]!,
  pieces: 1,
  amountMilli: null,
  amountFrom: 'typed',
  rule: null,
  containerId: null,
  carriedBy: '',
  note: '',
})
