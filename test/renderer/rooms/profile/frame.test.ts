import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Profile } from '../../../../src-domain/loadout/profile.ts'
import { metric, us } from '../../../../src-domain/figures/format.ts'
import { emptyBrief, type Leg } from '../../../../src-domain/trips/brief.ts'
import { bandsOf, frameOf, heightsOf } from '../../../../src-renderer/rooms/profile/frame.ts'

const leg = (lengthM: number, climbM: number | null, descentM: number | null, endHeightM: number | null): Leg => ({
  day: 1,
  name: '',
  lengthM,
  climbM,
  descentM,
  terrain: 'path',
  endHeightM,
  camp: false,
})

describe('heights along the way', () => {
  test('a leg that says its end and its climb says where it began: 830 − 850 + 260 = 240 m', () => {
    expect(heightsOf({ track: [], legs: [leg(16_000, 850, 260, 830)] })).toEqual([
      [0, 240],
      [16_000, 830],
    ])
  })
  test('an end that is not said follows from climb and descent: 960 + 450 − 1,100 = 310 m', () => {
    const legs = [leg(15_000, 700, 750, 960), leg(13_000, 450, 1100, null)]
    expect(heightsOf({ track: [], legs }).at(-1)).toEqual([28_000, 310])
  })
  test('one height alone draws no line, and a track is taken as it is', () => {
    expect(heightsOf({ track: [], legs: [leg(5000, null, null, 800)] })).toEqual([])
    const track = [[0, 100], [10, 90]] as const // prettier-ignore
    expect(heightsOf({ ...emptyBrief, track })).toBe(track)
  })
})

const point = fc.record({ atM: fc.integer({ min: 0, max: 60_000 }), baseKg: fc.double({ min: 0, max: 20, noNaN: true }), used: fc.tuple(fc.double({ min: 0, max: 5, noNaN: true }), fc.double({ min: 0, max: 5, noNaN: true })) }) // prettier-ignore
const profile = fc.array(point, { minLength: 1, maxLength: 20 }).map((points): Pick<Profile, 'areas' | 'points' | 'lengthM'> => ({
  areas: ['water', 'food'],
  lengthM: 60_000,
  points: points
    .sort((a, b) => a.atM - b.atM)
    .map(({ atM, baseKg, used }) => ({ atM, hours: 0, days: 0, baseKg, usedKg: used, loadKg: baseKg + used[0] + used[1] })),
}))

test('the bands lie on the base weight and reach the load, water on top', () => {
  fc.assert(
    fc.property(profile, (drawn) => {
      const bands = bandsOf(drawn as Profile)
      expect(bands.map(({ area }) => area)).toEqual(['food', 'water'])
      drawn.points.forEach((at, i) => {
        expect(bands[0]!.from[i]).toBe(at.baseKg)
        expect(bands[1]!.from[i]).toBe(bands[0]!.to[i])
        expect(bands[1]!.to[i]).toBeCloseTo(at.loadKg, 9)
      })
    }),
  )
})

test('a heavier load stands higher, a farther place further right, in either system of units', () => {
  fc.assert(
    fc.property(profile, fc.constantFrom(metric, us), (drawn, choice) => {
      const box = { left: 100, right: 900, top: 100, bottom: 400 }
      const frame = frameOf(drawn as Profile, box, choice)
      const heaviest = Math.max(...drawn.points.map(({ loadKg }) => loadKg))
      expect(frame.y(0)).toBe(400)
      expect(frame.y(heaviest)).toBeGreaterThanOrEqual(box.top)
      expect([frame.x(0), frame.x(60_000)]).toEqual([100, 900])
      expect(frame.loadTicks.length).toBeLessThanOrEqual(12)
      for (const tick of [...frame.loadTicks]) expect(tick.y).toBeGreaterThanOrEqual(box.top - 1e-6)
      expect(frame.wayTicks.filter(({ text }) => text?.includes(choice === us ? 'mi' : 'km'))).toHaveLength(1)
    }),
  )
})
