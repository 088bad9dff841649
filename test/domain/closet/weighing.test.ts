import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  againstBefore,
  claimedMass,
  countPieces,
  estimateFromClaim,
  gainOf,
  itemMass,
  learnClaimBias,
  learntSpread,
  permissibleErrorMg,
  rulingWeighing,
  spreadOf,
  uncheckedGain,
  weigh,
} from '../../../src-domain/closet/weighing.ts'
import type { BenchScale, CheckReading, PastWeighing, Reading, Weighed } from '../../../src-domain/closet/weighing.ts'
import { difference, uncertainty } from '../../../src-domain/figures/figure.ts'
import { meets } from '../../published/published.ts'
import { rows } from '../../published/weighing.ts'

meets(rows)

const scale: BenchScale = { uid: 'B', name: 'scale B', stepMg: 1000, capacityMg: 5_000_000, checks: [] }
const check = (readOn: string, nominalMg: number, readMg: number): CheckReading => ({ readOn, nominalMg, mpeMg: 25, readingsMg: [readMg] })
const plain: Reading = { readingsMg: [412_000], tareMg: 0, tareKind: 'button', pieces: 1, weighedOn: '2025-10-08' }

function kept(reading: Partial<Reading>, on: BenchScale = scale): Weighed {
  const found = weigh({ ...plain, ...reading }, on, 'w1')
  if (!found.ok) throw new Error(found.fault.code)
  return found.value
}
const refusedAs = (reading: Partial<Reading>): string => {
  const found = weigh({ ...plain, ...reading }, scale)
  return found.ok ? 'kept' : found.fault.code
}

describe('one weighing', () => {
  test('takes a tare that was read off, and none that the scale took off itself', () => {
    expect(kept({ readingsMg: [383_000], tareMg: 12_000, tareKind: 'reading' }).massMg).toBe(371_000)
    expect(kept({ readingsMg: [371_000], tareMg: 12_000, tareKind: 'button' }).massMg).toBe(371_000)
  })
  test('shares out what lies on the plate among its pieces', () => {
    expect(kept({ readingsMg: [84_000], pieces: 8 }).massMg).toBe(10_500)
    expect(kept({ readingsMg: [100_000], pieces: 3 }).massMg).toBe(33_333)
  })
  test('keeps its doubt by leaf, and works the figure the same way', () => {
    const { figure, uOwnMg, uGainMg } = kept({ pieces: 2 })
    expect(Object.keys(figure.shares).sort()).toEqual(['scale:B:gain', 'weighing:w1'])
    expect(Math.abs(figure.shares['weighing:w1']!) * 1000).toBeCloseTo(uOwnMg, 6)
    expect(figure.shares['scale:B:gain']! * 1000).toBeCloseTo(uGainMg, 6)
    expect(figure).toMatchObject({ origin: 'measured', unit: 'g', value: 206 })
    expect(figure.working?.formula).toBe('m = (R − T) × c ÷ N')
  })
  test('says what to mind: too coarse a scale, a gain never checked, a wet thing', () => {
    expect(kept({ readingsMg: [19_000] }).notes.map((note) => note.code)).toEqual(['finer-scale', 'gain-unchecked'])
    expect(kept({ readingsMg: [20_000] }).notes.map((note) => note.code)).toEqual(['gain-unchecked'])
    expect(kept({ damp: true, incomplete: true })).toMatchObject({
      counted: false,
      notes: [{ code: 'gain-unchecked' }, { code: 'not-counted', why: ['damp', 'incomplete'] }],
    })
    expect(kept({}).counted).toBe(true)
  })
  test('refuses what is no weighing', () => {
    expect(refusedAs({ readingsMg: [5_000_001] })).toBe('weighing.over-capacity')
    expect(refusedAs({ readingsMg: [4_990_000], tareMg: 20_000, tareKind: 'button' })).toBe('weighing.over-capacity')
    expect(refusedAs({ readingsMg: [5_000_000] })).toBe('kept')
    expect(refusedAs({ readingsMg: [10_000], tareMg: 12_000, tareKind: 'reading' })).toBe('weighing.negative')
    expect(refusedAs({ readingsMg: [0] })).toBe('weighing.no-reading')
    expect(refusedAs({ readingsMg: [] })).toBe('weighing.no-reading')
    expect(refusedAs({ readingsMg: [Number.NaN] })).toBe('weighing.no-reading')
    expect(refusedAs({ pieces: 0 })).toBe('weighing.no-reading')
  })
  test('a zero that was not shown adds its own doubt', () => {
    expect(kept({ zeroShown: false }).uOwnMg ** 2 - kept({}).uOwnMg ** 2).toBeCloseTo(1000 ** 2 / 12, 6)
  })
  test('repeats bring their own spread, one reading the scale’s, else half a step', () => {
    expect(spreadOf([1, 3], { stepMg: 1000 })).toBeCloseTo(Math.SQRT2, 12)
    expect(spreadOf([1], { stepMg: 1000, spreadMg: 200 })).toBe(200)
    expect(spreadOf([1], { stepMg: 1000 })).toBe(500)
    expect(learntSpread([[1, 3]])).toBeUndefined()
    expect(learntSpread(Array.from({ length: 10 }, () => [1, 3]))).toBeCloseTo(Math.SQRT2, 12)
  })
})

