import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty, work } from '../../../src-domain/figures/figure.ts'
import { boilingPoint } from '../../../src-domain/laws/boiling-point.ts'
import { heatFromSnow, heatToMelt } from '../../../src-domain/laws/heat-from-snow.ts'
import { heatToBoil, potHeat_kJ_kgK } from '../../../src-domain/laws/heat-to-boil.ts'
import { heatToHold, holdLossWK } from '../../../src-domain/laws/heat-to-hold.ts'
import { standardPressure } from '../../../src-domain/laws/standard-pressure.ts'
import { saturationPressureMPa, saturationTempK } from '../../../src-domain/laws/water-saturation.ts'
import { rows } from '../../published/boiling.ts'
import { meets } from '../../published/published.ts'

const height = fc.double({ min: -400, max: 9000, noNaN: true })

describe('published values', () => meets(rows))

describe('boiling point', () => {
  test('falls with every metre of height', () => {
    fc.assert(
      fc.property(
        height,
        fc.double({ min: 1, max: 1000, noNaN: true }),
        (h, more) => boilingPoint.compute({ heightM: h + more }) < boilingPoint.compute({ heightM: h }),
      ),
    )
  })
  test('temperature and pressure of saturation undo each other', () => {
    // The release calls the backward equation consistent with the forward one: it is its exact solution.
    fc.assert(
      fc.property(fc.double({ min: 274, max: 640, noNaN: true }), (k) => Math.abs(saturationTempK(saturationPressureMPa(k)) - k) < 1e-6),
    )
  })
  test('a second published equation stays within 0.12 °C above it up to 5000 m', () => {
    // Antoine for water, lg p[Pa] = 10.11564 − 1687.537/(T − 42.98), Poling, Prausnitz and O'Connell (read).
    for (let heightM = 0; heightM <= 5000; heightM += 250) {
      const antoineC = 1687.537 / (10.11564 - Math.log10(standardPressure.compute({ heightM }))) + 42.98 - 273.15
      const above = antoineC - boilingPoint.compute({ heightM })
      expect(above).toBeGreaterThan(0)
      expect(above).toBeLessThan(0.12)
    }
  })
  test('outside its range it says so instead of giving a figure', () => {
    expect(saturationTempK(23)).toBeNaN()
    expect(saturationPressureMPa(272)).toBeNaN()
    expect(standardPressure.cautions({ heightM: 12000 })).toHaveLength(1)
    expect(standardPressure.cautions({ heightM: 3000 })).toEqual([])
  })
  test('opens to the height it was worked from', () => {
    const boils = work(boilingPoint, { heightM: given(2000, 'm', 'given', { 'brief:height': 100 }) })
    expect(boils.working?.given[0]?.figure.value).toBe(2000)
    expect(uncertainty(boils)).toBeCloseTo(0.334, 2) // (93.315 − 91.645)/500 × 100, from the table
  })
})

describe('heat', () => {
  const kg = fc.double({ min: 0, max: 5, noNaN: true })
  const cold = fc.double({ min: -30, max: 0, noNaN: true })
  test('more water, colder water or more pot never needs less', () => {
    const temp = fc.double({ min: 0, max: 99, noNaN: true })
    fc.assert(
      fc.property(kg, kg, temp, temp, kg, (a, b, s, t, pot) => {
        const q = (waterKg: number, startC: number, potKg: number): number =>
          heatToBoil.compute({ waterKg, startC, targetC: 99.97, potKg, potHeat: potHeat_kJ_kgK.steel })
        return q(a + b, Math.min(s, t), pot) >= q(a, Math.max(s, t), 0) - 1e-9
      }),
    )
  })
  test('snow is water already paid for: melting and boiling add to the whole way', () => {
    fc.assert(
      fc.property(kg, cold, kg, (m, snowC, potKg) => {
        const potHeat = 0.9
        const steps =
          heatToMelt.compute({ snowKg: m, snowC, potKg, potHeat }) +
          heatToBoil.compute({ waterKg: m, startC: 0, targetC: 95, potKg, potHeat })
        return Math.abs(heatFromSnow.compute({ snowKg: m, snowC, targetC: 95, potKg, potHeat }) - steps) < 1e-9
      }),
    )
  })
  test('water hotter than asked needs nothing and says so', () => {
    const at = { waterKg: 1, startC: 90, targetC: 85, potKg: 0.1, potHeat: 0.9 }
    expect(heatToBoil.compute(at)).toBe(0)
    expect(heatToBoil.cautions(at)).toHaveLength(1)
  })
  test('a lid halves and wind doubles what a simmer loses', () => {
    expect([holdLossWK(true, false), holdLossWK(false, false), holdLossWK(true, true), holdLossWK(false, true)]).toEqual([
      0.9, 1.8, 1.8, 3.6,
    ])
    expect(heatToHold.compute({ litres: 1, boilC: 90, airC: 95, seconds: 60, lossWK: 0.9 })).toBe(0)
  })
})
