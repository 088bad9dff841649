import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty, work } from '../../../src-domain/figures/figure.ts'
import { campbell2022 } from '../../../src-domain/laws/campbell.ts'
import { lcda2019 } from '../../../src-domain/laws/lcda-2019.ts'
import type { Walking } from '../../../src-domain/laws/lcda-2022.ts'
import { lcda2022 } from '../../../src-domain/laws/lcda-2022.ts'
import { ludlowWeyand } from '../../../src-domain/laws/ludlow-weyand.ts'
import { minetti } from '../../../src-domain/laws/minetti.ts'
import { pandolf, santeeCorrection } from '../../../src-domain/laws/pandolf.ts'
import { snowTerrain } from '../../../src-domain/laws/snow-terrain.ts'
import { speedAtPower, speedRatio } from '../../../src-domain/laws/speed-at-power.ts'
import { timeFactorOf } from '../../../src-domain/laws/ground-pace.ts'
import { grounds } from '../../../src-domain/laws/terrain.ts'
import { terrains } from '../../../src-domain/trips/brief.ts'
import { rows } from '../../published/walking-power.ts'
import { meets } from '../../published/published.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const walking: fc.Arbitrary<Walking> = fc.record({
  bodyKg: number(40, 120),
  loadKg: number(0, 30),
  speedMs: number(0.2, 1.9),
  gradePercent: number(-25, 30),
  terrain: number(1, 2.1),
  restWPerKg: number(0.8, 1.3),
})
const models = [lcda2022, pandolf, ludlowWeyand] as const

describe('published values', () => meets(rows))

describe('walking power', () => {
  test('a lighter load never costs more, by any model', () => {
    fc.assert(
      fc.property(walking, number(0, 1), fc.constantFrom(...models), (at, share, law) => {
        // Downhill Santee gives a heavier load back more than it costs; his correction is asked on the flat and uphill only.
        fc.pre(law !== pandolf || at.gradePercent >= 0)
        return law.compute({ ...at, loadKg: at.loadKg * share }) <= law.compute(at) + 1e-9
      }),
    )
  })
  test('steeper up never costs less; faster on the flat never costs less', () => {
    fc.assert(
      fc.property(walking, number(0, 30), number(0, 30), fc.constantFrom(...models), (at, a, b, law) => {
        const at1 = (gradePercent: number) => law.compute({ ...at, gradePercent })
        const at2 = (share: number) => law.compute({ ...at, gradePercent: 0, speedMs: at.speedMs * share })
        return at1(Math.max(a, b)) >= at1(Math.min(a, b)) - 1e-9 && at2(Math.max(a, b) / 30) >= at2(Math.min(a, b) / 30) - 1e-9
      }),
    )
  })
  test('never below rest', () => {
    fc.assert(
      fc.property(
        walking,
        (at) => lcda2022.compute(at) >= at.bodyKg * at.restWPerKg - 1e-9 && pandolf.compute(at) >= at.bodyKg * at.restWPerKg - 1e-9,
      ),
    )
  })
  // The three were fitted to different walkers; the note's honest spread is 10 to 30 %. On level ground within what all three studied they stay within 30 %.
  test('on level ground the three models agree within 30 %', () => {
    fc.assert(
      fc.property(number(55, 95), number(0.05, 0.31), number(0.7, 1.5), (bodyKg, share, speedMs) => {
        const at = { bodyKg, loadKg: share * bodyKg, speedMs, gradePercent: 0, terrain: 1, restWPerKg: 1.05 }
        const all = models.map((law) => law.compute(at))
        return Math.max(...all) / Math.min(...all) < 1.3
      }),
    )
  })
  // Independent route on slopes: Minetti measured energy per metre without a load. Both rise and fall alike; within 45 % of each other where both are sure (−5 … +20 %).
  test('without a load the equation of 2019 follows Minetti on slopes', () => {
    for (const percent of [-5, 0, 5, 10, 15, 20]) {
      const speedMs = percent > 8 ? 0.8 : 1.2
      const perMetre = (lcda2019.compute({ speedMs, gradePercent: percent }) - 1.44) / speedMs
      expect(Math.abs(Math.log(perMetre / minetti.compute({ gradeRatio: percent / 100 })))).toBeLessThan(0.45)
    }
  })
  // Reported errors: 0.59 W/kg for 2022, 0.20 on the level for 2019; together √(0.59² + 0.20²) = 0.62.
  test('without a load, 2022 and 2019 agree on the level within their reported errors', () => {
    const at = { bodyKg: 70, loadKg: 0, gradePercent: 0, terrain: 1, restWPerKg: 1.05 }
    for (const speedMs of [0.7, 1, 1.34, 1.6])
      expect(Math.abs(lcda2022.compute({ ...at, speedMs }) / 70 - lcda2019.compute({ speedMs, gradePercent: 0 }))).toBeLessThan(0.62)
  })
  test('outside what was studied it is held at the edge and says so', () => {
    const at = { bodyKg: 70, loadKg: 10, speedMs: 1, gradePercent: 0, terrain: 1, restWPerKg: 1.05 }
    expect(lcda2022.compute({ ...at, speedMs: 5 })).toBe(lcda2022.compute({ ...at, speedMs: 1.97 }))
    expect(lcda2022.compute({ ...at, gradePercent: 80 })).toBe(lcda2022.compute({ ...at, gradePercent: 45 }))
    expect(lcda2022.compute({ ...at, loadKg: 70 })).toBe(lcda2022.compute({ ...at, loadKg: 0.66 * 70 }))
    expect(lcda2022.cautions({ ...at, speedMs: 2, gradePercent: -41, loadKg: 50, bodyKg: 29 })).toEqual([
      'Outside the studied range: speed, slope, load, body mass.',
    ])
    expect(lcda2022.cautions(at)).toEqual([])
    expect(pandolf.cautions({ ...at, gradePercent: -13 })).toHaveLength(1)
    expect(santeeCorrection({ ...at, speedMs: 0, gradePercent: -8 })).toBe(0)
  })
  test('the doubt of a load passes through', () => {
    const at = { bodyKg: 70, loadKg: 10, speedMs: 1, gradePercent: 5, terrain: 1.1, restWPerKg: 1.05 }
    const power = work(lcda2022, {
      bodyKg: given(70, 'kg', 'given'),
      loadKg: given(10, 'kg', 'measured', { scale: 0.5 }),
      speedMs: given(1, 'm/s', 'given'),
      gradePercent: given(5, '%', 'given'),
      terrain: given(1.1, '1', 'given'),
      restWPerKg: given(1.05, 'W/kg', 'given'),
    })
    expect(power.value).toBe(lcda2022.compute(at))
    const slope = lcda2022.compute({ ...at, loadKg: 10.5 }) - lcda2022.compute({ ...at, loadKg: 9.5 })
    expect(uncertainty(power)).toBeCloseTo(slope / 2, 1)
  })
})

