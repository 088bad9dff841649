import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  commonLayout,
  heard,
  justOpened,
  layoutOf,
  learntStepMg,
  parseScaleReport,
  taken,
  zeroCommandOf,
} from '../../../src-domain/closet/scale-report.ts'
import type { HidCollection, HidItem, ScaleReport, Steadiness } from '../../../src-domain/closet/scale-report.ts'
import { bytesOf, rows } from '../../published/scale-report.ts'
import { meets } from '../../published/published.ts'

meets(rows.filter((row) => row.law === 'scale report'))

const page = 0x8d0000
const statusItem: HidItem = {
  isArray: true,
  isRange: true,
  usageMinimum: page | 0x71,
  usageMaximum: page | 0x78,
  reportSize: 8,
  reportCount: 1,
  logicalMinimum: 1,
}
const unitItem: HidItem = {
  isArray: true,
  isRange: true,
  usageMinimum: page | 0x51,
  usageMaximum: page | 0x5c,
  reportSize: 8,
  reportCount: 1,
  logicalMinimum: 1,
}
const scalingItem: HidItem = { usages: [page | 0x41], reportSize: 8, reportCount: 1, logicalMinimum: -127 }
const weightItem: HidItem = { usages: [page | 0x40], reportSize: 16, reportCount: 1, logicalMinimum: 0 }
const padding = (bits: number): HidItem => ({ isConstant: true, reportSize: bits, reportCount: 1 })
const device = (items: readonly HidItem[], reportId = 3): readonly HidCollection[] => [
  { usagePage: 0x8d, usage: 0x20, inputReports: [{ reportId, items }] },
]

const code = (hex: string): string => {
  const found = parseScaleReport(bytesOf(hex))
  return found.ok ? found.value.status : found.fault.code
}

describe('a scale’s report', () => {
  // The table of provisions.md 9.5 and the statuses beside it.
  test.each([
    ['01 02 00 00 00', 'scale.fault'],
    ['02 02 00 00 00', 'zero'],
    ['03 0B FF 64 00', 'moving'],
    ['04 02 00 9C 01', 'stable'],
    ['05 02 00 05 00', 'under-zero'],
    ['06 02 00 FF FF', 'scale.over-limit'],
    ['07 02 00 00 00', 'scale.needs-calibration'],
    ['08 02 00 00 00', 'scale.needs-zero'],
    ['00 02 00 00 00', 'scale.unreadable'],
    ['09 02 00 00 00', 'scale.unreadable'],
    ['04 05 00 64 00', 'scale.unit-refused'],
    ['04 00 00 64 00', 'scale.unit-refused'],
    ['04 0D 00 64 00', 'scale.unit-refused'],
    ['04 02 00 9C', 'scale.unreadable'],
    ['04 08 7F FF FF', 'scale.unreadable'],
  ])('%s is %s', (hex, expected) => expect(code(hex)).toBe(expected))
  test('one count is its step', () => {
    expect(parseScaleReport(bytesOf('04 02 FF 18 10'))).toMatchObject({ value: { stepMg: 100, unit: 'g' } })
    expect(parseScaleReport(bytesOf('04 0B FF 91 00'))).toMatchObject({ value: { stepMg: 2834.9523125, unit: 'oz' } })
  })
  test('trailing bytes are none of its business, none at all is a fault', () => {
    expect(parseScaleReport(bytesOf('04 02 00 9C 01 00 00'))).toMatchObject({ ok: true, value: { massMg: 412_000 } })
    expect(parseScaleReport([])).toMatchObject({ ok: false, fault: { code: 'scale.unreadable' } })
  })
  test('any bytes give a finite whole mass or a fault', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 12 }), (bytes) => {
        const found = parseScaleReport(bytes)
        return !found.ok || (Number.isSafeInteger(found.value.massMg) && found.value.stepMg > 0)
      }),
      { numRuns: 2000 },
    )
  })
  test('every gram reading comes through exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 65_535 }), fc.integer({ min: -3, max: 0 }), (weight, power) => {
        const found = parseScaleReport([4, 2, power & 0xff, weight & 0xff, weight >> 8])
        return found.ok && found.value.massMg === Number(BigInt(weight) * 10n ** BigInt(3 + power))
      }),
    )
  })
})

