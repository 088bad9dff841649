import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { given, uncertainty, work } from '../../../src-domain/figures/figure.ts'
import { climbingWork } from '../../../src-domain/laws/activity-heat.ts'
import { windCorrection } from '../../../src-domain/laws/air-layer.ts'
import { cloForMinutes, cloToLast, cloToLastWell } from '../../../src-domain/laws/clo-for-minutes.ts'
import { flows, termsOf, type Climate } from '../../../src-domain/laws/clothed-balance.ts'
import { ensembleClo, ensembleOlesen } from '../../../src-domain/laws/clothing-insulation.ts'
import { evaporationBound } from '../../../src-domain/laws/evaporation-bound.ts'
import { exposure } from '../../../src-domain/laws/exposure-limit.ts'
import { garmentClo, garments } from '../../../src-domain/laws/garment-table.ts'
import { clothingMinimal, required } from '../../../src-domain/laws/ireq.ts'
import { windAndWalkFactor } from '../../../src-domain/laws/iso-9920-wind.ts'
import { gainedClo, wholeRsi } from '../../../src-domain/laws/local-to-whole.ts'
import { rows } from '../../published/clothing.ts'
import { meets } from '../../published/published.ts'

const climates: fc.Arbitrary<Climate> = fc
  .record({
    heat: fc.double({ min: 58, max: 300, noNaN: true }),
    work: fc.constant(0),
    airC: fc.double({ min: -40, max: 10, noNaN: true }),
    permeability: fc.double({ min: 1, max: 200, noNaN: true }),
    walkMs: fc.double({ min: 0, max: 1.2, noNaN: true }),
    windMs: fc.double({ min: 0.4, max: 15, noNaN: true }),
    rhPct: fc.double({ min: 20, max: 100, noNaN: true }),
  })
  .map((at) => ({ ...at, radiantC: at.airC }))
const criteria = fc.constantFrom('minimal', 'neutral' as const)
const minutes = fc.double({ min: 5, max: 480, noNaN: true })
const some = fc.double({ min: 0.01, max: 1, noNaN: true })
const icl = (at: Climate, criterion: 'minimal' | 'neutral' = 'minimal'): number => {
  const found = required(at, criterion)
  if (!found.ok) throw new Error(found.why)
  return found.value.iclClo
}
const hours = (at: Climate, criterion: 'minimal' | 'neutral', clo: number): number => {
  const found = exposure(at, criterion, clo)
  if (!found.ok) throw new Error(found.why)
  return found.value.limit === 'hours' ? found.value.hours : Number.POSITIVE_INFINITY
}

describe('published values', () => meets(rows))

describe('clothing required', () => {
  test('rises as the air cools and never exceeds neutral', () => {
    fc.assert(
      fc.property(climates, some, (at, k) => {
        const colder = { ...at, airC: at.airC - k, radiantC: at.airC - k }
        return icl(colder) >= icl(at) - 1e-9 && icl(at) <= icl(at, 'neutral') + 1e-9
      }),
    )
  })
  test('rises with wind', () => {
    fc.assert(fc.property(climates, some, (at, more) => icl({ ...at, windMs: at.windMs + more }) >= icl(at) - 1e-9))
  })
  test('closes the balance: what is left is nothing', () => {
    fc.assert(
      fc.property(climates, criteria, (at, criterion) => {
        const found = required(at, criterion)
        if (!found.ok || found.value.ireqClo === 0) return true
        return Math.abs(flows(termsOf(at, criterion), found.value.ireqClo * 0.155, 0).left) < 1e-6
      }),
    )
  })
  test('outside its range says why', () => {
    const mild: Climate = { heat: 100, work: 0, airC: 12, radiantC: 12, permeability: 8, walkMs: 0, windMs: 1, rhPct: 80 }
    expect(required(mild, 'minimal')).toMatchObject({ ok: false, why: 'ireq.too-warm' })
    expect(required({ ...mild, airC: 0, heat: 50 }, 'minimal')).toMatchObject({ ok: false, why: 'ireq.heat' })
    expect(exposure({ ...mild, airC: 0, heat: Number.NaN }, 'minimal', 2)).toMatchObject({ ok: false, why: 'ireq.heat' })
    expect(cloForMinutes({ ...mild, airC: Number.NaN }, 'minimal', 60)).toMatchObject({ ok: false, why: 'ireq.air' })
    expect(cloForMinutes({ ...mild, airC: 0 }, 'minimal', 0)).toMatchObject({ ok: false, why: 'ireq.minutes' })
    expect(clothingMinimal.cautions({ ...mild, heat: 50, windMs: 20 })).toHaveLength(3)
  })
})

