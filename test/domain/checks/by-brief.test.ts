import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { filledByBrief } from '../../../src-domain/checks/by-brief.ts'
import type { Asked, Check } from '../../../src-domain/checks/check.ts'
import { foodEnergy } from '../../../src-domain/checks/food-energy.ts'
import { fuel } from '../../../src-domain/checks/fuel.ts'
import { light } from '../../../src-domain/checks/light.ts'
import { waterTreatment } from '../../../src-domain/checks/water-treatment.ts'
import { supplyLines } from '../../../src-domain/loadout/loadout.ts'
import { emptyBrief, type Brief, type WaterSource } from '../../../src-domain/trips/brief.ts'
import type { TestItem } from '../loadout/kit.ts'
import { askedOf, leg, type Change } from './asking.ts'

const stove: TestItem = { name: 'Stove', area: 'kitchen', g: 74, duties: 'stove', traits: { fuels: 'gas', efficiency: 0.5 } }
const can = (net: number): TestItem => ({ name: `Can ${net}`, area: 'kitchen', g: 98, duties: 'fuel-holder', traits: { 'net-full': net } })
const gas = (net: number) =>
  ({
    name: `Gas ${net}`,
    area: 'kitchen',
    amountFrom: 'brief',
    heldBy: `Can ${net}`,
    traits: { 'gas-mix': 'isobutane 80 propane 20' },
  }) as const
const bottle: TestItem = { name: 'Bottle', area: 'water', g: 35, duties: 'water-vessel', traits: { 'water-capacity': 9 } }
const water = { name: 'Water', area: 'water', unit: 'ml', amountFrom: 'brief', heldBy: 'Bottle' } as const
const tablets = {
  name: 'Tablets',
  area: 'water',
  unit: 'piece',
  gPerUnit: 0.4,
  amountFrom: 'brief',
  traits: { treats: 1, 'treatment-kind': 'chlorine' },
} as const
const cooking: Partial<Brief> = { meals: { ...emptyBrief.meals, boilsPerDay: 2, litresPerBoil: 0.5 } }
const source = (km: number): WaterSource => ({ atM: km * 1000, name: '', sure: 'sure', safe: false })

const filledIn = (change: Change): Asked => filledByBrief(askedOf(change))
const amounts = (asked: Asked) => Object.fromEntries(supplyLines(asked.loadout).map((line) => [line.supply.name, line.amount]))
const stateOf = (check: Check, asked: Asked) => check.find(asked).state
/** The same with one line less of everything by the brief, down a hundredth or a piece. */
function aLittleLess(asked: Asked, name: string): Asked {
  const lines = asked.loadout.lines.map((line) =>
    line.kind === 'supply' && line.supply.name === name
      ? { ...line, amount: line.supply.unit === 'piece' ? line.amount! - 1 : line.amount! * 0.99 }
      : line,
  )
  return { ...asked, loadout: { ...asked.loadout, lines } }
}

