/** Choices for a trip: the rail is the judge, and every choice of a small closet is tried on it. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { giveUp } from '../../../src-domain/choosing/give-up.ts'
import { readsOf } from '../../../src-domain/choosing/reads.ts'
import { givenUp, prepare, settle, type Pool, type Prepared } from '../../../src-domain/choosing/settle.ts'
import { Trial, type Level, type Pieces } from '../../../src-domain/choosing/trial.ts'
import type { Choosing } from '../../../src-domain/choosing/trip-choice.ts'
import { tripChoosing, tripCloset } from '../../oracles/trip-closet.ts'
import { solve } from './solver.ts'

/** What is asked of a check where some demands are given up; null: it is not asked. */
function levelOf(id: string, without: readonly string[]): Level | null {
  const ladder = [
    ['check', 'enough'],
    ['tight', 'not-short'],
    ['worse', 'as-now'],
  ] as const
  return ladder.find(([kind]) => !without.includes(`${kind}:${id}`))?.[1] ?? null
}

function passes({ choosing, field, demanded }: Prepared, without: readonly string[]): (pieces: Pieces) => boolean {
  const struck = without.flatMap((demand) => (demand.startsWith('duty:') ? [demand.slice(5)] : []))
  const trial = new Trial(choosing, field, struck)
  return (pieces) =>
    demanded.every(({ check, silent }) => {
      const level = levelOf(check.id, without)
      return level === null || ([...silent.keys()].every((id) => !pieces.get(id)) && trial.isMet(check, pieces, level))
    })
}

/** Least mass over every choice that the rail passes, tenths of a gram; null: none does. */
function byTryingAll(prepared: Prepared, without: readonly string[]): number | null {
  const { choosing, field } = prepared
  const trial = new Trial(choosing, field)
  const isPassed = passes(prepared, without)
  const things = field.choices.map(({ candidate }) => candidate)
  let best: number | null = null
  const pieces = new Map<string, number>()
  const tryFrom = (at: number, massDg: number): void => {
    if (best !== null && massDg + trial.usedUpDg(new Map()) >= best) return
    if (at === things.length) {
      const whole = massDg + trial.usedUpDg(pieces)
      if ((best === null || whole < best) && isPassed(pieces)) best = whole
      return
    }
    const { id, massDg: each, pieces: owned } = things[at]!
    for (let count = 0; count <= owned; count++) {
      pieces.set(id, count)
      tryFrom(at + 1, massDg + count * each)
    }
    pieces.set(id, 0)
  }
  tryFrom(0, 0)
  return best
}

const massOf = (prepared: Prepared, out: readonly string[] = []): number | null => {
  const settled = settle(prepared, { out }, solve, new Map())
  return settled.kind === 'found' ? settled.countedDg : null
}

test('24 random closets: as light as the lightest of all choices that the rail passes', () => {
  let [whole, partly] = [0, 0]
  for (let seed = 1; seed <= 24; seed++) {
    const prepared = prepare(tripChoosing(seed, { notShort: seed % 3 === 0 }))
    const pool: Pool = new Map()
    const settled = settle(prepared, {}, solve, pool)
    if (settled.kind === 'unsettled') throw new Error(settled.why)
    if (settled.kind === 'none') expect([seed, byTryingAll(prepared, givenUp(prepared, {}))]).toEqual([seed, null])
    const given = settled.kind === 'none' ? giveUp(prepared, {}, solve, pool) : { demands: [], settled }
    if (given === null) throw new Error(`seed ${seed}: nothing to give up`)
    const without = givenUp(prepared, { without: given.demands })
    expect([seed, given.settled.countedDg]).toEqual([seed, byTryingAll(prepared, without)])
    expect(passes(prepared, without)(given.settled.pieces)).toBe(true)
    if (settled.kind === 'found') whole++
    else partly++
  }
  expect(whole).toBeGreaterThan(0)
  expect(partly).toBeGreaterThan(10)
}, 300_000)

test('what is said to help never turns a met check into one that is not', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), fc.integer({ min: 0, max: 2 ** 20 }), fc.nat(11), (seed, mask, which) => {
      const prepared = prepare(tripChoosing(seed))
      const trial = new Trial(prepared.choosing, prepared.field)
      const { choices } = prepared.field
      const pieces = new Map(choices.flatMap(({ candidate }, i) => ((mask >> i) & 1 ? [[candidate.id, candidate.pieces] as const] : [])))
      const added = choices[which % choices.length]!
      for (const { check, silent } of prepared.demanded) {
        if (readsOf[check.id]!(added.item) !== 'helps' || silent.has(added.candidate.id)) continue
        const more = new Map(pieces).set(added.candidate.id, added.candidate.pieces)
        for (const level of ['enough', 'not-short'] as const)
          if (trial.isMet(check, pieces, level)) expect([check.id, trial.isMet(check, more, level)]).toEqual([check.id, true])
      }
    }),
    { numRuns: 300 },
  )
}, 300_000)

test('one thing more that is owned is never heavier; pins hold; order changes nothing', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), fc.nat(11), (seed, which) => {
      const items = tripCloset(seed)
      const at = which % items.length
      const [whole, less] = [prepare(tripChoosing(seed)), prepare(tripChoosing(seed, { pinOut: [`i${at + 1}`] }))]
      const all = massOf(whole)
      // Without the one thing that answers a check, that check is no longer asked: then the two are different questions.
      if (less.demanded.length === whole.demanded.length) expect(all ?? Infinity).toBeLessThanOrEqual(massOf(less) ?? Infinity)
      const pinned = prepare(tripChoosing(seed, { pinIn: [`i${at + 1}`] }))
      const settled = settle(pinned, {}, solve, new Map())
      if (settled.kind === 'found') {
        expect(settled.pieces.get(`i${at + 1}:in_pack`)).toBeGreaterThan(0)
        expect(settled.countedDg).toBeGreaterThanOrEqual(all!)
      }
      const turned: Choosing = tripChoosing(seed)
      expect(massOf(prepare({ ...turned, closet: [...turned.closet].reverse() }))).toBe(all)
    }),
    { numRuns: 25 },
  )
}, 300_000)

test('where nothing is enough, what gives way lets the rest be met', () => {
  let tried = 0
  for (let seed = 1; seed <= 60 && tried < 8; seed++) {
    const prepared = prepare(tripChoosing(seed))
    const pool: Pool = new Map()
    if (settle(prepared, {}, solve, pool).kind !== 'none') continue
    tried++
    const given = giveUp(prepared, {}, solve, pool)
    if (given === null) throw new Error(`seed ${seed}: nothing to give up`)
    expect(given.demands.length).toBeGreaterThan(0)
    // None of them is given up for nothing: with any one asked again there is no answer.
    for (const demand of given.demands.filter((one) => !given.demands.includes(one.replace('check:', 'tight:')))) {
      const without = given.demands.filter((one) => one !== demand)
      expect([seed, demand, settle(prepared, { without }, solve, pool).kind]).toEqual([seed, demand, 'none'])
    }
  }
  expect(tried).toBeGreaterThan(4)
}, 300_000)
