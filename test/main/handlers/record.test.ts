import { createHash } from 'node:crypto'
import { beforeEach, describe, expect, test } from 'vitest'
import { gather, indexKit } from '../../../src-domain/loadout/gather.ts'
import { isThere, unpack } from '../../../src-domain/loadout/packed.ts'
import { totalsOf } from '../../../src-domain/loadout/totals.ts'
import { filledByBrief } from '../../../src-domain/checks/by-brief.ts'
import { emptyBrief } from '../../../src-domain/trips/brief.ts'
import { emptyWalker } from '../../../src-domain/trips/walker.ts'
import { namedIn } from '../../../src-main/files/named.ts'
import { png, webp } from '../files/pictures.ts'
import { oneReading, programAt, watching, type Tried } from '../program-at.ts'

let tried: Tried
let quilt: number
let mat: number
let wish: number
let food: number
let trip: number
let loadout: number
let lines: readonly number[]
beforeEach(async () => {
  tried = await programAt()
  quilt = (await tried.does('item.add', { name: 'Quilt', kitArea: 'sleep', weighedMg: 620_000, duties: [{ duty: 'top-insulation', shared: false }] })).id // prettier-ignore
  mat = (await tried.does('item.add', { name: 'Mat', kitArea: 'sleep', claimedMg: 410_000 })).id
  wish = (await tried.does('item.add', { name: 'Tent of dreams', kitArea: 'shelter', status: 'wished', claimedMg: 900_000 })).id
  food = (await tried.does('supply.add', { name: 'Food', kitArea: 'food', unit: 'g', massFrom: 'measured', rule: { per: 'day', amountMilli: 600_000 } })).id // prettier-ignore
  trip = (await tried.does('trip.add', { name: 'Hills', startsOn: '2026-10-01', endsOn: '2026-10-03', brief: JSON.stringify({ nightsOut: 2, lowC: 4 }) })).id // prettier-ignore
  loadout = (await tried.does('loadout.add', { name: 'Autumn', tripId: trip })).id
  const things = [{ itemId: quilt, lane: 'in_pack' as const }, { itemId: mat, lane: 'in_pack' as const }, { itemId: wish, lane: 'in_pack' as const }] // prettier-ignore
  lines = (await tried.does('lines.put', { loadoutId: loadout, lines: [...things, { supplyId: food, lane: 'used_up', amountFrom: 'brief' }] })).ids // prettier-ignore
})

const close = () => tried.does('trip.close', { id: trip, loadoutId: loadout })
const opened = (tripId = trip) => tried.does('record.open', { tripId })

/** The loadout as it stands now, as the window works it out. */
async function totalsNow() {
  const [open] = await tried.does('loadout.open', { ids: [loadout] })
  const index = indexKit(await tried.does('closet.all', {}), await tried.does('closet.traits', {}), await tried.does('supply.all', {}))
  const { loadout: gathered } = gather(index, '', open!.line)
  const there = { ...gathered, lines: gathered.lines.filter(isThere) }
  const brief = { ...emptyBrief, nightsOut: 2, lowC: 4 }
  const trip = { startsOn: '2026-10-01', endsOn: '2026-10-03', zone: '', season: 'any' as const }
  return totalsOf(filledByBrief({ loadout: there, brief, trip, walker: emptyWalker, today: '2026-09-20' }).loadout)
}

