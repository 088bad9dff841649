import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gasCold } from '../../../src-domain/checks/gas-cold.ts'
import { fuelNeed } from '../../../src-domain/checks/fuel.ts'
import { uncertainty } from '../../../src-domain/figures/figure.ts'
import { emptyBrief, type Brief } from '../../../src-domain/trips/brief.ts'
import type { TestItem } from '../loadout/kit.ts'
import { askedOf, find, foundBy, leg } from './asking.ts'

const stove: TestItem = {
  name: 'Stove',
  area: 'kitchen',
  g: 74,
  duties: 'stove',
  traits: { fuels: 'gas', efficiency: 0.5, feed: 'upright' },
}
const pot: TestItem = { name: 'Pot', area: 'kitchen', g: 100, duties: 'pot', traits: { 'pot-metal': 'titanium' } }
const can = (net: number): TestItem => ({ name: 'Can', area: 'kitchen', g: 98, duties: 'fuel-holder', traits: { 'net-full': net } })
const gas = (amount: number, mix = 'isobutane 80 propane 20') =>
  [{ name: 'Gas', area: 'kitchen', amount, heldBy: 'Can', traits: { 'gas-mix': mix } }] as const
const cook = (lowC: number, heightM: number): Partial<Brief> => ({
  legs: [leg(1, { endHeightM: heightM }), leg(2, { endHeightM: heightM })],
  nightsOut: 1,
  lowC,
  highC: 10,
  forecastHeightM: heightM,
  meals: { ...emptyBrief.meals, boilsPerDay: 2, litresPerBoil: 0.5, hotBreakfast: true },
})
const trip = { endsOn: '2025-10-10' }

/** A canister carried full of which the share r is left after the trip's need. */
function atTheEnd(r: number, lowC: number, heightM: number, more: Partial<TestItem['traits']> = {}) {
  const items = (net: number) => [{ ...stove, traits: { ...stove.traits, ...more } } as TestItem, pot, can(net)]
  const need = fuelNeed(askedOf({ items: items(100), supplies: gas(100), brief: cook(lowC, heightM), trip }))
  if (need.kind !== 'asked') throw new Error(need.kind)
  const net = need.grams.value / (1 - r)
  return foundBy(gasCold, { items: items(net), supplies: gas(net), brief: cook(lowC, heightM), trip })
}

describe('gas in the cold', () => {
  // provisions.md 12: isobutane 80 propane 20, upright; kPa, tolerance 0.05 and a milligram of the amount's rounding.
  test('air 0 °C, 1100 m, a quarter left: 49.63 kPa, tight, u 10.3', () => {
    const finding = atTheEnd(0.25, 0, 1100)
    expect(Math.abs(finding.have.value - 49.63)).toBeLessThanOrEqual(0.05)
    expect(finding.state).toBe('tight')
    expect(Math.abs(uncertainty(finding.have) - 10.3)).toBeLessThanOrEqual(0.05)
    expect([finding.need.value, finding.enough.value]).toEqual([30, 60])
  })
  test('a tenth left: 43.38', () => {
    expect(Math.abs(atTheEnd(0.1, 0, 1100).have.value - 43.38)).toBeLessThanOrEqual(0.05)
  })
  test('air −2 °C at sea level, a quarter left: 27.09, short', () => {
    const finding = atTheEnd(0.25, -2, 0)
    expect(Math.abs(finding.have.value - 27.09)).toBeLessThanOrEqual(0.05)
    expect(finding.state).toBe('short')
  })
  test('a liquid feed keeps its mix to the end', () => {
    // 80/20 at −5 °C: between 166.9 at −10 and 234.9 at 0 °C; 88.8 kPa of air at 1100 m (provisions.md 1.6 and 1.1)
    const finding = atTheEnd(0.1, 0, 1100, { feed: 'inverted' })
    expect(finding.state).toBe('enough')
    expect(finding.have.value).toBeGreaterThan(43.38 + 40)
  })
  test('a dinner alone is cooked at the mean of low and high', () => {
    const change = { items: [stove, pot, can(100)], supplies: gas(100), trip }
    const dinner = { ...cook(0, 1100), meals: { ...cook(0, 1100).meals!, hotBreakfast: false } }
    const [warm, cold] = [foundBy(gasCold, { ...change, brief: dinner }), foundBy(gasCold, { ...change, brief: cook(5, 1100) })]
    // (0 + 10)/2 is as warm as a low of 5 °C
    expect(warm.have.value).toBeCloseTo(cold.have.value, 6)
    expect(find(gasCold, { ...change, brief: { ...dinner, highC: null } })).toMatchObject({ state: 'unknown', missing: { code: 'high' } })
  })
  test('other stoves are not asked; a mix that cannot be read is unknown', () => {
    expect(find(gasCold, { items: [{ ...stove, traits: { fuels: 'alcohol' } }, pot], brief: cook(0, 0), trip }).state).toBe('not-asked')
    expect(find(gasCold, { items: [stove, pot, can(100)], supplies: gas(100, 'winter gas'), brief: cook(0, 0), trip })).toMatchObject({
      missing: { code: 'gas-mix' },
    })
    expect(find(gasCold, { items: [stove, pot, can(100)], supplies: gas(100), brief: { ...cook(0, 0), lowC: null }, trip })).toMatchObject({
      missing: { code: 'low' },
    })
  })
  test('colder never raises it, and more gas carried never lowers it', () => {
    const at = (lowC: number, amount: number) =>
      foundBy(gasCold, { items: [stove, pot, can(230)], supplies: gas(amount), brief: cook(lowC, 800), trip }).have.value
    fc.assert(
      fc.property(
        fc.integer({ min: -25, max: 9 }),
        fc.integer({ min: 40, max: 220 }),
        fc.integer({ min: 1, max: 10 }),
        (lowC, amount, more) => at(lowC - more, amount) <= at(lowC, amount) && at(lowC, amount + more) >= at(lowC, amount) - 1e-9,
      ),
      { numRuns: 40 },
    )
  })
})
