import type { Call, InputOf, OutputOf } from '../../contract.ts'
import type { Program } from '../../program.ts'
import { demoPast } from './past.ts'
import { demoItems, type DemoItem, type DemoTrait } from './items.ts'
import { demoBrief, demoLoadouts, demoSeasons, demoSupplies, demoWalker, laneOf, type DemoLoadout, type DemoSupply } from './trips.ts'

/**
 * Fills an empty demo closet through the contract's own calls, as a person would; one that holds anything is left as it is.
 * All dates move by whole years: the last bench day is the last 8 October, the trip begins on the next 9 October.
 */
export async function fillDemo(program: Program): Promise<void> {
  if ((await run(program, 'closet.all', {})).id.length > 0) return
  const { today } = await run(program, 'program.state', {})
  const dates = datesFor(today)
  const scale = await addScales(program, dates)
  const items = await addItems(program, dates)
  await addSets(program, items)
  await weighItems(program, items, scale, dates)
  const supplies = await addSupplies(program)
  const places = await addTrip(program, dates)
  const loadouts = await addLoadouts(program, places, items, supplies)
  await addPast(program, dates, places, { items, supplies, loadouts })
}

export interface Dates {
  /** A day of the story moved to the present. */
  readonly moved: (day: string) => string
  /** The same for days of the trip that lies ahead. */
  readonly ahead: (day: string) => string
  readonly years: number
}

export function datesFor(today: string): Dates {
  const year = Number(today.slice(0, 4))
  const past = today.slice(5) >= '10-08' ? year : year - 1
  const next = today.slice(5) < '10-09' ? year : year + 1
  const by = (years: number) => (day: string) => `${Number(day.slice(0, 4)) + years}${day.slice(4)}`
  return { moved: by(past - 2025), ahead: by(next - 2025), years: past - 2025 }
}

/** The demo is ours: a refusal of one of its calls is a bug. */
async function run<K extends Call>(program: Program, name: K, input: InputOf<K>): Promise<OutputOf<K>> {
  const reply = await program.call(name, input)
  if (!reply.ok) throw new Error(`demo: ${name} was refused: ${JSON.stringify(reply.fault)} for ${JSON.stringify(input)}`)
  return reply.value as OutputOf<K>
}

const mgOf = (g: number): number => Math.round(g * 1000)

/** Two scales, the bench's own checked on every bench day with 200 and 500 g of class M1 (OIML R 111-1: ±10 and ±25 mg; from memory). */
async function addScales(program: Program, { moved }: Dates): Promise<number> {
  await run(program, 'scale.add', {
    name: 'Scale A',
    stepMg: 10_000,
    capacityMg: 25_000_000,
    kind: 'typed',
    note: 'A hook for the whole pack.',
  })
  const { id } = await run(program, 'scale.add', { name: 'Scale B', stepMg: 1000, capacityMg: 5_000_000, kind: 'usb' })
  const days = new Set(demoItems.flatMap(({ weighed = [] }) => weighed.map(([day]) => day)))
  for (const day of [...days].sort()) {
    for (const [nominalMg, mpeMg] of [
      [200_000, 10],
      [500_000, 25],
    ] as const)
      await run(program, 'scale.check', { scaleId: id, readOn: moved(day), nominalMg, mpeMg, massClass: 'M1', readingsMg: [nominalMg] })
  }
  return id
}

type Ids = ReadonlyMap<string, number>
const idOf = (ids: Ids, name: string): number => {
  const id = ids.get(name)
  if (id === undefined) throw new Error(`demo: there is no ${name}`)
  return id
}

async function addItems(program: Program, dates: Dates): Promise<Ids> {
  const ids = new Map<string, number>()
  for (const item of demoItems) {
    const { id } = await run(program, 'item.add', newItem(item, dates))
    ids.set(item.name, id)
    for (const trait of item.traits ?? []) await run(program, 'item.trait', { id, trait: traitInput(trait) })
    if (item.needs !== undefined) await run(program, 'item.needs', { id, needs: needsOf(item.needs) })
    if (item.seasons !== undefined) await run(program, 'item.labels', { id, kind: 'season', texts: [...item.seasons] })
    if (item.used !== undefined)
      await run(program, 'item.counter', { id, code: item.used[0], amount: item.used[1], note: '', notedOn: null })
  }
  return ids
}