describe('a trip freezes', () => {
  test('closing the door list writes what there is, with the amounts of that day; what is wished for stays out', async () => {
    const before = await totalsNow()
    expect(await close()).toEqual({ packed: 3, leftOut: 1 })
    const { packed, brief, loadoutName, closedAt } = await opened()
    expect(packed.map(({ name, massMg, massFrom, amountMilli }) => [name, massMg, massFrom, amountMilli])).toEqual([['Quilt', 620_000, 'measured', null], ['Mat', 410_000, 'claimed', null], ['Food', 1000, 'measured', 1_800_000]]) // prettier-ignore
    expect([loadoutName, JSON.parse(brief), closedAt]).toEqual(['Autumn', { nightsOut: 2, lowC: 4 }, '2026-09-20T10:00:00.000Z'])
    const after = totalsOf(unpack('', packed))
    expect([after.pack.massMg, after.pack.figure.shares]).toEqual([before.pack.massMg, before.pack.figure.shares])
    expect((await tried.does('trip.all', {}))[0]).toMatchObject({ state: 'out', past: false })
  })

  test('what happens to the closet, the loadout and the brief afterwards does not reach it', async () => {
    await close()
    const before = await opened()
    await tried.does('item.weigh', oneReading(quilt, 700))
    await tried.does('item.edit', { id: mat, name: 'Old mat', kitArea: 'extras', claimedMg: 1, status: 'sold' })
    await tried.does('item.duties', { id: quilt, duties: [] })
    await tried.does('supply.edit', { id: food, mgPerUnit: 5 })
    await tried.does('lines.remove', { ids: [...lines] })
    await tried.does('trip.edit', { id: trip, brief: '{"nightsOut":9}', startsOn: '2027-01-01' })
    await tried.does('items.remove', { ids: [quilt, mat] })
    await tried.does('loadout.remove', { id: loadout })
    expect(await opened()).toEqual(before)
  })

  test('an item that a record names is archived, never deleted', async () => {
    await close()
    await tried.does('lines.remove', { ids: [...lines] })
    expect(await tried.does('items.remove', { ids: [mat, wish] })).toEqual({ deleted: 1, archived: 1 })
  })

  test('only once, only with a loadout of its own, and undo thaws it', async () => {
    const other = (await tried.does('loadout.add', { name: 'Free' })).id
    expect((await tried.refuses('trip.close', { id: trip, loadoutId: other })).code).toBe('row.gone')
    await close()
    expect((await tried.refuses('trip.close', { id: trip, loadoutId: loadout })).code).toBe('trip.frozen')
    await tried.does('step.undo', {})
    expect((await tried.refuses('record.open', { tripId: trip })).code).toBe('trip.planned')
    expect((await tried.does('trip.all', {}))[0]!.state).toBe('planned')
    await tried.does('step.redo', {})
    expect((await opened()).packed).toHaveLength(3)
  })

  test('a trip that goes out by its state freezes from its chosen loadout; planned again it thaws until something was said', async () => {
    await tried.does('trip.edit', { id: trip, state: 'out' })
    expect((await opened()).packed).toHaveLength(3)
    await tried.does('trip.edit', { id: trip, state: 'planned' })
    expect((await tried.refuses('record.open', { tripId: trip })).code).toBe('trip.planned')
    await tried.does('trip.edit', { id: trip, state: 'back' })
    await tried.does('debrief.night', { tripId: trip, night: 1, lowC: -2 })
    expect((await tried.refuses('trip.edit', { id: trip, state: 'planned' })).code).toBe('trip.frozen')
    expect((await tried.does('trip.all', {}))[0]!.state).toBe('back')
  })

  test('correcting the record is a step of its own, marks the line, and gives a typed mass its doubt', async () => {
    await close()
    const line = (await opened()).packed[0]!
    const reply = await tried.reply('packed.correct', { id: line.id, massMg: 500_000, pieces: 2, duties: [{ duty: 'hat', shared: true }] })
    expect(reply).toMatchObject({ ok: true, undo: { code: 'packed.correct', facts: { name: 'Quilt' } } })
    // An estimate's own 10 % and common 5 % (provisions.md 9.3).
    expect((await opened()).packed[0]).toMatchObject({ corrected: true, pieces: 2, massFrom: 'estimated', duties: 'hat*', shares: { [`corrected:${line.uid}`]: 50, 'estimates:bias': 25 } }) // prettier-ignore
    const { id } = await tried.does('packed.add', { tripId: trip, lane: 'on_me', name: 'A stick from the wood' })
    await tried.does('packed.remove', { id: line.id })
    expect((await opened()).packed.map(({ name, corrected }) => [name, corrected])).toEqual([['Mat', false], ['Food', false], ['A stick from the wood', true]]) // prettier-ignore
    expect((await tried.refuses('packed.add', { tripId: trip, lane: 'on_me' })).code).toBe('input.invalid')
    await tried.does('packed.remove', { id })
  })
})

