/** The exactness of a choice: against trying everything, against published optima, and against a second solver. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { solve as solveOther, type Constraint } from 'yalps'
import type { Candidate, Wanted } from '../../../src-domain/choosing/candidate.ts'
import { formulate } from '../../../src-domain/choosing/formulate.ts'
import { lightest, type Answer } from '../../../src-domain/choosing/lightest.ts'
import { broken, type Model } from '../../../src-domain/choosing/model.ts'
import { fulfils, leastByHand } from '../../oracles/choice-by-hand.ts'
import { mulberry, randomCloset } from '../../oracles/random-closet.ts'
import { covers, knapsacks } from '../../published/knapsacks.ts'
import { solve } from './solver.ts'

const massDg = (answer: Answer): number | null => (answer.kind === 'found' ? answer.massDg : null)

/** Small enough to try everything: few stakes a piece, and what a small closet can be asked. */
function small(seed: number): { readonly candidates: readonly Candidate[]; readonly wanted: Wanted } {
  const chance = mulberry(seed + 7)
  const { candidates, wanted } = randomCloset(seed, 9 + Math.floor(chance() * 5), 5 + Math.floor(chance() * 5))
  const fewer = candidates.map((one) => ({
    ...one,
    pieces: Math.min(one.pieces, 3),
    needs: one.needs.map((need) => ({ ...need, amount: Math.min(need.amount, 3) })),
  }))
  const [first, second] = candidates
  const person: Partial<Wanted> =
    chance() < 0.3
      ? { pinOut: [first!.id] }
      : chance() < 0.3
        ? { pinIn: { [second!.id]: 1 } }
        : chance() < 0.3
          ? { bans: ['down', 'alcohol'] }
          : {}
  return {
    candidates: fewer,
    wanted: { ...wanted, ...person, wornFactor: chance() < 0.3 ? 0.5 : 0, volumeMl: Math.round(chance() * 6000) },
  }
}

test('300 random small closets: the same mass as by trying everything', () => {
  let found = 0
  for (let seed = 1; seed <= 300; seed++) {
    const { candidates, wanted } = small(seed)
    const answer = lightest(candidates, wanted, solve)
    expect([seed, massDg(answer)]).toEqual([seed, leastByHand(candidates, wanted)])
    if (answer.kind !== 'found') continue
    found++
    const picked = answer.taken.map(({ id, inPack, onMe }) => ({ one: candidates.find((one) => one.id === id)!, q: inPack, w: onMe }))
    expect(fulfils(picked, wanted)).toBe(true)
  }
  // Both kinds of answer are really tried.
  expect(found).toBeGreaterThan(60)
  expect(found).toBeLessThan(290)
}, 300_000)

test.each(knapsacks)('$name: what stays behind is the lightest that frees enough', ({ worth, weighs, limits, best }) => {
  const total = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0)
  const candidates = worth.map((massDg, i): Candidate => ({
    id: `thing ${i}`,
    massDg,
    pieces: 1,
    place: 'pack',
    covers: Object.fromEntries(weighs.map((row, k) => [`limit ${k}`, row[i]!])),
    needs: [],
  }))
  const duties = Object.fromEntries(limits.map((limit, k) => [`limit ${k}`, total(weighs[k]!) - limit]))
  const answer = lightest(candidates, { duties }, solve)
  expect(total(worth) - massDg(answer)!).toBe(best)
})

test.each(covers)('$name: the fewest points that meet every line', ({ points, lines, best }) => {
  const candidates = Array.from({ length: points }, (_, p): Candidate => ({
    id: `point ${p}`,
    massDg: 1,
    pieces: 1,
    place: 'pack',
    covers: Object.fromEntries(lines.flatMap((line, k) => (line.includes(p) ? [[`line ${k}`, 1]] : []))),
    needs: [],
  }))
  const duties = Object.fromEntries(lines.map((_, k) => [`line ${k}`, 1]))
  expect(massDg(lightest(candidates, { duties }, solve))).toBe(best)
})