describe('speed of equal effort', () => {
  test('a lighter load never slows', () => {
    fc.assert(
      fc.property(walking, number(0, 1), (at, share) => {
        fc.pre(at.gradePercent >= -5)
        return speedRatio(at, { loadKg: at.loadKg * share }) >= 1 - 1e-9
      }),
    )
  })
  test('heavier ground never quickens', () => {
    fc.assert(
      fc.property(walking, number(0, 1), (at, more) => at.gradePercent < 0 || speedRatio(at, { terrain: at.terrain + more }) <= 1 + 1e-9),
    )
  })
  test('nothing changed, nothing slows; power out of reach stays at the ends', () => {
    fc.assert(fc.property(walking, (at) => at.gradePercent < 0 || Math.abs(speedRatio(at, {}) - 1) < 1e-6))
    expect(speedAtPower((speed) => speed, 0)).toBeCloseTo(0.05, 9)
    expect(speedAtPower((speed) => speed, 9)).toBeCloseTo(2.5, 9)
  })
})

describe('ground', () => {
  test('sand and snow take as much longer as equal effort asks', () => {
    const at = { bodyKg: 70, loadKg: 10, gradePercent: 0, restWPerKg: 1.05 }
    const pathMs = campbell2022.compute({ slopeDeg: 0 })
    for (const [terrain, eta] of [
      ['snow', 1.6],
      ['sand', 2.1],
    ] as const) {
      const there = lcda2022.compute({ ...at, speedMs: pathMs / timeFactorOf(terrain), terrain: eta })
      expect(there).toBeCloseTo(lcda2022.compute({ ...at, speedMs: pathMs, terrain: 1.1 }), 6)
    }
    expect(timeFactorOf('snow')).toBeGreaterThan(1)
    expect(timeFactorOf('sand')).toBeGreaterThan(timeFactorOf('snow'))
    expect(timeFactorOf('path')).toBe(1)
  })
  test('every ground of a brief has its factors, none quicker or cheaper than a road', () => {
    for (const terrain of terrains) {
      expect(grounds[terrain].energyFactor).toBeGreaterThanOrEqual(1)
      expect(grounds[terrain].timeFactor ?? 1).toBeGreaterThanOrEqual(1)
    }
  })
  test('deeper snow is never easier, and is held at 4', () => {
    fc.assert(
      fc.property(number(0, 60), number(0, 60), number(0.05, 1.3), (a, b, densityGCm3) => {
        const factor = (depthCm: number) => snowTerrain.compute({ depthCm, densityGCm3 })
        return factor(Math.max(a, b)) >= factor(Math.min(a, b)) - 1e-12 && factor(a) <= 4
      }),
    )
    expect(snowTerrain.cautions({ depthCm: 20, densityGCm3: 0.2 })).toHaveLength(1)
  })
})
