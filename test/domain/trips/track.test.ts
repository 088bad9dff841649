import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { geodesicM } from '../../../src-domain/laws/geodesic.ts'
import { walkingHours } from '../../../src-domain/laws/walking-time.ts'
import { planOf, profileOf } from '../../../src-domain/trips/track-drawing.ts'
import { cutTrack, piecesOf, snap } from '../../../src-domain/trips/track-places.ts'
import type { TrackPoint } from '../../../src-domain/trips/track.ts'
import { readTrack } from '../../../src-domain/trips/track.ts'
import { testTrack } from '../../published/track.ts'

const point = (latDeg: number, lonDeg: number, heightM: number | null = null, atMs: number | null = null): TrackPoint => ({
  latDeg,
  lonDeg,
  heightM,
  atMs,
})
/** North along a meridian, a point every 20 m or so. */
const line = (heights: readonly (number | null)[], from = 45): TrackPoint[] =>
  heights.map((heightM, i) => point(from + i * 0.00018, 7, heightM))
const hill = Array.from({ length: 201 }, (_, i) => 1000 + 2 * Math.min(i, 200 - i))

describe('the test track of the note', () => {
  test('its last height is unknown and said so; nothing is made up', () => {
    const track = readTrack([testTrack], 'terrain')
    expect(track.climb).toMatchObject({ upM: 5, downM: 0, isPartial: true, bridgedM: 0 })
    expect(track.points.at(-1)!.heightM).toBeNull()
    expect(track.counts).toEqual({ points: 4, dropped: 1, withoutHeight: 1, segments: 1 })
  })
})

describe('length', () => {
  test('it is the sum of the geodesics between its points', () => {
    const step = fc.tuple(fc.double({ min: -0.002, max: 0.002, noNaN: true }), fc.double({ min: 0.0003, max: 0.002, noNaN: true }))
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 40 }), fc.double({ min: -60, max: 60, noNaN: true }), (steps, lat) => {
        // Starts so that some cross the date line on the way east.
        const points = [point(lat, 179.98)]
        for (const [dLat, dLon] of steps) {
          const last = points.at(-1)!
          points.push(point(last.latDeg + dLat, last.lonDeg + dLon >= 180 ? last.lonDeg + dLon - 360 : last.lonDeg + dLon))
        }
        const expected = points.slice(1).reduce((sum, b, i) => sum + geodesicM(points[i]!.latDeg, points[i]!.lonDeg, b.latDeg, b.lonDeg), 0)
        return Math.abs(readTrack([points], 'terrain').lengthM - expected) < 1e-3
      }),
    )
  })
  test('duplicates and a wandering fix add nothing', () => {
    const still = Array.from({ length: 50 }, (_, i) => point(45 + (i % 2) * 1e-5, 7, 1000))
    const track = readTrack([[...still, ...line(hill, 45.001)]], 'terrain')
    const straight = readTrack([[still[0]!, ...line(hill, 45.001)]], 'terrain')
    expect(track.lengthM).toBeCloseTo(straight.lengthM, 6)
    expect(track.counts.dropped).toBe(49)
  })
  test('a gap between segments is counted apart', () => {
    const track = readTrack([line(hill), line(hill, 45.1)], 'terrain')
    const one = readTrack([line(hill)], 'terrain')
    expect(track.lengthM).toBeCloseTo(2 * one.lengthM, 0)
    expect(track.gapM).toBeCloseTo(geodesicM(45 + 200 * 0.00018, 7, 45.1, 7), 3)
    expect(track.climb!.upM).toBeCloseTo(2 * one.climb!.upM, 6)
  })
  test('reversed, it is as long, and climb and descent change places', () => {
    const heights = fc.array(fc.double({ min: 0, max: 800, noNaN: true }), { minLength: 2, maxLength: 60 })
    fc.assert(
      fc.property(heights, fc.constantFrom('satellite', 'barometer', 'terrain'), (found, from) => {
        const [out, back] = [readTrack([line(found)], from), readTrack([line(found).reverse()], from)]
        const close = (a: number, b: number) => Math.abs(a - b) < 1e-6
        return close(out.lengthM, back.lengthM) && close(out.climb!.upM, back.climb!.downM) && close(out.climb!.downM, back.climb!.upM)
      }),
    )
  })
})

