import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { datedClasses, lifeClasses, usualLifeClass } from '../../../src-domain/closet/lives.ts'
import { duties } from '../../../src-domain/closet/vocabulary.ts'
import { dateAfter, wearOf, type WearFacts } from '../../../src-domain/closet/wear.ts'

const today = '2025-06-15'
const none: WearFacts = {
  lifeClass: null,
  ownLife: null,
  entries: [],
  renewedOn: [],
  sinceOn: null,
  endsOn: null,
  endedOn: null,
  fitTrips: 0,
  seenYears: 0,
  usualTripsPerYear: null,
  byMonth: null,
}
const used = (units: number, on: string | null = '2025-05-01', estimated = false): WearFacts['entries'][number] => ({
  on,
  units,
  estimated,
})
const shoes: WearFacts = { ...none, lifeClass: 'light-shoes', entries: [used(520)], fitTrips: 10, seenYears: 1.5 }
const counted = (facts: WearFacts): Extract<ReturnType<typeof wearOf>, { kind: 'counted' }> => {
  const wear = wearOf(facts, today)
  if (wear.kind !== 'counted') throw new Error(`counted expected, got ${wear.kind}`)
  return wear
}

describe('counted wear', () => {
  test('520 of 800 km is 65 % used, and 200 km are left to nine tenths', () => {
    const wear = counted(shoes)
    expect(wear.share).toBeCloseTo(0.65, 12)
    expect(wear.left).toBeCloseTo(200, 9)
    expect(wear.state).toBe('good')
    expect(wear.guess).toBe(false)
  })
  test('more use never lengthens life: no date moves later, no share falls', () => {
    const order = (when: ReturnType<typeof counted>['median']): string =>
      when.kind === 'now' ? '0000' : when.kind === 'on' ? when.on : '9999'
    fc.assert(
      fc.property(
        fc.nat({ max: 900 }),
        fc.nat({ max: 400 }),
        fc.constantFrom(...lifeClasses.filter((one) => one.counter !== 'years')),
        (u, more, lifeClass) => {
          const at = (units: number): ReturnType<typeof counted> =>
            counted({ ...shoes, lifeClass: lifeClass.code, entries: [used(units, null, true)] })
          const [less, further] = [at(u), at(u + more)]
          return (
            further.share >= less.share &&
            further.left <= less.left &&
            order(further.median) <= order(less.median) &&
            order(further.late) <= order(less.late)
          )
        },
      ),
      { numRuns: 40 },
    )
  })
  test('the bar stops at 150 %, and what is over is over now', () => {
    const wear = counted({ ...shoes, entries: [used(5000)] })
    expect([wear.share, wear.state, wear.median.kind]).toEqual([1.5, 'over', 'now'])
  })
  test('a renewal starts the counter again; what was before it is gone', () => {
    const shell: WearFacts = {
      ...none,
      lifeClass: 'water-repellency',
      entries: [used(20, '2025-01-10'), used(15, null, true), used(4, '2025-05-20')],
      renewedOn: ['2024-03-01', '2025-04-01'],
    }
    expect(counted(shell).used).toBe(4)
    expect(counted({ ...shell, renewedOn: [] }).used).toBe(39)
    expect(counted({ ...shell, renewedOn: [] }).estimated).toBe(true)
  })
  test('without a trip it says it is a guess', () => {
    expect(counted({ ...shoes, fitTrips: 0 }).guess).toBe(true)
  })
  test('a walker who never goes gives no date', () => {
    expect(counted({ ...none, lifeClass: 'down', entries: [used(3)], fitTrips: 1, seenYears: 5 }).late.kind).toBe('not-foreseeable')
  })
  test('the person’s own life rules over the class’s', () => {
    expect(counted({ ...shoes, ownLife: 1040 }).share).toBeCloseTo(0.5, 12)
    expect(counted({ ...shoes, ownLife: 0 }).share).toBeCloseTo(0.65, 12)
  })
  test('rings of a valve go by their years', () => {
    const wear = counted({ ...none, lifeClass: 'stove-seals', sinceOn: '2020-12-15' })
    expect(wear.share).toBeCloseTo(0.9, 2)
    expect(wear.median.kind).toBe('on')
    expect(wear.guess).toBe(false)
  })
  test('a filter frozen wet is over at once', () => {
    const wear = counted({ ...none, lifeClass: 'hollow-filter', entries: [used(12)], endedOn: '2025-02-01' })
    expect([wear.state, wear.left, wear.median.kind]).toEqual(['over', 0, 'now'])
  })
})

