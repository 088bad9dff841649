import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Found } from '../../../src-domain/checks/check.ts'
import { sleepWarmth } from '../../../src-domain/checks/sleep-warmth.ts'
import type { Brief } from '../../../src-domain/trips/brief.ts'
import { itemRow, kitIndex, loadoutOf, loadoutOfAll, type TestItem } from '../loadout/kit.ts'
import { askedOf, find, foundBy, leg, type Change } from './asking.ts'
import { bag, base, garment, mat } from './warm-kit.ts'

const asleep = (items: readonly TestItem[], brief: Partial<Brief> = {}, more: Change = {}): Found =>
  foundBy(sleepWarmth, { ...more, items: [base, ...items], brief: { lowC: 2, ...brief } })
const stateOrder = { short: 0, tight: 1, enough: 2 } as const
const lineOf = (found: Found, name: string): number | undefined => found.have.working?.given.find((one) => one.name === name)?.figure.value
const warns = (found: Found, words: string): boolean => found.cautions.some((caution) => caution.includes(words))

describe('figures', () => {
  // warmth.md 1.4 and 1.7: case B, spread 2.01 of the bed, 3 of the sleeper, 2 of the forecast.
  test('comfort 0 on R 2 holds 7.34 °C with u 4.13', () => {
    const found = asleep([bag(0), mat(2)])
    expect(found.have.value).toBeCloseTo(7.34, 2)
    expect([found.need.value, found.enough.value]).toEqual([2, 0])
    expect(found.marginU * 2).toBeCloseTo(4.13, 2)
    expect(found.state).toBe('short')
  })
  test.each([
    ['two mats, R 3 and R 2, under comfort −7', [bag(-7), mat(3), mat(2)], -7.4],
    ['a limit rating of −6 on R 3.2', [bag(-6, { 'rating-kind': 'limit' }), mat(3.2)], 3.26],
    ["a maker's 40 °F on R 2", [bag(40 / 9, { 'rating-kind': 'maker' }), mat(2)], 12.96],
    ['a rating of no known kind is read as the same', [bag(40 / 9, {}), mat(2)], 12.96],
    ['a fleece liner on the test mat', [bag(0), mat(0.85 / 0.1761101838), garment('liner', '', null, { liner: 'fleece' })], -1.83],
    ['a jacket of 0.55 clo in the pack', [bag(0), mat(0.85 / 0.1761101838), garment('jacket', 'big-jacket', 0.55)], -1.82],
    [
      "a maker's quilt of 40 °F with a hat on R 2",
      [bag(40 / 9, { 'rating-kind': 'maker', form: 'quilt' }), mat(2), garment('hat', 'hat', 0.05)],
      14.24,
    ],
    [
      'a hoodless bag, bare head, on the test mat',
      [bag(0, { 'rating-kind': 'comfort', form: 'hoodless' }), mat(0.85 / 0.1761101838)],
      7.42,
    ],
  ] as const)('%s', (_, items, heldC) => {
    expect(asleep(items).have.value).toBeCloseTo(heldC, 1)
    expect(Math.abs(asleep(items).have.value - heldC)).toBeLessThan(0.021)
  })
  test('no base layer costs 1.48 K on the test mat', () => {
    const found = foundBy(sleepWarmth, { items: [bag(0), mat(0.85 / 0.1761101838)], brief: { lowC: 5 } })
    expect(Math.abs(found.have.value - 1.48)).toBeLessThan(0.021)
    expect(Math.abs(lineOf(found, 'worth of: no base layer')! - 1.48)).toBeLessThan(0.021)
  })
  test('a cold sleeper moves it by just as much', () => {
    expect(asleep([bag(0), mat(2)], {}, { walker: { coldOffsetK: 3 } }).have.value).toBeCloseTo(10.34, 2)
  })
  test('the low is carried up to the camp, with the doubt of the climb', () => {
    const found = asleep([bag(-5), mat(5)], { lowC: 8, forecastHeightM: 800, legs: [leg(1, { endHeightM: 2100 })], nightsOut: 1 })
    expect(found.need.value).toBeCloseTo(-0.45, 6)
    expect(Math.hypot(...Object.values(found.need.shares))).toBeCloseTo(2.79, 2) // warmth.md 4
  })
  test('the chance of a warm night at a margin of one u is 84 %', () => {
    const probe = asleep([bag(0), mat(2)])
    const lowC = 7.34 + probe.marginU * 2
    expect(Math.abs(lineOf(asleep([bag(0), mat(2)], { lowC }), 'roughly the chance of a warm night')! - 84.1)).toBeLessThan(0.2)
  })
  test('a jacket worn while walking is not counted: it may be wet', () => {
    const items = [base, bag(0), mat(5), garment('jacket', 'mid-layer', 0.55)]
    const worn = loadoutOf(
      kitIndex(items),
      items.map((_, i) => itemRow(i + 1, i + 1, { lane: i === 3 ? 'on_me' : 'in_pack' })),
    )
    const packed = asleep(items.slice(1)).have.value
    expect(foundBy(sleepWarmth, { loadout: worn }).have.value).toBeGreaterThan(packed + 1)
  })
})

