import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty } from '../../../src-domain/figures/figure.ts'
import type { Unit } from '../../../src-domain/figures/units.ts'
import { convert, units } from '../../../src-domain/figures/units.ts'
import { meets } from '../../published/published.ts'
import { rows } from '../../published/units.ts'

meets(rows)

const names = Object.keys(units) as Unit[]
const pair = fc
  .constantFrom(...names)
  .chain((a) => fc.tuple(fc.constant(a), fc.constantFrom(...names.filter((b) => units[b].kind === units[a].kind))))

describe('conversion', () => {
  test('there and back is the same figure', () => {
    fc.assert(
      fc.property(pair, fc.double({ min: -1e6, max: 1e6, noNaN: true }), ([a, b], value) => {
        // Two roundings of a double, more where an offset of 459.67 swamps a small value.
        expect(Math.abs(convert(convert(value, a, b), b, a) - value)).toBeLessThanOrEqual(Math.abs(value) * 1e-14 + 1e-12)
      }),
    )
  })
  test('units of different kinds are a bug, not a number', () => {
    expect(() => convert(1, 'g', 'l')).toThrow('g is no volume')
  })
  test('the shares of a temperature take the factor and not the offset', () => {
    const fahrenheit = convert(given(-2, 'degC', 'given', { 'brief:low': 2, 'station:offset': -0.5 }), 'degF')
    expect(fahrenheit.value).toBeCloseTo(28.4, 12)
    expect(fahrenheit.shares['brief:low']).toBeCloseTo(3.6, 12)
    expect(fahrenheit.shares['station:offset']).toBeCloseTo(-0.9, 12)
  })
  test('doubt keeps its share of the figure', () => {
    fc.assert(
      fc.property(pair, fc.double({ min: 0.001, max: 1000, noNaN: true }), ([a, b], u) => {
        const there = convert(given(5, a, 'measured', { one: u, other: -u }), b)
        const back = convert(there, a)
        expect(there.unit).toBe(b)
        expect(uncertainty(back)).toBeCloseTo(uncertainty(given(5, a, 'measured', { one: u, other: -u })), 9)
      }),
    )
  })
})
