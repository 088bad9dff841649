import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { kitAreas } from '../../../src-domain/closet/vocabulary.ts'
import { COMFORT_SHARE, usualComfortKg } from '../../../src-domain/laws/pack-comfort.ts'
import { packedClass, packedDensities_kg_l, packedRoom, packedVolume } from '../../../src-domain/laws/packed-volume.ts'
import { ruleCautions, shutsOff, stoveMeets, undismissable } from '../../../src-domain/laws/trip-rules.ts'
import { localRules } from '../../../src-domain/trips/brief.ts'
import { rows } from '../../published/carry.ts'
import { meets } from '../../published/published.ts'

describe('published values', () => meets(rows))

describe('packed room', () => {
  const plain = { kitArea: 'clothing', duties: [], fill: '', said: '' } as const
  test('what the person says of a thing rules over its fill, its duty and its area', () => {
    expect(packedClass({ ...plain, fill: 'down', said: 'hard' })).toBe('dense')
    expect(packedClass({ ...plain, fill: 'down', duties: ['mid-layer'] })).toBe('down')
    expect(packedClass({ ...plain, duties: ['sun-cover', 'mid-layer'] })).toBe('fleece')
    expect(packedClass(plain)).toBe('shell')
    expect(packedClass({ ...plain, said: 'something else' })).toBe('shell')
  })
  test('every kit area has a class with a density', () => {
    for (const kitArea of kitAreas) expect(packedDensities_kg_l[packedClass({ ...plain, kitArea })]).toBeGreaterThan(0)
  })
  test('heavier never takes less, and a worse fill never less either', () => {
    const kg = fc.double({ min: 0, max: 5, noNaN: true })
    const density = fc.constantFrom(...Object.values(packedDensities_kg_l))
    fc.assert(
      fc.property(
        kg,
        kg,
        density,
        (a, b, d) => packedVolume.compute({ massKg: a + b, density: d }) >= packedVolume.compute({ massKg: a, density: d }),
      ),
    )
    expect(packedRoom.compute({ volumeL: 38, fill: 0.95 })).toBeCloseTo(40, 12)
    expect(packedRoom.compute({ volumeL: 38, fill: 0.85 })).toBeGreaterThan(40)
  })
  test('more frame is never offered less load', () => {
    expect(usualComfortKg.frameless).toBeLessThan(usualComfortKg['light-framed'])
    expect(usualComfortKg['light-framed']).toBeLessThan(usualComfortKg.framed)
    expect(COMFORT_SHARE).toBeLessThan(1)
  })
})

describe('local rules', () => {
  const gas = { fuel: 'gas', valve: true }
  const spirit = { fuel: 'alcohol', valve: true }
  test('what cannot be shut off is not allowed where a valve is asked, whatever is said of it', () => {
    expect(
      [gas, { fuel: 'petrol', valve: null }, spirit, { fuel: 'solid', valve: null }, { fuel: 'wood', valve: null }].map((stove) =>
        stoveMeets('valve-only', stove),
      ),
    ).toEqual([true, true, false, false, false])
    expect(shutsOff({ fuel: 'gas', valve: false })).toBe(false)
  })
  test('a flame ban allows none; the others name one fuel', () => {
    expect([gas, spirit].some((stove) => stoveMeets('no-flame', stove))).toBe(false)
    expect([stoveMeets('no-wood', { fuel: 'wood', valve: null }), stoveMeets('no-wood', gas)]).toEqual([false, true])
    expect([stoveMeets('no-alcohol', spirit), stoveMeets('no-alcohol', gas)]).toEqual([false, true])
  })
  test('every rule of the brief has its caution, and carbon monoxide cannot be dismissed', () => {
    for (const rule of localRules) expect(ruleCautions[rule]?.length, rule).toBeGreaterThan(0)
    expect(undismissable.has('cook-in-shelter')).toBe(true)
  })
})
