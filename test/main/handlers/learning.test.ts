import { jStat } from 'jstat'
import { describe, expect, test } from 'vitest'
import { learnedOf, type Learned } from '../../../src-domain/learning/learned.ts'
import type { LearnedKind } from '../../../src-domain/learning/logs.ts'
import { emptyBrief } from '../../../src-domain/trips/brief.ts'
import { emptyWalker } from '../../../src-domain/trips/walker.ts'
import { seeded } from '../../bench/seeded.ts'
import { programAt, type Tried } from '../program-at.ts'

/**
 * Three invented years: forty trips of two days, packed, closed and debriefed through the contract. What is learned from them is worked out here a second time,
 * apart from the program: hours by the printed flat pace, grams by the worked example of a boil, the bed by its identity, and every estimate by another method.
 */
const FLAT_MS = 1.14813 // walking.md 1.1, table of speeds
// provisions.md 1.5: half a litre (0.499 kg) of 8 °C to 94.983 °C at 1500 m in a titanium pot of 100 g; 45.708 MJ/kg, η 0.50.
const BOIL_G = ((0.499 * 4.19 + 0.0523) * 86.983) / (45.708 * 0.5)
const DRINK_L_H = 0.5 // provisions.md 2.3: moderate, 20 °C, standard body
const BED_LIMIT_C = 0 // warmth.md 1.4, case A: comfort 0 on a mat of 0.85 m²K/W holds 0 °C

const trips = 40
const chance = seeded(2026)
const about = (middle: number, by: number) => middle + (by * (chance.below(2001) - 1000)) / 1000

interface Told {
  readonly km: number
  readonly movingMin: number
  readonly breakMin: number
  readonly drunkMl: number
  readonly lowC: number
  readonly cold: boolean
  readonly burnedG: number
  readonly eatenG: number
}
const told: readonly Told[] = Array.from({ length: trips }, () => {
  const km = 8 + chance.below(14)
  const movingMin = Math.round((km / (FLAT_MS * 3.6)) * 60 * about(1.12, 0.15))
  const lowC = about(1, 5)
  return {
    ...{ km, movingMin, lowC, cold: lowC < about(1.5, 3) },
    breakMin: Math.round(movingMin * about(0.2, 0.1)),
    drunkMl: Math.round((movingMin / 60) * DRINK_L_H * 1000 * about(1.15, 0.3)),
    burnedG: Math.round(4 * BOIL_G * about(1.1, 0.2) * 10) / 10,
    eatenG: 900 + chance.below(500),
  }
})

let tried: Tried
let walkerId: number
let stoveUid: string
let supplies: readonly [number, number]
async function setUp(count: number): Promise<void> {
  tried = await programAt()
  const traitOf = ([code, value]: readonly [string, number | string]) => ({ code, number: typeof value === 'number' ? value : null, text: typeof value === 'string' ? value : '', origin: 'claimed' as const }) // prettier-ignore
  const item = async (
    name: string,
    kitArea: 'sleep' | 'kitchen' | 'clothing',
    duty: string,
    traits: readonly (readonly [string, number | string])[],
  ) => {
    const { id } = await tried.does('item.add', { name, kitArea, claimedMg: 100_000, duties: [{ duty, shared: false }] })
    for (const trait of traits) await tried.does('item.trait', { id, trait: traitOf(trait) })
    return id
  }
  const ids = [
    await item('Bag', 'sleep', 'top-insulation', [['rated-temperature', 0], ['rating-kind', 'comfort'], ['form', 'bag']]), // prettier-ignore
    await item('Mat', 'sleep', 'ground-insulation', [['thermal-resistance', 0.85]]),
    await item('Shirt', 'clothing', 'base-layer', []),
    await item('Burner', 'kitchen', 'stove', [['fuels', 'gas'], ['efficiency', 0.5]]), // prettier-ignore
    await item('Pot', 'kitchen', 'pot', [['pot-metal', 'titanium']]),
    await item('Screen', 'kitchen', 'windscreen', []),
  ]
  const closet = await tried.does('closet.all', {})
  stoveUid = closet.uid[closet.id.indexOf(ids[3]!)]!
  const gas = (await tried.does('supply.add', { name: 'Gas', kitArea: 'kitchen', unit: 'g', mgPerUnit: 1000 })).id
  await tried.does('supply.trait', { id: gas, trait: traitOf(['gas-mix', 'isobutane 80 propane 20']) })
  const food = (await tried.does('supply.add', { name: 'Food', kitArea: 'food', unit: 'g', mgPerUnit: 1000, rule: { per: 'day', amountMilli: 700_000 } })).id // prettier-ignore
  await tried.does('supply.trait', { id: food, trait: traitOf(['energy', 450]) })
  supplies = [gas, food]
  const body = { ...emptyWalker, bornYear: 1990, sex: 'male' as const }
  walkerId = (await tried.does('walker.add', { name: 'Me', profile: JSON.stringify(body) })).id
  for (const [n, one] of told.slice(0, count).entries()) await tripOf(n, one, ids, gas, food)
}