describe('the scale’s gain', () => {
  const on = (checks: readonly CheckReading[], day = '2025-10-08') => gainOf({ ...scale, checks }, day)
  test('a check holds six months to the day and never backwards', () => {
    expect(on([check('2025-04-08', 500_000, 500_000)]).check).toBeDefined()
    expect(on([check('2025-04-07', 500_000, 500_000)])).toBe(uncheckedGain)
    expect(on([check('2025-10-09', 500_000, 500_000)])).toBe(uncheckedGain)
  })
  test('the heavier mass of one day rules, being the finer', () => {
    expect(on([check('2025-10-08', 200_000, 200_000), check('2025-10-08', 500_000, 501_000)]).check?.nominalMg).toBe(500_000)
  })
  test('of equally fine checks the newest rules, in whatever order they come', () => {
    const [older, newer] = [check('2025-09-01', 500_000, 500_000), check('2025-10-01', 500_000, 499_000)]
    expect(on([older, newer]).correction).toBe(500_000 / 499_000)
    expect(on([newer, older]).correction).toBe(500_000 / 499_000)
  })
  test('an older, finer check counts only while the newest agrees with it', () => {
    const finer = check('2025-09-01', 1_000_000, 1_000_000)
    expect(on([finer, check('2025-10-01', 500_000, 500_000)]).check).toBe(finer)
    expect(on([finer, check('2025-10-01', 500_000, 505_000)]).check?.readOn).toBe('2025-10-01')
  })
  test('a check mass of no class has no permissible error from the table', () => {
    expect(permissibleErrorMg('M1', 250_000)).toBeUndefined()
  })
})

describe('two weighings of one thing', () => {
  const past = (massMg: number, more: Partial<PastWeighing> = {}): PastWeighing => ({
    massMg,
    uMg: 700,
    weighedOn: '2025-01-01',
    damp: false,
    dirty: false,
    incomplete: false,
    ...more,
  })
  // 3·√(700² + 700²) = 2969.85 mg
  test('agree within three of their doubts', () => {
    expect(againstBefore(past(412_000), past(409_031)).what).toBe('agrees')
    expect(againstBefore(past(412_000), past(409_030)).what).toBe('heavier')
    expect(againstBefore(past(409_030), past(412_000)).what).toBe('lighter')
  })
  test('water and dirt are called what they are', () => {
    expect(againstBefore(past(454_000, { damp: true }), past(412_000))).toMatchObject({ what: 'damp-gain', differenceMg: 42_000 })
    expect(againstBefore(past(454_000, { dirty: true }), past(412_000)).what).toBe('dirt-gain')
    expect(againstBefore(past(400_000, { damp: true }), past(412_000)).what).toBe('lighter')
    expect(againstBefore(past(300_000, { incomplete: true }), past(412_000)).what).toBe('incomplete')
  })
  test('the latest dry, clean, whole one rules; of one day the last', () => {
    const dry = past(1, { weighedOn: '2025-03-01' })
    const later = past(2, { weighedOn: '2025-03-01' })
    const damp = past(3, { weighedOn: '2025-05-01', damp: true })
    expect(rulingWeighing([dry, later, damp, past(4)])).toBe(later)
    expect(rulingWeighing([damp])).toBeUndefined()
  })
})

describe('pieces by weight', () => {
  test('are asked for when half a piece is within the doubt', () => {
    // 100 × 0.3 + 0.65 = 30.65 g against half of 1 g: no
    expect(countPieces({ massMg: 100_000, uMg: 650 }, { massMg: 1_000, uMg: 300 })).toMatchObject({
      ok: false,
      fault: { code: 'weighing.count-unsure', facts: { nearest: 100 } },
    })
    expect(countPieces({ massMg: 400, uMg: 10 }, { massMg: 1_000, uMg: 1 })).toMatchObject({ ok: false })
    expect(countPieces({ massMg: 400, uMg: 10 }, { massMg: 0, uMg: 1 })).toMatchObject({ ok: false })
  })
  test('what is called sure is right, wherever the true masses lie within twice their doubt', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1_000, max: 50_000 }),
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (pieces, trueMg, doubt, off) => {
          const one = { massMg: trueMg * (1 + doubt * off), uMg: trueMg * doubt }
          const counted = countPieces({ massMg: pieces * trueMg, uMg: 100 }, one)
          return !counted.ok || counted.value === pieces
        },
      ),
    )
  })
})

