import { describe, expect, test } from 'vitest'
import { checks, findAll } from '../../../src-domain/checks/index.ts'
import { supplyLines } from '../../../src-domain/loadout/loadout.ts'
import { stateOf } from '../../oracles/expected.ts'
import { askedOf, trips } from './worked.ts'

describe.each(trips.map((trip) => [trip.name, trip] as const))('%s', (_, worked) => {
  const asked = askedOf(worked)
  const found = new Map(findAll(asked).map(({ check, finding }) => [check.id, finding]))

  test('every check has an expectation, and no other', () => {
    expect(Object.keys(worked.expected).toSorted()).toEqual(checks.map(({ id }) => id).toSorted())
  })

  test('amounts by the brief', () => {
    const amounts = supplyLines(asked.loadout).filter(({ amountFrom }) => amountFrom === 'brief')
    expect(amounts.map(({ supply }) => supply.name).toSorted()).toEqual(Object.keys(worked.amounts).toSorted())
    for (const { supply, amount } of amounts) {
      const [expected, tolerance] = worked.amounts[supply.name]!
      expect(Math.abs(amount! - expected), `${supply.name}: expected ${expected}, found ${amount}`).toBeLessThanOrEqual(tolerance)
    }
  })

  test.each(Object.entries(worked.expected))('%s', (id, outcome) => {
    const finding = found.get(id)!
    if (!('figures' in outcome)) {
      const named =
        finding.state === 'not-asked' ? { why: finding.why.code } : finding.state === 'unknown' ? { missing: finding.missing.code } : {}
      expect({ state: finding.state, ...named }).toEqual(outcome)
      return
    }
    if (!('have' in finding)) throw new Error(`${id}: ${JSON.stringify(finding)}`)
    const { figures } = outcome
    const off = (['have', 'need', 'enough'] as const).filter(
      (name) => !(Math.abs(finding[name].value - figures[name]) <= figures.tolerance + 1e-9),
    )
    const ours = { have: finding.have.value, need: finding.need.value, enough: finding.enough.value }
    expect(off, `expected ${JSON.stringify(figures)}, found ${JSON.stringify(ours)}`).toEqual([])
    expect(finding.wants).toBe(figures.wants)
    // The worked figures by the design's rule, and then ours.
    expect(stateOf(figures), `by the worked figures ${JSON.stringify(figures)}`).toBe(outcome.capped ? 'enough' : outcome.state)
    expect(finding.state).toBe(outcome.state)
    // The whisker is u over the reserve. Doubts are of first order here and there: steps differ, so a twentieth is allowed.
    // Without a reserve the gauge is drawn in u itself and says nothing of it.
    if (figures.enough === figures.need) return
    const ourU = finding.marginU * Math.abs(finding.enough.value - finding.need.value)
    expect(Math.abs(ourU - figures.u), `u: expected ${figures.u}, found ${ourU}`).toBeLessThanOrEqual(0.05 * figures.u + 1e-9)
  })
})
