import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { uncertainty } from '../../../src-domain/figures/figure.ts'
import { packAt } from '../../../src-domain/loadout/moments.ts'
import { profileOf, type Profile } from '../../../src-domain/loadout/profile.ts'
import { rateOf } from '../../../src-domain/checks/water-needs.ts'
import { WATER_kg_l } from '../../../src-domain/laws/heat-to-boil.ts'
import { askedOf, leg, type Change } from '../checks/asking.ts'

const kit = [{ name: 'everything else', area: 'carry' as const, g: 4000, uOwnG: 10 }]
const food = { name: 'food', area: 'food' as const, rule: { per: 'day' as const, amountMilli: 900_000 }, amountFrom: 'brief' as const }
const water = (ml: number) => ({ name: 'water', area: 'water' as const, unit: 'ml' as const, gPerUnit: WATER_kg_l, amount: ml })
const walker = { bodyMassG: 70_000, heightMm: 1750, bornYear: 1990, sex: 'male' as const }

function profile(change: Change): Profile {
  const found = profileOf(askedOf(change))
  if (!found.ok) throw new Error(found.missing.code)
  return found.profile
}
const loads = ({ points }: Profile) => points.map(({ atM, loadKg }) => [atM, Number(loadKg.toFixed(6))])

describe('load on the shoulders', () => {
  test('it falls by a quarter of four days’ food a day', () => {
    expect(loads(profile({ items: kit, supplies: [food] }))).toEqual([
      [0, 7.6],
      [10_000, 6.7],
      [20_000, 5.8],
      [30_000, 4.9],
      [40_000, 4],
    ])
  })
  test('at a resupply it jumps: a point before and one after', () => {
    const resupplies = [{ atM: 25_000, day: 3, name: 'box', what: ['food' as const] }]
    const found = profile({ items: kit, supplies: [food], brief: { resupplies } })
    expect(loads(found)).toEqual([
      [0, 6.25], // 2.5 days' food
      [10_000, 5.35],
      [20_000, 4.45],
      [25_000, 4],
      [25_000, 5.35], // 1.5 days' more
      [30_000, 4.9],
      [40_000, 4],
    ])
    expect(found.resuppliesM).toEqual([25_000])
  })
  test('a rest day eats where it stands', () => {
    const found = profile({ items: kit, supplies: [food], brief: { legs: [leg(1), leg(2), leg(4, { camp: false })] } })
    expect(loads(found)).toEqual([
      [0, 7.6],
      [10_000, 6.7],
      [20_000, 5.8],
      [20_000, 4.9],
      [30_000, 4],
    ])
  })
  test('water is filled at sources for what its stretch asks and drunk by the hour', () => {
    const sources = [{ atM: 20_000, name: 'spring', sure: 'sure' as const, safe: true }]
    const brief = { sources, nightsOut: 2, legs: [leg(1), leg(2), leg(3, { lengthM: 4000 })] }
    const found = profile({ items: kit, supplies: [water(9000)], brief, trip: { endsOn: '2025-10-11' } })
    const asked = askedOf({ brief })
    const rate = rateOf(asked.brief, asked.walker, 12).value
    const hour = (atM: number) => found.points.find((point) => point.atM === atM)!.hours
    // 20 km and a dry camp (1.5 l at 10 km) and half a litre to spare; the other camp stands at the spring.
    const first = rate * hour(20_000) + 1.5 + 0.5
    const second = rate * (hour(24_000) - hour(20_000)) + 0.5
    const kg = (litres: number) => Number((4 + litres * WATER_kg_l).toFixed(5))
    expect(loads(found).map(([at, load]) => [at, Number(load!.toFixed(5))])).toEqual([
      [0, kg(first)],
      [10_000, kg(first - rate * hour(10_000) - 1.5)],
      [20_000, kg(0.5)],
      [20_000, kg(second)],
      [24_000, kg(0.5)],
    ])
    expect(found.fillsM).toEqual([0, 20_000])
  })
  test('without sources nothing says where water is filled: all of it counts', () => {
    expect(
      loads(profile({ items: kit, supplies: [water(2000)] })).every(([, load]) => load === Number((4 + 2 * WATER_kg_l).toFixed(6))),
    ).toBe(true)
  })
  test('its mean is over the hours walked', () => {
    const found = profile({ items: kit, supplies: [food] })
    expect(found.meanLoadKg).toBeCloseTo(5.8, 6)
    // Three quarters of the time on the last leg, where nothing but the base is left of the mean of 4.9 and 4.
    const slow = profile({ items: kit, supplies: [food], brief: { legs: [leg(1), leg(2), leg(3), leg(4, { terrain: 'rock' })] } })
    expect(slow.meanLoadKg).toBeLessThan(found.meanLoadKg)
  })
  test('what is worn or carried by another is not on these shoulders', () => {
    const { loadout } = askedOf({
      items: [...kit, { name: 'boots', area: 'footwear', g: 1000 }, { name: 'rope', area: 'extras', g: 2000 }],
    })
    const lines = loadout.lines.map((line, i) =>
      i === 1 ? { ...line, lane: 'on_me' as const } : i === 2 ? { ...line, carriedBy: 'Ada' } : line,
    )
    expect(loads(profile({ loadout: { ...loadout, lines } })).every(([, load]) => load === 4)).toBe(true)
  })
  test('unknown masses are named', () => {
    expect(profile({ items: [...kit, { name: 'riddle', area: 'extras', g: null }] }).withoutMass).toEqual(['riddle'])
  })
  test('without legs there is none, and it says so', () => {
    expect(profileOf(askedOf({ brief: { legs: [] } }))).toEqual({ ok: false, missing: { code: 'legs', facts: { leg: 0 } } })
  })
})