describe('the descriptor', () => {
  const seen = (collections: readonly HidCollection[], bytes: readonly number[]): unknown => {
    const found = parseScaleReport(bytes, layoutOf(collections))
    return found.ok ? found.value.massMg : found.fault.code
  }
  test('of the common report gives the common reading', () => {
    const layout = layoutOf(device([statusItem, unitItem, scalingItem, weightItem]))
    expect(layout).toMatchObject({ reportId: 3, weight: { bit: 24, bits: 16 } })
    expect(parseScaleReport([4, 11, 255, 145, 0], layout)).toMatchObject({ value: { massMg: 411_068 } })
  })
  test('whose status and unit stand in collections of their own is put together', () => {
    const inner = (usage: number, item: HidItem): HidCollection => ({ usage, inputReports: [{ reportId: 4, items: [item] }] })
    const nested: HidCollection = {
      usage: 0x32,
      children: [inner(0x70, statusItem), inner(0x50, unitItem)],
      inputReports: [{ reportId: 4, items: [scalingItem, weightItem] }],
    }
    expect(layoutOf([{ usage: 0x20, children: [nested] }])).toMatchObject({
      reportId: 4,
      status: { bit: 0 },
      unit: { bit: 8 },
      scaling: { bit: 16 },
      weight: { bit: 24 },
    })
  })
  test('with another order, padding and a wide weight is followed', () => {
    const wide = { ...weightItem, reportSize: 24 }
    expect(seen(device([wide, padding(4), { ...statusItem, reportSize: 4 }, unitItem, scalingItem]), [0x9c, 0x01, 0x00, 0x40, 2, 0])).toBe(
      412_000,
    )
  })
  test('whose weight is signed reads below nothing', () => {
    expect(seen(device([statusItem, unitItem, scalingItem, { ...weightItem, logicalMinimum: -32_768 }]), [4, 2, 0, 0xfb, 0xff])).toBe(-5000)
  })
  test('whose scaling forgets its sign is read as signed all the same', () => {
    expect(seen(device([statusItem, unitItem, { ...scalingItem, logicalMinimum: 0 }, weightItem]), [4, 2, 0xff, 0x18, 0x10])).toBe(412_000)
  })
  test('with several usages in one item takes them one after another', () => {
    const both: HidItem = { usages: [page | 0x41, page | 0x40], reportSize: 16, reportCount: 2, logicalMinimum: -32_768 }
    expect(seen(device([statusItem, unitItem, both]), [4, 2, 0, 0, 0x9c, 0x01])).toBe(412_000)
  })
  test('without the fields falls back on the common report', () => {
    expect(layoutOf([])).toBe(commonLayout)
    expect(layoutOf(device([weightItem]))).toBe(commonLayout)
    expect(layoutOf([{ inputReports: [{ items: [{}] }] }])).toBe(commonLayout)
  })
  test('says how the scale is set to zero', () => {
    const zero: HidItem = { usages: [page | 0x81, page | 0x80], reportSize: 1, reportCount: 2, logicalMinimum: 0 }
    // provisions.md 9.5: report id 2, byte 0x02.
    expect(
      zeroCommandOf([{ usage: 0x20, children: [{ usage: 0x31, outputReports: [{ reportId: 2, items: [zero, padding(6)] }] }] }]),
    ).toEqual({ reportId: 2, bytes: [2] })
    expect(zeroCommandOf(device([weightItem]))).toBeUndefined()
  })
})

