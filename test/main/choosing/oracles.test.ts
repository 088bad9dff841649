/** The oracles of the formulation: every case's mass and validity, never which of several equal choices. */
import { expect, test } from 'vitest'
import { groundAskedR } from '../../../src-domain/choosing/candidate.ts'
import { demandsOf, leastGivenUp, lightest, nextBest, withoutDemands, type Answer } from '../../../src-domain/choosing/lightest.ts'
import { brief1, cases, closetAt, stairItems, stairs, wantedOf } from '../../published/closets.ts'
import { solve } from './solver.ts'

const massG = (answer: Answer): number | null => (answer.kind === 'found' ? answer.massDg / 10 : null)
const closet1 = closetAt(7.5)
const best = (change: Parameters<typeof wantedOf>[0]['change'], c = 7.5) => massG(lightest(closetAt(c), wantedOf({ change }), solve))

test('the ground a top asks, in whole hundredths of R', () => {
  const asks = (topR: number, c: number) => groundAskedR(topR, { a: 21, b: 9, c }, 740)
  expect([400, 520, 560].map((topR) => asks(topR, 7.5))).toEqual([400, 260, 240])
  expect([400, 520].map((topR) => asks(topR, 6.3))).toEqual([null, 398])
  // A top a hair short of the limit asks for more than exists, and not for 10¹⁷.
  expect(groundAskedR(280, { a: 21, b: 9, c: 7.5 + 1e-15 }, 740)).toBeNull()
})

test.each(cases)('closet 1, case $id: $best g', (one) => {
  const answer = lightest(closetAt(one.c ?? 7.5), wantedOf(one), solve)
  expect(massG(answer)).toBe(one.best)
  if (answer.kind === 'found') expect(answer.proven).toBe(true)
})

test('nothing useless is carried for nothing: the tent needs no pole', () => {
  const answer = lightest(closet1, wantedOf({ change: { pinIn: { tent: 1 } } }), solve)
  expect(answer.kind === 'found' && answer.taken.map(({ id }) => id)).not.toContain('pole')
})

test('the six best, and the five that differ in shelter and sleep', () => {
  expect(nextBest(closet1, brief1, solve, 6).map(massG)).toEqual([2178, 2192, 2258, 2272, 2278, 2292])
  const focus = new Set(['tarp', 'tent', 'bivy', 'stake', 'pole', 'quiltA', 'quiltB', 'bagC', 'foam', 'foamShort', 'airpad'])
  expect(nextBest(closet1, brief1, solve, 5, (id) => focus.has(id)).map(massG)).toEqual([2178, 2278, 2338, 2454, 2554])
})

test('what leaving each thing out costs', () => {
  const cost = (id: string) => {
    const mass = best({ pinOut: [id] })
    return mass === null ? null : mass - 2178
  }
  const costs = { tarp: 276, stake: 276, pole: 276, quiltA: 100, airpad: 100, packS: 630, alcStove: 273, pot: 80, bladder: 14, phone: null }
  for (const [id, grams] of Object.entries(costs)) expect([id, cost(id)]).toEqual([id, grams])
})

const priceOf = (wanted: typeof brief1, full: number, ...demands: readonly string[]) =>
  full - massG(lightest(closet1, withoutDemands(wanted, ...demands), solve))!

test('what each demand costs, alone and together', () => {
  const dear: Record<string, number> = {
    'duty:shelter': 364,
    top: 540,
    'duty:map': 118,
    'duty:water': 62,
    sleep: 60,
    'duty:stake': 54,
    'duty:stove': 22,
  }
  for (const demand of demandsOf(closet1, brief1)) expect([demand, priceOf(brief1, 2178, demand)]).toEqual([demand, dear[demand] ?? 0])
  expect(priceOf(brief1, 2178, 'top', 'sleep', 'ground')).toBe(910)
  expect(priceOf(brief1, 2178, 'duty:stove', 'duty:pot')).toBe(132)
})

test('what demands and bans cost under both bans', () => {
  const wanted = { ...brief1, bans: ['down', 'alcohol'] }
  const dear: Record<string, number> = {
    top: 1050,
    'duty:shelter': 364,
    'duty:stove': 295,
    'need:gasStove:gas': 210,
    'duty:map': 118,
    'duty:water': 62,
    'duty:stake': 54,
    'ban:down': 510,
    'ban:alcohol': 273,
  }
  for (const demand of demandsOf(closet1, wanted)) expect([demand, priceOf(wanted, 2961, demand)]).toEqual([demand, dear[demand] ?? 0])
})

test('where nothing meets everything: the fewest demands to give up', () => {
  const weight = (demand: string) => (/^(in|out|ban):/.test(demand) ? 100 : 1)
  const sleepless = leastGivenUp(closetAt(4.5), brief1, solve, weight)
  expect(sleepless?.demands).toHaveLength(1)
  const dry = leastGivenUp(closet1, wantedOf(cases.find(({ id }) => id === '1p')!), solve, weight)
  expect([...dry!.demands].sort()).toEqual(['duty:shelter', 'duty:water'])
})

test.each(stairs)('the stairs of an amount: at least %i costs %s g', (asked, grams) => {
  expect(massG(lightest(stairItems, { duties: { R: asked } }, solve))).toBe(grams)
})