describe('the door list', () => {
  const door = () => tried.does('door.open', { loadoutId: loadout })

  test('half packed, it is there after a restart; what is missing stays at home, and is asked first the next time', async () => {
    await tried.does('door.tick', { loadoutId: loadout, lineIds: [lines[0]!, lines[3]!], state: 'packed' })
    await tried.does('door.tick', { loadoutId: loadout, lineIds: [lines[1]!], state: 'missing' })
    await tried.does('door.add', { loadoutId: loadout, name: 'Keys' })
    await tried.does('door.weigh', { loadoutId: loadout, readingMg: 3_890_000, scaleId: null, withLast: false })
    await tried.reopen()
    expect(await door()).toMatchObject({ readingMg: 3_890_000, withLast: false, missedBefore: [] })
    expect((await door()).lines.map(({ lineId, name, state, last }) => [lineId, name, state, last])).toEqual([[lines[0], '', 'packed', null], [lines[3], '', 'packed', null], [lines[1], '', 'missing', null], [null, 'Keys', 'open', true]]) // prettier-ignore
    expect(await close()).toEqual({ packed: 2, leftOut: 2 })
    expect((await opened()).packed.map(({ name, door: state }) => [name, state])).toEqual([['Quilt', 'packed'], ['Food', 'packed']]) // prettier-ignore
  })

  test('found again after it was missing, and missed on the way: both are told at the next door', async () => {
    await tried.does('door.tick', { loadoutId: loadout, lineIds: [lines[1]!], state: 'missing' })
    await tried.does('door.tick', { loadoutId: loadout, lineIds: [lines[1]!], state: 'packed' })
    await tried.does('door.place', { lineId: lines[1]!, note: 'in the car' })
    await close()
    await tried.does('debrief.missed', { tripId: trip, itemId: quilt })
    const next = (await tried.does('loadout.add', { name: 'Next' })).id
    await tried.does('lines.put', { loadoutId: next, lines: [{ itemId: mat, lane: 'in_pack' }, { itemId: quilt, lane: 'in_pack' }] }) // prettier-ignore
    const { missedBefore } = await tried.does('door.open', { loadoutId: next })
    expect(missedBefore.map(({ itemId, how, tripName, startsOn }) => [itemId, how, tripName, startsOn]).toSorted()).toEqual([[quilt, 'missed', 'Hills', '2026-10-01'], [mat, 'found', 'Hills', '2026-10-01']].toSorted()) // prettier-ignore
  })

  test('a line is ticked on its own list alone, and its tick goes with it', async () => {
    const other = (await tried.does('loadout.add', { name: 'Other' })).id
    expect((await tried.refuses('door.tick', { loadoutId: other, lineIds: [lines[0]], state: 'packed' })).code).toBe('row.gone')
    await tried.does('door.tick', { loadoutId: loadout, lineIds: [lines[0]!], state: 'packed' })
    await tried.does('lines.remove', { ids: [lines[0]!] })
    expect((await door()).lines).toEqual([])
    await tried.does('step.undo', {})
    expect((await door()).lines).toMatchObject([{ lineId: lines[0], state: 'packed' }])
  })
})