describe('amounts by the brief', () => {
  test('fuel is the least at which its check reads enough', () => {
    const boils = fc.record({ boils: fc.integer({ min: 1, max: 4 }), litres: fc.double({ min: 0.3, max: 1, noNaN: true }) })
    fc.assert(
      fc.property(boils, ({ boils: boilsPerDay, litres: litresPerBoil }) => {
        const asked = filledIn({
          items: [stove, can(450)],
          supplies: [gas(450)],
          brief: { meals: { ...emptyBrief.meals, boilsPerDay, litresPerBoil } },
        })
        return stateOf(fuel, asked) === 'enough' && stateOf(fuel, aLittleLess(asked, 'Gas 450')) !== 'enough'
      }),
      { numRuns: 25 },
    )
  })
  test('a canister is never filled over what it holds; the next takes the rest', () => {
    const one = filledIn({ items: [stove, can(40)], supplies: [gas(40)], brief: cooking })
    expect(amounts(one)['Gas 40']).toBe(40)
    expect(stateOf(fuel, one)).not.toBe('enough')
    const two = filledIn({ items: [stove, can(40), can(230)], supplies: [gas(40), gas(230)], brief: cooking })
    expect(amounts(two)['Gas 40']).toBe(40)
    expect(stateOf(fuel, two)).toBe('enough')
  })
  test('typed fuel counts first, and the typed amount stands', () => {
    const typed = { ...gas(40), amountFrom: 'typed', amount: 40 } as const
    const asked = filledIn({ items: [stove, can(40), can(230)], supplies: [typed, gas(230)], brief: cooking })
    const alone = filledIn({ items: [stove, can(230)], supplies: [gas(230)], brief: cooking })
    expect(amounts(asked)['Gas 40']).toBe(40)
    expect(amounts(asked)['Gas 230']!).toBeLessThan(amounts(alone)['Gas 230']!)
    expect(stateOf(fuel, asked)).toBe('enough')
  })
  test('5 h at 0.70 l/h: 4.60 l of water by the brief, the note’s enough', () => {
    const asked = filledIn({ items: [bottle], supplies: [water], brief: { dryHours: 5, highC: 30 } })
    expect(amounts(asked)['Water']).toBeCloseTo(4600, 0)
  })
  test('tablets are the fewest with which the water is safe', () => {
    const asked = filledIn({ supplies: [tablets], brief: { sources: [source(10), source(20), source(30)] } })
    expect(Number.isInteger(amounts(asked)['Tablets'])).toBe(true)
    expect([stateOf(waterTreatment, asked), stateOf(waterTreatment, aLittleLess(asked, 'Tablets'))]).toEqual(['enough', 'tight'])
  })
  test('spare cells are the fewest with which there is light enough', () => {
    const lamp: TestItem = { name: 'Lamp', area: 'light_power', g: 80, duties: 'light', traits: { cell: 'alkaline', charge: 1.3 } }
    const cells = {
      name: 'Cells',
      area: 'light_power',
      unit: 'piece',
      gPerUnit: 11,
      amountFrom: 'brief',
      traits: { cell: 'alkaline', charge: 1.3 },
    } as const
    const asked = filledIn({
      items: [lamp],
      supplies: [cells],
      brief: { place: { latDeg: 45, lonDeg: 0 }, lowC: 0, legs: [1, 2, 3, 4].map((day) => leg(day)) },
      trip: { zone: 'UTC' },
    })
    expect(amounts(asked)['Cells']).toBeGreaterThan(0)
    expect([stateOf(light, asked), stateOf(light, aLittleLess(asked, 'Cells')) === 'enough']).toEqual(['enough', false])
  })
  test('food fills the full need, and the rest of the kit does not undo it', () => {
    const walker = { bodyMassG: 72_000, heightMm: 1760, bornYear: 1988, sex: null }
    const bars = { name: 'Bars', area: 'food', amountFrom: 'brief', traits: { energy: 450 } } as const
    const asked = filledIn({
      items: [stove, can(450), bottle],
      supplies: [gas(450), water, bars],
      brief: { ...cooking, dryHours: 3, legs: [1, 2, 3, 4].map((day) => leg(day)) },
      walker,
    })
    expect(amounts(asked)['Bars']).toBeGreaterThan(0)
    expect([stateOf(foodEnergy, asked), stateOf(fuel, asked)]).toEqual(['enough', 'enough'])
  })
  test('what the brief does not say leaves the amount open, and a rule rules', () => {
    expect(amounts(filledIn({ items: [stove, can(230)], supplies: [gas(230)], brief: {} }))['Gas 230']).toBeNull()
    const perLitre = { ...tablets, rule: { per: 'litre', amountMilli: 1000 } } as const
    const asked = filledIn({ supplies: [perLitre], brief: { sources: [source(10), source(20), source(30)] } })
    // 30 km at 4.13 km/h and 0.42 l/h and three camps of 1.5 l: 7.55 l, a tablet each, rounded up
    expect(amounts(asked)['Tablets']).toBe(8)
  })
  test('what another brief filled in is forgotten', () => {
    const asked = filledIn({ items: [stove, can(230)], supplies: [gas(230)], brief: cooking })
    expect(amounts(asked)['Gas 230']).toBeGreaterThan(0)
    expect(amounts(filledByBrief({ ...asked, brief: { ...asked.brief, meals: emptyBrief.meals } }))['Gas 230']).toBeNull()
  })
  test('filling twice changes nothing', () => {
    const asked = filledIn({
      items: [stove, can(230), bottle],
      supplies: [gas(230), water, tablets],
      brief: { ...cooking, sources: [source(10), source(20), source(30)] },
    })
    expect(amounts(filledByBrief(asked))).toEqual(amounts(asked))
  })
})
