import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bodyLoad, marksOf } from '../../../src-domain/checks/body-load.ts'
import { withAmounts } from '../../../src-domain/loadout/amounts.ts'
import { askedOf, find, foundBy, leg } from './asking.ts'

const pack = (g: number) => [{ name: 'all of it', area: 'carry' as const, g, uOwnG: 1 }]
const walker = { bodyMassG: 70_000, bornYear: 1990 }

describe('load on the body', () => {
  // 70 kg: marks 14 and 21 kg (walking.md 3, recomputed there).
  test.each([
    [13_900, 'enough'],
    [14_100, 'tight'],
    [20_900, 'tight'],
    [21_100, 'short'],
  ])('%i g on 70 kg is %s', (g, state) => {
    const finding = foundBy(bodyLoad, { items: pack(g), walker })
    expect(finding.state).toBe(state)
    expect([finding.enough.value, finding.need.value]).toEqual([14, 21])
  })
  test('under 18 the marks are 15 and 20 %; own shares stand before both', () => {
    expect(foundBy(bodyLoad, { items: pack(1), walker: { bodyMassG: 50_000, bornYear: 2010 } })).toMatchObject({
      need: { value: 10 },
      enough: { value: 7.5 },
    })
    expect(foundBy(bodyLoad, { items: pack(1), walker: { ...walker, easyShare: 0.1, upperShare: 0.25 } })).toMatchObject({
      need: { value: 17.5 },
      enough: { value: 7 },
    })
  })
  test('without a body mass it is unknown and says so', () => {
    expect(find(bodyLoad, { items: pack(1) })).toMatchObject({ state: 'unknown', missing: { code: 'body-mass' } })
    expect(marksOf(askedOf({}))).toBeNull()
  })
  test('what is worn or carried by another does not count', () => {
    const loadout = askedOf({
      items: [...pack(8000), { name: 'boots', area: 'footwear', g: 1200 }, { name: 'shelter', area: 'shelter', g: 900 }],
    }).loadout
    const lines = loadout.lines.map((line, i) =>
      i === 1 ? { ...line, lane: 'on_me' as const } : i === 2 ? { ...line, carriedBy: 'Ada' } : line,
    )
    expect(foundBy(bodyLoad, { loadout: { ...loadout, lines }, walker }).have.value).toBe(8)
  })
  test('the heaviest moment counts, and over 23 kg it says how to lift', () => {
    const resupplies = [{ atM: 20_000, day: 2, name: 'box', what: ['food' as const] }]
    const food = { name: 'food', area: 'food' as const, rule: { per: 'day' as const, amountMilli: 900_000 }, amountFrom: 'brief' as const }
    const change = {
      brief: { resupplies, legs: [leg(1), leg(2), leg(3), leg(4), leg(5, { camp: false })] },
      trip: { endsOn: '2025-10-13' },
      walker: { ...walker, bodyMassG: 110_000 },
    }
    const asked = askedOf({ ...change, items: pack(23_000), supplies: [food] })
    const finding = foundBy(bodyLoad, { ...change, loadout: withAmounts(asked.loadout, asked) })
    expect(finding.have.value).toBeCloseTo(23 + 2.7, 6)
    expect(finding.saying).toEqual([{ code: 'heaviest', facts: { day: 2, what: 'resupply' } }])
    expect(finding.cautions.some((caution) => caution.includes('two stages'))).toBe(true)
  })
  test('a lighter pack never worsens it, a lighter body never betters it', () => {
    const order = { short: 0, tight: 1, enough: 2 }
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(number(0, 40_000), number(0, 1), number(35_000, 120_000), number(0.5, 1), (g, less, bodyMassG, lighter) => {
        const rank = (massG: number, body: number) =>
          order[foundBy(bodyLoad, { items: pack(Math.round(massG)), walker: { bodyMassG: body } }).state]
        return rank(g * less, bodyMassG) >= rank(g, bodyMassG) && rank(g, bodyMassG * lighter) <= rank(g, bodyMassG)
      }),
      { numRuns: 60 },
    )
  })
  test('a mass that is not known makes it unknown and is named', () => {
    const finding = find(bodyLoad, { items: [...pack(5000), { name: 'riddle', area: 'extras', g: null }], walker })
    expect(finding).toMatchObject({ state: 'unknown', missing: { code: 'mass', facts: { name: 'riddle', more: 0 } } })
  })
})