describe('mass by source', () => {
  const row = { uid: 'i', massMg: 412_000, massFrom: 'measured', uOwnMg: 650, uGainMg: 270, weighingUid: 'w', scaleUid: 'B' } as const
  test('each source has its leaves', () => {
    expect(itemMass(row)?.shares).toEqual({ 'weighing:w': 0.65, 'scale:B:gain': 0.27 })
    expect(itemMass({ ...row, scaleUid: null })?.shares).toHaveProperty('scale:unknown:gain')
    expect(Object.keys(itemMass({ ...row, massFrom: 'claimed' })!.shares)).toEqual(['claim:i', 'claims:bias'])
    expect(Object.keys(itemMass({ ...row, massFrom: 'estimated' })!.shares)).toEqual(['estimate:i', 'estimates:bias'])
    expect(itemMass({ ...row, massFrom: 'none' })).toBeNull()
    expect(itemMass({ ...row, massMg: null })).toBeNull()
  })
  test('what two loadouts share cancels exactly, its common doubt included', () => {
    const a = itemMass({ ...row, massFrom: 'claimed' })!
    expect(uncertainty(difference('d', { name: 'a', figure: a }, { name: 'b', figure: a }))).toBe(0)
  })
  test('learning waits for three pairs, and shows a claim moved as an estimate', () => {
    expect(learnClaimBias([{ measuredMg: 2, claimedMg: 1 }, { measuredMg: 2, claimedMg: 1 }])).toBeUndefined() // prettier-ignore
    const bias = learnClaimBias(
      [1.04, 1.02, 1.07, 0.99, 1.05, 1.03].map((ratio) => ({ claimedMg: 1_000_000, measuredMg: 1_000_000 * ratio })),
    )!
    const moved = estimateFromClaim(352_000, 'i', bias)
    expect(moved).toMatchObject({ origin: 'estimated' })
    expect(moved.value).toBeCloseTo(352 * 1.025433, 2) // provisions.md 9.3
    expect(claimedMass(352_000, 'i', '', bias).shares['claims:bias']).toBeCloseTo(352 * Math.hypot(0.0095322, 0.0251149), 3)
  })
})

describe('properties', () => {
  const grams = fc.integer({ min: 1, max: 4000 })
  test('a typed reading on an unchecked scale is kept to the milligram', () => {
    fc.assert(fc.property(grams, (g) => kept({ readingsMg: [g * 1000] }).massMg === g * 1000))
  })
  test('an empty sack weighed with and without makes no difference to the mass', () => {
    fc.assert(
      fc.property(
        grams,
        fc.integer({ min: 0, max: 900 }),
        (g, sack) => kept({ readingsMg: [(g + sack) * 1000], tareMg: sack * 1000, tareKind: 'reading' }).massMg === g * 1000,
      ),
    )
  })
  test('more equal pieces make each one surer, and never change the sum by more than rounding', () => {
    fc.assert(
      fc.property(grams, fc.integer({ min: 2, max: 50 }), (g, pieces) => {
        const all = kept({ readingsMg: [g * 1000] })
        const each = kept({ readingsMg: [g * 1000], pieces })
        return each.uOwnMg < all.uOwnMg && Math.abs(each.massMg * pieces - all.massMg) <= pieces / 2
      }),
    )
  })
  test('a scale that reads in proportion too much or too little is put right', () => {
    fc.assert(
      fc.property(grams, fc.double({ min: 0.98, max: 1.02, noNaN: true }), (g, factor) => {
        const off: BenchScale = {
          ...scale,
          capacityMg: 9_000_000,
          checks: [{ readOn: '2025-10-01', nominalMg: 1_000_000, mpeMg: 50, readingsMg: [1_000_000 * factor] }],
        }
        return Math.abs(kept({ readingsMg: [g * 1000 * factor] }, off).massMg - g * 1000) <= 1
      }),
    )
  })
  test('a finer step never makes a weighing less sure', () => {
    fc.assert(
      fc.property(
        grams,
        fc.integer({ min: 1, max: 999 }),
        (g, stepMg) =>
          uncertainty(kept({ readingsMg: [g * 1000] }, { ...scale, stepMg }).figure) <=
          uncertainty(kept({ readingsMg: [g * 1000] }).figure),
      ),
    )
  })
})
