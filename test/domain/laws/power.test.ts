import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty, work } from '../../../src-domain/figures/figure.ts'
import { byAir, cellWh, cyclesLeft } from '../../../src-domain/laws/cell-energy.ts'
import { coldCell, coldShare, isCellKind } from '../../../src-domain/laws/cold-cell.ts'
import { bankAtPort, bankIntoCell } from '../../../src-domain/laws/power-bank.ts'
import { lampDrawW } from '../../../src-domain/laws/power-draw.ts'
import { rows } from '../../published/power.ts'
import { meets } from '../../published/published.ts'

const kinds = ['lithium-ion', 'lithium', 'alkaline', 'nimh'] as const
const temp = fc.double({ min: -60, max: 50, noNaN: true })

describe('published values', () => meets(rows))

describe('cells', () => {
  test('colder never gives more, nor more than the whole or less than nothing', () => {
    fc.assert(
      fc.property(fc.constantFrom(...kinds), temp, temp, (kind, a, b) => {
        const [cold, warm] = [coldShare(kind, Math.min(a, b)), coldShare(kind, Math.max(a, b))]
        return cold <= warm + 1e-12 && cold >= 0 && warm <= 1
      }),
    )
  })
  test('beyond the ends it stays level', () => {
    expect(kinds.map((kind) => coldShare(kind, 35))).toEqual([1, 1, 1, 1])
    expect(kinds.map((kind) => coldShare(kind, -55))).toEqual(kinds.map((kind) => coldShare(kind, -40)))
  })
  test('the doubt of the table is a leaf of its own', () => {
    const left = work(coldCell('alkaline'), { energyWh: given(3.9, 'Wh', 'claimed'), cellC: given(0, 'degC', 'given') })
    expect(left.value).toBeCloseTo(3.9 * 0.6, 12)
    expect(uncertainty(left)).toBeCloseTo((3.9 * 0.1) / Math.sqrt(3), 12)
  })
  test('charging lithium-ion below freezing is cautioned, others are not', () => {
    expect(coldCell('lithium-ion').cautions({ energyWh: 10, cellC: -1 })).toHaveLength(1)
    expect(coldCell('lithium-ion').cautions({ energyWh: 10, cellC: 1 })).toHaveLength(0)
    expect(coldCell('nimh').cautions({ energyWh: 10, cellC: -1 })).toHaveLength(0)
  })
  test('more cycles never give capacity back, and half stays', () => {
    const cycles = fc.nat({ max: 5000 })
    fc.assert(fc.property(cycles, cycles, (a, b) => cyclesLeft(a + b) <= cyclesLeft(a) && cyclesLeft(a) >= 0.5))
    expect(cyclesLeft(500)).toBeCloseTo(0.8, 12) // 500 cycles to 80 %, the rating itself
  })
  test('only known kinds are kinds', () => {
    expect([isCellKind('nimh'), isCellKind('steam'), isCellKind('constructor')]).toEqual([true, false, false])
    expect(Math.min(...Object.values(cellWh))).toBeGreaterThan(0)
  })
})

describe('bank, lamp and air', () => {
  test('what comes out is never more than what is in', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 200, noNaN: true }),
        share,
        share,
        (labelWh, port, charging) =>
          bankIntoCell.compute({ labelWh, port, charging }) <= bankAtPort.compute({ labelWh, port }) &&
          bankAtPort.compute({ labelWh, port }) <= labelWh,
      ),
    )
  })
  test('a brighter lamp draws more', () => {
    fc.assert(fc.property(fc.nat({ max: 500 }), fc.integer({ min: 1, max: 500 }), (a, more) => lampDrawW(a + more) > lampDrawW(a)))
  })
  test('by air: up to 100, up to 160, beyond', () => {
    expect([byAir(100), byAir(100.1), byAir(160), byAir(160.1)]).toEqual(['carry-on', 'ask', 'ask', 'no'])
  })
})