describe('a settled scale', () => {
  const stable = (massMg: number): ScaleReport => ({ status: 'stable', massMg, stepMg: 1000, unit: 'g' })
  const moving: ScaleReport = { status: 'moving', massMg: 300_000, stepMg: 1000, unit: 'g' }
  const after = (...said: readonly (readonly [ScaleReport, number])[]): Steadiness =>
    said.reduce((state, [report, at]) => heard(state, report, at), justOpened)

  test('has said the same twice, 0.3 s apart, the first report of all thrown away', () => {
    expect(after([stable(412_000), 0], [stable(412_000), 400]).steadyMg).toBeNull()
    expect(after([stable(412_000), 0], [stable(412_000), 100], [stable(412_000), 399]).steadyMg).toBeNull()
    expect(after([stable(412_000), 0], [stable(412_000), 100], [stable(412_000), 400]).steadyMg).toBe(412_000)
  })
  test('has said nothing else in between', () => {
    expect(after([moving, 0], [stable(412_000), 100], [moving, 300], [stable(412_000), 500]).steadyMg).toBeNull()
    expect(after([moving, 0], [stable(412_000), 100], [stable(411_000), 300], [stable(412_000), 500]).steadyMg).toBeNull()
    expect(after([moving, 0], [stable(412_000), 100], [{ ...stable(412_000), status: 'under-zero' }, 500]).steadyMg).toBeNull()
  })
  test('starts again when the clock goes back', () => {
    expect(after([moving, 0], [stable(412_000), 1000], [stable(412_000), 500], [stable(412_000), 600]).steadyMg).toBeNull()
  })
  test('offers a kept reading once, and the next equal thing again', () => {
    const kept = taken(after([moving, 0], [stable(412_000), 100], [stable(412_000), 400]))
    const still = heard(kept, stable(412_000), 900)
    expect(still.steadyMg).toBeNull()
    const next = [[moving, 1000], [stable(412_000), 1100], [stable(412_000), 1500]] as const // prettier-ignore
    expect(next.reduce((state, [report, at]) => heard(state, report, at), still).steadyMg).toBe(412_000)
  })
  test('never keeps what moves: a steady mass is always the last stable one, said for 0.3 s', () => {
    const report = fc.record({
      status: fc.constantFrom('zero', 'moving', 'stable', 'under-zero'),
      massMg: fc.constantFrom(0, 411_000, 412_000),
      stepMg: fc.constant(1000),
      unit: fc.constant('g'),
    }) as fc.Arbitrary<ScaleReport>
    fc.assert(
      fc.property(fc.array(fc.tuple(report, fc.integer({ min: 0, max: 250 })), { maxLength: 40 }), (said) => {
        let at = 0
        let state = justOpened
        const past: { at: number; report: ScaleReport }[] = []
        for (const [one, wait] of said) {
          at += wait
          state = heard(state, one, at)
          past.push({ at, report: one })
          if (state.steadyMg === null) continue
          const since = past.slice(1).filter((old) => old.at >= at - 300)
          if (!since.every((old) => old.report.status === 'stable' && old.report.massMg === state.steadyMg)) return false
        }
        return true
      }),
    )
  })
})

describe('the step learnt from what is seen', () => {
  const seen = (...grams: readonly number[]): ScaleReport[] =>
    grams.map((g) => ({ status: 'stable', massMg: g * 1000, stepMg: 1000, unit: 'g' }))
  test('is the greatest that all masses are apart by', () => {
    expect(learntStepMg(seen(412, 414, 420))).toBe(2000)
    expect(learntStepMg(seen(10, 15, 25, 10))).toBe(5000)
    expect(learntStepMg(seen(10, 15, 25, 26))).toBe(1000)
  })
  test('waits for three different masses in one unit', () => {
    expect(learntStepMg(seen(412, 414, 412))).toBeUndefined()
    expect(learntStepMg([])).toBeUndefined()
    expect(learntStepMg([...seen(1, 2, 3), { status: 'stable', massMg: 28_350, stepMg: 2834.9523125, unit: 'oz' }])).toBeUndefined()
  })
})