describe('time limit', () => {
  test('more clothing never shortens it, more wind or cold never lengthens it', () => {
    fc.assert(
      fc.property(climates, criteria, fc.double({ min: 0.3, max: 4, noNaN: true }), some, (at, criterion, clo, more) => {
        const lasts = hours(at, criterion, clo)
        const worse = { ...at, airC: at.airC - more, radiantC: at.airC - more, windMs: at.windMs + more }
        return hours(at, criterion, clo + more) >= lasts - 1e-9 && hours(worse, criterion, clo) <= lasts + 1e-9
      }),
    )
  })
  test('the clothing that lasts t minutes lasts t minutes', () => {
    fc.assert(
      fc.property(climates, criteria, minutes, (at, criterion, t) => {
        const found = cloForMinutes(at, criterion, t)
        if (!found.ok) return false
        // Nothing needed, or the wind takes more than the table can count: the limit is then longer than asked.
        if (found.value === 0) return hours(at, criterion, 0) >= t / 60 - 1e-6 || termsOf(at, criterion).kept < 0.4
        return Math.abs(hours(at, criterion, found.value) * 60 - t) < 1e-4 * t || hours(at, criterion, found.value) > 8 - 1e-6
      }),
    )
  })
  test('staying longer never asks for less, and comfort never for less than bare endurance', () => {
    fc.assert(
      fc.property(climates, minutes, some, (at, t, more) => {
        const need = cloToLast.compute({ ...at, minutes: t })
        const enough = cloToLastWell.compute({ ...at, minutes: t })
        return cloToLast.compute({ ...at, minutes: t * (1 + more) }) >= need - 1e-9 && enough >= need - 1e-9
      }),
    )
  })
  test('is unlimited for a hard climb in enough clothing, and beyond 8 h is not given as a figure', () => {
    const climb: Climate = { heat: 300, work: 0, airC: -20, radiantC: -20, permeability: 8, walkMs: 1.2, windMs: 4, rhPct: 60 }
    expect(exposure(climb, 'minimal', 1.5)).toMatchObject({ ok: true, value: { limit: 'none' } })
    const sitting: Climate = { heat: 65, work: 0, airC: 0, radiantC: 0, permeability: 8, walkMs: 0, windMs: 1, rhPct: 80 }
    expect(exposure(sitting, 'minimal', 3.5)).toMatchObject({ ok: true, value: { limit: 'over-8-h' } }) // warmth.md 2.3: over 8 h
  })
  test('as a figure carries the doubt of the forecast and of the heat made', () => {
    const at = {
      heat: given(65, 'W/m2', 'estimated'),
      work: given(0, 'W/m2', 'constant'),
      airC: given(0, 'degC', 'given', { 'brief:low': 2 }),
      permeability: given(8, 'l/m2s', 'estimated'),
      walkMs: given(0, 'm/s', 'constant'),
      windMs: given(1, 'm/s', 'given'),
      rhPct: given(80, '%', 'estimated'),
      minutes: given(60, 'min', 'given'),
    }
    const need = work(cloToLast, at)
    // warmth.md 5.3: 0.156 from 2 K and 0.131 from ±20 % of the heat; ±0.002 each.
    expect(Math.abs(need.shares['brief:low']!)).toBeCloseTo(0.156, 2)
    expect(Math.abs(uncertainty(need) - Math.hypot(0.156, 0.131))).toBeLessThan(0.003)
  })
})

describe('what is worn', () => {
  test('another garment never lowers the insulation; nothing worn is nothing', () => {
    fc.assert(fc.property(some, some, (sum, more) => ensembleClo.compute({ sumClo: sum + more }) > ensembleClo.compute({ sumClo: sum })))
    expect(ensembleClo.compute({ sumClo: 0 })).toBe(0)
    expect(ensembleClo.cautions({ sumClo: 3 })).toHaveLength(1)
    expect([ensembleOlesen.compute({ sumClo: 1.84 }), ensembleOlesen.cautions({ sumClo: 0.5 }).length]).toEqual([1.84, 1])
  })
  test('the garment table never holds a smaller figure above a larger', () => {
    expect(garments.every(({ low, high }) => low > 0 && low <= high)).toBe(true)
    expect(new Set(garments.map(({ code }) => code)).size).toBe(garments.length)
    expect(() => garmentClo('cloak of invisibility')).toThrow()
  })
  test('a local jacket is worth more to the whole the more it has, and never its own figure', () => {
    fc.assert(
      fc.property(some, some, (x, more) => {
        const [one, two] = [gainedClo(0.1625, x), gainedClo(0.1625, x + more)]
        return one.ok && two.ok && two.value > one.value && one.value < x / 0.155
      }),
    )
    expect(wholeRsi([{ share: 0.5, rsi: 1 }])).toMatchObject({ ok: false, why: 'clothing.zones' })
    expect(gainedClo(-1, 0.3)).toMatchObject({ ok: false, why: 'clothing.zones' })
  })
})

describe('wind on clothing', () => {
  test('two standards agree that wind and walking only take', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.4, max: 3.2, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (windMs, walkMs) => {
        const now = windAndWalkFactor(windMs, walkMs)
        const more = windAndWalkFactor(windMs + 0.1, walkMs + 0.1)
        const at = { windMs, walkMs, permeability: 50 }
        return (
          now.ok &&
          more.ok &&
          more.value < now.value &&
          windCorrection.compute({ ...at, windMs: windMs + 0.1 }) < windCorrection.compute(at)
        )
      }),
    )
    expect(windAndWalkFactor(4, 0)).toMatchObject({ ok: false, why: 'clothing.wind-range' })
    const [nude, dressed] = [windAndWalkFactor(2, 0, 'nude'), windAndWalkFactor(2, 0)]
    expect(nude.ok && dressed.ok && nude.value < dressed.value).toBe(true)
    expect(windCorrection.cautions({ permeability: 0.5 } as Parameters<typeof windCorrection.cautions>[0])).toHaveLength(1)
  })
  test('a shell of lower Ret lets more sweat out', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 40, noNaN: true }), some, (shellRet, more) => {
        const at = { airC: 10, rhPct: 80, shellRet, otherRet: 15 }
        return evaporationBound.compute({ ...at, shellRet: shellRet + more }) < evaporationBound.compute(at)
      }),
    )
    expect(climbingWork.cautions({ areaM2: 0.2 } as Parameters<typeof climbingWork.cautions>[0])).toHaveLength(1)
  })
})