describe('the debrief', () => {
  test('nobody is made to say anything: all is unknown until it is said', async () => {
    await close()
    const record = await opened()
    expect([record.debrief, record.lines, record.legs, record.nights, record.days, record.burns]).toEqual([null, [], [], [], [], []])
    expect((await tried.does('record.all', {})).taken.use).toEqual(['unknown', 'unknown', 'unknown'])
    expect((await tried.refuses('debrief.night', { tripId: (await tried.does('trip.add', { name: 'Next' })).id, night: 1 })).code).toBe('trip.planned') // prettier-ignore
  })

  test('a verdict says what to change, in words that fit it; another verdict takes the change along', async () => {
    await close()
    const id = (await opened()).packed[0]!.id
    expect((await tried.refuses('debrief.line', { packedId: id, verdict: 'drop', change: 'mend' })).code).toBe('input.invalid')
    expect((await tried.refuses('debrief.line', { packedId: id, change: 'mend' })).code).toBe('input.invalid')
    await tried.does('debrief.line', { packedId: id, use: 'failed', verdict: 'adjust', change: 'swap', toItemId: mat, lowC: -2.5 })
    expect((await opened()).lines).toMatchObject([{ use: 'failed', change: 'swap', toItemId: mat, lowC: -2.5 }])
    await tried.does('debrief.line', { packedId: id, verdict: 'keep', onlyWhen: 'the low is 0 °C or more' })
    expect((await opened()).lines).toMatchObject([{ use: 'failed', verdict: 'keep', change: '', toItemId: null, onlyWhen: 'the low is 0 °C or more' }]) // prettier-ignore
  })

  test('add and swap for make a wished-for item in the same step', async () => {
    await close()
    const packedId = (await opened()).packed[1]!.id
    const { toItemId } = await tried.does('debrief.line', { packedId, verdict: 'adjust', change: 'swap', wish: { name: 'Thicker mat', kitArea: 'sleep' } }) // prettier-ignore
    expect(await tried.does('item.open', { id: toItemId! })).toMatchObject({ name: 'Thicker mat', status: 'wished', kitArea: 'sleep' })
    await tried.does('step.undo', {})
    expect((await tried.refuses('item.open', { id: toItemId })).code).toBe('row.gone')
    expect((await opened()).lines).toEqual([])
  })

  test('the rest at once leaves alone what was said one by one, and says that it was the rest', async () => {
    await close()
    await tried.does('debrief.line', { packedId: (await opened()).packed[0]!.id, use: 'unused' })
    expect(await tried.does('debrief.rest', { tripId: trip, use: 'used', verdict: 'keep' })).toEqual({ count: 2 })
    expect(await tried.does('debrief.rest', { tripId: trip, use: 'used', verdict: 'keep' })).toEqual({ count: 0 })
    expect((await opened()).lines.map(({ use, said, verdict }) => [use, said, verdict])).toEqual([['unused', 'one', ''], ['used', 'rest', 'keep'], ['used', 'rest', 'keep']]) // prettier-ignore
  })

  test('logs are kept by leg, night and day; a second word to one adds to the first', async () => {
    await close()
    await tried.does('debrief.leg', { tripId: trip, leg: 0, day: 1, movingMin: 320, drunkMl: 2000 })
    await tried.does('debrief.leg', { tripId: trip, leg: 0, day: 1, breakMin: 45.5 })
    await tried.does('debrief.night', { tripId: trip, night: 1, lowC: -2.5, slept: 'cold', wokeMinute: 240 })
    await tried.does('debrief.day', { tripId: trip, day: 2, shoulders: 'sore', hungry: 'yes' })
    const { id } = await tried.does('debrief.burn', { tripId: trip, name: 'Canister', beforeMg: 198_000 })
    await tried.does('debrief.burn', { tripId: trip, id, afterMg: 110_000, heatedMl: 5000 })
    await tried.does('debrief.leaveOut', { kind: 'burn', id, leftOut: true })
    const { legs, nights, days, burns } = await opened()
    expect(legs).toMatchObject([{ leg: 0, movingMin: 320, breakMin: 45.5, drunkMl: 2000, leftMl: null, origin: 'typed', leftOut: false }])
    expect(nights).toMatchObject([{ night: 1, lowC: -2.5, slept: 'cold', wokeMinute: 240 }])
    expect(days).toMatchObject([{ day: 2, shoulders: 'sore', feet: '', hungry: 'yes' }])
    expect(burns).toMatchObject([{ beforeMg: 198_000, afterMg: 110_000, heatedMl: 5000, leftOut: true }])
    await tried.does('debrief.unlog', { kind: 'leg', id: legs[0]!.id })
    expect((await opened()).legs).toEqual([])
  })

  test('a question about a thing on trial is asked until it is settled; answers stand by trip', async () => {
    const { id } = await tried.does('trial.ask', { itemId: quilt, text: 'Warm enough at 0 °C?' })
    await close()
    expect((await opened()).questions).toMatchObject([{ id, text: 'Warm enough at 0 °C?', answers: [] }])
    await tried.does('trial.answer', { id, tripId: trip, text: 'Cold from four on.' })
    await tried.does('trial.edit', { id, settled: true })
    expect((await opened()).questions).toMatchObject([{ settled: true, answers: [{ tripId: trip, text: 'Cold from four on.' }] }])
    await tried.does('trial.answer', { id, tripId: trip, text: ' ' })
    expect((await opened()).questions).toEqual([])
    expect(await tried.does('trial.of', { itemId: quilt })).toMatchObject([{ id, answers: [] }])
  })

  test('photographs of a trip are kept like those of items: no sweep takes what a row names', async () => {
    await close()
    const sha = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex')
    const [whole, thumb] = [png('a camp'), webp('a camp')]
    for (const body of [whole, thumb])
      await tried.program().web(new Request('http://x/files', { method: 'POST', body: new Uint8Array(body) }))
    const photo = { tripId: trip, sha256: sha(whole), thumbSha256: sha(thumb), mime: 'image/png', name: 'Camp' }
    const { id } = await tried.does('debrief.photo', photo)
    expect((await tried.refuses('debrief.photo', { ...photo, sha256: 'f'.repeat(64) })).code).toBe('row.gone')
    expect((await opened()).photos).toMatchObject([{ id, packedId: null, name: 'Camp' }])
    const hashes = [sha(whole), sha(thumb)].toSorted()
    expect([...namedIn(watching(tried))].toSorted()).toEqual(hashes)
    await tried.does('debrief.unphoto', { id })
    expect((await opened()).photos).toEqual([])
    // Undo may still bring it back.
    expect([...namedIn(watching(tried))].toSorted()).toEqual(hashes)
  })

  test('a packed line of another trip is refused', async () => {
    await close()
    const packedId = (await opened()).packed[0]!.id
    const other = (await tried.does('trip.add', { name: 'Other', state: 'back' })).id
    expect((await tried.refuses('debrief.burn', { tripId: other, packedId })).code).toBe('row.gone')
  })

  test('kept and kept no longer', async () => {
    await close()
    await tried.does('debrief.keep', { tripId: trip, kept: true })
    expect((await tried.does('trip.all', {}))[0]).toMatchObject({ keptAt: '2026-09-20' })
    await tried.does('debrief.keep', { tripId: trip, kept: false })
    expect((await tried.does('trip.all', {}))[0]).toMatchObject({ keptAt: null })
  })
})

