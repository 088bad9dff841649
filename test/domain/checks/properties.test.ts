import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Asked, Finding } from '../../../src-domain/checks/check.ts'
import { findAll } from '../../../src-domain/checks/index.ts'
import { lcda2022 } from '../../../src-domain/laws/lcda-2022.ts'
import { speedRatio } from '../../../src-domain/laws/speed-at-power.ts'
import type { ItemLine, Line } from '../../../src-domain/loadout/loadout.ts'
import type { Brief } from '../../../src-domain/trips/brief.ts'
import type { Walker } from '../../../src-domain/trips/walker.ts'
import { askedOf, trips } from '../trips/worked.ts'

// Over all checks at once, on the worked trips with a night out. Each check's own file has its own; units there and back and the doubt that goes with them: figures/units.test.ts.
const all = trips.filter(({ brief }) => brief.nightsOut === null).map((trip) => [trip.name, askedOf(trip)] as const)
const findings = (asked: Asked): ReadonlyMap<string, Finding> => new Map(findAll(asked).map(({ check, finding }) => [check.id, finding]))

/** Higher is better; what is not asked cannot be missed. */
const rank = { unknown: 0, short: 1, tight: 2, enough: 3, 'not-asked': 4 } as const

function neverBetter(was: ReadonlyMap<string, Finding>, after: Asked): void {
  for (const [id, finding] of findings(after)) expect(rank[finding.state], id).toBeLessThanOrEqual(rank[was.get(id)!.state])
}

const withLines = (asked: Asked, lines: readonly Line[]): Asked => ({ ...asked, loadout: { ...asked.loadout, lines } })
const withBrief = (asked: Asked, brief: Partial<Brief>): Asked => ({ ...asked, brief: { ...asked.brief, ...brief } })
const withWalker = (asked: Asked, walker: Partial<Walker>): Asked => ({ ...asked, walker: { ...asked.walker, ...walker } })

describe.each(all)('%s', (_, asked) => {
  const was = findings(asked)

  test('a colder night never improves a state', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 25, noNaN: true }), (k) => neverBetter(was, withBrief(asked, { lowC: asked.brief.lowC! - k }))),
      { numRuns: 6 },
    )
  })

  test('adding a mat never cools, and more to hold water never leaves one drier', () => {
    const thing = asked.loadout.lines.find((line): line is ItemLine => line.kind === 'item')!
    const add = (duty: string, code: string, number: number): ReadonlyMap<string, Finding> => {
      const trait = { code, number, text: '', origin: 'claimed' } as const
      const item = { ...thing.item, uid: 'added', name: 'added', duties: [{ duty, shared: false }], needs: [], traits: [trait] }
      return findings(withLines(asked, [...asked.loadout.lines, { ...thing, id: 999, item, lane: 'in_pack' }]))
    }
    const notWorse = (after: ReadonlyMap<string, Finding>, id: string, sign: 1 | -1) => {
      const [a, b] = [was.get(id)!, after.get(id)!]
      expect(rank[b.state], id).toBeGreaterThanOrEqual(rank[a.state])
      if ('have' in a && 'have' in b) expect(sign * b.have.value, id).toBeGreaterThanOrEqual(sign * a.have.value - 1e-9)
    }
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 2, noNaN: true }), (size) => {
        const matted = add('ground-insulation', 'thermal-resistance', size)
        notWorse(matted, 'sleep-warmth', -1)
        notWorse(matted, 'ground-warmth', -1)
        notWorse(add('water-vessel', 'water-capacity', 3 * size), 'water-carry', 1)
      }),
      { numRuns: 4 },
    )
  })

  test('the order of things changes nothing in any finding', () => {
    const { lines } = asked.loadout
    fc.assert(
      fc.property(fc.shuffledSubarray([...lines], { minLength: lines.length }), (shuffled) => {
        for (const [id, finding] of findings(withLines(asked, shuffled))) {
          const before = was.get(id)!
          expect(finding.state, id).toBe(before.state)
          if (!('have' in finding && 'have' in before)) continue
          for (const name of ['have', 'need', 'enough'] as const)
            expect(finding[name].value, `${id} ${name}`).toBeCloseTo(before[name].value, 6)
          expect(finding.marginU, id).toBeCloseTo(before.marginU, 6)
        }
      }),
      { numRuns: 4 },
    )
  })

  for (const [name, without, reads, byEstimate = []] of dropsOf(asked))
    test(`without ${name} nothing that reads it is enough`, () => {
      for (const [id, finding] of findings(without)) {
        const before = was.get(id)!.state
        if (before !== 'enough' && before !== 'not-asked' && !byEstimate.includes(id)) expect(finding.state, id).not.toBe('enough')
        if (reads.includes(id)) expect(before === 'not-asked' ? ['unknown', 'not-asked'] : ['unknown'], id).toContain(finding.state)
      }
    })
})

/** `byEstimate`: checks that say so and go on with an estimate, which may be kinder. */
type Drop = readonly [name: string, without: Asked, reads: readonly string[], byEstimate?: readonly string[]]

