import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rules } from '../../../src-domain/checks/rules.ts'
import { localRules, type LocalRule } from '../../../src-domain/trips/brief.ts'
import type { TestItem } from '../loadout/kit.ts'
import { find, foundBy } from './asking.ts'

const stove = (fuels: string, valve?: number): TestItem => ({
  name: `${fuels} stove`,
  area: 'kitchen',
  g: 70,
  duties: 'stove',
  traits: valve === undefined ? { fuels } : { fuels, valve },
})
const asked = (items: readonly TestItem[], ...rule: readonly LocalRule[]) => foundBy(rules, { items, brief: { rules: rule } })

describe('local rules', () => {
  test('a valve: gas keeps the rule, spirit breaks it and is named', () => {
    expect(asked([stove('gas')], 'valve-only')).toMatchObject({ state: 'enough', have: { value: 1 }, need: { value: 1 } })
    expect(asked([stove('gas'), stove('alcohol', 1)], 'valve-only')).toMatchObject({
      state: 'short',
      have: { value: 0 },
      saying: [{ code: 'rule-valve-only', facts: { name: 'alcohol stove' } }],
    })
    expect(asked([stove('gas', 0)], 'valve-only').state).toBe('short')
  })
  test('a flame ban leaves no stove; without one it is kept', () => {
    expect(asked([stove('gas')], 'no-flame').state).toBe('short')
    expect(asked([], 'no-flame').state).toBe('enough')
  })
  test('several rules count one each, a permit none', () => {
    expect(asked([stove('wood')], 'no-wood', 'no-alcohol', 'permit')).toMatchObject({
      state: 'short',
      have: { value: 1 },
      need: { value: 2 },
    })
  })
  test('no rules are not asked; a rule that no kit meets is a caution alone', () => {
    expect(find(rules, {}).state).toBe('not-asked')
    const shelter = asked([stove('gas')], 'cook-in-shelter')
    expect(shelter).toMatchObject({ state: 'enough', need: { value: 0 } })
    expect(shelter.cautions.join(' ')).toContain('Carbon monoxide')
  })
  test('carbon monoxide is cautioned in every state', () => {
    for (const rule of localRules) {
      const finding = find(rules, { items: [stove('alcohol')], brief: { rules: [rule, 'cook-in-shelter'] } })
      expect('cautions' in finding && finding.cautions.join(' '), rule).toContain('Carbon monoxide')
    }
    const silent = find(rules, { items: [{ ...stove('gas'), traits: {} }], brief: { rules: ['valve-only', 'cook-in-shelter'] } })
    expect(silent).toMatchObject({ state: 'unknown', missing: { code: 'fuels' } })
    expect('cautions' in silent && silent.cautions.join(' ')).toContain('Carbon monoxide')
  })
  test('by air a bank to 160 Wh goes, a bigger one does not', () => {
    const bank = (charge: number): TestItem => ({ name: 'Bank', area: 'light_power', g: 300, duties: 'power', traits: { charge } })
    expect(asked([bank(160)], 'by-air').state).toBe('enough')
    expect(asked([bank(161)], 'by-air').state).toBe('short')
  })
  describe('hard canister', () => {
    const box = (litres: number): TestItem => ({
      name: 'Box',
      area: 'food',
      g: 900,
      duties: 'food-storage',
      traits: { 'hard-canister': litres },
    })
    /**
     * Fri 10:00 to Tue 15:00 (provisions.md 3): 4.375 days of 1.7 l; 3.625 of them, half a litre of toiletries and 0.15 l of rubbish
     * must fit on the first night: 6.8125 l.
     */
    const week = {
      supplies: [{ name: 'Food', area: 'food', amount: 4.375 * 1.7 * 450 }],
      trip: { startsOn: '2025-10-10', endsOn: '2025-10-14' },
      brief: { rules: ['hard-canister' as const], nightsOut: 4, days: [{ day: 1, startMinute: 600, lowC: null, highC: null }] },
    } as const
    test('it is kept from 1.05 of what must fit on', () => {
      const needed = (6.8125 * 1.05) / 0.9
      expect(foundBy(rules, { ...week, items: [box(needed + 0.01)] }).state).toBe('enough')
      expect(foundBy(rules, { ...week, items: [box(needed - 0.01)] }).state).toBe('short')
    })
    test('no box is short; a day trip asks none', () => {
      expect(foundBy(rules, { ...week, items: [] }).state).toBe('short')
      expect(foundBy(rules, { ...week, items: [], brief: { ...week.brief, nightsOut: 0 } }).state).toBe('enough')
    })
    test('food whose amount is not known leaves it unknown', () => {
      expect(find(rules, { ...week, supplies: [{ name: 'Food', area: 'food', amountFrom: 'brief' }], items: [box(10)] })).toMatchObject({
        missing: { code: 'amount', facts: { name: 'Food' } },
      })
    })
    test('a bigger box never breaks what a smaller one keeps', () => {
      const litres = fc.double({ min: 2, max: 14, noNaN: true })
      fc.assert(
        fc.property(
          litres,
          litres,
          (a, b) =>
            foundBy(rules, { ...week, items: [box(Math.max(a, b))] }).margin >=
            foundBy(rules, { ...week, items: [box(Math.min(a, b))] }).margin,
        ),
        { numRuns: 40 },
      )
    })
  })
})