describe('past trips', () => {
  test('many in one step; what went counts as taken, never as used', async () => {
    const added = await tried.does('past.add', {
      trips: [
        { name: 'Lake round', month: '2024-06', nights: 2, lengthM: 41_000, lowC: 6, loadoutId: loadout, stayedIds: [mat] },
        { name: 'Ridge', month: '2025-03', itemIds: [mat, mat], names: ['A tent sold since'] },
      ],
    })
    expect(await tried.does('closet.rows', { ids: [quilt, mat] })).toMatchObject({ trips: [1, 1] })
    const all = await tried.does('record.all', {})
    expect(all.trips).toMatchObject({ id: added.ids, past: [true, true], month: ['2024-06', '2025-03'], onDay: ['2024-06-15', '2025-03-15'], nights: [2, null], lengthM: [41_000, null], lowC: [6, null], newestItemId: [null, null] }) // prettier-ignore
    expect(all.taken).toMatchObject({ itemId: [quilt, mat, null], use: ['unknown', 'unknown', 'unknown'], verdict: ['', '', ''] }) // prettier-ignore
    // A night out asks its own; nobody knows whether anything was boiled.
    expect(all.trips.asked[0]).toMatch(/(^| )top-insulation( |$)/)
    expect([all.trips.asked[0]!.includes('stove'), all.trips.asked[1]]).toEqual([false, ''])
    await tried.does('step.undo', {})
    expect((await tried.does('record.all', {})).trips.id).toEqual([])
  })

  test('one that cannot be added takes the others back', async () => {
    const trips = [{ name: 'Good', month: '2024-06' }, { name: 'Bad', month: '2024-07', itemIds: [999] }] // prettier-ignore
    expect(await tried.refuses('past.add', { trips })).toMatchObject({ code: 'row.gone', facts: { at: 1 } })
    expect((await tried.does('trip.all', {})).map(({ name }) => name)).toEqual(['Hills'])
    expect((await tried.refuses('past.add', { trips: [{ name: 'X', month: '2024-13' }] })).code).toBe('input.invalid')
  })
})

test('the record answers columns of one length, who was owned then, and what each trip asked', async () => {
  await tried.does('item.edit', { id: mat, status: 'lent', lentTo: 'Mira' })
  await close()
  const newest = wish
  await tried.does('item.edit', { id: mat, status: 'owned' })
  await tried.does('item.add', { name: 'Later', kitArea: 'extras' })
  await tried.does('debrief.trip', { tripId: trip, lowC: -1, windKmh: 30, nights: 2 })
  await tried.does('debrief.night', { tripId: trip, night: 1, lowC: -3 })
  const all = await tried.does('record.all', {})
  for (const part of Object.values(all) as Record<string, readonly unknown[]>[])
    expect(new Set(Object.values(part).map((column) => column.length)).size).toBe(1)
  expect(all.trips).toMatchObject({ id: [trip], state: ['out'], onDay: ['2026-10-01'], nights: [2], lowC: [-1], expectedLowC: [4], kept: [false], newestItemId: [newest] }) // prettier-ignore
  expect(all.trips.asked[0]!.split(' ')).toEqual(expect.arrayContaining(['shelter', 'top-insulation', 'first-aid']))
  expect(all.trips.asked[0]!.split(' ')).not.toContain('hat')
  expect(all.away).toEqual({ tripId: [trip, trip], itemId: [mat, wish], status: ['lent', 'wished'] })
  await tried.does('debrief.trip', { tripId: trip, lowC: null })
  expect((await tried.does('record.all', {})).trips.lowC).toEqual([-3])
})