describe('heights', () => {
  test('none at all: climb unknown, never nothing', () => {
    expect(readTrack([line(hill.map(() => null))], 'satellite').climb).toBeNull()
    expect(readTrack([[]], 'satellite')).toMatchObject({ lengthM: 0, gapM: 0, climb: null, times: null, points: [] })
    expect(readTrack([], 'satellite').climb).toBeNull()
  })
  test('missing for under 200 m they are bridged, and the climb is the same', () => {
    const holed = hill.map((height, i) => (i > 40 && i < 49 ? null : height))
    const [whole, bridged] = [readTrack([line(hill)], 'terrain').climb!, readTrack([line(holed)], 'terrain').climb!]
    expect(bridged.upM).toBeCloseTo(whole.upM, 6)
    expect(bridged.bridgedM).toBe(0)
  })
  test('missing for longer, the net difference counts and the band widens by it', () => {
    const holed = hill.map((height, i) => (i > 40 && i < 70 ? null : height))
    const [whole, bridged] = [readTrack([line(hill)], 'terrain').climb!, readTrack([line(holed)], 'terrain').climb!]
    expect(bridged.upM).toBeCloseTo(whole.upM, 6)
    expect(bridged.bridgedM).toBeCloseTo(30 * 20.005, 0)
    expect(bridged.upBandM).toBeCloseTo(0.03 * bridged.upM + 60, 6)
  })
  test('a height that only a dropped point knows is kept', () => {
    const points = [point(45, 7, 500), point(45.001, 7), point(45.001001, 7, 540), point(45.002, 7, 580)]
    expect(readTrack([points], 'terrain').climb!.upM).toBe(80)
    expect(readTrack([points], 'terrain').points.map(({ heightM }) => heightM)).toEqual([500, 540, 580])
  })
})

describe('times', () => {
  const timed = line(hill).map((one, i) => ({ ...one, atMs: i * 16_000 }))
  test('are read only where every point has one', () => {
    expect(readTrack([timed], 'satellite').times).toMatchObject({ elapsedS: 3200, movingS: 3200 })
    expect(readTrack([timed.map((one, i) => (i === 5 ? { ...one, atMs: null } : one))], 'satellite').times).toBeNull()
  })
  test('a point whose time does not increase is left out', () => {
    const odd = timed.map((one, i) => (i === 60 ? { ...one, latDeg: 46, atMs: 5000 } : one))
    const track = readTrack([odd], 'satellite')
    expect(track.counts.dropped).toBe(1)
    expect(track.lengthM).toBeCloseTo(readTrack([timed], 'satellite').lengthM, 3)
  })
  test('wandering during a break is not distance', () => {
    const halt = Array.from({ length: 40 }, (_, i) => ({
      ...timed[100]!,
      latDeg: timed[100]!.latDeg + (i % 2) * 0.00009,
      atMs: 1_600_000 + (i + 1) * 10_000,
    }))
    const after = timed.slice(101).map((one) => ({ ...one, atMs: one.atMs + 400_000 }))
    const track = readTrack([[...timed.slice(0, 101), ...halt, ...after]], 'satellite')
    expect(track.times!.breakS).toBeGreaterThanOrEqual(400)
    expect(Math.abs(track.lengthM - readTrack([timed], 'satellite').lengthM)).toBeLessThan(11)
  })
})

