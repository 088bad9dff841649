import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { canisterSet, soldSizes, type Canister } from '../../../src-domain/laws/canister-set.ts'
import {
  blendHeatMJkg,
  compounds,
  fuelDefaults,
  isFuelKind,
  lowerHeatMJkg,
  massShares,
  woodHeatMJkg,
} from '../../../src-domain/laws/fuel-heat.ts'
import { burnEfficiency, fuelMass } from '../../../src-domain/laws/fuel-mass.ts'
import { learnedFactor } from '../../../src-domain/laws/learned-factor.ts'
import { stoveKinds, usualStove, windFactor } from '../../../src-domain/laws/stove-efficiency.ts'
import { rows } from '../../published/fuel.ts'
import { meets } from '../../published/published.ts'

describe('published values', () => meets(rows))

describe('heat values', () => {
  test('water in a fuel never adds heat', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (share) => blendHeatMJkg({ ethanol: share + 0.1 }) > blendHeatMJkg({ ethanol: share }),
      ),
    )
    expect(woodHeatMJkg(0.4)).toBeLessThan(woodHeatMJkg(0.2))
  })
  test('a blend lies between its parts', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const heat = blendHeatMJkg({ isobutane: share, propane: 1 - share })
        return heat >= lowerHeatMJkg(compounds.isobutane) - 1e-9 && heat <= lowerHeatMJkg(compounds.propane) + 1e-9
      }),
    )
  })
  test('volume shares become mass shares that add to one', () => {
    const shares = massShares({ ethanol: 0.5, methanol: 0.5 })
    expect(shares.ethanol! + shares.methanol!).toBeCloseTo(1, 12)
    expect(shares.ethanol).toBeCloseTo(0.789 / (0.789 + 0.791), 12)
  })
  test('every fuel a stove may name has a heat value and a usual stove', () => {
    for (const kind of ['gas', 'alcohol', 'petrol', 'paraffin', 'solid', 'wood']) {
      expect(isFuelKind(kind)).toBe(true)
      if (isFuelKind(kind)) expect(stoveKinds[usualStove[kind]].efficiency * fuelDefaults[kind].heatMJkg).toBeGreaterThan(1)
    }
    expect(isFuelKind('constructor')).toBe(false)
  })
})

describe('efficiency and wind', () => {
  test('every default lies inside its range', () => {
    for (const kind of Object.values(stoveKinds)) expect(kind.low <= kind.efficiency && kind.efficiency <= kind.high).toBe(true)
  })
  test('the wind factors are the note’s at its speeds', () => {
    expect([windFactor(0, 'none'), windFactor(2, 'none'), windFactor(4, 'none'), windFactor(4, 'partial'), windFactor(9, 'full')]).toEqual([
      1, 1.15, 2, 1.4, 1,
    ])
    expect(windFactor(6.1, 'none')).toBeNull()
  })
  test('more wind never saves fuel, and a screen never costs any', () => {
    const wind = fc.double({ min: 0, max: 6, noNaN: true })
    fc.assert(
      fc.property(wind, wind, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)]
        return (
          (['none', 'partial', 'full'] as const).every((screen) => windFactor(high, screen)! >= windFactor(low, screen)!) &&
          windFactor(a, 'partial')! <= windFactor(a, 'none')! + 1e-12
        )
      }),
    )
  })
  test('a burn told back gives the efficiency it was computed with', () => {
    const efficiency = fc.double({ min: 0.05, max: 0.9, noNaN: true })
    fc.assert(
      fc.property(efficiency, fc.double({ min: 10, max: 5000, noNaN: true }), (eta, heatKJ) => {
        const burned = fuelMass.compute({ heatKJ, heatValue: 45, efficiency: eta, wind: 1, primingG: 0 })
        return Math.abs(burnEfficiency(heatKJ, 45, burned) - eta) < 1e-9
      }),
    )
  })
})

describe('learned factor', () => {
  const record = fc.double({ min: 0.2, max: 2, noNaN: true })
  test('without records it is the default with its full doubt', () => {
    expect(learnedFactor({ factor: 0.5, sdLn: 0.25 }, 0.15, [])).toEqual({
      factor: expect.closeTo(0.5, 12) as number,
      sdLn: 0.25,
      records: 0,
    })
  })
  test('it lies between the default and the records, and a further record never widens it', () => {
    fc.assert(
      fc.property(fc.array(record, { minLength: 1, maxLength: 8 }), (records) => {
        const one = learnedFactor({ factor: 1, sdLn: 0.3 }, 0.25, records)
        const more = learnedFactor({ factor: 1, sdLn: 0.3 }, 0.25, [...records, 1])
        const [low, high] = [Math.min(1, ...records), Math.max(1, ...records)]
        return one.factor >= low - 1e-9 && one.factor <= high + 1e-9 && more.sdLn < one.sdLn
      }),
    )
  })
  test('a record of nothing is no record', () => {
    expect(learnedFactor({ factor: 1, sdLn: 0.3 }, 0.25, [0, Number.NaN, 1.2]).records).toBe(1)
  })
})

describe('canisters', () => {
  test('one small can for a weekend, a middle one for a week', () => {
    expect(canisterSet(61, soldSizes)?.taken).toEqual([{ id: 'small', count: 1 }])
    expect(canisterSet(200, soldSizes)?.taken).toEqual([{ id: 'middle', count: 1 }])
  })
  test('a part-used one is taken when it is enough', () => {
    const half: Canister = { id: 'half', netG: 70, emptyG: 140, upTo: 1 }
    // 70 + 140 = 210 g against 110 + 98 = 208 g: the new small one is lighter by 2 g.
    expect(canisterSet(61, [...soldSizes, half])).toEqual({ taken: [{ id: 'small', count: 1 }], netG: 110, carriedG: 208 })
    expect(canisterSet(61, [half])).toEqual({ taken: [{ id: 'half', count: 1 }], netG: 70, carriedG: 210 })
  })
  test('what no set holds is said, not guessed', () => {
    expect(canisterSet(100, [{ id: 'a', netG: 40, emptyG: 90, upTo: 2 }])).toBeNull()
    expect(canisterSet(0, soldSizes)).toEqual({ taken: [], netG: 0, carriedG: 0 })
  })
  test('the search finds the least of all combinations', () => {
    const choice = fc.record({
      netG: fc.integer({ min: 10, max: 450 }),
      emptyG: fc.integer({ min: 80, max: 230 }),
      upTo: fc.integer({ min: 1, max: 3 }),
    })
    fc.assert(
      fc.property(fc.array(choice, { minLength: 1, maxLength: 4 }), fc.integer({ min: 1, max: 900 }), (rough, asked) => {
        const choices = rough.map((one, i) => ({ ...one, id: `${i}` }))
        return (canisterSet(asked, choices)?.carriedG ?? null) === leastOfAll(asked, choices)
      }),
    )
  })
})

/** Every combination, none left out: the second route. */
function leastOfAll(asked: number, choices: readonly Canister[]): number | null {
  let sums: readonly (readonly [number, number])[] = [[0, 0]]
  for (const one of choices)
    sums = sums.flatMap(([net, carried]) =>
      Array.from({ length: one.upTo + 1 }, (_, n) => [net + n * one.netG, carried + n * (one.netG + one.emptyG)] as const),
    )
  const enough = sums.filter(([net]) => net >= asked).map(([, carried]) => carried)
  return enough.length === 0 ? null : Math.min(...enough)
}
