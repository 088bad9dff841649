import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fuel, fuelNeed } from '../../../src-domain/checks/fuel.ts'
import { uncertainty } from '../../../src-domain/figures/figure.ts'
import { emptyBrief, type Brief } from '../../../src-domain/trips/brief.ts'
import type { TestItem } from '../loadout/kit.ts'
import { askedOf, find, foundBy, leg } from './asking.ts'

const meals = (more: Partial<Brief['meals']> = {}): Brief['meals'] => ({ ...emptyBrief.meals, boilsPerDay: 2, litresPerBoil: 0.5, ...more })
const stove: TestItem = { name: 'Stove', area: 'kitchen', g: 74, duties: 'stove', traits: { fuels: 'gas', efficiency: 0.5 } }
const pot: TestItem = { name: 'Pot', area: 'kitchen', g: 100, duties: 'pot', traits: { 'pot-metal': 'titanium' } }
const screen: TestItem = { name: 'Screen', area: 'kitchen', g: 30, duties: 'windscreen' }
const can: TestItem = { name: 'Can', area: 'kitchen', g: 98, duties: 'fuel-holder', traits: { 'net-full': 110 } }
const kitchen = [stove, pot, screen, can]
const gas = (amount: number) =>
  [{ name: 'Gas', area: 'kitchen', amount, heldBy: 'Can', traits: { 'gas-mix': 'isobutane 80 propane 20' } }] as const
/** Three days at 1500 m: six boils of half a litre from 8 °C. */
const three: { readonly brief: Partial<Brief>; readonly trip: { readonly endsOn: string } } = {
  brief: { legs: [1, 2, 3].map((day) => leg(day, { endHeightM: 1500 })), nightsOut: 2, meals: meals() },
  trip: { endsOn: '2025-10-11' },
}

describe('fuel', () => {
  test('six boils of half a litre at 1500 m need what the worked example gives them', () => {
    // provisions.md 1.5: 186.78 kJ a boil of 0.5 kg, 45.708 MJ/kg, η 0.50. The check takes 0.5 l of 0.998 kg/l: (0.499·4.19 + 0.0523)·86.983 = 186.42 kJ.
    const finding = foundBy(fuel, { ...three, items: kitchen, supplies: gas(110) })
    expect(finding.need.value).toBeCloseTo((6 * 186.42) / (45.708 * 0.5), 1)
    expect(finding.enough.value).toBeCloseTo(finding.need.value * 1.2, 9)
    expect(finding.have.value).toBeCloseTo(110, 9)
    expect(finding.state).toBe('enough')
  })
  test('u of the need is √(0.25² + 0.05² + 0.03²) of it', () => {
    const { need } = foundBy(fuel, { ...three, items: kitchen, supplies: gas(110) })
    expect(uncertainty(need) / need.value).toBeCloseTo(Math.sqrt(0.25 ** 2 + 0.05 ** 2 + 0.03 ** 2), 9)
  })
  test('without a windscreen 1.15 times as much', () => {
    const need = (items: readonly TestItem[]) => foundBy(fuel, { ...three, items, supplies: gas(110) }).need.value
    expect(need([stove, pot, can]) / need(kitchen)).toBeCloseTo(1.15, 9)
  })
  test('within the reserve, or nearer than u, it is tight; under the need short', () => {
    const { need } = foundBy(fuel, { ...three, items: kitchen, supplies: gas(110) })
    const state = (share: number) => foundBy(fuel, { ...three, items: kitchen, supplies: gas(need.value * share) }).state
    expect([state(0.99), state(1.05), state(1.22), state(1.35)]).toEqual(['short', 'tight', 'tight', 'enough'])
  })
  test('a cold day, a resupply of fuel: only the part that asks most counts', () => {
    const boils = (brief: Partial<Brief>) => {
      const need = fuelNeed(askedOf({ items: kitchen, brief: { ...three.brief, ...brief }, trip: three.trip }))
      return need.kind === 'asked' ? need.boils : need.kind
    }
    expect(boils({ meals: meals({ coldDays: [2] }) })).toBe(4)
    expect(boils({ resupplies: [{ atM: 10_000, day: 1, name: 'hut', what: ['fuel'] }] })).toBe(4)
    expect(boils({ resupplies: [{ atM: 10_000, day: 1, name: 'hut', what: ['food'] }] })).toBe(6)
  })
  test('spirit for a gas stove is no fuel', () => {
    const supplies = [{ name: 'Spirit', area: 'kitchen', amount: 500, traits: { fuels: 'alcohol' } }] as const
    expect(foundBy(fuel, { ...three, items: kitchen, supplies })).toMatchObject({ state: 'short', have: { value: 0 } })
  })
  test('spirit of unknown make is more in doubt', () => {
    const items = [{ ...stove, traits: { fuels: 'alcohol' } }, pot, screen]
    const { need } = foundBy(fuel, {
      ...three,
      items,
      supplies: [{ name: 'Spirit', area: 'kitchen', amount: 200, traits: { fuels: 'alcohol' } }],
    })
    expect(uncertainty(need) / need.value).toBeCloseTo(Math.sqrt(0.25 ** 2 + 0.05 ** 2 + (2.5 / 24) ** 2), 9)
  })
  test('cold meals only are not asked; what is missing is named', () => {
    expect(find(fuel, { ...three, items: kitchen, brief: { ...three.brief, meals: meals({ boilsPerDay: 0 }) } }).state).toBe('not-asked')
    expect(find(fuel, { ...three, items: kitchen, brief: { ...three.brief, meals: meals({ coldDays: [1, 2, 3] }) } }).state).toBe(
      'not-asked',
    )
    expect(find(fuel, { ...three, items: kitchen, brief: { ...three.brief, meals: meals({ boilsPerDay: null }) } })).toMatchObject({
      missing: { code: 'boils' },
    })
    expect(find(fuel, { ...three, items: [pot] })).toMatchObject({ missing: { code: 'stove' } })
    expect(find(fuel, { ...three, items: [{ ...stove, traits: {} }] })).toMatchObject({
      missing: { code: 'fuels', facts: { name: 'Stove' } },
    })
  })
  test('more boils, more water or a lower camp never need less', () => {
    const need = (boils: number, litres: number, heightM: number) =>
      foundBy(fuel, {
        ...three,
        items: kitchen,
        supplies: gas(1),
        brief: { ...three.brief, legs: [leg(1, { endHeightM: heightM })], meals: meals({ boilsPerDay: boils, litresPerBoil: litres }) },
      }).need.value
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }),
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        fc.integer({ min: 0, max: 4000 }),
        (boils, litres, heightM) =>
          need(boils + 1, litres, heightM) > need(boils, litres, heightM) &&
          need(boils, litres + 0.1, heightM) > need(boils, litres, heightM) &&
          need(boils, litres, heightM) > need(boils, litres, heightM + 500),
      ),
      { numRuns: 30 },
    )
  })
})