describe('days and legs', () => {
  const brief = {
    place: { latDeg: 50, lonDeg: 10 },
    legs: [leg(1, { climbM: 500 }), leg(1, { descentM: 300 }), leg(2, { climbM: 100, descentM: 300 }), leg(3), leg(4, { camp: false })],
  }
  const found = profile({ items: kit, supplies: [food], brief, walker })
  test('they add up to the way', () => {
    expect(found.days.reduce((sum, { lengthM }) => sum + lengthM, 0)).toBe(found.lengthM)
    expect(found.days.map(({ climbM, descentM }) => [climbM, descentM])).toEqual([
      [500, 300],
      [100, 300],
      [0, 0],
      [0, 0],
    ])
    expect(found.days.reduce((sum, { movingHours }) => sum + movingHours, 0)).toBeCloseTo(found.points.at(-1)!.hours, 9)
    expect(found.days[0]!.onFootHours).toBeCloseTo(1.15 * found.days[0]!.movingHours, 9)
  })
  test('the first morning’s load is the pack at the trailhead, its doubt too', () => {
    const asked = askedOf({ items: kit, supplies: [food], brief, walker })
    const pack = packAt(asked.loadout, { day: 0, what: 'trailhead' }, asked).figure
    expect(found.days[0]!.loadStart.value).toBeCloseTo(pack.value / 1000, 9)
    expect(uncertainty(found.days[0]!.loadStart)).toBeCloseTo(uncertainty(pack) / 1000, 9)
  })
  test('energy, arrival and light stand by day', () => {
    for (const day of found.days) {
      expect(day.energy!.value).toBeGreaterThan(1624)
      expect(day.arrival.medianMin).toBeCloseTo(480 + 60 * day.onFootHours, 9)
      expect(day.light.ok && day.light.light.setMin! > day.light.light.riseMin!).toBe(true)
    }
    expect(found.energyMissing).toBeNull()
    expect(found.legs.every(({ walkingKcal }) => walkingKcal! > 0)).toBe(true)
  })
  test('without a body the energy says what it needs', () => {
    const bare = profile({ items: kit, brief })
    expect(bare.energyMissing).toEqual({ code: 'body-mass' })
    expect(bare.days.every(({ energy }) => energy === null)).toBe(true)
  })
})

describe('whatever the way', () => {
  const number = (min: number, max: number) => fc.integer({ min, max })
  const change: fc.Arbitrary<Change> = fc
    .record({
      lengths: fc.array(number(500, 20_000), { minLength: 1, maxLength: 6 }),
      perDayG: number(0, 1500),
      ml: number(0, 6000),
      sources: fc.array(number(0, 60_000), { maxLength: 4 }),
      boxes: fc.array(number(0, 60_000), { maxLength: 2 }),
    })
    .map(({ lengths, perDayG, ml, sources, boxes }) => ({
      items: kit,
      supplies: [{ ...food, rule: { per: 'day' as const, amountMilli: perDayG * 1000 } }, water(ml)],
      brief: {
        legs: lengths.map((lengthM, i) => leg(i + 1, { lengthM })),
        nightsOut: lengths.length - 1,
        sources: sources.map((atM) => ({ atM, name: '', sure: 'sure' as const, safe: true })),
        resupplies: boxes.map((atM) => {
          let day = 1
          let walked = lengths[0]!
          while (day < lengths.length && walked < atM) walked += lengths[day++]!
          return { atM, day, name: '', what: ['food' as const] }
        }),
      },
      trip: { startsOn: null, endsOn: null },
    }))
  test('the load is never under its base, the points run on, and between jumps it never grows', () => {
    fc.assert(
      fc.property(change, (one) => {
        const { points } = profile(one)
        return points.every((point, i) => {
          const before = points[i - 1]
          const parts = point.baseKg + point.usedKg.reduce((sum, kg) => sum + kg, 0)
          return (
            point.loadKg >= 4 - 1e-9 &&
            Math.abs(parts - point.loadKg) < 1e-9 &&
            (before === undefined || point.atM >= before.atM) &&
            (before === undefined || point.atM === before.atM || point.loadKg <= before.loadKg + 1e-9)
          )
        })
      }),
      { numRuns: 100 },
    )
  })
  test('the order of lines changes nothing', () => {
    fc.assert(
      fc.property(change, (one) => {
        const { loadout } = askedOf(one)
        const other = profile({ ...one, loadout: { ...loadout, lines: [...loadout.lines].reverse() } })
        const same = profile({ ...one, loadout })
        return same.points.every((point, i) => Math.abs(point.loadKg - other.points[i]!.loadKg) < 1e-9)
      }),
      { numRuns: 30 },
    )
  })
})
