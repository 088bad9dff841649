import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty, work } from '../../../src-domain/figures/figure.ts'
import { drainedMix } from '../../../src-domain/laws/gas-drain.ts'
import { gasFeed, lowestLiquidC } from '../../../src-domain/laws/gas-feed.ts'
import { readGasMix, writeGasMix } from '../../../src-domain/laws/gas-mix.ts'
import { gasMassShares, gasPressure, mixPressureKPa, moleShares, type GasMix } from '../../../src-domain/laws/gas-pressure.ts'
import { rows } from '../../published/gas.ts'
import { meets } from '../../published/published.ts'

const part = fc.integer({ min: 0, max: 100 })
const anyMix = fc
  .tuple(part, part, part)
  .filter(([a, b, c]) => a + b + c > 0)
  .map(([a, b, c]): GasMix => ({ propane: a / (a + b + c), isobutane: b / (a + b + c), butane: c / (a + b + c) }))
const temp = fc.double({ min: -40, max: 40, noNaN: true })
const share = fc.double({ min: 0.01, max: 1, noNaN: true })

describe('published values', () => meets(rows))

describe('pressure', () => {
  test('colder never raises it', () => {
    fc.assert(
      fc.property(
        anyMix,
        temp,
        temp,
        (mix, a, b) => gasPressure.compute({ liquidC: Math.min(a, b), ...mix }) <= gasPressure.compute({ liquidC: Math.max(a, b), ...mix }),
      ),
    )
  })
  test('more propane for butane never lowers it', () => {
    fc.assert(
      fc.property(share, share, temp, (a, b, liquidC) => {
        const p = (propane: number): number => gasPressure.compute({ liquidC, propane, isobutane: 0, butane: 1 - propane })
        return p(Math.max(a, b)) >= p(Math.min(a, b))
      }),
    )
  })
  test('mass and mole shares undo each other', () => {
    fc.assert(fc.property(anyMix, (mix) => Math.abs(gasMassShares(moleShares(mix)).propane - mix.propane) < 1e-12))
  })
  test('a higher camp never needs warmer gas', () => {
    fc.assert(
      fc.property(
        anyMix,
        fc.double({ min: 0, max: 5000, noNaN: true }),
        (mix, h) => lowestLiquidC(mix, 30, h + 100) < lowestLiquidC(mix, 30, h),
      ),
    )
  })
})

describe('drain', () => {
  test('the lighter gas leaves first, and the pressure never rises as the canister empties', () => {
    fc.assert(
      fc.property(anyMix, temp, share, share, (mix, liquidC, a, b) => {
        const [less, more] = [drainedMix(mix, Math.min(a, b), liquidC), drainedMix(mix, Math.max(a, b), liquidC)]
        const p = (left: GasMix): number => mixPressureKPa(moleShares(left), liquidC)
        return less.propane <= more.propane + 1e-9 && p(less) <= p(more) + 1e-6
      }),
    )
  })
  test('its shares add to one and no gas appears', () => {
    fc.assert(
      fc.property(anyMix, temp, share, (mix, liquidC, left) => {
        const after = drainedMix(mix, left, liquidC)
        return Math.abs(after.propane + after.isobutane + after.butane - 1) < 1e-9 && (mix.butane > 0 || after.butane === 0)
      }),
    )
  })
  test('the drained mass is what Rayleigh’s differential equation gives, stepped', () => {
    // dni ∝ −xi·pi: small steps, a route without the closed form.
    const mix: GasMix = { propane: 0.3, isobutane: 0.2, butane: 0.5 }
    const after = drainedMix(mix, 0.4, -5)
    const stepped = stepDown(mix, 0.4, -5)
    for (const gas of ['propane', 'isobutane', 'butane'] as const) expect(after[gas]).toBeCloseTo(stepped[gas], 3)
  })
  test('empty is the heaviest gas alone, not a division by nothing', () => {
    expect(drainedMix({ propane: 0.2, isobutane: 0.8, butane: 0 }, 0, 0).isobutane).toBeCloseTo(1, 3)
  })
})

