import { describe, expect, test } from 'vitest'
import type { Asked, Found } from '../../../src-domain/checks/check.ts'
import { duties } from '../../../src-domain/checks/duties.ts'
import { safety } from '../../../src-domain/checks/safety.ts'
import { checks, findAll, isFound, mends, tallyOf } from '../../../src-domain/checks/index.ts'
import { withoutLines } from '../../../src-domain/loadout/whatif.ts'
import type { Loadout } from '../../../src-domain/loadout/loadout.ts'
import { nameOf } from '../../../src-domain/loadout/mass.ts'
import { emptyBrief } from '../../../src-domain/trips/brief.ts'
import { columnsOf, idOf, kitIndex, loadoutOf, loadoutOfAll, supplyRow, type TestItem } from '../loadout/kit.ts'
import { polePitched, skarnBrief, skarnItems, skarnTrip, skarnWalker, tarp, twoSkin } from '../loadout/skarn.ts'

const asked = (loadout: Loadout, more: Partial<Asked> = {}): Asked => ({
  loadout,
  brief: skarnBrief,
  trip: skarnTrip,
  walker: skarnWalker,
  today: '2025-10-08',
  ...more,
})
const without = (loadout: Loadout, ...names: readonly string[]) =>
  withoutLines(
    loadout,
    loadout.lines.filter((line) => names.includes(nameOf(line))).map(({ id }) => id),
  )
const nowhere = { startsOn: null, endsOn: null, zone: '', season: 'any' as const }
const counts = (finding: ReturnType<typeof duties.find>) => {
  const { state, have, need, enough, saying } = finding as Found
  return { state, have: have.value as number, need: need.value as number, enough: enough.value as number, saying }
}

// The rail of loadout.html: both enough, with one duty struck.
describe('the demo trip', () => {
  test('has its safety duties, the struck one in sight', () => {
    const { state, have, need, saying } = counts(safety.find(asked(polePitched)))
    // + and !: shelter, rain shell, fire starter, treatment, light, navigation and its backup, distress signal, first aid, repair, emergency shelter; light to spare is struck.
    expect([state, have, need]).toEqual(['enough', 11, 11])
    expect(saying).toEqual([{ code: 'struck', facts: { duty: 'spare-light', label: 'light to spare', reason: 'phone lamp' } }])
  })
  test('has its needs and duties', () => {
    const { state, have, need, enough, saying } = counts(duties.find(asked(polePitched)))
    // Marked + and not !: top and ground insulation, pack, dry store, base layer, legwear, mid layer, sleep layer, shoes, socks, vessel, hygiene;
    // for the cold: jacket, hat, gloves; for the boil: stove, pot, utensil. Needs: poles, stakes, the stove’s pot, food, water, gas.
    const count = 12 + 3 + 3 + 6
    expect([state, have, need, enough]).toEqual(['enough', count, count, count])
    expect(saying).toEqual([])
  })
  test.each([
    ['Two-skin tent', twoSkin],
    ['Tarp and bivouac bag', tarp],
  ])('%s has no stove or has it all', (_, loadout) => {
    const cold = { ...skarnBrief, meals: { ...skarnBrief.meals, boilsPerDay: 0 } }
    const brief = loadout === tarp ? cold : skarnBrief
    const { state, saying } = counts(duties.find(asked(loadout, { brief })))
    const missing = loadout === tarp ? ['dry-base', 'utensil'] : []
    expect(saying.map(({ facts }) => facts!.duty)).toEqual(missing)
    expect(state).toBe(missing.length === 0 ? 'enough' : 'short')
  })
  test('without the poles the shelter’s need is named', () => {
    const { state, have, need, saying } = counts(duties.find(asked(without(polePitched, 'Walking poles'))))
    expect([state, have, need]).toEqual(['short', 23, 24])
    const facts = { duty: 'pole', label: 'shelter pole', holder: 'Single-skin shelter, pole-pitched', pieces: 2, present: 0 }
    expect(saying).toEqual([{ code: 'need-missing', facts }])
  })
  test('without the map the way is not found, and the struck duty stays', () => {
    const { state, saying } = counts(safety.find(asked(without(polePitched, 'Map and compass'))))
    expect([state, saying.map(({ code }) => code)]).toEqual(['short', ['duty-missing', 'struck']])
    expect(saying[0]!.facts).toEqual({ duty: 'navigation', label: 'navigation', moments: '' })
  })
  test('the count opens to each duty', () => {
    const parts = (duties.find(asked(polePitched)) as Found).have.working!.given
    expect(parts).toHaveLength(24)
    expect(parts.map(({ name }) => name)).toContain('Single-skin shelter, pole-pitched: stakes')
  })
})

describe('safety comes first', () => {
  const both: TestItem = { name: 'Poncho tarp', area: 'shelter', g: 300, duties: 'rain-shell seat' }
  const brief = {
    ...emptyBrief,
    asked: [
      { duty: 'seat', as: 'want' as const },
      { duty: 'rain-shell', as: 'must' as const },
    ],
  }
  test('a piece wanted for both serves the safety duty', () => {
    const one = asked(loadoutOfAll([both]), { brief, trip: { ...skarnTrip, endsOn: skarnTrip.startsOn } })
    expect(counts(safety.find(one)).state).toBe('enough')
    const want = counts(duties.find(one))
    expect([want.state, want.saying[0]!.facts]).toEqual(['short', { duty: 'seat', label: 'seat', moments: '' }])
  })
})

