import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { evenCuts, legsAt, offersOf, sourcesAt } from '../../../src-domain/trips/track-days.ts'
import { heightOn, heightsOfLegs } from '../../../src-domain/trips/leg-heights.ts'
import { newLeg } from '../../../src-domain/trips/legs.ts'
import { niceStep, placeAlong, placeOnPlan, planBetween, planFrame } from '../../../src-domain/trips/plan-frame.ts'
import { readTrack, type TrackPoint } from '../../../src-domain/trips/track.ts'

/** Due north from 45° in steps of 0.001°, up a steady slope: 1 m of height for each point. */
const points = (count: number): readonly TrackPoint[] =>
  Array.from({ length: count }, (_, i) => ({ latDeg: 45 + i / 1000, lonDeg: 7, heightM: 1000 + i, atMs: null }))
const track = readTrack([points(201)], 'terrain')

describe('waypoints', () => {
  test('are offered in the order of the way, those too far off are not', () => {
    const offers = offersOf(track, [
      { latDeg: 45.15, lonDeg: 7.001, name: 'Meadow camp' },
      { latDeg: 45.05, lonDeg: 7, name: 'Spring' },
      { latDeg: 45.1, lonDeg: 7.2, name: 'Far tap' },
      { latDeg: 45.1, lonDeg: 7, name: 'Cairn' },
    ])
    expect(offers.map(({ name, camp, water }) => [name, camp, water])).toEqual([
      ['Spring', false, true],
      ['Cairn', false, false],
      ['Meadow camp', true, false],
    ])
    expect(sourcesAt(offers)).toMatchObject([{ name: 'Spring', sure: 'likely', safe: false }])
  })
})

describe('legs', () => {
  test('one a day, camps between; lengths add to the way and heights to its climb', () => {
    const legs = legsAt(track, [{ atM: track.lengthM / 4, name: 'Flat' }], 'terrain')
    expect(legs.map(({ day, camp, name }) => [day, camp, name])).toEqual([
      [1, true, 'to Flat'],
      [2, false, ''],
    ])
    // A quarter of 200 m of climb on a steady slope; rounding to the metre, and what the threshold of 2 m leaves out at each end.
    expect(Math.abs(legs[0]!.climbM! - 50)).toBeLessThanOrEqual(2)
    expect(legs[1]!.endHeightM).toBe(1200)
  })
  test('any cuts: the legs’ lengths add to the track’s', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -100, max: 30_000, noNaN: true }), { maxLength: 8 }), (cuts) => {
        const legs = legsAt(
          track,
          cuts.map((atM) => ({ atM, name: '' })),
          'terrain',
        )
        const sum = legs.reduce((all, leg) => all + leg.lengthM!, 0)
        expect(Math.abs(sum - track.lengthM)).toBeLessThanOrEqual(legs.length)
        expect(legs.map((leg) => leg.day)).toEqual(legs.map((_, i) => i + 1))
      }),
    )
  })
  test('days of equal length', () => {
    expect(evenCuts(40_000, 4)).toEqual([10_000, 20_000, 30_000])
    expect(evenCuts(40_000, 1)).toEqual([])
  })
})

describe('the plan', () => {
  const plan = points(201).map(({ latDeg, lonDeg }): readonly [number, number] => [latDeg, lonDeg])
  test('a way due north runs straight up, at one scale', () => {
    const frame = planFrame(plan, 400, 300, 20)
    expect(frame.points[0]).toEqual([200, 280])
    expect(frame.points.at(-1)![1]).toBeCloseTo(20, 6)
    // 0.2° of a meridian near 45.1°: 0.2 × 111,132 m (length of a degree at 45°, table of the WGS84 ellipsoid, memory), to 0.1 %.
    expect(260 / frame.scale / (0.2 * 111_132)).toBeCloseTo(1, 3)
    expect(placeOnPlan(frame, 0.5)[1]).toBeCloseTo(150, 6)
    expect(planBetween(frame, 0.25, 0.75)[0]![1]).toBeCloseTo(215, 6)
  })
  test('every point lies inside, whatever the way', () => {
    const place = fc.tuple(fc.double({ min: -80, max: 80, noNaN: true }), fc.double({ min: -180, max: 179.9, noNaN: true }))
    const near = place.chain(([lat, lon]) =>
      fc.array(
        fc
          .tuple(fc.double({ min: -0.4, max: 0.4, noNaN: true }), fc.double({ min: -0.4, max: 0.4, noNaN: true }))
          .map(([a, b]): readonly [number, number] => [lat + a, ((lon + b + 540) % 360) - 180]),
        { minLength: 1, maxLength: 20 },
      ),
    )
    fc.assert(
      fc.property(near, (some) => {
        const { points: drawn } = planFrame(some, 404, 304, 24)
        drawn.forEach(([x, y]) => expect(x >= 23.9 && x <= 380.1 && y >= 23.9 && y <= 280.1).toBe(true))
      }),
    )
  })
  test('a share of the way is a place on it', () => {
    const place = placeAlong(plan, 0.5)!
    expect(place.latDeg).toBeCloseTo(45.1, 6)
    expect(place.lonDeg).toBe(7)
    expect(placeAlong(plan, 2)!.latDeg).toBeCloseTo(45.2, 9)
    expect(placeAlong([], 0)).toBeNull()
  })
  test('steps are 1, 2 or 5 of a power of ten', () => {
    expect(niceStep(62, 8)).toBeCloseTo(10, 9)
    expect(niceStep(1410, 4)).toBeCloseTo(500, 6)
    expect(niceStep(7.4, 8)).toBeCloseTo(1, 9)
  })
})

describe('heights of legs without a track', () => {
  const legs = [
    { ...newLeg(1, true), lengthM: 16_000, climbM: 850, descentM: 260, endHeightM: 830 },
    { ...newLeg(2, false), lengthM: 18_000, climbM: 900, descentM: 720 },
  ]
  test('shifted onto the camp that is said', () => {
    // 830 − (850 − 260) = 240 at the start; 830 + 900 − 720 = 1010 at the end.
    expect(heightsOfLegs(legs)).toEqual({ points: [[0, 240], [16_000, 830], [34_000, 1010]], anchored: true }) // prettier-ignore
    expect(heightsOfLegs([{ ...legs[0]!, climbM: null }])).toBeNull()
    expect(heightsOfLegs([])).toBeNull()
  })
  test('read between', () => {
    const { points } = heightsOfLegs(legs)!
    expect(heightOn(points, 8000)).toBe(535)
    expect(heightOn(points, -5)).toBe(240)
    expect(heightOn(points, 99_000)).toBe(1010)
    expect(heightOn([], 1)).toBeNull()
  })
})