describe('states', () => {
  test('needs a reserve of 2 K and one u', () => {
    const margin = asleep([bag(0), mat(2)]).marginU * 2
    expect(asleep([bag(0), mat(2)], { lowC: 7.34 + margin + 0.05 }).state).toBe('enough')
    expect(asleep([bag(0), mat(2)], { lowC: 7.34 + margin - 0.05 }).state).toBe('tight')
    expect(asleep([bag(0), mat(2)], { lowC: 7.3 }).state).toBe('short')
  })
  test('an extreme rating, nested bags and a rating past −40 are at best tight', () => {
    expect(asleep([bag(-40, { 'rating-kind': 'extreme' }), mat(6)], { lowC: 15 }).state).toBe('tight')
    expect(asleep([bag(0), bag(5), mat(6)], { lowC: 15 }).state).toBe('tight')
    expect(asleep([bag(-41), mat(6)], { lowC: 15 }).state).toBe('tight')
    expect(asleep([bag(-39), mat(6)], { lowC: 15 }).state).toBe('enough')
  })
  test("a maker's figure reads enough only from 6 K of margin", () => {
    const items = [bag(0, { 'rating-kind': 'maker' }), mat(4)]
    const heldC = asleep(items).have.value
    expect(asleep(items, { lowC: heldC + 5.95 }).state).toBe('tight')
    expect(asleep(items, { lowC: heldC + 6.05 }).state).toBe('enough')
  })
  test('in a hammock an under-quilt counts, a mat is at best tight, nothing is unknown', () => {
    const hammock: TestItem = { name: 'hammock', area: 'shelter', g: 500, duties: 'shelter', traits: { form: 'hammock' } }
    expect(asleep([bag(-10), mat(6, { form: 'quilt' }), hammock], { lowC: 12 }).state).toBe('enough')
    expect(asleep([bag(-10), mat(6), hammock], { lowC: 12 }).state).toBe('tight')
    expect(find(sleepWarmth, { items: [base, bag(-10), hammock] })).toMatchObject({
      state: 'unknown',
      missing: { code: 'ground-insulation' },
    })
  })
  test('wet days work the bed damp too, and say what would become of it', () => {
    const items = [bag(-2), mat(4)]
    const held = asleep(items)
    const lowC = held.have.value + held.marginU * 2 + 0.5
    const found = asleep(items, { lowC, rain: 'wet' })
    expect(found.state).toBe('enough')
    expect(warns(found, 'damp, this bed is tight')).toBe(true)
    expect(warns(asleep(items, { lowC, rain: 'showers' }), 'If things get damp')).toBe(false)
  })
  test('frost is spoken of on the third night below −5 °C', () => {
    expect(warns(asleep([bag(-25), mat(6)], { lowC: -6 }), 'Frost')).toBe(true)
    expect(warns(asleep([bag(-25), mat(6)], { lowC: -6, nightsOut: 2 }), 'Frost')).toBe(false)
  })
})