/** A second solver, written by others in another way. */
function byOther({ columns, rows }: Model): number | null {
  const constraints = new Map<string, Constraint>()
  const variables = new Map(columns.map(({ cost }, i) => [`${i}`, new Map([['cost', cost]])]))
  rows.forEach(({ terms, low, high }, r) => {
    constraints.set(`r${r}`, { ...(low === null ? {} : { min: low }), ...(high === null ? {} : { max: high }) })
    for (const [column, coefficient] of terms) variables.get(`${column}`)!.set(`r${r}`, coefficient)
  })
  columns.forEach(({ most }, i) => {
    constraints.set(`c${i}`, { max: most })
    variables.get(`${i}`)!.set(`c${i}`, 1)
  })
  const answer = solveOther(
    { direction: 'minimize', objective: 'cost', constraints, variables, integers: true },
    { timeout: 20_000, tolerance: 0 },
  )
  return answer.status === 'optimal' ? answer.result : answer.status === 'infeasible' ? null : NaN
}

test('60 closets of 40 to 60 things: a second solver agrees', () => {
  let found = 0
  for (let seed = 1; seed <= 60; seed++) {
    const { candidates, wanted } = randomCloset(1000 + seed, 40 + (seed % 3) * 10, 10 + (seed % 2) * 6)
    const answer = lightest(candidates, wanted, solve)
    const other = byOther(formulate(candidates, wanted))
    // The objective counts 2⁻¹⁰ for each piece beside the mass: below a tenth of a gram here.
    expect([seed, other === null ? null : Math.floor(other)]).toEqual([seed, massDg(answer)])
    if (answer.kind === 'found') found++
  }
  expect(found).toBeGreaterThan(20)
}, 300_000)

const seeds = fc.integer({ min: 1, max: 1_000_000 })
const closetOf = (seed: number) => randomCloset(seed, 30, 9)

test('one thing more that is owned is never heavier, one demand more never lighter', () => {
  fc.assert(
    fc.property(seeds, fc.nat(29), (seed, at) => {
      const { candidates, wanted } = closetOf(seed)
      const without =
        massDg(
          lightest(
            candidates.filter((_, i) => i !== at),
            wanted,
            solve,
          ),
        ) ?? Infinity
      const all = massDg(lightest(candidates, wanted, solve)) ?? Infinity
      expect(all).toBeLessThanOrEqual(without)
      const more = massDg(lightest(candidates, { ...wanted, duties: { ...wanted.duties, pot: 2, duty9: 1 } }, solve)) ?? Infinity
      expect(more).toBeGreaterThanOrEqual(all)
    }),
    { numRuns: 25 },
  )
})

test('pins and bans hold, and the order of things changes nothing', () => {
  fc.assert(
    fc.property(seeds, fc.nat(29), fc.nat(29), (seed, first, second) => {
      const { candidates, wanted } = closetOf(seed)
      const [inside, outside] = [candidates[first]!.id, candidates[second]!.id]
      const asked = { ...wanted, pinIn: inside === outside ? {} : { [inside]: 1 }, pinOut: [outside], bans: ['down'] }
      const kept = inside === outside || !candidates[first]!.tags!.includes('down')
      const answer = lightest(candidates, asked, solve)
      if (!kept) expect(answer.kind).toBe('none')
      if (answer.kind !== 'found') return
      const ids = answer.taken.map(({ id }) => id)
      expect(ids).not.toContain(outside)
      if (inside !== outside) expect(ids).toContain(inside)
      for (const id of ids) expect(candidates.find((one) => one.id === id)!.tags).not.toContain('down')
      expect(massDg(lightest([...candidates].reverse(), asked, solve))).toBe(answer.massDg)
    }),
    { numRuns: 40 },
  )
})

test('a solution that breaks a row is found out', () => {
  const model = formulate(randomCloset(3, 30, 9).candidates, randomCloset(3, 30, 9).wanted)
  expect(
    broken(
      model,
      model.columns.map(() => 0),
    ).length,
  ).toBeGreaterThan(0)
  expect(
    broken(
      model,
      model.columns.map(() => 0.5),
    ),
  ).toContain(model.columns[0]!.name)
})
