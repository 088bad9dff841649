import { expect, test } from 'vitest'
import { given } from '../../../src-domain/figures/figure.ts'
import { formatFigure, metric, plain, us } from '../../../src-domain/figures/format.ts'

const reads = (minute: number, u: number) =>
  plain(formatFigure(given(minute, 'clock', 'worked', { pace: u }), metric)).replaceAll('\u00a0', ' ')

test('a minute of the day reads as the clock does, its band in minutes', () => {
  expect(reads(17 * 60 + 2 + 11 / 60, 50.75)).toBe('17:02 ±102 min')
  expect(reads(960, 0.2)).toBe('16:00')
  expect(reads(24 * 60 + 15, 0)).toBe('00:15')
  expect(plain(formatFigure(given(480, 'clock', 'estimated'), us))).toBe('≈08:00')
})