async function tripOf(n: number, one: Told, itemIds: readonly number[], gas: number, food: number): Promise<void> {
  const day = (at: number) => `${2023 + Math.floor(n / 14)}-${String(1 + (n % 12)).padStart(2, '0')}-${String(10 + at)}`
  const leg = { name: '', lengthM: one.km * 1000, climbM: 0, descentM: 0, terrain: 'path', endHeightM: 1500, camp: true } as const
  const meals = { ...emptyBrief.meals, boilsPerDay: 2, litresPerBoil: 0.5 }
  const brief = { ...emptyBrief, legs: [{ ...leg, day: 1 }, { ...leg, day: 2 }], nightsOut: 1, lowC: 3, highC: 20, meals } // prettier-ignore
  const tripId = (await tried.does('trip.add', { name: `Trip ${n + 1}`, walkerId, startsOn: day(0), endsOn: day(1), brief: JSON.stringify(brief) })).id // prettier-ignore
  const loadoutId = (await tried.does('loadout.add', { name: 'Kit', tripId })).id
  const things = itemIds.map((itemId, at) => ({ itemId, lane: at === 2 ? ('on_me' as const) : ('in_pack' as const) }))
  const used = [gas, food].map((supplyId) => ({ supplyId, lane: 'used_up' as const, amountFrom: 'brief' as const }))
  await tried.does('lines.put', { loadoutId, lines: [...things, ...used] })
  await tried.does('trip.close', { id: tripId, loadoutId })
  await tried.does('debrief.leg', { tripId, leg: 0, day: 1, movingMin: one.movingMin, breakMin: one.breakMin, drunkMl: one.drunkMl })
  await tried.does('debrief.night', { tripId, night: 1, lowC: one.lowC, slept: one.cold ? 'cold' : 'warm' })
  await tried.does('debrief.burn', {
    tripId,
    beforeMg: 300_000,
    afterMg: Math.round(300_000 - one.burnedG * 1000),
    heatedMl: 2000,
    boils: 4,
  })
  await tried.does('debrief.trip', { tripId, foodBeforeMg: 3_000_000, foodAfterMg: 3_000_000 - one.eatenG * 1000 })
}

const learned = async (kind: LearnedKind): Promise<Learned> =>
  learnedOf(await tried.does('learning.logs', {}), emptyWalker).find((one) => one.kind === kind)!

/** The same Huber estimate found another way: μ by bisection of its own equation, the scatter by rounds about it. */
function paceByBisection(ys: readonly number[], base: readonly number[]): number {
  let [mu, sigma2] = [0, 0.12 ** 2]
  const weight = (i: number, at: number, s2: number) => base[i]! * Math.min(1, (1.345 * Math.sqrt(s2)) / Math.abs(ys[i]! - at))
  for (let round = 0; round < 2000; round++) {
    let [low, high] = [-2, 2]
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2
      const pull = ys.reduce((sum, y, at) => sum + (weight(at, middle, sigma2) * (y - middle)) / sigma2, -middle / 0.2 ** 2)
      if (pull > 0) low = middle
      else high = middle
    }
    mu = (low + high) / 2
    const weights = ys.map((_, at) => weight(at, mu, sigma2))
    const all = weights.reduce((sum, w) => sum + w, 0)
    sigma2 = (4 * 0.12 ** 2 + ys.reduce((sum, y, at) => sum + weights[at]! * (y - mu) ** 2, 0)) / (4 + Math.max(0, all - 1))
  }
  return Math.exp(mu)
}

/** Mean of a normal prior about 0 times normal logs, integrated by hand. */
function meanLn(lns: readonly number[], prior: number, scatter: number): number {
  let [all, sum] = [0, 0]
  for (let x = -1.5; x <= 1.5; x += 1e-4) {
    const weight = Math.exp(lns.reduce((ln, one) => ln - (one - x) ** 2 / (2 * scatter ** 2), -(x ** 2) / (2 * prior ** 2)) + 40)
    all += weight
    sum += weight * x
  }
  return sum / all
}

