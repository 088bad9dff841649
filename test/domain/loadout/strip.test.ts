import { describe, expect, test } from 'vitest'
import { bodyShares, marksOf, scaleFor, stripOf, ticksOf } from '../../../src-domain/loadout/strip.ts'
import { totalsOf } from '../../../src-domain/loadout/totals.ts'
import { withLine, withMove, withoutLines } from '../../../src-domain/loadout/whatif.ts'
import { polePitched, skarnItem, skarnWalker } from './skarn.ts'

// The strip of loadout.html: its line runs from 1.75 kg left of zero to 13 kg, marks at 10.0, 11.6 and, off it, 17.4 kg.
describe('the load strip of the demo trip', () => {
  const totals = totalsOf(polePitched)
  const marks = marksOf(polePitched, skarnWalker, '2025-10-08')
  const strip = stripOf(totals, marks)
  test('its marks', () => {
    expect(strip.flags).toEqual([
      { kind: 'comfortable', atG: 10_000, share: null, beyond: false },
      { kind: 'easy', atG: 11_600, share: 0.2, beyond: false },
      { kind: 'upper', atG: 17_400, share: 0.3, beyond: true },
    ])
  })
  test('its scale', () => expect(strip.scale).toEqual({ leftG: -1750, rightG: 13_000 }))
  test('worn grows left from the zero line, in the order of kit areas', () => {
    const worn = strip.segments.filter(({ lane }) => lane === 'on_me')
    expect(worn.map(({ area, fromG, toG }) => [area, fromG, toG])).toEqual([
      ['carry', -322, 0],
      ['clothing', -764, -322],
      ['footwear', -1374, -764],
      ['wayfinding', -1418, -1374],
    ])
  })
  test('base grows right, then what is used up, hatched', () => {
    const right = strip.segments.filter(({ lane }) => lane !== 'on_me')
    expect(right.map(({ area }) => area).join(' ')).toBe(
      'shelter sleep carry clothing kitchen water light_power wayfinding care kitchen water food care',
    )
    expect(right.filter(({ hatched }) => hatched).map(({ fromG }) => fromG)[0]).toBe(4308)
    expect(right.at(-1)!.toG).toBe(strip.endG)
  })
  test('its dimensions meet', () => {
    expect(strip.dimensions.map(({ fromG, toG }) => [fromG, toG])).toEqual([
      [-1418, 0],
      [0, 4308],
      [4308, 7252],
    ])
  })
  test('lifting the rain kilt moves no scale, doubling the load does', () => {
    const would = totalsOf(withLine(polePitched, skarnItem('Rain kilt'), 'in_pack'))
    expect(scaleFor([would], marks, strip.scale)).toBe(strip.scale)
    const twice = totalsOf(withLine(polePitched, skarnItem('Rain kilt'), 'in_pack', 120))
    expect(scaleFor([twice], marks, strip.scale).rightG).toBeGreaterThan(twice.pack.figure.value)
  })
})

test('ticks in whole pounds: figures every second, as the mock in US units', () => {
  const ticks = ticksOf({ leftG: -1750, rightG: 13_000 }, 'lb')
  expect(ticks.filter(({ figure }) => figure !== null).map(({ figure }) => figure)).toEqual([
    2, 0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28,
  ])
  expect(ticks[0]!.atG).toBeCloseTo(-3 * 453.59237, 9)
})

test('ticks in whole kilograms', () => {
  expect(ticksOf({ leftG: -1750, rightG: 13_000 }, 'kg').map(({ figure }) => figure)).toEqual([
    1, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13,
  ])
})

test('the marks on a young body are lower, and one’s own stand', () => {
  expect(bodyShares({ ...skarnWalker, bornYear: 2010 }, '2025-10-08')).toEqual({ easy: 0.15, upper: 0.2 })
  expect(bodyShares({ ...skarnWalker, easyShare: 0.17 }, '2025-10-08')).toEqual({ easy: 0.17, upper: 0.3 })
})

test('without a pack figure or a body there is no mark', () => {
  const bare = withoutLines(
    polePitched,
    polePitched.lines.filter((line) => line.kind === 'item' && line.item.name.includes('pack')).map(({ id }) => id),
  )
  expect(marksOf(bare, { ...skarnWalker, bodyMassG: null }, '2025-10-08')).toEqual([])
})

describe('what would be', () => {
  const poles = polePitched.lines.find((line) => line.kind === 'item' && line.item.name === 'Walking poles')!
  test('a move carries the mass from lane to lane', () => {
    const [before, after] = [totalsOf(polePitched), totalsOf(withMove(polePitched, [poles.id], 'in_pack'))]
    expect(before.worn.massMg - after.worn.massMg).toBe(322_000)
    expect(after.base.massMg - before.base.massMg).toBe(322_000)
    expect(after.skinOut.massMg).toBe(before.skinOut.massMg)
  })
  test('an item already in the lane joins its line', () => {
    const once = withLine(polePitched, skarnItem('Walking poles'), 'in_pack')
    const joined = withMove(once, [poles.id], 'in_pack')
    const lines = joined.lines.filter((line) => line.kind === 'item' && line.item.name === 'Walking poles')
    expect(lines).toMatchObject([{ lane: 'in_pack', pieces: 3 }])
  })
  test('a supply stays where it is used up', () => {
    const water = polePitched.lines.find((line) => line.kind === 'supply')!
    expect(withMove(polePitched, [water.id], 'on_me').lines).toEqual(polePitched.lines)
  })
})
