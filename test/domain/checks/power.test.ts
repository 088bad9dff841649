import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { power } from '../../../src-domain/checks/power.ts'
import { difference, uncertainty } from '../../../src-domain/figures/figure.ts'
import type { TestItem } from '../loadout/kit.ts'
import { find, foundBy } from './asking.ts'

/** provisions.md 4.4: 6.00 Wh a day of phone, 1.20 of messenger, 0.72 of watch; 15 Wh in the phone, a bank of 37 Wh. */
const phone: TestItem = {
  name: 'Phone',
  area: 'wayfinding',
  g: 190,
  traits: { cell: 'lithium-ion', charge: 15, draw: 0.25, 'hours-a-day': 24 },
}
const messenger: TestItem = {
  name: 'Messenger',
  area: 'wayfinding',
  g: 100,
  duties: 'distress-signal',
  traits: { draw: 0.05, 'hours-a-day': 24 },
}
const watch: TestItem = { name: 'Watch', area: 'wayfinding', g: 50, traits: { draw: 0.03, 'hours-a-day': 24 } }
const bank: TestItem = { name: 'Bank', area: 'light_power', g: 180, duties: 'power', traits: { charge: 37 } }
const kit = [phone, messenger, watch, bank]
/** 0.88 at 0 and 1.00 at 20 °C: 0.90 at 3⅓ °C. */
const brief = { lowC: 10 / 3 }

describe('power', () => {
  test('the worked trip: 31.68 Wh needed, 40.23 carried, enough', () => {
    const finding = foundBy(power, { items: kit, brief })
    expect(finding.need.value).toBeCloseTo(31.68, 2)
    expect(finding.have.value).toBeCloseTo(40.23, 2)
    expect(finding.have.value / finding.need.value).toBeCloseTo(1.27, 2)
    expect(finding.state).toBe('enough')
  })
  test('u: 0.10/√3 of what is carried, 0.173 of what is drawn', () => {
    const { have, need } = foundBy(power, { items: kit, brief })
    expect(uncertainty(difference('d', { name: 'have', figure: have }, { name: 'need', figure: need }))).toBeCloseTo(
      Math.hypot(40.23 * 0.057735, 31.68 * 0.173205),
      2,
    )
  })
  test('a place to charge at the end of the second day halves what must be carried', () => {
    const resupplies = [{ atM: 20_000, day: 2, name: 'hut', what: ['power' as const] }]
    expect(foundBy(power, { items: kit, brief: { ...brief, resupplies } }).need.value).toBeCloseTo(15.84, 2)
  })
  test('a lamp with cells of its own, and a beacon, count nothing here', () => {
    const lamp: TestItem = {
      name: 'Lamp',
      area: 'light_power',
      g: 80,
      duties: 'light',
      traits: { cell: 'alkaline', charge: 3.9, draw: 0.5, 'hours-a-day': 2 },
    }
    const beacon: TestItem = { name: 'Beacon', area: 'wayfinding', g: 120, duties: 'distress-signal', traits: { charge: 20 } }
    const plain = foundBy(power, { items: kit, brief })
    const more = foundBy(power, { items: [...kit, lamp, beacon], brief })
    expect([more.have.value, more.need.value]).toEqual([plain.have.value, plain.need.value])
    expect(find(power, { items: [lamp, beacon], brief }).state).toBe('not-asked')
  })
  test('without a bank and charge it is short; what is missing is named', () => {
    expect(foundBy(power, { items: [messenger], brief })).toMatchObject({ state: 'short', have: { value: 0 } })
    expect(find(power, { items: [{ ...phone, traits: { draw: 1 } }], brief })).toMatchObject({
      missing: { code: 'hours-a-day', facts: { name: 'Phone' } },
    })
    expect(find(power, { items: [phone, { ...bank, traits: {} }], brief })).toMatchObject({
      missing: { code: 'charge', facts: { name: 'Bank' } },
    })
    expect(find(power, { items: kit, brief: { lowC: null } })).toMatchObject({ missing: { code: 'low' } })
  })
  test('below freezing it cautions against charging', () => {
    expect(foundBy(power, { items: kit, brief: { lowC: -3 } }).cautions.join(' ')).toContain('below 0 °C')
    expect(foundBy(power, { items: kit, brief }).cautions).toEqual([])
  })
  test('a bigger bank never makes it worse, a colder night never better', () => {
    const at = (charge: number, lowC: number) =>
      foundBy(power, { items: [phone, messenger, watch, { ...bank, traits: { charge } }], brief: { lowC } }).margin
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 90 }),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: -20, max: 15 }),
        (charge, more, lowC) => at(charge + more, lowC) >= at(charge, lowC) && at(charge, lowC - 3) <= at(charge, lowC),
      ),
      { numRuns: 40 },
    )
  })
})