describe('places along the way', () => {
  const track = readTrack([line(hill)], 'terrain')
  test('stretches add up to the whole', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.double({ min: 1, max: 3999, noNaN: true }), { maxLength: 5 }), (cuts) => {
        const parts = cutTrack(
          track,
          cuts.sort((a, b) => a - b),
          'terrain',
        )
        const length = parts.reduce((sum, part) => sum + part.lengthM, 0)
        // A cut near the summit hides up to a threshold (2 m) of either run.
        const climb = parts.reduce((sum, part) => sum + part.climbM!, 0)
        return Math.abs(length - track.lengthM) < 1e-6 && Math.abs(climb - track.climb!.upM) <= 2 * (cuts.length + 1)
      }),
    )
    expect(cutTrack(track, [2000], 'terrain')[0]!.endHeightM).toBeCloseTo(1200 - 0.05, 0)
    expect(cutTrack(readTrack([line(hill.map(() => null))], 'terrain'), [], 'terrain')[0]!.climbM).toBeNull()
  })
  test('a waypoint on the way snaps to it, one beside it tells how far', () => {
    const there = snap(track, { latDeg: 45 + 100.5 * 0.00018, lonDeg: 7 })!
    expect(there.atM).toBeCloseTo((track.lengthM * 100.5) / 200, 1)
    expect(there.offM).toBeCloseTo(0, 3)
    const beside = snap(track, { latDeg: 45.009, lonDeg: 7.001 })!
    expect(beside.offM).toBeCloseTo(geodesicM(45.009, 7, 45.009, 7.001), 1)
    expect(snap(readTrack([], 'terrain'), { latDeg: 0, lonDeg: 0 })).toBeNull()
  })
  test('pieces hold the whole length and are never under 5 m, and the law reads them', () => {
    const pieces = piecesOf(track)
    expect(pieces.reduce((sum, { lengthM }) => sum + lengthM, 0)).toBeCloseTo(track.lengthM, 6)
    expect(Math.min(...pieces.map(({ lengthM }) => lengthM))).toBeGreaterThanOrEqual(5)
    expect(pieces.reduce((sum, { riseM }) => sum + riseM, 0)).toBeCloseTo(0, 6)
    // A hill of 10 % up and down: the same as two pieces of that slope, but for the one piece over its summit.
    const whole = walkingHours('campbell', [
      { lengthM: track.lengthM / 2, riseM: 200 },
      { lengthM: track.lengthM / 2, riseM: -200 },
    ])
    expect(Math.abs(walkingHours('campbell', pieces) / whole - 1)).toBeLessThan(0.005)
  })
  test('a way without heights is walked as level', () => {
    expect(piecesOf(readTrack([line(hill.map(() => null))], 'terrain')).every(({ riseM }) => riseM === 0)).toBe(true)
    expect(piecesOf(readTrack([[point(1, 1, 3)]], 'terrain'))).toEqual([])
  })
})

describe('drawing', () => {
  test('a thinned profile keeps its ends, its summit and its valley', () => {
    const wild = Array.from({ length: 5000 }, (_, i) => 1000 + 400 * Math.sin(i / 200) + (i === 2222 ? 9 : 0))
    const track = readTrack([line(wild)], 'terrain')
    const profile = profileOf(track, 200)
    const heights = profile.map(([, height]) => height)
    const all = track.points.map(({ heightM }) => heightM!)
    expect(profile.length).toBeLessThanOrEqual(200)
    expect(Math.max(...heights)).toBeCloseTo(Math.max(...all), 1)
    expect(Math.min(...heights)).toBeCloseTo(Math.min(...all), 1)
    expect(profile[0]![0]).toBe(0)
    expect(profile.at(-1)![0]).toBeCloseTo(track.lengthM, 0)
    expect(profile.every(([at], i) => i === 0 || at > profile[i - 1]![0])).toBe(true)
  })
  test('a short profile and a plan keep what they have; a plan drops what lies in line', () => {
    const track = readTrack([line(hill)], 'terrain')
    expect(profileOf(track)).toHaveLength(201)
    expect(planOf(track)).toEqual([
      [45, 7],
      [45.036, 7],
    ])
    const bent = readTrack([Array.from({ length: 3000 }, (_, i) => point(45 + i * 0.0002, 7 + 0.01 * Math.sin(i / 9)))], 'terrain')
    expect(planOf(bent, 100).length).toBeLessThanOrEqual(100)
    expect(planOf(bent, 100).length).toBeGreaterThan(20)
  })
})