describe('feed', () => {
  test('two kelvin of doubt in the low are about 10.3 kPa of the canister’s', () => {
    const exact = (value: number): ReturnType<typeof given<'1'>> => given(value, '1', 'given')
    const feed = work(gasFeed, {
      liquidC: given(-5, 'degC', 'given', { low: 2 }),
      left: exact(0.25),
      heightM: given(1100, 'm', 'given'),
      propane: exact(0.2),
      isobutane: exact(0.8),
      butane: exact(0),
    })
    expect(uncertainty(feed)).toBeCloseTo(10.3, 0) // provisions.md 12
    expect(Math.abs(uncertainty(feed) - 10.3)).toBeLessThan(0.1)
  })
  test('nothing to find is not a number', () => {
    expect(lowestLiquidC({ propane: 0, isobutane: 0, butane: 1 }, 5000, 0)).toBeNaN()
  })
})

describe('a mix as it is printed', () => {
  test.each([
    ['isobutane 80 propane 20', { isobutane: 0.8, propane: 0.2, butane: 0 }],
    ['70 % n-butane, 30 % propane', { butane: 0.7, propane: 0.3, isobutane: 0 }],
    ['80/20 iso-butane/propane', { isobutane: 0.8, propane: 0.2, butane: 0 }],
    ['Propane 25, isobutane 25, butane 50', { propane: 0.25, isobutane: 0.25, butane: 0.5 }],
    ['0.8 isobutane 0.2 propane', { isobutane: 0.8, propane: 0.2, butane: 0 }],
    ['isobutane', { isobutane: 1, propane: 0, butane: 0 }],
    ['propane 20 isobutane', { isobutane: 0.8, propane: 0.2, butane: 0 }],
  ])('%s', (text, expected) => {
    const mix = readGasMix(text)
    for (const gas of ['propane', 'isobutane', 'butane'] as const) expect(mix?.[gas]).toBeCloseTo(expected[gas], 12)
  })
  test.each([
    '',
    '80/20',
    'propane 60 butane 60',
    'propane 20 propane 80',
    'hydrogen 100',
    'propane 30 petrol 70',
    'isobutane 80 propane 20 5',
  ])('%j is not guessed', (text) => {
    expect(readGasMix(text)).toBeNull()
  })
  test('what is written is read back', () => {
    fc.assert(
      fc.property(anyMix, (mix) => {
        const back = readGasMix(writeGasMix(mix))
        return back !== null && Math.abs(back.propane - mix.propane) < 0.0003 && Math.abs(back.butane - mix.butane) < 0.0003
      }),
    )
  })
  test('no text makes it throw or give shares that do not add up', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const mix = readGasMix(text)
        return mix === null || Math.abs(mix.propane + mix.isobutane + mix.butane - 1) < 1e-9
      }),
    )
  })
})

function stepDown(mass: GasMix, left: number, liquidC: number): GasMix {
  const gases = ['propane', 'isobutane', 'butane'] as const
  const molar = { propane: 44.097, isobutane: 58.124, butane: 58.124 }
  let moles: Record<(typeof gases)[number], number> = { ...moleShares(mass) }
  const mean = (of: typeof moles): number => gases.reduce((sum, gas) => sum + of[gas] * molar[gas], 0)
  const end = left * mean(moles)
  const pressure = {
    propane: gasPressure.compute({ liquidC, propane: 1, isobutane: 0, butane: 0 }),
    isobutane: gasPressure.compute({ liquidC, propane: 0, isobutane: 1, butane: 0 }),
    butane: gasPressure.compute({ liquidC, propane: 0, isobutane: 0, butane: 1 }),
  }
  while (mean(moles) > end)
    moles = {
      propane: moles.propane * (1 - pressure.propane * 1e-6),
      isobutane: moles.isobutane * (1 - pressure.isobutane * 1e-6),
      butane: moles.butane * (1 - pressure.butane * 1e-6),
    }
  return gasMassShares(moles)
}