describe('without a brief', () => {
  test('needs are counted, safety is not asked for', () => {
    const rows = findAll(asked(polePitched, { brief: emptyBrief, trip: nowhere }), false)
    expect(rows.map(({ check }) => check.id)).toEqual(['duties'])
    expect(counts(rows[0]!.finding)).toMatchObject({ state: 'enough', have: 6, need: 6 })
  })
  test('an empty loadout poses no question', () => {
    expect(duties.find(asked({ name: '', lines: [] }, { brief: emptyBrief, trip: nowhere }))).toEqual({
      state: 'not-asked',
      why: { code: 'nothing-asked' },
    })
  })
})

test('a trip without its nights is unknown to safety, which names them', () => {
  const finding = safety.find(asked(polePitched, { brief: { ...skarnBrief, nightsOut: null }, trip: nowhere }))
  expect(finding).toMatchObject({ state: 'unknown', missing: { code: 'nights' } })
})

test('what expires before the trip ends covers nothing', () => {
  const lamp: TestItem = { name: 'Lamp', area: 'light_power', g: 56, duties: 'distress-signal', traits: { expires: '2025-10-11' } }
  const brief = { ...emptyBrief, asked: [{ duty: 'distress-signal', as: 'must' as const }] }
  const on = (endsOn: string) =>
    counts(safety.find(asked(loadoutOfAll([lamp]), { brief: { ...brief, nightsOut: 0 }, trip: { ...skarnTrip, endsOn } }))).state
  expect([on('2025-10-11'), on('2025-10-12')]).toEqual(['enough', 'short'])
})

test('fuel on its own is short of a bottle', () => {
  const gas = { name: 'Spirit', area: 'kitchen' as const, traits: { 'heat-value': 25 } }
  const loadout = loadoutOf(kitIndex([], [gas]), [supplyRow(1, 1, { amountMilli: 1000 })])
  const { saying } = counts(duties.find(asked(loadout, { brief: emptyBrief, trip: nowhere })))
  expect(saying).toEqual([
    { code: 'need-missing', facts: { duty: 'fuel-holder', label: 'fuel container', holder: 'Spirit', pieces: 1, present: 0 } },
  ])
})

describe('the table of checks', () => {
  // DESIGN.md, "The rule of a check", ids in the order of its table.
  const order =
    'sleep-warmth ground-warmth walk-warmth camp-warmth stop-warmth rain-cover leg-cover dry-store water-carry water-treatment food-energy fuel ' +
    'gas-cold light power room pack-load body-load before-dark rules safety duties'
  test('keeps the order of the design and has no check twice', () => {
    const ids = checks.map(({ id }) => id)
    expect(order.split(' ').filter((id) => ids.includes(id))).toEqual(ids)
  })
  test('a tally counts each state, and what is not asked apart', () => {
    const rows = findAll(asked(polePitched))
    const { short, tight, unknown, enough, notAsked } = tallyOf(rows)
    expect(short + tight + unknown + enough + notAsked).toBe(rows.length)
    expect(enough).toBe(rows.filter(({ finding }) => finding.state === 'enough').length)
  })
})

describe('what would mend a check', () => {
  const shelf = { ...columnsOf(skarnItems), archived: skarnItems.map(() => false) }
  const row = (loadout: Loadout) => ({ check: duties, finding: duties.find(asked(loadout)) })
  test('is what serves the missing duty, lightest first', () => {
    const ids = mends(row(without(polePitched, 'Down quilt, 0 °C comfort')), shelf)
    expect(ids).toEqual(['Down quilt, 0 °C comfort', 'Down quilt, −6 °C comfort'].map((name) => idOf(skarnItems, name)))
  })
  test('is not what is sold or archived, and an unknown mass comes last', () => {
    const items: readonly TestItem[] = [
      { name: 'sold', area: 'sleep', g: 1, duties: 'top-insulation', status: 'sold' },
      { name: 'unknown', area: 'sleep', g: null, duties: 'top-insulation*' },
      { name: 'two light', area: 'sleep', g: 60, pieces: 2, duties: 'seat top-insulation' },
      { name: 'one', area: 'sleep', g: 100, duties: 'top-insulation' },
      { name: 'archived', area: 'sleep', g: 2, duties: 'top-insulation' },
      { name: 'another duty', area: 'sleep', g: 2, duties: 'seat' },
    ]
    const own = { ...columnsOf(items), archived: items.map(({ name }) => name === 'archived') }
    expect(mends(row(without(polePitched, 'Down quilt, 0 °C comfort')), own)).toEqual([4, 3, 2])
  })
  test('where none is named, what the check reads', () => {
    const finding = safety.find(asked(polePitched))
    expect(isFound(finding)).toBe(true)
    expect(mends({ check: safety, finding }, shelf)).toContain(idOf(skarnItems, 'Headlamp'))
    expect(mends({ check: safety, finding }, shelf)).not.toContain(idOf(skarnItems, 'Wash bag'))
  })
})