describe('dated things', () => {
  test('the earlier of the printed date and the years rules, and it is only ever due, never fine', () => {
    const rope: WearFacts = { ...none, lifeClass: 'rope', sinceOn: '2016-01-01', endsOn: '2030-01-01' }
    expect(wearOf(rope, today)).toMatchObject({ kind: 'dated', dueOn: '2026-01-01', state: 'inspect' })
    expect(wearOf(rope, '2025-09-01')).toMatchObject({ state: 'due soon' })
    expect(wearOf(rope, '2026-01-01')).toMatchObject({ state: 'due' })
    expect(wearOf({ ...rope, endedOn: '2024-08-08' }, today)).toMatchObject({ dueOn: '2024-08-08', state: 'due' })
  })
  test('use never brings a date to a dated thing', () => {
    for (const { code } of datedClasses)
      expect(wearOf({ ...none, lifeClass: code, entries: [used(9999)] }, today)).toMatchObject({
        kind: 'dated',
        dueOn: null,
        state: 'inspect',
      })
  })
  test('without a class only an entered date counts', () => {
    expect(wearOf(none, today)).toEqual({ kind: 'none' })
    expect(wearOf({ ...none, endsOn: '2025-06-15' }, today)).toMatchObject({ kind: 'dated', state: 'due' })
  })
})

describe('dates along the seasons', () => {
  test('uniform months are the plain calendar', () => {
    expect(dateAfter('2025-01-01', 1, null)).toBe('2026-01-01')
    expect(
      dateAfter(
        '2025-01-01',
        0.5,
        Array.from({ length: 12 }, () => 1),
      ),
    ).toBe('2025-07-01')
  })
  test('a summer walker’s half year of trips ends in the summer', () => {
    const summer = [0, 0, 0, 0, 0, 1, 2, 1, 0, 0, 0, 0]
    expect(dateAfter('2025-01-01', 0.5, summer)).toMatch(/^2025-07-1[67]$/)
    expect(dateAfter('2025-10-01', 0.25, summer)).toMatch(/^2026-0(6-30|7-01)$/)
  })
  test('more years never come sooner', () => {
    const months = fc.array(fc.nat({ max: 5 }), { minLength: 12, maxLength: 12 })
    const years = fc.double({ min: 0, max: 8, noNaN: true })
    fc.assert(
      fc.property(
        months,
        years,
        years,
        (byMonth, a, b) => dateAfter(today, Math.min(a, b), byMonth) <= dateAfter(today, Math.max(a, b), byMonth),
      ),
    )
  })
})

describe('lives', () => {
  test('the note’s lives stand as printed', () => {
    // provisions.md 7.1
    const life = Object.fromEntries(lifeClasses.map((one) => [one.code, [one.life, one.counter, one.sigma]]))
    expect(life).toMatchObject({
      'light-shoes': [800, 'km', 0.35],
      boots: [1600, 'km', 0.35],
      socks: [700, 'km', 0.4],
      down: [600, 'nights', 0.5],
      'synthetic-fill': [200, 'nights', 0.4],
      'air-mat': [250, 'nights', 0.5],
    })
    expect(life).toMatchObject({
      'foam-mat': [300, 'nights', 0.3],
      shelter: [250, 'nights', 0.5],
      'water-repellency': [25, 'days', 0.5],
      shell: [300, 'days', 0.5],
      pack: [500, 'days', 0.5],
      'hollow-filter': [1000, 'litres', 0.5],
    })
    expect(life).toMatchObject({
      'stove-seals': [5, 'years', 0.3],
      'lithium-ion': [500, 'cycles', 0.3],
      nimh: [500, 'cycles', 0.4],
      'pole-tips': [1500, 'km', 0.4],
    })
  })
  test('a class is guessed from duties, fill and traits, and safety things are dated ones', () => {
    const thing = { kitArea: 'clothing', duties: [] as string[], traits: [] as { code: string; text: string }[] } as const
    expect(usualLifeClass({ ...thing, duties: ['top-insulation'], traits: [{ code: 'fill', text: 'down' }] })).toBe('down')
    expect(usualLifeClass({ ...thing, duties: ['stove'], traits: [{ code: 'fuels', text: 'alcohol' }] })).toBeNull()
    expect(usualLifeClass({ ...thing, duties: ['stove'] })).toBe('stove-seals')
    expect(usualLifeClass(thing)).toBeNull()
    const dated = new Set(datedClasses.map((one) => one.code))
    for (const code of ['rope', 'helmet', 'traction', 'avalanche', 'distress-signal', 'first-aid', 'medicine']) {
      expect(duties.some((duty) => duty.code === code && duty.kept)).toBe(true)
      expect(dated.has(usualLifeClass({ ...thing, duties: [code] }) ?? '')).toBe(true)
    }
  })
})