function newItem(item: DemoItem, { moved }: Dates): InputOf<'item.add'> {
  const {
    name,
    area: kitArea,
    pieces = 1,
    status = 'owned',
    lane = 'in_pack',
    duties,
    claimG,
    estimateG,
    priceEuro,
    came,
    cameOn,
    cameFrom,
  } = item
  return {
    name,
    kitArea,
    pieces,
    status,
    usualLane: lane,
    duties: words(duties).map((duty) => ({ duty: duty.replace('*', ''), shared: duty.endsWith('*') })),
    ...(claimG === undefined ? {} : { claimedMg: mgOf(claimG), claimedBy: 'its maker' }),
    ...(estimateG === undefined ? {} : { estimatedMg: mgOf(estimateG) }),
    ...(priceEuro === undefined ? {} : { priceMinor: priceEuro * 100, currency: 'EUR' }),
    ...(cameOn === undefined ? {} : { cameOn: moved(cameOn) }),
    ...(came === undefined ? {} : { came }),
    ...(cameFrom === undefined ? {} : { cameFrom }),
    ...(item.container === true ? { isContainer: true } : {}),
    ...(item.note === undefined ? {} : { note: item.note }),
    ...(item.lifeNote === undefined ? {} : { lifeNote: item.lifeNote }),
    ...(item.lastOutOn === undefined ? {} : { lastOutOn: moved(item.lastOutOn) }),
    tags: [...(item.tags ?? [])],
    materials: [...(item.materials ?? [])],
  }
}

const words = (text: string): readonly string[] => text.split(' ').filter((word) => word !== '')

function traitInput({
  code,
  number,
  text = '',
  typed = '',
  typedUnit = '',
  origin = 'claimed',
  source = '',
}: DemoTrait): InputOf<'item.trait'>['trait'] {
  return { code, number, text, typed, typedUnit, origin, source }
}

/** `stake:8 pole:2*`. */
function needsOf(text: string): InputOf<'item.needs'>['needs'] {
  return words(text).map((word) => {
    const [duty = '', pieces = ''] = word.replace('*', '').split(':')
    return { duty, pieces: Number(pieces), kind: word.endsWith('*') ? ('shared' as const) : ('reserved' as const) }
  })
}

async function addSets(program: Program, items: Ids): Promise<void> {
  for (const set of new Set(demoItems.flatMap((item) => item.set ?? []))) {
    const itemIds = demoItems.filter((item) => item.set === set).map(({ name }) => idOf(items, name))
    await run(program, 'set.add', { name: set, itemIds })
  }
}

/** Bench days in their order; on each the things come onto the plate two minutes after one another. */
async function weighItems(program: Program, items: Ids, scaleId: number, { moved }: Dates): Promise<void> {
  const all = demoItems
    .flatMap((item) => (item.weighed ?? []).map(([day, g]) => ({ item, day, g })))
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0))
  const weighings = all.map(({ item, day, g }, i) => ({
    itemId: idOf(items, item.name),
    scaleId,
    weighedOn: moved(day),
    weighedMinute: 8 * 60 + ((i * 2) % 240),
    readingsMg: [mgOf(g)],
    tareMg: 0,
    tareKind: 'none' as const,
    pieces: item.pieces ?? 1,
    damp: false,
    dirty: false,
    incomplete: false,
    entered: 'usb' as const,
  }))
  await run(program, 'items.weigh', { weighings })
}

async function addSupplies(program: Program): Promise<Ids> {
  const ids = new Map<string, number>()
  for (const supply of demoSupplies) {
    const rule = ruleOf(supply)
    const { id } = await run(program, 'supply.add', {
      name: supply.name,
      kitArea: supply.area,
      unit: supply.unit,
      mgPerUnit: 1000,
      massFrom: supply.massFrom,
      rule,
    })
    ids.set(supply.name, id)
    for (const [code, number] of supply.traits)
      await run(program, 'supply.trait', { id, trait: traitInput({ code, number, source: 'worked out at home' }) })
    if (supply.needs !== undefined) await run(program, 'supply.needs', { id, needs: needsOf(supply.needs) })
  }
  return ids
}

const ruleOf = ({ per, amount }: DemoSupply) => (per === undefined ? null : { per, amountMilli: amount * 1000 })

interface Places {
  readonly tripId: number
  readonly seasons: Ids
}

async function addTrip(program: Program, { ahead, years }: Dates): Promise<Places> {
  const seasons = new Map<string, number>()
  for (const { name, kind, brief } of demoSeasons)
    seasons.set(name, (await run(program, 'season.add', { name, kind, brief: JSON.stringify(brief) })).id)
  const profile = JSON.stringify({ ...demoWalker, bornYear: (demoWalker.bornYear ?? 0) + years })
  const walker = await run(program, 'walker.add', { name: 'Walker', profile })
  const trip = await run(program, 'trip.add', {
    name: 'Skarn hills, the long ridge',
    seasonId: idOf(seasons, 'Autumn'),
    walkerId: walker.id,
    startsOn: ahead('2025-10-09'),
    endsOn: ahead('2025-10-12'),
    zone: 'Europe/London',
    brief: JSON.stringify(demoBrief),
  })
  return { tripId: trip.id, seasons }
}