/** Thirst of a skin of 1.85 m². */
const ofStandardBody = ['water-carry', 'water-treatment']
const warm = ['sleep-warmth', 'ground-warmth', 'walk-warmth', 'camp-warmth', 'stop-warmth']

/** Each input left out in turn, with the checks that must then be unknown. */
function dropsOf(asked: Asked): Drop[] {
  const { brief } = asked
  const dry = brief.sources.length > 0 ? ['water-carry'] : []
  const way = ['food-energy', 'light', 'before-dark', ...dry]
  const legWithout = (i: number, what: 'lengthM' | 'climbM' | 'descentM') =>
    withBrief(asked, { legs: brief.legs.map((leg, at) => (at === i ? { ...leg, [what]: null } : leg)) })
  return [
    ['a low', withBrief(asked, { lowC: null }), [...warm, 'light', 'gas-cold']],
    ['a high', withBrief(asked, { highC: null }), ['stop-warmth', 'water-carry']],
    ['wind', withBrief(asked, { windKmh: null }), ['walk-warmth', 'camp-warmth', 'stop-warmth']],
    ['a rain class', withBrief(asked, { rain: null }), ['rain-cover', 'leg-cover', 'dry-store']],
    ['a place', withBrief(asked, { place: null }), ['light', 'before-dark']],
    // Without dates a typed number of nights still stands.
    [
      'dates',
      { ...asked, trip: { ...asked.trip, startsOn: null, endsOn: null } },
      ['light', 'before-dark', ...(brief.nightsOut === null ? [...warm, 'safety'] : [])],
    ],
    ['boils', withBrief(asked, { meals: { ...brief.meals, boilsPerDay: null } }), ['fuel', 'gas-cold']],
    ['sources and dry hours', withBrief(asked, { sources: [], dryHours: null, dryCamps: 0 }), ['water-carry']],
    // Without a camp's height the low stands as the forecast has it.
    ['legs', withBrief(asked, { legs: [] }), way.filter((id) => id !== 'water-carry'), [...warm, 'gas-cold']],
    ...brief.legs.flatMap((leg, i): Drop[] => [
      [`the length of ${leg.name}`, legWithout(i, 'lengthM'), way],
      [`the climb of ${leg.name}`, legWithout(i, 'climbM'), way],
      [`the descent of ${leg.name}`, legWithout(i, 'descentM'), way],
    ]),
    ['body mass', withWalker(asked, { bodyMassG: null }), ['food-energy', 'body-load'], ofStandardBody],
    ['body height', withWalker(asked, { heightMm: null }), ['food-energy'], ofStandardBody],
    ['age', withWalker(asked, { bornYear: null }), ['food-energy']],
    ...thingDrops(asked),
  ]
}

const traitReads: Readonly<Record<string, readonly string[]>> = {
  'rated-temperature': ['sleep-warmth'],
  'thermal-resistance': ['sleep-warmth', 'ground-warmth'],
  'pack-volume': ['room'],
  'comfortable-load': ['pack-load'],
  'water-capacity': ['water-carry'],
  treats: ['water-treatment'],
  fuels: ['fuel', 'gas-cold'],
}

/** Each trait of the table and each mass in the pack, left out in turn. */
function thingDrops(asked: Asked): Drop[] {
  const { lines } = asked.loadout
  return lines.flatMap((line): Drop[] => {
    if (line.kind !== 'item') return []
    const changed = (item: Partial<ItemLine['item']>): Asked =>
      withLines(
        asked,
        lines.map((one) => (one === line ? { ...line, item: { ...line.item, ...item } } : one)),
      )
    const ofTraits = line.item.traits.flatMap(({ code }): Drop[] => {
      const reads = traitReads[code]
      return reads === undefined
        ? []
        : [[`${code} of ${line.item.name}`, changed({ traits: line.item.traits.filter((one) => one.code !== code) }), reads]]
    })
    const mass: Drop[] =
      line.lane === 'in_pack' ? [[`the mass of ${line.item.name}`, changed({ mass: null }), ['pack-load', 'body-load']]] : []
    return [...ofTraits, ...mass]
  })
}

// From level ground to a climb of 30 %: there the power law rises with speed and load alike. Downhill it is not sure to.
test('a lighter load never slows at equal effort, and never costs more power at one speed', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 45, max: 110, noNaN: true }),
      fc.double({ min: 0, max: 30, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0.3, max: 1.6, noNaN: true }),
      fc.double({ min: 0, max: 30, noNaN: true }),
      (bodyKg, loadKg, share, speedMs, gradePercent) => {
        const at = { bodyKg, loadKg, speedMs, gradePercent, terrain: 1.1, restWPerKg: 1.1 }
        const lighter = { loadKg: share * loadKg }
        expect(speedRatio(at, lighter)).toBeGreaterThanOrEqual(1 - 1e-9)
        expect(lcda2022.compute({ ...at, ...lighter })).toBeLessThanOrEqual(lcda2022.compute(at) + 1e-9)
      },
    ),
  )
})