describe('forty debriefed trips', () => {
  test('every factor is that of an independent computation to four digits', async () => {
    await setUp(trips)
    const hours = told.map(({ km }) => (km * 1000) / FLAT_MS / 3600)
    const ys = told.map(({ movingMin }, i) => Math.log(movingMin / 60 / hours[i]!))
    const pace = await learned('pace')
    expect(pace.records).toBe(trips)
    expect(pace.value).toBeCloseTo(paceByBisection(ys, hours.map((h) => Math.min(1, Math.max(0.25, h / 3)))), 4) // prettier-ignore

    const minutes = (of: 'movingMin' | 'breakMin') => told.reduce((sum, one) => sum + one[of], 0)
    expect((await learned('breaks')).value).toBeCloseTo((90 + minutes('breakMin')) / (600 + minutes('movingMin')), 6)

    const water = told.map((one) => Math.log(one.drunkMl / 1000 / ((one.movingMin / 60) * DRINK_L_H)))
    expect((await learned('water')).value).toBeCloseTo(Math.exp(meanLn(water, 0.3, 0.25)), 4)

    const fuel = await learned('fuel')
    expect([fuel.records, fuel.stove]).toEqual([trips, stoveUid])
    expect(fuel.value).toBeCloseTo(Math.exp(meanLn(told.map((one) => Math.log(one.burnedG / (4 * BOIL_G))), 0.25, 0.15)), 4) // prettier-ignore

    const cold = await learned('cold')
    expect(cold.value).toBeCloseTo(meanOffset(told), 2)
    expect(cold.logs[0]!.law).toBeCloseTo(BED_LIMIT_C, 2)
  })

  test('what nobody said teaches nothing, and a log that is left out is passed over', async () => {
    await setUp(6)
    // No body mass: no energy need, and so no food log, though food was weighed.
    expect((await learned('food')).records).toBe(0)
    const before = await learned('water')
    await tried.does('debrief.leaveOut', { kind: 'leg', id: before.logs[0]!.id, leftOut: true })
    const after = await learned('water')
    expect([after.records, after.logs.length, after.logs[0]!.passedOver]).toEqual([5, 6, 'left-out'])
    expect((await learned('pace')).records).toBe(5)
    // A trip that is only planned, packed and out, its amounts by the brief and its low a forecast, says nothing.
    const logs = (await tried.does('learning.logs', {})).length
    const tripId = (await tried.does('trip.add', { name: 'Next', walkerId, startsOn: '2026-09-19', endsOn: '2026-09-20', brief: JSON.stringify({ lowC: 1, nightsOut: 1 }) })).id // prettier-ignore
    const loadoutId = (await tried.does('loadout.add', { name: 'Kit', tripId })).id
    const closet = await tried.does('closet.all', {})
    await tried.does('lines.put', { loadoutId, lines: closet.id.map((itemId) => ({ itemId, lane: 'in_pack' as const })) })
    await tried.does('trip.close', { id: tripId, loadoutId })
    await tried.does('debrief.night', { tripId, night: 1, slept: 'cold' })
    expect((await tried.does('learning.logs', {})).length).toBe(logs)
  })

  test('food: what was weighed away is learned once there is a body; what all went says only at least so much', async () => {
    await setUp(3)
    const body = JSON.stringify({ ...emptyWalker, bornYear: 1990, sex: 'male', bodyMassG: 70_000, heightMm: 1750 })
    await tried.does('walker.edit', { id: walkerId, profile: body })
    const before = await tried.does('learning.logs', {})
    expect(before.filter(({ kind }) => kind === 'food')).toEqual([]) // the trips keep the walker as they were
    await tripOf(trips, { ...told[0]!, eatenG: 1200 }, (await tried.does('closet.all', {})).id, ...supplies)
    const logs = (await tried.does('learning.logs', {})).filter(({ kind }) => kind === 'food')
    expect(logs).toMatchObject([{ met: 1200 * 4.5, passedOver: null, of: 'trip' }])
    await tried.does('debrief.trip', { tripId: logs[0]!.tripId, foodAfterMg: 0 })
    expect((await learned('food')).logs[0]!.passedOver).toBe('nothing-left')
  })

  test('facts of care come as columns of one length', async () => {
    await setUp(0)
    const care = await tried.does('care.all', {})
    for (const part of [care.counters, care.items] as Record<string, readonly unknown[]>[])
      expect(new Set(Object.values(part).map((column) => column.length)).size).toBe(1)
    expect(care.items.lastMark).toEqual(care.items.id.map(() => ''))
  })
})

/** Posterior mean offset over a finer grid than the program's, cut at the same ± 12 K, with Φ of a statistics package. */
function meanOffset(nights: readonly Told[]): number {
  let [all, sum] = [0, 0]
  for (let x = -12; x <= 12; x += 0.01) {
    const ln = nights.reduce((at, { lowC, cold }) => at + Math.log(jStat.normal.cdf((cold ? 1 : -1) * (x - (lowC - BED_LIMIT_C)), 0, 2.5)), -(x * x) / 18) // prettier-ignore
    all += Math.exp(ln)
    sum += Math.exp(ln) * x
  }
  return sum / all
}