describe('not answered', () => {
  test.each([
    ['no top', [mat(2)], {}, 'top-insulation'],
    ['no mat and none struck', [bag(0)], {}, 'ground-insulation'],
    ['a top without a rating', [{ ...bag(0), traits: {} }, mat(2)], {}, 'rated-temperature'],
    ['a mat without a resistance', [bag(0), { ...mat(2), traits: {} }], {}, 'thermal-resistance'],
    ['no low', [bag(0), mat(2)], { lowC: null }, 'low'],
    ['a rating nobody has', [bag(40), mat(2)], {}, 'rating-range'],
  ] as const)('%s: unknown, and names it', (_, items, brief, code) => {
    expect(find(sleepWarmth, { items: [base, ...items], brief })).toMatchObject({ state: 'unknown', missing: { code } })
  })
  test('without nights known it asks for them; with none, or above 20 °C, it is not asked', () => {
    const items = [base, bag(0), mat(2)]
    const dateless = { startsOn: null, endsOn: null }
    expect(find(sleepWarmth, { items, brief: { nightsOut: null }, trip: dateless })).toMatchObject({ missing: { code: 'nights' } })
    expect(find(sleepWarmth, { items, brief: { nightsOut: 0 } }).state).toBe('not-asked')
    expect(find(sleepWarmth, { items, brief: { lowC: 21 } }).state).toBe('not-asked')
  })
  test('a child is always unknown', () => {
    expect(find(sleepWarmth, { items: [base, bag(-20), mat(6)], walker: { bornYear: 2015 } })).toMatchObject({
      missing: { code: 'adult-sleeper' },
    })
    expect(find(sleepWarmth, { items: [base, bag(-20), mat(6)], walker: { bornYear: 1990 } }).state).not.toBe('unknown')
  })
  test('a struck mat is an explicit no mat: the ground takes the night', () => {
    const found = asleep([bag(0)], { lowC: 15, struck: [{ duty: 'ground-insulation', reason: 'heather' }] })
    expect(Math.abs(found.have.value - 22.71)).toBeLessThan(0.02) // warmth.md 1.4, case D
  })
})

describe('properties', () => {
  const lows = fc.double({ min: -30, max: 19, noNaN: true })
  const rated = fc.double({ min: -30, max: 15, noNaN: true })
  const r = fc.double({ min: 0.5, max: 7, noNaN: true })
  test('a colder night never improves a state', () => {
    fc.assert(
      fc.property(lows, rated, r, fc.double({ min: 0.1, max: 10, noNaN: true }), (lowC, c, mats, colder) => {
        const [now, then] = [asleep([bag(c), mat(mats)], { lowC }), asleep([bag(c), mat(mats)], { lowC: lowC - colder })]
        return stateOrder[then.state] <= stateOrder[now.state]
      }),
      { numRuns: 60 },
    )
  })
  test('adding a mat never cools, full or short, whatever lay there before', () => {
    const short = fc.boolean().map((torso) => (torso ? { 'pad-length': 'torso' } : {}))
    fc.assert(
      fc.property(rated, r, r, short, short, (c, first, second, a, b) => {
        const one = asleep([bag(c), mat(first, a)])
        return asleep([bag(c), mat(first, a), { ...mat(second, b), name: 'second mat' }]).have.value <= one.have.value + 1e-9
      }),
      { numRuns: 60 },
    )
  })
  test('the order of lines changes nothing', () => {
    const items = [base, bag(-5), mat(3), mat(1.5), garment('jacket', 'big-jacket', 0.4), garment('liner', '', null, { liner: 'silk' })]
    const asIs = sleepWarmth.find({ ...askedOf({}), loadout: loadoutOfAll(items) }) as Found
    fc.assert(
      fc.property(fc.shuffledSubarray(items, { minLength: items.length }), (shuffled) => {
        const found = sleepWarmth.find({ ...askedOf({}), loadout: loadoutOfAll(shuffled) }) as Found
        return Math.abs(found.have.value - asIs.have.value) < 1e-9 && found.state === asIs.state
      }),
      { numRuns: 20 },
    )
  })
  test('every figure opens, and its rating is a leaf of its own', () => {
    const found = asleep([bag(0), mat(2)])
    expect(found.have.working?.given.map(({ name }) => name)).toEqual(['limitC', 'offsetK', 'roughly the chance of a warm night'])
    expect(Object.keys(found.have.shares).sort()).toEqual(
      ['choice:ground-share', 'choice:under-body', 'method:mats', 'rating:i2', 'walker:cold-offset'].sort(),
    )
    expect(found.cautions.length).toBeGreaterThan(2)
  })
})
