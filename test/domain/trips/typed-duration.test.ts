import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatDuration } from '../../../src-domain/figures/format.ts'
import { parseDuration } from '../../../src-domain/trips/typed-duration.ts'

test.each([
  ['5 h 20', 320],
  ['5h20', 320],
  ['5:20', 320],
  ['5:05', 305],
  ['5 h 20 min', 320],
  ['5.5 h', 330],
  ['5,5 h', 330],
  ['320 min', 320],
  ['45', 45],
  ['5', 300],
  ['0', 0],
  ['24', 1440],
  ['25', 25],
])('%s is %i minutes', (text, minutes) => {
  expect(parseDuration(text)).toEqual({ ok: true, value: minutes })
})

test.each(['', 'all day', '5 h 61', '-3', '5:', '1e3', '5 h 20 x'])('%s cannot be read', (text) => {
  expect(parseDuration(text)).toMatchObject({ ok: false, fault: { code: 'quantity.unreadable' } })
})

test('more than ten days is too large', () => {
  expect(parseDuration('241 h')).toMatchObject({ ok: false, fault: { code: 'quantity.too-large' } })
})

test('what the program writes, it reads', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 14_400 }), (minutes) => {
      expect(parseDuration(formatDuration(minutes).replaceAll('\u00a0', ' '))).toEqual({ ok: true, value: minutes })
    }),
  )
})