async function addLoadouts(program: Program, places: Places, items: Ids, supplies: Ids): Promise<Ids> {
  const ids = new Map<string, number>()
  for (const loadout of demoLoadouts) ids.set(loadout.name, await addLoadout(program, loadout, places, { items, supplies, loadouts: ids }))
  return ids
}

/** Trips of before, each with a word on some of what went. */
async function addPast(program: Program, { moved }: Dates, { seasons }: Places, { items, loadouts }: Known): Promise<void> {
  const [walker] = await run(program, 'walker.all', {})
  for (const past of demoPast) {
    const trip = {
      name: past.name,
      month: moved(past.month),
      nights: past.nights,
      lengthM: past.km * 1000,
      lowC: past.lowC,
      seasonId: idOf(seasons, past.season),
      walkerId: walker?.id ?? null,
      loadoutId: idOf(loadouts, past.loadout),
      stayedIds: (past.stayed ?? []).map((name) => idOf(items, name)),
    }
    const { ids } = await run(program, 'past.add', { trips: [trip] })
    const { packed } = await run(program, 'record.open', { tripId: ids[0]! })
    for (const { name, ...said } of past.said ?? []) {
      const line = packed.find((one) => one.name === name)
      if (line === undefined) throw new Error(`demo: ${name} did not go on ${past.name}`)
      await run(program, 'debrief.line', { packedId: line.id, ...said })
    }
  }
}

interface Known {
  readonly items: Ids
  readonly supplies: Ids
  readonly loadouts: Ids
}

async function addLoadout(program: Program, loadout: DemoLoadout, { tripId, seasons }: Places, known: Known): Promise<number> {
  const place = loadout.of === 'trip' ? { tripId } : { seasonId: idOf(seasons, loadout.of) }
  const from = loadout.parent === undefined ? {} : { fromId: idOf(known.loadouts, loadout.parent), descend: true }
  const { id } = await run(program, 'loadout.add', { name: loadout.name, ...place, ...from })
  const wanted = linesOf(loadout, known)
  await dropOthers(program, id, wanted)
  await run(program, 'lines.put', { loadoutId: id, lines: wanted })
  if (loadout.chosen === true) await run(program, 'loadout.edit', { id, chosen: true })
  return id
}

type NewLine = InputOf<'lines.put'>['lines'][number]

/** A copy of the parent holds what this loadout leaves at home. */
async function dropOthers(program: Program, id: number, wanted: readonly NewLine[]): Promise<void> {
  const [open] = await run(program, 'loadout.open', { ids: [id] })
  const stays = (line: { readonly itemId: number | null; readonly supplyId: number | null }): boolean =>
    wanted.some((one) => (one.itemId ?? null) === line.itemId && (one.supplyId ?? null) === line.supplyId)
  const ids = (open?.line ?? []).filter((line) => !stays(line)).map((line) => line.id)
  if (ids.length > 0) await run(program, 'lines.remove', { ids })
}

/** In the order of the closet, so that each area of a lane reads as on the shelf. */
function linesOf(loadout: DemoLoadout, { items, supplies }: Known): NewLine[] {
  const lanes = new Map<string, NewLine['lane']>([...laneOf(loadout), ['Stakes', 'in_pack']])
  const [shared, who] = loadout.carriedBy ?? []
  if (shared !== undefined) lanes.set(shared, 'in_pack')
  const things = demoItems.flatMap(({ name, pieces = 1 }): NewLine[] => {
    const lane = lanes.get(name)
    if (lane === undefined) return []
    const line = { itemId: idOf(items, name), lane, pieces: name === 'Stakes' ? loadout.stakes : pieces }
    return [name === shared && who !== undefined ? { ...line, carriedBy: who } : line]
  })
  return [
    ...things,
    ...demoSupplies.filter(({ name }) => loadout.supplies.includes(name)).map((supply) => supplyLine(supply, items, supplies)),
  ]
}

function supplyLine({ name, amount, from, container }: DemoSupply, items: Ids, supplies: Ids): NewLine {
  return {
    supplyId: idOf(supplies, name),
    lane: 'used_up',
    amountFrom: from,
    amountMilli: from === 'brief' ? null : amount * 1000,
    ...(container === undefined ? {} : { containerId: idOf(items, container) }),
  }
}
